using LureSim.Light;
using LureSim.Sight;

namespace LureSim.Decision.Colours;

/// <summary>What the lure's colours look like where it runs.</summary>
/// <param name="Chart">Every colour of the tackle box against depth, from the surface to the bottom.</param>
/// <param name="RunningDepth">Depth at which the first choice runs: its median depth in the retrieve (m).</param>
/// <param name="AtRunningDepth">The same colours at that depth alone.</param>
/// <param name="RedDarkens">Depths at which a red lure goes dark in this water, by each criterion.</param>
/// <param name="Brightest">Index of the colour of greatest luminance at the running depth.</param>
/// <param name="Darkest">Index of the colour of least luminance at the running depth: the strongest silhouette from below.</param>
/// <param name="SeenLevel">How far off the fish makes out each colour at the running depth, looking level; farthest first.</param>
/// <param name="SeenFromBelow">The same looking up.</param>
/// <param name="Chosen">Index of the colour that the fish makes out farthest looking level.</param>
/// <param name="Eye">The eye of the target fish.</param>
public sealed record ColourFinding(
    ColourChart Chart,
    double RunningDepth,
    ColourChart AtRunningDepth,
    IReadOnlyList<DarkDepth> RedDarkens,
    int Brightest,
    int Darkest,
    IReadOnlyList<Sighting> SeenLevel,
    IReadOnlyList<Sighting> SeenFromBelow,
    int Chosen,
    FishEye Eye)
{
    /// <summary>The choice of colour where the first choice really runs; null for colours at a nominal depth, where <see cref="Chosen"/> is the one made out farthest.</summary>
    public ColourAdvice? Advice { get; init; }
}
