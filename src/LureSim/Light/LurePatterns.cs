namespace LureSim.Light;

/// <summary>Ready-made patterns in plain words.</summary>
public static class LurePatterns
{
    /// <summary>Natural bait fish: green back, silver side, white belly.</summary>
    public static LurePattern NaturalBaitFish { get; } = new("natural bait fish", LureColours.NaturalGreenBack, LureColours.NaturalSilverSide, LureColours.White);

    /// <summary>White body with a red head.</summary>
    public static LurePattern WhiteWithRedHead { get; } = new("white with red head", LureColours.White, LureColours.White, LureColours.White, LureColours.Red);

    /// <summary>Dark purple body with a chartreuse tail tip.</summary>
    public static LurePattern DarkPurpleWithChartreuseTail { get; } =
        new("dark purple with chartreuse tail", LureColours.DarkPurple, LureColours.DarkPurple, LureColours.DarkPurple, null, LureColours.Chartreuse);

    /// <summary>Shrimp imitation: brown with a tan belly.</summary>
    public static LurePattern Shrimp { get; } = new("shrimp", LureColours.ShrimpBrown, LureColours.ShrimpBrown, LureColours.Tan);

    /// <summary>All ready-made patterns.</summary>
    public static IReadOnlyList<LurePattern> All { get; } = [NaturalBaitFish, WhiteWithRedHead, DarkPurpleWithChartreuseTail, Shrimp];
}
