using LureSim.Decision.RigChecks;

namespace LureSim.Cli.Hosting;

/// <summary>A check of rigs with its figures, not yet written.</summary>
/// <param name="Sheet">The check.</param>
/// <param name="Figures">Files of the figures; empty where none were asked for.</param>
internal sealed record ActionOutcome(RigSheet Sheet, IReadOnlyList<OutputFile> Figures);
