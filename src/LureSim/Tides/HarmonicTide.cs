namespace LureSim.Tides;

/// <summary>A harmonic constant of a place.</summary>
/// <param name="Constituent">The constituent.</param>
/// <param name="Amplitude">Amplitude H (m), 0 to 20.</param>
/// <param name="Phase">Greenwich phase lag G (radians): how far the constituent lags behind its equilibrium argument at Greenwich.</param>
public sealed record HarmonicConstant(TidalConstituent Constituent, double Amplitude, double Phase);

/// <summary>
/// Heights of the tide from harmonic constants: h = sum of f H cos(V + u - G) (Schureman 1940, schureman1940manual), with V, u and f at the moment itself. Tables that hold u and f
/// for a year at its middle differ by up to a centimetre in a metre of tide.
/// </summary>
public sealed class HarmonicTide
{
    private readonly HarmonicConstant[] constants;

    /// <summary>Creates a tide.</summary>
    /// <param name="constants">Its constants, each constituent once, at least one.</param>
    /// <exception cref="ArgumentNullException"><paramref name="constants"/> is null.</exception>
    /// <exception cref="ArgumentException">There is none, or a constituent is given twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An amplitude or a phase is out of range.</exception>
    public HarmonicTide(IReadOnlyList<HarmonicConstant> constants)
    {
        ArgumentNullException.ThrowIfNull(constants);
        this.constants = [.. constants];
        if (this.constants.Length == 0 || this.constants.Select(item => item.Constituent).Distinct().Count() < this.constants.Length)
            throw new ArgumentException("A tide needs constants, each constituent once.", nameof(constants));
        foreach (HarmonicConstant item in this.constants)
        {
            Guard.InRange(item.Amplitude, 0, 20);
            Guard.Finite(item.Phase);
        }
    }

    /// <summary>Height above the mean level (m).</summary>
    /// <param name="time">The moment.</param>
    public double Height(DateTimeOffset time)
    {
        var sky = TidalAstronomy.At(time);
        double sum = 0;
        foreach (HarmonicConstant item in constants)
        {
            (double argument, double factor) = item.Constituent.At(sky);
            sum += factor * item.Amplitude * Math.Cos(argument - item.Phase);
        }

        return sum;
    }

    /// <summary>Rate at which the water rises (m/h), negative while it falls; f and u change too slowly to count.</summary>
    /// <param name="time">The moment.</param>
    public double Rate(DateTimeOffset time)
    {
        var sky = TidalAstronomy.At(time);
        double sum = 0;
        foreach (HarmonicConstant item in constants)
        {
            (double argument, double factor) = item.Constituent.At(sky);
            sum -= factor * item.Amplitude * item.Constituent.Speed * Math.Sin(argument - item.Phase);
        }

        return sum;
    }
}
