using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using LureSim.Report.Sheets;

namespace LureSim.Report.Trips;

/// <summary>Prints the weights for a tide: a page by the hour where there is a tide, and the table by depth and current.</summary>
internal static class TidePdf
{
    private const double Small = 11.5;

    // Share of the width for the first column of a table; the others are alike.
    private const double FirstColumn = 0.13;

    // Where a figure would come out smaller than this share of the text's width it goes onto the next page.
    private const double LeastShare = 0.9;

    /// <summary>The file's bytes; the same table gives the same bytes.</summary>
    /// <param name="title">Heading of the pages.</param>
    /// <param name="lead">Line under the heading.</param>
    /// <param name="hours">Table by the hour; null without a tide.</param>
    /// <param name="figures">The figures in their order: by the hour where there is a tide, by depth and current.</param>
    public static byte[] Write(string title, string lead, TableView? hours, IReadOnlyList<Figure> figures)
    {
        using PdfBook book = new(title);
        Queue<Figure> left = new(figures);
        bool first = true;
        while (first || left.Count > 0)
        {
            bool start = first;
            PdfPage.Add(book, page =>
            {
                page.Text(start ? title : title + " (continued)", start ? 22 : 15, Palette.Ink, bold: true);
                if (start)
                    page.Text(lead, Small, Palette.SoftInk);
                page.Rule(PdfPage.Accent, 2.5);
                bool alone = true;
                while (left.TryPeek(out Figure? figure) && (alone || Fits(page, figure)))
                {
                    left.Dequeue();
                    page.Draw(figure, page.Left);
                    page.Text(figure.Caption, Small, Palette.SoftInk);
                    page.Skip(10);
                    if (start && alone && hours is not null)
                        Table(page, hours);
                    alone = false;
                }
            });
            first = false;
        }

        return book.Close();
    }

    private static bool Fits(PdfPage page, Figure figure) =>
        page.Left - PdfPage.HeightOf(figure.Caption, Small, PdfPage.TextWidth) - 10 >= LeastShare * figure.Height * Math.Min(1, PdfPage.TextWidth / figure.Width);

    private static void Table(PdfPage page, TableView table)
    {
        double first = FirstColumn * PdfPage.TextWidth, other = (PdfPage.TextWidth - first) / (table.Columns.Count - 1);
        page.Row([.. table.Columns.Select((column, i) => (column.Text, i == 0 ? first : other, true))], Small, PdfPage.Tint);
        bool odd = false;
        foreach (RowView row in table.Groups.SelectMany(group => group.Rows))
        {
            page.Row([(row.Head, first, true), .. row.Cells.Select(cell => (cell.Text, other, false))], Small, odd ? PdfPage.Tint : OxyPlot.OxyColors.White);
            odd = !odd;
        }

        page.Skip(4);
        page.Text(table.Caption, Small, Palette.SoftInk);
        page.Skip(8);
    }
}
