namespace LureSim.Model;

/// <summary>Clarity by what was measured in the water.</summary>
/// <param name="Chlorophyll">Chlorophyll a (kg/m3), 0 to 3e-4.</param>
/// <param name="Dissolved440">Absorption of the coloured dissolved matter at 440 nm (1/m), 0 to 50.</param>
/// <param name="Mineral">Suspended mineral (kg/m3), 0 to 2.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record ConstituentClarity(double Chlorophyll, double Dissolved440, double Mineral) : WaterClarity
{
    /// <summary>Chlorophyll a (kg/m3), 0 to 3e-4.</summary>
    public double Chlorophyll { get; init => field = Limits.Chlorophyll.Check(value); } = Limits.Chlorophyll.Check(Chlorophyll);

    /// <summary>Absorption of the coloured dissolved matter at 440 nm (1/m), 0 to 50.</summary>
    public double Dissolved440 { get; init => field = Limits.Dissolved440.Check(value); } = Limits.Dissolved440.Check(Dissolved440);

    /// <summary>Suspended mineral (kg/m3), 0 to 2.</summary>
    public double Mineral { get; init => field = Limits.Mineral.Check(value); } = Limits.Mineral.Check(Mineral);
}
