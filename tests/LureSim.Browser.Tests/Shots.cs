using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Workbench.Pocket;
using Microsoft.Playwright;

namespace LureSim.Browser.Tests;

/// <summary>Pictures of the pages for people to look at, of each screen: written where LURESIM_SHOTS names a folder, of the scenario that LURESIM_SHOT_OF names.</summary>
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

    private static readonly PageWaitForFunctionOptions Patient = new() { Timeout = 90_000 };

    /// <summary>The screens: a phone, a desk, a large desk.</summary>
    public static TheoryData<int, int, ColorScheme> Screens { get; } = new()
    {
        { 390, 844, ColorScheme.Light },
        { 390, 844, ColorScheme.Dark },
        { 1280, 900, ColorScheme.Light },
        { 1280, 900, ColorScheme.Dark },
        { 1920, 1080, ColorScheme.Light },
        { 1920, 1080, ColorScheme.Dark },
    };

    private static string? Folder => Environment.GetEnvironmentVariable("LURESIM_SHOTS") is { Length: > 0 } folder ? folder : null;

    private static string Scenario
    {
        get
        {
            string name = Environment.GetEnvironmentVariable("LURESIM_SHOT_OF") ?? "bridge-channel";
            return name.Contains('/', StringComparison.Ordinal) ? name : BrowserFixture.File_("scenarios", name + ".yaml");
        }
    }

    [BrowserTheory]
    [MemberData(nameof(Screens))]
    public async Task The_live_page(int width, int height, ColorScheme scheme)
    {
        if (Folder is null) return;
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario);
        await using Opened page = await Opened.Of(fixture, live, width, height, scheme);
        IPage p = page.Page;
        await p.WaitForFunctionAsync("() => document.querySelector('#swim-words').textContent.length > 0", null, Patient);
        if (Environment.GetEnvironmentVariable("LURESIM_SHOT_DO") is { Length: > 0 } script) await p.EvaluateAsync(script);
        await p.WaitForTimeoutAsync(600);
        await Take(p, "live", width, scheme);
        page.Silent();
    }

    // Compared with the picture that was kept, with the tries, the choice and what was seen below.
    [BrowserTheory]
    [MemberData(nameof(Screens))]
    public async Task Compared_and_how_sure(int width, int height, ColorScheme scheme)
    {
        if (Folder is null) return;
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario);
        await using Opened page = await Opened.Of(fixture, live, width, height, scheme);
        IPage p = page.Page;
        await LivePageTests.FineSentence(p);
        await p.ClickAsync("#keep");
        await p.FocusAsync("#k-cur");
        await p.Keyboard.PressAsync("ArrowRight");
        await p.Keyboard.PressAsync("ArrowRight");
        await p.Keyboard.PressAsync("ArrowRight");
        await LivePageTests.FineSentence(p);
        await p.WaitForTimeoutAsync(400);
        await LivePageTests.FineSentence(p);
        await p.ClickAsync("#choose");
        await p.WaitForSelectorAsync("#choice .chosen");
        await p.EvaluateAsync("() => { window.kept = document.getElementById('choice').innerHTML; }");
        await p.ClickAsync("#try");
        await p.WaitForFunctionAsync("() => luresim.tries && luresim.tries.ended", null, Patient);
        await p.EvaluateAsync("() => { document.getElementById('choice').innerHTML = window.kept; }");
        await p.ClickAsync("[data-what='bottom at']");
        await Take(p, "compared", width, scheme);
        page.Silent();
    }

    // Each lesson: asked, uncovered, explained.
    [BrowserTheory]
    [MemberData(nameof(Screens))]
    public async Task The_class(int width, int height, ColorScheme scheme)
    {
        if (Folder is null) return;
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario);
        await using Opened page = await Opened.Of(fixture, live, width, height, scheme);
        IPage p = page.Page;
        await LivePageTests.FineSentence(p);
        await p.ClickAsync("#class");
        await p.WaitForSelectorAsync(".class-question");
        int lessons = await p.Locator(".class-bar button[title]").CountAsync();
        for (int lesson = 1; lesson <= lessons; lesson++)
        {
            await p.ClickAsync($".class-bar button[title]:nth-of-type({lesson})");
            await p.WaitForFunctionAsync("step => document.querySelectorAll('.class-bar button[title]')[step - 1].getAttribute('aria-pressed') === 'true'", lesson, Patient);
            await Settled();
            await Take(p, $"class-{lesson}a", width, scheme, whole: false);
            await p.ClickAsync(".class-answers li:nth-child(2) button");
            if (await p.GetByText("Uncover").CountAsync() == 0) continue;
            await p.GetByText("Uncover").ClickAsync();
            await Settled();
            await Take(p, $"class-{lesson}b", width, scheme);
            await p.GetByText("Why?").ClickAsync();
            await Take(p, $"class-{lesson}c", width, scheme);
        }

        page.Silent();
        if (width != 1280 || scheme != ColorScheme.Light) return;
        byte[] handout = await (await p.APIRequest.GetAsync(new Uri(new Uri(p.Url), "/handout.pdf").ToString(), new APIRequestContextOptions { Headers = [new("Cookie", string.Join("; ", (await p.Context.CookiesAsync()).Select(cookie => $"{cookie.Name}={cookie.Value}")))] })).BodyAsync();
        await File.WriteAllBytesAsync(Path.Combine(Folder, "handout.pdf"), handout);

        async Task Settled()
        {
            await p.WaitForTimeoutAsync(500);
            await p.WaitForFunctionAsync("() => !document.body.classList.contains('behind')", null, Patient);
            await p.WaitForTimeoutAsync(300);
        }
    }

    // Every question, an answer that is not understood, and the answers to check.
    [BrowserTheory]
    [MemberData(nameof(Screens))]
    public async Task The_interview(int width, int height, ColorScheme scheme)
    {
        if (Folder is null) return;
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario);
        await using Opened page = await Opened.Of(fixture, live, width, height, scheme);
        IPage p = page.Page;
        await p.GotoAsync(new Uri(new Uri(p.Url), "/new").ToString());
        for (int step = 1; step < 40 && !p.Url.Contains("/check", StringComparison.Ordinal); step++)
        {
            await Take(p, $"new-{step:00}", width, scheme);
            if (step == 3 && await p.Locator("input[type=text]").CountAsync() > 0)
            {
                await p.Locator("input[type=text]").First.FillAsync("quite deep");
                await p.ClickAsync("main button");
                await Take(p, "new-wrong", width, scheme);
                await p.Locator("input[type=text]").First.FillAsync("");
            }

            await p.ClickAsync("main button");
        }

        await Take(p, "new-check", width, scheme);
    }

    // Sliders, taps without a script, and the night.
    [BrowserTheory]
    [MemberData(nameof(Screens))]
    public async Task The_pocket_page(int width, int height, ColorScheme scheme)
    {
        if (Folder is not { } folder) return;
        string file = Path.Combine(folder, "pocket.html");
        if (!File.Exists(file))
        {
            var spot = PocketSpot.Compute(ScenarioReader.Read(Scenario).Scenario!, new UnitFormat(UnitSystem.Us).LengthScale, new PocketBudget(60_000, TimeSpan.FromSeconds(20)), null, CancellationToken.None);
            await File.WriteAllBytesAsync(file, PocketWriter.Page([spot], UnitSystem.Us, "test", DateOnly.FromDateTime(DateTime.Today)));
            await File.WriteAllBytesAsync(Path.Combine(folder, "pocket-photo.png"), PocketPhoto.Png(spot, new UnitFormat(UnitSystem.Us)));
        }

        foreach (bool script in (bool[])[true, false])
        {
            await using IBrowserContext context = await fixture.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = height }, ColorScheme = scheme, JavaScriptEnabled = script, Offline = true });
            IPage p = await context.NewPageAsync();
            await p.GotoAsync("file://" + file);
            if (script) await p.Locator(".live").First.WaitForAsync();
            if (script && scheme == ColorScheme.Dark) await p.ClickAsync("#night");
            await Take(p, script ? "pocket" : "pocket-taps", width, scheme);
        }
    }

    private static async Task Take(IPage page, string name, int width, ColorScheme scheme, bool whole = true) =>
        await page.ScreenshotAsync(new PageScreenshotOptions { FullPage = whole, Path = Path.Combine(Folder!, $"{name}-{width}-{scheme}.png") });
}
