namespace LureSim.Model;

/// <summary>A reel.</summary>
/// <param name="GearRatio">Spool or rotor turns for one turn of the handle, 2 to 12.</param>
/// <param name="SpoolDiameter">Diameter of the wound line (m), 0.015 to 0.15.</param>
/// <param name="LineCapacity">Line on the spool (m), 20 to 1000: no more can be out.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record Reel(double GearRatio, double SpoolDiameter, double LineCapacity = Reel.CommonCapacity)
{
    /// <summary>Line on the spool where a scenario does not say (m), common practice.</summary>
    public const double CommonCapacity = 150;

    /// <summary>Spool or rotor turns for one turn of the handle, 2 to 12.</summary>
    public double GearRatio { get; init => field = Limits.GearRatio.Check(value); } = Limits.GearRatio.Check(GearRatio);

    /// <summary>Diameter of the wound line (m), 0.015 to 0.15.</summary>
    public double SpoolDiameter { get; init => field = Limits.SpoolDiameter.Check(value); } = Limits.SpoolDiameter.Check(SpoolDiameter);

    /// <summary>Line on the spool (m), 20 to 1000.</summary>
    public double LineCapacity { get; init => field = Limits.LineCapacity.Check(value); } = Limits.LineCapacity.Check(LineCapacity);

    /// <summary>Line taken in for one turn of the handle (m).</summary>
    public double LinePerTurn => GearRatio * Math.PI * SpoolDiameter;
}
