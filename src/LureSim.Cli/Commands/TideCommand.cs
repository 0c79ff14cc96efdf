using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Model;
using LureSim.Report.Words;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>tide</c>.</summary>
internal sealed class TideSettings : PageSettings
{
    /// <inheritdoc/>
    protected override string Suffix => "-tide";
}

/// <summary>Writes the page of weights by the hour of the tide, and by depth and current.</summary>
internal sealed class TideCommand : AnswerCommand<TideSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(TideSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        settings.RequireJigHeads(scenario, "tide");
        (ChosenRig chosen, TideOutcome outcome) = run.Choose("Running the tide", scenario, RigChoice.Limits(scenario, settings), settings, (pipeline, found, progress) =>
            pipeline.Tide(found.Search.Scenario, found.Rig, settings.Request, progress, run.Cancellation));
        return new(JsonOutput.Of("tide", TideJson.Of(outcome.Table), ChoiceJson.Of(chosen)), "tide", human => TideView.Write(human, outcome.Table, settings.Formatter), SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario, chosen.Rig.Head))
        {
            Choice = ChoiceWords.Line(chosen.Choice, chosen.Colour, settings.Formatter.System),
            Csv = TideView.HoursToCsv(outcome.Table),
            Pages = outcome.Pages,
            Tables = [OutputFile.Text("weights.csv", TideView.WeightsToCsv(outcome.Table))],
        };
    }
}
