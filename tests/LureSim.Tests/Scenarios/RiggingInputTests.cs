using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

public class RiggingInputTests
{
    private const string Colours = "  colours: [white, dark purple, \"#7FFF00\"]";

    private static string WithRigging(string rigging) => TestScenario.With(Colours, $"  rigging: {rigging}\n{Colours}");

    [Fact]
    public void Without_a_word_the_lure_is_on_a_loop_and_put_on_cleanly()
    {
        TackleBox tackle = TestScenario.Read(TestScenario.Text).Tackle;
        Assert.Equal(new Rigging(), tackle.Rigging);
        Assert.True(tackle.Rigging.IsClean);
        Assert.All(tackle.JigHeads, head => Assert.Equal(WeightPlace.Nose, head.Place));
    }

    [Fact]
    public void Everything_can_be_said()
    {
        Rigging rigging = TestScenario.Read(WithRigging("{knot: split ring, loop_length: 8 mm, shank: 40 mm, exit_sideways: -2 mm, exit_above: 1 mm, bend: 12 deg, point_lean: -10 deg, head_turn: 5 deg, pulled_up: 3 mm}")).Tackle.Rigging;
        Assert.Equal((KnotStyle.SplitRing, 0.008), (rigging.Knot, rigging.LoopLength));
        Assert.Equal(0.04 / 0.0889, rigging.ShankShare!.Value, 1e-12);
        Assert.Equal([-0.002, 0.001, 0.003], [rigging.ExitSideways, rigging.ExitAbove, rigging.PulledUp]);
        Assert.Equal([12 * Math.PI / 180, -10 * Math.PI / 180, 5 * Math.PI / 180], [rigging.Bend, rigging.PointLean, rigging.HeadTurn], (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.False(rigging.IsClean);
        Assert.True(rigging.Straightened().IsClean);
        Assert.Equal(KnotStyle.SplitRing, rigging.Straightened().Knot);
        Assert.Equal((KnotStyle.Snug, 0.0), (TestScenario.Read(WithRigging("{knot: snug}")).Tackle.Rigging.Knot, TestScenario.Read(WithRigging("{knot: snug}")).Tackle.Rigging.LoopLength));
        Assert.Equal(0.6, TestScenario.Read(WithRigging("{shank_share: 60 %}")).Tackle.Rigging.ShankShare);
    }

    [Theory]
    [InlineData("{knot: snug, loop_length: 8 mm}", "tackle.rigging.loop_length", "has no loop")]
    [InlineData("{shank: 40 mm, shank_share: 50 %}", "tackle.rigging.shank_share", "twice")]
    [InlineData("{shank: 100 mm}", "tackle.rigging.shank", "does not fit")]
    [InlineData("{exit_sideways: 10 mm}", "tackle.rigging.exit_sideways", "beyond the body")]
    [InlineData("{bend: 60 deg}", "tackle.rigging.bend", "too large")]
    [InlineData("{knot: looop}", "tackle.rigging.knot", "unknown word")]
    public void Impossible_rigging_is_refused_where_it_stands(string rigging, string key, string message)
    {
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(WithRigging(rigging)));
        Assert.Equal(key, problem.Key);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Hard_lures_are_read_and_fished_by_themselves()
    {
        TackleBox tackle = TestScenario.Read(TestScenario.With("    - {profile: paddle tail, length: 3.5 in}\n", """
                - {profile: paddle tail, length: 3.5 in}
                - {profile: hard twitchbait, length: 90 mm, float: floating, lip: {length: 12 mm, width: 10 mm, angle: 40 deg}}
                - {profile: spoon, length: 60 mm, width: 22 mm, thickness: 1.3 mm, metal: steel}

            """)).Tackle;
        LureBody hard = tackle.Bodies[1], spoon = tackle.Bodies[2];
        Assert.Equal((HardFloat.Floating, 940.0), (hard.Buoyancy, hard.Density));
        Assert.Equal(new LipShape(0.012, 0.01, 40 * Math.PI / 180), hard.Lip);
        Assert.Equal(HeadMetal.Steel, spoon.Metal);
        Assert.Equal(0.0013, spoon.Height, 1e-12);
        Assert.Equal(["unweighted", "1/8 oz", "1/4 oz tungsten", "90 mm hard twitchbait", "60 mm spoon"], tackle.Lures.Select(lure => lure.Head.Label));
        Assert.All(tackle.Lures.Take(3), lure => Assert.Same(tackle.Bodies[0], lure.Body));
        Assert.True(tackle.Lures[4].Head.IsNone);
    }

    [Theory]
    [InlineData("{profile: soft jerkbait, length: 4 in, float: floating}", "float belongs to a hard twitchbait")]
    [InlineData("{profile: hard twitchbait, length: 4 in, metal: steel}", "metal belongs to a spoon")]
    [InlineData("{profile: spoon, length: 2 in, density: 1000 kg/m3}", "that of its metal")]
    [InlineData("{profile: spoon, length: 2 in, height: 5 mm}", "no height")]
    [InlineData("{profile: hard twitchbait, length: 1 in, lip: {length: 10 mm, width: 30 mm, angle: 45 deg}}", "wider than the body")]
    public void Keys_of_another_profile_are_refused(string body, string message)
    {
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(TestScenario.With("{profile: paddle tail, length: 3.5 in}", "{profile: paddle tail, length: 3.5 in}\n    - " + body)));
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_soft_bodies_need_jig_heads()
    {
        string none = TestScenario.With("""
              jig_heads:
                - unweighted
                - 1/8 oz
                - {weight: 1/4 oz, metal: tungsten, hook: 1.2 g}

            """, "");
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(none));
        Assert.Contains("needs a jig head", problem.Message, StringComparison.Ordinal);
        string hard = none.Replace("{profile: paddle tail, length: 3.5 in}", "{profile: spoon, length: 60 mm}", StringComparison.Ordinal)
            .Replace("    - {profile: soft jerkbait, length: 5 in, height: 16 mm, width: 13 mm, density: 1.1 g/cm3, name: plain stick}\n", "", StringComparison.Ordinal);
        TackleBox tackle = TestScenario.Read(hard).Tackle;
        Assert.Empty(tackle.JigHeads);
        Assert.Single(tackle.Lures);
    }

    [Fact]
    public void Weight_may_sit_on_the_shank()
    {
        TackleBox tackle = TestScenario.Read(TestScenario.With("- 1/8 oz", "- 1/8 oz\n    - {weight: 1/8 oz, place: shank}")).Tackle;
        Assert.Equal((WeightPlace.Shank, "1/8 oz on the shank"), (tackle.JigHeads[2].Place, tackle.JigHeads[2].Label));
        Assert.Equal("3.5 g on the shank", new UnitFormat(UnitSystem.Metric).HeadText(tackle.JigHeads[2]));
    }
}
