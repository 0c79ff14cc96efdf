using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Scenarios;
using LureSim.Scenarios.Interview;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>new</c>.</summary>
internal sealed class NewSettings : CommandSettings
{
    /// <summary>The scenario to write; null for a name made of the spot's.</summary>
    [CommandArgument(0, "[FILE]")]
    [Description("The scenario to write (default: named after the spot, in this folder)")]
    [PathKind(folder: false)]
    public string? File { get; init; }

    /// <summary>A file of answers; null to ask.</summary>
    [CommandOption("--answers <ANSWERS>")]
    [Description("Take the answers from this file (YAML, \"id: answer\" a line) and ask nothing; what it leaves out is assumed")]
    public string? Answers { get; init; }

    /// <summary>True to ask all questions.</summary>
    [CommandOption("--all")]
    [Description("Ask all seventeen questions at once, not eight first")]
    public bool All { get; init; }

    /// <summary>True to write over a file.</summary>
    [CommandOption("--force")]
    [Description("Write over a scenario that is there")]
    public bool Force { get; init; }

    /// <inheritdoc/>
    public override ValidationResult Validate() =>
        File is { Length: 0 } ? ValidationResult.Error("Name the scenario to write.")
        : Answers is { Length: 0 } ? ValidationResult.Error("--answers: name a file.")
        : ValidationResult.Success();
}

/// <summary>Asks questions and writes a scenario.</summary>
internal sealed class NewCommand : Command<NewSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, NewSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        var sheet = new AnswerSheet(DateOnly.FromDateTime(host.Clock.GetLocalNow().DateTime));
        InterviewResult? result = settings.Answers is { } answers
            ? FromFile(sheet, answers, settings)
            : new TerminalInterview(host, sheet, settings, cancellationToken).Run();
        if (result is null)
            return ExitCode.Ok;
        if (!result.Reading.IsValid)
            throw new CommandFailedException(ExitCode.Usage, "The answers do not fit together; nothing was written.", result.Reading.Problems);
        Write(result, cancellationToken);
        if (settings.Answers is null)
            TerminalInterview.Forget();
        Tell(host.OutputConsole, result);
        return ExitCode.Ok;
    }

    private static InterviewResult FromFile(AnswerSheet sheet, string file, NewSettings settings)
    {
        string text;
        try
        {
            text = System.IO.File.ReadAllText(file);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new CommandFailedException(ExitCode.Usage, $"--answers: {VisibleText.Shown(file)} cannot be read; check the path.");
        }

        IReadOnlyList<ScenarioProblem> problems = sheet.Read(text, file);
        if (problems.Count > 0)
            throw new CommandFailedException(ExitCode.Usage, ProblemView.Heading(file, problems.Count), problems);
        var result = InterviewResult.Of(sheet, settings.File);
        return !System.IO.File.Exists(result.FileName) || settings.Force
            ? result
            : throw new CommandFailedException(ExitCode.Usage, $"{VisibleText.Shown(result.FileName)} is there already; name another file, or write over it with --force.");
    }

    private static void Write(InterviewResult result, CancellationToken cancellation)
    {
        string path = Path.GetFullPath(result.FileName);
        AtomicFiles.Write(Path.GetDirectoryName(path)!, [OutputFile.Text(Path.GetFileName(path), result.Text)], cancellation);
    }

    private static void Tell(IAnsiConsole console, InterviewResult result)
    {
        if (result.Assumed.Count > 0)
        {
            console.WriteLine("Assumed, so far:");
            foreach ((Part part, Given given) in result.Assumed)
                console.MarkupLineInterpolated($"  {part.Id.Replace('_', ' ')}: {given.Shown}");
            console.WriteLine("  and what was not asked: no wind, a loop knot, lures rigged straight");
        }

        console.MarkupLineInterpolated($"Wrote {result.FileName}");
        console.MarkupLineInterpolated($"Now: luresim plan {(result.FileName.Contains(' ', StringComparison.Ordinal) ? $"\"{result.FileName}\"" : result.FileName)}");
    }
}

/// <summary>The questions in a terminal, one at a time.</summary>
/// <param name="host">Streams.</param>
/// <param name="sheet">Takes the answers.</param>
/// <param name="settings">The options.</param>
/// <param name="cancellation">Cancelled by Ctrl-C.</param>
internal sealed class TerminalInterview(CliHost host, AnswerSheet sheet, NewSettings settings, CancellationToken cancellation)
{
    /// <summary>File in the current folder that holds the answers so far.</summary>
    public const string StateFile = "luresim-answers.yaml";

