using System.Globalization;
using System.Text.Json;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Workbench.Pocket;
using Microsoft.Playwright;

namespace LureSim.Browser.Tests;

/// <summary>The pocket page, opened from a file with the network off.</summary>
[Collection("browser")]
public class PocketPageTests(BrowserFixture fixture)
{
    private static readonly Lazy<PocketSpot> Creek = new(() => PocketSpot.Compute(
        ScenarioReader.Read(LivePageTests.Scenario("creek")).Scenario!, new UnitFormat(UnitSystem.Us).LengthScale, new PocketBudget(60_000, TimeSpan.FromSeconds(1)), null, CancellationToken.None));

    private static readonly Lazy<string> File_ = new(() =>
    {
        string file = Path.Combine(Directory.CreateTempSubdirectory("luresim-pocket-").FullName, "creek-pocket.html");
        byte[] page = PocketWriter.Page([Creek.Value], UnitSystem.Us, "test", DateOnly.FromDateTime(DateTime.Today.AddDays(-12)));
        File.WriteAllBytes(file, page);
        Budgets.Note("pocket page of one spot with three heads, bytes", page.Length.ToString("#,0", CultureInfo.InvariantCulture));
        return file;
    });

    // 9. Card, tables and taps without a script.
    [BrowserFact]
    public async Task Without_script_a_tap_shows_its_card()
    {
        await using Pocket pocket = await OpenAsync(script: false);
        IPage p = pocket.Page;
        Assert.Contains("TIE ON", await p.InnerTextAsync(".card"), StringComparison.Ordinal);
        Assert.Equal(1, await p.Locator(".answer:visible").CountAsync());
        string before = await p.Locator(".answer:visible").InnerTextAsync();
        await p.ClickAsync("fieldset:first-of-type label:last-of-type");
        Assert.Equal(1, await p.Locator(".answer:visible").CountAsync());
        Assert.NotEqual(before, await p.Locator(".answer:visible").InnerTextAsync());
        Assert.Equal(0, await p.Locator(".live:visible").CountAsync());
        pocket.Silent();
    }

    // 10. Sliders: no request, no word on the console, and an edge that says so.
    [BrowserFact]
    public async Task Past_the_computed_ends_it_says_so()
    {
        await using Pocket pocket = await OpenAsync();
        IPage p = pocket.Page;
        Assert.Contains("12 days ago", await p.InnerTextAsync("#age"), StringComparison.Ordinal);
        await p.ClickAsync("summary");
        await p.FillAsync(".else input >> nth=0", "9");
        await p.Keyboard.PressAsync("Tab");
        string said = await p.InnerTextAsync("p[role=status] >> nth=1");
        Assert.StartsWith("Not computed past", said, StringComparison.Ordinal);
        Assert.Equal(await p.Locator("input[type=range]").First.GetAttributeAsync("max"), await p.Locator("input[type=range]").First.InputValueAsync());
        pocket.Silent();
    }

    [BrowserFact]
    public async Task A_slider_changes_picture_and_words_within_a_frame_or_so()
    {
        await using Pocket pocket = await OpenAsync();
        double most = await pocket.Page.EvaluateAsync<double>("""
            () => {
              const input = document.querySelector("input[type=range]"), times = [];
              for (let i = 0; i <= Number(input.max); i++) {
                input.value = String(i);
                const from = performance.now();
                input.dispatchEvent(new Event("input", { bubbles: true }));
                times.push(performance.now() - from);
              }
              times.sort((a, b) => a - b);
              return times[Math.floor(times.length / 2)];
            }
            """);
        Budgets.Note("pocket page, one step of a slider, median", string.Create(CultureInfo.InvariantCulture, $"{most:0.0} ms"));
        Assert.True(most < 40, $"{most} ms");
    }

