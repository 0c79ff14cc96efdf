using LureSim.Cli.Output;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>teach</c>.</summary>
internal sealed class TeachSettings : PageSettings
{
    /// <inheritdoc/>
    protected override string Suffix => "-plates";
}

/// <summary>Draws the plates for teaching light and sight.</summary>
internal sealed class TeachCommand : Command<TeachSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, TeachSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        Scenario scenario = settings.ReadScenario();
        AtomicFiles.RequireFolder(settings.Folder);
        LessonOutcome outcome = ProgressRunner.Run(host, "Drawing", progress => host.Pipeline.Teach(scenario, settings.Request, progress, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();

        IAnsiConsole human = host.Human(settings.Json);
        LessonView.Write(human, outcome.Lesson, settings.Formatter);
        JsonOutput document = JsonOutput.Of("teach", LessonJson.Of(outcome));
        AtomicFiles.WriteAndTell(human, settings.Folder, [.. outcome.Plates, OutputFile.Text("lesson.json", document.Text)], cancellationToken);
        if (settings.Json)
            host.Output.Write(document.Text);
        return ExitCode.Ok;
    }
}
