using LureSim.Decision.Tide;
using LureSim.Model;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;
using LureSim.Tides;

namespace LureSim.Tests.Tides;

/// <summary>Depth and current of a day from constituents, slack found, and what a tide may not do.</summary>
public class TidePredictionTests
{
    private static readonly DateTimeOffset Midnight = new(2026, 6, 14, 0, 0, 0, TimeSpan.FromHours(-4));

    private static HarmonicTide Simple => new([new(TidalConstituent.Find("m2")!, 0.5, 1.2)]);

    private const string Harmonic = "\ntide:\n  constituents: [M2 1.5 ft 181 deg, \"K1 0.4 ft, 219 deg\"]\n  date: 2026-06-14\n  utc_offset: -4 h\n  from: \"05:00\"\n  to: \"15:00\"\n  runs: outgoing\n";

    [Fact]
    public void The_rate_is_the_slope_of_the_height()
    {
        var tide = new HarmonicTide([.. TidalConstituent.All.Select((item, i) => new HarmonicConstant(item, 0.05 + (0.01 * i), i))]);
        for (int hour = 0; hour < 48; hour += 5)
        {
            DateTimeOffset at = Midnight.AddHours(hour);
            double slope = (tide.Height(at.AddMinutes(1)) - tide.Height(at.AddMinutes(-1))) / (2.0 / 60);
            Assert.Equal(slope, tide.Rate(at), 2e-3 * Math.Max(0.1, Math.Abs(slope)));
        }
    }

    [Fact]
    public void The_current_turns_with_the_height_and_later_by_as_much_as_is_said()
    {
        foreach (double lag in (double[])[0, 0.75])
        {
            var curve = new TideCurve(new TidePrediction(0, 0.6, lag, true).Points(Simple, Midnight, 0, 24));
            TideTurn[] turns = [.. curve.Turns];
            Assert.InRange(turns.Length, 3, 5);
            Assert.All(turns.Zip(turns.Skip(1)), pair => Assert.NotEqual(pair.First.High, pair.Second.High));
            foreach (TideTurn turn in turns.Where(turn => turn.Hours + lag < curve.End))
                Assert.Contains(curve.Slacks, slack => Math.Abs(slack - turn.Hours - lag) < 0.05);
        }
    }

    [Fact]
    public void The_strongest_current_of_the_day_is_the_one_that_was_given_and_rising_water_comes_in()
    {
        IReadOnlyList<TidePoint> points = new TidePrediction(0.2, 0.6, 0, true).Points(Simple, Midnight, 0, 24);
        Assert.Equal(0.6, points.Max(point => Math.Abs(point.Current)), 0.01);
        for (int i = 1; i + 1 < points.Count; i++)
        {
            if (points[i].Current > 0.1) Assert.True(points[i + 1].DepthChange > points[i - 1].DepthChange);
        }

        Assert.Equal(0.2, points.Average(point => point.DepthChange), 0.1);
        Assert.Equal(points[9].Current, -new TidePrediction(0.2, 0.6, 0, false).Points(Simple, Midnight, 0, 24)[9].Current, 1e-12);
    }

    [Fact]
    public void A_scenario_takes_constituents_in_one_line_each()
    {
        Scenario scenario = TestScenario.Read(TestScenario.Text + Harmonic);
        Assert.Equal(5, scenario.Tide[0].Hours);
        Assert.Equal(15, scenario.Tide[^1].Hours);
        Assert.InRange(scenario.Tide.Max(point => Math.Abs(point.Current)), 0.4, 1852.0 / 3600 + 1e-9);
        Assert.Empty(new TideCurve([new(0, 0, 0), new(1, 0, 0), new(2, 0, 0)]).Slacks);
    }

    [Theory]
    [InlineData("M2 1.5 ft 181 deg", "M2 14 ft 181 deg", "tide", "dries the spot")]
    [InlineData("M2 1.5 ft 181 deg", "K1 1.5 ft 181 deg", "tide.constituents[1].name", "same constituent")]
    [InlineData("M2 1.5 ft 181 deg", "M22 1.5 ft 181 deg", "tide.constituents[0].name", "unknown word")]
    [InlineData("M2 1.5 ft 181 deg", "M2 1.5 181 deg", "tide.constituents[0]", "")]
    [InlineData("  date: 2026-06-14\n", "", "tide", "need a day")]
    [InlineData("  utc_offset: -4 h\n", "", "tide", "ahead of UTC")]
    [InlineData("  runs: outgoing\n", "", "tide", "which tide")]
    [InlineData("to: \"15:00\"", "to: \"05:30\"", "tide.to", "less than an hour")]
    public void What_a_tide_may_not_do_is_said_with_a_way_out(string old, string now, string key, string message)
    {
        IReadOnlyList<ScenarioProblem> problems = TestScenario.Problems(TestScenario.Text + Harmonic.Replace(old, now, StringComparison.Ordinal));
        ScenarioProblem problem = Assert.Single(problems, item => item.Key == key);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.True(problem.Line > 30 && problem.Fix.Length > 0 && problem.Allowed.Length > 0);
    }
}
