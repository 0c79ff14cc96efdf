using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Decision.Observations;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>seen</c>.</summary>
internal sealed class SeenSettings : JsonSettings
{
    /// <summary>The scenario file.</summary>
    [CommandArgument(0, "<FILE>")]
    [Description("The scenario (YAML); a copy of it is kept")]
    [PathKind(folder: false)]
    public required string File { get; init; }

    /// <summary>What was seen.</summary>
    [CommandArgument(1, "<NOTE>")]
    [Description("What you saw, in quotes, such as \"1/4 oz bottom at 9\"")]
    public required string Note { get; init; }
}

/// <summary>Adds what was seen to a scenario and answers in one line.</summary>
internal sealed class SeenCommand : Command<SeenSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, SeenSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        QuickReading note = QuickObservation.Read(settings.Note);
        if (!note.IsValid) throw new CommandFailedException(ExitCode.Usage, $"seen: {note.Message}.");
        ScenarioReading old = ScenarioReader.Read(settings.File);
        if (!old.IsValid) throw new CommandFailedException(ExitCode.Usage, ProblemView.Heading(settings.File, old.Problems.Count), old.Problems);
        string text = QuickObservation.Append(File.ReadAllText(settings.File), note.Item)
            ?? throw new CommandFailedException(ExitCode.Usage, $"{settings.File}: seen is written in brackets; write it as a list with one line an observation, each after a dash, to add to it here.");
        ScenarioReading reading = ScenarioReader.ReadText(text, settings.File);
        if (reading.Scenario is not { } scenario)
            throw new CommandFailedException(ExitCode.Usage, $"{settings.File}: \"{settings.Note}\" does not fit this scenario; nothing was written.", reading.Problems);
        UnitFormat format = settings.Formatter;
        var run = new CommandRun(host, null, cancellationToken);
        ChosenRig chosen = run.Compute("Learning", (pipeline, progress) => pipeline.Choose(scenario, new ChoiceLimits(), new PlanRequest(format.System, false, null), progress, cancellationToken));
        string? copy = KeptCopy.Write(settings.File, text, cancellationToken);
        CalibratedChoice seen = chosen.Seen!;
        Observation added = scenario.Seen[^1];
        string learned = ObservationWords.Brief(seen.Update, format);
        string line = $"{Grammar.Capital(ObservationWords.Line(added, format))}. {(learned.Length > 0 ? Grammar.Sentence(learned) + " " : "")}{ObservationWords.Outcome(seen, chosen.Choice, format)}";
        IAnsiConsole human = host.Human(settings.Json);
        human.MarkupLineInterpolated($"[bold]{line}[/]");
        foreach (ObservationFit fit in seen.Update.Conflicts)
            human.MarkupLineInterpolated($"[yellow]{ObservationWords.Conflict(fit, scenario, format)}[/]");
        human.MarkupLineInterpolated($"Added to {settings.File}; the file as it was: {copy}");
        if (settings.Json)
            host.Output.Write(JsonOutput.Of("seen", SeenJson.Of(seen, chosen.Choice), ChoiceJson.Of(chosen)).Text);
        return ExitCode.Ok;
    }
}
