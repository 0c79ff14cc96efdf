using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Stepping;
using LureSim.Swimming;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>action</c>.</summary>
internal sealed class ActionSettings : TableSettings
{
    /// <summary>True to write the figures as PDF as well.</summary>
    [CommandOption("--pdf")]
    [Description("With --out: write the figures as PDF as well")]
    public bool Pdf { get; init; }

    /// <summary>True for the maps of faults.</summary>
    [CommandOption("--faults")]
    [Description("For the rig looked at closely: what each fault of the rigging does by amount and speed (some seconds more)")]
    public bool Faults { get; init; }

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Pdf && Out is null ? ValidationResult.Error("--pdf: name a folder with --out.") : ValidationResult.Success());
}

/// <summary>Checks how the rigs of a scenario swim, and says what to fix.</summary>
internal sealed class ActionCommand : AnswerCommand<ActionSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(ActionSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        var request = new PlanRequest(settings.Formatter.System, settings.Pdf);
        (ChosenRig chosen, ActionOutcome outcome) = run.Choose("Swimming", scenario, RigChoice.Limits(scenario, settings), settings, (pipeline, found, progress) =>
            pipeline.Action(found.Search.Scenario, found.Rig, settings.Faults, request, settings.Out is not null, progress, run.Cancellation));
        ActionTrace trace = outcome.Sheet.Focus.Action.Retrieve.Trace;
        if (trace.Status == SimulationStatus.Failed)
            throw CommandRun.Failure(SwimmingWords.Failure(trace));
        return new(JsonOutput.Of("action", ActionJson.Of(outcome, settings.Formatter.System), ChoiceJson.Of(chosen)), "action", human => ActionView.Write(human, outcome.Sheet, settings.Formatter), SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario, chosen.Rig.Head))
        {
            Choice = ChoiceWords.Line(chosen.Choice, chosen.Colour, settings.Formatter.System),
            Csv = ActionView.ToCsv(outcome.Sheet),
            Pages = outcome.Figures,
        };
    }
}
