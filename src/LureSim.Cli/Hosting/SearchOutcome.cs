using LureSim.Decision.Search;
using LureSim.Report.Units;

namespace LureSim.Cli.Hosting;

/// <summary>A search for a retrieve with its page, not yet written.</summary>
/// <param name="Search">The search.</param>
/// <param name="Units">Units of its sentences.</param>
/// <param name="Pages">Files of the page and its figures.</param>
internal sealed record SearchOutcome(RetrieveSearch Search, UnitSystem Units, IReadOnlyList<OutputFile> Pages);
