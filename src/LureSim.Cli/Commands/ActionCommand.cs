using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Stepping;
using LureSim.Swimming;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>action</c>.</summary>
internal sealed class ActionSettings : RigSettings
{
    /// <summary>The jig head of the rig to look at closely; null for the first.</summary>
    [CommandOption("--weight <WEIGHT>")]
    [Description("The jig head of the rig to look at closely: a weight of the tackle box, unweighted, or the name of a hard lure (default: the first lure)")]
    public string? Weight { get; init; }

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
        (JigHead head, LureBody body) = scenario.Tackle.Lures[0];
        bool given = settings.Weight is not null || settings.Presentation is not null || settings.Body is not null;
        LureBody? hard = settings.Body is null ? null : scenario.Tackle.Bodies.FirstOrDefault(item => !item.NeedsHead && item.Label == settings.Body.Trim());
        string weight = settings.Weight ?? (hard is not null ? RigChoice.NoHead : head.IsNone ? body.Label : head.Label);
        Rig? focus = given ? RigChoice.Of(scenario, weight, settings.Presentation, settings.Body) : null;
        var request = new PlanRequest(settings.Formatter.System, settings.Pdf);
        ActionOutcome outcome = run.Compute("Swimming", (pipeline, progress) => pipeline.Action(scenario, focus, settings.Faults, request, settings.Out is not null, progress, run.Cancellation));
        ActionTrace trace = outcome.Sheet.Focus.Action.Retrieve.Trace;
        if (trace.Status == SimulationStatus.Failed)
            throw CommandRun.Failure(SwimmingWords.Failure(trace));
        return new(JsonOutput.Of("action", ActionJson.Of(outcome, settings.Formatter.System)), "action", human => ActionView.Write(human, outcome.Sheet, settings.Formatter))
        {
            Csv = ActionView.ToCsv(outcome.Sheet),
            Pages = outcome.Figures,
        };
    }
}
