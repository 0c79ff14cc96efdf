using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>The bottom along the cast, as people write it, and what is said of what cannot be.</summary>
public class BottomInputTests
{
    private const double Foot = 0.3048;
    private const string Points = "[0 ft: 2 ft, 30 ft: 3 ft, 36 ft: 12 ft]";

    // Lines in place of depth and grass.
    private static string With(string lines) => TestScenario.With("  depth: 12 ft\n", string.Concat(lines.Split('\n').Select(line => $"  {line}\n"))).Replace("  grass_height: 1 ft\n", "", StringComparison.Ordinal);

    private static BottomProfile Profile(string lines) => TestScenario.Read(With(lines)).Spot.Profile!;

    [Fact]
    public void Points_are_read_in_brackets_in_braces_and_on_lines()
    {
        foreach (string text in new[] { $"bottom_profile: {Points}", "bottom_profile: {0 ft: 2 ft, 30 ft: 3 ft, 36 ft: 12 ft}", "bottom_profile:\n  - 0 ft: 2 ft\n  - 30 ft: 3 ft\n  - 36 ft: 12 ft", "bottom_profile:\n  0 ft: 2 ft\n  30 ft: 3 ft\n  36 ft: 12 ft" })
        {
            Spot spot = TestScenario.Read(With(text)).Spot;
            Assert.Equal([0.0, 30, 36], spot.Profile!.Points.Select(p => Math.Round(p.Distance / Foot, 9)));
            Assert.Equal([2.0, 3, 12], spot.Profile.Points.Select(p => Math.Round(p.Depth / Foot, 9)));
            Assert.Equal(12 * Foot, spot.Depth, 1e-12);

            // One to four feet above the bottom where it is deepest, and along with it elsewhere.
            Assert.Equal(8 * Foot, spot.StrikeZone.Top, 1e-9);
            Assert.Equal(11 * Foot, spot.StrikeZone.Bottom, 1e-9);
            Assert.True(spot.StrikeZone.MovesWithBottom);
        }
    }

    [Fact]
    public void A_depth_beside_a_profile_raises_or_lowers_it() =>
        Assert.Equal([4.0, 5, 14], Profile($"depth: 14 ft\nbottom_profile: {Points}").Points.Select(p => Math.Round(p.Depth / Foot, 9)));

    [Theory]
    [InlineData("{shape: ledge, at: 30 ft, near_depth: 3 ft, far_depth: 12 ft}", "30:3 33:12")]
    [InlineData("{shape: drop-off, at: 30 ft, width: 6 ft, near_depth: 3 ft, far_depth: 12 ft}", "30:3 36:12")]
    [InlineData("{shape: bank, at: 0 ft, near_depth: 8 ft, far_depth: 12 ft}", "0:8 40:12")]
    [InlineData("{shape: channel edge, at: 20 ft, near_depth: 6 ft, far_depth: 12 ft}", "20:6 38:12")]
    [InlineData("{shape: hole, at: 20 ft, near_depth: 6 ft, middle_depth: 12 ft}", "20:6 25:12 35:12 40:6")]
    [InlineData("{shape: sandbar, at: 20 ft, width: 8 ft, near_depth: 6 ft, middle_depth: 5 ft, far_depth: 12 ft}", "20:6 22:5 26:5 28:12")]
    public void Shapes_are_points(string shape, string points) =>
        Assert.Equal(points, string.Join(' ', Profile($"bottom_profile: {shape}").Points.Select(p => FormattableString.Invariant($"{Math.Round(p.Distance / Foot, 6)}:{Math.Round(p.Depth / Foot, 6)}"))));

    [Fact]
    public void Stretches_are_read_with_a_profile_and_without()
    {
        const string Stretches = "bottom_stretches:\n  - {from: 0 ft, to: 30 ft, bottom: mud, grass_height: 6 in}\n  - {from: 30 ft, to: 60 ft, bottom: oysters, name: bar}";
        BottomProfile sloping = Profile($"bottom_profile: {Points}\n{Stretches}"), even = Profile($"depth: 12 ft\n{Stretches}");
        Assert.Equal(sloping.Stretches, even.Stretches);
        Assert.Equal([BottomKind.Mud, BottomKind.Shell], even.Stretches.Select(s => s.Bottom!.Value));
        Assert.Equal(0.1524, even.Stretches[0].GrassHeight!.Value, 1e-9);
        Assert.Equal("bar", even.Stretches[1].Name);
        Assert.Equal((12 * Foot, 12 * Foot), (even.Deepest, even.Shallowest));
        Assert.False(even.IsEven);
    }

