using LureSim.Report.Units;
using LureSim.Workbench.Server;
using Microsoft.Playwright;

namespace LureSim.Browser.Tests;

/// <summary>One Chromium for all tests. The tests run when asked for, and are skipped with a plain message otherwise.</summary>
public sealed class BrowserFixture : IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome", "/snap/bin/chromium"];

    private IPlaywright? playwright;

    /// <summary>Why the pages are not looked at in this run; null where they are. Asked for by name: a browser beside other tests is too slow for what they measure.</summary>
    public static string? WhyNot =>
        Environment.GetEnvironmentVariable("LURESIM_BROWSER") != "1" ? "The pages are looked at when asked for: LURESIM_BROWSER=1, on a machine that does nothing else."
        : Program is null ? throw new InvalidOperationException("No Chromium on this machine (looked in /usr/bin; LURESIM_CHROMIUM names another place).")
        : null;

    /// <summary>The browser's program; null where there is none.</summary>
    public static string? Program { get; } =
        Environment.GetEnvironmentVariable("LURESIM_CHROMIUM") is { Length: > 0 } named ? named : Places.FirstOrDefault(File.Exists);

    /// <summary>The browser.</summary>
    internal IBrowser Browser { get; private set; } = null!;

    public async Task InitializeAsync()
    {
        if (WhyNot is not null) return;
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Program, Headless = true, Args = ["--no-sandbox", "--disable-dev-shm-usage"] });
    }

    public async Task DisposeAsync()
    {
        if (Browser is not null) await Browser.DisposeAsync();
        playwright?.Dispose();
    }

    /// <summary>Path of a file of the repository.</summary>
    internal static string File_(params string[] parts)
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LureSim.sln"))) folder = folder.Parent;
        return Path.Combine([folder!.FullName, .. parts]);
    }

    /// <summary>A server with a copy of a scenario in a folder of its own.</summary>
    internal static async Task<LiveServer> ServeAsync(string scenario, Func<WorkbenchOptions, WorkbenchOptions>? change = null, UnitSystem units = UnitSystem.Us)
    {
        string folder = Directory.CreateTempSubdirectory("luresim-page-").FullName;
        string file = Path.Combine(folder, Path.GetFileName(scenario));
        File.Copy(scenario, file);
        var shelf = Shelf.Of(file, units, (into, name, content) => File.WriteAllBytes(Path.Combine(into, name), content.ToArray()));
        WorkbenchOptions options = new(shelf, "test") { Patience = null };
        WorkbenchServer server = await WorkbenchServer.StartAsync(change?.Invoke(options) ?? options);
        return new LiveServer(server, folder);
    }
}

/// <summary>A server that cleans up after itself.</summary>
internal sealed record LiveServer(WorkbenchServer Server, string Folder) : IAsyncDisposable
{
    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }
}

/// <summary>A test that needs a browser.</summary>
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute()
    {
        Skip = BrowserFixture.WhyNot;
    }
}

/// <summary>A row of tests that need a browser.</summary>
public sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute()
    {
        Skip = BrowserFixture.WhyNot;
    }
}

/// <summary>All tests of the pages share the browser, and run one after the other: they measure time.</summary>
[CollectionDefinition("browser", DisableParallelization = true)]
public sealed class SharedBrowser : ICollectionFixture<BrowserFixture>;
