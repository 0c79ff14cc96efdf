namespace LureSim.Model;

/// <summary>The diving lip of a hard bait: a plate under the nose.</summary>
/// <param name="Length">Length along the lip (m), 0.002 to 0.08.</param>
/// <param name="Width">Width (m), 0.002 to 0.08.</param>
/// <param name="Angle">Angle between the lip and the body's axis (radians), 5 to 85 degrees: 0 would point straight ahead, pi/2 straight down.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record LipShape(double Length, double Width, double Angle)
{
    /// <summary>Length along the lip (m), 0.002 to 0.08.</summary>
    public double Length { get; init => field = Limits.LipSide.Check(value); } = Limits.LipSide.Check(Length);

    /// <summary>Width (m), 0.002 to 0.08.</summary>
    public double Width { get; init => field = Limits.LipSide.Check(value); } = Limits.LipSide.Check(Width);

    /// <summary>Angle between the lip and the body's axis (radians), 5 to 85 degrees.</summary>
    public double Angle { get; init => field = Limits.LipAngle.Check(value); } = Limits.LipAngle.Check(Angle);
}
