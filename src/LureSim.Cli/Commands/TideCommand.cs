using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Words;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>tide</c>.</summary>
internal sealed class TideSettings : PageSettings
{
    /// <summary>The presentation; null for the first.</summary>
    [CommandOption("--presentation <NAME>")]
    [Description("The retrieve by its name (default: the first of the scenario)")]
    public string? Presentation { get; init; }

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
        string? soft = scenario.Tackle.Bodies.FirstOrDefault(body => body.NeedsHead)?.Label;
        Presentation presentation = RigChoice.Of(scenario, scenario.Tackle.JigHeads[0].Label, settings.Presentation, soft).Presentation;
        TideOutcome outcome = run.Compute("Running the tide", (pipeline, progress) => pipeline.Tide(scenario, presentation, settings.Request, progress, run.Cancellation));
        return new(JsonOutput.Of("tide", TideJson.Of(outcome.Table)), "tide", human => TideView.Write(human, outcome.Table, settings.Formatter), SpotWords.Short(scenario, settings.Formatter), Cautions.Line(scenario))
        {
            Csv = TideView.HoursToCsv(outcome.Table),
            Pages = outcome.Pages,
            Tables = [OutputFile.Text("weights.csv", TideView.WeightsToCsv(outcome.Table))],
        };
    }
}
