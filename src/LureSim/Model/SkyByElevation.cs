namespace LureSim.Model;

/// <summary>The sun at a stated height.</summary>
/// <param name="SunElevation">Elevation of the sun above the horizon (radians), -pi/2 to pi/2; negative below the horizon, without a moon.</param>
/// <exception cref="ArgumentOutOfRangeException">The elevation is outside its range.</exception>
public sealed record SkyByElevation(double SunElevation) : SkySetting
{
    /// <summary>Elevation of the sun above the horizon (radians), -pi/2 to pi/2; negative below the horizon, without a moon.</summary>
    public double SunElevation { get; init => field = Limits.SunElevation.Check(value); } = Limits.SunElevation.Check(SunElevation);
}
