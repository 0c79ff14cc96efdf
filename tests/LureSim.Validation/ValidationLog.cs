using System.Globalization;
using System.Text;

namespace LureSim.Validation;

/// <summary>What a check is worth: where its expected figure comes from.</summary>
public enum CheckClass
{
    /// <summary>A measurement, or a figure published elsewhere that was read in its source or in a named transcription of it.</summary>
    Measured,

    /// <summary>A program written elsewhere, run on the same case.</summary>
    OtherProgram,

    /// <summary>The same equations in other code: closed forms, formulas worked apart, the independent code of these tests.</summary>
    SameEquations,

    /// <summary>An identity, a balance, an order of accuracy, or a figure that a coefficient was set by.</summary>
    Identity,

    /// <summary>A fact of the trade without a source.</summary>
    CommonPractice,

    /// <summary>A published figure entered from memory and not seen since; it does not count as one from outside.</summary>
    FromMemory,
}

/// <summary>One line of the results table.</summary>
internal sealed record ValidationEntry(
    CheckClass Kind,
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
    public static void Relative(CheckClass kind, string area, string name, string source, double expected, double computed, double tolerance, string unit = "")
    {
        double deviation = Math.Abs(computed - expected) / Math.Abs(expected);
        Record(kind, area, name, source, Number(expected, unit), Number(computed, unit), Percent(deviation), Percent(tolerance, "G3"), deviation <= tolerance);
    }

    /// <summary>|computed - expected| at most tolerance, in the same unit.</summary>
    public static void Absolute(CheckClass kind, string area, string name, string source, double expected, double computed, double tolerance, string unit = "")
    {
        double deviation = Math.Abs(computed - expected);
        Record(kind, area, name, source, Number(expected, unit), Number(computed, unit), Small(deviation, unit), Small(tolerance, unit, "G3"), deviation <= tolerance);
    }

    /// <summary>A table of values as one line: its worst row decides.</summary>
    public static void WorstRelative(CheckClass kind, string area, string name, string source, IEnumerable<(double Expected, double Computed)> rows, double tolerance, string unit = "")
    {
        (double Expected, double Computed)[] all = [.. rows];
        Assert.NotEmpty(all);
        (double Expected, double Computed) worst = all.MaxBy(r => Finite(Math.Abs(r.Computed - r.Expected) / Math.Abs(r.Expected)));
        double deviation = Math.Abs(worst.Computed - worst.Expected) / Math.Abs(worst.Expected);
        Record(
            kind, area, Count(name, all.Length), source, Number(worst.Expected, unit), Number(worst.Computed, unit), Percent(deviation), Percent(tolerance, "G3"), deviation <= tolerance);
    }

    /// <summary>A table of values as one line: its worst row decides.</summary>
    public static void WorstAbsolute(CheckClass kind, string area, string name, string source, IEnumerable<(double Expected, double Computed)> rows, double tolerance, string unit = "")
    {
        (double Expected, double Computed)[] all = [.. rows];
        Assert.NotEmpty(all);
        (double Expected, double Computed) worst = all.MaxBy(r => Finite(Math.Abs(r.Computed - r.Expected)));
        double deviation = Math.Abs(worst.Computed - worst.Expected);
        Record(
            kind, area, Count(name, all.Length), source, Number(worst.Expected, unit), Number(worst.Computed, unit), Small(deviation, unit), Small(tolerance, unit, "G3"), deviation <= tolerance);
    }

    /// <summary>computed inside [low, high]: for measurements that spread, and for measured orders of accuracy.</summary>
    public static void Between(CheckClass kind, string area, string name, string source, double low, double high, double computed, string unit = "")
    {
        double outside = Math.Max(0, Math.Max(low - computed, computed - high));
        Record(
            kind, area, name, source, $"{Number(low, "")} to {Number(high, unit)}", Number(computed, unit), outside == 0 ? "inside" : Small(outside, unit), "the range", computed >= low && computed <= high);
    }

    /// <summary>A fact in words, where the trade or a source gives no number: what is expected, and what came out.</summary>
    public static void Says(CheckClass kind, string area, string name, string source, string expected, string computed, bool pass) =>
        Record(kind, area, name, source, expected, computed, "", "", pass);

    /// <summary>computed at most limit: for residuals and differences that ought to be nil.</summary>
    public static void AtMost(CheckClass kind, string area, string name, string source, double limit, double computed, string unit = "") =>
        Record(kind, area, name, source, "0", Small(computed, unit), Small(Math.Abs(computed), unit), Small(limit, unit, "G3"), computed <= limit);

    private static string Count(string name, int count) => count == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name} (worst of {count})");

    private static double Finite(double x) => double.IsNaN(x) ? double.PositiveInfinity : x;

    private static string Number(double x, string unit) => Join(x.ToString("G7", CultureInfo.InvariantCulture), unit);

    private static string Percent(double x, string format = "G2") => x < 1e-9 ? "< 1e-7 %" : (100 * x).ToString(format, CultureInfo.InvariantCulture) + " %";

    private static string Small(double x, string unit, string format = "G2") => x < 1e-11 ? Join("< 1e-11", unit) : Join(x.ToString(format, CultureInfo.InvariantCulture), unit);

    private static string Join(string number, string unit) => unit.Length == 0 ? number : number + " " + unit;

    private static void Record(CheckClass kind, string area, string name, string source, string expected, string computed, string deviation, string tolerance, bool pass)
    {
        var entry = new ValidationEntry(kind, area, name, source, expected, computed, deviation, tolerance, pass);
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
        text.Append(CultureInfo.InvariantCulture, $"{Entries.Count} checks, {Entries.Values.Count(e => e.Pass)} pass. What they are worth:\n\n");
        text.Append("| Worth | Checks |\n| --- | --- |\n");
        foreach (CheckClass kind in Enum.GetValues<CheckClass>()) text.Append(CultureInfo.InvariantCulture, $"| {Title(kind)} | {Entries.Values.Count(e => e.Kind == kind)} |\n");
        text.Append('\n');
        foreach (IGrouping<string, ValidationEntry> area in Entries.Values.GroupBy(e => e.Area))
        {
            text.Append(CultureInfo.InvariantCulture, $"## {area.Key}\n\n");
            text.Append("| Check | Worth | Source | Expected | Computed | Deviation | Tolerance | |\n| --- | --- | --- | --- | --- | --- | --- | --- |\n");
            foreach (ValidationEntry e in area)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"| {Cell(e.Name)} | {Word(e.Kind)} | {Cell(e.Source)} | {Cell(e.Expected)} | {Cell(e.Computed)} | {Cell(e.Deviation)} | {Cell(e.Tolerance)} | {(e.Pass ? "pass" : "**FAIL**")} |\n");
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    private static string Title(CheckClass kind) => kind switch
    {
        CheckClass.Measured => "measured, or published elsewhere and read",
        CheckClass.OtherProgram => "another program",
        CheckClass.SameEquations => "same equations in other code",
        CheckClass.Identity => "identity, balance or order of accuracy",
        CheckClass.CommonPractice => "common practice",
        CheckClass.FromMemory => "published, entered from memory (not counted as outside)",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a class of checks."),
    };

    private static string Word(CheckClass kind) => kind switch
    {
        CheckClass.Measured => "measured",
        CheckClass.OtherProgram => "other program",
        CheckClass.SameEquations => "same equations",
        CheckClass.Identity => "identity",
        CheckClass.CommonPractice => "practice",
        CheckClass.FromMemory => "memory",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a class of checks."),
    };

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
