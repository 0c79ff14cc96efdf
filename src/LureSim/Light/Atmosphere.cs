using LureSim.Data;

namespace LureSim.Light;

/// <summary>Sun and sky spectrum on the water by elevation of the sun and cloud.</summary>
/// <remarks>
/// The direct beam is the extraterrestrial spectrum of ASTM G173-03 (astmg173) attenuated by the optical depth that the
/// same standard implies at air mass 1.5, scaled with air mass by Beer's law (exact for scattering; the narrow oxygen and
/// water bands beyond 680 nm would follow a weaker law, an error of some per cent at 690-780 nm when the sun is low). What
/// remains of that optical depth after Rayleigh and aerosol is gas absorption. The diffuse part follows Bird and Riordan
/// 1986 (bird1986simple) with the standard's aerosol (0.084 at 500 nm). Cloud follows Kasten and Czeplak 1980
/// (kasten1980solar), spectrally neutral. Below 10 degrees the level passes over to the illuminance curve of Janiczek and
/// DeYoung 1987 (janiczek1987computer), good to some tens of per cent; from 10 to 5 degrees both are blended.
/// </remarks>
public static class Atmosphere
{
    private const double AerosolDepthAt500 = 0.084; // ASTM G173-03, rural aerosol
    private const double AngstromExponent = 1.14;   // rural aerosol, Bird and Riordan 1986
    private const double AerosolAsymmetry = 0.65;   // mean cosine, rural aerosol, Bird and Riordan 1986
    private const double BlendTopDegrees = 10.0;
    private const double BlendBottomDegrees = 5.0;
    private const double LowestShapeDegrees = 5.0;  // the single-scattering, plane-parallel sky model has no meaning closer to the horizon
    private const double NightSkyIlluminance = 5e-4; // lx, moonless clear sky, Janiczek and DeYoung 1987
    private const double StandardAirMass = 1.5;

    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;
    private static readonly Spectrum Extraterrestrial = ReferenceTable.Optics("solar_astm_g173").OnGrid(Grid, "extraterrestrial");

    private static readonly Spectrum RayleighDepth = Spectrum.FromFunction(Grid, nm =>
    {
        double um2 = nm * nm * 1e-6;
        return 1.0 / ((115.6406 * um2 * um2) - (1.335 * um2));
    });

    private static readonly Spectrum AerosolDepth =
        Spectrum.FromFunction(Grid, nm => AerosolDepthAt500 * Math.Pow(nm / 500.0, -AngstromExponent));

    private static readonly Spectrum GasDepth =
        ReferenceTable.Optics("solar_astm_g173").OnGrid(Grid, "direct_circumsolar")
            .Combine(Extraterrestrial, (direct, top) => -Math.Log(direct / top) / StandardAirMass)
            .Combine(RayleighDepth + AerosolDepth, (total, scattered) => Math.Max(0.0, total - scattered));

    /// <summary>Relative optical air mass, Kasten and Young 1989 (kasten1989revised).</summary>
    /// <param name="elevationDegrees">Elevation of the sun (degrees), 0-90.</param>
    /// <exception cref="ArgumentOutOfRangeException">The elevation is outside 0-90 degrees.</exception>
    public static double AirMass(double elevationDegrees)
    {
        _ = Guard.InRange(elevationDegrees, 0.0, 90.0, nameof(elevationDegrees), "degrees");
        return 1.0 / (Math.Sin(elevationDegrees * Math.PI / 180.0) + (0.50572 * Math.Pow(elevationDegrees + 6.07995, -1.6364)));
    }

    /// <summary>Illuminance of a clear sky with sun on the horizontal (lx), Janiczek and DeYoung 1987: log10 E is a cubic in elevation/90.</summary>
    /// <param name="elevationDegrees">Elevation of the sun (degrees), -90 to 90; below -18 the night sky alone remains.</param>
    /// <exception cref="ArgumentOutOfRangeException">The elevation is outside -90 to 90 degrees.</exception>
    public static double SunIlluminance(double elevationDegrees)
    {
        _ = Guard.InRange(elevationDegrees, -90.0, 90.0, nameof(elevationDegrees), "degrees");
        double x = elevationDegrees / 90.0;
        return elevationDegrees switch
        {
            >= 20.0 => Cubic(x, 3.74, 3.97, -4.07, 1.47),
            >= 5.0 => Cubic(x, 3.05, 13.28, -45.98, 64.33),
            >= -0.8 => Cubic(x, 2.88, 22.26, -207.64, 1034.30),
            >= -5.0 => Cubic(x, 2.88, 21.81, -258.11, -858.36),
            >= -12.0 => Cubic(x, 2.70, 12.17, -431.69, -1899.83),
            >= -18.0 => Math.Max(NightSkyIlluminance, Cubic(x, 13.84, 262.72, 1447.42, 2797.93)),
            _ => NightSkyIlluminance,
        };
    }

