namespace LureSim.Light;

/// <summary>Diffuse attenuation of downwelling irradiance, Kd (1/m), from inherent optics and the sun's angle.</summary>
public static class DiffuseAttenuation
{
    /// <summary>Zenith angle of a sun whose light has the mean direction, in the water, of light from a uniform sky; degrees in air.</summary>
    public static double DiffuseSkyZenithDegrees { get; } =
        Math.Asin(WaterSurface.RefractiveIndex * Math.Sin(Math.Acos(WaterSurface.DiffuseMeanCosine))) * 180.0 / Math.PI;

    /// <summary>Lee, Du and Arnone 2005 (lee2005model): Kd = (1 + 0.005 theta) a + 4.18 (1 - 0.52 exp(-10.8 a)) b_b.</summary>
    /// <param name="absorption">a (1/m), 0 or more.</param>
    /// <param name="backscattering">b_b (1/m), 0 or more.</param>
    /// <param name="zenithDegrees">theta, zenith angle of the sun above the water (degrees), 0-90 (fitted to about 70).</param>
    public static double Lee2005(double absorption, double backscattering, double zenithDegrees) =>
        ((1.0 + (0.005 * zenithDegrees)) * absorption)
        + (4.18 * (1.0 - (0.52 * Math.Exp(-10.8 * absorption))) * backscattering);

    /// <summary>
    /// Lee et al. 2013 (lee2013penetration): Kd = (1 + 0.005 theta) a + (1 - 0.265 b_bw/b_b) 4.259 (1 - 0.52 exp(-10.8 a)) b_b,
    /// the form that tells molecular from particle scattering.
    /// </summary>
    /// <param name="absorption">a (1/m), 0 or more.</param>
    /// <param name="backscattering">b_b (1/m), above 0.</param>
    /// <param name="waterBackscattering">b_bw (1/m), 0 to b_b.</param>
    /// <param name="zenithDegrees">theta, zenith angle of the sun above the water (degrees), 0-90 (fitted to about 70).</param>
    public static double Lee2013(double absorption, double backscattering, double waterBackscattering, double zenithDegrees) =>
        ((1.0 + (0.005 * zenithDegrees)) * absorption)
        + (4.259 * (1.0 - (0.52 * Math.Exp(-10.8 * absorption))) * (backscattering - (0.265 * waterBackscattering)));

    /// <summary>The spectrum of Kd by <see cref="Lee2013"/> (1/m).</summary>
    /// <param name="optics">Inherent optics of the water.</param>
    /// <param name="zenithDegrees">Zenith angle of the sun above the water (degrees), 0-90.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is outside its range.</exception>
    public static Spectrum OfSpectrum(InherentOptics optics, double zenithDegrees)
    {
        ArgumentNullException.ThrowIfNull(optics);
        _ = Guard.InRange(zenithDegrees, 0.0, 90.0, nameof(zenithDegrees), "degrees");
        double[] values = new double[optics.Absorption.Grid.Count];
        for (int i = 0; i < values.Length; i++)
            values[i] = Lee2013(optics.Absorption[i], optics.Backscattering[i], optics.WaterBackscattering[i], zenithDegrees);
        return new Spectrum(optics.Absorption.Grid, values);
    }
}
