namespace LureSim.Light;

/// <summary>Light in the water column: a body of water under a sky. Immutable.</summary>
public sealed record LightField
{
    private const double PlanckTimesLightSpeed = 6.62607015e-34 * 299792458.0; // J m, SI 2019
    private const double Avogadro = 6.02214076e23; // mol-1, SI 2019

    // Faces of targets that are kept: every color of a lure is asked for at the same few depths, from the same few sides.
    private const int MostFaces = 32;

    private readonly Lazy<RadianceField> angular;
    private readonly KeptResults<(ViewDirection Direction, double Depth), Spectrum> faces = new(MostFaces);

    /// <summary>Lights a body of water.</summary>
    /// <param name="water">The water.</param>
    /// <param name="surface">Light on the water.</param>
    /// <param name="bed">The bottom; null for deep water. It lights bellies and flanks from below and stands behind a lure seen from above.</param>
    public LightField(OpticalWater water, SurfaceLight surface, SeaBed? bed = null)
    {
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(surface);
        Water = water;
        Surface = surface;
        Bed = bed;
        DirectBelowSurface = (1.0 - WaterSurface.FresnelReflectance(surface.ZenithAngle)) * surface.Direct;
        DiffuseBelowSurface = WaterSurface.DiffuseTransmittance * surface.Diffuse;
        DirectAttenuation = DiffuseAttenuation.OfSpectrum(water.Optics, surface.ZenithAngle * 180.0 / Math.PI);
        SkyAttenuation = DiffuseAttenuation.OfSpectrum(water.Optics, DiffuseAttenuation.DiffuseSkyZenithDegrees);
        angular = new Lazy<RadianceField>(() => RadianceField.Of(water.Optics, surface, bed));
    }

    /// <summary>The water.</summary>
    public OpticalWater Water { get; }

    /// <summary>Light just above the surface.</summary>
    public SurfaceLight Surface { get; }

    /// <summary>The bottom; null for deep water.</summary>
    public SeaBed? Bed { get; }

    /// <summary>Sun's part of the downwelling irradiance just below the surface (W/(m2 nm)).</summary>
    public Spectrum DirectBelowSurface { get; }

    /// <summary>Sky's part of the downwelling irradiance just below the surface (W/(m2 nm)).</summary>
    public Spectrum DiffuseBelowSurface { get; }

    /// <summary>Kd of the sun's light (1/m).</summary>
    public Spectrum DirectAttenuation { get; }

    /// <summary>Kd of the sky's light (1/m).</summary>
    public Spectrum SkyAttenuation { get; }

    /// <summary>Downwelling plane irradiance at a depth (W/(m2 nm)).</summary>
    /// <param name="depth">Depth (m), 0-1000; 0 is just below the surface.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth is outside its range.</exception>
    public Spectrum Downwelling(double depth)
    {
        double[] values = new double[DirectBelowSurface.Grid.Count];
        Downwelling(depth, values);
        return new Spectrum(DirectBelowSurface.Grid, values);
    }

    /// <summary>Illuminance at a depth (lx).</summary>
    /// <param name="depth">Depth (m), 0-1000.</param>
    public double Illuminance(double depth) => Colorimetry.MaximumLuminousEfficacy * Downwelling(depth).Dot(Colorimetry.YBar);

    /// <summary>Photosynthetically available radiation, photons of 400-700 nm (mol/(m2 s)).</summary>
    /// <param name="depth">Depth (m), 0-1000.</param>
    public double PhotosyntheticallyAvailableRadiation(double depth) => PhotonFlux(Downwelling(depth));

    /// <summary>Share of the photons of 400-700 nm just below the surface that is left at a depth, 0-1.</summary>
    /// <param name="depth">Depth (m), 0-1000.</param>
    public double PhotosyntheticallyAvailableShare(double depth)
    {
        double top = PhotosyntheticallyAvailableRadiation(0.0);
        return top > 0.0 ? PhotosyntheticallyAvailableRadiation(depth) / top : 0.0;
    }

