using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Model;
using LureSim.Report.Words;
using Spectre.Console;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>teach</c>.</summary>
internal sealed class TeachSettings : PageSettings
{
    /// <inheritdoc/>
    protected override string Suffix => "-plates";

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        (Weight ?? Lure ?? Presentation ?? Color) is null && Samples is null
            ? ValidationResult.Success()
            : ValidationResult.Error("teach is about all colors of the box; it takes no --weight, --lure, --presentation, --color or --samples."));
}

/// <summary>Draws the plates for teaching light and sight.</summary>
internal sealed class TeachCommand : AnswerCommand<TeachSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(TeachSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        LessonOutcome outcome = run.Compute("Drawing", (pipeline, progress) => pipeline.Teach(scenario, settings.Request, progress, run.Cancellation));
        return new(JsonOutput.Of("teach", LessonJson.Of(outcome)), "lesson", human => LessonView.Write(human, outcome.Lesson, settings.Formatter), SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario)) { Pages = outcome.Plates };
    }
}
