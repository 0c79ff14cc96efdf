namespace LureSim.Light;

/// <summary>
/// Radiance and irradiance in all directions against depth, from radiative transfer at every wavelength (see docs/light.md).
/// Immutable; every quantity is a sum of exponentials of depth, so any depth costs the same.
/// </summary>
/// <remarks>Bearings are averaged: a real fish sees the sunward side brighter and the far side darker than this mean.</remarks>
public sealed class RadianceField
{
    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;

    private readonly double[][] _rates;
    private readonly DepthSeries[] _downwelling = new DepthSeries[Grid.Count];
    private readonly DepthSeries[] _upwelling = new DepthSeries[Grid.Count];
    private readonly DepthSeries[] _side = new DepthSeries[Grid.Count];
    private readonly DepthSeries[] _scalar = new DepthSeries[Grid.Count];
    private readonly Dictionary<ViewDirection, DepthSeries[]> _radiance = [];
    private readonly double _bedDepth;

    internal RadianceField(InherentOptics optics, SurfaceLight surface, SeaBed? bed)
    {
        _bedDepth = bed?.Depth ?? double.PositiveInfinity;
        _rates = new double[Grid.Count][];
        foreach (var direction in Enum.GetValues<ViewDirection>())
            _radiance[direction] = new DepthSeries[Grid.Count];

        // Particle phase functions differ by their backscattering share alone: steps of 2 % in the share are far finer than it is known.
        var particles = new Dictionary<int, PhaseFunction>();
        for (var i = 0; i < Grid.Count; i++)
        {
            var water = 2.0 * optics.WaterBackscattering[i];
            var matter = Math.Max(0.0, optics.Scattering[i] - water);
            var phase = PhaseFunction.Water;
            if (matter > 1e-9)
            {
                var share = Math.Clamp((optics.Backscattering[i] - optics.WaterBackscattering[i]) / matter, 0.0015, 0.29);
                var key = (int)Math.Round(Math.Log(share) / 0.02);
                if (!particles.TryGetValue(key, out var particle))
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
                _bedDepth,
                bed?.Reflectance[i] ?? 0.0);
            _rates[i] = solution.Rates();
            _downwelling[i] = solution.Integral(cosine => cosine, _ => 0.0);
            _upwelling[i] = solution.Integral(_ => 0.0, cosine => cosine);
            _scalar[i] = solution.Integral(_ => 1.0, _ => 1.0);

            // An upright surface takes sin(theta) cos(phi) over half the bearings: the mean of the positive part of cos is 1/pi.
            _side[i] = solution.Integral(Upright, Upright);
            foreach (var direction in _radiance.Keys)
                _radiance[direction][i] = solution.Radiance(direction.LightCosine());
        }
    }

    /// <summary>Downwelling plane irradiance, W m-2 nm-1.</summary>
    /// <param name="depth">Depth, 0-1000 m.</param>
    public Spectrum Downwelling(double depth) => Sum(_downwelling, depth);

    /// <summary>Upwelling plane irradiance, W m-2 nm-1.</summary>
    /// <param name="depth">Depth, 0-1000 m.</param>
    public Spectrum Upwelling(double depth) => Sum(_upwelling, depth);

    /// <summary>Irradiance on an upright surface, mean over bearings, W m-2 nm-1.</summary>
    /// <param name="depth">Depth, 0-1000 m.</param>
    public Spectrum Side(double depth) => Sum(_side, depth);

    /// <summary>Scalar irradiance: light from all directions alike, W m-2 nm-1.</summary>
    /// <param name="depth">Depth, 0-1000 m.</param>
    public Spectrum Scalar(double depth) => Sum(_scalar, depth);

    /// <summary>Radiance that meets an eye looking in a direction, mean over bearings, W m-2 sr-1 nm-1.</summary>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the eye, 0-1000 m; below the bottom the value at the bottom.</param>
    public Spectrum Radiance(ViewDirection direction, double depth) => Sum(_radiance[direction], depth);

    private static double Upright(double cosine) => Math.Sqrt(1.0 - (cosine * cosine)) / Math.PI;

    // Discrete ordinates can undershoot zero by rounding where light has all but gone: no light is the answer there.
    private Spectrum Sum(DepthSeries[] series, double depth)
    {
        _ = Guard.InRange(depth, 0.0, 1000.0, nameof(depth), "m");
        var values = new double[Grid.Count];
        for (var i = 0; i < values.Length; i++)
            values[i] = Math.Max(0.0, series[i].At(_rates[i], Math.Min(depth, _bedDepth), _bedDepth));
        return new Spectrum(Grid, values);
    }
}
