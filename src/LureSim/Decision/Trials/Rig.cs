using LureSim.Model;

namespace LureSim.Decision.Trials;

/// <summary>One lure on one line, fished one way.</summary>
/// <param name="Head">Jig head.</param>
/// <param name="Body">Soft body.</param>
/// <param name="Presentation">The way it is fished.</param>
public sealed record Rig(JigHead Head, LureBody Body, Presentation Presentation);
