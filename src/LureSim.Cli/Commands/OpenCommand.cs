using System.ComponentModel;
using System.Diagnostics;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Workbench.Server;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>open</c>.</summary>
internal sealed class OpenSettings : UnitSettings
{
    private const int LowestPort = 1024;
    private const int HighestPort = 65535;

    /// <summary>The scenario file; null for those of the folder and the examples.</summary>
    [CommandArgument(0, "[FILE]")]
    [Description("The scenario (YAML); without one, those of this folder and two examples")]
    [PathKind(folder: false)]
    public string? File { get; init; }

    /// <summary>True to print the address alone.</summary>
    [CommandOption("--no-browser")]
    [Description("Print the address; start no browser")]
    public bool NoBrowser { get; init; }

    /// <summary>Port; null for any that is free.</summary>
    [CommandOption("--port <NUMBER>")]
    [Description("Port on this machine (default: any that is free)")]
    public int? Port { get; init; }

    /// <summary>True to stay when the last page is closed.</summary>
    [CommandOption("--stay")]
    [Description("Stay until Ctrl-C; otherwise the program ends ten minutes after its last page is closed")]
    public bool Stay { get; init; }

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Port is < LowestPort or > HighestPort ? ValidationResult.Error($"--port: {Port} is outside the range, {LowestPort} to {HighestPort}.")
        : ValidationResult.Success());
}

/// <summary>Serves the live page to this machine's browser.</summary>
internal sealed class OpenCommand : AsyncCommand<OpenSettings>
{
    /// <inheritdoc/>
    public override async Task<int> ExecuteAsync(CommandContext context, OpenSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        UnitSystem units = settings.Formatter.System;
        if (settings.File is { } file)
        {
            ScenarioReading reading = ScenarioReader.Read(file);
            if (reading.Scenario is null) throw new CommandFailedException(ExitCode.Usage, ProblemView.Heading(file, reading.Problems.Count), reading.Problems);
        }

        FileWriter write = (folder, name, content) => AtomicFiles.Write(folder, [new OutputFile(name, content)], cancellationToken);
        Shelf shelf = settings.File is { } one ? Shelf.Of(one, units, write) : Shelf.OfFolder(Directory.GetCurrentDirectory(), units, write);
        await using WorkbenchServer server = await WorkbenchServer.StartAsync(
            new WorkbenchOptions(shelf, ProgramVersion.Text) { Port = settings.Port ?? 0, Patience = settings.Stay ? null : TimeSpan.FromMinutes(10) }, cancellationToken).ConfigureAwait(false);

        // The first picture takes most of the time of a start: it is computed while the browser comes up.
        _ = Task.Run(() => server.WarmUp(cancellationToken), cancellationToken);
        string link = server.NewLink();
        bool opened = !settings.NoBrowser && TryStartBrowser(link);
        host.OutputConsole.WriteLine(opened ? "The live page opens in your browser. If it does not, go to:" : "The live page is at this address, for this machine alone; the link works once:");
        host.OutputConsole.WriteLine(link);
        host.OutputConsole.WriteLine($"Ctrl-C ends it{(settings.Stay ? "" : "; so do ten minutes without a page")}. Press O for a new link.");
        await host.Output.FlushAsync(cancellationToken).ConfigureAwait(false);
        await WaitAsync(server, host, cancellationToken).ConfigureAwait(false);
        return ExitCode.Ok;
    }

    // Ends by Ctrl-C, which is how one ends it, or when nobody looks any more.
    private static async Task WaitAsync(WorkbenchServer server, CliHost host, CancellationToken cancellation)
    {
        const int LookForKeys = 200;
        while (!cancellation.IsCancellationRequested)
        {
            Task pause = Task.Delay(LookForKeys, CancellationToken.None);
            if (await Task.WhenAny(server.Deserted, pause).ConfigureAwait(false) == server.Deserted)
            {
                host.OutputConsole.WriteLine("No page was open for ten minutes: LureSim ends.");
                return;
            }

            if (!Console.IsInputRedirected && Console.KeyAvailable && Console.ReadKey(intercept: true).Key == ConsoleKey.O)
                host.OutputConsole.WriteLine(server.NewLink());
        }
    }

    // Over a remote shell, or without a screen, there is nothing to start: the address is printed anyway.
    private static bool TryStartBrowser(string link)
    {
        if (OperatingSystem.IsLinux() && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("DISPLAY")) && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("WAYLAND_DISPLAY"))) return false;
        try
        {
            using Process? browser = Process.Start(new ProcessStartInfo(link) { UseShellExecute = true });
            return true;
        }
        catch (Exception exception) when (exception is Win32Exception or InvalidOperationException or PlatformNotSupportedException or FileNotFoundException)
        {
            return false;
        }
    }
}
