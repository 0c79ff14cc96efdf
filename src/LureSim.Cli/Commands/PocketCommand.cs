using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Workbench.Pocket;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>pocket</c>.</summary>
internal sealed class PocketSettings : UnitSettings
{
    private const int MostMinutes = 120;
    private const int MostSpots = 6;

    /// <summary>The scenario files.</summary>
    [CommandArgument(0, "<FILE>")]
    [Description("One or more scenarios (YAML): the spots of the day")]
    [PathKind(folder: false)]
    public required string[] Files { get; init; }

    /// <summary>Folder to write into.</summary>
    [CommandOption("--out <DIR>")]
    [Description("Folder for the page and its pictures, or the page itself (ends in .html); default: out/ and the name of the first scenario")]
    [PathKind(folder: true)]
    public string? Out { get; init; }

    /// <summary>Most minutes of computing for each spot.</summary>
    [CommandOption("--minutes <NUMBER>")]
    [Description("Most minutes of computing for each spot (default 3): the longer, the finer the table")]
    public int Minutes { get; init; } = 3;

    /// <summary>Folder to write into.</summary>
    public string Folder => Out is null ? Path.Combine("out", Path.GetFileNameWithoutExtension(Files[0]) + "-pocket")
        : NamesPage ? Path.GetDirectoryName(Out) is { Length: > 0 } folder ? folder : "."
        : Out;

    /// <summary>Name of the page without its ending.</summary>
    public string Page => NamesPage ? Path.GetFileNameWithoutExtension(Out!) : Path.GetFileNameWithoutExtension(Files[0]) + "-pocket";

    private bool NamesPage => Out is not null && Out.EndsWith(".html", StringComparison.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Minutes is < 1 or > MostMinutes ? ValidationResult.Error($"--minutes: {Minutes} is outside the range, 1 to {MostMinutes}.")
        : Files.Length > MostSpots ? ValidationResult.Error($"{Files.Length} spots do not fit on one page; {MostSpots} do.")
        : Out is { Length: 0 } ? ValidationResult.Error("--out: name a folder.")
        : ValidationResult.Success());
}

/// <summary>Writes the pocket page: one file for the phone, which needs no signal.</summary>
internal sealed class PocketCommand : Command<PocketSettings>
{
    // Letters of style and script, of the words of a spot, and of a table that leaves the page of one spot below 150 kB; and what a page of many is to stay below.
    private const int Always = 34_000, Words = 45_000, RoomForOne = 68_000, RoomForAll = 285_000;

    /// <inheritdoc/>
    public override int Execute(CommandContext context, PocketSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        UnitFormat format = settings.Formatter;
        var scenarios = new List<Scenario>();
        foreach (string file in settings.Files)
        {
            ScenarioReading reading = ScenarioReader.Read(file);
            scenarios.Add(reading.Scenario ?? throw new CommandFailedException(ExitCode.Usage, ProblemView.Heading(file, reading.Problems.Count), reading.Problems));
        }

        AtomicFiles.RequireFolder(settings.Folder, cancellationToken);

        // In the page three bytes take four letters.
        int room = Math.Min(RoomForOne, Math.Max(0, ((RoomForAll - Always) / scenarios.Count) - Words));
        var budget = new PocketBudget(room * 3 / 4, TimeSpan.FromMinutes(settings.Minutes));
        List<PocketSpot> spots = ProgressRunner.Run(host, scenarios.Count == 1 ? "Computing the table for the phone" : "Computing the tables for the phone", progress =>
        {
            var done = new List<PocketSpot>();
            foreach (Scenario scenario in scenarios)
            {
                int before = done.Count;
                var runs = new Runs(progress, before, scenarios.Count);
                done.Add(PocketSpot.Compute(scenario, format.LengthScale, budget, runs, cancellationToken));
            }

            return done;
        });
        string name = settings.Page;
        byte[] page = PocketWriter.Page(spots, format.System, ProgramVersion.Text, DateOnly.FromDateTime(DateTime.Today));
        if (page.Length > PocketWriter.MostBytes)
            throw new CommandFailedException(ExitCode.Failed, $"The page would have {page.Length / 1000} kB, more than mail and messengers take ({PocketWriter.MostBytes / 1000} kB): name fewer spots.");
        AtomicFiles.WriteAndTell(host.OutputConsole, settings.Folder, [new OutputFile(name + ".html", page), .. spots.Select((spot, i) => new OutputFile(spots.Count == 1 ? $"{name}.png" : $"{name}-{i + 1}.png", PocketPhoto.Png(spot, format)))], cancellationToken);
        foreach (PocketSpot spot in spots)
        {
            string steps = string.Join(" x ", spot.Table.Axes.Select(axis => axis.Steps.Count));
            host.OutputConsole.MarkupLineInterpolated($"{spot.Scenario.Title}: {steps} steps, {spot.Table.Runs} runs. {PocketWriter.ErrorWords(spot.Table, format)}");
        }

        host.OutputConsole.MarkupLineInterpolated($"{page.Length / 1000} kB. Android: save it, open it with your browser. iPhone: keep the picture too; the file shows the card and the tables, but its sliders may not move.");
        return ExitCode.Ok;
    }

    private sealed class Runs(IProgress<double> progress, int before, int spots) : IProgress<(int Done, int Total)>
    {
        public void Report((int Done, int Total) value) => progress.Report((before + ((double)value.Done / Math.Max(1, value.Total))) / spots);
    }
}
