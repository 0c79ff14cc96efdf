using System.Globalization;
using System.Text;

namespace LureSim.Cli.Output;

/// <summary>
/// Writes CSV after RFC 4180, with line feeds, invariant numbers and empty cells for missing values. A text that a
/// spreadsheet would run as a formula gets an apostrophe before it, which spreadsheets take as "this is text".
/// </summary>
internal sealed class Csv
{
    private readonly StringBuilder text = new();

    /// <summary>Starts a table with its heading.</summary>
    public Csv(params string[] heading) => Row([.. heading.Select(name => (object?)name)]);

    /// <summary>Appends a row of texts, numbers and nulls.</summary>
    public Csv Row(params object?[] cells)
    {
        text.AppendJoin(',', cells.Select(Cell)).Append('\n');
        return this;
    }

    /// <inheritdoc/>
    public override string ToString() => text.ToString();

    private static string Cell(object? value) => value switch
    {
        null => "",
        double number => double.IsFinite(number) ? number.ToString("R", CultureInfo.InvariantCulture) : "",
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => Text(value.ToString() ?? ""),
    };

    private static string Text(string text)
    {
        string plain = IsFormula(text) ? "'" + text : text;
        return plain.IndexOfAny(['"', ',', '\n', '\r', '\t']) >= 0 ? $"\"{plain.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : plain;
    }

    // Spreadsheets skip blanks before the sign, and some read the wide forms of it; a number with a sign is no formula.
    private static bool IsFormula(string text) =>
        text.Length > 0
        && (text[0] is '\t' or '\r' or '\n' || text.AsSpan().TrimStart() is ['=' or '+' or '-' or '@' or '\uff1d' or '\uff0b' or '\uff0d' or '\uff20', ..])
        && !double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
}
