using System.Net;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using LureSim.Report.Units;
using LureSim.Workbench.Server;

namespace LureSim.Workbench.Tests;

/// <summary>A server with one small scenario, and a browser's part of it.</summary>
internal sealed partial class LivePage : IAsyncDisposable
{
    public const string Scenario = """
        title: Quiet creek behind the old mill
        spot:
          depth: 6 ft
          bottom: mud
          current: {speed: 0.4 kn, direction: left}
          salinity: 12 ppt
          temperature: 68 degF
          clarity: {secchi: 3 ft, water: tannin stained}
          light: {sun_elevation: 35 deg, cloud: 50 %}
          strike_zone: {depth: [2 ft, 4.5 ft]}
          target: red drum
        tackle:
          rod_tip_height: 5 ft
          reel: {gear_ratio: 6.2, spool_diameter: 45 mm}
          line: {kind: braid, strength: 10 lb}
          leader: {kind: fluorocarbon, strength: 20 lb, length: 24 in}
          jig_heads: [1/16 oz, 1/8 oz, 1/4 oz]
          bodies: [{profile: paddle tail, length: 3 in}]
          colours: [white, gold]
        presentations:
          - {name: steady, cast: 40 ft, count_down: 2 s, retrieve: {speed: 1.5 ft/s}}
        """;

    private LivePage(WorkbenchServer server, string folder)
    {
        Server = server;
        Folder = folder;
        Client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = new Uri($"http://127.0.0.1:{server.Port}") };
    }

    public WorkbenchServer Server { get; }

    public string Folder { get; }

    public HttpClient Client { get; }

    public string Cookie { get; private set; } = "";

    public string Origin => $"http://127.0.0.1:{Server.Port}";

    public static async Task<LivePage> StartAsync(string? scenario = null, Func<WorkbenchOptions, WorkbenchOptions>? change = null, bool enter = true)
    {
        string folder = Directory.CreateTempSubdirectory("luresim-page-").FullName;
        string file = Path.Combine(folder, "creek.yaml");
        await File.WriteAllTextAsync(file, scenario ?? Scenario);
        WorkbenchOptions options = new(Shelf.Of(file, UnitSystem.Us, (into, name, content) => File.WriteAllBytes(Path.Combine(into, name), content.ToArray())), "test") { Patience = null };
        var page = new LivePage(await WorkbenchServer.StartAsync(change?.Invoke(options) ?? options), folder);
        if (enter) await page.EnterAsync();
        return page;
    }

    public async Task EnterAsync()
    {
        using HttpResponseMessage answer = await Client.GetAsync(new Uri(Server.NewLink()));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Cookie = answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
    }

    public async Task<HttpResponseMessage> GetAsync(string path, Action<HttpRequestMessage>? change = null, HttpMethod? method = null)
    {
        using HttpRequestMessage request = new(method ?? HttpMethod.Get, path);
        if (Cookie.Length > 0) request.Headers.Add("Cookie", Cookie);
        change?.Invoke(request);
        return await Client.SendAsync(request);
    }

    public async Task<string> NonceAsync()
    {
        using HttpResponseMessage answer = await GetAsync("/");
        return Nonce().Match(await answer.Content.ReadAsStringAsync()).Groups[1].Value;
    }

    /// <summary>A socket as the page opens it.</summary>
    public async Task<ClientWebSocket> SocketAsync(string? origin = null, string? cookie = null, string? host = null)
    {
        ClientWebSocket socket = new();
        socket.Options.SetRequestHeader("Origin", origin ?? Origin);
        socket.Options.SetRequestHeader("Cookie", cookie ?? Cookie);
        if (host is not null) socket.Options.SetRequestHeader("Host", host);
        using CancellationTokenSource patience = new(TimeSpan.FromSeconds(60));
        await socket.ConnectAsync(new Uri($"ws://127.0.0.1:{Server.Port}/live?id=0"), patience.Token);
        return socket;
    }

    public async Task<ClientWebSocket> HelloAsync()
    {
        ClientWebSocket socket = await SocketAsync();
        await SendAsync(socket, $$"""{"kind":"hello","nonce":"{{await NonceAsync()}}","version":"test"}""");
        return socket;
    }

    public static Task SendAsync(ClientWebSocket socket, string text) => socket.SendAsync(Encoding.UTF8.GetBytes(text), WebSocketMessageType.Text, true, CancellationToken.None);

    /// <summary>The next answer; null where the socket was closed.</summary>
    public static async Task<JsonElement?> ReceiveAsync(ClientWebSocket socket, string? kind = null)
    {
        byte[] buffer = new byte[1 << 16];
        using CancellationTokenSource patience = new(TimeSpan.FromSeconds(120));
        while (true)
        {
            using MemoryStream all = new();
            WebSocketReceiveResult got;
            do
            {
                got = await socket.ReceiveAsync(buffer, patience.Token);
                if (got.MessageType == WebSocketMessageType.Close) return null;
                all.Write(buffer, 0, got.Count);
            }
            while (!got.EndOfMessage);
            using JsonDocument document = JsonDocument.Parse(all.ToArray());
            JsonElement answer = document.RootElement.Clone();
            if (kind is null || answer.GetProperty("kind").GetString() == kind) return answer;
        }
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await Server.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }

    [GeneratedRegex("data-nonce=\"([0-9a-f]+)\"")]
    private static partial Regex Nonce();
}
