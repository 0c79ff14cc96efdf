using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Decision.Trips;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Tests.Cli;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision.Trips;

/// <summary>Spots with a tide are fished in their hours, with the head of the hour.</summary>
public class TripDayTests
{
    private static readonly Scenario Spot = TestScenario.Read(TestScenario.Text);

    private static Rig Rig => new(Spot.Tackle.JigHeads[1], Spot.Tackle.Bodies[0], Spot.Presentations[0]);

    // Good between two hours, with the lighter head before the middle of them and the heavier after it.
    private static TideTable Tide(double from, double to)
    {
        IReadOnlyList<JigHead> heads = Spot.Tackle.JigHeads;
        TideRow[] rows = [.. Enumerable.Range(6, 9).Select(hour =>
        {
            bool good = hour >= from && hour <= to;
            JigHead best = hour < (from + to) / 2 ? heads[1] : heads[2];
            return new TideRow(hour, 0.3, 3, good ? best : null, [.. heads.Select(head => good && head == best ? 0.8 : 0)], [.. heads.Select(_ => 0.5)], null);
        })];
        return new TideTable(Spot, Rig, rows, new WeightTable([], [], new double?[0, 0]));
    }

    private static TripDay Day(params TideTable?[] tides) => TripDay.Of(
        TripClock.Of([.. tides.Select(_ => Spot)], 6, 14)!,
        [.. tides.Select(_ => HandMade.Candidate(Rig) with { Score = 0.3 })],
        tides);

    [Fact]
    public void Each_spot_is_fished_in_its_hours()
    {
        TripDay day = Day(Tide(11, 13), Tide(7, 9));
        Assert.Equal([1, 0], day.Stops.Select(stop => stop.Spot));
        Assert.InRange(day.Stops[0].Arrive, 6.5, 7.25);
        Assert.InRange(day.Stops[1].Arrive, 10.5, 11.25);
        Assert.True(day.Swaps[0].Cost > 1);
        Assert.All(day.Skips, skip => Assert.InRange(skip.Cost, 1, 2));
    }

    [Fact]
    public void The_head_changes_with_the_tide_within_a_stop()
    {
        TripStop stop = Assert.Single(Day(Tide(8, 12)).Stops);
        Assert.Equal([Spot.Tackle.JigHeads[1], Spot.Tackle.JigHeads[2]], stop.Heads.Select(from => from.Head));
        Assert.InRange(stop.Heads[1].Hours, 9, 10.5);
    }

    [Fact]
    public void A_spot_without_a_tide_fills_the_rest()
    {
        TripDay day = Day(Tide(7, 9), null);
        Assert.Equal([0, 1], day.Stops.Select(stop => stop.Spot));
        Assert.Equal(0.3 * 2, day.Stops[1].Value, 1e-9);
        Assert.Empty(day.LeftOut);
    }

    [Fact]
    public void Hours_outside_a_tide_are_worth_nothing()
    {
        TripDay day = TripDay.Of(TripClock.Of([Spot], 0, 5)!, [HandMade.Candidate(Rig)], [Tide(7, 9)]);
        Assert.Empty(day.Stops);
        Assert.Equal([0], day.LeftOut);
        Assert.Contains("no spot is worth a stop", TripWords.Total(day), StringComparison.Ordinal);
    }

    [Fact]
    public void A_clock_spans_the_tides_and_needs_one()
    {
        Assert.Null(TripClock.Of([Spot], null, null));
        TripClock clock = TripClock.Of([Spot with { Tide = [new(6, 0, 0), new(9, 1, 0), new(12, 0, 0)] }], null, null, 0.5)!;
        Assert.Equal((6, 12, 0.5), (clock.Start, clock.End, clock.Travel[0, 1]));
        Assert.Equal(26, TripClock.Of([Spot], 20, 2)!.End);
    }

    [Theory]
    [InlineData(0.5, "30 min")]
    [InlineData(1, "1 h")]
    [InlineData(2.25, "2 h 15 min")]
    public void Time_is_said_in_hours_and_minutes(double hours, string text) => Assert.Equal(text, TripWords.Time(hours));

    [Fact]
    public void A_tide_is_told_by_its_turns()
    {
        TidePoint[] points = [.. Enumerable.Range(0, 49).Select(i => new TidePoint(i * 0.5, 0.5 * Math.Sin(i * 0.5 * Math.PI / 6.2), -0.4 * Math.Cos(i * 0.5 * Math.PI / 6.2)))];
        string line = TideWords.Line(points, UnitSystem.Us);
        Assert.Contains("slack 06:12", line, StringComparison.Ordinal);
        Assert.Contains("high 06:", line, StringComparison.Ordinal);
        Assert.True(line.Length < 240, line);
    }
}
