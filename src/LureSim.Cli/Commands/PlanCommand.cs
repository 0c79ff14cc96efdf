using System.ComponentModel;
using LureSim.Cli.Output;
using LureSim.Motion;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>plan</c>.</summary>
internal sealed class PlanSettings : ScenarioSettings
{
    /// <summary>Folder of the sheet; null for the default.</summary>
    [CommandOption("--out <DIR>")]
    [Description("Folder for the sheet and its files (default out/ and the scenario's file name)")]
    [PathKind(folder: true)]
    public string? Out { get; init; }

    /// <summary>True to write the sheet as PDF as well.</summary>
    [CommandOption("--pdf")]
    [Description("Write the sheet as PDF as well")]
    public bool Pdf { get; init; }

    /// <summary>Draws of the uncertain inputs for each head; null for what the scenario says.</summary>
    [CommandOption("--samples <NUMBER>")]
    [Description("Draws of what is not known well for each jig head, 0 for none (default: what the scenario says, or 24)")]
    public int? Samples { get; init; }

    /// <summary>Folder to write into.</summary>
    public string Folder => Out ?? Path.Combine("out", Path.GetFileNameWithoutExtension(File));

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Samples is < 0 or > ScenarioUncertainty.MostSamples ? ValidationResult.Error($"--samples: write 0 to {ScenarioUncertainty.MostSamples}.") : ValidationResult.Success(),
        Out is { Length: 0 } ? ValidationResult.Error("--out: name a folder.") : ValidationResult.Success());
}

/// <summary>Computes a plan and writes its sheet.</summary>
internal sealed class PlanCommand : Command<PlanSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, PlanSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        Scenario scenario = settings.ReadScenario();
        AtomicFiles.RequireFolder(settings.Folder);
        var request = new PlanRequest(settings.Formatter.System, settings.Pdf, settings.Samples);
        PlanOutcome outcome = ProgressRunner.Run(host, "Planning", progress => host.Pipeline.Plan(scenario, request, progress, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();
        if (outcome.Plan.Choice.First.Track is { Status: SimulationStatus.Failed } failed)
            throw new CommandFailedException(ExitCode.Numerical, $"The computation failed: {failed.Message}");

        IAnsiConsole human = host.Human(settings.Json);
        PlanView.Write(human, outcome.Plan, settings.Formatter);
        JsonOutput document = JsonOutput.Of("plan", PlanJson.Of(outcome));
        AtomicFiles.WriteAndTell(
            human,
            settings.Folder,
            [
                .. outcome.Sheet,
                OutputFile.Text("plan.json", document.Text),
                OutputFile.Text("fall.csv", FallView.ToCsv(outcome.Plan.FallTable)),
                OutputFile.Text("coverage.csv", CoverageView.ToCsv([outcome.Plan.Grid])),
                OutputFile.Text("colours.csv", ColourView.ToCsv(outcome.Colours)),
                .. outcome.Plan.Uncertainty is { } study ? [OutputFile.Text("draws.csv", UncertaintyView.ToCsv(study))] : Array.Empty<OutputFile>(),
            ],
            cancellationToken);
        if (settings.Json)
            host.Output.Write(document.Text);
        return ExitCode.Ok;
    }
}
