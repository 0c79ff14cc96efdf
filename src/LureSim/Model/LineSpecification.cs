namespace LureSim.Model;

/// <summary>Material of a line.</summary>
public enum LineKind
{
    /// <summary>Braided polyethylene.</summary>
    Braid,

    /// <summary>Nylon monofilament.</summary>
    Monofilament,

    /// <summary>Fluorocarbon (PVDF) monofilament.</summary>
    Fluorocarbon,
}

/// <summary>The main line.</summary>
/// <param name="Kind">Material.</param>
/// <param name="Strength">Nominal breaking force (N), 4.448 to 445.</param>
/// <param name="Diameter">Diameter (m), 0.00003 to 0.0015; from the table of nominal strengths when the scenario does not give it.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record LineSpecification(LineKind Kind, double Strength, double Diameter)
{
    /// <summary>Material.</summary>
    public LineKind Kind { get; init => field = Guard.Defined(value); } = Guard.Defined(Kind);

    /// <summary>Nominal breaking force (N), 4.448 to 445.</summary>
    public double Strength { get; init => field = Limits.LineStrength.Check(value); } = Limits.LineStrength.Check(Strength);

    /// <summary>Diameter (m), 0.00003 to 0.0015.</summary>
    public double Diameter { get; init => field = Limits.LineDiameter.Check(value); } = Limits.LineDiameter.Check(Diameter);
}
