using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Model;
using LureSim.Report.Words;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>colours</c>.</summary>
internal sealed class ColoursSettings : TableSettings;

/// <summary>Shows the colours with depth.</summary>
internal sealed class ColoursCommand : AnswerCommand<ColoursSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(ColoursSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        (ChosenRig chosen, ColourTable table) = run.Choose("Looking", scenario, RigChoice.Limits(scenario, settings), settings, (pipeline, found, _) =>
            pipeline.Colours(found.Search.Scenario, found, run.Cancellation));
        return new(JsonOutput.Of("colours", ColourJson.Of(scenario, table), ChoiceJson.Of(chosen)), "colours", human => ColourView.Write(human, scenario, table, settings.Formatter), SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario, chosen.Rig.Head))
        {
            Choice = ChoiceWords.Line(chosen.Choice, chosen.Colour, settings.Formatter.System),
            Csv = ColourView.ToCsv(table),
        };
    }
}
