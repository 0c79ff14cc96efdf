using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Sheets;

/// <summary>Prints the card and the sheet of a spot: the card with the side view, then why, what to watch out for and the sink counts. Nothing is left behind its heading.</summary>
internal static class SheetPdf
{
    private const string WatchOut = "Watch out";
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
        List<Block> blocks = [ListBlock("Why", sheet.Why), ListBlock(WatchOut, Watch(sheet))];
        if (SheetTables.SinkCounts(sheet, format) is { } counts)
            blocks.Add(new(TableHeight(counts), page => Table(page, counts)));
        if (TideWords.Line(sheet.Scenario.Tide, sheet.Units) is { Length: > 0 } tide)
            blocks.Add(TextBlock(tide, Body));
        blocks.Add(TextBlock(SpotWords.Line(sheet.Scenario.Spot, format), Small));
        Flow(book, sheet.Scenario.Title, blocks);
        return book.Close();
    }

    /// <summary>Cards, an answer, pictures and cautions to print; the bytes of the file. The same content gives the same bytes.</summary>
    public static byte[] Write(string title, IReadOnlyList<(Card Card, string Heading)> cards, string heading, IReadOnlyList<string> answers, IReadOnlyList<Figure> figures, IReadOnlyList<string> cautions)
    {
        using PdfBook book = new(title);
        List<Block> blocks = [.. cards.Select(item => new Block(Height(item.Card, item.Heading, Body), page => Card(page, item.Card, item.Heading, Height(item.Card, item.Heading, Body))))];
        if (answers.Count > 0)
            blocks.Add(ListBlock(heading, answers));
        blocks.AddRange(figures.Select(figure =>
        {
            double height = figure.Height * Math.Min(1, PdfPage.TextWidth / figure.Width);
            return new Block(height + PdfPage.HeightOf(figure.Caption, Small, PdfPage.TextWidth) + 8, page =>
            {
                page.Draw(figure, height);
                page.Text(figure.Caption, Small, Palette.SoftInk);
            });
        }));
        blocks.Add(ListBlock(WatchOut, cautions));
        Flow(book, title, blocks);
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

    // A part that does not fit goes onto the next page whole, its heading with it.
    private static void Flow(PdfBook book, string title, IReadOnlyList<Block> blocks)
    {
        Queue<Block> left = new(blocks);
        while (left.Count > 0)
        {
            PdfPage.Add(book, page =>
            {
                page.Text(title, 16, Palette.Ink, bold: true);
                page.Rule(PdfPage.Accent, 2);
                for (bool first = true; left.TryPeek(out Block? block) && (first || block.Height <= page.Left); first = false)
                {
                    left.Dequeue().Draw(page);
                    page.Skip(10);
                }
            });
        }
    }

    private static Block TextBlock(string text, double size) =>
        new(PdfPage.HeightOf(text, size, PdfPage.TextWidth), page => page.Text(text, size, size < Body ? Palette.SoftInk : Palette.Ink));

    private static Block ListBlock(string heading, IReadOnlyList<string> texts) => new(ListHeight(heading, texts), page => List(page, heading, texts));

    private static double ListHeight(string heading, IEnumerable<string> texts) =>
        PdfPage.HeightOf(heading, 17, PdfPage.TextWidth, bold: true) + 8 + texts.Sum(text => PdfPage.HeightOf("• " + text, Body, PdfPage.TextWidth - 12) + (0.25 * Body)) + 8;

    private static void List(PdfPage page, string heading, IReadOnlyList<string> texts)
    {
        if (heading == WatchOut)
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

    // Something that stays together on a page, and its height.
    private sealed record Block(double Height, Action<PdfPage> Draw);
}
