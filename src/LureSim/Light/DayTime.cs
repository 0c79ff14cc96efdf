namespace LureSim.Light;

/// <summary>A time of the day in a word.</summary>
public enum DayTime
{
    /// <summary>The sun comes up: it stands 3 degrees below the horizon.</summary>
    Dawn,

    /// <summary>Halfway from sunrise to noon.</summary>
    Morning,

    /// <summary>The sun is highest.</summary>
    Midday,

    /// <summary>Halfway from noon to sunset.</summary>
    Afternoon,

    /// <summary>The sun is gone: it stands 3 degrees below the horizon.</summary>
    Dusk,

    /// <summary>The sun is lowest.</summary>
    Night,
}

/// <summary>Times of the day by the sun of a place.</summary>
public static class DayTimes
{
    private const double Twilight = -3;
    private const int Day = 24 * 60;

    /// <summary>The minute of a day in local time at which a time of the day falls.</summary>
    /// <param name="word">The time of the day.</param>
    /// <param name="midnight">Midnight by the local clock at the beginning of the day.</param>
    /// <param name="latitudeDegrees">Latitude (degrees), -90 to 90.</param>
    /// <param name="longitudeDegrees">Longitude (degrees), -180 to 180.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such word, or a value is outside its range.</exception>
    public static int Minute(DayTime word, DateTimeOffset midnight, double latitudeDegrees, double longitudeDegrees)
    {
        Guard.Defined(word);
        double[] sun = [.. Enumerable.Range(0, Day).Select(minute => Ephemeris.Sun(midnight.AddMinutes(minute), latitudeDegrees, longitudeDegrees).ElevationDegrees)];
        int noon = Array.IndexOf(sun, sun.Max()), night = Array.IndexOf(sun, sun.Min());
        int rise = Last(noon, -1, 0), set = Last(noon, 1, 0);
        return word switch
        {
            DayTime.Dawn => Last(noon, -1, Twilight),
            DayTime.Morning => (rise + noon) / 2,
            DayTime.Midday => noon,
            DayTime.Afternoon => (noon + set) / 2,
            DayTime.Dusk => Last(noon, 1, Twilight),
            DayTime.Night => night,
            _ => throw new ArgumentOutOfRangeException(nameof(word), word, "Not a time of day."),
        };

        // The last minute on the way from noon at which the sun is above a height; the end of the day where it does not go down.
        int Last(int from, int step, double height)
        {
            int at = from;
            while (at + step >= 0 && at + step < Day && sun[at + step] > height) at += step;
            return at;
        }
    }
}
