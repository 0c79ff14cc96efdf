using System.Globalization;
using System.Reflection;

namespace LureSim.Validation;

/// <summary>A reference table of hydrodynamics embedded in the test assembly: CSV, '#' lines state the sources.</summary>
internal sealed class HydroTable
{
    private readonly string[] columns;
    private readonly string[][] rows;

    private HydroTable(string[] columns, string[][] rows)
    {
        this.columns = columns;
        this.rows = rows;
    }

    /// <summary>Reads Data/hydro/name.csv.</summary>
    public static HydroTable Read(string name)
    {
        Assembly assembly = typeof(HydroTable).Assembly;
        string resource = assembly.GetManifestResourceNames().Single(r => r.EndsWith($".hydro.{name}.csv", StringComparison.Ordinal));
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        string[][] lines = [.. reader.ReadToEnd().Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split(','))];
        return new HydroTable(lines[0], lines[1..]);
    }

    /// <summary>Number of rows.</summary>
    public int Count => rows.Length;

    /// <summary>A cell as text.</summary>
    public string Text(int row, string column) => rows[row][Array.IndexOf(columns, column)];

    /// <summary>A cell as a number; NaN if it is empty.</summary>
    public double Value(int row, string column)
    {
        string text = Text(row, column);
        return text.Length == 0 ? double.NaN : double.Parse(text, CultureInfo.InvariantCulture);
    }

    /// <summary>Pairs of two columns, rows with an empty cell left out.</summary>
    public IEnumerable<(double X, double Y)> Pairs(string x, string y) =>
        Enumerable.Range(0, Count).Select(i => (Value(i, x), Value(i, y))).Where(p => !double.IsNaN(p.Item1) && !double.IsNaN(p.Item2));
}
