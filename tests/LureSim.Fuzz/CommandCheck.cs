using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using LureSim.Cli;
using LureSim.Cli.Hosting;

namespace LureSim.Fuzz;

/// <summary>Runs a command line inside this process and says what is wrong with its answer.</summary>
internal static partial class CommandCheck
{
    // Words of programmers, and numbers that are none, that no user may meet.
    [GeneratedRegex(@"Unexpected error|Exception|\bNaN\b|Infinity|\u221e|\bat LureSim\.|ToleranceFactor|node [0-9]+ of|Newton|object reference|System\.", RegexOptions.CultureInvariant)]
    private static partial Regex ForProgrammers();

    /// <summary>Runs a command line.</summary>
    /// <param name="arguments">The command line.</param>
    /// <param name="pipeline">The computations.</param>
    /// <param name="folder">Folder in which the command may have written, to look at; null for none.</param>
    public static CommandOutcome Run(IReadOnlyList<string> arguments, IPipeline pipeline, string? folder)
    {
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        var host = CliHost.Create(output, error, outputIsTerminal: false, errorIsTerminal: false, colour: false, pipeline);
        long start = TimeProvider.System.GetTimestamp();
        List<string> complaints = [];
        int code = -1;
        try
        {
            code = LureSimApp.RunAsync(arguments, host, CancellationToken.None).GetAwaiter().GetResult();
        }
        catch (Exception exception)
        {
            complaints.Add($"exception {exception.GetType().Name}: {exception.Message} {exception.StackTrace?.Split('\n').FirstOrDefault()?.Trim()}");
        }

        TimeSpan time = TimeProvider.System.GetElapsedTime(start);
        string text = output.ToString(), told = error.ToString();
        if (code is not (ExitCode.Ok or ExitCode.Failed or ExitCode.Usage or ExitCode.Numerical) && complaints.Count == 0)
            complaints.Add(string.Create(CultureInfo.InvariantCulture, $"exit code {code}"));
        foreach (string said in (string[])[text, told])
        {
            // What the user wrote may be said back.
            if (ForProgrammers().Match(said) is { Success: true } match && !arguments.Any(argument => argument.Contains(match.Value, StringComparison.Ordinal)))
                complaints.Add($"says \"{Around(said, match.Index)}\"");
        }

        if (code != ExitCode.Ok && told.Trim().Length == 0 && complaints.Count == 0)
            complaints.Add("fails without a word");
        if (arguments.Contains("--json") && !arguments.Any(argument => argument is "--help" or "-h" or "--version" or "-v" or "-?" or "--") && text.Length > 0 && !IsJson(text))
            complaints.Add("what it prints is no JSON");
        if (folder is not null && Directory.Exists(folder))
            complaints.AddRange(Files(folder, code));
        return new CommandOutcome(code, time, complaints, told);
    }

    private static IEnumerable<string> Files(string folder, int code)
    {
        string[] files = Directory.GetFiles(folder, "*", SearchOption.AllDirectories);
        if (code == ExitCode.Usage && files.Length > 0)
            yield return "refuses the input and writes all the same";
        foreach (string file in files)
        {
            string name = Path.GetFileName(file);
            if (new FileInfo(file).Length == 0)
                yield return $"{name} is empty";
            if (name.EndsWith(".tmp", StringComparison.Ordinal) || name.EndsWith(".old", StringComparison.Ordinal))
                yield return $"leaves {name}";
            if (name.EndsWith(".json", StringComparison.Ordinal) && !IsJson(File.ReadAllText(file)))
                yield return $"{name} is no JSON";
            if (name.EndsWith(".csv", StringComparison.Ordinal) || name.EndsWith(".html", StringComparison.Ordinal) || name.EndsWith(".svg", StringComparison.Ordinal) || name.EndsWith(".txt", StringComparison.Ordinal))
            {
                string content = File.ReadAllText(file);
                if (ForProgrammers().Match(content) is { Success: true } match)
                    yield return $"{name} says \"{Around(content, match.Index)}\"";
            }
        }
    }

    private static bool IsJson(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static string Around(string text, int at) => text.Substring(Math.Max(0, at - 60), Math.Min(text.Length - Math.Max(0, at - 60), 200)).ReplaceLineEndings(" ");
}
