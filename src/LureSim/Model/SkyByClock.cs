using System.Runtime.CompilerServices;

namespace LureSim.Model;

/// <summary>Sun and moon as they stand at a moment over a place.</summary>
/// <param name="Time">The moment, 1951 to 2049; its offset from UTC is that of the local clock, a multiple of a quarter of an hour.</param>
/// <param name="Latitude">Latitude (radians), north positive, -pi/2 to pi/2.</param>
/// <param name="Longitude">Longitude (radians), east positive, -pi to pi.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record SkyByClock(DateTimeOffset Time, double Latitude, double Longitude) : SkySetting
{
    /// <summary>The moment, 1951 to 2049 by the local calendar.</summary>
    public DateTimeOffset Time { get; init => field = Covered(value); } = Covered(Time);

    /// <summary>Latitude (radians), north positive, -pi/2 to pi/2.</summary>
    public double Latitude { get; init => field = Limits.Latitude.Check(value); } = Limits.Latitude.Check(Latitude);

    /// <summary>Longitude (radians), east positive, -pi to pi.</summary>
    public double Longitude { get; init => field = Limits.Longitude.Check(value); } = Limits.Longitude.Check(Longitude);

    private static DateTimeOffset Covered(DateTimeOffset time, [CallerMemberName] string name = "")
    {
        var day = DateOnly.FromDateTime(time.DateTime);
        return day >= Limits.FirstDay && day <= Limits.LastDay
            ? time
            : throw new ArgumentOutOfRangeException(name, time, "Sun and moon are computed for 1951 to 2049.");
    }
}
