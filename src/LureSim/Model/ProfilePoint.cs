namespace LureSim.Model;

/// <summary>A point of a bottom profile.</summary>
/// <param name="Distance">Horizontal distance from below the rod tip along the profile (m), 0 to 120.</param>
/// <param name="Depth">Depth of the water there (m), 0.2 to 60.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record ProfilePoint(double Distance, double Depth)
{
    /// <summary>Horizontal distance from below the rod tip along the profile (m), 0 to 120.</summary>
    public double Distance { get; init => field = Limits.ProfileDistance.Check(value); } = Limits.ProfileDistance.Check(Distance);

    /// <summary>Depth of the water there (m), 0.2 to 60.</summary>
    public double Depth { get; init => field = Limits.Depth.Check(value); } = Limits.Depth.Check(Depth);
}
