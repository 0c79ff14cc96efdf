using System.Numerics;

namespace LureSim.Light;

/// <summary>A quantity sampled on a <see cref="WavelengthGrid"/>. Immutable; every sample is finite.</summary>
/// <remarks>The unit belongs to the quantity and is stated where the spectrum is made (reflectance: none; irradiance: W/(m2 nm); absorption: 1/m).</remarks>
public sealed class Spectrum
{
    private readonly double[] values;

    /// <summary>Makes a spectrum; the values are copied.</summary>
    /// <param name="grid">The wavelengths.</param>
    /// <param name="values">One finite value a wavelength.</param>
    /// <exception cref="ArgumentException">The count differs from the grid's, or a value is NaN or infinite.</exception>
    public Spectrum(WavelengthGrid grid, ReadOnlySpan<double> values)
        : this(grid, values.ToArray(), owned: true)
    {
    }

    private Spectrum(WavelengthGrid grid, double[] values, bool owned)
    {
        ArgumentNullException.ThrowIfNull(grid);
        _ = owned;
        if (values.Length != grid.Count)
            throw new ArgumentException($"A spectrum on this grid needs {grid.Count} values, got {values.Length}.", nameof(values));
        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
                throw new ArgumentException($"The value at {grid.WavelengthsNm[i]} nm is {values[i]}; only finite values are allowed.", nameof(values));
        }

