using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Floating hard bait without a lip and with its weight aft, which hangs tail down and swings from side to side under a rhythm of twitches.</summary>
/// <remarks>It swims afloat: what of it is out of the water has no buoyancy and no drag. Waves and the lift of the water under a planing belly are left out.</remarks>
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

    /// <inheritdoc/>
    public override bool OnTop => true;

    private protected override double BallastStation => Ballast;
}
