using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Soft body with a thick tail that swings a paddle.</summary>
public sealed class PaddleTail : SoftBait
{
    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.PaddleTail;

    /// <inheritdoc/>
    public override string Word => "paddle tail";

    /// <inheritdoc/>
    public override string Meaning => "a thick tail that swings";
}
