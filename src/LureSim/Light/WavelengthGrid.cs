namespace LureSim.Light;

/// <summary>An even set of vacuum wavelengths on which spectra are sampled. Immutable and safe to share.</summary>
/// <remarks>
/// Every spectrum of the model lives on <see cref="Visible"/> (380-780 nm at 5 nm, the range and step of the CIE
/// tables); the type is explicit so that two spectra on different grids can never be combined by accident.
/// </remarks>
public sealed record WavelengthGrid
{
    /// <summary>The grid of the model: 380-780 nm at 5 nm, 81 samples (CIE 15:2004 recommends this range and step).</summary>
    public static WavelengthGrid Visible { get; } = new(380.0, 5.0, 81);

    /// <summary>Makes a grid.</summary>
    /// <param name="startNm">First wavelength in nm, 200-2000.</param>
    /// <param name="stepNm">Step in nm, above 0 and at most 100.</param>
    /// <param name="count">Number of samples, 2-10000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not finite.</exception>
    public WavelengthGrid(double startNm, double stepNm, int count)
    {
        StartNm = Guard.InRange(startNm, 200.0, 2000.0, nameof(startNm), "nm");
        StepNm = Guard.InRange(stepNm, 1e-3, 100.0, nameof(stepNm), "nm");
        Count = (int)Guard.InRange(count, 2, 10000, nameof(count), "samples");
        double[] wavelengths = new double[Count];
        for (int i = 0; i < Count; i++)
            wavelengths[i] = startNm + (i * stepNm);
        wavelengthsNm = wavelengths;
    }

    private readonly double[] wavelengthsNm;

    /// <summary>First wavelength (nm).</summary>
    public double StartNm { get; }

    /// <summary>Step (nm).</summary>
    public double StepNm { get; }

    /// <summary>Number of samples.</summary>
    public int Count { get; }

    /// <summary>Last wavelength (nm).</summary>
    public double EndNm => StartNm + ((Count - 1) * StepNm);

    /// <summary>All wavelengths (nm), rising.</summary>
    public ReadOnlySpan<double> WavelengthsNm => wavelengthsNm;

    /// <summary>Index of the sample nearest to a wavelength, clamped to the grid.</summary>
    /// <param name="wavelengthNm">Wavelength in nm; not NaN.</param>
    public int NearestIndex(double wavelengthNm) =>
        (int)Math.Clamp(Math.Round((wavelengthNm - StartNm) / StepNm), 0, Count - 1);

    /// <summary>Grids are equal when start, step and count are.</summary>
    /// <param name="other">The other grid.</param>
    public bool Equals(WavelengthGrid? other) =>
        other is not null && StartNm == other.StartNm && StepNm == other.StepNm && Count == other.Count;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(StartNm, StepNm, Count);
}
