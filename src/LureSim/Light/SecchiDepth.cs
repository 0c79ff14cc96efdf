namespace LureSim.Light;

/// <summary>The depth at which a white disc goes out of sight, from optics.</summary>
public static class SecchiDepth
{
    /// <summary>Zenith angle of the sun for which a stated Secchi depth is taken (degrees).</summary>
    public const double StandardZenithDegrees = 30.0;

    /// <summary>Lee et al. 2015 (lee2015secchi): Z = ln(|0.14 - Rrs|/0.013)/(2.5 Kd), both at the clearest visible wavelength.</summary>
    /// <param name="clearestAttenuation">Kd at the clearest wavelength (1/m), above 0.</param>
    /// <param name="remoteSensingReflectance">Rrs there (1/sr), 0 to 0.127.</param>
    /// <returns>Secchi depth (m); 0 when the water is as bright as the disc.</returns>
    public static double Lee2015(double clearestAttenuation, double remoteSensingReflectance)
    {
        double ratio = Math.Abs(0.14 - remoteSensingReflectance) / 0.013;
        return ratio > 1.0 ? Math.Log(ratio) / (2.5 * clearestAttenuation) : 0.0;
    }

    /// <summary>Secchi depth of a water (m), with the clearest wavelength found between 400 and 700 nm.</summary>
    /// <param name="optics">Inherent optics of the water.</param>
    /// <param name="zenithDegrees">Zenith angle of the sun (degrees), 0-90.</param>
    public static double Of(InherentOptics optics, double zenithDegrees = StandardZenithDegrees)
    {
        Spectrum attenuation = DiffuseAttenuation.OfSpectrum(optics, zenithDegrees);
        int first = attenuation.Grid.NearestIndex(400.0), last = attenuation.Grid.NearestIndex(700.0), clearest = first;
        for (int i = first; i <= last; i++)
        {
            if (attenuation[i] < attenuation[clearest])
                clearest = i;
        }

        return Lee2015(
            attenuation[clearest],
            RemoteSensingReflectance(optics.Absorption[clearest], optics.Backscattering[clearest]));
    }

    /// <summary>Reflectance below the surface (1/sr), nadir radiance over downwelling irradiance, Lee et al. 2002 (lee2002deriving): r = u (0.089 + 0.125 u), u = b_b/(a + b_b).</summary>
    /// <param name="absorption">a (1/m), above 0.</param>
    /// <param name="backscattering">b_b (1/m), 0 or more.</param>
    public static double SubsurfaceReflectance(double absorption, double backscattering)
    {
        double u = backscattering / (absorption + backscattering);
        return u * (0.089 + (0.125 * u));
    }

    /// <summary>Remote-sensing reflectance above the surface (1/sr), Lee et al. 2002: R = 0.52 r/(1 - 1.7 r).</summary>
    /// <param name="absorption">a (1/m), above 0.</param>
    /// <param name="backscattering">b_b (1/m), 0 or more.</param>
    public static double RemoteSensingReflectance(double absorption, double backscattering)
    {
        double below = SubsurfaceReflectance(absorption, backscattering);
        return 0.52 * below / (1.0 - (1.7 * below));
    }
}
