using LureSim.Decision;
using LureSim.Report.Units;

namespace LureSim.Cli.Hosting;

/// <summary>A plan with the files of its sheet, not yet written.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Colours">Its colours as a table.</param>
/// <param name="Sheet">Files of the sheet and its figures.</param>
internal sealed record PlanOutcome(Plan Plan, ColourTable Colours, IReadOnlyList<OutputFile> Sheet)
{
    /// <summary>Units of the sentences in it.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Us;
}
