using System.Net;
using System.Net.Sockets;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using LureSim.Cli;
using LureSim.Cli.Hosting;
using LureSim.Report.Units;
using LureSim.Workbench.Server;

namespace LureSim.Workbench.Tests;

/// <summary>The rules that keep the page this person's own, one or more tests a rule.</summary>
public class SecurityTests
{
    // 1. This machine alone.
    [Fact]
    public async Task It_listens_on_the_loopback_address_whatever_the_environment_says()
    {
        Environment.SetEnvironmentVariable("ASPNETCORE_URLS", "http://0.0.0.0:0");
        Environment.SetEnvironmentVariable("URLS", "http://0.0.0.0:0");
        try
        {
            await using LivePage page = await LivePage.StartAsync();
            IEnumerable<IPAddress> others = Dns.GetHostAddresses(Dns.GetHostName()).Where(address => address.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(address));
            foreach (IPAddress address in others)
            {
                using Socket socket = new(SocketType.Stream, ProtocolType.Tcp);
                await Assert.ThrowsAnyAsync<SocketException>(() => socket.ConnectAsync(address, page.Server.Port));
            }

            using HttpResponseMessage answer = await page.GetAsync("/assets/live.css");
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }
        finally
        {
            Environment.SetEnvironmentVariable("ASPNETCORE_URLS", null);
            Environment.SetEnvironmentVariable("URLS", null);
        }
    }

    // 2. By its address, not by a name that leads to it.
    [Theory]
    [InlineData("evil.example")]
    [InlineData("localhost")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:1")]
    public async Task A_foreign_host_is_refused(string host)
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage answer = await page.GetAsync("/", request => request.Headers.Host = host);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        using HttpResponseMessage open = await page.GetAsync("/open?k=x", request => request.Headers.Host = host);
        Assert.Equal(HttpStatusCode.Forbidden, open.StatusCode);
    }

