using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Soft shrimp imitation.</summary>
public sealed class ShrimpImitation : SoftBait
{
    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.ShrimpImitation;

    /// <inheritdoc/>
    public override string Word => "shrimp imitation";

    /// <inheritdoc/>
    public override string Meaning => "a soft shrimp";

    /// <inheritdoc/>
    public override ForageKind Imitates => ForageKind.Shrimp;
}
