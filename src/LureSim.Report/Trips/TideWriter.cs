using LureSim.Decision.Tide;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Report.Trips;

/// <summary>Writes the page of weights for a tide and its figures. The same table gives the same bytes; nothing is written to disk here.</summary>
public static class TideWriter
{
    /// <summary>The figures of a table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="units">Units.</param>
    /// <param name="width">Wide for pages and files, narrow for phones.</param>
    /// <returns>The figures.</returns>
    public static IReadOnlyList<Figure> Figures(TideTable table, UnitSystem units, FigureWidth width = FigureWidth.Wide)
    {
        ArgumentNullException.ThrowIfNull(table);
        FigureOptions options = new(units, width);
        return [.. table.Rows.Count > 0 ? [TideByHour.Create(table, options)] : Array.Empty<Figure>(), WeightByCurrent.Create(table, options)];
    }

    /// <summary>The page.</summary>
    /// <param name="table">The table.</param>
    /// <param name="units">Units.</param>
    /// <returns>A complete HTML document.</returns>
    public static string Html(TideTable table, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(table);
        UnitFormat format = new(units);
        FigurePages figures = new(Figures(table, units), Figures(table, units, FigureWidth.Narrow));
        List<SectionView> sections = [];
        if (table.Rows.Count > 0)
        {
            sections.Add(new SectionView("hours", "Best weight, hour by hour")
            {
                Figures = figures.Take(FigureSection.TideByHour),
                Tables = [Hours(table, format)],
            });
        }

        sections.Add(new SectionView("table", "By depth and current") { Figures = figures.Take(FigureSection.TideTable) });
        figures.RequireAllTaken();
        return SheetWriter.Render("tide.liquid", new TideView
        {
            Language = Speller.Language(units),
            Scheme = Cautions.IsDark(table.Scenario.Spot) ? "night" : "",
            Title = Title(table),
            SpotLine = Lead(table, format),
            Sections = sections,
            Cautions = SheetWriter.AllCautions(table.Scenario, null, units),
        });
    }

    /// <summary>The page as files: tide.html, figures as PNG and SVG, and tide.pdf to print when asked for.</summary>
    /// <param name="table">The table.</param>
    /// <param name="units">Units.</param>
    /// <param name="pdf">True for the PDF too.</param>
    /// <returns>The files, the page first.</returns>
    public static IReadOnlyList<SheetFile> Files(TideTable table, UnitSystem units, bool pdf)
    {
        ArgumentNullException.ThrowIfNull(table);
        IReadOnlyList<Figure> figures = Figures(table, units);
        UnitFormat format = new(units);
        List<SheetFile> files = [.. FigureFiles.Page("tide", Html(table, units), figures, null)];
        if (pdf)
            files.Add(new("tide.pdf", TidePdf.Write(Title(table), Lead(table, format), table.Rows.Count > 0 ? Hours(table, format) : null, figures, SheetWriter.AllCautions(table.Scenario, null, units))));
        return files;
    }

    private static string Title(TideTable table) => $"Weights for the tide: {table.Scenario.Title}";

    private static string Lead(TideTable table, UnitFormat format)
    {
        Spot spot = table.Scenario.Spot;
        LureBody body = table.Rig.Body;
        return $"{format.LengthText(spot.Depth)} over {SpotWords.Bottom(spot.Bottom)}; strike zone {format.BandText(spot.StrikeZone.Top, spot.StrikeZone.Bottom)}; {format.LureText(body)}, {table.Presentation.Name}, cast {format.HandText(table.Presentation.CastLength)}.{(table.Scenario.Tide.Count > 2 ? $" Tide: {TideWords.Events(new TideCurve(table.Scenario.Tide), format.System)}." : "")}";
    }

    private static TableView Hours(TideTable table, UnitFormat format)
    {
        List<JigHead> heads = [.. table.Heads];
        return new TableView(
            "Best weight, hour by hour",
            $"Best in your box, its share of the retrieve in the strike zone, and the lightest common weight that holds bottom. {TideWords.Minus}",
            [new ColumnView("time", IsText: true), new ColumnView("current"), new ColumnView("depth"), new ColumnView("best"), new ColumnView("in zone"), new ColumnView("holds bottom")],
            [new GroupView("", [.. table.Rows.Select(r => new RowView(TideWords.Clock(r.Hours),
            [
                new CellView(TideWords.Current(r.Current, format.System)),
                new CellView(format.LengthText(r.Depth)),
                new CellView(r.Best is { } best ? format.HeadText(best) : UnitFormat.None),
                new CellView(r.Best is { } head ? UnitFormat.PercentText(r.ZoneShares[heads.IndexOf(head)]) : UnitFormat.None),
                new CellView(r.Holding is { } mass ? format.Weight(mass) : UnitFormat.None),
            ]))])],
            "stick",
            Short: true);
    }

    private sealed record TideView : PageFrame
    {
        public required string SpotLine { get; init; }

        public IReadOnlyList<CardView> Cards { get; init; } = [];

        public required IReadOnlyList<SectionView> Sections { get; init; }

        public required IReadOnlyList<string> Cautions { get; init; }
    }
}
