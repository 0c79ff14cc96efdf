using LureSim.Light;

namespace LureSim.Validation.Light;

/// <summary>Sun, sky and moon against published positions and levels.</summary>
public class SkyTests
{
    [Fact]
    public void Sun_stands_where_the_solar_position_algorithm_puts_it()
    {
        // Worked example of Reda and Andreas 2004 (NREL SPA): 17 October 2003, 12:30:30 at UTC-7, 39.742476 N, 105.1786 W:
        // topocentric zenith 50.11162, azimuth 194.34024 degrees (820 mbar; sea-level refraction differs by 0.004 degrees).
        var sun = Ephemeris.Sun(new DateTimeOffset(2003, 10, 17, 12, 30, 30, TimeSpan.FromHours(-7)), 39.742476, -105.1786);
        ValidationLog.Absolute(CheckClass.Measured, "Light: sun and sky", "elevation of the sun", "Reda & Andreas 2004, worked example", 90.0 - 50.11162, sun.ElevationDegrees, 0.015, "deg");
        ValidationLog.Absolute(CheckClass.Measured, "Light: sun and sky", "bearing of the sun", "Reda & Andreas 2004, worked example", 194.34024, sun.AzimuthDegrees, 0.015, "deg");
    }

    [Fact]
    public void Moon_stands_where_Meeus_puts_it()
    {
        // Meeus, Astronomical Algorithms, example 47.a: 1992 April 12, 0 h: longitude 133.1627, latitude -3.2291, parallax
        // 0.99199 degrees. The low-precision formulae claim 0.3, 0.2 and 0.003 degrees.
        var (longitude, latitude, parallax) = Ephemeris.MoonEcliptic((new DateTime(1992, 4, 12) - new DateTime(2000, 1, 1, 12, 0, 0)).TotalDays);
        double degrees = longitude * 180.0 / Math.PI % 360.0;
        ValidationLog.Absolute(CheckClass.Measured, "Light: sun and sky", "longitude of the moon", "Meeus, example 47.a", 133.1627, degrees < 0.0 ? degrees + 360.0 : degrees, 0.3, "deg");
        ValidationLog.Absolute(CheckClass.Measured, "Light: sun and sky", "latitude of the moon", "Meeus, example 47.a", -3.2291, latitude * 180.0 / Math.PI, 0.2, "deg");
        ValidationLog.Absolute(CheckClass.Measured, "Light: sun and sky", "parallax of the moon", "Meeus, example 47.a", 0.99199, parallax, 0.003, "deg");
    }

    [Fact]
    public void A_known_full_moon_is_full_and_lights_as_much_as_published()
    {
        // Full moon of 2022 December 8, 04:08 UTC; full moon at the zenith gives about 0.27 lx at mean distance (Janiczek and DeYoung 1987).
        var moon = Ephemeris.Moon(new DateTimeOffset(2022, 12, 8, 4, 8, 0, TimeSpan.Zero), 28.0, -82.0);
        Assert.True(moon.PhaseAngleDegrees < 5.0);
        Assert.True(moon.LitShare > 0.99);
        ValidationLog.Absolute(CheckClass.Measured, "Light: sun and sky", "full moon at the zenith", "Janiczek & DeYoung 1987", 0.27, Atmosphere.MoonIlluminance(new MoonPosition(90.0, 0.0, 0.951)), 0.005, "lx");
    }

    [Fact]
    public void Standard_sun_is_the_one_of_ASTM_G173()
    {
        // At air mass 1.5 the direct beam must be the standard's: 374.8 W/m2 from 400 to 700 nm on a surface across the beam.
        double elevation = 41.8;
        var (direct, diffuse) = Atmosphere.ClearSky(elevation);
        double sine = Math.Sin(elevation * Math.PI / 180.0);
        ValidationLog.Absolute(CheckClass.Identity, "Light: sun and sky", "direct sun, 400 to 700 nm, air mass 1.5 (by construction but for the air mass)", "ASTM G173-03", 374.8, direct.Integral(400.0, 700.0) / sine, 2.0, "W/m2");

        // The standard's global irradiance on a 37 degree tilt holds 429.8; its sky part on that tilt, 429.8 - 374.8 cos 11.2 = 62,
        // includes light from the ground. The sky of the model on the horizontal must be near it.
        ValidationLog.Between(CheckClass.Measured, "Light: sun and sky", "sky, 400 to 700 nm, on the horizontal", "ASTM G173-03: 62 on a tilt of 37 degrees, ground included", 42.0, 68.0, diffuse.Integral(400.0, 700.0), "W/m2");
    }

    [Theory]
    [InlineData(0.0, 759.0)]
    [InlineData(-6.0, 3.4)]
    [InlineData(-12.0, 0.0083)]
    public void Twilight_levels_are_those_published(double elevation, double expected) =>
        // Sunset, end of civil and of nautical twilight: Janiczek and DeYoung 1987 (Explanatory Supplement to the Astronomical Almanac).
        ValidationLog.Relative(CheckClass.SameEquations, "Light: sun and sky", FormattableString.Invariant($"illuminance, sun at {elevation:0} deg"), "Janiczek & DeYoung 1987, the curves in use", expected, Atmosphere.Illuminate(elevation).Illuminance, 0.05, "lx");
}
