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
        FallTable table = run.Compute("Sinking", (pipeline, progress) => pipeline.Fall(scenario, settings.Formatter.System, progress, run.Cancellation));
        return new(JsonOutput.Of("fall", FallJson.Of(scenario, table)), "fall", human => FallView.Write(human, scenario, table, settings.Formatter), SpotWords.Short(scenario, settings.Formatter), Cautions.Line(scenario))
        {
            Csv = FallView.ToCsv(table),
        };
    }
}
