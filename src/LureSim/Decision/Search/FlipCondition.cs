namespace LureSim.Decision.Search;

/// <summary>What may change at a spot so that another head is the choice.</summary>
public enum FlipCondition
{
    /// <summary>The current at the surface (m/s).</summary>
    Current,

    /// <summary>The depth of the water (m).</summary>
    Depth,

    /// <summary>The reel speed of the hand (m/s).</summary>
    ReelSpeed,

    /// <summary>The Secchi depth of the water (m): it changes the color, not the head.</summary>
    Clarity,
}
