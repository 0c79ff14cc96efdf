using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Model;
using LureSim.Report.Words;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>teach</c>.</summary>
internal sealed class TeachSettings : PageSettings
{
    /// <inheritdoc/>
    protected override string Suffix => "-plates";
}

/// <summary>Draws the plates for teaching light and sight.</summary>
internal sealed class TeachCommand : AnswerCommand<TeachSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(TeachSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        LessonOutcome outcome = run.Compute("Drawing", (pipeline, progress) => pipeline.Teach(scenario, settings.Request, progress, run.Cancellation));
        return new(JsonOutput.Of("teach", LessonJson.Of(outcome)), "lesson", human => LessonView.Write(human, outcome.Lesson, settings.Formatter), SpotWords.Short(scenario, settings.Formatter), Cautions.Line(scenario)) { Pages = outcome.Plates };
    }
}