    private readonly IAnsiConsole console = host.OutputConsole;

    private enum Turn
    {
        Next,
        Back,
        Leave,
    }

    /// <summary>Asks; null if the person has left.</summary>
    public InterviewResult? Run()
    {
        console.MarkupLine("A few questions about the spot, one at a time. [bold]Enter[/] takes the answer in brackets, [bold]not sure[/] is fine, [bold]?[/] explains, [bold]back[/] goes back, [bold]quit[/] leaves; your answers are kept.");
        Resume();
        if (Ask([.. Questions.All.Where(question => settings.All || question.IsShort)]) == Turn.Leave)
            return Left();
        if (!settings.All && Agrees("That is enough for a first answer. Nine more make it better. Go on?", no: true) && Ask([.. Questions.All.Where(question => !question.IsShort)]) == Turn.Leave)
            return Left();
        if (Review() == Turn.Leave)
            return Left();
        return Named();
    }

    /// <summary>Removes the answers kept for another time.</summary>
    public static void Forget() => File.Delete(StateFile);

    private void Resume()
    {
        if (!File.Exists(StateFile))
            return;
        IReadOnlyList<ScenarioProblem> problems;
        try
        {
            problems = sheet.Read(File.ReadAllText(StateFile), StateFile);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return;
        }

        if (sheet.Count == 0)
            return;
        console.MarkupLineInterpolated($"You left off after {sheet.Count} answers ({StateFile}{(problems.Count > 0 ? ", some of which cannot be read" : "")}).");
        if (!Agrees("Go on from there?", no: false))
        {
            foreach (Question question in Questions.All)
                sheet.Forget(question);
        }
    }

    private Turn Ask(IReadOnlyList<Question> questions)
    {
        for (int at = 0; at < questions.Count;)
        {
            Turn turn = AskOne(questions[at], at + 1, questions.Count);
            if (turn == Turn.Leave)
                return turn;
            if (turn == Turn.Next)
            {
                at++;
                continue;
            }

            // Back to the last question that is asked at all.
            do
                at = Math.Max(0, at - 1);
            while (at > 0 && !questions[at].Parts.Any(part => part.IsAsked(sheet)));
            sheet.Forget(questions[at]);
        }

        return Turn.Next;
    }

    private Turn AskOne(Question question, int number, int of)
    {
        Part[] open = [.. question.Parts.Where(part => part.IsAsked(sheet) && !sheet.Has(part.Id))];
        if (open.Length == 0)
            return Turn.Next;
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{number} of {of}: {question.Text}[/]");
        foreach (Part part in question.Parts)
        {
            // An answer may have told of a later part, or of all but this one.
            for (int tries = 0; part.IsAsked(sheet) && !sheet.Has(part.Id); tries++)
            {
                cancellation.ThrowIfCancellationRequested();
                Prompt(part, tries);
                if (Line() is not { } line || line.Trim().ToLowerInvariant() is "quit" or "exit")
                    return Turn.Leave;
                if (line.Trim().ToLowerInvariant() is "back")
                    return Turn.Back;
                if (line.Trim() is "?" or "help" or "why")
                {
                    console.MarkupLineInterpolated($"  {question.Why} {part.Hint}");
                    console.MarkupLineInterpolated($"  Say {part.Form.Allowed}.");
                    continue;
                }

                if (sheet.Answer(part, line) is { } problem)
                {
                    console.MarkupLineInterpolated($"  [yellow]{char.ToUpperInvariant(problem[0])}{problem[1..]}.[/]");
                    continue;
                }

                Echo(part, line);
                Keep();
            }
        }

        return Turn.Next;
    }

    private void Prompt(Part part, int tries)
    {
        if (part.Text.Length > 0)
            console.MarkupLineInterpolated($"{part.Text}");
        if (tries == 0 && part.Form is ChoiceForm or MeasureForm { Choices.Count: > 0 } or BaitForm)
            console.MarkupLineInterpolated($"[dim]{part.Form.Allowed}[/]");
        console.Markup($"[[{Markup.Escape(part.DefaultFor(sheet))}]] > ");
    }

