using System.ComponentModel;
using LureSim.Cli.Output;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>tide</c>.</summary>
internal sealed class TideSettings : ScenarioSettings
{
    /// <summary>Folder of the page; null for the default.</summary>
    [CommandOption("--out <DIR>")]
    [Description("Folder for the page and its files (default out/, the scenario's file name and -tide)")]
    [PathKind(folder: true)]
    public string? Out { get; init; }

    /// <summary>The presentation; null for the first.</summary>
    [CommandOption("--presentation <NAME>")]
    [Description("The presentation by its name (default: the first of the scenario)")]
    public string? Presentation { get; init; }

    /// <summary>Folder to write into.</summary>
    public string Folder => Out ?? Path.Combine("out", Path.GetFileNameWithoutExtension(File) + "-tide");

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Out is { Length: 0 } ? ValidationResult.Error("--out: name a folder.") : ValidationResult.Success());
}

/// <summary>Writes the page of weights by the hour of the tide, and by depth and current.</summary>
internal sealed class TideCommand : Command<TideSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, TideSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        Scenario scenario = settings.ReadScenario();
        if (scenario.Tackle.JigHeads.Count == 0)
            throw new CommandFailedException(ExitCode.Usage, $"{settings.File}: the tackle box has no jig head, and tide is about jig heads; add \"jig_heads:\" and a soft body under tackle, or use plan or retrieve.");
        string? soft = scenario.Tackle.Bodies.FirstOrDefault(body => body.NeedsHead)?.Label;
        Presentation presentation = RigChoice.Of(scenario, scenario.Tackle.JigHeads[0].Label, settings.Presentation, soft).Presentation;
        AtomicFiles.RequireFolder(settings.Folder);
        TideOutcome outcome = ProgressRunner.Run(host, "Running the tide", progress => host.Pipeline.Tide(scenario, presentation, settings.Formatter.System, progress, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();

        IAnsiConsole human = host.Human(settings.Json);
        TideView.Write(human, outcome.Table, settings.Formatter);
        JsonOutput document = JsonOutput.Of("tide", TideJson.Of(outcome.Table));
        AtomicFiles.WriteAndTell(
            human,
            settings.Folder,
            [
                .. outcome.Sheet,
                OutputFile.Text("tide.json", document.Text),
                OutputFile.Text("tide.csv", TideView.HoursToCsv(outcome.Table)),
                OutputFile.Text("weights.csv", TideView.WeightsToCsv(outcome.Table)),
            ],
            cancellationToken);
        if (settings.Json)
            host.Output.Write(document.Text);
        return ExitCode.Ok;
    }
}
