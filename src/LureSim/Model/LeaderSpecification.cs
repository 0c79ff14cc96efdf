namespace LureSim.Model;

/// <summary>The leader.</summary>
/// <param name="Kind">Material.</param>
/// <param name="Strength">Nominal breaking force (N), 4.448 to 445.</param>
/// <param name="Diameter">Diameter (m), 0.00003 to 0.0015.</param>
/// <param name="Length">Length (m), 0.05 to 5.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record LeaderSpecification(LineKind Kind, double Strength, double Diameter, double Length)
{
    /// <summary>Material.</summary>
    public LineKind Kind { get; init => field = Guard.Defined(value); } = Guard.Defined(Kind);

    /// <summary>Nominal breaking force (N), 4.448 to 445.</summary>
    public double Strength { get; init => field = Limits.LineStrength.Check(value); } = Limits.LineStrength.Check(Strength);

    /// <summary>Diameter (m), 0.00003 to 0.0015.</summary>
    public double Diameter { get; init => field = Limits.LineDiameter.Check(value); } = Limits.LineDiameter.Check(Diameter);

    /// <summary>Length (m), 0.05 to 5.</summary>
    public double Length { get; init => field = Limits.LeaderLength.Check(value); } = Limits.LeaderLength.Check(Length);
}
