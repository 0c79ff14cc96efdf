using Microsoft.Playwright;

namespace LureSim.Browser.Tests;

/// <summary>The interview in a browser, whose forms send what a browser sends.</summary>
[Collection("browser")]
public class InterviewPageTests(BrowserFixture fixture)
{
    // With and without a script: from the first question to the spot that it makes.
    [BrowserTheory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task From_the_first_question_to_the_new_spot(bool script)
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(LivePageTests.Scenario("creek"));
        await using IBrowserContext context = await fixture.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 390, Height = 844 }, JavaScriptEnabled = script });
        IPage p = await context.NewPageAsync();
        p.SetDefaultTimeout(60_000);
        await p.GotoAsync(live.Server.NewLink());
        await p.ClickAsync(".new-spot");
        Assert.EndsWith("/new/1", p.Url, StringComparison.Ordinal);
        await p.Locator("main input[type=text]").First.FillAsync("Cut behind the shell island");
        int pages = 0;
        for (; pages < 30 && !p.Url.Contains("/check", StringComparison.Ordinal); pages++)
        {
            LocatorBoundingBoxResult main = (await p.Locator("main").BoundingBoxAsync())!;
            Assert.True(main.X >= 0 && main.X + main.Width <= 390, $"{p.Url} is {main.Width} px wide.");
            await p.ClickAsync("main button");
        }

        Assert.True(pages >= 8, $"{pages} pages");
        Assert.Contains("Cut behind the shell island", await p.InnerTextAsync("main"), StringComparison.Ordinal);
        await p.ClickAsync("main form[action='/new/write'] button");
        await p.WaitForURLAsync("**/spot/*");
        string written = Directory.GetFiles(live.Folder).Single(file => Path.GetFileName(file) != "creek.yaml");
        Assert.Equal("Cut behind the shell island", Scenarios.ScenarioReader.Read(written).Scenario!.Title);
        Assert.Contains("Cut behind the shell island", await p.InnerTextAsync("h1"), StringComparison.Ordinal);
    }
}
