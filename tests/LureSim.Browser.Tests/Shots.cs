using Microsoft.Playwright;

namespace LureSim.Browser.Tests;

/// <summary>Pictures of the pages for people to look at: written where LURESIM_SHOTS names a folder.</summary>
[Collection("browser")]
public class Shots(BrowserFixture fixture)
{
    // The picture of the documentation.
    [BrowserFact]
    public async Task The_page_as_the_documentation_shows_it()
    {
        if (Environment.GetEnvironmentVariable("LURESIM_UPDATE_DOCS") != "1") return;
        await using LiveServer live = await BrowserFixture.ServeAsync(LivePageTests.Scenario("bridge-channel"));
        await using Opened page = await Opened.Of(fixture, live, 1280, 940, ColorScheme.Light);
        await page.Page.EvaluateAsync("() => { location.hash = 'way=' + encodeURIComponent('counted down, steady') + '&w=' + encodeURIComponent('1/2 oz'); }");
        await page.Page.ReloadAsync();
        await LivePageTests.FineSentence(page.Page);
        await page.Page.WaitForFunctionAsync("() => document.querySelector('#swim-words').textContent.length > 0", null, new PageWaitForFunctionOptions { Timeout = 90_000 });
        await page.Page.ScreenshotAsync(new PageScreenshotOptions { Path = BrowserFixture.File_("docs", "images", "live-page.png") });
    }

    [BrowserTheory]
    [InlineData(390, 844, ColorScheme.Light)]
    [InlineData(1280, 900, ColorScheme.Light)]
    [InlineData(1280, 900, ColorScheme.Dark)]
    [InlineData(1920, 1080, ColorScheme.Light)]
    [InlineData(390, 844, ColorScheme.Dark)]
    [InlineData(1920, 1080, ColorScheme.Dark)]
    public async Task The_live_page(int width, int height, ColorScheme scheme)
    {
        if (Environment.GetEnvironmentVariable("LURESIM_SHOTS") is not { Length: > 0 } folder) return;
        string name = Environment.GetEnvironmentVariable("LURESIM_SHOT_OF") ?? "bridge-channel";
        string scenario = name.Contains('/', StringComparison.Ordinal) ? name : BrowserFixture.File_("scenarios", name + ".yaml");
        await using LiveServer live = await BrowserFixture.ServeAsync(scenario);
        await using IBrowserContext context = await fixture.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = height }, ColorScheme = scheme });
        IPage page = await context.NewPageAsync();
        List<string> said = [];
        page.Console += (_, message) => said.Add(message.Text);
        page.PageError += (_, error) => said.Add(error);
        await page.GotoAsync(live.Server.NewLink());
        await page.WaitForFunctionAsync("() => document.querySelector('#swim-words').textContent.length > 0", null, new PageWaitForFunctionOptions { Timeout = 60000 });
        if (Environment.GetEnvironmentVariable("LURESIM_SHOT_DO") is { Length: > 0 } script) await page.EvaluateAsync(script);
        await page.WaitForTimeoutAsync(600);
        await page.ScreenshotAsync(new PageScreenshotOptions { FullPage = true, Path = Path.Combine(folder, $"{Path.GetFileNameWithoutExtension(scenario)}-{width}-{scheme}.png") });
        Assert.Empty(said);
    }
}
