using System.Globalization;
using System.Text;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>What a tackle file says of a lure.</summary>
/// <param name="Bait">Name of the bait, as in the scenarios.</param>
/// <param name="Drag">Its own drag.</param>
public sealed record LureNumbers(string Bait, MeasuredDrag Drag);

/// <summary>Outcome of reading a tackle file: its lures, or everything that is wrong with it.</summary>
/// <param name="Lures">The lures; empty where there are problems.</param>
/// <param name="Problems">All problems, by line.</param>
public sealed record TackleFileReading(IReadOnlyList<LureNumbers> Lures, IReadOnlyList<ScenarioProblem> Problems);

/// <summary>Tackle files: what was measured of the lures of a box, for the scenarios that include them.</summary>
public static class TackleFile
{
    private const string Heading = "# Tackle file: what was measured of your lures. A scenario takes it with\n#   tackle: {include: this file, ...}\n";

    /// <summary>Reads a tackle file of at most 1 MB.</summary>
    /// <param name="path">Path of the file; also the name used in problems.</param>
    /// <returns>The lures, or all problems; a file that cannot be read is a problem.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="path"/> is null.</exception>
    public static TackleFileReading Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var problems = new ProblemList(path);
        try
        {
            // Read one byte more than allowed instead of asking for the length, which devices do not know.
            byte[] bytes = new byte[ScenarioGrammar.MaximumBytes + 1];
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            int count = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            if (count > ScenarioGrammar.MaximumBytes)
                return Refused("the file is larger than 1 MB", "up to 1,000,000 bytes", "name a tackle file; they are a few kilobytes");
            string text = Encoding.UTF8.GetString(bytes.AsSpan(0, count)).TrimStart('\uFEFF');
            if (text.Any(c => c < ' ' && c is not ('\n' or '\r' or '\t')))
                return Refused("the file is not a text file", "text", "name a tackle file");
            return ReadText(text, path);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refused("there is no such file", "a tackle file beside the scenario", "check the name; luresim calibrate writes one");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused($"the file cannot be read: {ScenarioProblem.Shorten(exception.Message)}", "a readable tackle file", "check the path and the permissions");
        }

        TackleFileReading Refused(string message, string allowed, string fix)
        {
            problems.Add(1, 1, ScenarioProblem.WholeFile, "", message, allowed, fix);
            return new([], problems.Sorted());
        }
    }

    /// <summary>Reads a tackle file from a text.</summary>
    /// <param name="text">The YAML text; may be anything.</param>
    /// <param name="fileName">Name used in problems.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static TackleFileReading ReadText(string text, string fileName)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        var problems = new ProblemList(fileName);
        ReadValue? root = YamlTreeBuilder.Read(text, problems) is { } tree ? new GrammarReader(problems).Read(tree, ObservationGrammar.TackleFile, "") : null;
        foreach (IGrouping<string, ReadValue> twice in (root?["lures"]?.Items ?? []).Where(item => item["bait"] is not null).GroupBy(item => item.At("bait").Text.Trim(), StringComparer.OrdinalIgnoreCase).Where(group => group.Count() > 1))
        {
            ReadValue at = twice.ElementAt(1).At("bait");
            problems.Add(at.Line, at.Column, at.Path, at.Text, "this lure is in the file already", "each lure once", "remove one of the two");
        }

        if (root is null || problems.Total > 0) return new([], problems.Sorted());
        return new(
            [
                .. root.At("lures").Items.Select(item => new LureNumbers(item.At("bait").Text.Trim(), new MeasuredDrag(item.NumberAt("drag"), item.NumberAt("plus_or_minus"))
                {
                    Date = item["measured"] is { } day ? DateOnly.FromDayNumber((int)day.Number) : null,
                    How = item["how"]?.Text ?? "",
                })),
            ],
            []);
    }

    /// <summary>The text of a tackle file.</summary>
    /// <param name="lures">Its lures.</param>
    /// <exception cref="ArgumentNullException"><paramref name="lures"/> is null.</exception>
    public static string Text(IReadOnlyList<LureNumbers> lures)
    {
        ArgumentNullException.ThrowIfNull(lures);
        StringBuilder text = new StringBuilder(Heading).Append("lures:\n");
        foreach (LureNumbers lure in lures)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - bait: {Quoted(lure.Bait)}\n    drag: {lure.Drag.Factor:0.###}\n    plus_or_minus: {100 * lure.Drag.Margin:0.#} %\n");
            if (lure.Drag.Date is { } day) text.Append(CultureInfo.InvariantCulture, $"    measured: {day:yyyy-MM-dd}\n");
            if (lure.Drag.How.Length > 0) text.Append(CultureInfo.InvariantCulture, $"    how: {Quoted(lure.Drag.How)}\n");
        }

        return text.ToString();
    }

    // Single quotes know one escape alone.
    private static string Quoted(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";
}
