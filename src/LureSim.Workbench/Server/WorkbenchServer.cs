using System.Globalization;
using System.Net;
using System.Net.WebSockets;
using System.Text;
using System.Text.Encodings.Web;
using LureSim.Workbench.Classroom;
using LureSim.Workbench.Pictures;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace LureSim.Workbench.Server;

/// <summary>How the page is served.</summary>
/// <param name="Shelf">The scenarios, and where files are written.</param>
/// <param name="Version">Version of the program.</param>
internal sealed record WorkbenchOptions(Shelf Shelf, string Version)
{
    /// <summary>Port; 0 for any that is free.</summary>
    public int Port { get; init; }

    /// <summary>How long the program waits after its last page was closed; null to stay.</summary>
    public TimeSpan? Patience { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>Lessons of a class: those of a file beside the scenario, or the program's own.</summary>
    public LessonBook Lessons { get; init; } = new(Shelf.Folder, Shelf.Units);

    /// <summary>The clock, for the day of the interview.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Waits before each answer, for tests of a slow machine.</summary>
    public TimeSpan Delay { get; init; }

    /// <summary>Waits before the other heads are worked on, for tests of heavy work.</summary>
    public Func<CancellationToken, Task>? BeforeOthers { get; init; }
}

/// <summary>The server of the live page, for this machine alone.</summary>
internal sealed class WorkbenchServer : IAsyncDisposable
{
    private const long LargestBody = 256 * 1024;

    // Of each page: the head that is looked at, the others, the work at rest, tries; and the messages.
    private const int SpareThreads = 8;

    private readonly WorkbenchOptions options;
    private readonly WebApplication app;
    private readonly Keys keys = new();
    private readonly SessionList sessions;
    private readonly CancellationTokenSource stopping = new();

    private WorkbenchServer(WorkbenchOptions options, WebApplication app)
    {
        this.options = options;
        this.app = app;
        sessions = new SessionList(options.Patience);
    }

    /// <summary>The port.</summary>
    public int Port { get; private set; }

    /// <summary>Completes when the last page has been closed for as long as the program waits.</summary>
    public Task Deserted => sessions.Deserted;

    /// <summary>Name of the cookie, for tests.</summary>
    internal string CookieName => keys.CookieName;

    /// <summary>Starts.</summary>
    /// <param name="options">How the page is served.</param>
    /// <param name="cancellation">Stops the start.</param>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task<WorkbenchServer> StartAsync(WorkbenchOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(options);

        // A thread that computes is busy for long: the next message of a page must not wait until the pool makes up its mind about another one.
        ThreadPool.GetMinThreads(out int workers, out int ports);
        ThreadPool.SetMinThreads(Math.Max(workers, Environment.ProcessorCount + SpareThreads), ports);

