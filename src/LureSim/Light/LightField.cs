namespace LureSim.Light;

/// <summary>Light in the water column: a body of water under a sky. Immutable.</summary>
public sealed record LightField
{
    private const double PlanckTimesLightSpeed = 6.62607015e-34 * 299792458.0; // J m, SI 2019
    private const double Avogadro = 6.02214076e23; // mol-1, SI 2019

    /// <summary>Lights a body of water.</summary>
    /// <param name="water">The water.</param>
    /// <param name="surface">Light on the water.</param>
    public LightField(OpticalWater water, SurfaceLight surface)
    {
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(surface);
        Water = water;
        Surface = surface;
        DirectBelowSurface = (1.0 - WaterSurface.FresnelReflectance(surface.ZenithAngle)) * surface.Direct;
        DiffuseBelowSurface = WaterSurface.DiffuseTransmittance * surface.Diffuse;
        DirectAttenuation = DiffuseAttenuation.OfSpectrum(water.Optics, surface.ZenithAngle * 180.0 / Math.PI);
        SkyAttenuation = DiffuseAttenuation.OfSpectrum(water.Optics, DiffuseAttenuation.DiffuseSkyZenithDegrees);
    }

    /// <summary>The water.</summary>
    public OpticalWater Water { get; }

    /// <summary>Light just above the surface.</summary>
    public SurfaceLight Surface { get; }

    /// <summary>Sun's part of the downwelling irradiance just below the surface, W m-2 nm-1.</summary>
    public Spectrum DirectBelowSurface { get; }

    /// <summary>Sky's part of the downwelling irradiance just below the surface, W m-2 nm-1.</summary>
    public Spectrum DiffuseBelowSurface { get; }

    /// <summary>Kd of the sun's light, m-1.</summary>
    public Spectrum DirectAttenuation { get; }

    /// <summary>Kd of the sky's light, m-1.</summary>
    public Spectrum SkyAttenuation { get; }

    /// <summary>Downwelling plane irradiance at a depth, W m-2 nm-1.</summary>
    /// <param name="depth">Depth, 0-1000 m; 0 is just below the surface.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth is outside its range.</exception>
    public Spectrum Downwelling(double depth)
    {
        var values = new double[DirectBelowSurface.Grid.Count];
        Downwelling(depth, values);
        return new Spectrum(DirectBelowSurface.Grid, values);
    }

    /// <summary>Illuminance at a depth, lx.</summary>
    /// <param name="depth">Depth, 0-1000 m.</param>
    public double Illuminance(double depth) => Colorimetry.MaximumLuminousEfficacy * Downwelling(depth).Dot(Colorimetry.YBar);

    /// <summary>Photosynthetically available radiation, photons of 400-700 nm, mol m-2 s-1.</summary>
    /// <param name="depth">Depth, 0-1000 m.</param>
    public double PhotosyntheticallyAvailableRadiation(double depth) => PhotonFlux(Downwelling(depth));

    /// <summary>Share of the photons of 400-700 nm just below the surface that is left at a depth, 0-1.</summary>
    /// <param name="depth">Depth, 0-1000 m.</param>
    public double PhotosyntheticallyAvailableShare(double depth)
    {
        var top = PhotosyntheticallyAvailableRadiation(0.0);
        return top > 0.0 ? PhotosyntheticallyAvailableRadiation(depth) / top : 0.0;
    }

    /// <summary>Depth at which a share of the 400-700 nm photons is left, m; null when it lies deeper than 1000 m.</summary>
    /// <param name="share">Share, above 0 and below 1.</param>
    public double? DepthOfShare(double share)
    {
        _ = Guard.InRange(share, 1e-12, 1.0 - 1e-9, nameof(share), "");
        return Crossing.First(depth => Math.Log(PhotosyntheticallyAvailableShare(depth) / share), 0.0, 1000.0, 400);
    }

    /// <summary>Radiance of the water seen level, the mean over all bearings, W m-2 sr-1 nm-1.</summary>
    /// <param name="depth">Depth, 0-1000 m.</param>
    /// <remarks>
    /// Single-scattering estimate: light of the downwelling field is turned into the level path with b_b/(2 pi) a
    /// steradian and lost from it with a + b_b, since light scattered forward stays close to the path.
    /// </remarks>
    public Spectrum LevelRadiance(double depth)
    {
        var grid = DirectBelowSurface.Grid;
        double[] sun = new double[grid.Count], sky = new double[grid.Count];
        Downwelling(depth, sun, sky);
        var cosine = Math.Cos(WaterSurface.Refract(Surface.ZenithAngle));
        var optics = Water.Optics;
        for (var i = 0; i < sun.Length; i++)
        {
            var scalar = (sun[i] / cosine) + (sky[i] / WaterSurface.DiffuseMeanCosine);
            sun[i] = optics.Backscattering[i] / (2.0 * Math.PI * (optics.Absorption[i] + optics.Backscattering[i])) * scalar;
        }

        return new Spectrum(grid, sun);
    }

    /// <summary>Irradiance on an upright surface, the mean over all bearings, W m-2 nm-1.</summary>
    /// <param name="depth">Depth, 0-1000 m.</param>
    /// <remarks>The sun's beam gives tan(theta)/pi of its horizontal irradiance, a uniform sky seen through Snell's window a fixed share; light from the level water is added as pi times its radiance.</remarks>
    public Spectrum SideIrradiance(double depth)
    {
        var grid = DirectBelowSurface.Grid;
        double[] sun = new double[grid.Count], sky = new double[grid.Count];
        Downwelling(depth, sun, sky);
        var sunShare = Math.Tan(WaterSurface.Refract(Surface.ZenithAngle)) / Math.PI;
        var window = WaterSurface.SnellWindowHalfAngle;
        var skyShare = (window - (Math.Sin(window) * Math.Cos(window))) / (Math.PI * Math.Sin(window) * Math.Sin(window));
        var level = LevelRadiance(depth);
        for (var i = 0; i < sun.Length; i++)
            sun[i] = (sunShare * sun[i]) + (skyShare * sky[i]) + (Math.PI * level[i]);
        return new Spectrum(grid, sun);
    }

    /// <summary>Writes the downwelling irradiance at a depth into a span, without allocation.</summary>
    internal void Downwelling(double depth, Span<double> irradiance)
    {
        _ = Guard.InRange(depth, 0.0, 1000.0, nameof(depth), "m");
        ReadOnlySpan<double> sun = DirectBelowSurface.Values, sky = DiffuseBelowSurface.Values;
        ReadOnlySpan<double> sunK = DirectAttenuation.Values, skyK = SkyAttenuation.Values;
        for (var i = 0; i < irradiance.Length; i++)
            irradiance[i] = (sun[i] * Math.Exp(-sunK[i] * depth)) + (sky[i] * Math.Exp(-skyK[i] * depth));
    }

    private void Downwelling(double depth, Span<double> sunPart, Span<double> skyPart)
    {
        _ = Guard.InRange(depth, 0.0, 1000.0, nameof(depth), "m");
        for (var i = 0; i < sunPart.Length; i++)
        {
            sunPart[i] = DirectBelowSurface[i] * Math.Exp(-DirectAttenuation[i] * depth);
            skyPart[i] = DiffuseBelowSurface[i] * Math.Exp(-SkyAttenuation[i] * depth);
        }
    }

    private static double PhotonFlux(Spectrum irradiance)
    {
        var photons = Spectrum.FromFunction(irradiance.Grid, nm => nm * 1e-9 / (PlanckTimesLightSpeed * Avogadro)) * irradiance;
        return photons.Integral(400.0, 700.0);
    }
}
