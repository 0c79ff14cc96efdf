using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Report.Trips;

/// <summary>Writes a search for a retrieve: one HTML page and its figures as files. Nothing is written to disk here.</summary>
public static class RetrieveWriter
{
    /// <summary>The figures.</summary>
    /// <param name="search">The search.</param>
    /// <param name="units">Units.</param>
    /// <param name="width">Wide for pages and files, narrow for phones.</param>
    public static IReadOnlyList<Figure> Figures(RetrieveSearch search, UnitSystem units, FigureWidth width = FigureWidth.Wide)
    {
        ArgumentNullException.ThrowIfNull(search);
        FigureOptions options = new(units, width);
        return
        [
            RetrieveTrade.Create(search, options),
            SideView.Create(search.Scenario, [search.Best.Candidate], search.Best.Candidate, [], options),
        ];
    }

    /// <summary>The page.</summary>
    /// <param name="search">The search.</param>
    /// <param name="units">Units.</param>
    /// <returns>A complete HTML document.</returns>
    public static string Html(RetrieveSearch search, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(search);
        UnitFormat format = new(units);
        return SheetWriter.Render("page.liquid", new PageView
        {
            Language = Speller.Language(units),
            Scheme = Cautions.IsDark(search.Scenario.Spot) ? "night" : "",
            Title = $"How to work it: {search.Scenario.Title}",
            Lead = SpotWords.Line(search.Scenario.Spot, format),
            Cards = [CardView.Of(CardOf(search, units), "card", "The card")],
            Answers = SearchWords.Sentences(search, units),
            Tables = [Ways(search, format)],
            Figures = new FigurePages(Figures(search, units), Figures(search, units, FigureWidth.Narrow)).All,
            Cautions = SheetWriter.AllCautions(search.Scenario, search.Head, units),
        });
    }

    /// <summary>The card of the best retrieve.</summary>
    /// <param name="search">The search.</param>
    /// <param name="units">Units.</param>
    /// <returns>The card.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="search"/> is null.</exception>
    public static Card CardOf(RetrieveSearch search, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(search);
        return Card.Of(new CardFacts(search.Scenario, search.Best.Candidate), units);
    }

    /// <summary>The search as files: retrieve.html, figures as PNG and SVG, and retrieve.pdf when asked for.</summary>
    /// <param name="search">The search.</param>
    /// <param name="units">Units.</param>
    /// <param name="pdf">True for the PDF too.</param>
    public static IReadOnlyList<SheetFile> Files(RetrieveSearch search, UnitSystem units, bool pdf)
    {
        ArgumentNullException.ThrowIfNull(search);
        IReadOnlyList<Figure> figures = Figures(search, units);
        return FigureFiles.Page("retrieve", Html(search, units), figures, pdf
            ? SheetPdf.Write(search.Scenario.Title, [(CardOf(search, units), "The card")], "In short", SearchWords.Sentences(search, units), figures, SheetWriter.AllCautions(search.Scenario, search.Head, units))
            : null);
    }

    private static TableView Ways(RetrieveSearch search, UnitFormat format)
    {
        Reel reel = search.Scenario.Tackle.Reel;
        bool grass = search.Scenario.Spot.GrassHeight > 0;
        RowView Row(RetrieveTrial trial, string mark)
        {
            List<CellView> cells =
            [
                new($"{RetrieveWords.CountDown(trial.Presentation, trial.Coverage)} {RetrieveWords.Retrieve(trial.Presentation, reel, format)}", Class: "words"),
                new(UnitFormat.PercentText(trial.LiveZoneShare)),
                new(UnitFormat.PercentText(trial.Coverage.ZoneShare)),
                new(UnitFormat.PercentText(trial.ActionShare)),
                new(UnitFormat.PercentText(trial.Coverage.BottomShare)),
            ];
            if (grass)
                cells.Add(new(UnitFormat.PercentText(trial.Coverage.GrassShare)));
            cells.Add(new(trial.StrokesPerMinute > 0 ? UnitFormat.Number(trial.StrokesPerMinute, 0) : UnitFormat.None));
            cells.Add(new(UnitFormat.Number(100 * trial.Score, 0)));
            return new RowView(trial.Presentation.Name, cells, mark);
        }

        List<ColumnView> columns = [new("", IsText: true), new("what the hands do", IsText: true), new("working in the zone"), new("in zone"), new("working"), new("on bottom")];
        if (grass)
            columns.Add(new("in grass"));
        columns.Add(new("twitches or lifts a minute"));
        columns.Add(new("score"));
        return new TableView(
            "The best of each kind",
            "Shares of the retrieve. The score is that of the sheet, with time in the zone counted only while the lure works. The lower group is yours.",
            columns,
            [
                new GroupView("found", [.. search.Families.Select(f => Row(f.Best, f == search.Best ? "first" : ""))]),
                new GroupView("yours", [.. search.Own.OrderByDescending(t => t.Score).Select(t => Row(t, ""))]),
            ],
            "stick",
            Short: true);
    }
}
