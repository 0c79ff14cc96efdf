using System.Text;
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
            Language = Speller.Language(trip.Units),
            Scheme = trip.Sheets.All(sheet => Words.Cautions.IsDark(sheet.Scenario.Spot)) ? "night" : "",
            Title = trip.Title,
            Lead = "The order of the spots, what to pack, and a card for each.",
            AnswerHeading = "Day by the clock",
            Answers = trip.Facts is { } said ? TripWords.Remarks(said) : [],
            Figures = trip.Facts is not { } drawn ? [] : new FigurePages([TripTimeline.Create(drawn, new FigureOptions(trip.Units))], [TripTimeline.Create(drawn, new FigureOptions(trip.Units, FigureWidth.Narrow))]).All,
            Tables = [.. trip.Day is null ? Array.Empty<TableView>() : [Clock(trip)], Cover(trip)],
            Pack = [.. trip.Pack.Select(list => new LabelledText(Grammar.Capital(list.What), PackText(list)))],
            Spots = [.. trip.Sheets.Select((sheet, i) => Spot(sheet, i + 1, format))],
            Cautions = Cautions(trip),
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
        return $"{(thing.Amount.Length > 0 ? $"{thing.Amount} " : "")}{thing.Name} ({string.Join("; ", new[] { spots, spare }.Where(text => text.Length > 0))})";
    }));

    /// <summary>The picture of a spot's page.</summary>
    internal static Figure Picture(Sheet sheet, FigureWidth width) =>
        SideView.Create(sheet.Scenario, SheetWriter.Alike(sheet), sheet.Choice.First, sheet.Current, new FigureOptions(sheet.Units, width));

    /// <summary>Cautions that hold at any of the spots beside those of each.</summary>
    internal static IReadOnlyList<string> Cautions(Trip trip) => [.. trip.Sheets.SelectMany(SheetWriter.General).Distinct()];

    private static TableView Cover(Trip trip) => new(
        "Order of the spots",
        "The choice at each spot.",
        [new("spot", IsText: true), new("weight", IsText: true), new("lure", IsText: true), new(trip.Units.Spell("color"), IsText: true), new("sink", IsText: true), new("retrieve", IsText: true), new("backup", IsText: true)],
        [new("", [.. trip.Lines.Select(line => new RowView(
            $"{line.Number}. {line.Title}",
            [Text(line.Weight), Text(line.Body), Text(line.Colour), Text(line.CountDown), Text(line.Retrieve), Text(line.Fallback)]))])],
        "wide-text",
        Short: trip.Sheets.Count <= 12);

    /// <summary>The stops of the day.</summary>
    internal static TableView Clock(Trip trip) => new(
        "Stops by the clock",
        "Stops in order of time; the weight changes where the tide changes it.",
        [new("time", IsText: true), new("spot", IsText: true), new("rig", IsText: true), new("retrieve", IsText: true), new("on the way"), new("good fishing")],
        [new("", [.. trip.Day!.Stops.Select(stop => new RowView(
            $"{TideWords.Clock(stop.Arrive)} to {TideWords.Clock(stop.Leave)}",
            [
                Text(TripWords.Place(trip.Facts!, stop.Spot)),
                Text($"{TripWords.Heads(trip.Facts!, stop)}, {new UnitFormat(trip.Units).LureText(trip.Sheets[stop.Spot].Choice.First.Rig.Body)}"),
                Text(trip.Sheets[stop.Spot].Choice.First.Rig.Presentation.Name),
                new(TripWords.Time(stop.Travel)),
                new(TripWords.Time(stop.Value)),
            ]))])],
        "wide-text",
        Short: true);

    private static CellView Text(string text) => new(text, Class: "text");

    private static TripSpotView Spot(Sheet sheet, int number, UnitFormat format)
    {
        Figure wide = Picture(sheet, FigureWidth.Wide), narrow = Picture(sheet, FigureWidth.Narrow);
        return new TripSpotView(
            $"spot-{number}",
            $"{number}. {sheet.Scenario.Title}",
            sheet.Scenario.Notes.Trim(),
            CardView.Of(sheet.Card(), "", "").Rows,
            sheet.Why,
            SheetWriter.WatchOut(sheet),
            [
                new FigureView(
                    $"{number}-{wide.Name}",
                    FigureWriter.SvgElement(wide, $"spot-{number}-{wide.Name}-wide"),
                    FigureWriter.SvgElement(narrow, $"spot-{number}-{wide.Name}-narrow"),
                    wide.Caption)
                {
                    IsPlot = true,
                },
            ],
            SheetTables.SinkCounts(sheet, format) is { } counts ? [counts] : []);
    }
}