        // Empty: no settings from the environment, from files or from arguments can open another address.
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, EnvironmentName = "Production" });
        builder.Services.AddRoutingCore();
        builder.Services.AddSingleton<IHostLifetime, NoLifetime>();
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(1));
        builder.WebHost.UseKestrelCore();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestBody;
            kestrel.Listen(IPAddress.Loopback, options.Port, listen => listen.Protocols = HttpProtocols.Http1);
        });
        WebApplication app = builder.Build();
        var server = new WorkbenchServer(options, app);
        server.Map();
        await app.StartAsync(cancellation).ConfigureAwait(false);
        string address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        server.Port = new Uri(address).Port;
        return server;
    }

    /// <summary>A link that opens the page, once.</summary>
    public string NewLink() => string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{Port}{Gate.Open}?k={keys.NewLink()}");

    /// <summary>Computes the first picture of the first file, so that it is there when the browser asks.</summary>
    /// <param name="cancellation">Stops the work.</param>
    public void WarmUp(CancellationToken cancellation)
    {
        if (options.Shelf.Open(0, out _) is { } bench) new PicturePart(bench).First(cancellation);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await sessions.CloseAsync().ConfigureAwait(false);
        await stopping.CancelAsync().ConfigureAwait(false);
        using (var patience = new CancellationTokenSource(TimeSpan.FromSeconds(1)))
        {
            try
            {
                await app.StopAsync(patience.Token).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                // A browser that holds on to its connection does not keep the program.
            }
        }

        await app.DisposeAsync().ConfigureAwait(false);
        stopping.Dispose();
    }

    private void Map()
    {
        app.Use(async (context, next) =>
        {
            Gate.Headers(context.Response, Port);
            if (Gate.Refuses(context.Request, keys, Port) is { } refusal)
            {
                await Text(context, refusal.Status, refusal.Words).ConfigureAwait(false);
                return;
            }

            try
            {
                await next(context).ConfigureAwait(false);
            }
            catch (Exception exception) when (exception is not OperationCanceledException && !context.Response.HasStarted)
            {
                await Text(context, StatusCodes.Status500InternalServerError, "Something went wrong; the terminal where LureSim runs is still there.").ConfigureAwait(false);
            }
        });
        app.UseWebSockets(new WebSocketOptions { KeepAliveInterval = TimeSpan.FromSeconds(20) });
        app.UseRouting();
        app.MapGet(Gate.Open, Enter);
        app.MapGet("/", context => Page(context, 0));
        app.MapGet("/spot/{id:int}", context => Page(context, int.Parse((string)context.Request.RouteValues["id"]!, CultureInfo.InvariantCulture)));
        app.MapGet("/assets/{name}", context => Asset(context, (string)context.Request.RouteValues["name"]!));
        new InterviewPages(keys, options.Shelf, DateOnly.FromDateTime(options.Clock.GetLocalNow().DateTime)).Map(app);
        app.MapGet("/handout.pdf", Handout);
        app.MapGet(Gate.Socket, Live);
        app.MapFallback(context => Text(context, StatusCodes.Status404NotFound, "There is nothing here."));
    }

    private Task Enter(HttpContext context)
    {
        if (!keys.Burn(context.Request.Query["k"])) return Text(context, StatusCodes.Status401Unauthorized, "This link has been used. Press O in the terminal where LureSim runs for a new one.");
        context.Response.Cookies.Append(keys.CookieName, keys.Cookie, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", IsEssential = true });

        // Not 30x with the key in the address: the browser goes on to the page, and the key is gone from its history.
        context.Response.Redirect("/");
        return Task.CompletedTask;
    }

    private async Task Page(HttpContext context, int id)
    {
        if (options.Shelf.Open(id, out string problem) is not { } bench)
        {
            await Text(context, StatusCodes.Status404NotFound, problem).ConfigureAwait(false);
            return;
        }

        var picture = new PicturePart(bench);
        string hello = MessageJson.Write(picture.First(context.RequestAborted));
        HtmlEncoder encoder = HtmlEncoder.Default;
        var others = new StringBuilder();
        foreach (ShelfFile file in options.Shelf.Files.Where(_ => options.Shelf.Files.Count > 1))
            others.Append(CultureInfo.InvariantCulture, $"<li><a href=\"/spot/{file.Id}\"{(file.Id == id ? " aria-current=\"page\"" : "")}>{encoder.Encode(file.Name)}</a></li>");
        string page = Assets.Text("index.html")
            .Replace("{{title}}", encoder.Encode(bench.Scenario.Title), StringComparison.Ordinal)
            .Replace("{{nonce}}", keys.NewPage(), StringComparison.Ordinal)
            .Replace("{{version}}", encoder.Encode(options.Version), StringComparison.Ordinal)
            .Replace("{{id}}", id.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
            .Replace("{{files}}", others.Length == 0 ? "" : $"<details class=\"files\"><summary>Spots</summary><ul>{others}</ul></details>", StringComparison.Ordinal)
            .Replace("{{hello}}", hello, StringComparison.Ordinal);
        context.Response.ContentType = "text/html; charset=utf-8";
        byte[] bytes = Encoding.UTF8.GetBytes(page);
        context.Response.ContentLength = bytes.Length;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted).ConfigureAwait(false);
    }

    private static async Task Asset(HttpContext context, string name)
    {
        if (Assets.Find(name) is not { } asset || name.EndsWith(".html", StringComparison.Ordinal))
        {
            await Text(context, StatusCodes.Status404NotFound, "There is no such file.").ConfigureAwait(false);
            return;
        }

        context.Response.ContentType = asset.Type;
        context.Response.ContentLength = asset.Content.Length;
        await context.Response.Body.WriteAsync(asset.Content, context.RequestAborted).ConfigureAwait(false);
    }

    private async Task Handout(HttpContext context)
    {
        if (options.Shelf.Open(0, out string problem) is not { } bench)
        {
            await Text(context, StatusCodes.Status404NotFound, problem).ConfigureAwait(false);
            return;
        }

        byte[] pdf = Classroom.Handout.Pdf(options.Lessons, bench, context.RequestAborted);
        context.Response.ContentType = "application/pdf";
        context.Response.ContentLength = pdf.Length;
        context.Response.Headers.ContentDisposition = "attachment; filename=\"handout.pdf\"";
        await context.Response.Body.WriteAsync(pdf, context.RequestAborted).ConfigureAwait(false);
    }

    private async Task Live(HttpContext context)
    {
        if (!context.WebSockets.IsWebSocketRequest)
        {
            await Text(context, StatusCodes.Status400BadRequest, "This address is for the page's own socket.").ConfigureAwait(false);
            return;
        }

        int id = int.TryParse(context.Request.Query["id"], NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : 0;
        if (options.Shelf.Open(id, out string problem) is not { } bench)
        {
            await Text(context, StatusCodes.Status404NotFound, problem).ConfigureAwait(false);
            return;
        }

        using WebSocket socket = await context.WebSockets.AcceptWebSocketAsync().ConfigureAwait(false);
        using var session = new PageSession(socket, options, bench, keys, stopping.Token);
        await sessions.RunAsync(session).ConfigureAwait(false);
    }

    private static async Task Text(HttpContext context, int status, string words)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        await context.Response.WriteAsync(words, context.RequestAborted).ConfigureAwait(false);
    }

    // The command ends the program, not a signal that the server hears by itself.
    private sealed class NoLifetime : IHostLifetime
    {
        public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