    // Lines, key of the problem, a part of the message, a part of the fix.
    [Theory]
    [InlineData("target_length: 20 in", "spot.depth", "missing", "bottom_profile: [")]
    [InlineData("bottom_profile: [0 ft: 0 ft, 30 ft: 3 ft]", "spot.bottom_profile[0]", "comes out of the water", "begin the profile where there is water")]
    [InlineData("bottom_profile: [0 ft: -1 ft, 30 ft: 3 ft]", "spot.bottom_profile[0]", "comes out of the water", "begin the profile")]
    [InlineData("bottom_profile: [0 ft: 3 in, 30 ft: 3 ft]", "spot.bottom_profile[0]", "hardly any water", "begin the profile")]
    [InlineData("depth: 8 ft\nbottom_profile: [0 ft: 2 ft, 30 ft: 3 ft, 36 ft: 12 ft]", "spot.bottom_profile[0]", "comes out of the water", "raise depth")]
    [InlineData("bottom_profile: [0 ft: 2 ft, 30 ft: 3 ft, 30 ft: 12 ft]", "spot.bottom_profile[2]", "no farther out", "order of distance")]
    [InlineData("bottom_profile: [0 ft: 2 ft, 30: 12 ft]", "spot.bottom_profile[1]", "unit", "add a unit")]
    [InlineData("bottom_profile: [0 ft, 2 ft]", "spot.bottom_profile", "pairs", "[0 ft: 2 ft")]
    [InlineData("bottom_profile: 12 ft", "spot.bottom_profile", "pairs", "[0 ft: 2 ft")]
    [InlineData("bottom_profile: {shape: ledge, at: 30 ft, near_depth: 12 ft}", "spot.bottom_profile.shape", "beyond the ledge", "far_depth")]
    [InlineData("bottom_profile: {shape: ledge, at: 30 ft, near_depth: 2 ft, far_depth: 12 ft, middle_depth: 4 ft}", "spot.bottom_profile.middle_depth", "no middle", "remove")]
    [InlineData("bottom_profile: {shape: hole, at: 30 ft, near_depth: 12 ft}", "spot.bottom_profile.shape", "in the middle", "middle_depth")]
    [InlineData("bottom_profile: {shape: hole, at: 30 ft, near_depth: 12 ft, middle_depth: 6 ft}", "spot.bottom_profile.middle_depth", "deeper in its middle", "hump")]
    [InlineData("bottom_profile: {shape: bar, at: 30 ft, near_depth: 10 ft, middle_depth: 12 ft}", "spot.bottom_profile.middle_depth", "shallower in its middle", "hole")]
    [InlineData("bottom_profile: {shape: lege, at: 30 ft, near_depth: 2 ft, far_depth: 12 ft}", "spot.bottom_profile.shape", "unknown word", "ledge")]
    [InlineData("bottom_profile: {shape: ledge, at: 390 ft, width: 10 ft, near_depth: 2 ft, far_depth: 12 ft}", "spot.bottom_profile.width", "farther out", "nearer")]
    [InlineData("depth: 12 ft\nbottom_stretches: [{from: 20 ft, to: 10 ft, bottom: mud}]", "spot.bottom_stretches[0].to", "ends where it begins", "nearer")]
    [InlineData("depth: 12 ft\nbottom_stretches: [{from: 0 ft, to: 30 ft, bottom: mud}, {from: 25 ft, to: 40 ft, bottom: sand}]", "spot.bottom_stretches[1].from", "overlaps", "where the other ends")]
    [InlineData("depth: 12 ft\nbottom_stretches: [{from: 90 ft, to: 100 ft, bottom: mud}]", "spot.bottom_stretches[0].from", "beyond the longest cast", "cast farther")]
    [InlineData("depth: 12 ft\nbottom_stretches: [{from: 0 ft, to: 30 ft}]", "spot.bottom_stretches[0]", "says nothing", "add")]
    [InlineData("bottom_profile: [0 ft: 2 ft, 36 ft: 12 ft]\nbottom_stretches: [{from: 0 ft, to: 30 ft, grass_height: 3 ft}]", "spot.bottom_stretches[0].grass_height", "as high as the water", "lower the grass")]
    [InlineData("bottom_profile: [0 ft: 2 ft, 36 ft: 12 ft]\ngrass_height: 3 ft", "spot.grass_height", "shallowest", "bottom_stretches")]
    public void What_cannot_be_is_said_with_a_way_out(string lines, string key, string message, string fix)
    {
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(With(lines)));
        Assert.Equal(key, problem.Key);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(fix, problem.Fix, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Allowed);
    }

    [Fact]
    public void A_tide_that_dries_the_deepest_place_is_refused_and_one_that_dries_the_bank_is_not()
    {
        string scenario = With($"bottom_profile: {Points}") + "\ntide:\n  - {time: \"06:00\", current: 0.5 kn}\n  - {time: \"09:00\", current: 0.2 kn}\n  - {time: \"12:00\", current: 0.1 kn, depth_change: ";
        Assert.Equal("tide[2].depth_change", Assert.Single(TestScenario.Problems(scenario + "-12 ft}\n")).Key);
        Assert.Equal(-3 * Foot, TestScenario.Read(scenario + "-3 ft}\n").Tide[2].DepthChange, 1e-9);
    }
}
