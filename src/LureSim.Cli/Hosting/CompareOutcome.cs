using LureSim.Decision.Comparison;

namespace LureSim.Cli.Hosting;

/// <summary>A comparison with its page, not yet written.</summary>
/// <param name="Comparison">The comparison.</param>
/// <param name="Pages">Files of the page and its figures.</param>
internal sealed record CompareOutcome(RigComparison Comparison, IReadOnlyList<OutputFile> Pages);
