using LureSim.Hydrodynamics;
using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Soft shrimp imitation.</summary>
public sealed class ShrimpImitation : SoftBait
{
    // Legs and feelers of soft plastic, thickness and length as shares of the overall length; half of them stand in the lee of the others (assumed).
    private const double Legs = 10, LegDiameter = 0.012, LegLength = 0.15, LegsInTheFlow = 0.5;

    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.ShrimpImitation;

    /// <inheritdoc/>
    public override string Word => "shrimp imitation";

    /// <inheritdoc/>
    public override string Meaning => "a soft shrimp";

    /// <inheritdoc/>
    public override ForageKind Imitates => ForageKind.Shrimp;

    private protected override double LimbDragArea(LureBody body) => LegsInTheFlow * Legs * WireDrag.Area(LegDiameter * body.Length, LegLength / LegDiameter);
}
