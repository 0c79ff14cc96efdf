using LureSim.Decision.Tide;

namespace LureSim.Cli.Hosting;

/// <summary>Weights for a tide with the files of their page, not yet written.</summary>
/// <param name="Table">The weights.</param>
/// <param name="Pages">Files of the page and its figures.</param>
internal sealed record TideOutcome(TideTable Table, IReadOnlyList<OutputFile> Pages);
