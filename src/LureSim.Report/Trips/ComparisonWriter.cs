using LureSim.Decision.Comparison;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Report.Trips;

/// <summary>Writes a comparison of two rigs: one HTML page and its figures as files. Nothing is written to disk here.</summary>
public static class ComparisonWriter
{
    /// <summary>The figures: what each difference does, and the two tracks.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="units">Units.</param>
    /// <param name="width">Wide for pages and files, narrow for phones.</param>
    public static IReadOnlyList<Figure> Figures(RigComparison comparison, UnitSystem units, FigureWidth width = FigureWidth.Wide)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        FigureOptions options = new(units, width);
        return
        [
            .. comparison.Differences.Count > 0 ? [ComparisonBars.Create(comparison, options)] : Array.Empty<Figure>(),
            ComparisonTracks.Create(comparison, options),
        ];
    }

    /// <summary>The page.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="units">Units.</param>
    /// <returns>A complete HTML document.</returns>
    public static string Html(RigComparison comparison, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        UnitFormat format = new(units);
        return SheetWriter.Render("page.liquid", new PageView
        {
            Version = SheetWriter.Version,
            Style = SheetWriter.Resource("sheet.css"),
            Title = $"{comparison.First.Name} and {comparison.Second.Name}: {comparison.Scenario.Title}",
            Lead = SpotWords.Line(comparison.Scenario.Spot, format),
            Answers = ComparisonWords.Sentences(comparison, units),
            Tables = [SideBySide(comparison, format), .. Effects(comparison, format)],
            Figures = new FigurePages(Figures(comparison, units), Figures(comparison, units, FigureWidth.Narrow)).All,
        });
    }

    /// <summary>The comparison as files: compare.html, figures as PNG and SVG, and compare.pdf when asked for.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="units">Units.</param>
    /// <param name="pdf">True for the PDF too.</param>
    public static IReadOnlyList<SheetFile> Files(RigComparison comparison, UnitSystem units, bool pdf)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return FigureFiles.Page("compare", Html(comparison, units), Figures(comparison, units), pdf, comparison.Scenario.Title);
    }

    private static TableView SideBySide(RigComparison comparison, UnitFormat format)
    {
        Reel reel = comparison.Scenario.Tackle.Reel;
        RowView Row(string head, Func<ComparedRig, RigOutcome, string> text)
        {
            string a = text(comparison.First, comparison.FirstOutcome), b = text(comparison.Second, comparison.SecondOutcome);
            return new RowView(head, [new(a, Class: "text"), new(b, Class: "text")], a == b ? "" : "first");
        }

        List<RowView> rows =
        [
            Row("jig head", (rig, _) => $"{format.HeadText(rig.Head)}{(rig.Head.Mass > 0 ? " " + rig.Head.Metal.ToString().ToLowerInvariant() : "")}"),
            Row("body", (rig, _) => rig.Body.Label),
            Row("colour", (rig, _) => rig.Colour),
            Row("line", (rig, _) => $"{SheetTables.LineName(rig.Line.Kind)}, {format.StrengthText(rig.Line.Strength)}, {format.DiameterText(rig.Line.Diameter)} thick"),
            Row("leader", (rig, _) => rig.Leader is { } l ? $"{SheetTables.LineName(l.Kind)}, {format.StrengthText(l.Strength)}, {format.SizeText(l.Length)} long" : "none"),
            Row("knot and hook", (rig, _) => RigWords.Of(rig.Rigging, format)),
            Row("cast", (rig, _) => format.LengthText(rig.Presentation.CastLength)),
            Row("count-down", (rig, outcome) => RetrieveWords.CountDown(rig.Presentation, outcome.Candidate.Coverage)),
            Row("retrieve", (rig, _) => RetrieveWords.Retrieve(rig.Presentation, reel, format)),
            Row("in the strike zone", (_, outcome) => UnitFormat.PercentText(outcome.Candidate.Coverage.ZoneShare)),
            Row("middle depth", (_, outcome) => format.LengthText(outcome.Candidate.Coverage.MedianDepth)),
            Row("made out, looking level", (_, outcome) => format.LengthText(outcome.Sighting.Distance)),
            Row("how it swims", (_, outcome) => SwimmingWords.Line((outcome.Action.Twitch ?? outcome.Action.Retrieve).Report, format.System)),
            Row("what it does", (_, outcome) => TrackWords.Verdict(outcome.Candidate)),
        ];
        return new TableView(
            "The two rigs",
            "Side by side; starred rows differ.",
            [new("", IsText: true), new(comparison.First.Name, IsText: true), new(comparison.Second.Name, IsText: true)],
            [new("", rows)],
            "stick",
            Short: true);
    }

    private static IEnumerable<TableView> Effects(RigComparison comparison, UnitFormat format)
    {
        if (comparison.Differences.Count == 0)
            yield break;
        foreach (MeasureComparison item in comparison.Measures)
        {
            yield return new TableView(
                Grammar.Capital(ComparisonWords.Name(item.Measure.Kind)),
                $"{Grammar.Capital(ComparisonWords.Name(item.Measure.Kind))}: {ComparisonWords.Value(item.Measure.Kind, item.First, format)} with {comparison.First.Name}, {ComparisonWords.Value(item.Measure.Kind, item.Second, format)} with {comparison.Second.Name}. Each difference by its part (all orders), when it alone is switched in {comparison.First.Name}, and when it is the last to be switched. Where the last two are far apart the difference depends on the rest of the rig.",
                [new("difference", IsText: true), new("part"), new("share"), new("alone"), new("as the last")],
                [new("", [.. item.Effects.OrderByDescending(e => Math.Abs(e.Effect)).Select(e => new RowView(
                    ComparisonWords.Name(e.Feature.Kind),
                    [
                        new(ComparisonWords.Signed(item.Measure.Kind, e.Effect, format)),
                        new(UnitFormat.PercentText(e.Share)),
                        new(ComparisonWords.Signed(item.Measure.Kind, e.ChangedFirst, format)),
                        new(ComparisonWords.Signed(item.Measure.Kind, e.ChangedLast, format)),
                    ]))])],
                "stick",
                Short: true);
        }
    }
}
