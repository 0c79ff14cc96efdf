using System.Globalization;
using System.Text;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>
/// Reads scenarios written in YAML. Bad input is data: the outcome lists every problem with file, line, column, key and
/// a way out. Thread-safe.
/// </summary>
public static class ScenarioReader
{
    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a scenario file of at most 1 MB.</summary>
    /// <param name="path">Path of the file; also the name used in problems.</param>
    /// <returns>The scenario, or all problems; a file that cannot be read is a problem.</returns>
    public static ScenarioReading Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        byte[] bytes;
        int count;
        try
        {
            if (Directory.Exists(path))
                return Refused(path, "this is a directory", "a scenario file", "name a file in it");

            // Read one byte more than allowed instead of asking for the length, which devices do not know.
            bytes = new byte[ScenarioGrammar.MaximumBytes + 1];
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            count = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refused(path, "there is no such file", "a scenario file", "check the path");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused(path, $"the file cannot be read: {ScenarioProblem.Shorten(exception.Message)}", "a readable scenario file", "check the path and the permissions");
        }

        if (count > ScenarioGrammar.MaximumBytes)
            return TooLarge(path);
        ReadOnlySpan<byte> content = bytes.AsSpan(0, count);
        if (content.StartsWith(Encoding.UTF8.Preamble))
            content = content[Encoding.UTF8.Preamble.Length..];
        try
        {
            return ReadText(StrictUtf8.GetString(content), path);
        }
        catch (DecoderFallbackException exception)
        {
            int at = Math.Clamp(exception.Index, 0, content.Length);
            int line = content[..at].Count((byte)'\n') + 1;
            return Refused(path, "the file is not UTF-8 text", "UTF-8 text", "save the file as UTF-8 in a text editor", line);
        }
    }

    /// <summary>Reads a scenario from a text.</summary>
    /// <param name="text">The YAML text; may be anything.</param>
    /// <param name="fileName">Name used in problems.</param>
    /// <returns>The scenario, or all problems. Never throws on the text.</returns>
    /// <example><code>
    /// using LureSim.Scenarios;
    /// ScenarioReading reading = ScenarioReader.ReadText("title: a flat", "flat.yaml");
    /// foreach (ScenarioProblem problem in reading.Problems) Console.WriteLine($"{problem.Line}: {problem.Message}");
    /// </code></example>
    public static ScenarioReading ReadText(string text, string fileName)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        if (text.Length > ScenarioGrammar.MaximumBytes)
            return TooLarge(fileName);
        for (int index = 0; index < text.Length; index++)
        {
            if (text[index] < ' ' && text[index] is not ('\n' or '\r' or '\t'))
            {
                int line = text.AsSpan(0, index).Count('\n') + 1;
                return Refused(fileName, string.Create(CultureInfo.InvariantCulture, $"the file holds the control character {(int)text[index]}, it is not a text file"), "text", "remove the character, or name another file", line);
            }
        }

        // The parser may name the line after the last.
        int lines = 1 + text.AsSpan().Count('\n') + text.AsSpan().Count('\u0085') + text.AsSpan().Count('\u2028') + text.AsSpan().Count('\u2029') + text.AsSpan().Count('\r') - text.AsSpan().Count("\r\n");
        var problems = new ProblemList(fileName);
        (Scenario? scenario, bool isYaml) = Attempt(text, problems);

        // A slip of the hand hides what else is wrong: without it the rest is read too.
        if (problems.Total > 0 && YamlSlips.Find(text, isYaml) is { Count: > 0 } slips)
        {
            ProblemList? best = null;
            foreach (string mended in YamlSlips.Mend(text, slips))
            {
                var rest = new ProblemList(fileName);
                foreach (YamlSlip slip in slips)
                    rest.Add(slip.Line, slip.Column, ScenarioProblem.WholeFile, slip.Value, slip.Message, slip.Allowed, slip.Fix);
                bool read = Attempt(mended, rest).IsYaml;
                if ((read || slips.Any(slip => slip.IsCertain)) && (best is null || rest.Total < best.Total))
                    best = rest;
            }

            problems = best ?? problems;
        }

        return new ScenarioReading { File = fileName, Scenario = scenario, Problems = [.. problems.Sorted().Select(problem => problem.Line > lines ? problem with { Line = lines, Column = 1 } : problem)], Remarks = problems.Remarks };
    }

    // A text without problems gives a scenario; whether it was YAML at all tells a slip of YAML from one of the scenario.
    private static (Scenario? Scenario, bool IsYaml) Attempt(string text, ProblemList problems)
    {
        if (YamlTreeBuilder.Read(text, problems) is not { } tree)
            return (null, false);
        ReadValue? root = new GrammarReader(problems).Read(tree, ScenarioGrammar.Root, "");
        return (root is null ? null : new ScenarioBuilder(problems).Build(root), true);
    }

    private static ScenarioReading TooLarge(string file) =>
        Refused(file, "the file is larger than 1 MB", "up to 1,000,000 bytes", "name a scenario file; they are a few kilobytes");

    private static ScenarioReading Refused(string file, string message, string allowed, string fix, int line = 1)
    {
        var problems = new ProblemList(file);
        problems.Add(line, 1, ScenarioProblem.WholeFile, "", message, allowed, fix);
        return new ScenarioReading { File = file, Problems = problems.Sorted() };
    }
}
