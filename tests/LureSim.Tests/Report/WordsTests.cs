using System.Collections.Concurrent;
using System.Text;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using LureSim.Decision;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Trips;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;
using OxyPlot;

namespace LureSim.Tests.Report;

/// <summary>How LureSim speaks: every demo scenario's card, sheet and trip in both unit systems, read as a reader would.</summary>
public partial class WordsTests
{
    private const int MostWordsBeforeDetails = 900;
    private const int MostWordsOfAltText = 40;
    private const double HighestGrade = 8;

    // One plan a scenario, with coarse runs and few tries: what is looked at are the words, not the numbers.
    private static readonly ConcurrentDictionary<string, Lazy<Plan>> Plans = new();
    private static readonly ConcurrentDictionary<(string, UnitSystem), Lazy<Page>> Pages = new();

    public static TheoryData<string, UnitSystem> Cases
    {
        get
        {
            TheoryData<string, UnitSystem> data = [];
            foreach (string file in Repository.Scenarios())
            {
                data.Add(Path.GetFileNameWithoutExtension(file), UnitSystem.Us);
                data.Add(Path.GetFileNameWithoutExtension(file), UnitSystem.Metric);
            }

            return data;
        }
    }

    // What people once read here and should not read again.
    private static readonly string[] Replaced =
    [
        "mend:", "nothing to mend", "what to mend", "for its dark shape", "open bail", "let it fall", "nose 1", "rolls ", "if not:", "touching bottom", "median depth", "middle depth",
        "splash-down", "splash", " draws", "of 10 draws", "eight draws", "most of that spread", "one step lighter", "one step heavier", "does not reach bottom with this presentation",
        "makes it out", "made out", "would be nearest to", "just-noticeable", "just noticeable", "at a slant", "practice and computation part", "stand-in eye", "goes dark in this water",
        "would be the choice if", "before fish in tanks", "no gap in the", "gap in the box", "gap in the bodies", "against 2", "mind:", "plods", "runs clear", "other way round", "of this box",
        "reel speed that keeps", "not reachable", "count 0", "count-down table", "reference direction", "square across", "hangs below the rod", "at the longest", "twitch the rod tip twice",
        "rigged cleanly", "hardly swims", "turns over 0", "then it swims", "now it ", "its action on", "the action on", "both at once", "no rod work", "strokes", "change your ways",
        "which weight at what hour", "runs against the direction", "drives the spread", "rank correlation", "drag law", "lead of ", "do not know it all", "rule that spoke", "loud rules", "overruled",
        "cut at ", "hang on assumed", "what went in", "everything the computation", "practical salinity", "power law", "of line a turn", "pull (lb)", "line is in", "not known well",
        "bait fish", "up-current", "match or exceed", "trip of ", "best of the box", "at true angles", "way along the pull", "nothing found beyond", "secchi", "ft/s (about", "per cent",
        "the first choice", "in the box", "twitchbait", "being attacked",
    ];

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_reader_of_one_unit_system_meets_no_other(string name, UnitSystem units)
    {
        Regex other = units == UnitSystem.Us ? MetricUnit() : UsUnit();
        Assert.All(Of(name, units).Lines, line => Assert.False(other.IsMatch(line), line));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Numbers_are_said_as_people_say_them(string name, UnitSystem units) =>
        Assert.All(Of(name, units).Lines, line => Assert.False(Clumsy().IsMatch(line), line));

    [Theory]
    [MemberData(nameof(Cases))]
    public void Spelling_goes_with_the_units(string name, UnitSystem units)
    {
        Page page = Of(name, units);
        IEnumerable<string> foreign = units == UnitSystem.Us ? Speller.Pairs.Values : Speller.Pairs.Keys;
        var wrong = new Regex($@"\b({string.Join('|', foreign.Where(word => word != "toward"))})(s|ed|ing|less)?\b|{(units == UnitSystem.Us ? @"\btowards\b" : @"\btoward\b")}", RegexOptions.IgnoreCase);
        Assert.All(page.Lines, line => Assert.False(wrong.IsMatch(line), line));
        Assert.Equal(units == UnitSystem.Us ? "en-US" : "en-GB", page.Document.DocumentElement.GetAttribute("lang"));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Replaced_phrases_do_not_come_back(string name, UnitSystem units)
    {
        foreach (string line in Of(name, units).Lines)
            Assert.All(Replaced, phrase => Assert.False(line.Contains(phrase, StringComparison.OrdinalIgnoreCase), $"\"{phrase}\" in: {line}"));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Card_and_why_read_at_grade_eight_or_less(string name, UnitSystem units)
    {
        Page page = Of(name, units);
        double card = Readability.Grade(string.Join('\n', page.Sheet.Card().Rows.Select(row => row.Text))), why = Readability.Grade(string.Join('\n', page.Sheet.Why));
        Assert.True(card <= HighestGrade && why <= HighestGrade, $"card {card:0.0}, why {why:0.0}");
    }

    [Fact]
    public void The_grade_is_that_of_the_formula()
    {
        // By hand: 6 words, 6 syllables, 1 sentence; 5 words, 5 + 1 + 2 + 1 + 3 syllables.
        Assert.Equal(-1.45, Readability.Grade("The cat sat on the mat."), 1e-9);
        Assert.Equal((0.39 * 5) + (11.8 * 12 / 5) - 15.59, Readability.Grade("International law governs deep transactions."), 1e-9);
        Assert.Equal([1, 1, 2, 2, 1, 3], new[] { "reel", "line", "water", "current", "3/4", "retrieving" }.Select(Readability.Syllables));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void No_sentence_stands_twice_on_a_page(string name, UnitSystem units)
    {
        IEnumerable<IGrouping<string, string>> twice = Of(name, units).Document.QuerySelectorAll("li, p, dd, figcaption").Where(e => e.Closest("table") is null)
            .SelectMany(e => SentenceEnd().Split(e.TextContent.Trim())).Select(text => text.Trim()).Where(text => text.Split(' ').Length >= 5).GroupBy(text => text).Where(group => group.Count() > 1);
        Assert.Empty(twice.Select(group => group.Key));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Card_and_sheet_end(string name, UnitSystem units)
    {
        Page page = Of(name, units);
        Card card = page.Sheet.Card();
        Assert.True(card.Words <= Card.MostWords, $"{card.Words} words");
        string[] order = ["SPOT", "TIE ON", "LURE", "THROW", "SINK", "WORK IT", "RIG", "BACKUP", "HOW SURE", "YOU SAW", "WATCH OUT"];
        Assert.Equal(order.Where(label => card.Rows.Any(row => row.Label == label)), card.Rows.Select(row => row.Label));
        Assert.All(card.Rows, row => Assert.False(string.IsNullOrWhiteSpace(row.Text), row.Label));

        // What the water showed stays on a card however full it is.
        Assert.Equal(page.Sheet.Observed?.Update.Learned.Any() == true, card.Rows.Any(row => row.Label == "YOU SAW"));

        // The retrieve is told in hands, not by its name alone.
        Assert.Contains(' ', card.Rows.Single(row => row.Label == "WORK IT").Text);
        Assert.NotEqual(page.Sheet.Choice.First.Rig.Presentation.Name, card.Rows.Single(row => row.Label == "WORK IT").Text, StringComparer.OrdinalIgnoreCase);
        Assert.InRange(page.WordsBeforeDetails, 100, MostWordsBeforeDetails);
        Assert.InRange(page.Sheet.Why.Count, 1, 3);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Figures_are_told_in_forty_words_and_headings_are_in_order(string name, UnitSystem units)
    {
        Page page = Of(name, units);
        foreach (Figure figure in SheetWriter.Figures(page.Sheet))
            Assert.True(figure.AltText.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length is > 5 and <= MostWordsOfAltText, $"{figure.Name}: {figure.AltText}");
        int before = 0;
        foreach (IElement heading in page.Document.QuerySelectorAll("h1, h2, h3, h4"))
        {
            int level = heading.LocalName[1] - '0';
            Assert.True(level <= before + 1, heading.TextContent);
            before = level;
        }

        Assert.All(page.Document.QuerySelectorAll("nav a"), link => Assert.NotNull(page.Document.GetElementById(link.GetAttribute("href")![1..])));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Cautions_stand_on_every_page(string name, UnitSystem units)
    {
        Page page = Of(name, units);
        Scenario scenario = page.Sheet.Scenario;
        string[] sentences = [.. Cautions.Of(scenario, page.Sheet.Choice.First.Rig.Head).Select(kind => Cautions.Sentence(kind, units))];
        string text = page.Document.Body!.TextContent;
        Assert.All(sentences, sentence => Assert.Contains(sentence, text, StringComparison.Ordinal));
        Assert.Contains("Watch out: ", Cautions.Line(scenario), StringComparison.Ordinal);
        Assert.Contains("a model, not a promise", Cautions.Line(scenario), StringComparison.Ordinal);
    }

    [Fact]
    public void Cautions_follow_the_spot()
    {
        Scenario bridge = Read("bridge-channel"), dock = Read("dock-dusk"), flat = Read("grass-flat"), jetty = Read("rock-jetty");
        Assert.Contains(CautionKind.BoatAtBridge, Cautions.Of(bridge));
        Assert.Contains(CautionKind.SnagComesBack, Cautions.Of(bridge, bridge.Tackle.JigHeads[^1]));
        Assert.DoesNotContain(CautionKind.SnagComesBack, Cautions.Of(bridge, bridge.Tackle.JigHeads[0]));
        Assert.Contains(CautionKind.Night, Cautions.Of(dock));
        Assert.DoesNotContain(CautionKind.BoatAtBridge, Cautions.Of(dock));
        Assert.DoesNotContain(CautionKind.Night, Cautions.Of(bridge));
        Assert.Contains(CautionKind.Wading, Cautions.Of(flat with { Notes = "Wading the edge." }));
        Assert.Contains(CautionKind.SlickRocks, Cautions.Of(jetty));
        Assert.Contains(CautionKind.ColdWater, Cautions.Of(bridge with { Spot = bridge.Spot with { TemperatureCelsius = 9 } }));
        Assert.Contains(CautionKind.Heat, Cautions.Of(bridge with { Spot = bridge.Spot with { TemperatureCelsius = 29 } }));
        foreach (CautionKind kind in Enum.GetValues<CautionKind>())
        {
            Assert.NotEmpty(Cautions.Brief(kind));
            Assert.EndsWith(".", Cautions.Sentence(kind, UnitSystem.Us), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Cards_alone_are_a_page_a_paper_and_a_text()
    {
        Card[] cards = [Of("bridge-channel", UnitSystem.Us).Sheet.Card(), Of("dock-dusk", UnitSystem.Us).Sheet.Card(), Of("grass-flat", UnitSystem.Us).Sheet.Card()];
        IReadOnlyList<SheetFile> files = CardWriter.Files(cards);
        Assert.Equal(["cards.html", "cards.pdf", "cards.txt"], files.Select(file => file.Name));
        IHtmlDocument page = new HtmlParser().ParseDocument(CardWriter.Html(cards));
        Assert.Equal(3, page.QuerySelectorAll(".card").Length);
        Assert.Equal("", page.DocumentElement.ClassName ?? "");
        Assert.Equal("night", new HtmlParser().ParseDocument(CardWriter.Html([cards[1]])).DocumentElement.ClassName);
        Assert.Contains("/Count 2", Encoding.Latin1.GetString(files[1].Bytes.Span), StringComparison.Ordinal);
        Assert.All(cards, card => Assert.Contains(card.Rows[1].Text, CardWriter.Text(cards), StringComparison.Ordinal));
        Assert.Equal(files[1].Bytes.ToArray(), CardWriter.Files(cards)[1].Bytes.ToArray());
    }

    [Fact]
    public void The_paper_is_two_to_four_pages()
    {
        foreach (string name in Repository.Scenarios().Select(file => Path.GetFileNameWithoutExtension(file)!))
        {
            byte[] pdf = SheetWriter.Files(Of(name, UnitSystem.Us).Sheet, SheetOutputs.Pdf).Single(file => file.Name == "sheet.pdf").Bytes.ToArray();
            int pages = Regex.Count(Encoding.Latin1.GetString(pdf), "/Type /Page(?!s)");
            Assert.InRange(pages, 2, 4);
        }
    }

    [Fact]
    public void A_trip_speaks_the_same_way()
    {
        foreach (UnitSystem units in Enum.GetValues<UnitSystem>())
        {
            Trip trip = Trip.Of([PlanOf("bridge-channel"), PlanOf("dock-dusk")], units);
            IHtmlDocument page = new HtmlParser().ParseDocument(TripWriter.Html(trip));
            Regex other = units == UnitSystem.Us ? MetricUnit() : UsUnit();
            foreach (string line in Texts(page))
            {
                Assert.False(other.IsMatch(line), line);
                Assert.False(Clumsy().IsMatch(line), line);
                Assert.All(Replaced, phrase => Assert.False(line.Contains(phrase, StringComparison.OrdinalIgnoreCase), $"\"{phrase}\" in: {line}"));
            }

            Assert.All(Cautions.Of(trip.Sheets[0].Scenario, trip.Sheets[0].Choice.First.Rig.Head), kind => Assert.Contains(Cautions.Sentence(kind, units), page.Body!.TextContent, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Text_has_a_contrast_of_4_5_the_card_of_7_and_marks_of_3()
    {
        string css = SheetWriter.Resource("sheet.css");
        MatchCollection roots = Scheme().Matches(css);
        Assert.Equal(3, roots.Count);
        Assert.Equal(roots[1].Groups[1].Value, roots[2].Groups[1].Value);
        foreach (Match root in roots.Take(2))
        {
            Dictionary<string, string> color = Variable().Matches(root.Groups[1].Value).ToDictionary(m => m.Groups[1].Value, m => m.Groups[2].Value);
            foreach ((string text, string ground) in (ReadOnlySpan<(string, string)>)
                [("ink", "paper"), ("ink", "tint"), ("ink", "warm"), ("soft", "paper"), ("soft", "tint"), ("soft", "warm"), ("accent", "paper"), ("accent", "tint")])
                Assert.True(Contrast.Of(color[text], color[ground]) >= 4.5, $"{text} on {ground}: {Contrast.Of(color[text], color[ground]):0.0}");
            foreach (string text in (string[])["card-ink", "card-soft"])
                Assert.True(Contrast.Of(color[text], color["card"]) >= 7, $"{text} on card");
            foreach ((string mark, string ground) in (ReadOnlySpan<(string, string)>)[("edge", "paper"), ("edge", "tint"), ("warm-edge", "warm"), ("warm-edge", "tint"), ("accent", "paper")])
                Assert.True(Contrast.Of(color[mark], color[ground]) >= 3, $"{mark} on {ground}: {Contrast.Of(color[mark], color[ground]):0.0}");
        }

        foreach (OxyColor text in (OxyColor[])[Palette.Ink, Palette.SoftInk])
            Assert.All((OxyColor[])[OxyColors.White, Palette.Water, Palette.Zone, Palette.Sky], ground => Assert.True(Of(text, ground) >= 4.5));
        OxyColor[] marks = [Palette.Ink, Palette.SoftInk, Palette.Line, Palette.Surface, Palette.BluishGreen, Palette.Blue, Palette.Vermilion, Palette.DarkOrange, Palette.ZoneEdge, Palette.Grass];
        Assert.All(marks, mark => Assert.True(Of(mark, OxyColors.White) >= 3, $"{mark}: {Of(mark, OxyColors.White):0.0}"));
        Assert.All(Enumerable.Range(0, 11), i => Assert.True(Of(Palette.Weight(i / 10.0), Palette.Water) >= 3));

        static double Of(OxyColor a, OxyColor b) => Contrast.Of($"#{a.R:X2}{a.G:X2}{a.B:X2}", $"#{b.R:X2}{b.G:X2}{b.B:X2}");
    }

    [Fact]
    public void Only_the_programs_own_words_are_spelled()
    {
        Assert.Equal("Gray's Harbor: colour", UnitSystem.Metric.Say($"{"Gray's Harbor"}: color"));
        Assert.Equal("Colours in the centre, towards you", UnitSystem.Metric.Spell("Colors in the center, toward you"));
        Assert.Equal("Colors in the center", UnitSystem.Us.Spell("Colors in the center"));
        Assert.Equal("diameter, parameter", UnitSystem.Metric.Spell("diameter, parameter"));
    }

    [Fact]
    public void A_size_beside_the_choice_is_told_by_its_tries_where_it_ran_them_and_by_its_one_run_where_not()
    {
        Plan plan = PlanOf("creek-mouth");
        Candidate beside = plan.Choice.Lighter ?? plan.Choice.Heavier ?? throw new InvalidOperationException("There is no head beside the choice.");
        Coverage often = beside.Coverage with { ZoneShare = 0.37, LiveZoneShare = 0.37, BottomShare = 0, GrassShare = 0 };
        SearchedRig[] without = [.. plan.Choice.Finalists.Where(rig => rig.Rig != beside.Rig)];
        SearchedRig tried = new(beside.Rig, beside.Rig.Presentation, [often, often, often], [0.3, 0.3, 0.3], 1);
        Assert.NotEqual("37%", UnitFormat.PercentText(beside.Coverage.ZoneShare));
        Assert.Contains("in the strike zone 37% of the retrieve", Sizes([tried, .. without]), StringComparison.Ordinal);
        Assert.Contains($"{TrackWords.Verdict(beside)}.", Sizes(without), StringComparison.Ordinal);

        string Sizes(IReadOnlyList<SearchedRig> finalists) =>
            ChoiceWords.Why(plan with { Choice = plan.Choice with { Finalists = finalists } }, UnitSystem.Us).Single(text => text.Contains("One size", StringComparison.Ordinal));
    }

    private static Scenario Read(string name) => ScenarioReader.Read(Repository.File("scenarios", name + ".yaml")).Scenario!;

    private static Plan PlanOf(string name) => Plans.GetOrAdd(name, static key => new Lazy<Plan>(() =>
        Planner.Plan(Read(key), new PlanOptions { Simulation = Trial.Coarse(new SimulationOptions()), SpeedFactors = [1], Samples = 3, Scale = new UnitFormat(UnitSystem.Us).LengthScale }))).Value;

    private static Page Of(string name, UnitSystem units) => Pages.GetOrAdd((name, units), static key => new Lazy<Page>(() =>
    {
        Sheet sheet = Sheet.Of(PlanOf(key.Item1), key.Item2);
        return new Page(sheet, new HtmlParser().ParseDocument(SheetWriter.Html(sheet)));
    })).Value;

    // What people read on a page: texts of elements and of the drawings, without what the scenario itself says.
    private static IEnumerable<string> Texts(IHtmlDocument document) => document.QuerySelectorAll("h1, h2, h3, li, p:not(.notes), dt, dd, th, td, caption, figcaption, text, desc")
        .Where(e => e.QuerySelector("li, p") is null).Select(e => e.TextContent.Trim()).Where(text => text.Length > 0);

    [GeneratedRegex(@"(?<![\w/.])[\d½¼¾][\d.,]*\s?(m|mm|cm|km|g|kg|N|m/s|°C|degC|metres?|meters?)(?![\w/³²])|\bmetres?\b|\bmeters?\b", RegexOptions.None)]
    private static partial Regex MetricUnit();

    [GeneratedRegex(@"[\d½¼¾]\s?(ft|in|oz|lb|kn|mph|ft/s|°F|degF|inch(es)?|feet|foot)(?![\w/])(?! (the|in|of|your|a) )", RegexOptions.None)]
    private static partial Regex UsUnit();

    [GeneratedRegex(@"(?<![\d./])1 (twists|turns|seconds|minutes|beats|points|spots|lifts|twitches|heads|differences|currents|depths)\b|\+0(?![.\d])|[−-]0(\.0+)?(?![.\d½])|(?<![\d½¼¾)\]>]) (ft|oz|lb|kn|m/s)\b|0\.\d+ oz|\bNaN\b|\d %|\bdeg\b")]
    private static partial Regex Clumsy();

    [GeneratedRegex(@"(?<=[.!?])\s+")]
    private static partial Regex SentenceEnd();

    [GeneratedRegex(@":root(?:\.night)? \{ (color-scheme: [^}]*) \}")]
    private static partial Regex Scheme();

    [GeneratedRegex(@"--([a-z-]+): (#[0-9a-f]+)")]
    private static partial Regex Variable();

    private sealed record Page(Sheet Sheet, IHtmlDocument Document)
    {
        public IReadOnlyList<string> Lines { get; } = [.. Texts(Document)];

        public int WordsBeforeDetails { get; } = Before(Document);

        private static int Before(IHtmlDocument document)
        {
            var copy = (IHtmlDocument)document.Clone();
            foreach (IElement element in copy.QuerySelectorAll("svg, style, details").ToArray())
                element.Remove();
            return copy.Body!.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length;
        }
    }
}
