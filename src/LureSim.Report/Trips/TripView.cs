using LureSim.Report.Sheets;

namespace LureSim.Report.Trips;

// What the templates of trips and comparisons see: texts and lists, nothing left to compute.

internal sealed record TripSpotView(
    string Id,
    string Heading,
    string Notes,
    IReadOnlyList<LabelledText> Rows,
    IReadOnlyList<string> Why,
    IReadOnlyList<string> Warnings,
    IReadOnlyList<FigureView> Figures,
    IReadOnlyList<TableView> Tables);

internal sealed record PageView : PageFrame
{
    public required string Lead { get; init; }

    public IReadOnlyList<CardView> Cards { get; init; } = [];

    public IReadOnlyList<TableView> Tables { get; init; } = [];

    public IReadOnlyList<LabelledText> Pack { get; init; } = [];

    public IReadOnlyList<TripSpotView> Spots { get; init; } = [];

    public string AnswerHeading { get; init; } = "In short";

    public IReadOnlyList<string> Answers { get; init; } = [];

    public IReadOnlyList<FigureView> Figures { get; init; } = [];

    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Jump links: id and text of each part of the page.</summary>
    public IReadOnlyList<LabelledText> Links =>
    [
        .. Cards.Take(1).Select(card => new LabelledText(card.Id, "Card")),
        .. Answers.Count > 0 ? [new("answer", AnswerHeading)] : Array.Empty<LabelledText>(),
        .. Pack.Count > 0 ? [new("pack", "What to pack")] : Array.Empty<LabelledText>(),
        .. Spots.Select(spot => new LabelledText(spot.Id, spot.Heading)),
        new("watch", "Watch out"),
    ];
}
