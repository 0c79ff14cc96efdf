using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using LureSim.Decision.Comparison;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Trips;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Report;

public class TripTests
{
    private static Trip Make(UnitSystem units = UnitSystem.Us) =>
        new("Trip plan, 2 spots", [Samples.Sheet(Samples.Flat()) with { Units = units }, Samples.Sheet(Samples.Bridge()) with { Units = units }], units);

    [Theory]
    [InlineData(UnitSystem.Us)]
    [InlineData(UnitSystem.Metric)]
    public void The_page_has_a_cover_and_a_section_a_spot_and_stands_alone(UnitSystem units)
    {
        Trip trip = Make(units);
        string html = TripWriter.Html(trip);
        IHtmlDocument page = new HtmlParser().ParseDocument(html);
        Assert.Equal(2, page.QuerySelectorAll("section.page").Length);
        Assert.Equal(2, page.QuerySelectorAll(".cover tbody tr").Length);
        Assert.Empty(page.QuerySelectorAll("script, link, img, iframe, [src], [href]:not([href^='#'])"));
        Assert.DoesNotContain("{%", html, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        List<string> ids = [.. page.QuerySelectorAll("[id]").Select(e => e.Id!)];
        Assert.Equal(ids.Count, ids.Distinct().Count());
        foreach (IElement element in page.QuerySelectorAll("[aria-labelledby]"))
            Assert.All(element.GetAttribute("aria-labelledby")!.Split(' '), id => Assert.Contains(id, ids));
        Assert.All(page.QuerySelectorAll("section.page"), section => Assert.Equal("SPOT", section.QuerySelector(".card dt")!.TextContent));
        Assert.All(trip.Sheets, sheet => Assert.Contains(sheet.Scenario.Title, page.Body!.TextContent, StringComparison.Ordinal));
        Assert.Contains("What to pack", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Thunder", page.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_pdf_has_a_cover_and_a_page_a_spot_and_is_the_same_every_time()
    {
        byte[] first = TripWriter.Files(Make(), pdf: true).Single(f => f.Name == "trip.pdf").Bytes.ToArray();
        byte[] second = TripWriter.Files(Make(), pdf: true).Single(f => f.Name == "trip.pdf").Bytes.ToArray();
        Assert.Equal(first, second);
        string text = Encoding.Latin1.GetString(first);
        Assert.StartsWith("%PDF", text, StringComparison.Ordinal);
        Assert.Contains("/Count 3", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_to_pack_names_each_thing_once_with_its_spots()
    {
        Trip trip = Make();
        PackingList heads = trip.Pack.Single(list => list.What == "jig heads");
        Assert.Equal(heads.Things.Count, heads.Things.Select(t => t.Name).Distinct().Count());
        for (int i = 0; i < trip.Lines.Count; i++)
            Assert.Contains(i + 1, heads.Things.Single(t => t.Name == trip.Lines[i].Weight).Spots);
        Assert.All(heads.Things, thing => Assert.Empty(thing.Spots.Intersect(thing.Spare)));
    }

    [Fact]
    public void Many_spots_go_on_over_further_pages_of_the_cover()
    {
        Sheet sheet = Samples.Sheet(Samples.Flat());
        Trip trip = new("Long trip", [.. Enumerable.Repeat(sheet, 20)], UnitSystem.Us);
        string text = Encoding.Latin1.GetString(TripWriter.Files(trip, pdf: true).Single(f => f.Name == "trip.pdf").Bytes.ToArray());

        // The cover of 20 spots does not fit on one page.
        Assert.Equal(22, System.Text.RegularExpressions.Regex.Count(text, "/Type /Page(?!s)"));
    }

    [Fact]
    public void A_comparison_says_its_answer_in_words_and_figures()
    {
        var comparison = RigComparison.Compare(TestScenario.Read(TestScenario.Text + """

            compare:
              - name: "<b>mine</b>"
                jig_head: 1/8 oz
              - name: hers
                jig_head: 3/8 oz
                colour: black
            """));
        string html = ComparisonWriter.Html(comparison, UnitSystem.Us);
        IHtmlDocument page = new HtmlParser().ParseDocument(html);
        Assert.Empty(page.QuerySelectorAll("b"));
        Assert.All(ComparisonWords.Sentences(comparison, UnitSystem.Us), sentence => Assert.Contains(sentence, page.Body!.TextContent, StringComparison.Ordinal));
        Assert.Equal(["differences", "two-tracks"], ComparisonWriter.Figures(comparison, UnitSystem.Us).Select(f => f.Name));
        Assert.All(ComparisonWriter.Figures(comparison, UnitSystem.Us, FigureWidth.Narrow), figure => Assert.NotEmpty(FigureWriter.Png(figure, 1)));
        // What the rigs are, and what each difference has of time in the zone, sighting distance and swing.
        Assert.Equal(4, page.QuerySelectorAll("table").Length);
    }
}
