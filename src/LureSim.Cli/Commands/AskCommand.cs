using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision.Inverse;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>ask</c>.</summary>
internal sealed class AskSettings : RigSettings
{
    /// <summary>The jig head; null for all of the box.</summary>
    [CommandOption("--weight <WEIGHT>")]
    [Description("The jig head whose reel speed and count are asked for (default: every head of the box)")]
    public string? Weight { get; init; }

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
        string first = scenario.Tackle.JigHeads[0].Label;
        Rig rig = RigChoice.Of(scenario, settings.Weight ?? first, settings.Presentation, settings.Body ?? scenario.Tackle.Bodies.FirstOrDefault(body => body.NeedsHead)?.Label);
        IReadOnlyList<JigHead> heads = settings.Weight is null ? scenario.Tackle.JigHeads : [rig.Head];
        IReadOnlyList<InverseAnswer> answers = run.Compute("Searching", (pipeline, progress) => pipeline.Ask(scenario, rig, heads, depth, progress, run.Cancellation));
        return new(JsonOutput.Of("ask", AnswersJson.Of(scenario, answers, settings.Formatter)), "answers", human => AnswerView.Write(human, scenario, answers, settings.Formatter), SpotWords.Short(scenario, settings.Formatter), Cautions.Line(scenario))
        {
            Csv = AnswerView.ToCsv(answers, settings.Formatter),
        };
    }
}
