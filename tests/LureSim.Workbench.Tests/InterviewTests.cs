using System.Net;
using System.Text.RegularExpressions;
using LureSim.Scenarios;
using LureSim.Scenarios.Interview;

namespace LureSim.Workbench.Tests;

/// <summary>The interview in the browser, by plain forms: no script runs here.</summary>
public partial class InterviewTests
{
    [Theory]
    [InlineData("short", 8)]
    [InlineData("all", 17)]
    public async Task From_the_first_question_to_the_picture(string route, int questions)
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage begin = await page.GetAsync("/new");
        Assert.Equal("/new/1", begin.Headers.Location!.ToString());
        string at = "/new/1?r=" + route;
        int asked = 0;
        while (!at.StartsWith("/new/check", StringComparison.Ordinal))
        {
            asked++;
            using HttpResponseMessage form = await page.GetAsync(at);
            string html = await form.Content.ReadAsStringAsync();
            Assert.Equal(HttpStatusCode.OK, form.StatusCode);
            Assert.Contains("<h1>", html, StringComparison.Ordinal);
            Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
            using HttpResponseMessage next = await PostAsync(page, at, html, []);
            Assert.Equal(HttpStatusCode.SeeOther, next.StatusCode);
            at = next.Headers.Location!.ToString();
        }

        Assert.InRange(asked, questions - 1, questions);
        using HttpResponseMessage check = await page.GetAsync(at);
        string table = await check.Content.ReadAsStringAsync();
        Assert.Contains("We assumed", table, StringComparison.Ordinal);
        using HttpResponseMessage written = await PostAsync(page, "/new/write", table, []);
        Assert.Equal("/spot/1", written.Headers.Location!.ToString());
        Assert.True(ScenarioReader.Read(Path.Combine(page.Folder, "my-spot.yaml")).IsValid);
        using HttpResponseMessage spot = await page.GetAsync("/spot/1");
        Assert.Equal(HttpStatusCode.OK, spot.StatusCode);

        // Once more: never over a file that is there.
        using HttpResponseMessage twice = await PostAsync(page, "/new/write", table, []);
        Assert.True(File.Exists(Path.Combine(page.Folder, "my-spot-2.yaml")), twice.StatusCode.ToString());
    }

    [Fact]
    public async Task What_is_not_understood_is_told_at_its_place_and_on_top()
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage form = await page.GetAsync("/new/3");
        using HttpResponseMessage again = await PostAsync(page, "/new/3", await form.Content.ReadAsStringAsync(), [("depth-other", "nine elephants <b>")]);
        string html = await again.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
        Assert.Contains("Something to fix", html, StringComparison.Ordinal);
        Assert.Contains("id=\"depth-problem\"", html, StringComparison.Ordinal);
        Assert.Contains("nine elephants &lt;b&gt;", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Not_sure_is_an_answer()
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage form = await page.GetAsync("/new/5");
        using HttpResponseMessage next = await PostAsync(page, "/new/5", await form.Content.ReadAsStringAsync(), [("current", "not sure")]);
        Assert.Equal(HttpStatusCode.SeeOther, next.StatusCode);
        using HttpResponseMessage check = await page.GetAsync("/new/check");
        Assert.Contains("give or take", await check.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_of_another_page_is_refused()
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage wrongKey = await PostAsync(page, "/new/1", "name=\"key\" value=\"00\"", []);
        Assert.Equal(HttpStatusCode.Forbidden, wrongKey.StatusCode);
        using HttpResponseMessage form = await page.GetAsync("/new/1");
        using HttpResponseMessage foreign = await PostAsync(page, "/new/1", await form.Content.ReadAsStringAsync(), [], "http://evil.example");
        Assert.Equal(HttpStatusCode.Forbidden, foreign.StatusCode);
    }

    [Fact]
    public void Every_question_has_its_form_and_a_label_for_every_part() =>
        Assert.All(Questions.Parts, part => Assert.False(string.IsNullOrWhiteSpace(part.Text) && string.IsNullOrWhiteSpace(Questions.Of(part).Text)));

    private static async Task<HttpResponseMessage> PostAsync(LivePage page, string path, string html, (string Name, string Value)[] answers, string? origin = null)
    {
        string key = Key().Match(html).Groups[1].Value;
        return await page.GetAsync(path, request =>
        {
            request.Headers.Add("Origin", origin ?? page.Origin);
            request.Content = new FormUrlEncodedContent([.. answers.Select(answer => KeyValuePair.Create(answer.Name, answer.Value)), KeyValuePair.Create("key", key)]);
        }, HttpMethod.Post);
    }

    [GeneratedRegex("name=\"key\" value=\"([0-9a-f]+)\"")]
    private static partial Regex Key();
}
