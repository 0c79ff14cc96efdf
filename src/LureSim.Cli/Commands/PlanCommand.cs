using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Report.Words;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>plan</c>.</summary>
internal sealed class PlanSettings : PageSettings;

/// <summary>Computes a plan and writes its sheet.</summary>
internal sealed class PlanCommand : AnswerCommand<PlanSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(PlanSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        ChoiceLimits limits = RigChoice.Limits(scenario, settings);
        PlanOutcome outcome = run.Compute("Planning", (pipeline, progress) => pipeline.Plan(scenario, settings.Request with { Limits = limits }, progress, run.Cancellation));
        CommandRun.Require(outcome.Plan.Choice.First.Track);
        return new(JsonOutput.Of("plan", PlanJson.Of(outcome), ChoiceJson.Of(outcome.Plan.Choice, outcome.Plan.Colours)), "plan", human => PlanView.Write(human, outcome.Plan, settings.Formatter), Report.Sheets.Sheet.Of(outcome.Plan, settings.Formatter.System).Card().Line, Cautions.Line(scenario, outcome.Plan.Choice.First.Rig.Head))
        {
            Pages = outcome.Sheet,
            Tables =
            [
                OutputFile.Text("fall.csv", FallView.ToCsv(outcome.Plan.FallTable)),
                OutputFile.Text("coverage.csv", CoverageView.ToCsv([outcome.Plan.Grid])),
                OutputFile.Text("colours.csv", ColourView.ToCsv(outcome.Colours)),
                .. outcome.Plan.Uncertainty is { } study ? [OutputFile.Text("draws.csv", UncertaintyView.ToCsv(study))] : Array.Empty<OutputFile>(),
            ],
        };
    }
}
