using LureSim.Model;

namespace LureSim.Light;

/// <summary>The water and the light of a spot from the forms in which a scenario may give them.</summary>
public static class SpotLight
{
    private const double DegreesPerRadian = 180.0 / Math.PI;
    private const double MilligramPerKilogram = 1e6;
    private const double GramPerKilogram = 1e3;

    /// <summary>The spot's water, by Secchi depth and kind, Jerlov type or constituents.</summary>
    /// <param name="spot">The spot; its temperature and salinity count except for a Jerlov type, whose table is for the sea.</param>
    /// <returns>The water; see <see cref="OpticalWater.Status"/> where a Secchi depth could not be reached.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <example><code>
    /// using LureSim.Light;
    /// using LureSim.Model;
    /// var spot = new Spot { Depth = 4, Salinity = 30, TemperatureCelsius = 20, Clarity = new SecchiClarity(2, WaterKind.CoastalGreen), Sky = new SkyByElevation(0.8), StrikeZone = new StrikeZone(2, 4), TargetFish = "red drum" };
    /// OpticalWater water = SpotLight.Water(spot);
    /// Console.WriteLine(water.Status);
    /// </code></example>
    public static OpticalWater Water(Spot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        return spot.Clarity switch
        {
            SecchiClarity secchi => OpticalWater.FromSecchi(secchi.Kind, secchi.Depth, spot.TemperatureCelsius, spot.Salinity),
            JerlovClarity jerlov => OpticalWater.FromJerlov(jerlov.Type),
            ConstituentClarity found => OpticalWater.FromConstituents(
                new WaterConstituents(found.Chlorophyll * MilligramPerKilogram, found.Dissolved440, found.Mineral * GramPerKilogram),
                spot.TemperatureCelsius,
                spot.Salinity),
            _ => throw new ArgumentOutOfRangeException(nameof(spot), spot.Clarity, "Unknown form of clarity."),
        };
    }

    /// <summary>Sun, sky and moon on the spot's water; in the shade of a structure (<see cref="Spot.ShadedSky"/>) its share of the sky alone.</summary>
    /// <param name="spot">The spot.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SurfaceLight Surface(Spot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        SurfaceLight open = spot.Sky switch
        {
            SkyByElevation sun => Atmosphere.Illuminate(sun.SunElevation * DegreesPerRadian, spot.CloudCover),
            SkyByClock clock => Atmosphere.Illuminate(clock.Time, clock.Latitude * DegreesPerRadian, clock.Longitude * DegreesPerRadian, spot.CloudCover),
            _ => throw new ArgumentOutOfRangeException(nameof(spot), spot.Sky, "Unknown form of light."),
        };

        // In the shade the direct beam is off and part of the sky is on.
        return spot.ShadedSky is { } sky ? new SurfaceLight(0 * open.Direct, sky * open.Diffuse, open.ZenithAngle, open.Regime, open.ByMoon) : open;
    }

    /// <summary>Elevation of the sun over the spot with refraction (degrees), -90 to 90; negative below the horizon.</summary>
    /// <param name="spot">The spot.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double SunElevationDegrees(Spot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        return spot.Sky switch
        {
            SkyByElevation sun => sun.SunElevation * DegreesPerRadian,
            SkyByClock clock => Ephemeris.Sun(clock.Time, clock.Latitude * DegreesPerRadian, clock.Longitude * DegreesPerRadian).ElevationDegrees,
            _ => throw new ArgumentOutOfRangeException(nameof(spot), spot.Sky, "Unknown form of light."),
        };
    }

    /// <summary>The moon over the spot; null where the scenario gives no moment.</summary>
    /// <param name="spot">The spot.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static MoonPosition? Moon(Spot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        return spot.Sky is SkyByClock clock
            ? Ephemeris.Moon(clock.Time, clock.Latitude * DegreesPerRadian, clock.Longitude * DegreesPerRadian)
            : null;
    }
}