    // 3. From its own page.
    [Theory]
    [InlineData("http://evil.example")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("null")]
    [InlineData("")]
    public async Task A_socket_of_a_foreign_origin_is_refused(string origin)
    {
        await using LivePage page = await LivePage.StartAsync();
        WebSocketException refused = await Assert.ThrowsAsync<WebSocketException>(() => page.SocketAsync(origin));
        Assert.Contains("403", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cross-site")]
    [InlineData("same-site")]
    public async Task A_request_that_another_site_makes_is_refused_but_for_the_link(string site)
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage answer = await page.GetAsync("/", request => request.Headers.Add("Sec-Fetch-Site", site));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        using HttpResponseMessage link = await page.GetAsync(page.Server.NewLink(), request => request.Headers.Add("Sec-Fetch-Site", site));
        Assert.Equal(HttpStatusCode.Redirect, link.StatusCode);
    }

    // 4. A link that works once.
    [Fact]
    public async Task A_link_works_once_and_then_says_what_to_do()
    {
        await using LivePage page = await LivePage.StartAsync(enter: false);
        string link = page.Server.NewLink();
        using HttpResponseMessage first = await page.GetAsync(link);
        Assert.Equal(HttpStatusCode.Redirect, first.StatusCode);
        Assert.Equal("/", first.Headers.Location!.ToString());
        string cookie = first.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        using HttpResponseMessage second = await page.GetAsync(link);
        Assert.Equal(HttpStatusCode.Unauthorized, second.StatusCode);
        Assert.Contains("Press O", await second.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_new_link_makes_the_old_one_worthless()
    {
        await using LivePage page = await LivePage.StartAsync(enter: false);
        string old = page.Server.NewLink();
        page.Server.NewLink();
        using HttpResponseMessage answer = await page.GetAsync(old);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task Nothing_is_shown_without_the_cookie()
    {
        await using LivePage page = await LivePage.StartAsync(enter: false);
        foreach (string path in (string[])["/", "/spot/0", "/assets/live.js", "/live"])
        {
            using HttpResponseMessage answer = await page.GetAsync(path, request => request.Headers.Add("Origin", page.Origin));
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
            Assert.NotEmpty(await answer.Content.ReadAsStringAsync());
        }
    }

    // 5. The cookie alone is not enough.
    [Fact]
    public async Task A_socket_without_the_key_of_a_page_is_closed()
    {
        await using LivePage page = await LivePage.StartAsync();
        using ClientWebSocket socket = await page.SocketAsync();
        await LivePage.SendAsync(socket, """{"kind":"hello","nonce":"00","version":"test"}""");
        Assert.Null(await LivePage.ReceiveAsync(socket));
        Assert.Equal(WebSocketCloseStatus.PolicyViolation, socket.CloseStatus);
    }

    [Fact]
    public async Task The_cookie_bears_a_name_of_its_own()
    {
        await using LivePage one = await LivePage.StartAsync(), other = await LivePage.StartAsync();
        Assert.StartsWith("luresim-", one.Cookie, StringComparison.Ordinal);
        Assert.NotEqual(one.Cookie.Split('=')[0], other.Cookie.Split('=')[0]);
    }

    // 6. What the page may load.
    [Fact]
    public async Task Every_answer_carries_its_headers_and_no_page_has_code_or_style_in_it()
    {
        await using LivePage page = await LivePage.StartAsync();
        foreach (string path in (string[])["/", "/assets/live.js", "/nothing", "/spot/77"])
        {
            using HttpResponseMessage answer = await page.GetAsync(path);
            string policy = answer.Headers.GetValues("Content-Security-Policy").Single();
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal("same-origin", answer.Headers.GetValues("Referrer-Policy").Single());
            Assert.Equal("same-origin", answer.Headers.GetValues("Cross-Origin-Resource-Policy").Single());
            Assert.Equal("same-origin", answer.Headers.GetValues("Cross-Origin-Opener-Policy").Single());
            Assert.True(answer.Headers.CacheControl!.NoStore);
            Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
            Assert.False(answer.Headers.Contains("Server"));
        }

        using HttpResponseMessage html = await page.GetAsync("/");
        string text = await html.Content.ReadAsStringAsync();
        Assert.DoesNotContain(" style=", text, StringComparison.Ordinal);
        Assert.DoesNotContain(" onclick", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<style", text, StringComparison.Ordinal);
        Assert.DoesNotContain("https://", text, StringComparison.Ordinal);
    }

    // 7. Nothing is posted; what would be is asked for its origin first.
    [Fact]
    public async Task A_post_is_refused()
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage foreign = await page.GetAsync("/", request => request.Headers.Add("Origin", "http://evil.example"), HttpMethod.Post);
        Assert.Equal(HttpStatusCode.Forbidden, foreign.StatusCode);
        using HttpResponseMessage none = await page.GetAsync("/", null, HttpMethod.Post);
        Assert.Equal(HttpStatusCode.Forbidden, none.StatusCode);
        using HttpResponseMessage own = await page.GetAsync("/", request => request.Headers.Add("Origin", page.Origin), HttpMethod.Post);
        Assert.Contains(own.StatusCode, (HttpStatusCode[])[HttpStatusCode.NotFound, HttpStatusCode.MethodNotAllowed]);
    }

    // 8. Files by number.
    [Theory]
    [InlineData("/assets/../index.html")]
    [InlineData("/assets/%2e%2e%2findex.html")]
    [InlineData("/assets/..%5cindex.html")]
    [InlineData("/assets/index.html")]
    [InlineData("/assets/web%2flive.js")]
    [InlineData("/spot/1")]
    [InlineData("/spot/-1")]
    [InlineData("/spot/creek.yaml")]
    [InlineData("/spot/99999999999999999999")]
    public async Task A_path_leads_nowhere(string path)
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage answer = await page.GetAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.DoesNotContain("data-nonce", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_plain_scenarios_of_the_folder_are_on_the_shelf()
    {
        string folder = Directory.CreateTempSubdirectory("luresim-shelf-").FullName, outside = Directory.CreateTempSubdirectory("luresim-out-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "a.yaml"), LivePage.Scenario);
            File.WriteAllText(Path.Combine(folder, "b.txt"), "no scenario");
            File.WriteAllText(Path.Combine(folder, "big.yaml"), new string('#', 1_100_000));
            File.WriteAllText(Path.Combine(outside, "secret.yaml"), LivePage.Scenario);
            Directory.CreateDirectory(Path.Combine(folder, "below"));
            File.WriteAllText(Path.Combine(folder, "below", "c.yaml"), LivePage.Scenario);
            File.CreateSymbolicLink(Path.Combine(folder, "link.yaml"), Path.Combine(outside, "secret.yaml"));
            Shelf shelf = Shelf.OfFolder(folder, UnitSystem.Us, (_, _, _) => { });
            Assert.Equal(["a.yaml"], shelf.Files.Where(file => file.Path is not null).Select(file => file.Name));
            Assert.All(shelf.Files, file => Assert.NotNull(shelf.Open(file.Id, out _)));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
            Directory.Delete(outside, recursive: true);
        }
    }

    [Theory]
    [InlineData("../../etc/passwd 0.8 kn", "etc-passwd-0-8-kn")]
    [InlineData("C:\\temp\\x", "c-temp-x")]
    [InlineData("grass-flat 0.8 kn", "grass-flat-0-8-kn")]
    [InlineData("…", "spot")]
    public void A_name_of_a_file_is_letters_digits_and_hyphens(string text, string name) => Assert.Equal(name, Shelf.Named(text));

    [Fact]
    public async Task Nothing_is_written_over_without_asking_and_the_open_file_never()
    {
        await using LivePage page = await LivePage.StartAsync();
        byte[] before = await File.ReadAllBytesAsync(Path.Combine(page.Folder, "creek.yaml"));
        using ClientWebSocket socket = await page.HelloAsync();
        await LivePage.SendAsync(socket, """{"kind":"save","seq":1,"state":{"cur":"0.8 kn"}}""");
        Assert.Contains("creek-0-8-kn.yaml", (await LivePage.ReceiveAsync(socket, "saved"))!.Value.GetProperty("note").GetString(), StringComparison.Ordinal);
        await LivePage.SendAsync(socket, """{"kind":"save","seq":2,"state":{"cur":"0.8 kn"}}""");
        Assert.Contains("again", (await LivePage.ReceiveAsync(socket, "saved"))!.Value.GetProperty("note").GetString(), StringComparison.Ordinal);
        await LivePage.SendAsync(socket, """{"kind":"save","seq":3,"state":{"cur":"0.8 kn"},"overwrite":true}""");
        Assert.Contains("Saved", (await LivePage.ReceiveAsync(socket, "saved"))!.Value.GetProperty("note").GetString(), StringComparison.Ordinal);
        Assert.Equal(before, await File.ReadAllBytesAsync(Path.Combine(page.Folder, "creek.yaml")));
        Assert.Equal(["creek-0-8-kn.yaml", "creek.yaml"], Directory.GetFiles(page.Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    // 9. Foreign text is text.
    [Fact]
    public async Task A_title_with_a_script_in_it_is_shown_and_not_run()
    {
        await using LivePage page = await LivePage.StartAsync(LivePage.Scenario
            .Replace("Quiet creek behind the old mill", "\"<script>alert(1)</script> & \\\"x\\\"\"", StringComparison.Ordinal)
            .Replace("name: steady", "name: \"</script><img src=x onerror=alert(2)>\"", StringComparison.Ordinal));
        using HttpResponseMessage answer = await page.GetAsync("/");
        string text = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("<script>alert", text, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", text, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert(1)", text, StringComparison.Ordinal);
        Assert.Contains("\\u003C/script\\u003E\\u003Cimg", text, StringComparison.Ordinal);
    }

    [Fact]
    public void No_script_of_the_page_makes_markup_of_what_it_is_told()
    {
        foreach (string name in Assets.Names.Where(name => name.EndsWith(".js", StringComparison.Ordinal)))
        {
            string script = Assets.Text(name);
            Assert.DoesNotContain("insertAdjacentHTML", script, StringComparison.Ordinal);
            Assert.DoesNotContain("document.write", script, StringComparison.Ordinal);
            Assert.DoesNotContain("eval(", script, StringComparison.Ordinal);
            Assert.DoesNotContain("innerHTML", script, StringComparison.Ordinal);
        }
    }

    // 10. Limits.
    [Fact]
    public async Task A_message_that_is_too_long_ends_the_session()
    {
        await using LivePage page = await LivePage.StartAsync();
        using ClientWebSocket socket = await page.HelloAsync();
        await socket.SendAsync(Encoding.UTF8.GetBytes("{\"kind\":\"look\",\"x\":\"" + new string('x', 70_000) + "\"}"), WebSocketMessageType.Text, true, CancellationToken.None);
        Assert.Null(await LivePage.ReceiveAsync(socket));
        Assert.Equal(WebSocketCloseStatus.MessageTooBig, socket.CloseStatus);
    }

    [Theory]
    [InlineData("99 kn", "3 kn")]
    [InlineData("0.83 kn", "0.8 kn")]
    [InlineData("-5 kn", "0 kn")]
    public async Task A_value_out_of_range_is_put_on_the_nearest_step(string asked, string given)
    {
        await using LivePage page = await LivePage.StartAsync();
        using ClientWebSocket socket = await page.HelloAsync();
        await LivePage.SendAsync(socket, JsonSerializer.Serialize(new { kind = "look", seq = 1, state = new Dictionary<string, string> { ["cur"] = asked, ["nonsense"] = "x", ["dep"] = "a lot" } }));
        JsonElement answer = (await LivePage.ReceiveAsync(socket, "look"))!.Value;
        Assert.Equal(given, answer.GetProperty("state").GetProperty("cur").GetString());
        Assert.False(answer.GetProperty("state").TryGetProperty("nonsense", out _));
        Assert.False(answer.GetProperty("state").TryGetProperty("dep", out _));
    }

    [Theory]
    [InlineData("not json")]
    [InlineData("[]")]
    [InlineData("{\"kind\":7}")]
    [InlineData("{\"kind\":\"look\",\"seq\":\"x\"}")]
    public async Task Nonsense_is_left_unanswered_and_does_no_harm(string text)
    {
        await using LivePage page = await LivePage.StartAsync();
        using ClientWebSocket socket = await page.HelloAsync();
        await LivePage.SendAsync(socket, text);
        await LivePage.SendAsync(socket, """{"kind":"look","seq":5,"state":{}}""");
        Assert.Equal(5, (await LivePage.ReceiveAsync(socket, "look"))!.Value.GetProperty("seq").GetInt64());
    }

    [Fact]
    public async Task The_oldest_page_leaves_when_there_are_too_many()
    {
        await using LivePage page = await LivePage.StartAsync();
        List<ClientWebSocket> sockets = [];
        for (int i = 0; i < SessionList.Most + 1; i++) sockets.Add(await page.HelloAsync());
        Assert.Null(await LivePage.ReceiveAsync(sockets[0]));
        Assert.Contains("Reload", sockets[0].CloseStatusDescription, StringComparison.Ordinal);
        await LivePage.SendAsync(sockets[^1], """{"kind":"look","seq":1,"state":{}}""");
        Assert.NotNull(await LivePage.ReceiveAsync(sockets[^1], "look"));
        sockets.ForEach(socket => socket.Dispose());
    }

    [Fact]
    public async Task A_large_body_is_refused()
    {
        await using LivePage page = await LivePage.StartAsync();
        using HttpResponseMessage answer = await page.GetAsync("/nothing", request =>
        {
            request.Headers.Add("Origin", page.Origin);
            request.Content = new ByteArrayContent(new byte[300_000]);
        }, HttpMethod.Post);
        Assert.True((int)answer.StatusCode >= 400);
    }

    // 11. The end.
    [Fact]
    public async Task It_ends_at_once_and_says_so_to_an_open_page()
    {
        LivePage page = await LivePage.StartAsync();
        using ClientWebSocket socket = await page.HelloAsync();
        var watch = System.Diagnostics.Stopwatch.StartNew();
        Task<JsonElement?> last = LivePage.ReceiveAsync(socket);
        await page.DisposeAsync();
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(4), $"{watch.Elapsed}");
        Assert.Null(await last);
        Assert.Equal("LureSim has stopped. Your settings are in the address bar.", socket.CloseStatusDescription);
    }

    [Fact]
    public async Task It_ends_by_itself_when_nobody_looks_any_more()
    {
        await using LivePage page = await LivePage.StartAsync(change: options => options with { Patience = TimeSpan.FromMilliseconds(1500) });
        ClientWebSocket socket = await page.HelloAsync();
        await Task.Delay(2500);
        Assert.False(page.Server.Deserted.IsCompleted, "A page was open.");
        socket.Dispose();
        await page.Server.Deserted.WaitAsync(TimeSpan.FromSeconds(30));
    }

    // 12. Without a screen the address is printed.
    [Fact]
    public async Task The_command_prints_its_link_and_ends_when_it_is_told_to()
    {
        string file = Path.Combine(Directory.CreateTempSubdirectory("luresim-open-").FullName, "creek.yaml");
        await File.WriteAllTextAsync(file, LivePage.Scenario);
        using StringWriter output = new(), error = new();
        using CancellationTokenSource stop = new();
        Task<int> run = LureSimApp.RunAsync(["open", file, "--no-browser"], CliHost.Create(output, error, false, false, false, new Pipeline()), stop.Token);
        for (int i = 0; i < 600 && !output.ToString().Contains("/open?k=", StringComparison.Ordinal); i++) await Task.Delay(100);
        Assert.Contains("http://127.0.0.1:", output.ToString(), StringComparison.Ordinal);
        await stop.CancelAsync();
        Assert.Contains(await run.WaitAsync(TimeSpan.FromSeconds(30)), (int[])[ExitCode.Ok, ExitCode.Cancelled]);
        Assert.Equal("", error.ToString().Replace("Stopped.", "", StringComparison.Ordinal).Trim());
    }

    [Fact]
    public async Task The_command_refuses_a_scenario_with_faults()
    {
        string file = Path.Combine(Directory.CreateTempSubdirectory("luresim-open-").FullName, "bad.yaml");
        await File.WriteAllTextAsync(file, "title: bad\nspot:\n  depth: 6\n");
        using StringWriter output = new(), error = new();
        int code = await LureSimApp.RunAsync(["open", file, "--no-browser"], CliHost.Create(output, error, false, false, false, new Pipeline()), CancellationToken.None);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Contains("bad.yaml", error.ToString(), StringComparison.Ordinal);
    }
}
