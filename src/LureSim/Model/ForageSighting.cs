namespace LureSim.Model;

/// <summary>What the fish may be eating.</summary>
public enum ForageKind
{
    /// <summary>Bait fish up to about 3 in (75 mm).</summary>
    SmallBaitFish,

    /// <summary>Bait fish of about 5 in (125 mm).</summary>
    LargeBaitFish,

    /// <summary>Shrimp.</summary>
    Shrimp,

    /// <summary>Crabs.</summary>
    Crab,
}

/// <summary>How forage was seen.</summary>
public enum ForageSeen
{
    /// <summary>It is about.</summary>
    Present,

    /// <summary>Fish were seen taking it.</summary>
    BeingAttacked,
}

/// <summary>Forage that was seen at the spot.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Length">Its length (m), 0.005 to 0.5; null where it was not judged.</param>
/// <param name="Seen">How it was seen.</param>
/// <param name="Colour">Its colour, a preset name or a hex colour; null for the colour usual for its kind.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record ForageSighting(ForageKind Kind, double? Length, ForageSeen Seen, string? Colour = null)
{
    /// <summary>What it is.</summary>
    public ForageKind Kind { get; init => field = Guard.Defined(value); } = Guard.Defined(Kind);

    /// <summary>Its length (m), 0.005 to 0.5; null where it was not judged.</summary>
    public double? Length { get; init => field = Limits.ForageLength.Check(value); } = Limits.ForageLength.Check(Length);

    /// <summary>How it was seen.</summary>
    public ForageSeen Seen { get; init => field = Guard.Defined(value); } = Guard.Defined(Seen);
}
