using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

public class UncertaintyInputTests
{
    private static string With(string more) => TestScenario.Text.TrimEnd() + "\n" + more + "\n";

    [Fact]
    public void A_scenario_that_says_nothing_gets_the_assumed_spreads()
    {
        Scenario scenario = TestScenario.Read(TestScenario.Text);
        Assert.Equal(ScenarioUncertainty.Assumed, scenario.Uncertainty);
        Assert.Empty(scenario.Tide);
        Assert.True(scenario.Spot.StrikeZone.MovesWithBottom);
        Assert.False(TestScenario.Read(TestScenario.With("above_bottom: [1 ft, 4 ft]", "depth: [1 ft, 4 ft]")).Spot.StrikeZone.MovesWithBottom);
    }

    [Fact]
    public void Every_form_is_read()
    {
        ScenarioUncertainty read = TestScenario.Read(With("""
            uncertainty:
              current: 30 %
              cast: {plus_or_minus: 2 m}
              retrieve_speed: {between: [0.3 m/s, 0.5 m/s]}
              depth: {triangular: [3 m, 4 m, 6 m]}
              clarity: {plus_or_minus: 10 %}
              rod_tip_height: 0 %
              line_drag: {law: churchill bernstein, factor: 5 %}
              samples: 7
              seed: 42
            """)).Uncertainty;
        Assert.Equal(Spread.OfShare(0.3), read.Current);
        Assert.Equal(Spread.OfAmount(2), read.Cast);
        Assert.Equal(Spread.OfBand(0.3, 0.5), read.RetrieveSpeed);
        Assert.Equal(Spread.OfTriangle(3, 4, 6), read.Depth);
        Assert.Equal(Spread.OfShare(0.1), read.Clarity);
        Assert.True(read.RodHeight.IsExact);
        Assert.Equal(Spread.OfShare(0.05), read.LineDrag);
        Assert.Equal(LineLawChoice.ChurchillBernstein, read.LineLaw);
        Assert.Equal((7, 42), (read.Samples, read.Seed));
    }

    [Fact]
    public void Others_exact_switches_off_what_is_not_named()
    {
        Assert.True(TestScenario.Read(With("uncertainty: {others: exact}")).Uncertainty is { IsExactInMotion: true, SightIsKnown: true });
        Assert.False(TestScenario.Read(With("uncertainty: {others: exact, sight: drawn}")).Uncertainty.SightIsKnown);
        Assert.True(TestScenario.Read(With("uncertainty: {sight: exact}")).Uncertainty.SightIsKnown);
        ScenarioUncertainty one = TestScenario.Read(With("uncertainty: {others: exact, current: 20 %}")).Uncertainty;
        Assert.Equal(ScenarioUncertainty.None with { Current = Spread.OfShare(0.2) }, one);
        Assert.Equal(0, TestScenario.Read(With("uncertainty: {samples: 0}")).Uncertainty.Samples);
    }

    [Theory]
    [InlineData("uncertainty: {current: 20}", "the number has no unit")]
    [InlineData("uncertainty: {current: 120 %}", "the value is too large")]
    [InlineData("uncertainty: {current: 5 ft}", "a unit of length")]
    [InlineData("uncertainty: {current: {between: [2 kn, 1 kn]}}", "out of order")]
    [InlineData("uncertainty: {depth: {triangular: [1 m, 3 m, 2 m]}}", "out of order")]
    [InlineData("uncertainty: {depth: {between: [1 m, 2 m], plus_or_minus: 1 m}}", "is given as well")]
    [InlineData("uncertainty: {samples: 99999}", "")]
    [InlineData("uncertainty: {wind: 10 %}", "unknown key")]
    [InlineData("tide: [{time: \"06:00\", current: 0 kn}]", "the list has 1 item")]
    [InlineData("tide: [{time: \"06:00\", current: 0 kn}, {time: \"05:00\", current: 1 kn}, {time: \"04:00\", current: 0 kn}]", "the time lies before")]
    [InlineData("tide: [{time: \"06:00\", current: 0 kn}, {time: \"07:00\", current: 1 kn}, {time: \"06:30\", current: 0 kn}]", "a day or more")]
    [InlineData("tide: [{time: \"06:00\", current: 0 kn}, {time: \"07:00\", current: 1 kn, depth_change: -12 ft}, {time: \"08:00\", current: 0 kn}]", "no water would be left")]
    public void What_does_not_fit_is_a_problem(string more, string message)
    {
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(With(more)));
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tide_may_run_past_midnight()
    {
        IReadOnlyList<TidePoint> tide = TestScenario.Read(With("tide: [{time: \"22:00\", current: 1 m/s}, {time: \"00:30\", current: 0 m/s, depth_change: -0.5 m}, {time: \"02:00\", current: -0.4 m/s}]")).Tide;
        Assert.Equal([22, 24.5, 26], tide.Select(p => p.Hours));
        Assert.Equal(new TidePoint(26, -0.4, 0), tide[2]);
        Assert.Equal(-0.5, tide[1].DepthChange);
    }
}
