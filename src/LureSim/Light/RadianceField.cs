namespace LureSim.Light;

/// <summary>
/// Radiance and irradiance in all directions against depth, from radiative transfer at every wavelength (see docs/light.md).
/// Immutable; every quantity is a sum of exponentials of depth, so any depth costs the same.
/// </summary>
/// <remarks>Bearings are averaged: a real fish sees the sunward side brighter and the far side darker than this mean.</remarks>
public sealed class RadianceField
{
    // Fields that are kept, a quarter of a megabyte each: a plan asks for about fifteen, and the next plan for the same water asks for them again.
    private const int MostKept = 48;

    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;
    private static readonly KeptResults<RadianceInputs, RadianceField> Kept = new(MostKept);

    private readonly double[][] rates;
    private readonly DepthSeries[] downwelling = new DepthSeries[Grid.Count];
    private readonly DepthSeries[] upwelling = new DepthSeries[Grid.Count];
    private readonly DepthSeries[] side = new DepthSeries[Grid.Count];
    private readonly DepthSeries[] scalar = new DepthSeries[Grid.Count];
    private readonly Dictionary<ViewDirection, DepthSeries[]> radiance = [];
    private readonly double bedDepth;

    /// <summary>Computes a field, whether it was computed before or not; see <see cref="Of"/>.</summary>
    internal RadianceField(InherentOptics optics, SurfaceLight surface, SeaBed? bed)
    {
        bedDepth = bed?.Depth ?? double.PositiveInfinity;
        rates = new double[Grid.Count][];
        foreach (ViewDirection direction in Enum.GetValues<ViewDirection>())
            radiance[direction] = new DepthSeries[Grid.Count];

        // Particle phase functions differ by their backscattering share alone: steps of 2 % in the share are far finer than it is known.
        var particles = new Dictionary<int, PhaseFunction>();
        for (int i = 0; i < Grid.Count; i++)
        {
            double water = 2.0 * optics.WaterBackscattering[i];
            double matter = Math.Max(0.0, optics.Scattering[i] - water);
            PhaseFunction phase = PhaseFunction.Water;
            if (matter > 1e-9)
            {
                double share = Math.Clamp((optics.Backscattering[i] - optics.WaterBackscattering[i]) / matter, 0.0015, 0.29);
                int key = (int)Math.Round(Math.Log(share) / 0.02);
                if (!particles.TryGetValue(key, out PhaseFunction? particle))
                    particles[key] = particle = PhaseFunction.FournierForand(Math.Exp(key * 0.02));
                phase = PhaseFunction.Mix(PhaseFunction.Water, particle, water / (water + matter));
            }

            var solution = new RadiativeTransfer(
                optics.Absorption[i],
                water + matter,
                phase,
                surface.ZenithAngle,
                surface.Direct[i],
                surface.Diffuse[i],
                bedDepth,
                bed?.Reflectance[i] ?? 0.0);
            rates[i] = solution.Rates();
            downwelling[i] = solution.Integral(cosine => cosine, _ => 0.0);
            upwelling[i] = solution.Integral(_ => 0.0, cosine => cosine);
            scalar[i] = solution.Integral(_ => 1.0, _ => 1.0);

            // An upright surface takes sin(theta) cos(phi) over half the bearings: the mean of the positive part of cos is 1/pi.
            side[i] = solution.Integral(Upright, Upright);
            foreach (ViewDirection direction in radiance.Keys)
                radiance[direction][i] = solution.Radiance(direction.LightCosine());
        }
    }

    /// <summary>The field of a water under a light, over a bottom or without one; one that was computed lately is not computed again.</summary>
    /// <param name="optics">The water.</param>
    /// <param name="surface">Light on it.</param>
    /// <param name="bed">The bottom; null for deep water.</param>
    internal static RadianceField Of(InherentOptics optics, SurfaceLight surface, SeaBed? bed) =>
        Kept.Of(new RadianceInputs(optics, surface, bed), () => new RadianceField(optics, surface, bed)).Value;

    /// <summary>Downwelling plane irradiance (W/(m2 nm)).</summary>
    /// <param name="depth">Depth (m), 0-1000.</param>
    public Spectrum Downwelling(double depth) => Sum(downwelling, depth);

    /// <summary>Upwelling plane irradiance (W/(m2 nm)).</summary>
    /// <param name="depth">Depth (m), 0-1000.</param>
    public Spectrum Upwelling(double depth) => Sum(upwelling, depth);

    /// <summary>Irradiance on an upright surface, mean over bearings (W/(m2 nm)).</summary>
    /// <param name="depth">Depth (m), 0-1000.</param>
    public Spectrum Side(double depth) => Sum(side, depth);

    /// <summary>Scalar irradiance: light from all directions alike (W/(m2 nm)).</summary>
    /// <param name="depth">Depth (m), 0-1000.</param>
    public Spectrum Scalar(double depth) => Sum(scalar, depth);

    /// <summary>Radiance that meets an eye looking in a direction, mean over bearings (W/(m2 sr nm)).</summary>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the eye (m), 0-1000; below the bottom the value at the bottom.</param>
    public Spectrum Radiance(ViewDirection direction, double depth) => Sum(radiance[direction], depth);

    private static double Upright(double cosine) => Math.Sqrt(1.0 - (cosine * cosine)) / Math.PI;

    // Discrete ordinates can undershoot zero by rounding where light has all but gone: no light is the answer there.
    private Spectrum Sum(DepthSeries[] series, double depth)
    {
        _ = Guard.InRange(depth, 0.0, 1000.0, nameof(depth), "m");
        double[] values = new double[Grid.Count];
        for (int i = 0; i < values.Length; i++)
            values[i] = Math.Max(0.0, series[i].At(rates[i], Math.Min(depth, bedDepth), bedDepth));
        return new Spectrum(Grid, values);
    }
}
