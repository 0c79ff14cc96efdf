using LureSim.Data;

namespace LureSim.Light;

/// <summary>Spectra from reference tables.</summary>
public static class SpectralTables
{
    /// <summary>A column against its wavelength_nm column, on a grid by linear interpolation with the end values held; empty cells are left out.</summary>
    /// <param name="table">The table.</param>
    /// <param name="grid">The wavelengths.</param>
    /// <param name="column">Column name.</param>
    public static Spectrum OnGrid(this ReferenceTable table, WavelengthGrid grid, string column)
    {
        ArgumentNullException.ThrowIfNull(table);
        double[] wavelengths = table.Numbers("wavelength_nm");
        double[] values = table.Numbers(column);
        int[] kept = Enumerable.Range(0, values.Length).Where(i => !double.IsNaN(values[i])).ToArray();
        return Spectrum.FromTable(grid, [.. kept.Select(i => wavelengths[i])], [.. kept.Select(i => values[i])]);
    }
}