    /// <summary>Depth at which a share of the 400-700 nm photons is left (m); null when it lies deeper than 1000 m.</summary>
    /// <param name="share">Share, above 0 and below 1.</param>
    public double? DepthOfShare(double share)
    {
        _ = Guard.InRange(share, 1e-12, 1.0 - 1e-9, nameof(share), "");
        return Crossing.First(depth => Math.Log(PhotosyntheticallyAvailableShare(depth) / share), 0.0, 1000.0, 400);
    }

    /// <summary>Angular distribution of the light by radiative transfer; computed when first asked for.</summary>
    public RadianceField Angular => angular.Value;

    /// <summary>Radiance of the water that meets an eye looking in a direction, the mean over all bearings (W/(m2 sr nm)).</summary>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the eye (m), 0-1000.</param>
    /// <remarks>The angular shape comes from <see cref="Angular"/>, the level from <see cref="Downwelling(double)"/>, so that both agree on the light at every depth.</remarks>
    public Spectrum Radiance(ViewDirection direction, double depth) => Level(Angular.Radiance(direction, depth), depth);

    /// <summary>Irradiance on the face of a target that is turned to an eye (W/(m2 nm)): belly for an eye looking up, side for level, back for down.</summary>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the target (m), 0-1000.</param>
    public Spectrum FaceIrradiance(ViewDirection direction, double depth) => faces.Of((direction, depth), () => direction switch
    {
        ViewDirection.Up => Level(Angular.Upwelling(depth), depth),
        ViewDirection.SlantUp => Level(0.5 * (Angular.Upwelling(depth) + Angular.Side(depth)), depth),
        ViewDirection.Level => Level(Angular.Side(depth), depth),
        ViewDirection.Down => Downwelling(depth),
        _ => throw new ArgumentOutOfRangeException(nameof(direction), direction, "Unknown view direction."),
    }).Value;

    /// <summary>Irradiance on the far face of a target, away from an eye (W/(m2 nm)).</summary>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the target (m), 0-1000.</param>
    public Spectrum BackIrradiance(ViewDirection direction, double depth) => direction switch
    {
        ViewDirection.Up => Downwelling(depth),
        ViewDirection.SlantUp => 0.5 * (Downwelling(depth) + FaceIrradiance(ViewDirection.Level, depth)),
        ViewDirection.Level => FaceIrradiance(ViewDirection.Level, depth),
        ViewDirection.Down => FaceIrradiance(ViewDirection.Up, depth),
        _ => throw new ArgumentOutOfRangeException(nameof(direction), direction, "Unknown view direction."),
    };

    /// <summary>Writes the downwelling irradiance at a depth into a span, without allocation.</summary>
    internal void Downwelling(double depth, Span<double> irradiance)
    {
        _ = Guard.InRange(depth, 0.0, 1000.0, nameof(depth), "m");
        ReadOnlySpan<double> sun = DirectBelowSurface.Values, sky = DiffuseBelowSurface.Values;
        ReadOnlySpan<double> sunK = DirectAttenuation.Values, skyK = SkyAttenuation.Values;
        for (int i = 0; i < irradiance.Length; i++)
            irradiance[i] = (sun[i] * Math.Exp(-sunK[i] * depth)) + (sky[i] * Math.Exp(-skyK[i] * depth));
    }

    private Spectrum Level(Spectrum shape, double depth)
    {
        Spectrum own = Downwelling(depth), other = Angular.Downwelling(depth);
        double[] values = new double[own.Grid.Count];
        for (int i = 0; i < values.Length; i++)
        {
            // Both irradiances can underflow in the deep; there is nothing to see then.
            double ratio = other[i] > 1e-290 ? own[i] / other[i] : 0.0;
            values[i] = shape[i] * ratio;
        }

        return new Spectrum(own.Grid, values);
    }

    private static double PhotonFlux(Spectrum irradiance)
    {
        Spectrum photons = Spectrum.FromFunction(irradiance.Grid, nm => nm * 1e-9 / (PlanckTimesLightSpeed * Avogadro)) * irradiance;
        return photons.Integral(400.0, 700.0);
    }
}
