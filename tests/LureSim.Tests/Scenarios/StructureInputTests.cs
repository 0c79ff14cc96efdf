using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>What stands beside the cast, as people write it.</summary>
public class StructureInputTests
{
    private const double Foot = 0.3048;

    private static string With(string item) => TestScenario.With("  grass_height: 1 ft\n", $"  structure:\n    - {item}\n");

    [Fact]
    public void A_dock_shades_what_is_under_it_and_a_post_nothing()
    {
        SpotStructure dock = Assert.Single(TestScenario.Read(With("{kind: dock, from: 30 ft, to: 50 ft, right: 4 ft, width: 8 ft}")).Spot.Structures);
        Assert.Equal((StructureKind.Overhang, StructureRole.PassClose), (dock.Kind, dock.Role));
        Assert.Equal([30.0, 50, -4, 8, 3, 3, 30, 50], ((double[])[dock.From, dock.To, dock.Left, dock.Width, dock.Height, dock.Reach, dock.ShadeFrom!.Value, dock.ShadeTo!.Value]).Select(v => Math.Round(v / Foot, 9)));
        SpotStructure post = Assert.Single(TestScenario.Read(With("{kind: piling, from: 30 ft, left: 2 ft, pass: keep off}")).Spot.Structures);
        Assert.Equal((StructureKind.Posts, StructureRole.KeepOff, (double?)null), (post.Kind, post.Role, post.ShadeFrom));
        Assert.Equal(31, post.To / Foot, 1e-9);
    }

    [Theory]
    [InlineData("{kind: posts, from: 90 ft}", "from", "beyond the longest cast", "cast farther")]
    [InlineData("{kind: posts, from: 40 ft, to: 30 ft}", "to", "nearer than it begins", "nearer to the rod first")]
    [InlineData("{kind: posts, from: 30 ft, left: 2 ft, right: 2 ft}", "right", "to the left and to the right", "remove one")]
    [InlineData("{kind: posts, from: 30 ft, height: 2 ft}", "height", "through all the water", "remove height")]
    [InlineData("{kind: oyster clump, from: 30 ft, height: 12 ft}", "height", "as high as the water", "posts")]
    [InlineData("{kind: overhang, from: 30 ft, shade: [40 ft, 30 ft]}", "shade[1]", "the shade ends", "nearer")]
    [InlineData("{kind: pilling, from: 30 ft}", "kind", "unknown word", "posts")]
    public void What_cannot_be_is_said_with_a_way_out(string item, string key, string message, string fix)
    {
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(With(item)));
        Assert.Equal($"spot.structure[0].{key}", problem.Key);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(fix, problem.Fix, StringComparison.Ordinal);
    }
}
