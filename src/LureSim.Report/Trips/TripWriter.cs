using System.Text;
using LureSim.Decision.Trials;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Report.Trips;

/// <summary>Writes a trip: one HTML page for phone and browser, one PDF to print. Nothing is written to disk here; the same trip gives the same bytes.</summary>
public static class TripWriter
{
    /// <summary>The page.</summary>
    /// <param name="trip">The trip.</param>
    /// <returns>A complete HTML document.</returns>
    public static string Html(Trip trip)
    {
        ArgumentNullException.ThrowIfNull(trip);
        UnitFormat format = new(trip.Units);
        return SheetWriter.Render("page.liquid", new PageView
        {
            Version = SheetWriter.Version,
            Style = SheetWriter.Resource("sheet.css"),
            Title = trip.Title,
            Lead = string.Join("; ", trip.Sheets.Select((sheet, i) => $"{i + 1}. {sheet.Scenario.Title}")) + ".",
            Tables = [Cover(trip)],
            Pack = [.. trip.Pack.Select(list => new LabelledText(list.What, PackText(list)))],
            Spots = [.. trip.Sheets.Select((sheet, i) => Spot(sheet, i + 1, format))],
            Cautions = [.. SheetWriter.Lines("cautions.txt")],
        });
    }

    /// <summary>The trip as files: trip.html, and trip.pdf when asked for.</summary>
    /// <param name="trip">The trip.</param>
    /// <param name="pdf">True for the PDF too.</param>
    /// <returns>The files, the page first.</returns>
    public static IReadOnlyList<SheetFile> Files(Trip trip, bool pdf)
    {
        List<SheetFile> files = [new("trip.html", Encoding.UTF8.GetBytes(Html(trip)))];
        if (pdf)
            files.Add(new("trip.pdf", TripPdf.Write(trip)));
        return files;
    }

    /// <summary>Things to pack in one line: each with the spots that use it.</summary>
    internal static string PackText(PackingList list) => string.Join("; ", list.Things.Select(thing =>
    {
        string spots = thing.Spots.Count > 0 ? $"spot {string.Join(", ", thing.Spots)}" : "";
        string spare = thing.Spare.Count > 0 ? $"spare for {string.Join(", ", thing.Spare)}" : "";
        return $"{thing.Name} ({string.Join("; ", new[] { spots, spare }.Where(text => text.Length > 0))})";
    }));

    /// <summary>The pictures of a spot's page.</summary>
    internal static IReadOnlyList<Figure> Figures(Sheet sheet, FigureWidth width)
    {
        FigureOptions options = new(sheet.Units, width);
        IReadOnlyList<Candidate> alike = SheetWriter.Alike(sheet);
        return
        [
            SideView.Create(sheet.Scenario, alike, sheet.Choice.First, sheet.Current, options),
            CoverageBars.Create(sheet.Scenario, alike, sheet.Choice.First, options),
        ];
    }

    /// <summary>Sentences under the pictures of a spot's page.</summary>
    internal static IEnumerable<string> Why(Sheet sheet)
    {
        // What the run does, a step lighter and heavier; then the colour, the body and the box. The spot's own sheet has the rest.
        IEnumerable<string> why = sheet.Reasons.Take(3);
        if (sheet.ColourAdvice is { } advice)
            why = why.Concat(ColourWords.Sentences(advice, sheet.Scenario.Spot.TargetFish, sheet.Units));
        if (sheet.Body is { } body)
            why = why.Concat(BodyWords.Sentences(body, sheet.Units));
        return sheet is { Box: { } box, Body: { } fits } ? why.Concat(BoxWords.Sentences(box, sheet.Choice.First, fits, sheet.Units)) : why;
    }

    /// <summary>What may go wrong at a spot.</summary>
    internal static IReadOnlyList<string> Warnings(Sheet sheet) => [.. sheet.Warnings, .. ChoiceWords.Unfinished(sheet.Choice.First)];

    private static TableView Cover(Trip trip) => new(
        "Order of the spots",
        "The order of the spots, the first choice of each.",
        [new("spot", IsText: true), new("weight", IsText: true), new("body", IsText: true), new("colour", IsText: true), new("count-down", IsText: true), new("retrieve", IsText: true), new("if not", IsText: true)],
        [new("", [.. trip.Lines.Select(line => new RowView(
            $"{line.Number}. {line.Title}",
            [Text(line.Weight), Text(line.Body), Text(line.Colour), Text(line.CountDown), Text(line.Retrieve), Text(line.Fallback)]))])],
        "wide-text",
        Short: trip.Sheets.Count <= 12);

    private static CellView Text(string text) => new(text, Class: "text");

    private static TripSpotView Spot(Sheet sheet, int number, UnitFormat format)
    {
        Candidate first = sheet.Choice.First;
        IReadOnlyList<Figure> narrow = Figures(sheet, FigureWidth.Narrow);
        return new TripSpotView(
            $"spot-{number}",
            $"{number}. {sheet.Scenario.Title}",
            SpotWords.Line(sheet.Scenario.Spot, format),
            sheet.Scenario.Notes.Trim(),
            SheetWriter.Weight(first.Rig.Head, format),
            SheetWriter.ChoiceRows(sheet, format),
            SheetWriter.Numbers(first.Coverage, format),
            [.. Why(sheet)],
            Warnings(sheet),
            [.. Figures(sheet, FigureWidth.Wide).Select((figure, i) => new FigureView(
                $"{number}-{figure.Name}",
                FigureWriter.SvgElement(figure, $"spot-{number}-{figure.Name}-wide"),
                FigureWriter.SvgElement(narrow[i], $"spot-{number}-{figure.Name}-narrow"),
                figure.Caption))],
            sheet.Fall is { Columns.Count: > 0 } fall ? [SheetTables.Fall(fall, sheet.Scenario.Spot.StrikeZone, format)] : []);
    }
}
