using System.Globalization;
using System.Text;

namespace LureSim.Cli.Output;

/// <summary>Writes CSV after RFC 4180, with line feeds, invariant numbers and empty cells for missing values.</summary>
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
        string plain when plain.IndexOfAny(['"', ',', '\n', '\r']) >= 0 => $"\"{plain.Replace("\"", "\"\"", StringComparison.Ordinal)}\"",
        _ => value.ToString() ?? "",
    };
}
