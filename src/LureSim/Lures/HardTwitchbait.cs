using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Hard bait fish with its own weight and hooks, floating, suspending or sinking, with a diving lip or without.</summary>
public sealed class HardTwitchbait : HardBait
{
    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.HardTwitchbait;

    /// <inheritdoc/>
    public override string Word => "hard twitchbait";

    /// <inheritdoc/>
    public override string Meaning => "a hard bait fish with its own weight and hooks";

    /// <inheritdoc/>
    public override bool TakesFloat => true;

    /// <inheritdoc/>
    public override bool TakesLip => true;
}