    /// <summary>Factor by which cloud lowers the global irradiance, 1 - 0.75 n^3.4 (Kasten and Czeplak 1980).</summary>
    /// <param name="cloudFraction">Share of the sky covered, 0-1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fraction is outside 0-1.</exception>
    public static double CloudFactor(double cloudFraction) =>
        1.0 - (0.75 * Math.Pow(Guard.InRange(cloudFraction, 0.0, 1.0, nameof(cloudFraction), "of the sky"), 3.4));

    /// <summary>Sun and sky on the water.</summary>
    /// <param name="sunElevationDegrees">Elevation of the sun (degrees), -90 to 90.</param>
    /// <param name="cloudFraction">Share of the sky covered, 0-1.</param>
    /// <returns>Direct and diffuse irradiance just above the water with the regime.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SurfaceLight Illuminate(double sunElevationDegrees, double cloudFraction = 0.0)
    {
        _ = Guard.InRange(sunElevationDegrees, -90.0, 90.0, nameof(sunElevationDegrees), "degrees");
        (Spectrum direct, Spectrum diffuse) = ClearSky(Math.Max(sunElevationDegrees, LowestShapeDegrees));
        if (sunElevationDegrees <= 0.0)
            direct = Spectrum.Constant(Grid, 0.0);

        double modelled = Colorimetry.MaximumLuminousEfficacy * (direct + diffuse).Dot(Colorimetry.YBar);
        double published = SunIlluminance(sunElevationDegrees);
        double share = Math.Clamp((sunElevationDegrees - BlendBottomDegrees) / (BlendTopDegrees - BlendBottomDegrees), 0.0, 1.0);
        double scale = Math.Pow(published / modelled, 1.0 - share);
        (direct, diffuse) = (scale * direct, scale * diffuse);

        // The disc is seen through the gaps, 1 - n; the rest of the reduced global irradiance comes from sky and cloud. Thin
        // broken cloud can leave more sun than the reduced total: then the sky keeps at least its clear share of the gaps.
        Spectrum total = CloudFactor(cloudFraction) * (direct + diffuse);
        Spectrum seen = (1.0 - cloudFraction) * direct;
        Spectrum sky = total.Combine(seen, (all, sun) => Math.Max(0.0, all - sun));

        LightRegime regime = sunElevationDegrees switch
        {
            >= BlendTopDegrees => LightRegime.Day,
            > 0.0 => LightRegime.LowSun,
            >= -18.0 => LightRegime.Twilight,
            _ => LightRegime.Night,
        };
        double zenith = (90.0 - Math.Max(0.0, sunElevationDegrees)) * Math.PI / 180.0;
        return new SurfaceLight(seen, sky, zenith, regime, false);
    }

    /// <summary>Sun, sky and moon on the water at a date, time and place.</summary>
    /// <param name="time">Moment; its offset makes local time unambiguous.</param>
    /// <param name="latitudeDegrees">Latitude, north positive (degrees), -90 to 90.</param>
    /// <param name="longitudeDegrees">Longitude, east positive (degrees), -180 to 180.</param>
    /// <param name="cloudFraction">Share of the sky covered, 0-1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SurfaceLight Illuminate(DateTimeOffset time, double latitudeDegrees, double longitudeDegrees, double cloudFraction = 0.0)
    {
        SkyPosition sun = Ephemeris.Sun(time, latitudeDegrees, longitudeDegrees);
        SurfaceLight bySun = Illuminate(sun.ElevationDegrees, cloudFraction);
        MoonPosition moon = Ephemeris.Moon(time, latitudeDegrees, longitudeDegrees);

        // The moon adds less than a thousandth until the sun is 8 degrees below the horizon.
        return sun.ElevationDegrees > -8.0 || moon.ElevationDegrees <= 0.0 ? bySun : AddMoon(bySun, moon, cloudFraction);
    }

