using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Stepping;

namespace LureSim.Tests.Report;

public class SheetTests
{
    private static readonly ConcurrentDictionary<(string Name, UnitSystem Units), string> Pages = new();

    public static TheoryData<string, UnitSystem> Cases
    {
        get
        {
            TheoryData<string, UnitSystem> data = [];
            foreach (string name in AllFigures.Cases)
            {
                data.Add(name, UnitSystem.Us);
                data.Add(name, UnitSystem.Metric);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_page_parses_and_stands_alone(string name, UnitSystem units)
    {
        string html = Page(name, units);
        IHtmlDocument page = Parse(html);

        Assert.DoesNotContain("http:", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("https:", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("url(//", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", html, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("script, link, img, iframe, object, embed, [src], [href]:not([href^='#'])"));
        Assert.DoesNotContain("{{", html, StringComparison.Ordinal);
        Assert.DoesNotContain("@import", html, StringComparison.Ordinal);

        List<string> ids = [.. page.QuerySelectorAll("[id]").Select(e => e.Id!)];
        Assert.Equal(ids.Count, ids.Distinct().Count());
        foreach (IElement element in page.QuerySelectorAll("[aria-labelledby]"))
            Assert.All(element.GetAttribute("aria-labelledby")!.Split(' '), id => Assert.Contains(id, ids));
        foreach (IElement element in page.QuerySelectorAll("[clip-path]"))
            Assert.Contains(element.GetAttribute("clip-path")![5..^1], ids);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Everything_to_see_is_also_in_words(string name, UnitSystem units)
    {
        IHtmlDocument page = Parse(Page(name, units));
        Assert.Equal(units == UnitSystem.Us ? "en-US" : "en-GB", page.DocumentElement.GetAttribute("lang"));
        Assert.Single(page.QuerySelectorAll("h1"));
        Assert.Single(page.QuerySelectorAll("main"));
        List<IElement> figures = [.. page.QuerySelectorAll("figure")];
        Assert.True(figures.Count >= 7);
        foreach (IElement figure in figures)
        {
            // One drawing for pages, one for phones, each with its title and description.
            Assert.Equal(2, figure.QuerySelectorAll("svg[role=img]").Length);
            Assert.All(figure.QuerySelectorAll("svg > title, svg > desc"), e => Assert.False(string.IsNullOrWhiteSpace(e.TextContent)));
            Assert.Equal(4, figure.QuerySelectorAll("svg > title, svg > desc").Length);
            Assert.False(string.IsNullOrWhiteSpace(figure.QuerySelector("figcaption")!.TextContent));
        }

        foreach (IElement table in page.QuerySelectorAll("table"))
        {
            Assert.NotNull(table.QuerySelector("caption"));
            Assert.All(table.QuerySelectorAll("th"), th => Assert.Contains(th.GetAttribute("scope"), (string[])["col", "row", "rowgroup"]));
            int columns = table.QuerySelectorAll("thead th").Length;
            foreach (IElement row in table.QuerySelectorAll("tbody tr").Where(r => r.QuerySelector("th[scope=rowgroup]") is null))
                Assert.Equal(columns == 0 ? 2 : columns, row.Children.Length);
        }
    }

    [Fact]
    public void The_choice_names_weight_body_colour_count_and_retrieve()
    {
        Sheet sheet = Samples.Sheet(Samples.Bridge());
        IElement choice = Parse(SheetWriter.Html(sheet)).QuerySelector("section.card")!;
        Candidate first = sheet.Choice.First;
        Assert.Contains(first.Rig.Head.Label, choice.TextContent, StringComparison.Ordinal);
        Assert.Contains("3½ in paddle tail", choice.TextContent, StringComparison.Ordinal);
        Assert.Contains("chartreuse", choice.TextContent, StringComparison.Ordinal);
        Assert.Contains("-count", choice.TextContent, StringComparison.Ordinal);
        Assert.Equal(["SPOT", "TIE ON", "LURE", "THROW", "SINK", "WORK IT", "BACKUP", "HOW SURE", "WATCH OUT"], choice.QuerySelectorAll("dt").Select(e => e.TextContent));
        Assert.Contains(sheet.Choice.Fallback!.Rig.Head.Label, choice.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_candidate_has_its_row_and_the_first_choice_is_marked()
    {
        Sheet sheet = Samples.Sheet(Samples.Bridge());
        IHtmlDocument page = Parse(SheetWriter.Html(sheet));
        IElement table = page.QuerySelectorAll("table").Single(t => t.TextContent.Contains("what it does", StringComparison.Ordinal));
        Assert.Equal(sheet.Candidates.Count, table.QuerySelectorAll("tbody tr").Length);
        IElement marked = Assert.Single(table.QuerySelectorAll("tr.first"));
        Assert.StartsWith(sheet.Choice.First.Rig.Head.Label, marked.TextContent, StringComparison.Ordinal);
    }

    public static TheoryData<WaterClarity, SkySetting, string, string, string[]> Forms => new()
    {
        { new SecchiClarity(1.8, WaterKind.Silty), new SkyByElevation(0.7), "silty water, white plate gone at 5.9 ft", "sun 40° above the horizon", ["Day, about"] },
        { new JerlovClarity(JerlovType.Coastal3), new SkyByElevation(0.05), "water of Jerlov type 3C", "sun 3° above the horizon", ["Low sun, about", "white plate gone at, computed"] },
        {
            new ConstituentClarity(5e-6, 0.8, 3e-3),
            new SkyByClock(new DateTimeOffset(2026, 6, 14, 20, 35, 0, TimeSpan.FromHours(-4)), 27.5 * Math.PI / 180, -82.6 * Math.PI / 180),
            "water with 5 mg/m³ chlorophyll, 0.8 1/m stain at 440 nm and 3 g/m³ mineral",
            "14 June 2026 at 20:35",
            ["UTC−4 h, latitude 27.5° N, longitude 82.6° W", "below the horizon; moon", "Twilight, about", "real twilight is bluer", "white plate gone at, computed"]
        },
    };

    [Theory]
    [MemberData(nameof(Forms))]
    public void Heading_and_inputs_say_in_which_form_water_and_light_were_given(WaterClarity clarity, SkySetting sky, string water, string light, string[] found)
    {
        Scenario scenario = Samples.Bridge();
        scenario = scenario with { Spot = scenario.Spot with { Clarity = clarity, Sky = sky } };
        IHtmlDocument page = Parse(SheetWriter.Html(Samples.Sheet(scenario)));
        string heading = page.QuerySelector(".hint")!.TextContent;
        string inputs = page.QuerySelectorAll("table").Single(t => t.TextContent.Contains("rod tip above the water", StringComparison.Ordinal)).TextContent;
        foreach (string text in (string[])[water, light])
        {
            Assert.Contains(text, heading, StringComparison.Ordinal);
            Assert.Contains(text, inputs, StringComparison.Ordinal);
        }

        Assert.All(found, text => Assert.Contains(text, inputs, StringComparison.Ordinal));
    }

    [Fact]
    public void Reasons_warnings_inputs_limits_and_cautions_are_there()
    {
        Sheet sheet = Samples.Sheet(Samples.Flat()) with { Limits = ["The grass is taken as even."] };
        string text = Parse(SheetWriter.Html(sheet)).Body!.TextContent;
        foreach (string sentence in sheet.Why.Concat(sheet.Warnings).Concat(sheet.Limits))
            Assert.Contains(sentence, text, StringComparison.Ordinal);
        foreach (string word in (string[])["white plate gone", "speckled trout", "braid, 15 lb", "hooks", "thunder", "lead", "license", "no aid to navigation", "wad"])
            Assert.Contains(word, text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Every_figure_of_a_sheet_stands_on_its_page()
    {
        Sheet sheet = Samples.Sheet(Samples.Bridge());
        IHtmlDocument page = Parse(SheetWriter.Html(sheet));
        Assert.All(SheetWriter.Figures(sheet), figure => Assert.NotNull(page.QuerySelector("#figure-" + figure.Name)));
        Figure stray = SideView.Create(sheet.Scenario, [sheet.Choice.First], sheet.Choice.First, [], new FigureOptions(UnitSystem.Us));
        var pages = new FigurePages([stray], [stray]);
        Assert.Empty(pages.Take(FigureSection.TideTable));
        Assert.Throws<InvalidOperationException>(pages.RequireAllTaken);
    }

    [Fact]
    public void A_run_that_did_not_complete_is_named()
    {
        Sheet sheet = Samples.Sheet(Samples.Bridge());
        int chosen = sheet.Candidates.ToList().FindIndex(c => c == sheet.Choice.First);
        Candidate failed = sheet.Choice.First with { Track = sheet.Choice.First.Track with { Status = SimulationStatus.TimeLimit, End = new SimulationEnd(SimulationEndReason.LineNotIn, 600) } };
        List<Candidate> candidates = [.. sheet.Candidates];
        candidates[chosen] = failed;
        IHtmlDocument page = Parse(SheetWriter.Html(sheet with { Candidates = candidates, Choice = sheet.Choice with { First = failed } }));
        Assert.Contains("the line does not come in", page.QuerySelector(".warnings")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("the line does not come in", page.QuerySelector("tr.first")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Texts_of_the_user_are_escaped_everywhere()
    {
        const string evil = "<script>alert('x')</script>&\"<b onload=x>";
        Scenario plain = Samples.Bridge();
        Scenario scenario = plain with
        {
            Title = evil,
            Notes = evil,
            Spot = plain.Spot with { TargetFish = evil },
            Presentations = [plain.Presentations[0] with { Name = evil }],
            Tackle = plain.Tackle with
            {
                Bodies = [plain.Tackle.Bodies[0] with { Label = evil }],
                Colours = [evil],
                JigHeads = [.. plain.Tackle.JigHeads.Select((h, i) => h with { Label = evil + i })],
            },
        };
        Sheet sheet = Samples.Sheet(scenario) with { Colour = new ColourChoice(evil, evil), Limits = [evil] };
        sheet = sheet with { Why = [evil], Warnings = [evil], Colours = sheet.Colours! with { Colours = [.. sheet.Colours.Colours.Select(c => evil + c)] } };
        string html = SheetWriter.Html(sheet);
        IHtmlDocument page = Parse(html);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<b ", html, StringComparison.OrdinalIgnoreCase);
        Assert.Empty(page.QuerySelectorAll("script, b, [onload]"));
        Assert.Equal(evil, page.QuerySelector("h1")!.TextContent);
        Assert.Contains(evil, page.QuerySelector(".card")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_that_were_not_computed_are_left_out()
    {
        Sheet sheet = Samples.Sheet(Samples.Bridge(["1/4"])) with { Fall = null, Coverage = null, Colour = null, Colours = null, Spectrum = null, Sight = null, Current = [] };
        sheet = sheet with { Choice = sheet.Choice with { Fallback = null }, Why = [], Warnings = [] };
        IHtmlDocument page = Parse(SheetWriter.Html(sheet));
        Assert.Null(page.QuerySelector("#colors"));
        Assert.Null(page.QuerySelector("#count"));
        Assert.Null(page.QuerySelector("#why"));
        Assert.NotNull(page.QuerySelector("#figure-side-view"));
    }

    [Fact]
    public void The_same_sheet_gives_the_same_files()
    {
        SheetOutputs all = SheetOutputs.Png | SheetOutputs.Svg | SheetOutputs.Pdf;
        IReadOnlyList<SheetFile> once = SheetWriter.Files(Samples.Sheet(Samples.Flat()), all);
        IReadOnlyList<SheetFile> again = SheetWriter.Files(Samples.Sheet(Samples.Flat()), all);
        Assert.Equal("sheet.html", once[0].Name);
        Assert.Contains(once, f => f.Name == "figures/side-view.png");
        Assert.Contains(once, f => f.Name == "figures/side-view.svg");
        Assert.Contains(once, f => f.Name == "sheet.pdf");
        Assert.Equal(once.Count, once.Select(f => f.Name).Distinct().Count());
        for (int i = 0; i < once.Count; i++)
            Assert.True(once[i].Bytes.Span.SequenceEqual(again[i].Bytes.Span), once[i].Name);
        Assert.DoesNotContain(DateTime.Now.Year.ToString(CultureInfo.InvariantCulture), Parse(Encoding.UTF8.GetString(once[0].Bytes.Span)).Body!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("slow steady", "Reel steadily: one turn of the handle every 2 seconds (1.3 ft/s).")]
    [InlineData("lift and drop", "Reel for 2 seconds at one turn of the handle every 1½ seconds (1.6 ft/s), stop for 3 seconds, repeat. Start each stop with two 2 ft twitches.")]
    public void Retrieves_are_put_in_plain_words(string name, string words)
    {
        Scenario scenario = Samples.Bridge();
        Presentation presentation = scenario.Presentations.Single(p => p.Name == name);
        Assert.Equal(words, RetrieveWords.Retrieve(presentation, scenario.Tackle.Reel, new UnitFormat(UnitSystem.Us)));
    }

    [Fact]
    public void The_count_down_says_what_the_hands_do()
    {
        Scenario scenario = Samples.Bridge();
        Presentation p = scenario.Presentations[0];
        Coverage coverage = Samples.Cover(scenario, Samples.Track(scenario, scenario.Tackle.JigHeads[3], p));
        Assert.Equal("Bail open, let it sink to the bottom: about a 12-count.", RetrieveWords.CountDown(p, coverage with { TimeToBottom = 12.2 }));
        Assert.Contains("never reaches the bottom", RetrieveWords.CountDown(p, coverage with { TimeToBottom = null }), StringComparison.Ordinal);
        Assert.StartsWith("No count", RetrieveWords.CountDown(p with { CountDown = 0 }, coverage), StringComparison.Ordinal);
        Assert.Equal("Bail closed, line tight, sink it on a 5-count, then reel.", RetrieveWords.CountDown(p with { CountDown = 5, Fall = FallMode.TightLine }, coverage));
    }

    // Several tests look at the same page; it is written once.
    private static string Page(string name, UnitSystem units) =>
        Pages.GetOrAdd((name, units), static key => SheetWriter.Html(Samples.Sheet(AllFigures.Scenario(key.Name), key.Units)));

    private static IHtmlDocument Parse(string html)
    {
        // AngleSharp 1.10 takes the end tag of the one mixed-case element used here, clipPath, for an error, which
        // by the HTML standard (13.2.6.5, any other end tag) it is not. It is renamed for the strict pass alone.
        string strict = html.Replace("clipPath>", "mask>", StringComparison.Ordinal).Replace("<clipPath", "<mask", StringComparison.Ordinal);
        try
        {
            _ = new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(strict);
        }
        catch (HtmlParseException e)
        {
            int at = Math.Clamp(e.Position.Index, 0, strict.Length - 1);
            Assert.Fail($"Parse error {e.Code} at line {e.Position.Line}: {strict[Math.Max(0, at - 80)..Math.Min(strict.Length, at + 80)]}");
        }

        return new HtmlParser().ParseDocument(html);
    }
}
