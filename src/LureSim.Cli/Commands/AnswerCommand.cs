using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>The frame of the commands that compute something from a scenario: read and run, print, write the files, print the document.</summary>
/// <typeparam name="TSettings">The options.</typeparam>
internal abstract class AnswerCommand<TSettings> : Command<TSettings>
    where TSettings : ScenarioSettings
{
    /// <inheritdoc/>
    public sealed override int Execute(CommandContext context, TSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        Answer answer = Answer(settings, new CommandRun(host, settings.Folder, cancellationToken));
        IAnsiConsole human = host.Human(settings.OutputIsDocument);
        human.MarkupLineInterpolated($"[bold]{answer.Choice ?? Report.Words.Grammar.Capital(answer.Lead)}[/]");
        if (answer.Choice is not null)
            human.MarkupLineInterpolated($"{Report.Words.Grammar.Capital(answer.Lead)}");
        answer.Show(human);
        if (settings.Folder is { } folder && answer.GaveUp is null)
            AtomicFiles.WriteAndTell(human, folder, answer.Files, cancellationToken);
        human.MarkupLineInterpolated($"[yellow]{answer.WatchOut}[/]");
        if (settings.Json)
            host.Output.Write(answer.Document.Text);
        else if (settings.OutputIsDocument)
            host.Output.Write(answer.Csv);
        if (answer.GaveUp is null)
            return ExitCode.Ok;
        host.ErrorConsole.MarkupLineInterpolated($"[red]{answer.GaveUp}[/]");
        return ExitCode.Numerical;
    }

    /// <summary>Checks the options against the scenario, computes, and says what was found.</summary>
    /// <exception cref="CommandFailedException">The options do not fit, or the computation failed.</exception>
    protected abstract Answer Answer(TSettings settings, CommandRun run);
}
