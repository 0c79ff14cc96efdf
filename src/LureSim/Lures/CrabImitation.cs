using LureSim.Hydrodynamics;
using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Soft crab imitation: a squat flat shell with legs and a pair of claws, hooked at the rear of the shell so that the claws trail.</summary>
/// <remarks>The shell is a flat ellipsoid, which turns its broad side to the fall; legs are wire across the flow.</remarks>
public sealed class CrabImitation : SoftBait
{
    // Legs of soft plastic: three on each side, thickness and length as shares of the overall length; assumed.
    private const double Legs = 6, LegDiameter = 0.03, LegLength = 0.2;

    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.CrabImitation;

    /// <inheritdoc/>
    public override string Word => "crab imitation";

    /// <inheritdoc/>
    public override string Meaning => "a flat soft crab with claws";

    /// <inheritdoc/>
    public override ForageKind Imitates => ForageKind.Crab;

    private protected override EllipsoidGeometry Geometry(LureBody body, double volume) => EllipsoidGeometry.Flat(volume, body.Length, body.Width, body.Height);

    private protected override double LimbDragArea(LureBody body) => Legs * WireDrag.Area(LegDiameter * body.Length, LegLength / LegDiameter);
}
