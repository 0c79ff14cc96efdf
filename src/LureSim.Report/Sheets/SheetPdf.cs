using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Sheets;

/// <summary>Prints the card and the sheet of a spot: the card with the side view, then why, what to watch out for and the sink counts. Nothing is left behind its heading.</summary>
internal static class SheetPdf
{
    private const double Small = 12;
    private const double Body = 14;
    private static readonly OxyColor Warm = OxyColor.FromRgb(0xFF, 0xF7, 0xDC);

    /// <summary>The file's bytes; the same sheet gives the same bytes.</summary>
    public static byte[] Write(Sheet sheet)
    {
        UnitFormat format = new(sheet.Units);
        using PdfBook book = new(sheet.Scenario.Title);
        PdfPage.Add(book, page =>
        {
            Card(page, sheet.Card(), sheet.Scenario.Title, page.Left);
            page.Draw(Side(sheet), page.Left);
        });
        Queue<Action<PdfPage>> parts = new();
        Queue<double> heights = new();
        Add(heights, parts, ListHeight("Why", sheet.Why), page => List(page, "Why", sheet.Why));
        Add(heights, parts, ListHeight("Watch out", Watch(sheet)), page => List(page, "Watch out", Watch(sheet)));
        if (SheetTables.SinkCounts(sheet, format) is { } counts)
            Add(heights, parts, TableHeight(counts), page => Table(page, counts));
        if (TideWords.Line(sheet.Scenario.Tide, sheet.Units) is { Length: > 0 } tide)
            Add(heights, parts, PdfPage.HeightOf(tide, Body, PdfPage.TextWidth), page => page.Text(tide, Body, Palette.Ink));
        string spot = SpotWords.Line(sheet.Scenario.Spot, format);
        Add(heights, parts, PdfPage.HeightOf(spot, Small, PdfPage.TextWidth), page => page.Text(spot, Small, Palette.SoftInk));

        // A part that does not fit goes onto the next page whole, its heading with it.
        while (parts.Count > 0)
        {
            PdfPage.Add(book, page =>
            {
                page.Text(sheet.Scenario.Title, 16, Palette.Ink, bold: true);
                page.Rule(PdfPage.Accent, 2);
                for (bool first = true; parts.Count > 0 && (first || heights.Peek() <= page.Left); first = false)
                {
                    heights.Dequeue();
                    parts.Dequeue()(page);
                    page.Skip(10);
                }
            });
        }

        return book.Close();
    }

    /// <summary>A spot on one page: card, side view, and what to watch out for as far as there is room.</summary>
    public static void Front(PdfPage page, Sheet sheet, string title)
    {
        Card(page, sheet.Card(), title, page.Left);
        page.Draw(Side(sheet), 400);
        foreach (string text in SheetWriter.WatchOut(sheet).Concat(sheet.Why))
        {
            if (page.Left < PdfPage.HeightOf("• " + text, Small, PdfPage.TextWidth) + 4)
                break;
            page.Text("• " + text, Small, Palette.Ink);
        }
    }

    /// <summary>A card, its letters as large as its place allows.</summary>
    public static void Card(PdfPage page, Card card, string title, double height)
    {
        double size = 17;
        while (size > 10 && Height(card, title, size) > height)
            size -= 0.5;
        page.Text(title, size * 1.35, Palette.Ink, bold: true);
        page.Rule(Palette.Ink, 2);
        foreach (CardRow row in card.Rows)
        {
            page.Put(row.Label, PdfPage.Margin, page.Y, LabelWidth(size), size * 0.85, Palette.Ink, bold: true);
            page.Text(row.Text, size, OxyColors.Black, row.Label is "TIE ON" or "LURE", LabelWidth(size));
        }

        page.Skip(6);
    }

    private static double LabelWidth(double size) => 6.4 * size;

    private static double Height(Card card, string title, double size) =>
        PdfPage.HeightOf(title, size * 1.35, PdfPage.TextWidth, bold: true) + 24
        + card.Rows.Sum(row => PdfPage.HeightOf(row.Text, size, PdfPage.TextWidth - LabelWidth(size), row.Label is "TIE ON" or "LURE") + (0.25 * size));

    private static Figure Side(Sheet sheet) =>
        SideView.Create(sheet.Scenario, SheetWriter.Alike(sheet), sheet.Choice.First, sheet.Current, new FigureOptions(sheet.Units));

    private static IReadOnlyList<string> Watch(Sheet sheet) => [.. SheetWriter.WatchOut(sheet), string.Join(' ', SheetWriter.General(sheet))];

    private static void Add(Queue<double> heights, Queue<Action<PdfPage>> parts, double height, Action<PdfPage> draw)
    {
        heights.Enqueue(height);
        parts.Enqueue(draw);
    }

    private static double ListHeight(string heading, IEnumerable<string> texts) =>
        PdfPage.HeightOf(heading, 17, PdfPage.TextWidth, bold: true) + 8 + texts.Sum(text => PdfPage.HeightOf("• " + text, Body, PdfPage.TextWidth - 12) + (0.25 * Body)) + 8;

    private static void List(PdfPage page, string heading, IReadOnlyList<string> texts)
    {
        if (heading == "Watch out")
            page.Box(PdfPage.Margin - 6, page.Y - 4, PdfPage.TextWidth + 12, ListHeight(heading, texts), Warm, OxyColors.Undefined);
        page.Text(heading, 17, PdfPage.Accent, bold: true);
        foreach (string text in texts)
            page.Text("• " + text, Body, Palette.Ink, indent: 6);
        page.Skip(4);
    }

    private static List<(string Text, double Width, bool Bold)[]> Rows(TableView table)
    {
        double first = 0.2 * PdfPage.TextWidth, other = (PdfPage.TextWidth - first) / (table.Columns.Count - 1);
        List<(string Text, double Width, bool Bold)[]> rows = [[.. table.Columns.Select((column, i) => (column.Text, i == 0 ? first : other, true))]];
        rows.AddRange(table.Groups.SelectMany(group => group.Rows).Select(row => ((string, double, bool)[])
            [(row.Head, first, true), .. row.Cells.Select(cell => ($"{cell.Text} {cell.Note}".TrimEnd(), other, false))]));
        return rows;
    }

    private static double TableHeight(TableView table) =>
        PdfPage.HeightOf(table.Label, 17, PdfPage.TextWidth, bold: true) + PdfPage.HeightOf(table.Caption, Small, PdfPage.TextWidth) + 16
        + Rows(table).Sum(row => PdfPage.RowHeight(row, Small));

    private static void Table(PdfPage page, TableView table)
    {
        page.Text(table.Label, 17, PdfPage.Accent, bold: true);
        page.Text(table.Caption, Small, Palette.SoftInk);
        List<(string Text, double Width, bool Bold)[]> rows = Rows(table);
        for (int i = 0; i < rows.Count; i++)
            page.Row(rows[i], Small, i % 2 == 0 ? PdfPage.Tint : OxyColors.White);
    }
}
