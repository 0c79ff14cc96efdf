using System.Text;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using LureSim.Decision.Tide;
using LureSim.Report.Trips;
using LureSim.Report.Units;

namespace LureSim.Tests.Report;

public class TidePageTests
{
    [Theory]
    [InlineData(UnitSystem.Us, "18:30", "0.7 m/s", "1.4 kn")]
    [InlineData(UnitSystem.Metric, "18:30", "kn", "0.74 m/s")]
    public void The_page_stands_alone_and_names_every_hour(UnitSystem units, string time, string not, string current)
    {
        TideTable table = Studies.Tide(Samples.Bridge());
        string html = TideWriter.Html(table, units);
        Assert.DoesNotContain("{%", html, StringComparison.Ordinal);
        IHtmlDocument page = new HtmlParser().ParseDocument(html);
        Assert.DoesNotContain("http", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("script, link, img, iframe, [src], [href]:not([href^='#'])"));
        string text = page.QuerySelector("table")!.TextContent;
        Assert.Contains(time, text, StringComparison.Ordinal);
        Assert.Contains(current, text, StringComparison.Ordinal);
        Assert.DoesNotContain(not, text, StringComparison.Ordinal);
        Assert.Equal(table.Rows.Count, page.QuerySelectorAll("tbody tr").Length);
        string[] ids = [.. page.QuerySelectorAll("[id]").Select(e => e.Id!)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
    }

    [Fact]
    public void The_pdf_has_a_page_by_hour_and_one_by_depth_and_is_the_same_every_time()
    {
        TideTable table = Studies.Tide(Samples.Bridge());
        Assert.Equal(
            ["tide.html", "figures/tide-by-hour.png", "figures/tide-by-hour.svg", "figures/weight-by-current.png", "figures/weight-by-current.svg", "tide.pdf"],
            TideWriter.Files(table, UnitSystem.Us, pdf: true).Select(f => f.Name));
        Assert.DoesNotContain(TideWriter.Files(table, UnitSystem.Us, pdf: false), f => f.Name.EndsWith(".pdf", StringComparison.Ordinal));
        Assert.Equal(Pdf(table), Pdf(table));
        Assert.StartsWith("%PDF", Pdf(table), StringComparison.Ordinal);
        Assert.Contains("/Count 2", Pdf(table), StringComparison.Ordinal);
        Assert.Contains("/Count 1", Pdf(table with { Rows = [] }), StringComparison.Ordinal);

        // Three days of it do not fit on a page: the table by hour goes over, the rest follows it.
        Assert.Contains("/Count 3", Pdf(table with { Rows = [.. table.Rows, .. table.Rows, .. table.Rows] }), StringComparison.Ordinal);
    }

    private static string Pdf(TideTable table) =>
        Encoding.Latin1.GetString(TideWriter.Files(table, UnitSystem.Us, pdf: true).Single(f => f.Name == "tide.pdf").Bytes.Span);

    [Fact]
    public void Without_a_tide_only_the_table_by_depth_and_current_is_left()
    {
        TideTable table = Studies.Tide(Samples.Bridge()) with { Rows = [] };
        Assert.Equal(["weight-by-current"], TideWriter.Figures(table, UnitSystem.Us).Select(f => f.Name));
        Assert.Contains("By depth and current", TideWriter.Html(table, UnitSystem.Us), StringComparison.Ordinal);
    }
}
