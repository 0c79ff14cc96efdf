namespace LureSim.Model;

/// <summary>Where the light comes from, in one of the forms below; there are no others.</summary>
public abstract record SkySetting
{
    private protected SkySetting()
    {
    }
}

/// <summary>The sun at a stated height.</summary>
/// <param name="SunElevation">Elevation of the sun above the horizon (radians), 0 to pi/2.</param>
public sealed record SkyByElevation(double SunElevation) : SkySetting;

/// <summary>Sun and moon as they stand at a moment over a place.</summary>
/// <param name="Time">The moment, 1951 to 2049; its offset from UTC is that of the local clock, a multiple of a quarter of an hour.</param>
/// <param name="Latitude">Latitude (radians), north positive, -pi/2 to pi/2.</param>
/// <param name="Longitude">Longitude (radians), east positive, -pi to pi.</param>
public sealed record SkyByClock(DateTimeOffset Time, double Latitude, double Longitude) : SkySetting;
