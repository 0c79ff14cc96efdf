using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
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
        ColourTable table = run.Compute(pipeline => pipeline.Colours(scenario, settings.Formatter.System, run.Cancellation));
        return new(JsonOutput.Of("colours", ColourJson.Of(scenario, table)), "colours", human => ColourView.Write(human, scenario, table, settings.Formatter), SpotWords.Short(scenario, settings.Formatter), Cautions.Line(scenario))
        {
            Csv = ColourView.ToCsv(table),
        };
    }
}
