using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Straight soft bait without a swimming tail.</summary>
public sealed class SoftJerkbait : SoftBait
{
    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.SoftJerkbait;

    /// <inheritdoc/>
    public override string Word => "soft jerkbait";

    /// <inheritdoc/>
    public override string Meaning => "a straight bait without a swimming tail";
}
