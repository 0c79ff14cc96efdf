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
            Language = Speller.Language(units),
            Scheme = Cautions.IsDark(comparison.Scenario.Spot) ? "night" : "",
            Title = $"{Grammar.Capital(comparison.First.Name)} and {comparison.Second.Name}: {comparison.Scenario.Title}",
            Lead = SpotWords.Line(comparison.Scenario.Spot, format),
            Cards = [.. Cards(comparison, units).Select((card, i) => CardView.Of(card, $"card-{i + 1}", Grammar.Capital(i == 0 ? comparison.First.Name : comparison.Second.Name)))],
            AnswerHeading = "Which difference matters",
            Answers = ComparisonWords.Sentences(comparison, units),
            Tables = [SideBySide(comparison, format), .. Effects(comparison, format)],
            Figures = new FigurePages(Figures(comparison, units), Figures(comparison, units, FigureWidth.Narrow)).All,
            Cautions = SheetWriter.AllCautions(comparison.Scenario, comparison.FirstOutcome.Candidate.Rig.Head, units),
        });
    }

    /// <summary>A card for each rig.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="units">Units.</param>
    /// <returns>The two cards.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="comparison"/> is null.</exception>
    public static IReadOnlyList<Card> Cards(RigComparison comparison, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return [Of(comparison.First, comparison.FirstOutcome), Of(comparison.Second, comparison.SecondOutcome)];

        Card Of(ComparedRig rig, RigOutcome outcome) => Card.Of(
            new CardFacts(comparison.Scenario with { Tackle = comparison.Scenario.Tackle with { Line = rig.Line, Leader = rig.Leader, Rigging = rig.Rigging } }, outcome.Candidate)
            {
                Colour = new ColourChoice(rig.Colour, ""),
            },
            units);
    }

    /// <summary>The comparison as files: compare.html, figures as PNG and SVG, and compare.pdf when asked for.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="units">Units.</param>
    /// <param name="pdf">True for the PDF too.</param>
    public static IReadOnlyList<SheetFile> Files(RigComparison comparison, UnitSystem units, bool pdf)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        IReadOnlyList<Figure> figures = Figures(comparison, units);
        IReadOnlyList<Card> cards = Cards(comparison, units);
        return FigureFiles.Page("compare", Html(comparison, units), figures, pdf
            ? SheetPdf.Write(
                comparison.Scenario.Title,
                [(cards[0], Grammar.Capital(comparison.First.Name)), (cards[1], Grammar.Capital(comparison.Second.Name))],
                "Which difference matters",
                ComparisonWords.Sentences(comparison, units),
                figures,
                SheetWriter.AllCautions(comparison.Scenario, comparison.FirstOutcome.Candidate.Rig.Head, units))
            : null);
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
            Row("lure", (rig, _) => format.LureText(rig.Body)),
            Row(format.Say($"color"), (rig, _) => rig.Colour),
            Row("line", (rig, _) => $"{TackleWords.LineName(rig.Line.Kind)}, {format.StrengthText(rig.Line.Strength)}, {format.DiameterText(rig.Line.Diameter)} thick"),
            Row("leader", (rig, _) => rig.Leader is { } l ? $"{TackleWords.LineName(l.Kind)}, {format.StrengthText(l.Strength)}, {format.SizeText(l.Length)} long" : "none"),
            Row("knot and hook", (rig, _) => RigWords.Of(rig.Rigging, format)),
            Row("cast", (rig, _) => format.HandText(rig.Presentation.CastLength)),
            Row("sink", (rig, outcome) => RetrieveWords.CountDown(rig.Presentation, outcome.Candidate.Coverage)),
            Row("retrieve", (rig, _) => RetrieveWords.Retrieve(rig.Presentation, reel, format)),
            Row("in the strike zone", (_, outcome) => UnitFormat.PercentText(outcome.Candidate.Coverage.ZoneShare)),
            Row("typical depth", (_, outcome) => format.HandText(outcome.Candidate.Coverage.MedianDepth)),
            Row("seen from", (_, outcome) => format.SeenText(outcome.Seen.SeenFrom)),
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
                $"What each difference does to {ComparisonWords.Name(item.Measure.Kind)}: its part {(comparison.InEveryOrder ? "over all orders of switching" : "(with so many differences the mean of switching it first and last)")}, alone in {comparison.First.Name}, and as the last one switched. Where those two are far apart, it depends on the rest of the rig.",
                [new("difference", IsText: true), new("part"), new("share"), new("alone"), new("as the last one")],
                [new("", [.. item.Effects.OrderByDescending(e => Math.Abs(e.Effect)).Select(e => new RowView(
                    ComparisonWords.Name(e.Feature.Kind, format.System),
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
