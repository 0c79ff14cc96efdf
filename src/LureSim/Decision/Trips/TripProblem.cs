namespace LureSim.Decision.Trips;

/// <summary>A spot as the timetable sees it.</summary>
/// <param name="Worth">What an hour there is worth in each slot of the day, 0 or more; 0 where it cannot be fished.</param>
/// <param name="LeastStay">Fewest slots of a visit, 1 or more.</param>
/// <param name="MostStay">Most slots of a visit, at least the fewest.</param>
public sealed record SpotWorth(IReadOnlyList<double> Worth, int LeastStay, int MostStay);

/// <summary>
/// A day to be laid out: which spot at which hour. Time runs in slots; each spot is visited once at most, for a stretch; ways between spots, and from the start and back, take whole slots.
/// What is sought is the greatest sum of worth.
/// </summary>
/// <param name="Slots">Slots of the day, 1 to 288.</param>
/// <param name="Spots">The spots, 1 to <see cref="MostSpots"/>.</param>
/// <param name="Travel">Slots from place to place: row and column 0 the start, then the spots in their order.</param>
/// <param name="Back">True if the way back to the start is to end within the day.</param>
/// <remarks>
/// Exact, by dynamic programming over the set of spots that have been visited, the last of them and the time (Held and Karp 1962, held1962dynamic, with a clock): n^2 2^n T d steps for n spots, T
/// slots and d lengths of stay.
/// </remarks>
public sealed record TripProblem(int Slots, IReadOnlyList<SpotWorth> Spots, int[,] Travel, bool Back)
{
    /// <summary>Most spots of a day that are laid out exactly.</summary>
    public const int MostSpots = 12;

    private const int MostSlots = 288;

    // Sums that differ by less are the same; the earlier spot of the list goes first.
    private const double Same = 1e-9;

    /// <summary>The best day.</summary>
    /// <exception cref="ArgumentException">The parts do not fit together.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <param name="cancellation">Stops the work.</param>
    public TripOrder Best(CancellationToken cancellation = default)
    {
        Check();
        int n = Spots.Count, sets = 1 << n, times = Slots + 1;
        double[] best = new double[sets * n * times];
        int[] from = new int[best.Length], lengths = new int[best.Length], leaves = new int[best.Length];
        Array.Fill(best, double.NegativeInfinity);
        double[][] sums = [.. Spots.Select(Sums)];
        for (int spot = 0; spot < n; spot++)
        {
            for (int start = Travel[0, spot + 1]; start < Slots; start++) Visit(1 << spot, spot, start, 0, -1);
        }

        for (int set = 1; set < sets; set++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (int last = 0; last < n; last++)
            {
                if ((set & (1 << last)) == 0) continue;
                for (int time = 0; time <= Slots; time++)
                {
                    int here = (((set * n) + last) * times) + time;
                    if (time > 0 && best[here - 1] > best[here] + Same)
                    {
                        // Waiting costs nothing but the time.
                        (best[here], from[here], lengths[here], leaves[here]) = (best[here - 1], from[here - 1], lengths[here - 1], leaves[here - 1]);
                    }

                    if (double.IsNegativeInfinity(best[here])) continue;
                    for (int next = 0; next < n; next++)
                    {
                        if ((set & (1 << next)) == 0) Visit(set | (1 << next), next, time + Travel[last + 1, next + 1], best[here], here);
                    }
                }
            }
        }

        int end = -1;
        for (int i = 0; i < best.Length; i++)
        {
            if (best[i] > (end < 0 ? 0 : best[end]) + Same && (i % times) + (Back ? Travel[(i / times % n) + 1, 0] : 0) <= Slots) end = i;
        }

        return end < 0 ? TripOrder.None : Trace(end);

        // Every length of stay.
        void Visit(int set, int spot, int start, double before, int came)
        {
            SpotWorth there = Spots[spot];
            double[] sum = sums[spot];
            int first = ((set * n) + spot) * times, most = Math.Min(Slots, start + there.MostStay);
            for (int leave = start + there.LeastStay; leave <= most; leave++)
            {
                double value = before + sum[leave] - sum[start];
                if (value <= best[first + leave] + Same) continue;
                best[first + leave] = value;
                from[first + leave] = came;
                lengths[first + leave] = leave - start;
                leaves[first + leave] = leave;
            }
        }

        TripOrder Trace(int at)
        {
            List<TripVisit> visits = [];
            for (int i = at; i >= 0; i = from[i])
            {
                int leave = leaves[i], spot = i / times % n;
                visits.Insert(0, new TripVisit(spot, leave - lengths[i], leave, sums[spot][leave] - sums[spot][leave - lengths[i]]));
            }

            return new TripOrder(visits, best[at]);
        }
    }

