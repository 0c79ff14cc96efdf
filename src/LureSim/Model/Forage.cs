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
public sealed record ForageSighting(ForageKind Kind, double? Length, ForageSeen Seen, string? Colour = null);

/// <summary>Part of the year as anglers name it.</summary>
public enum Season
{
    /// <summary>December to February in the north.</summary>
    Winter,

    /// <summary>March and April.</summary>
    EarlySpring,

    /// <summary>May.</summary>
    LateSpring,

    /// <summary>June and July.</summary>
    Summer,

    /// <summary>August.</summary>
    LateSummer,

    /// <summary>September and October.</summary>
    EarlyAutumn,

    /// <summary>November.</summary>
    LateAutumn,
}

/// <summary>One of two rigs to compare.</summary>
/// <param name="Name">Name for people, such as "mine".</param>
/// <param name="Head">Jig head.</param>
/// <param name="Body">Soft body.</param>
/// <param name="Colour">Colour, a preset name or a hex colour.</param>
/// <param name="Line">Main line.</param>
/// <param name="Leader">Leader, or null for none.</param>
/// <param name="Presentation">The way it is fished.</param>
public sealed record ComparedRig(
    string Name,
    JigHead Head,
    LureBody Body,
    string Colour,
    LineSpecification Line,
    LeaderSpecification? Leader,
    Presentation Presentation)
{
    /// <summary>How it is tied on and put on its hook.</summary>
    public Rigging Rigging { get; init; } = new();
}

/// <summary>Seasons by the calendar.</summary>
public static class Seasons
{
    // By month of the northern year; common practice on temperate and subtropical coasts.
    private static readonly Season[] ByMonth =
    [
        Season.Winter, Season.Winter, Season.EarlySpring, Season.EarlySpring, Season.LateSpring, Season.Summer,
        Season.Summer, Season.LateSummer, Season.EarlyAutumn, Season.EarlyAutumn, Season.LateAutumn, Season.Winter,
    ];

    /// <summary>The season of a month.</summary>
    /// <param name="month">Month, 1 to 12.</param>
    /// <param name="south">True south of the equator, where the year is shifted by six months.</param>
    /// <exception cref="ArgumentOutOfRangeException">The month is not 1 to 12.</exception>
    public static Season Of(int month, bool south)
    {
        if (month is < 1 or > 12)
            throw new ArgumentOutOfRangeException(nameof(month), month, "A month is 1 to 12.");
        return ByMonth[(month - 1 + (south ? 6 : 0)) % 12];
    }

    /// <summary>The season of a scenario: the one it names, or that of its date and latitude; null where it has neither.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    public static Season? Of(Scenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return scenario.Season ?? (scenario.Spot.Sky is SkyByClock clock ? Of(clock.Time.Month, clock.Latitude < 0) : null);
    }
}
