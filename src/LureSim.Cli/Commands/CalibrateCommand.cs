using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision.Observations;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>calibrate</c>.</summary>
internal sealed class CalibrateSettings : JsonSettings
{
    /// <summary>The scenario file.</summary>
    [CommandArgument(0, "<FILE>")]
    [Description("A scenario with timed falls in a pool under seen (YAML)")]
    [PathKind(folder: false)]
    public required string File { get; init; }

    /// <summary>The tackle file.</summary>
    [CommandOption("--box <FILE>")]
    [Description("The tackle file to write, relative to the scenario (default: my-box.yaml beside it); a copy of an old one is kept")]
    [PathKind(folder: false)]
    public string Box { get; init; } = "my-box.yaml";
}

/// <summary>Turns timed falls in a pool into the drag of each bait and keeps it in a tackle file.</summary>
internal sealed class CalibrateCommand : Command<CalibrateSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, CalibrateSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        UnitFormat format = settings.Formatter;
        ScenarioReading reading = ScenarioReader.Read(settings.File);
        Scenario scenario = reading.Scenario ?? throw new CommandFailedException(ExitCode.Usage, ProblemView.Heading(settings.File, reading.Problems.Count), reading.Problems);
        IReadOnlyList<DragCalibration> found = DragCalibration.Of(scenario.Tackle, scenario.Seen);
        if (found.Count == 0)
            throw new CommandFailedException(ExitCode.Usage, $"{settings.File}: no timed fall that a drag can be told from; add under seen for example - {{jig_head: 1/4 oz, pool: {{depth: 6 ft, time: 3.5 s}}, date: 2026-06-14}}.");
        string path = Path.Combine(Path.GetDirectoryName(settings.File) ?? "", settings.Box);
        List<LureNumbers> lures = [];
        if (File.Exists(path))
        {
            TackleFileReading old = TackleFile.Read(path);
            if (old.Problems.Count > 0)
                throw new CommandFailedException(ExitCode.Usage, ProblemView.Heading(path, old.Problems.Count), old.Problems);
            lures.AddRange(old.Lures.Where(lure => !found.Any(own => string.Equals(own.Body.Label, lure.Bait, StringComparison.OrdinalIgnoreCase))));
        }

        lures.AddRange(found.Select(own => new LureNumbers(own.Body.Label, own.Drag with { How = ObservationWords.How(own, format) })));
        string? copy = KeptCopy.Write(path, TackleFile.Text([.. lures.OrderBy(lure => lure.Bait, StringComparer.Ordinal)]), cancellationToken);
        IAnsiConsole human = host.Human(settings.Json);
        foreach (string sentence in found.SelectMany(own => ObservationWords.Calibration(own, format)))
            human.MarkupLineInterpolated($"{sentence}");
        human.MarkupLineInterpolated($"Wrote {path}{(copy is null ? "" : $"; the file as it was: {copy}")}");
        human.MarkupLineInterpolated($"Scenarios take it with \"include: {settings.Box}\" under tackle.");
        if (settings.Json)
            host.Output.Write(JsonOutput.Of("calibrate", CalibrationJson.Of(found)).Text);
        return ExitCode.Ok;
    }
}
