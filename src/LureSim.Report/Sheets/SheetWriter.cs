using System.Collections.Concurrent;
using System.Reflection;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;
using Fluid;
using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Report.Sheets;

/// <summary>
/// Writes the sheet of a spot: one HTML page that needs nothing beside itself, and its figures as files. The
/// same sheet gives the same bytes every time. Nothing is written to disk here.
/// </summary>
public static class SheetWriter
{
    private static readonly ConcurrentDictionary<string, IFluidTemplate> Templates = new();

    // The views hold texts and lists only, so there is nothing a template could reach that it should not.
    // Marks that turn the direction of a text or hide in it are taken out of every text on its way into a page.
    private static readonly TemplateOptions Options = new()
    {
        MemberAccessStrategy = new UnsafeMemberAccessStrategy(),
        ValueConverters = { value => value is string text ? VisibleText.Without(text) : null },
    };

    // Escapes what is special in HTML, leaves letters of every script readable.
    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

    /// <summary>The figures of a sheet, in its order.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="width">Wide for pages and files, narrow for phones.</param>
    /// <returns>The figures.</returns>
    public static IReadOnlyList<Figure> Figures(Sheet sheet, FigureWidth width = FigureWidth.Wide)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        FigureOptions options = new(sheet.Units, width);
        Candidate first = sheet.Choice.First;
        IReadOnlyList<Candidate> alike = Alike(sheet);
        List<Figure> figures = [SideView.Create(sheet.Scenario, alike, first, sheet.Current, options)];
        if (PlanView.IsNeeded(sheet.Scenario, alike))
            figures.Add(PlanView.Create(sheet.Scenario, alike, first, options));
        figures.Add(DepthTime.Create(sheet.Scenario, alike, first, options));
        figures.Add(CoverageBars.Create(sheet.Scenario, alike, first, options));
        if (sheet.Coverage is { Heads.Count: > 0, Speeds.Count: > 0 } grid)
            figures.Add(CoverageMap.Create(grid, first, options));
        figures.AddRange(Certainty(sheet, options));
        if (sheet.Observed is { } observed && BeforeAfter.Create(observed.Update, options) is { } hills)
            figures.Add(hills);
        if (sheet.Fall is { Columns.Count: > 0 } fall)
            figures.Add(FallCurves.Create(sheet.Scenario, fall, first.Rig.Head, options));
        if (sheet.Body is { } body)
            figures.Add(BodyFitBars.Create(body, options));
        if (sheet.ColourAdvice is { } advice)
            figures.Add(ColourWorthBars.Create(advice, sheet.Scenario.Spot.TargetFish, options));
        if (sheet.Colours is { Depths.Count: > 0, Colours.Count: > 0 } plate)
        {
            figures.Add(ColourSwatches.Create(plate, sheet.Scenario.Spot.StrikeZone, SwatchView.Eye, options));
            figures.Add(ColourSwatches.Create(plate, sheet.Scenario.Spot.StrikeZone, SwatchView.Camera, options));
        }

        if (sheet.Sight is { } sight)
        {
            figures.Add(SightingDistance.Create(sight, options));
            figures.Add(SilhouetteFigure.Create(sight.Strips, options));
        }

        if (sheet.RigCheck is { } rig)
        {
            figures.Add(RigPicture.Create(rig, options));
            figures.Add(ActionStills.Create(rig, options));
            figures.Add(TwitchPath.Create(rig, options));
        }