        Grid = grid;
        this.values = values;
    }

    /// <summary>The wavelengths.</summary>
    public WavelengthGrid Grid { get; }

    /// <summary>The samples, in the order of <see cref="WavelengthGrid.WavelengthsNm"/>.</summary>
    public ReadOnlySpan<double> Values => values;

    /// <summary>The sample at an index.</summary>
    /// <param name="index">Index, 0 to Count - 1.</param>
    public double this[int index] => values[index];

    /// <summary>A copy of the samples, for plotting.</summary>
    public double[] ToArray() => (double[])values.Clone();

    /// <summary>A spectrum of one value.</summary>
    /// <param name="grid">The wavelengths.</param>
    /// <param name="value">The finite value.</param>
    public static Spectrum Constant(WavelengthGrid grid, double value) => FromFunction(grid, _ => value);

    /// <summary>Samples a function of wavelength in nm.</summary>
    /// <param name="grid">The wavelengths.</param>
    /// <param name="function">The function of wavelength in nm; finite on the grid.</param>
    /// <exception cref="ArgumentException">The function is not finite somewhere on the grid.</exception>
    public static Spectrum FromFunction(WavelengthGrid grid, Func<double, double> function)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(function);
        double[] values = new double[grid.Count];
        for (int i = 0; i < values.Length; i++)
            values[i] = function(grid.WavelengthsNm[i]);
        return new Spectrum(grid, values, owned: true);
    }

    /// <summary>Samples a table by linear interpolation, holding the end values outside of it.</summary>
    /// <param name="grid">The wavelengths.</param>
    /// <param name="tableNm">Rising wavelengths of the table (nm).</param>
    /// <param name="tableValues">Values of the table.</param>
    /// <exception cref="ArgumentException">Lengths differ, fewer than two rows, or wavelengths do not rise.</exception>
    public static Spectrum FromTable(WavelengthGrid grid, ReadOnlySpan<double> tableNm, ReadOnlySpan<double> tableValues)
    {
        ArgumentNullException.ThrowIfNull(grid);
        if (tableNm.Length != tableValues.Length || tableNm.Length < 2)
            throw new ArgumentException("A table needs two or more rows and as many values as wavelengths.", nameof(tableNm));
        for (int i = 1; i < tableNm.Length; i++)
        {
            if (!(tableNm[i] > tableNm[i - 1]))
                throw new ArgumentException("The wavelengths of a table must rise.", nameof(tableNm));
        }

        double[] values = new double[grid.Count];
        for (int i = 0; i < values.Length; i++)
            values[i] = InterpolateTable(tableNm, tableValues, grid.WavelengthsNm[i]);
        return new Spectrum(grid, values, owned: true);
    }

    /// <summary>The value at a wavelength by linear interpolation, end values held outside.</summary>
    /// <param name="wavelengthNm">Wavelength in nm.</param>
    public double At(double wavelengthNm) => InterpolateTable(Grid.WavelengthsNm, values, wavelengthNm);

    /// <summary>Applies a function sample by sample.</summary>
    /// <param name="function">Function of the sample; finite.</param>
    public Spectrum Map(Func<double, double> function)
    {
        ArgumentNullException.ThrowIfNull(function);
        double[] values = new double[this.values.Length];
        for (int i = 0; i < values.Length; i++)
            values[i] = function(this.values[i]);
        return new Spectrum(Grid, values, owned: true);
    }

    /// <summary>Combines two spectra sample by sample.</summary>
    /// <param name="other">A spectrum on the same grid.</param>
    /// <param name="function">Function of both samples; finite.</param>
    /// <exception cref="ArgumentException">The grids differ.</exception>
    public Spectrum Combine(Spectrum other, Func<double, double, double> function)
    {
        ArgumentNullException.ThrowIfNull(function);
        RequireSameGrid(other);
        double[] values = new double[this.values.Length];
        for (int i = 0; i < values.Length; i++)
            values[i] = function(this.values[i], other.values[i]);
        return new Spectrum(Grid, values, owned: true);
    }

    /// <summary>Sum, sample by sample.</summary>
    public static Spectrum operator +(Spectrum left, Spectrum right) => left.Combine(right, (a, b) => a + b);

    /// <summary>Difference, sample by sample.</summary>
    public static Spectrum operator -(Spectrum left, Spectrum right) => left.Combine(right, (a, b) => a - b);

    /// <summary>Product, sample by sample.</summary>
    public static Spectrum operator *(Spectrum left, Spectrum right) => left.Combine(right, (a, b) => a * b);

    /// <summary>Product with a number.</summary>
    public static Spectrum operator *(double factor, Spectrum spectrum) => spectrum.Map(v => factor * v);

    /// <summary>Named form of +.</summary>
    public static Spectrum Add(Spectrum left, Spectrum right) => left + right;

    /// <summary>Named form of -.</summary>
    public static Spectrum Subtract(Spectrum left, Spectrum right) => left - right;

    /// <summary>Named form of *.</summary>
    public static Spectrum Multiply(Spectrum left, Spectrum right) => left * right;

    /// <summary>Integral over wavelength by the trapezium rule: unit of the quantity times nm.</summary>
    public double Integral() => Integral(Grid.StartNm, Grid.EndNm);

    /// <summary>Integral over a band by the trapezium rule on the samples inside it.</summary>
    /// <param name="fromNm">Lower limit (nm); taken to the nearest sample.</param>
    /// <param name="toNm">Upper limit (nm); taken to the nearest sample.</param>
    public double Integral(double fromNm, double toNm)
    {
        int first = Grid.NearestIndex(fromNm), last = Grid.NearestIndex(toNm);
        if (last <= first)
            return 0.0;
        double sum = 0.5 * (values[first] + values[last]);
        for (int i = first + 1; i < last; i++)
            sum += values[i];
        return sum * Grid.StepNm;
    }

    /// <summary>Sum over wavelength of the product with another spectrum, times the step.</summary>
    /// <param name="other">A spectrum on the same grid.</param>
    /// <exception cref="ArgumentException">The grids differ.</exception>
    public double Dot(Spectrum other)
    {
        RequireSameGrid(other);
        return Dot(values, other.values) * Grid.StepNm;
    }

    /// <summary>Largest sample.</summary>
    public double Maximum() => values.Max();

    /// <summary>Smallest sample.</summary>
    public double Minimum() => values.Min();

    /// <summary>Plain dot product, vectorised, without allocation.</summary>
    internal static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        int width = Vector<double>.Count;
        Vector<double> sum = Vector<double>.Zero;
        int i = 0;
        for (; i <= left.Length - width; i += width)
            sum += new Vector<double>(left[i..]) * new Vector<double>(right[i..]);
        double total = Vector.Sum(sum);
        for (; i < left.Length; i++)
            total += left[i] * right[i];
        return total;
    }

    /// <summary>Linear interpolation in a table with rising x, end values held outside, without allocation.</summary>
    internal static double InterpolateTable(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double at)
    {
        if (at <= x[0])
            return y[0];
        if (at >= x[^1])
            return y[^1];
        int upper = x.BinarySearch(at);
        if (upper >= 0)
            return y[upper];
        upper = ~upper;
        double share = (at - x[upper - 1]) / (x[upper] - x[upper - 1]);
        return y[upper - 1] + (share * (y[upper] - y[upper - 1]));
    }

    private void RequireSameGrid(Spectrum other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (!Grid.Equals(other.Grid))
            throw new ArgumentException("Spectra on different wavelength grids cannot be combined.", nameof(other));
    }
}
