using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Decision.Inverse;
using LureSim.Decision.Search;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>ask</c>.</summary>
internal sealed class AskSettings : TableSettings
{
    /// <summary>Depth to hold; null for the middle of the strike zone.</summary>
    [CommandOption("--depth <DEPTH>")]
    [Description("The depth to hold, such as \"6 ft\" (default: the middle of the strike zone)")]
    public string? Depth { get; init; }

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        CheckQuantity("--depth", QuantityKind.Length, Depth, 0.0, 60.0));
}

/// <summary>Answers questions asked backwards: which weight, which reel speed, which count-down.</summary>
internal sealed class AskCommand : AnswerCommand<AskSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(AskSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        double? depth = settings.Depth is { } text ? QuantityReader.Read(QuantityKind.Length, text).Value : null;
        if (depth > scenario.Spot.Depth)
            throw new CommandFailedException(ExitCode.Usage, $"--depth: the water is only {settings.Formatter.LengthText(scenario.Spot.Depth)} deep.");
        settings.RequireJigHeads(scenario, "ask");
        ChoiceLimits limits = RigChoice.Limits(scenario, settings);
        (ChosenRig chosen, IReadOnlyList<InverseAnswer> answers) = run.Choose("Searching", scenario, limits, settings, (pipeline, found, progress) =>
            pipeline.Ask(found.Search.Scenario, found.Rig, limits.Head is null && found.Rig.Body.NeedsHead ? [.. found.Search.Heads.Select(rig => rig.Head)] : [found.Rig.Head], depth, progress, run.Cancellation));
        return new(JsonOutput.Of("ask", AnswersJson.Of(scenario, answers, settings.Formatter), ChoiceJson.Of(chosen)), "answers", human => AnswerView.Write(human, scenario, answers, settings.Formatter), SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario, chosen.Rig.Head))
        {
            Choice = ChoiceWords.Line(chosen.Choice, chosen.Colour, settings.Formatter.System),
            Csv = AnswerView.ToCsv(answers, settings.Formatter),
        };
    }
}