    /// <summary>Illuminance of the moon on the horizontal under a clear sky (lx), Janiczek and DeYoung 1987.</summary>
    /// <param name="moon">Where the moon stands.</param>
    /// <returns>Illuminance; 0 when the moon is below the horizon.</returns>
    public static double MoonIlluminance(MoonPosition moon)
    {
        double elevation = moon.ElevationDegrees;
        if (elevation < -0.8)
            return 0.0;
        double x = elevation / 90.0;
        double full = elevation switch
        {
            >= 20.0 => Cubic(x, -1.95, 4.06, -4.24, 1.56),
            >= 5.0 => Cubic(x, -2.58, 12.58, -42.58, 59.06),
            _ => Cubic(x, -2.79, 24.27, -252.95, 1321.29),
        };
        double phase = moon.PhaseAngleDegrees;
        double nearness = moon.ParallaxDegrees / 0.951;
        return full * Math.Pow(10.0, (-0.00868 * phase) - (2.2e-9 * Math.Pow(phase, 4))) * nearness * nearness;
    }

    private static SurfaceLight AddMoon(SurfaceLight night, MoonPosition moon, double cloudFraction)
    {
        (Spectrum direct, Spectrum diffuse) = ClearSky(Math.Max(moon.ElevationDegrees, LowestShapeDegrees));

        // The moon reflects red better than blue: a rise of a third from 450 to 650 nm (from memory, order of magnitude).
        Spectrum tint = Spectrum.FromFunction(Grid, nm => 1.0 + (0.0015 * (nm - 550.0)));
        (direct, diffuse) = (tint * direct, tint * diffuse);
        double scale = MoonIlluminance(moon) / (Colorimetry.MaximumLuminousEfficacy * (direct + diffuse).Dot(Colorimetry.YBar));
        Spectrum total = CloudFactor(cloudFraction) * scale * (direct + diffuse);
        Spectrum seen = (1.0 - cloudFraction) * scale * direct;
        Spectrum sky = total.Combine(seen, (all, disc) => Math.Max(0.0, all - disc));
        return new SurfaceLight(
            seen,
            sky + night.Total,
            (90.0 - moon.ElevationDegrees) * Math.PI / 180.0,
            night.Regime,
            true);
    }

    /// <summary>Clear-sky direct and diffuse irradiance on the horizontal (W/(m2 nm)).</summary>
    /// <param name="elevationDegrees">Elevation of the sun (degrees), 0-90.</param>
    internal static (Spectrum Direct, Spectrum Diffuse) ClearSky(double elevationDegrees)
    {
        double airMass = AirMass(elevationDegrees);
        double sine = Math.Sin(elevationDegrees * Math.PI / 180.0);

        // Forward share of aerosol scattering, Bird and Riordan 1986 eq. 3-12 to 3-15.
        double b = Math.Log(1.0 - AerosolAsymmetry);
        double b1 = b * (1.459 + (b * (0.1595 + (b * 0.4129))));
        double b2 = b * (0.0783 + (b * (-0.3824 - (b * 0.5874))));
        double forward = 1.0 - (0.5 * Math.Exp((b1 + (b2 * sine)) * sine));

        double[] direct = new double[Grid.Count], diffuse = new double[Grid.Count];
        for (int i = 0; i < Grid.Count; i++)
        {
            double um = Grid.WavelengthsNm[i] * 1e-3;
            double logRatio = Math.Log(um / 0.4);
            double albedo = 0.945 * Math.Exp(-0.095 * logRatio * logRatio); // single-scattering albedo of the aerosol
            double rayleigh = Math.Exp(-RayleighDepth[i] * airMass);
            double aerosolScattered = Math.Exp(-albedo * AerosolDepth[i] * airMass);
            double aerosolAbsorbed = Math.Exp(-(1.0 - albedo) * AerosolDepth[i] * airMass);
            double onTop = Extraterrestrial[i] * sine * Math.Exp(-GasDepth[i] * airMass) * aerosolAbsorbed;
            double shortWave = um <= 0.45 ? Math.Pow(um + 0.55, 1.8) : 1.0;
            direct[i] = onTop * rayleigh * aerosolScattered;
            diffuse[i] = shortWave * onTop *
                ((0.5 * (1.0 - Math.Pow(rayleigh, 0.95))) + (Math.Pow(rayleigh, 1.5) * (1.0 - aerosolScattered) * forward));
        }

        return (new Spectrum(Grid, direct), new Spectrum(Grid, diffuse));
    }

    private static double Cubic(double x, double l0, double l1, double l2, double l3) =>
        Math.Pow(10.0, l0 + (x * (l1 + (x * (l2 + (x * l3))))));
}