        if (sheet.Spectrum is { Depths.Count: > 0 } spectrum)
            figures.Add(SpectrumCurves.Create(spectrum, options));
        return figures;
    }

    /// <summary>The page.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <returns>A complete HTML document.</returns>
    public static string Html(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Render("sheet.liquid", View(sheet));
    }

    /// <summary>Version for the foot of a page.</summary>
    internal static string Version { get; } = typeof(SheetWriter).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "";

    /// <summary>Renders a page by one of the templates.</summary>
    internal static string Render(string template, object view) =>
        Templates.GetOrAdd(template, name => new FluidParser().Parse(WithParts(name))).Render(new TemplateContext(view, Options), Encoder).ReplaceLineEndings("\n");

    /// <summary>The page and the figures as files: sheet.html, figures/*.png, figures/*.svg, and sheet.pdf, the card and the sheet to print.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="outputs">What to make beside the page.</param>
    /// <returns>The files, the page first.</returns>
    public static IReadOnlyList<SheetFile> Files(Sheet sheet, SheetOutputs outputs = SheetOutputs.Png | SheetOutputs.Svg)
    {
        List<SheetFile> files = [new("sheet.html", Encoding.UTF8.GetBytes(Html(sheet)))];
        if (outputs.HasFlag(SheetOutputs.Pdf))
            files.Add(new("sheet.pdf", SheetPdf.Write(sheet)));
        files.AddRange(FigureFiles.Of(Figures(sheet), outputs, "figures/"));
        return files;
    }

    // Where the first choice runs, and how sure that is.
    private static List<Figure> Certainty(Sheet sheet, FigureOptions options)
    {
        Candidate first = sheet.Choice.First;
        Spot spot = sheet.Scenario.Spot;
        List<Figure> figures = [];
        if (sheet.Uncertainty is not { } study)
            return figures;
        figures.Add(WaterMapFigure.Create(spot, WaterMap.Of(first.Track, spot, spot, first.Rig.Presentation, study.Heads[0].Map.DistanceEdges[^1]), first.Rig.Head, first.Rig.Presentation.Name, options));
        if (study.IsExact)
            return figures;
        figures.Add(WaterMapFigure.Create(spot, study.Best.Map, study.Best.Head, study.Presentation.Name, options));
        figures.Add(ChanceBars.Create(study, options));
        figures.Add(SpreadBars.Create(study, options));
        return figures;
    }

    // The candidates that differ from the first choice in the jig head alone: those the figures compare.
    internal static List<Candidate> Alike(Sheet sheet)
    {
        Rig first = sheet.Choice.First.Rig;
        List<Candidate> alike = [.. sheet.Candidates.Where(c => Choice.SameWay(c.Rig, first)).DistinctBy(c => c.Rig.Head)];
        return alike.Any(c => c.Rig == first) ? alike : [sheet.Choice.First, .. alike];
    }

    private static SheetView View(Sheet sheet)
    {
        UnitFormat format = new(sheet.Units);
        Scenario scenario = sheet.Scenario;
        FigurePages figures = new(Figures(sheet), Figures(sheet, FigureWidth.Narrow));
        IReadOnlyList<FigureView> where = figures.Take(FigureSection.Where);
        Card card = sheet.Card();
        return new SheetView
        {
            Language = Speller.Language(sheet.Units),
            Scheme = card.Night ? "night" : "",
            Title = scenario.Title,
            SpotLine = SpotWords.Line(scenario.Spot, format),
            Notes = scenario.Notes.Trim(),
            Card = CardView.Of(card, "card", "The card"),
            Figures = [.. where.Take(1)],
            Why = sheet.Why,
            Warnings = WatchOut(sheet),
            Cautions = General(sheet),
            Tables = SheetTables.SinkCounts(sheet, format) is { } counts ? [counts] : [],
            Tide = TideWords.Line(scenario.Tide, sheet.Units),
            Sections = Sections(sheet, figures, [.. where.Skip(1)], format),
        };
    }

    /// <summary>What this spot and this choice ask for: findings of the run, then the cautions of the place.</summary>
    internal static IReadOnlyList<string> WatchOut(Sheet sheet) =>
    [
        .. sheet.Warnings,
        .. ChoiceWords.Unfinished(sheet.Choice.First),
        .. Cautions.Of(sheet.Scenario, sheet.Choice.First.Rig.Head).Where(kind => kind < CautionKind.Cast).Select(kind => Cautions.Sentence(kind, sheet.Units)),
    ];

    /// <summary>Cautions that hold everywhere.</summary>
    internal static IReadOnlyList<string> General(Sheet sheet) =>
        [.. Cautions.Of(sheet.Scenario).Where(kind => kind >= CautionKind.Cast).Select(kind => Cautions.Sentence(kind, sheet.Units))];

    /// <summary>All cautions of a spot in full, for a page without a choice.</summary>
    internal static IReadOnlyList<string> AllCautions(Scenario scenario, JigHead? head, UnitSystem units) =>
        [.. Cautions.Of(scenario, head).Select(kind => Cautions.Sentence(kind, units))];

    private static List<SectionView> Sections(Sheet sheet, FigurePages figures, IReadOnlyList<FigureView> where, UnitFormat format)
    {
        static IReadOnlyList<LabelledText> Plain(IEnumerable<string> texts) => [.. texts.Select(text => new LabelledText("", text))];
        string fish = sheet.Scenario.Spot.TargetFish;
        List<SectionView> sections =
        [
            new("where", "Where each jig head runs") { Figures = where, Tables = [.. ((TableView?[])[SheetTables.Stretches(sheet, format), SheetTables.Structures(sheet, format)]).OfType<TableView>()] },
            new("weight", "The weight")
            {
                Numbers = Explanations.Weight(sheet, format),
                Figures = figures.Take(FigureSection.Weight),
                Tables = [SheetTables.Compared(sheet, format)],
                Items = Plain([.. ChoiceWords.MoreOnWeight(sheet.Choice, sheet.Units), .. ChoiceWords.Flips(sheet.Choice, sheet.Scenario.Tackle.Reel, format).Select(flip => Grammar.Sentence("change weight " + flip))]),
            },
            new("speed", "How fast")
            {
                Numbers = Explanations.Speed(sheet, format),
                Figures = figures.Take(FigureSection.Speed),
            },
            new("lure", "The lure: shape and size")
            {
                Numbers = Explanations.Body(sheet, format),
                Figures = figures.Take(FigureSection.Body),
                Items = Plain(sheet.Body is { } body ? BodyWords.More(body, sheet.Units) : []),
            },
            new("certainty", "How sure is this")
            {
                Figures = figures.Take(FigureSection.Certainty),
                Tables = sheet.Uncertainty is { IsExact: false } study ? [UncertaintyTables.Heads(study, format)] : [],
                Items = Plain(sheet.Uncertainty is { } tries ? UncertaintyWords.Sentences(tries, sheet.Units) : []),
            },
            new("observed", ObservationWords.Heading)
            {
                Figures = figures.Take(FigureSection.Observed),
                Items = Plain(
                [
                    .. sheet.Observed is { } seen ? ObservationWords.Sentences(seen, sheet.Choice, sheet.Units) : [],
                    .. sheet.Scenario.Tackle.Bodies.Where(own => own.Drag is { Date: not null } or { How.Length: > 0 }).Select(own => ObservationWords.Own(own, format)),
                    .. sheet.LookNext.Take(3).Select(look => ObservationWords.Next(look, format)),
                ]),
            },
            new("answers", InverseWords.Heading) { Tables = sheet.Answers.Count > 0 ? [UncertaintyTables.Answers(sheet.Answers, sheet.Scenario.Tackle.Reel, format)] : [] },
            new("count", "Sink counts of every head")
            {
                Numbers = Explanations.CountDown(sheet, format),
                Figures = figures.Take(FigureSection.CountDown),
                Tables = sheet.Fall is { Columns.Count: > 0 } fall ? [SheetTables.Fall(fall, fall.Columns, sheet.Scenario.Spot.StrikeZone, "Sink counts of every head", format)] : [],
            },
            new("colors", format.Say($"Colors at depth"))
            {
                Numbers = Explanations.Colour(sheet, format),
                Items = Plain(
                [
                    .. sheet.ColourAdvice is { } advice ? ColourWords.Sentences(advice, fish, sheet.Units) : [],
                    .. sheet.Seen,
                    .. ChoiceWords.ColourFlips(sheet.Choice, format).Select(flip => Grammar.Sentence(format.Say($"change color {flip}"))),
                    .. sheet.Patterns.Select(parts => ColourWords.Parts(parts, fish, sheet.Units)),
                ]),
                Figures = figures.Take(FigureSection.Colours),
                Tables = sheet.Colours is { Depths.Count: > 0, Colours.Count: > 0 } plate ? [SheetTables.Colours(plate, format)] : [],
            },
            new("rig", "How it swims")
            {
                Figures = figures.Take(FigureSection.Rig),
                Items = sheet.RigCheck is { } check ? [.. RigWords.Items(check, sheet.Scenario.Tackle.Rigging, format).Select(item => new LabelledText(item.Label, item.Text))] : [],
            },
            new("box", "Your box, ranked for this spot")
            {
                Tables = sheet.Box is { } box ? [SheetTables.Box(sheet, box, format)] : [],
                Items = Plain(sheet is { Box: { } owned, Body: { } fits } ? BoxWords.Sentences(owned, sheet.Choice.First, fits, sheet.Units) : []),
            },
            new("inputs", "Your inputs") { Tables = [SheetTables.Inputs(sheet.Scenario, format)] },
            new("limits", "What the model does not know") { Items = [.. sheet.Limits.Select(l => new LabelledText("This run", l)), .. Lines("limits.txt", sheet.Units)] },
        ];
        figures.RequireAllTaken();
        return [.. sections.Where(s => !s.IsEmpty)];
    }

    // Lines of a text resource; what stands before a colon near the start becomes the label.
    private static IEnumerable<LabelledText> Lines(string name, UnitSystem units)
    {
        foreach (string line in units.Spell(Resource(name)).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            int colon = line.IndexOf(": ", StringComparison.Ordinal);
            if (colon is > 0 and < 30)
            {
                string rest = line[(colon + 2)..];
                yield return new LabelledText(line[..colon], Grammar.Capital(rest));
            }
            else
            {
                yield return new LabelledText("", line);
            }
        }
    }

    // Parts that pages share stand in a template's place where it includes them.
    private static string WithParts(string name) => Resource(name)
        .Replace("{% include 'figure' %}\n", Resource("figure.liquid"), StringComparison.Ordinal)
        .Replace("{% include 'head' %}\n", Resource("head.liquid"), StringComparison.Ordinal)
        .Replace("{% include 'foot' %}\n", Resource("foot.liquid"), StringComparison.Ordinal)
        .Replace("{% include 'watch' %}\n", Resource("watch.liquid"), StringComparison.Ordinal)
        .Replace("{% include 'card' %}\n", Resource("card.liquid"), StringComparison.Ordinal)
        .Replace("{% include 'table' %}\n", Resource("table.liquid"), StringComparison.Ordinal);

    /// <summary>A text resource of the sheets.</summary>
    internal static string Resource(string name)
    {
        using Stream stream = typeof(SheetWriter).Assembly.GetManifestResourceStream("Sheets/" + name)
            ?? throw new InvalidOperationException($"The embedded resource 'Sheets/{name}' is missing from the build.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
