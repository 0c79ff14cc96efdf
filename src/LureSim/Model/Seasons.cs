namespace LureSim.Model;

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
