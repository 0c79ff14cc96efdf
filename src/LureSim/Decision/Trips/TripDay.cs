using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Decision.Trips;

/// <summary>A head from some hour on.</summary>
/// <param name="Hours">Time (h since midnight).</param>
/// <param name="Head">The head; <see cref="JigHead.None"/> for a lure without one.</param>
public sealed record HeadFrom(double Hours, JigHead Head);

/// <summary>A stop of the day.</summary>
/// <param name="Spot">The spot, from 0.</param>
/// <param name="Arrive">First cast (h since midnight).</param>
/// <param name="Leave">Last cast (h since midnight).</param>
/// <param name="Value">Hours of good fishing: hours times score.</param>
/// <param name="Travel">Way to it (h).</param>
/// <param name="Heads">The head to fish, and where it changes within the stop.</param>
public sealed record TripStop(int Spot, double Arrive, double Leave, double Value, double Travel, IReadOnlyList<HeadFrom> Heads);

/// <summary>What another order would cost.</summary>
/// <param name="First">The stop that would come later, by its spot.</param>
/// <param name="Second">The stop that would come first, by its spot.</param>
/// <param name="Cost">Hours of good fishing lost; null where the other order does not fit into the day.</param>
public sealed record TripSwap(int First, int Second, double? Cost);

/// <summary>What a spot brings to the day.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="Cost">Hours of good fishing lost if it is left out and the day laid out anew.</param>
public sealed record TripSkip(int Spot, double Cost);

/// <summary>A day by the clock: which spot at which hour with which rig.</summary>
/// <remarks>
/// An hour at a spot is worth the score of its best head then, by the table of its tide, times what the angler holds of the spot. The score says how well a rig fishes the strike zone, not how many fish are
/// there. Between the hours of the table the worth runs straight; outside it the spot is not fished.
/// </remarks>
public sealed record TripDay
{
    private TripDay()
    {
    }

    /// <summary>The hours.</summary>
    public required TripClock Clock { get; init; }

    /// <summary>What an hour at each spot is worth in each slot.</summary>
    public required IReadOnlyList<IReadOnlyList<double>> Worth { get; init; }

    /// <summary>The stops in order of time.</summary>
    public required IReadOnlyList<TripStop> Stops { get; init; }

    /// <summary>Hours of good fishing in all.</summary>
    public required double Value { get; init; }

    /// <summary>What it costs to swap two stops that follow each other.</summary>
    public required IReadOnlyList<TripSwap> Swaps { get; init; }

    /// <summary>What each stop brings.</summary>
    public required IReadOnlyList<TripSkip> Skips { get; init; }

    /// <summary>Spots without a stop.</summary>
    public IReadOnlyList<int> LeftOut => [.. Enumerable.Range(0, Clock.Spots.Count).Where(spot => Stops.All(stop => stop.Spot != spot))];

    /// <summary>Lays a day out.</summary>
    /// <param name="clock">The hours.</param>
    /// <param name="choices">The choice at each spot.</param>
    /// <param name="tides">The table of each spot's tide; null for a spot without one, whose choice holds all day.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The lists are not of one length, or a stay or the hours are too short for a slot.</exception>
    public static TripDay Of(TripClock clock, IReadOnlyList<Candidate> choices, IReadOnlyList<TideTable?> tides, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentNullException.ThrowIfNull(choices);
        ArgumentNullException.ThrowIfNull(tides);
        int n = clock.Spots.Count, slots = (int)Math.Floor(((clock.End - clock.Start) / TripClock.Slot) + 1e-6);
        if (choices.Count != n || tides.Count != n)
            throw new ArgumentException("Every spot has its hours, its choice and its tide.", nameof(choices));
        double[][] worth = [.. Enumerable.Range(0, n).Select(spot => Enumerable.Range(0, slots)
            .Select(slot => clock.Spots[spot].Worth * WorthAt(choices[spot], tides[spot], clock.Start + ((slot + 0.5) * TripClock.Slot))).ToArray())];
        int[,] travel = new int[n + 1, n + 1];
        for (int i = 0; i <= n; i++)
        {
            for (int j = 0; j <= n; j++) travel[i, j] = (int)Math.Ceiling((clock.Travel[i, j] / TripClock.Slot) - 1e-9);
        }

        var problem = new TripProblem(
            slots,
            [.. worth.Select((w, spot) => new SpotWorth(w, Count(clock.Spots[spot].LeastStay), Math.Max(Count(clock.Spots[spot].LeastStay), Count(clock.Spots[spot].MostStay))))],
            travel,
            clock.Back);
        TripOrder best = problem.Best(cancellation);
        List<TripStop> stops = [];
        foreach (TripVisit visit in best.Visits)
        {
            double arrive = At(visit.Start), leave = At(visit.End);
            int before = stops.Count == 0 ? 0 : stops[^1].Spot + 1;
            stops.Add(new TripStop(visit.Spot, arrive, leave, visit.Value * TripClock.Slot, clock.Travel[before, visit.Spot + 1], Heads(choices[visit.Spot], tides[visit.Spot], arrive, leave)));
        }

        int[] order = [.. best.Visits.Select(visit => visit.Spot)];
        TripSwap[] swaps = [.. Enumerable.Range(0, Math.Max(0, order.Length - 1)).Select(i =>
        {
            int[] other = [.. order];
            (other[i], other[i + 1]) = (other[i + 1], other[i]);
            return new TripSwap(order[i], order[i + 1], problem.InOrder(other) is { } swapped ? Math.Max(0, best.Value - swapped.Value) * TripClock.Slot : null);
        })];
        TripSkip[] skips = [.. order.Select(spot => new TripSkip(spot, Math.Max(0, best.Value - problem.Without(spot).Best(cancellation).Value) * TripClock.Slot))];
        return new TripDay { Clock = clock, Worth = worth, Stops = stops, Value = best.Value * TripClock.Slot, Swaps = swaps, Skips = skips };

        double At(int slot) => clock.Start + (slot * TripClock.Slot);
        static int Count(double hours) => Math.Max(1, (int)Math.Round(hours / TripClock.Slot));
    }

    private static double WorthAt(Candidate choice, TideTable? tide, double hours)
    {
        if (tide is not { Rows: { Count: > 0 } rows }) return choice.Score;
        if (hours < rows[0].Hours || hours > rows[^1].Hours) return 0;
        int i = 1;
        while (i + 1 < rows.Count && rows[i].Hours < hours) i++;
        double share = rows.Count == 1 ? 0 : (hours - rows[i - 1].Hours) / (rows[i].Hours - rows[i - 1].Hours);
        return rows.Count == 1 ? rows[0].Scores.Max() : ((1 - share) * rows[i - 1].Scores.Max()) + (share * rows[i].Scores.Max());
    }

    // The head of the nearest hour of the table; changes within a stop.
    private static List<HeadFrom> Heads(Candidate choice, TideTable? tide, double arrive, double leave)
    {
        if (tide is not { Rows: { Count: > 0 } rows }) return [new(arrive, choice.Rig.Head)];
        List<HeadFrom> found = [];
        for (double hours = arrive; hours < leave - 1e-9; hours += TripClock.Slot)
        {
            TideRow row = rows.MinBy(item => Math.Abs(item.Hours - hours - (TripClock.Slot / 2)))!;
            JigHead head = row.Best ?? (found.Count > 0 ? found[^1].Head : choice.Rig.Head);
            if (found.Count == 0 || found[^1].Head != head) found.Add(new(hours, head));
        }

        return found;
    }
}
