using LureSim.Report.Words;

namespace LureSim.Report.Sheets;

// What the page template sees: texts and lists, nothing left to compute.

internal sealed record LabelledText(string Label, string Value);

internal sealed record FigureView(string Name, string Wide, string Narrow, string Caption)
{
    /// <summary>False for a drawing whose hues are what it shows.</summary>
    public required bool IsPlot { get; init; }
}

internal sealed record ColumnView(string Text, string Note = "", bool IsText = false);

internal sealed record CellView(string Text, string Note = "", string Class = "");

internal sealed record RowView(string Head, IReadOnlyList<CellView> Cells, string Class = "");

internal sealed record GroupView(string Heading, IReadOnlyList<RowView> Rows);

internal sealed record TableView(string Label, string Caption, IReadOnlyList<ColumnView> Columns, IReadOnlyList<GroupView> Groups, string Class = "", string Summary = "", bool Short = false);

internal sealed record SectionView(string Id, string Heading)
{
    public IReadOnlyList<string> Texts { get; init; } = [];

    /// <summary>Three numbers that justify what the section recommends; its first figure is the picture to them.</summary>
    public IReadOnlyList<LabelledText> Numbers { get; init; } = [];

    public IReadOnlyList<FigureView> Figures { get; init; } = [];

    public IReadOnlyList<TableView> Tables { get; init; } = [];

    public IReadOnlyList<LabelledText> Items { get; init; } = [];

    public bool IsEmpty => Figures.Count == 0 && Tables.Count == 0 && Items.Count == 0;
}

/// <summary>What stands on every page: the frame of the document.</summary>
internal abstract record PageFrame
{
    public string Version { get; } = SheetWriter.Version;

    public string Style { get; } = SheetWriter.Resource("sheet.css");

    public required string Language { get; init; }

    public required string Title { get; init; }

    /// <summary>"night" for a page that is dark always.</summary>
    public string Scheme { get; init; } = "";
}

internal sealed record CardView(string Id, string Heading, IReadOnlyList<LabelledText> Rows)
{
    public static CardView Of(Card card, string id, string heading) =>
        new(id, heading, [.. card.Rows.Select(row => new LabelledText(row.Label, row.Text))]);
}

internal sealed record SheetView : PageFrame
{
    public required string SpotLine { get; init; }

    public required string Notes { get; init; }

    public required CardView Card { get; init; }

    public required IReadOnlyList<FigureView> Figures { get; init; }

    public required IReadOnlyList<string> Why { get; init; }

    public required IReadOnlyList<string> Warnings { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Sink counts of the choice and its neighbors; none or one.</summary>
    public required IReadOnlyList<TableView> Tables { get; init; }

    public required string Tide { get; init; }

    public required IReadOnlyList<SectionView> Sections { get; init; }
}
