using LureSim.Casting;
using LureSim.Model;
using LureSim.Scenarios;
using LureSim.Tackle;

namespace LureSim.Tests.Scenarios;

/// <summary>Hands and gear in the words of the trade, and what is wrong with them.</summary>
public class GearInputTests
{
    private static string With(string old, string now) => TestScenario.With(old, now);

    private const string Height = "  rod_tip_height: 4 ft", Reel = "  reel: {gear_ratio: 6.2, spool_diameter: 45 mm}", Current = "  current: {speed: 1 kn, direction: left, profile: log}";

    [Fact]
    public void A_rod_is_read_by_length_and_power_in_one_line()
    {
        Rod rod = TestScenario.Read(With(Height, Height + "\n  rod: 7 ft 6 in medium heavy")).Tackle.Rod!;
        Assert.Equal(7.5 * 0.3048, rod.Length, 1e-9);
        Assert.Equal(TacklePresets.Rod(7.5 * 0.3048, RodPower.MediumHeavy), rod);
        Assert.Equal(rod, TestScenario.Read(With(Height, Height + "\n  rod: {length: 7.5 ft, power: MH}")).Tackle.Rod);
    }

    [Fact]
    public void The_lures_printed_on_a_rod_go_before_its_power()
    {
        Rod rod = TestScenario.Read(With(Height, Height + "\n  rod: {length: 7 ft, lures: [1/8 oz, 1/2 oz]}")).Tackle.Rod!;
        Assert.Equal(0.5 * 0.028349523125, rod.HeaviestLure, 1e-9);
    }

    [Theory]
    [InlineData("3000", 5.8, 0.045)]
    [InlineData("{size: 3000, gear_ratio: 6.2}", 6.2, 0.045)]
    [InlineData("{size: 150}", 7.1, 0.034)]
    public void A_reel_is_read_by_the_size_printed_on_it(string text, double ratio, double spool)
    {
        Reel reel = TestScenario.Read(With(Reel, $"  reel: {text}")).Tackle.Reel;
        Assert.Equal(ratio, reel.GearRatio);
        Assert.Equal(spool, reel.SpoolDiameter, 1e-9);
    }

    [Fact]
    public void Where_you_stand_gives_the_height_of_the_tip_and_its_spread()
    {
        Scenario scenario = TestScenario.Read(With(Height, "  stand: skiff").Replace("line_left: 4 m", "line_left: 6 m", StringComparison.Ordinal));
        Assert.Equal(1.8, scenario.Tackle.RodTipHeight);
        Assert.Equal(Spread.OfShare(0.25), scenario.Uncertainty.RodHeight);
    }

    [Theory]
    [InlineData("outgoing 0.8 kn, to my right", 0.8, 270, TideStage.Outgoing)]
    [InlineData("0.8 knots to the left", 0.8, 90, null)]
    [InlineData("rising, 1 kn away", 1, 0, TideStage.Incoming)]
    [InlineData("slack", 0, 0, null)]
    public void A_current_is_read_in_one_line(string text, double knots, double degrees, TideStage? stage)
    {
        Spot spot = TestScenario.Read(With(Current, $"  current: {text}")).Spot;
        Assert.Equal(knots * 1852 / 3600, spot.CurrentSpeed, 1e-9);
        Assert.Equal(degrees * Math.PI / 180, spot.CurrentDirection, 1e-9);
        Assert.Equal(stage, spot.TideStage);
    }

    [Theory]
    [InlineData("60 ft with 1/4 oz")]
    [InlineData("60 feet with a 1/4 oz")]
    [InlineData("{length: 60 ft, with: 1/4 oz}")]
    public void A_cast_is_read_with_the_lure_that_it_is_known_with(string text)
    {
        Scenario scenario = TestScenario.Read(With("cast: 60 ft", $"cast: {text}"));
        Assert.Equal(60 * 0.3048, scenario.Presentations[0].CastLength, 1e-9);
        Assert.Equal(scenario.Tackle.JigHeads[2], scenario.Presentations[0].CastWith!.Head);
    }

    [Fact]
    public void A_full_cast_goes_as_far_as_the_rod_throws()
    {
        Scenario scenario = TestScenario.Read(With("cast: 60 ft", "cast: full cast").Replace(Height, Height + "\n  rod: 7 ft medium", StringComparison.Ordinal));
        Assert.True(scenario.Presentations[0].FullCast);
        Assert.Equal(scenario.Presentations[0].CastLength, CastReach.Easy(scenario.Tackle, scenario.Tackle.JigHeads[1], scenario.Tackle.Bodies[0]), 1e-9);
    }

    [Theory]
    [InlineData("cast: 60 ft", "cast: 262 ft with 1/16 oz", "presentations[0].cast.length", "throws 1/16 oz so far")]
    [InlineData("cast: 60 ft", "cast: 60 ft with a feather", "presentations[0].cast.with", "")]
    [InlineData("cast: 60 ft", "cast: full cast", "presentations[0].cast", "needs a rod")]
    [InlineData(Current, "  current: 0.8 kn", "spot.current.direction", "missing")]
    [InlineData(Current, "  current: outgoing 0.8 kn, sideways", "spot.current.direction", "")]
    [InlineData(Reel, "  reel: 3100", "tackle.reel", "")]
    [InlineData(Reel, "  reel: {gear_ratio: 6.2}", "tackle.reel.spool_diameter", "missing")]
    [InlineData(Height, "  rod: {length: 7 ft, lures: [1/2 oz, 1/8 oz]}\n  rod_tip_height: 4 ft", "tackle.rod.lures[0]", "no lighter")]
    [InlineData(Height, "  rod: 7 ft soft\n  rod_tip_height: 4 ft", "tackle.rod.power", "")]
    [InlineData(Height, "  stand: boat\n  rod_tip_height: 4 ft", "tackle.rod_tip_height", "given as well")]
    [InlineData(Height, "  stand: helicopter", "tackle.stand", "")]
    public void What_is_wrong_is_said_at_its_key_with_a_way_out(string old, string now, string key, string message)
    {
        IReadOnlyList<ScenarioProblem> problems = TestScenario.Problems(With(old, now));
        ScenarioProblem problem = Assert.Single(problems, item => item.Key == key);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.True(problem.Line > 1 && problem.Allowed.Length > 0 && problem.Fix.Length > 0);
    }
}
