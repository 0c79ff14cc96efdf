using LureSim.Model;

namespace LureSim.Decision.Trials;

/// <summary>One lure on one line, fished one way.</summary>
/// <param name="Head">Jig head.</param>
/// <param name="Body">Soft body.</param>
/// <param name="Presentation">The way it is fished.</param>
public sealed record Rig(JigHead Head, LureBody Body, Presentation Presentation)
{
    /// <summary>Whether two rigs are the same bait worked the same way; a sink count follows the head and does not count.</summary>
    internal static bool SameWay(Rig a, Rig b) => a.Body == b.Body && a.Presentation with { CountDown = null } == b.Presentation with { CountDown = null };
}
