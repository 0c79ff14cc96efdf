using System.ComponentModel;
using LureSim.Cli.Output;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>teach</c>.</summary>
internal sealed class TeachSettings : ScenarioSettings
{
    /// <summary>Folder of the plates; null for the default.</summary>
    [CommandOption("--out <DIR>")]
    [Description("Folder for the plates (default out/, the scenario's file name and -plates)")]
    [PathKind(folder: true)]
    public string? Out { get; init; }

    /// <summary>True to write the plates as PDF as well.</summary>
    [CommandOption("--pdf")]
    [Description("Write the plates as PDF as well")]
    public bool Pdf { get; init; }

    /// <summary>Folder to write into.</summary>
    public string Folder => Out ?? Path.Combine("out", Path.GetFileNameWithoutExtension(File) + "-plates");

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Out is { Length: 0 } ? ValidationResult.Error("--out: name a folder.") : ValidationResult.Success());
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
        var request = new PlanRequest(settings.Formatter.System, settings.Pdf);
        LessonOutcome outcome = ProgressRunner.Run(host, "Drawing", progress => host.Pipeline.Teach(scenario, request, progress, cancellationToken));
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
