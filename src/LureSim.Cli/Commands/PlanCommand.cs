using System.ComponentModel;
using LureSim.Cli.Output;
using LureSim.Motion;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>plan</c>.</summary>
internal sealed class PlanSettings : PageSettings
{
    /// <summary>Draws of the uncertain inputs for each head; null for what the scenario says.</summary>
    [CommandOption("--samples <NUMBER>")]
    [Description("Draws of what is not known well for each jig head, 0 for none (default: what the scenario says, or 24)")]
    public int? Samples { get; init; }

    /// <inheritdoc/>
    public override PlanRequest Request => base.Request with { Samples = Samples };

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Samples is < 0 or > ScenarioUncertainty.MostSamples ? ValidationResult.Error($"--samples: write 0 to {ScenarioUncertainty.MostSamples}.") : ValidationResult.Success());
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
        PlanOutcome outcome = ProgressRunner.Run(host, "Planning", progress => host.Pipeline.Plan(scenario, settings.Request, progress, cancellationToken));
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
