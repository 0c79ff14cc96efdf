using System.Globalization;
using System.Text;

namespace LureSim.Validation;

/// <summary>One line of the results table.</summary>
internal sealed record ValidationEntry(
    string Area,
    string Name,
    string Source,
    string Expected,
    string Computed,
    string Deviation,
    string Tolerance,
    bool Pass);

/// <summary>
/// Asserts a check against an outside source and keeps its figures. With LURESIM_WRITE_VALIDATION=1 in the environment the figures of the whole run go into
/// docs/validation.md, between its two marker lines; what people wrote outside the markers stays.
/// </summary>
/// <remarks>
/// Each method records first and asserts afterwards, so that a failing check shows in the table too. Entries are sorted by area and name: the text does not depend
/// on the order in which tests run. Run the whole suite when writing: a filtered run writes its own entries only.
/// </remarks>
internal static class ValidationLog
{
    /// <summary>Marker before the generated tables.</summary>
    public const string Begin = "<!-- results: written by the validation tests, do not edit by hand -->";

    /// <summary>Marker after the generated tables.</summary>
    public const string End = "<!-- end of results -->";

    private static readonly Lock Gate = new();
    private static readonly SortedDictionary<(string Area, string Name), ValidationEntry> Entries = [];
    private static readonly bool Writes = Environment.GetEnvironmentVariable("LURESIM_WRITE_VALIDATION") == "1";

    /// <summary>|computed - expected| at most tolerance times |expected|.</summary>
    public static void Relative(string area, string name, string source, double expected, double computed, double tolerance, string unit = "")
    {
        double deviation = Math.Abs(computed - expected) / Math.Abs(expected);
        Record(area, name, source, Number(expected, unit), Number(computed, unit), Percent(deviation), Percent(tolerance, "G3"), deviation <= tolerance);
    }

    /// <summary>|computed - expected| at most tolerance, in the same unit.</summary>
    public static void Absolute(string area, string name, string source, double expected, double computed, double tolerance, string unit = "")
    {
        double deviation = Math.Abs(computed - expected);
        Record(area, name, source, Number(expected, unit), Number(computed, unit), Small(deviation, unit), Small(tolerance, unit, "G3"), deviation <= tolerance);
    }

    /// <summary>A table of values as one line: its worst row decides.</summary>
    public static void WorstRelative(string area, string name, string source, IEnumerable<(double Expected, double Computed)> rows, double tolerance, string unit = "")
    {
        (double Expected, double Computed)[] all = [.. rows];
        Assert.NotEmpty(all);
        (double Expected, double Computed) worst = all.MaxBy(r => Finite(Math.Abs(r.Computed - r.Expected) / Math.Abs(r.Expected)));
        double deviation = Math.Abs(worst.Computed - worst.Expected) / Math.Abs(worst.Expected);
        Record(
            area, Count(name, all.Length), source, Number(worst.Expected, unit), Number(worst.Computed, unit), Percent(deviation), Percent(tolerance, "G3"), deviation <= tolerance);
    }

    /// <summary>A table of values as one line: its worst row decides.</summary>
    public static void WorstAbsolute(string area, string name, string source, IEnumerable<(double Expected, double Computed)> rows, double tolerance, string unit = "")
    {
        (double Expected, double Computed)[] all = [.. rows];
        Assert.NotEmpty(all);
        (double Expected, double Computed) worst = all.MaxBy(r => Finite(Math.Abs(r.Computed - r.Expected)));
        double deviation = Math.Abs(worst.Computed - worst.Expected);
        Record(
            area, Count(name, all.Length), source, Number(worst.Expected, unit), Number(worst.Computed, unit), Small(deviation, unit), Small(tolerance, unit, "G3"), deviation <= tolerance);
    }

    /// <summary>computed inside [low, high]: for measurements that spread, and for measured orders of accuracy.</summary>
    public static void Between(string area, string name, string source, double low, double high, double computed, string unit = "")
    {
        double outside = Math.Max(0, Math.Max(low - computed, computed - high));
        Record(
            area, name, source, $"{Number(low, "")} to {Number(high, unit)}", Number(computed, unit), outside == 0 ? "inside" : Small(outside, unit), "the range", computed >= low && computed <= high);
    }

    /// <summary>computed at most limit: for residuals and differences that ought to be nil.</summary>
    public static void AtMost(string area, string name, string source, double limit, double computed, string unit = "") =>
        Record(area, name, source, "0", Small(computed, unit), Small(Math.Abs(computed), unit), Small(limit, unit, "G3"), computed <= limit);

    private static string Count(string name, int count) => count == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name} (worst of {count})");

    private static double Finite(double x) => double.IsNaN(x) ? double.PositiveInfinity : x;

    private static string Number(double x, string unit) => Join(x.ToString("G7", CultureInfo.InvariantCulture), unit);

    private static string Percent(double x, string format = "G2") => x < 1e-9 ? "< 1e-7 %" : (100 * x).ToString(format, CultureInfo.InvariantCulture) + " %";

    private static string Small(double x, string unit, string format = "G2") => x < 1e-11 ? Join("< 1e-11", unit) : Join(x.ToString(format, CultureInfo.InvariantCulture), unit);

    private static string Join(string number, string unit) => unit.Length == 0 ? number : number + " " + unit;

    private static void Record(string area, string name, string source, string expected, string computed, string deviation, string tolerance, bool pass)
    {
        var entry = new ValidationEntry(area, name, source, expected, computed, deviation, tolerance, pass);
        lock (Gate)
        {
            Entries[(area, name)] = entry;
            if (Writes) Write();
        }

        Assert.True(pass, $"{area}, {name} ({source}): expected {expected}, computed {computed}, deviation {deviation}, tolerance {tolerance}.");
    }

    private static void Write()
    {
        string path = Repository.File("docs", "validation.md");
        string text = File.Exists(path) ? File.ReadAllText(path) : "# Validation\n\n" + Begin + "\n" + End + "\n";
        int begin = text.IndexOf(Begin, StringComparison.Ordinal), end = text.IndexOf(End, StringComparison.Ordinal);
        if (begin < 0 || end < begin) throw new InvalidOperationException($"{path} lacks the marker lines of the results table.");
        File.WriteAllText(path, text[..(begin + Begin.Length)] + "\n\n" + Tables() + text[end..]);
    }

    private static string Tables()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{Entries.Count} checks, {Entries.Values.Count(e => e.Pass)} pass.\n\n");
        foreach (IGrouping<string, ValidationEntry> area in Entries.Values.GroupBy(e => e.Area))
        {
            text.Append(CultureInfo.InvariantCulture, $"## {area.Key}\n\n");
            text.Append("| Check | Source | Expected | Computed | Deviation | Tolerance | |\n| --- | --- | --- | --- | --- | --- | --- |\n");
            foreach (ValidationEntry e in area)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"| {Cell(e.Name)} | {Cell(e.Source)} | {Cell(e.Expected)} | {Cell(e.Computed)} | {Cell(e.Deviation)} | {Cell(e.Tolerance)} | {(e.Pass ? "pass" : "**FAIL**")} |\n");
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
