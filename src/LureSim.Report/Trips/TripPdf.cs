using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using LureSim.Report.Sheets;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Trips;

/// <summary>Prints a trip: a cover, then a page a spot.</summary>
internal static class TripPdf
{
    private const double Small = 11.5;

    /// <summary>The file's bytes; the same trip gives the same bytes.</summary>
    public static byte[] Write(Trip trip)
    {
        using PdfBook book = new(trip.Title);
        if (trip.Day is not null)
            Day(book, trip);
        Cover(book, trip);
        for (int i = 0; i < trip.Sheets.Count; i++)
        {
            Sheet sheet = trip.Sheets[i];
            int number = i + 1;
            PdfPage.Add(book, page => SheetPdf.Front(page, sheet, $"{number}. {sheet.Scenario.Title}"));
        }

        return book.Close();
    }

    // The timeline, its stops and what another order costs, on the first page.
    private static void Day(PdfBook book, Trip trip) => PdfPage.Add(book, page =>
    {
        page.Text(trip.Title, 26, Palette.Ink, bold: true);
        page.Rule(PdfPage.Accent, 2.5);
        page.Draw(TripTimeline.Create(trip.Facts!, new FigureOptions(trip.Units)), PdfPage.Height * 0.55);
        page.Skip(6);
        TableView table = TripWriter.Clock(trip);
        double[] widths = [104, 176, 190, 110, 62, PdfPage.TextWidth - 642];
        page.Row([.. table.Columns.Select((column, i) => (column.Text, widths[i], true))], Small, PdfPage.Tint);
        foreach (RowView row in table.Groups.SelectMany(group => group.Rows))
            page.Row([(row.Head, widths[0], true), .. row.Cells.Select((cell, i) => (cell.Text, widths[i + 1], false))], Small, OxyColors.White);
        page.Skip(8);
        foreach (string text in TripWords.Remarks(trip.Facts!))
        {
            if (page.Left > PdfPage.HeightOf(text, Small, PdfPage.TextWidth))
                page.Text(text, Small, Palette.SoftInk);
        }
    });

    // Lines that do not fit go onto further pages.
    private static void Cover(PdfBook book, Trip trip)
    {
        Queue<TripLine> lines = new(trip.Lines);
        bool first = true, rest = true;
        while (rest)
        {
            PdfPage.Add(book, page =>
            {
                page.Text(first ? trip.Title : trip.Title + " (continued)", 26, Palette.Ink, bold: true);
                page.Rule(PdfPage.Accent, 2.5);
                double[] widths = [168, 92, 106, 96, 130, PdfPage.TextWidth - 592];
                if (lines.Count > 0)
                    page.Row([.. new[] { "spot", "weight", "lure", trip.Units.Spell("color"), "sink", "retrieve" }.Select((text, i) => (text, widths[i], true))], Small, PdfPage.Tint);
                bool odd = false;
                while (lines.TryPeek(out TripLine? line))
                {
                    (string, double, bool)[] cells =
                    [
                        ($"{line.Number}. {line.Title}", widths[0], true), (line.Weight, widths[1], true), (line.Body, widths[2], false),
                        (line.Colour, widths[3], false), (line.CountDown, widths[4], false), (line.Retrieve, widths[5], false),
                    ];
                    if (page.Left < cells.Max(c => PdfPage.HeightOf(c.Item1, Small, c.Item2 - 8, c.Item3)) + 8)
                        return;
                    page.Row(cells, Small, odd ? PdfPage.Tint : OxyColors.White);
                    odd = !odd;
                    lines.Dequeue();
                }

                // What to pack and the cautions need about a third of a page.
                if (page.Left < PdfPage.Height / 3)
                    return;
                rest = false;
                page.Skip(14);
                page.Text("What to pack", 17, PdfPage.Accent, bold: true);
                foreach (PackingList list in trip.Pack.Where(list => list.Things.Count > 0))
                    page.Text($"{Grammar.Capital(list.What)}: {TripWriter.PackText(list)}.", 12.5, Palette.Ink);
                page.Skip(8);
                page.Text("Watch out", 17, PdfPage.Accent, bold: true);
                foreach (string text in TripWriter.Cautions(trip))
                {
                    if (page.Left > PdfPage.HeightOf(text, Small, PdfPage.TextWidth))
                        page.Text(text, Small, Palette.SoftInk);
                }
            });
            first = false;
        }
    }
}
