namespace LureSim.Light;

/// <summary>Where a light in the sky stands.</summary>
/// <param name="ElevationDegrees">Elevation above the horizon with refraction (degrees).</param>
/// <param name="AzimuthDegrees">Bearing from north through east (degrees), 0-360.</param>
public readonly record struct SkyPosition(double ElevationDegrees, double AzimuthDegrees);

/// <summary>Where the moon stands and how much of it is lit.</summary>
/// <param name="ElevationDegrees">Elevation above the horizon with parallax (degrees).</param>
/// <param name="PhaseAngleDegrees">Angle sun-moon-earth (degrees): 0 full, 180 new.</param>
/// <param name="ParallaxDegrees">Horizontal parallax (degrees), a measure of its nearness.</param>
public readonly record struct MoonPosition(double ElevationDegrees, double PhaseAngleDegrees, double ParallaxDegrees)
{
    /// <summary>Lit share of the disc, 0-1.</summary>
    public double LitShare => 0.5 * (1.0 + Math.Cos(PhaseAngleDegrees * Math.PI / 180.0));
}

/// <summary>Sun and moon by date, time and place.</summary>
public static class Ephemeris
{
    private const double Degree = Math.PI / 180.0;

    /// <summary>Position of the sun by Michalsky 1988 (michalsky1988astronomical), good to 0.01 degrees from 1950 to 2050.</summary>
    /// <param name="time">Moment; its offset makes local time unambiguous.</param>
    /// <param name="latitudeDegrees">Latitude, north positive (degrees), -90 to 90.</param>
    /// <param name="longitudeDegrees">Longitude, east positive (degrees), -180 to 180.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or the year is not 1950-2050.</exception>
    public static SkyPosition Sun(DateTimeOffset time, double latitudeDegrees, double longitudeDegrees)
    {
        double days = DaysSince2000(time, latitudeDegrees, longitudeDegrees);
        (double rightAscension, double declination, _) = SunEquatorial(days);
        (double elevation, double azimuth) = Horizontal(days, rightAscension, declination, latitudeDegrees, longitudeDegrees);
        return new SkyPosition(elevation + Refraction(elevation), azimuth);
    }

    /// <summary>Position of the moon by the low-precision formulae of the Astronomical Almanac (almanac), good to about 0.3 degrees.</summary>
    /// <param name="time">Moment; its offset makes local time unambiguous.</param>
    /// <param name="latitudeDegrees">Latitude, north positive (degrees), -90 to 90.</param>
    /// <param name="longitudeDegrees">Longitude, east positive (degrees), -180 to 180.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or the year is not 1950-2050.</exception>
    public static MoonPosition Moon(DateTimeOffset time, double latitudeDegrees, double longitudeDegrees)
    {
        double days = DaysSince2000(time, latitudeDegrees, longitudeDegrees);
        (double longitude, double latitude, double parallax) = MoonEcliptic(days);
        (_, _, double sunLongitude) = SunEquatorial(days);
        double obliquity = Obliquity(days);
        double sinLatitude = Math.Sin(latitude), cosLatitude = Math.Cos(latitude);
        double rightAscension = Math.Atan2(
            (Math.Sin(longitude) * cosLatitude * Math.Cos(obliquity)) - (sinLatitude * Math.Sin(obliquity)),
            Math.Cos(longitude) * cosLatitude);
        double declination = Math.Asin((sinLatitude * Math.Cos(obliquity)) + (cosLatitude * Math.Sin(obliquity) * Math.Sin(longitude)));
        (double elevation, _) = Horizontal(days, rightAscension, declination, latitudeDegrees, longitudeDegrees);
        double topocentric = elevation - (parallax * Math.Cos(elevation * Degree));

        // The sun is 390 times as far as the moon: the phase angle is 180 degrees less the elongation to 0.15 degrees.
        double elongation = Math.Acos(cosLatitude * Math.Cos(longitude - sunLongitude));
        return new MoonPosition(topocentric + Refraction(topocentric), 180.0 - (elongation / Degree), parallax);
    }

