namespace LureSim.Report.Sheets;

// What the page template sees: texts and lists, nothing left to compute.

internal sealed record LabelledText(string Label, string Value);

internal sealed record FigureView(string Name, string Wide, string Narrow, string Caption);

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

internal sealed record SheetView
{
    public required string Version { get; init; }

    public required string Style { get; init; }

    public required string Title { get; init; }

    public required string SpotLine { get; init; }

    public required string Notes { get; init; }

    public required string ChoiceWeight { get; init; }

    public required IReadOnlyList<LabelledText> ChoiceRows { get; init; }

    public required IReadOnlyList<LabelledText> Numbers { get; init; }

    public required IReadOnlyList<string> Reasons { get; init; }

    public required IReadOnlyList<string> Warnings { get; init; }

    public required IReadOnlyList<SectionView> Sections { get; init; }
}
