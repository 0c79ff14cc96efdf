using LureSim.Report.Sheets;

namespace LureSim.Report.Trips;

// What the templates of trips and comparisons see: texts and lists, nothing left to compute.

internal sealed record TripSpotView(
    string Id,
    string Heading,
    string SpotLine,
    string Notes,
    string Weight,
    IReadOnlyList<LabelledText> Rows,
    IReadOnlyList<LabelledText> Numbers,
    IReadOnlyList<string> Reasons,
    IReadOnlyList<string> Warnings,
    IReadOnlyList<FigureView> Figures,
    IReadOnlyList<TableView> Tables);

internal sealed record PageView
{
    public required string Version { get; init; }

    public required string Style { get; init; }

    public required string Title { get; init; }

    public required string Lead { get; init; }

    public IReadOnlyList<TableView> Tables { get; init; } = [];

    public IReadOnlyList<LabelledText> Pack { get; init; } = [];

    public IReadOnlyList<TripSpotView> Spots { get; init; } = [];

    public IReadOnlyList<string> Answers { get; init; } = [];

    public IReadOnlyList<FigureView> Figures { get; init; } = [];

    public IReadOnlyList<LabelledText> Cautions { get; init; } = [];
}
