using LureSim.Model;

namespace LureSim.Decision.Trips;

/// <summary>How long a spot of a trip is fished, and how good it is held to be.</summary>
/// <param name="LeastStay">Shortest visit (h), 0.25 to 24.</param>
/// <param name="MostStay">Longest visit (h), at least the shortest.</param>
/// <param name="Worth">How many fish the angler expects there against the other spots, 0 to 10; 1 for no difference.</param>
public sealed record TripSpotTime(double LeastStay, double MostStay, double Worth)
{
    /// <summary>Shortest visit where nothing is said (h). Assumed.</summary>
    public const double UsualLeast = 0.5;

    /// <summary>Longest visit where nothing is said (h): fish that have been shown a lure for so long are left alone. Assumed.</summary>
    public const double UsualMost = 2;

    /// <summary>Nothing was said.</summary>
    public static TripSpotTime Usual { get; } = new(UsualLeast, UsualMost, 1);
}

/// <summary>The hours of a trip and the ways between its spots.</summary>
/// <param name="Start">First hour (h since midnight).</param>
/// <param name="End">Last hour (h since midnight), past midnight above 24.</param>
/// <param name="Spots">How long each spot is fished, in the order of the trip.</param>
/// <param name="Travel">Hours from place to place: row and column 0 the ramp, then the spots in their order.</param>
/// <param name="Back">True if the way back to the ramp is to end within the hours.</param>
public sealed record TripClock(double Start, double End, IReadOnlyList<TripSpotTime> Spots, double[,] Travel, bool Back)
{
    /// <summary>Length of a slot (h).</summary>
    public const double Slot = 0.25;

    /// <summary>Time between any two places where nothing is said (h). Assumed.</summary>
    public const double UsualTravel = 20.0 / 60;

    /// <summary>Hours over the tides of some scenarios, with the same time between any two places.</summary>
    /// <param name="scenarios">The scenarios in the order of the trip.</param>
    /// <param name="start">First hour; null for the first of any tide.</param>
    /// <param name="end">Last hour; null for the last of any tide.</param>
    /// <param name="travel">Hours between any two places.</param>
    /// <returns>The clock; null where there is no tide and no hours.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="scenarios"/> is null.</exception>
    public static TripClock? Of(IReadOnlyList<Scenario> scenarios, double? start, double? end, double travel = UsualTravel)
    {
        ArgumentNullException.ThrowIfNull(scenarios);
        Scenario[] tidal = [.. scenarios.Where(scenario => scenario.Tide.Count > 0)];
        double? from = start ?? (tidal.Length > 0 ? tidal.Min(scenario => scenario.Tide[0].Hours) : null);
        double? to = end ?? (tidal.Length > 0 ? tidal.Max(scenario => scenario.Tide[^1].Hours) : null);
        if (from is not { } first || to is not { } last || scenarios.Count > TripProblem.MostSpots) return null;
        if (last <= first) last += 24;
        double[,] ways = new double[scenarios.Count + 1, scenarios.Count + 1];
        for (int i = 0; i <= scenarios.Count; i++)
        {
            for (int j = 0; j <= scenarios.Count; j++) ways[i, j] = i == j ? 0 : travel;
        }

        return new TripClock(first, last, [.. scenarios.Select(_ => TripSpotTime.Usual)], ways, true);
    }
}
