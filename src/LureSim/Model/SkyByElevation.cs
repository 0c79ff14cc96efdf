namespace LureSim.Model;

/// <summary>The sun at a stated height.</summary>
/// <param name="SunElevation">Elevation of the sun above the horizon (radians), 0 to pi/2.</param>
/// <exception cref="ArgumentOutOfRangeException">The elevation is outside its range.</exception>
public sealed record SkyByElevation(double SunElevation) : SkySetting
{
    /// <summary>Elevation of the sun above the horizon (radians), 0 to pi/2.</summary>
    public double SunElevation { get; init => field = Limits.SunElevation.Check(value); } = Limits.SunElevation.Check(SunElevation);
}
