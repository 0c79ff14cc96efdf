using System.Globalization;
using LureSim.Cli.Commands;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli;

/// <summary>The command-line program: commands, and the one place where failures become messages and exit codes.</summary>
internal static class LureSimApp
{
    /// <summary>Name in help and messages.</summary>
    public const string Name = "luresim";

    /// <summary>Runs one command line.</summary>
    /// <param name="arguments">Arguments without the program's name.</param>
    /// <param name="host">Streams and computations.</param>
    /// <param name="cancellation">Cancelled by Ctrl-C.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, CliHost host, CancellationToken cancellation)
    {
        arguments = Offered(arguments, host);
        if (WrongValue(arguments) is { } wrong)
            return Fail(new CommandFailedException(ExitCode.Usage, wrong), arguments, host, cancellation);

        int? failure = null;
        var app = new CommandApp();
        app.Configure(config =>
        {
            config.SetApplicationName(Name);
            config.SetApplicationVersion(ProgramVersion.Text);
            config.ConfigureConsole(host.OutputConsole);
            config.UseStrictParsing();
            config.ValidateExamples();
            config.CancellationExitCode(ExitCode.Cancelled);
            config.SetExceptionHandler((exception, _) => (failure = Fail(exception, arguments, host, cancellation)).Value);
            CommandCatalogue.AddTo(config, host);
        });
        try
        {
            int code = await app.RunAsync(arguments, cancellation).ConfigureAwait(false);

            // The framework may swallow a cancellation into its exit code; say so like for every other failure.
            if (code == ExitCode.Cancelled && failure is null)
                return Fail(new OperationCanceledException(), arguments, host, cancellation);
            return code;
        }
        catch (Exception exception) when (failure is null)
        {
            return Fail(exception, arguments, host, cancellation);
        }
    }

    private static int Fail(Exception exception, IReadOnlyList<string> arguments, CliHost host, CancellationToken cancellation)
    {
        // A failure while a cancellation is under way is the cancellation's.
        (int code, string message) = exception switch
        {
            CommandFailedException failed => (failed.ExitCode, failed.Message),
            OperationCanceledException => (ExitCode.Cancelled, "Stopped."),
            _ when cancellation.IsCancellationRequested => (ExitCode.Cancelled, "Stopped."),
            CommandAppException usage => (ExitCode.Usage, usage.Message),
            IOException or UnauthorizedAccessException => (ExitCode.Failed, exception.Message),
            NotSupportedException => (ExitCode.Failed, exception.Message),
            _ => (ExitCode.Failed, $"Unexpected error, please report it: {exception.GetType().Name}: {exception.Message}"),
        };

        IReadOnlyList<Scenarios.ScenarioProblem> problems = (exception as CommandFailedException)?.Problems ?? [];
        try
        {
            if (exception is CommandAppException { Pretty: { } pretty })
                host.ErrorConsole.Write(pretty);
            else if (message.Length > 0)
                host.ErrorConsole.MarkupLineInterpolated($"[red]{message}[/]");
            ProblemView.Write(host.ErrorConsole, problems);
            if (exception is CommandAppException)
                host.ErrorConsole.WriteLine(CommandName(arguments) is { Length: > 0 } command ? $"See {Name} {command} --help." : $"See {Name} --help.");
            if (WantsJson(arguments))
                JsonOutput.WriteFailure(host.Output, CommandName(arguments), code, message, problems);
        }
        catch (IOException)
        {
            // The reader of our output is gone (a closed pipe): nothing is left to tell it.
        }

        return code;
    }

    // The settings do not exist when the command line itself is wrong, so look at the raw arguments.
    private static bool WantsJson(IReadOnlyList<string> arguments) =>
        arguments.TakeWhile(argument => argument != "--").Any(argument => argument is "--json" or "--json=true" or "--json:true");

    // The parser (Spectre.Console.Cli 0.57.2) gives an option without its value a made-up one, "__default_command",
    // which would end up as the name of a folder; and of a number that it cannot read it tells the type in the code.
    private static string? WrongValue(IReadOnlyList<string> arguments)
    {
        // An option without a name makes the parser itself fail.
        if (arguments.TakeWhile(argument => argument != "--").FirstOrDefault(argument => argument.TrimStart('-') is ['=' or ':', ..] && argument.StartsWith('-')) is { } nameless)
            return $"\"{nameless}\" has no name before the sign; write --out=DIR, or --out DIR.";
        if (CommandCatalogue.All.FirstOrDefault(command => command.Name == CommandName(arguments)) is not { } entry)
            return null;
        for (int index = 1; index < arguments.Count && arguments[index] != "--"; index++)
        {
            string[] parts = arguments[index].Split(['=', ':'], 2);
            if (CompletionScript.OptionsOf(entry).FirstOrDefault(item => item.TakesValue && item.Name == parts[0]) is not { } option)
                continue;
            string? value = parts.Length == 2 ? parts[1] : index + 1 < arguments.Count && !arguments[index + 1].StartsWith("--", StringComparison.Ordinal) ? arguments[index + 1] : null;
            if (value is null)
                return $"{option.Name} needs a value.";
            if (option.WholeNumber && !int.TryParse(value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _))
                return $"{option.Name} needs a whole number; \"{value}\" is none.";
        }

        return null;
    }

    // Commands whose name has a US and a British spelling.
    private static readonly Dictionary<string, string> OtherSpelling = new(StringComparer.Ordinal) { ["colors"] = "colours" };

    // Who types the name alone is offered the questions; where nobody answers, the help follows as ever.
    private static IReadOnlyList<string> Offered(IReadOnlyList<string> arguments, CliHost host)
    {
        if (arguments.Count > 0)
            return [OtherSpelling.GetValueOrDefault(arguments[0], arguments[0]), .. arguments.Skip(1)];
        if (!host.InputIsTerminal)
            return arguments;
        host.OutputConsole.MarkupLine("LureSim works out which weight, lure, color and retrieve suit a spot.");
        host.OutputConsole.Markup("Start with a few questions about yours? [[Y/n]] > ");
        string? answer = host.Input.ReadLine();
        return answer is null || answer.TrimStart().StartsWith('n') || answer.TrimStart().StartsWith('N') ? ["--help"] : ["new"];
    }

    private static string CommandName(IReadOnlyList<string> arguments) =>
        arguments.Count > 0 && CommandCatalogue.All.Any(command => command.Name == arguments[0]) ? arguments[0] : "";
}
