using System.Net;
using System.Security.Cryptography;
using LureSim.Workbench.Server;

namespace LureSim.Workbench.Tests;

/// <summary>The files of the pages, whole: a status of 200 says nothing of the body.</summary>
public class AssetTests
{
    [Fact]
    public async Task Every_file_arrives_whole()
    {
        string folder = Directory.GetCurrentDirectory();
        try
        {
            // Started where nothing of the program lies.
            Directory.SetCurrentDirectory(Path.GetTempPath());
            await using LivePage page = await LivePage.StartAsync();
            string[] names = [.. Assets.Names.Where(name => !name.EndsWith(".html", StringComparison.Ordinal))];
            Assert.Contains("live.js", names);
            foreach (string name in names)
            {
                using HttpResponseMessage answer = await page.GetAsync("/assets/" + name);
                byte[] body = await answer.Content.ReadAsByteArrayAsync();
                (byte[] content, string type) = Assets.Find(name)!.Value;
                Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
                Assert.True(body.Length > 100, name);
                Assert.Equal(SHA256.HashData(content), SHA256.HashData(body));
                Assert.Equal(type, answer.Content.Headers.ContentType!.ToString());
                Assert.Equal(body.Length, answer.Content.Headers.ContentLength);
            }
        }
        finally
        {
            Directory.SetCurrentDirectory(folder);
        }
    }

    [Fact]
    public async Task The_page_has_its_first_picture_in_it()
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage answer = await page.GetAsync("/");
        string text = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("{{", text, StringComparison.Ordinal);
        Assert.Contains("\"kind\":\"hello\"", text, StringComparison.Ordinal);
        Assert.Contains("in the zone", text, StringComparison.Ordinal);
        Assert.Equal("text/html; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
    }

    [Fact]
    public void No_file_leads_elsewhere()
    {
        foreach (string name in Assets.Names)
        {
            string text = Assets.Text(name).Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal);
            Assert.DoesNotContain("https:", text, StringComparison.Ordinal);
            Assert.DoesNotContain("http:", text, StringComparison.Ordinal);
        }
    }
}
