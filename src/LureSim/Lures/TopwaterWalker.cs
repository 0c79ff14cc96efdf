using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Floating hard bait without a lip and with its weight aft, which hangs tail down and swings from side to side under a rhythm of twitches.</summary>
public sealed class TopwaterWalker : HardBait
{
    // Place of the ballast as a share of the length: in the rear of the belly, before the rear hook (common practice; the figure is assumed).
    private const double Ballast = 0.82;

    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.TopwaterWalker;

    /// <inheritdoc/>
    public override string Word => "topwater walker";

    /// <inheritdoc/>
    public override string Meaning => "a floating hard lure without a lip that walks from side to side when twitched";

    private protected override double BallastStation => Ballast;
}
