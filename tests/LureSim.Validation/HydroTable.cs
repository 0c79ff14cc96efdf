using System.Reflection;
using LureSim.Data;

namespace LureSim.Validation;

/// <summary>A reference table of hydrodynamics embedded in the test assembly, looked up by row.</summary>
internal sealed class HydroTable
{
    private readonly ReferenceTable table;

    private HydroTable(ReferenceTable table) => this.table = table;

    /// <summary>Reads Data/hydro/name.csv.</summary>
    public static HydroTable Read(string name)
    {
        Assembly assembly = typeof(HydroTable).Assembly;
        string resource = assembly.GetManifestResourceNames().Single(r => r.EndsWith($".hydro.{name}.csv", StringComparison.Ordinal));
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        return new HydroTable(ReferenceTable.Parse(name, reader.ReadToEnd()));
    }

    /// <summary>Number of rows.</summary>
    public int Count => table.RowCount;

    /// <summary>A cell as text.</summary>
    public string Text(int row, string column) => table.Text(column)[row];

    /// <summary>A cell as a number; NaN if it is empty.</summary>
    public double Value(int row, string column) => table.Numbers(column)[row];

    /// <summary>Pairs of two columns, rows with an empty cell left out.</summary>
    public IEnumerable<(double X, double Y)> Pairs(string x, string y) =>
        table.Numbers(x).Zip(table.Numbers(y)).Where(p => !double.IsNaN(p.First) && !double.IsNaN(p.Second));
}