    /// <summary>The best day of an order that is given; null if it does not fit into the day.</summary>
    /// <param name="order">Spots in their order, each once.</param>
    /// <exception cref="ArgumentNullException"><paramref name="order"/> is null.</exception>
    /// <exception cref="ArgumentException">The parts do not fit together, or a spot comes twice.</exception>
    public TripOrder? InOrder(IReadOnlyList<int> order)
    {
        ArgumentNullException.ThrowIfNull(order);
        Check();
        if (order.Count == 0 || order.Distinct().Count() < order.Count || order.Any(spot => spot < 0 || spot >= Spots.Count))
            throw new ArgumentException("An order has each spot once.", nameof(order));

        // Best sum by the time of leaving, visit by visit.
        var stages = new (double Value, int Start, int Before)[order.Count, Slots + 1];
        for (int k = 0; k < order.Count; k++)
        {
            SpotWorth there = Spots[order[k]];
            double[] sum = Sums(there);
            int way = Travel[k == 0 ? 0 : order[k - 1] + 1, order[k] + 1];
            for (int time = 0; time <= Slots; time++) stages[k, time] = (double.NegativeInfinity, 0, 0);

            // The best leaving of the visit before by each arrival: a running maximum, since waiting costs nothing.
            double before = double.NegativeInfinity;
            int came = -1;
            for (int start = way; start + there.LeastStay <= Slots; start++)
            {
                double earlier = k == 0 ? 0 : stages[k - 1, start - way].Value;
                if (earlier > before) (before, came) = (earlier, start - way);
                if (double.IsNegativeInfinity(before)) continue;
                for (int stay = there.LeastStay; stay <= there.MostStay && start + stay <= Slots; stay++)
                {
                    double value = before + sum[start + stay] - sum[start];
                    if (value > stages[k, start + stay].Value + Same) stages[k, start + stay] = (value, start, came);
                }
            }
        }

        int end = -1, latest = Slots - (Back ? Travel[order[^1] + 1, 0] : 0);
        for (int time = 0; time <= latest; time++)
        {
            double value = stages[order.Count - 1, time].Value;
            if (!double.IsNegativeInfinity(value) && (end < 0 || value > stages[order.Count - 1, end].Value + Same)) end = time;
        }

        if (end < 0) return null;
        double total = stages[order.Count - 1, end].Value;
        var visits = new TripVisit[order.Count];
        for (int k = order.Count - 1; k >= 0; k--)
        {
            (_, int start, int before) = stages[k, end];
            double[] sum = Sums(Spots[order[k]]);
            visits[k] = new TripVisit(order[k], start, end, sum[end] - sum[start]);
            end = before;
        }

        return new TripOrder(visits, total);
    }

    /// <summary>The same day without a spot: it stays in the list and is worth nothing.</summary>
    /// <param name="spot">The spot.</param>
    public TripProblem Without(int spot) => this with { Spots = [.. Spots.Select((item, i) => i == spot ? item with { Worth = new double[Slots] } : item)] };

    private double[] Sums(SpotWorth spot)
    {
        double[] sum = new double[Slots + 1];
        for (int i = 0; i < Slots; i++) sum[i + 1] = sum[i] + spot.Worth[i];
        return sum;
    }

    private void Check()
    {
        Guard.That(Slots is >= 1 and <= MostSlots, "A day has 1 to 288 slots.", nameof(Slots));
        Guard.That(Spots.Count is >= 1 and <= MostSpots, "A day has 1 to 12 spots.", nameof(Spots));
        Guard.That(Travel.GetLength(0) == Spots.Count + 1 && Travel.GetLength(1) == Spots.Count + 1, "There is a way from every place to every other.", nameof(Travel));
        foreach (SpotWorth spot in Spots)
        {
            Guard.That(spot.Worth.Count == Slots && spot.Worth.All(worth => worth >= 0 && double.IsFinite(worth)), "Every slot has a worth of 0 or more.", nameof(Spots));
            Guard.That(spot.LeastStay >= 1 && spot.MostStay >= spot.LeastStay, "A stay has a length.", nameof(Spots));
        }

        foreach (int way in Travel) Guard.That(way >= 0, "No way takes less than no time.", nameof(Travel));
    }
}

/// <summary>A visit of a day.</summary>
/// <param name="Spot">The spot, from 0.</param>
/// <param name="Start">First slot.</param>
/// <param name="End">Slot after the last.</param>
/// <param name="Value">Sum of worth.</param>
public sealed record TripVisit(int Spot, int Start, int End, double Value);

/// <summary>A day laid out.</summary>
/// <param name="Visits">The visits in order of time.</param>
/// <param name="Value">Sum of worth.</param>
public sealed record TripOrder(IReadOnlyList<TripVisit> Visits, double Value)
{
    /// <summary>Nothing is worth a visit.</summary>
    public static TripOrder None { get; } = new([], 0);
}
