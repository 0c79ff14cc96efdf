using LureSim.Decision.Trials;
using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Trips;

/// <summary>Prints a trip: a cover, then a page a spot.</summary>
internal static class TripPdf
{
    private static readonly string[] Columns = ["spot", "weight", "body", "colour", "count-down", "retrieve"];
    private const double Small = 11.5;
    private static readonly OxyColor Warm = OxyColor.FromRgb(0xFF, 0xF7, 0xDC);

    /// <summary>The file's bytes; the same trip gives the same bytes.</summary>
    public static byte[] Write(Trip trip)
    {
        using PdfBook book = new(trip.Title);
        Cover(book, trip);
        for (int i = 0; i < trip.Sheets.Count; i++)
        {
            Sheet sheet = trip.Sheets[i];
            int number = i + 1;
            PdfPage.Add(book, page => Spot(page, sheet, number));
        }

        return book.Close();
    }

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
                    page.Row([.. Columns.Select((text, i) => (text, widths[i], true))], Small, PdfPage.Tint);
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
                page.Text("Before you go", 17, PdfPage.Accent, bold: true);
                foreach (LabelledText item in SheetWriter.Lines("cautions.txt"))
                {
                    string text = item.Label.Length > 0 ? $"{item.Label}: {item.Value}" : item.Value;
                    if (page.Left > PdfPage.HeightOf(text, Small, PdfPage.TextWidth))
                        page.Text(text, Small, Palette.SoftInk);
                }
            });
            first = false;
        }
    }

    private static void Spot(PdfPage page, Sheet sheet, int number)
    {
        UnitFormat format = new(sheet.Units);
        Candidate choice = sheet.Choice.First;
        page.Text($"{number}. {sheet.Scenario.Title}", 20, Palette.Ink, bold: true);
        page.Text(SpotWords.Line(sheet.Scenario.Spot, format), Small, Palette.SoftInk);
        page.Rule(PdfPage.Accent, 2.5);
        page.Text(SheetWriter.Weight(choice.Rig.Head, format), 24, PdfPage.Accent, bold: true);
        foreach (LabelledText row in SheetWriter.ChoiceRows(sheet, format))
        {
            page.Put(row.Label, PdfPage.Margin, page.Y, 90, 12.5, Palette.SoftInk);
            page.Text(row.Value, 12.5, Palette.Ink, indent: 96);
        }

        Numbers(page, SheetWriter.Numbers(choice.Coverage, format));
        foreach (string warning in TripWriter.Warnings(sheet).Take(3))
        {
            double height = PdfPage.HeightOf("Mind: " + warning, Small, PdfPage.TextWidth - 16) + 8;
            page.Box(PdfPage.Margin, page.Y, PdfPage.TextWidth, height, Warm, OxyColors.Undefined);
            page.Put("Mind: " + warning, PdfPage.Margin + 8, page.Y + 4, PdfPage.TextWidth - 16, Small, Palette.Ink);
            page.Skip(height + 4);
        }

        // The side view comes first; the bars take what is left, and the reasons what is left after them.
        IReadOnlyList<Figure> figures = TripWriter.Figures(sheet, FigureWidth.Wide);
        page.Draw(figures[0], 400);
        page.Draw(figures[1], page.Left - 110);
        foreach (string reason in TripWriter.Why(sheet))
        {
            if (page.Left < PdfPage.HeightOf("• " + reason, Small, PdfPage.TextWidth))
                break;
            page.Text("• " + reason, Small, Palette.Ink);
        }
    }

    private static void Numbers(PdfPage page, IReadOnlyList<LabelledText> numbers)
    {
        const double gap = 10;
        page.Skip(4);
        double width = (PdfPage.TextWidth - (gap * (numbers.Count - 1))) / numbers.Count;
        double height = 30 + numbers.Max(n => PdfPage.HeightOf(n.Value, Small, width - 16)) + 8;
        for (int i = 0; i < numbers.Count; i++)
        {
            double x = PdfPage.Margin + (i * (width + gap));
            page.Box(x, page.Y, width, height, PdfPage.Tint, OxyColors.Undefined);
            page.Put(numbers[i].Label, x + 8, page.Y + 5, width - 16, 19, Palette.Ink, bold: true);
            page.Put(numbers[i].Value, x + 8, page.Y + 30, width - 16, Small, Palette.SoftInk);
        }

        page.Skip(height + 8);
    }
}
