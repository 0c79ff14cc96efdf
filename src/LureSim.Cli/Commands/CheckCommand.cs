using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>check</c>.</summary>
internal sealed class CheckSettings : CommandSettings
{
    /// <summary>The scenario files.</summary>
    [CommandArgument(0, "<FILE>")]
    [Description("One or more scenarios (YAML)")]
    [PathKind(folder: false)]
    public required string[] Files { get; init; }

    /// <summary>True to answer with one JSON document.</summary>
    [CommandOption("--json")]
    [Description("Print one JSON document on standard output; text for people goes to standard error")]
    public bool Json { get; init; }
}

/// <summary>Checks scenarios without running them.</summary>
internal sealed class CheckCommand : Command<CheckSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, CheckSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        var readings = new List<ScenarioReading>();
        foreach (string file in settings.Files)
        {
            cancellationToken.ThrowIfCancellationRequested();
            ScenarioReading reading = ScenarioReader.Read(file);
            readings.Add(reading);
            if (reading.Scenario is { } scenario)
            {
                host.Human(settings.Json).MarkupLineInterpolated($"{file}: [green]ok[/], {scenario.Title}");
                ProblemView.Write(host.Human(settings.Json), reading.Remarks);
                continue;
            }

            host.ErrorConsole.MarkupLineInterpolated($"[red]{ProblemView.Heading(file, reading.Problems.Count)}[/]");
            ProblemView.Write(host.ErrorConsole, reading.Problems);
            ProblemView.Write(host.ErrorConsole, reading.Remarks);
        }

        bool valid = readings.TrueForAll(reading => reading.IsValid);
        int code = valid ? ExitCode.Ok : ExitCode.Usage;
        if (settings.Json)
            host.Output.Write(JsonOutput.Of("check", CheckJson.Of(readings), null, valid ? "ok" : JsonOutput.InvalidScenario, code, valid ? "" : "Not all scenarios are valid.").Text);
        return code;
    }
}
