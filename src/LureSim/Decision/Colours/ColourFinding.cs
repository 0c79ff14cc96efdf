using LureSim.Light;
using LureSim.Sight;

namespace LureSim.Decision.Colours;

/// <summary>What the lure's colours look like where it runs, and which of them to take.</summary>
/// <param name="Chart">Every colour of the tackle box against depth, from the surface to the bottom.</param>
/// <param name="RunningDepth">Depth at which the first choice runs: its median depth in the retrieve (m).</param>
/// <param name="AtRunningDepth">The same colours at that depth alone.</param>
/// <param name="RedDarkens">Depths at which a red lure goes dark in this water, by each criterion.</param>
/// <param name="Advice">The choice of colour: the only place where colours are compared by how far off they are seen.</param>
/// <param name="Eye">The eye of the target fish.</param>
public sealed record ColourFinding(
    ColourChart Chart,
    double RunningDepth,
    ColourChart AtRunningDepth,
    IReadOnlyList<DarkDepth> RedDarkens,
    ColourAdvice Advice,
    FishEye Eye);
