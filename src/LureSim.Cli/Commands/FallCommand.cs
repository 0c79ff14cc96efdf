using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Model;
using LureSim.Report.Words;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>fall</c>.</summary>
internal sealed class FallSettings : TableSettings;

/// <summary>Shows the count-down table.</summary>
internal sealed class FallCommand : AnswerCommand<FallSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(FallSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        (ChosenRig chosen, FallTable table) = run.Choose("Falling", scenario, RigChoice.Limits(scenario, settings), settings, (pipeline, found, _) =>
            pipeline.Fall(found.Search.Scenario, found.Rig, settings.Formatter.System, run.Cancellation));
        return new(JsonOutput.Of("fall", FallJson.Of(scenario, chosen.Rig.Body, table), ChoiceJson.Of(chosen)), "fall", human => FallView.Write(human, scenario, chosen.Rig.Body, table, settings.Formatter), SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario, chosen.Rig.Head))
        {
            Choice = ChoiceWords.Line(chosen.Choice, chosen.Colour, settings.Formatter.System),
            Csv = FallView.ToCsv(table),
        };
    }
}