    /// <summary>Ecliptic longitude and latitude of the moon (rad), and its parallax (degrees), by days since noon of 1 January 2000.</summary>
    internal static (double Longitude, double Latitude, double Parallax) MoonEcliptic(double days)
    {
        double t = days / 36525.0;
        double Sin(double at, double rate) => Math.Sin((at + (rate * t)) * Degree);
        double Cos(double at, double rate) => Math.Cos((at + (rate * t)) * Degree);
        double longitude = 218.32 + (481267.881 * t)
            + (6.29 * Sin(135.0, 477198.87)) - (1.27 * Sin(259.3, -413335.36)) + (0.66 * Sin(235.7, 890534.22))
            + (0.21 * Sin(269.9, 954397.74)) - (0.19 * Sin(357.5, 35999.05)) - (0.11 * Sin(186.5, 966404.03));
        double latitude = (5.13 * Sin(93.3, 483202.02)) + (0.28 * Sin(228.2, 960400.89))
            - (0.28 * Sin(318.3, 6003.15)) - (0.17 * Sin(217.6, -407332.21));
        double parallax = 0.9508 + (0.0518 * Cos(135.0, 477198.87)) + (0.0095 * Cos(259.3, -413335.36))
            + (0.0078 * Cos(235.7, 890534.22)) + (0.0028 * Cos(269.9, 954397.74));
        return (longitude * Degree, latitude * Degree, parallax);
    }

    private static double DaysSince2000(DateTimeOffset time, double latitudeDegrees, double longitudeDegrees)
    {
        _ = Guard.InRange(latitudeDegrees, -90.0, 90.0, nameof(latitudeDegrees), "degrees");
        _ = Guard.InRange(longitudeDegrees, -180.0, 180.0, nameof(longitudeDegrees), "degrees");
        _ = Guard.InRange(time.UtcDateTime.Year, 1950, 2050, nameof(time), "(year)");
        return (time.UtcDateTime - new DateTime(2000, 1, 1, 12, 0, 0, DateTimeKind.Utc)).TotalDays;
    }

    private static double Obliquity(double days) => (23.439 - (4e-7 * days)) * Degree;

    private static (double RightAscension, double Declination, double Longitude) SunEquatorial(double days)
    {
        double meanLongitude = 280.460 + (0.9856474 * days);
        double anomaly = (357.528 + (0.9856003 * days)) * Degree;
        double longitude = (meanLongitude + (1.915 * Math.Sin(anomaly)) + (0.020 * Math.Sin(2.0 * anomaly))) * Degree;
        double obliquity = Obliquity(days);
        return (
            Math.Atan2(Math.Cos(obliquity) * Math.Sin(longitude), Math.Cos(longitude)),
            Math.Asin(Math.Sin(obliquity) * Math.Sin(longitude)),
            longitude);
    }

    private static (double Elevation, double Azimuth) Horizontal(
        double days, double rightAscension, double declination, double latitudeDegrees, double longitudeDegrees)
    {
        // Greenwich mean sidereal time by days of universal time: 18.697374558 h + 24.06570982441908 h a day.
        double sidereal = ((18.697374558 + (24.06570982441908 * days)) * 15.0) + longitudeDegrees;
        double hourAngle = (sidereal * Degree) - rightAscension;
        double latitude = latitudeDegrees * Degree;
        double sine = (Math.Sin(declination) * Math.Sin(latitude)) + (Math.Cos(declination) * Math.Cos(latitude) * Math.Cos(hourAngle));
        double azimuth = Math.Atan2(
            -Math.Sin(hourAngle),
            (Math.Tan(declination) * Math.Cos(latitude)) - (Math.Sin(latitude) * Math.Cos(hourAngle)));
        double degrees = azimuth / Degree;
        return (Math.Asin(Math.Clamp(sine, -1.0, 1.0)) / Degree, degrees < 0.0 ? degrees + 360.0 : degrees);
    }

    // Michalsky 1988, standard atmosphere; none below the visible horizon.
    private static double Refraction(double elevation) => elevation <= -0.56
        ? 0.0
        : 3.51561 * (0.1594 + (0.0196 * elevation) + (0.00002 * elevation * elevation))
            / (1.0 + (0.505 * elevation) + (0.0845 * elevation * elevation));
}
