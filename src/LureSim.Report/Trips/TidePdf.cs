using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using LureSim.Report.Sheets;
using OxyPlot;

namespace LureSim.Report.Trips;

/// <summary>Prints the weights for a tide: by the hour where there is a tide, and the table by depth and current. What does not fit on a page goes onto the next.</summary>
internal static class TidePdf
{
    private const double Small = 11.5;
    private const double Gap = 10;

    // Share of the width for the first column of a table; the others are alike.
    private const double FirstColumn = 0.13;

    /// <summary>The file's bytes; the same table gives the same bytes.</summary>
    /// <param name="title">Heading of the pages.</param>
    /// <param name="lead">Line under the heading.</param>
    /// <param name="hours">Table by the hour; null without a tide.</param>
    /// <param name="figures">The figures in their order: by the hour where there is a tide, by depth and current.</param>
    /// <param name="cautions">What to watch out for.</param>
    public static byte[] Write(string title, string lead, TableView? hours, IReadOnlyList<Figure> figures, IReadOnlyList<string> cautions)
    {
        Queue<Block> left = new(hours is null ? figures.Select(Picture) : [Picture(figures[0]), Table(hours), .. figures.Skip(1).Select(Picture)]);
        left.Enqueue(Watch(cautions));
        using PdfBook book = new(title);
        for (bool first = true; left.Count > 0; first = false)
        {
            bool start = first;
            PdfPage.Add(book, page =>
            {
                page.Text(start ? title : title + " (continued)", start ? 22 : 15, Palette.Ink, bold: true);
                if (start)
                    page.Text(lead, Small, Palette.SoftInk);
                page.Rule(PdfPage.Accent, 2.5);
                bool alone = true;
                while (left.TryPeek(out Block? block) && (alone || block.Height <= page.Left))
                {
                    left.Dequeue().Draw(page);
                    alone = false;
                }
            });
        }

        return book.Close();
    }

    private static Block Picture(Figure figure)
    {
        double under = PdfPage.HeightOf(figure.Caption, Small, PdfPage.TextWidth) + Gap;
        return new Block((figure.Height * Math.Min(1, PdfPage.TextWidth / figure.Width)) + under, page =>
        {
            page.Draw(figure, page.Left - under);
            page.Text(figure.Caption, Small, Palette.SoftInk);
            page.Skip(Gap);
        });
    }

    private static Block Table(TableView table)
    {
        double first = FirstColumn * PdfPage.TextWidth, other = (PdfPage.TextWidth - first) / (table.Columns.Count - 1);
        List<(string Text, double Width, bool Bold)[]> rows = [[.. table.Columns.Select((column, i) => (column.Text, i == 0 ? first : other, true))]];
        rows.AddRange(table.Groups.SelectMany(group => group.Rows).Select(row => ((string, double, bool)[])[(row.Head, first, true), .. row.Cells.Select(cell => (cell.Text, other, false))]));
        return new Block(rows.Sum(row => PdfPage.RowHeight(row, Small)) + PdfPage.HeightOf(table.Caption, Small, PdfPage.TextWidth) + (2 * Gap), page =>
        {
            for (int i = 0; i < rows.Count; i++)
                page.Row(rows[i], Small, i % 2 == 0 ? PdfPage.Tint : OxyColors.White);
            page.Skip(Gap / 2);
            page.Text(table.Caption, Small, Palette.SoftInk);
            page.Skip(Gap);
        });
    }

    private static Block Watch(IReadOnlyList<string> cautions)
    {
        string text = "Watch out: " + string.Join(' ', cautions);
        return new Block(PdfPage.HeightOf(text, Small, PdfPage.TextWidth), page => page.Text(text, Small, Palette.Ink));
    }

    // Something that stays together on a page, and its height.
    private sealed record Block(double Height, Action<PdfPage> Draw);
}