    // As it was understood, where that is not what was typed.
    private void Echo(Part part, string line)
    {
        if (!sheet.Has(part.Id))
        {
            console.WriteLine("  Noted. And:");
            return;
        }

        Given given = sheet[part.Id];
        if (given.Source == GivenSource.NotSure)
            console.MarkupLineInterpolated($"  Taken as {given.Shown}{(part.WhenUnsure is null ? "" : ", give or take")}.");
        else if (!string.Equals(given.Shown, line.Trim(), StringComparison.OrdinalIgnoreCase))
            console.MarkupLineInterpolated($"  {given.Shown}{string.Concat(part.Also.Where(id => sheet.Has(id) && sheet[id].Written == line.Trim()).Select(id => $"; {sheet.Word(id)}"))}");
    }

    private Turn Review()
    {
        while (true)
        {
            var result = InterviewResult.Of(sheet);
            console.WriteLine();
            console.MarkupLine("[bold]Your answers[/]");
            foreach (Question question in Questions.All)
            {
                Part[] parts = [.. question.Parts.Where(part => part.IsAsked(sheet))];
                if (parts.Length == 0)
                    continue;
                bool assumed = Array.TrueForAll(parts, part => sheet[part.Id].Source != GivenSource.Said);
                console.MarkupLineInterpolated($"{question.Number,3}  {question.Text} {string.Join("; ", parts.Select(part => sheet[part.Id].Shown))}{(assumed ? " (assumed)" : "")}");
            }

            if (!result.Reading.IsValid)
            {
                console.MarkupLine("[yellow]These do not fit together:[/]");
                ProblemView.Write(console, result.Reading.Problems);
            }

            console.Markup("A number changes an answer, Enter writes the file > ");
            if (Line() is not { } line || line.Trim().ToLowerInvariant() is "quit" or "exit")
                return Turn.Leave;
            if (line.Trim().Length == 0 && result.Reading.IsValid)
                return Turn.Next;
            if (Questions.All.FirstOrDefault(question => question.Number.ToString(System.Globalization.CultureInfo.InvariantCulture) == line.Trim()) is not { } chosen)
            {
                console.MarkupLineInterpolated($"  [yellow]Say a number from 1 to {Questions.All.Count}.[/]");
                continue;
            }

            sheet.Forget(chosen);
            if (AskOne(chosen, chosen.Number, Questions.All.Count) == Turn.Leave)
                return Turn.Leave;
        }
    }

    // Never over a file without a yes.
    private InterviewResult Named()
    {
        var result = InterviewResult.Of(sheet, settings.File);
        if (!File.Exists(result.FileName) || settings.Force || Agrees($"{result.FileName} is there already. Write over it?", no: true))
            return result;
        string folder = Path.GetDirectoryName(result.FileName) ?? "", name = Path.GetFileNameWithoutExtension(result.FileName);
        int number = 2;
        while (File.Exists(Path.Combine(folder, FormattableString.Invariant($"{name}-{number}.yaml"))))
            number++;
        return InterviewResult.Of(sheet, Path.Combine(folder, FormattableString.Invariant($"{name}-{number}.yaml")));
    }

    private InterviewResult? Left()
    {
        console.WriteLine();
        if (sheet.Count == 0)
            console.WriteLine("Nothing was written.");
        else
            console.MarkupLineInterpolated($"Your answers are in {StateFile}; luresim new goes on from there.");
        return null;
    }

    private bool Agrees(string question, bool no)
    {
        console.Markup($"{Markup.Escape(question)} [[{(no ? "y/N" : "Y/n")}]] > ");
        string answer = (Line() ?? "").Trim().ToLowerInvariant();
        return answer.Length == 0 ? !no : answer[0] == 'y';
    }

    // The console reads on after Ctrl-C, so the wait for a line is given up, not the reading.
    private string? Line()
    {
        try
        {
            string? line = Task.Run(host.Input.ReadLine, cancellation).WaitAsync(cancellation).GetAwaiter().GetResult();
            if (!host.InputIsTerminal)
                console.WriteLine();
            return line;
        }
        catch (OperationCanceledException)
        {
            console.WriteLine();
            if (sheet.Count > 0)
                console.MarkupLineInterpolated($"Your answers are in {StateFile}; luresim new goes on from there.");
            throw;
        }
    }

    private void Keep() => AtomicFiles.Write(Directory.GetCurrentDirectory(), [OutputFile.Text(StateFile, sheet.ToYaml())], cancellation);
}