    // What the page reads off is what the program reads off.
    [BrowserFact]
    public async Task The_script_reads_off_what_the_program_reads_off()
    {
        await using Pocket pocket = await OpenAsync();
        PocketTable table = Creek.Value.Table;
        var random = new Random(7);
        double[][] stops = [.. table.Axes.Select(PocketWriter.Stops)];
        int depth = table.Axes.ToList().FindIndex(axis => axis.Kind == PocketAxisKind.Depth);
        (int Head, double[] Values, int Water)[] points = [.. Enumerable.Range(0, 1000).Select(_ =>
        {
            int[] at = [.. stops.Select(s => random.Next(s.Length))];
            return (random.Next(table.Rigs.Count), stops.Select((s, a) => s[at[a]]).ToArray(), at[depth]);
        })];
        JsonElement read = (await pocket.Page.EvaluateAsync("points => points.map(([head, values, water]) => { const r = document.querySelector('main').pocket[0].read(head, values, water); return [r.zone, isNaN(r.wait) ? -1 : r.wait, r.middle, r.score]; })", points.Select(point => new object[] { point.Head, point.Values, point.Water }).ToArray()))!.Value;
        for (int i = 0; i < points.Length; i++)
        {
            PocketReading here = table.Read(points[i].Head, points[i].Values);
            Assert.Equal(here.Zone, read[i][0].GetDouble(), 1e-6);
            Assert.Equal(double.IsNaN(here.Wait) ? -1 : here.Wait, read[i][1].GetDouble(), 1e-6);
            Assert.Equal(here.Middle, read[i][2].GetDouble(), 1e-6);
            Assert.Equal(here.Score, read[i][3].GetDouble(), 1e-6);
        }
    }

    [BrowserTheory]
    [InlineData(320, 640, true)]
    [InlineData(360, 640, true)]
    [InlineData(390, 844, true)]
    [InlineData(844, 390, true)]
    [InlineData(390, 844, false)]
    public async Task It_fits_a_phone(int width, int height, bool script)
    {
        await using Pocket pocket = await OpenAsync(width, height, script);
        int wide = await pocket.WideAsync();
        Assert.True(wide <= 0, $"{wide} px too wide");
        if (!script) return;
        JsonElement small = (await pocket.Page.EvaluateAsync("() => [...document.querySelectorAll('button, summary, input[type=range], input[type=text], fieldset label')].filter(e => e.offsetParent).map(e => [e.textContent || e.id, e.getBoundingClientRect()]).filter(([, r]) => r.height < 47.5 || r.width < 47.5).map(([n, r]) => n + ' ' + Math.round(r.width) + 'x' + Math.round(r.height))"))!.Value;
        Assert.Equal("[]", small.ToString());
    }

    [BrowserTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Axe_finds_nothing(bool night)
    {
        await using Pocket pocket = await OpenAsync();
        if (night) await pocket.Page.ClickAsync("#night");
        AxeResult result = await pocket.Page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] } });
        Assert.True(result.Violations.Length == 0, string.Join("\n", result.Violations.Select(v => $"{v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(4).Select(n => n.Html))}")));
    }

    // 9. The taps stay where the sliders cannot be had.
    [BrowserFact]
    public async Task A_browser_that_cannot_inflate_keeps_the_taps()
    {
        await using Pocket pocket = await OpenAsync(first: "delete window.DecompressionStream;");
        IPage p = pocket.Page;
        await p.ClickAsync("fieldset:first-of-type label:last-of-type");
        Assert.Equal(1, await p.Locator(".answer:visible").CountAsync());
        Assert.Equal(0, await p.Locator(".live:visible").CountAsync());
        pocket.Silent();
    }

    private Task<Pocket> OpenAsync(int width = 390, int height = 844, bool script = true, string? first = null) => Pocket.Of(fixture, File_.Value, width, height, script, first);

    private sealed class Pocket : IAsyncDisposable
    {
        private readonly List<string> said = [];

        private Pocket(IPage page) => Page = page;

        public IPage Page { get; }

        public static async Task<Pocket> Of(BrowserFixture fixture, string file, int width, int height, bool script, string? first)
        {
            IBrowserContext context = await fixture.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = height }, JavaScriptEnabled = script, Offline = true });
            Pocket pocket = new(await context.NewPageAsync());
            pocket.Page.Console += (_, message) => pocket.said.Add(message.Text);
            pocket.Page.PageError += (_, error) => pocket.said.Add(error);
            pocket.Page.Request += (_, request) =>
            {
                if (!request.Url.StartsWith("file:", StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal)) pocket.said.Add(request.Url);
            };
            if (first is not null) await pocket.Page.AddInitScriptAsync(first);
            await pocket.Page.GotoAsync("file://" + file);

            // The table is inflated in a moment.
            if (script && first is null) await pocket.Page.Locator(".live").First.WaitForAsync();
            return pocket;
        }

        public async Task<int> WideAsync()
        {
            // Without its script a page can still be measured from outside.
            LocatorBoundingBoxResult body = (await Page.Locator("body").BoundingBoxAsync())!;
            LocatorBoundingBoxResult main = (await Page.Locator("main").BoundingBoxAsync())!;
            return (int)Math.Ceiling(Math.Max(body.Width, main.Width) - Page.ViewportSize!.Width);
        }

        public void Silent() => Assert.Empty(said);

        public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();
    }
}
