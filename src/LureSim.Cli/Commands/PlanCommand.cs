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

    /// <summary>Samples of the uncertain inputs.</summary>
    [CommandOption("--samples <COUNT>")]
    [Description("Samples of the uncertain inputs for each rig, 1 to 5000 (default 64); more is slower and steadier")]
    public int Samples { get; init; } = 64;

    /// <summary>Seed of the samples.</summary>
    [CommandOption("--seed <NUMBER>")]
    [Description("Seed of the samples, 0 or more (default 1): the same seed gives the same plan")]
    public int Seed { get; init; } = 1;

    /// <summary>Folder to write into.</summary>
    public string Folder => Out ?? Path.Combine("out", Path.GetFileNameWithoutExtension(File));

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Samples is >= 1 and <= 5000 ? ValidationResult.Success() : ValidationResult.Error("--samples: write a number from 1 to 5000."),
        Seed >= 0 ? ValidationResult.Success() : ValidationResult.Error("--seed: write a number of 0 or more."),
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
        var options = new PlanOptions(settings.Samples, settings.Seed, settings.Formatter.System, settings.Pdf);
        PlanOutcome outcome = ProgressRunner.Run(host, "Planning", progress => host.Pipeline.Plan(scenario, options, progress, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();
        if (outcome.Choice.First.Track is { Status: SimulationStatus.Failed } failed)
            throw new CommandFailedException(ExitCode.Numerical, $"The computation failed: {failed.Message}");

        IAnsiConsole human = host.Human(settings.Json);
        PlanView.Write(human, scenario, outcome, settings.Formatter);
        JsonOutput document = JsonOutput.Of("plan", PlanJson.Of(scenario, outcome, options));
        AtomicFiles.WriteAndTell(
            human,
            settings.Folder,
            [
                .. outcome.Sheet,
                OutputFile.Text("plan.json", document.Text),
                OutputFile.Text("fall.csv", FallView.ToCsv(outcome.Fall)),
                OutputFile.Text("coverage.csv", CoverageView.ToCsv(outcome.Grids)),
                OutputFile.Text("colours.csv", ColourView.ToCsv(outcome.Colours)),
            ],
            cancellationToken);
        if (settings.Json)
            host.Output.Write(document.Text);
        return ExitCode.Ok;
    }
}
