using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Swimming;
using LureSim.Tackle;
using MathNet.Numerics.Interpolation;

namespace LureSim.Coupling;

/// <summary>
/// When the action of one lure is on: computed once over a grid of speeds and twitches and interpolated, so that a search need not swim the lure again for
/// every retrieve. On is what swims, darts, glides or flutters; what spins, tumbles, runs straight or hardly swims is off.
/// </summary>
public sealed class ActionTable
{
    // Speeds through the water (m/s), from a crawl to faster than lures are reeled.
    private static readonly double[] Grid = [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.65, 0.8, 1, 1.25, 1.6, 2];

    // Travels of a twitch (m).
    private static readonly double[] Travels = [0.1, 0.2, 0.3, 0.45, 0.6];

    // Grids of the tables that judge every run: a choice tries many lures, and whether an action is on changes slowly with speed.
    private static readonly double[] CoarseGrid = [0.1, 0.25, 0.5, 1];
    private static readonly double[] CoarseTravels = [0.25];

    // Weights (kg) whose tables stand for the heads near them: what a head adds to the weight hardly tells on whether the action is on.
    private static readonly double[] Standing = [0.0025, 0.007, 0.02, 0.06];

    // A bound on memory only; a tackle box holds far fewer.
    private const int MostKept = 512;

    // Windows (s) of a table, the interval of its twitches and the pause after them (common practice).
    private const double SteadyWindow = 4;
    private const double FallWindow = 5;
    private const double CoarseWindow = 3;
    private const double TwitchInterval = 0.5;
    private const double TwitchPause = 1.6;

    private static readonly KeptResults<Key, ActionTable> Kept = new(MostKept);

    // What a dart leaves behind has died away after this time (s), assumed.
    private const double AfterTwitch = 1;

    // Sinking by more than this part of its speed through the water a lure falls rather than being drawn.
    private const double Steep = 0.8;

    // Slower than this nothing moves that a fish would notice (m/s).
    private const double LeastSpeed = 0.02;

    private readonly LinearSpline steady;
    private readonly LinearSpline twitched;
    private readonly bool fall;
    private readonly double fastest;
    private readonly double shortest;
    private readonly double longest;

    private ActionTable(IReadOnlyList<double> speeds, IReadOnlyList<double> travels, IReadOnlyList<ActionReport> steadyReports, IReadOnlyList<ActionReport> twitchedReports, ActionReport fallReport)
    {
        SteadyReports = steadyReports;
        TwitchedReports = twitchedReports;
        FallReport = fallReport;
        fastest = speeds[^1];
        steady = LinearSpline.InterpolateSorted([0, .. speeds], [0, .. steadyReports.Select(r => IsOn(r) ? 1.0 : 0.0)]);

        // Outside the travels of the grid its ends hold; a grid of one travel is a constant.
        shortest = travels[0];
        double[] alive = [.. twitchedReports.Select(r => IsOn(r) ? 1.0 : 0.0)];
        twitched = travels.Count > 1 ? LinearSpline.InterpolateSorted([.. travels], alive) : LinearSpline.InterpolateSorted([0, shortest], [alive[0], alive[0]]);
        longest = travels[^1];
        fall = IsOn(fallReport);
    }

    /// <summary>Speeds of the grid (m/s).</summary>
    public static IReadOnlyList<double> Speeds => Grid;

    /// <summary>Travels of the rod tip of the grid (m).</summary>
    public static IReadOnlyList<double> TwitchTravels => Travels;

    /// <summary>Reports at the speeds of the grid.</summary>
    public IReadOnlyList<ActionReport> SteadyReports { get; }

    /// <summary>Reports under twitches of the travels of the grid.</summary>
    public IReadOnlyList<ActionReport> TwitchedReports { get; }

    /// <summary>Report of the fall on a slack line.</summary>
    public ActionReport FallReport { get; }

    /// <summary>Computes the table of a lure.</summary>
    /// <param name="tackle">The tackle, for rigging and leader.</param>
    /// <param name="spot">The spot, for the density and the viscosity of its water.</param>
    /// <param name="head">Head.</param>
    /// <param name="body">Body.</param>
    /// <param name="parallel">Threads and cancellation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ActionTable Compute(Outfit tackle, Spot spot, JigHead head, LureBody body, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(parallel);
        return Compute(tackle, spot, head, body, Grid, Travels, SteadyWindow, parallel);
    }

    /// <summary>
    /// Shares of a retrieve in which the action of a lure is on, from tables of few speeds and one travel that are computed once for a lure and a water. Four weights
    /// stand for all heads: between two of them the shares go evenly from one to the other by the logarithm of the weight. An unweighted hook and a lure without a
    /// head have tables of their own.
    /// </summary>
    /// <param name="tackle">The tackle, for rigging and leader.</param>
    /// <param name="spot">The spot, for its water and its strike zone.</param>
    /// <param name="head">Head.</param>
    /// <param name="body">Body.</param>
    /// <param name="track">The track.</param>
    /// <param name="presentation">The retrieve that it was made with.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static (double On, double OnInZone) Shares(Outfit tackle, Spot spot, JigHead head, LureBody body, Track track, Presentation presentation)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        (JigHead low, JigHead? high, double part) = StandingFor(head);
        (double on, double live) = KeptOf(tackle, spot, low, body).Value.Shares(track, presentation, spot.StrikeZone);
        if (high is null) return (on, live);
        (double onHigh, double liveHigh) = KeptOf(tackle, spot, high, body).Value.Shares(track, presentation, spot.StrikeZone);
        return (on + (part * (onHigh - on)), live + (part * (liveHigh - live)));
    }

    /// <summary>Computes the tables that the runs of some lures will ask for, on all threads: two runs that wait for the same table leave a thread idle.</summary>
    internal static void Prepare(Outfit tackle, Spot spot, IEnumerable<(JigHead Head, LureBody Body)> lures, ParallelOptions parallel)
    {
        List<Lazy<ActionTable>> wanted = [];
        foreach ((JigHead head, LureBody body) in lures.Distinct())
        {
            (JigHead low, JigHead? high, _) = StandingFor(head);
            wanted.Add(KeptOf(tackle, spot, low, body));
            if (high is not null) wanted.Add(KeptOf(tackle, spot, high, body));
        }

        Lazy<ActionTable>[] tables = [.. wanted.Distinct().Where(table => !table.IsValueCreated)];
        Parallel.For(0, tables.Length, parallel, i => _ = tables[i].Value);
    }

    // The weights that stand for a head: the one below, the one above if there is one, and how far it is from the one to the other.
    private static (JigHead Low, JigHead? High, double Part) StandingFor(JigHead head)
    {
        if (!(head.Mass > 0)) return (head, null, 0);
        int above = Array.FindIndex(Standing, mass => mass >= head.Mass);
        if (above is 0 or -1) return (head with { Mass = above == 0 ? Standing[0] : Standing[^1], Label = "" }, null, 0);
        double low = Standing[above - 1], high = Standing[above];
        return (head with { Mass = low, Label = "" }, head with { Mass = high, Label = "" }, Math.Log(head.Mass / low) / Math.Log(high / low));
    }

    private static Lazy<ActionTable> KeptOf(Outfit tackle, Spot spot, JigHead standing, LureBody body)
    {
        var key = new Key(standing, body.Drag is null ? body : body with { Drag = null }, tackle.Rigging, tackle.Leader?.Kind ?? tackle.Line.Kind, tackle.Leader?.Diameter ?? tackle.Line.Diameter, spot.TemperatureCelsius, spot.Salinity);
        return Kept.Of(key, () => Compute(tackle, spot, standing, body, CoarseGrid, CoarseTravels, CoarseWindow, new ParallelOptions { MaxDegreeOfParallelism = 1 }));
    }

    private static ActionTable Compute(
        Outfit tackle, Spot spot, JigHead head, LureBody body, double[] speeds, double[] travels, double window, ParallelOptions parallel)
    {
        LureProperties lure = TackleBuilder.Lure(head, body);
        var runner = new RigWindow(tackle, spot, head, body, parallel.CancellationToken);
        var reports = new ActionReport[speeds.Length + travels.Length + 1];
        Parallel.For(0, reports.Length, parallel, i =>
        {
            reports[i] = (i < speeds.Length ? runner.Steady(speeds[i], runner.HeldElevation(lure, speeds[i]), window)
                : i < reports.Length - 1 ? runner.Twitch(Plain(travels[i - speeds.Length]))
                : runner.Fall(Math.Min(FallWindow, window + 1))).Report;
        });
        return new ActionTable(speeds, travels, reports[..speeds.Length], reports[speeds.Length..^1], reports[^1]);
    }

    /// <summary>A table of given reports.</summary>
    internal static ActionTable From(IReadOnlyList<ActionReport> steady, IReadOnlyList<ActionReport> twitched, ActionReport fall) => new(Grid, Travels, steady, twitched, fall);

    // Two twitches of a travel and a pause; the cast does not matter.
    private static Presentation Plain(double travel) => new()
    {
        Name = "twitches",
        CastLength = 20,
        RetrieveSpeed = 0.5,
        Moves =
        [
            new Move { Kind = MoveKind.Twitch, Duration = 2 * TwitchInterval, Beats = 2, Up = travel },
            new Move { Kind = MoveKind.Pause, Duration = TwitchPause },
        ],
    };

    /// <summary>Whether a report is of an action that is on.</summary>
    /// <param name="report">A report.</param>
    /// <exception cref="ArgumentNullException"><paramref name="report"/> is null.</exception>
    public static bool IsOn(ActionReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Verdict is ActionVerdict.Swims or ActionVerdict.Darts or ActionVerdict.Glides or ActionVerdict.Flutters
            || (report.Verdict is ActionVerdict.Still or ActionVerdict.Leans or ActionVerdict.RunsOff && report.TailSwims);
    }

    /// <summary>How far the action is on at a speed, 0 to 1; between two speeds of the grid it goes from one to the other evenly.</summary>
    /// <param name="speed">Speed through the water (m/s).</param>
    public double Steady(double speed) => steady.Interpolate(Math.Clamp(speed, 0, fastest));

    /// <summary>How far it is on under a twitch, 0 to 1.</summary>
    /// <param name="travel">Travel of the rod tip (m).</param>
    public double Twitched(double travel) => travel > 0 ? twitched.Interpolate(Math.Clamp(travel, shortest, longest)) : 0;

    /// <summary>Shares of a retrieve in which the action is on, anywhere and in the zone.</summary>
    /// <param name="track">The track.</param>
    /// <param name="presentation">The retrieve that it was made with.</param>
    /// <param name="zone">The strike zone.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public (double On, double OnInZone) Shares(Track track, Presentation presentation, StrikeZone zone)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(presentation);
        ArgumentNullException.ThrowIfNull(zone);
        IReadOnlyList<Move> cycle = presentation.Moves;
        double length = presentation.Repeats ? cycle.Sum(move => move.Duration) : double.PositiveInfinity;
        double start = double.NaN, on = 0, inZone = 0;
        int count = 0;
        for (int i = 0; i < track.Count; i++)
        {
            if ((track.State[i] & TrackState.Falling) != 0) continue;
            if (double.IsNaN(start)) start = track.Time[i];
            count++;
            double now = At(track, i, Twitch(cycle, length, track.Time[i] - start));
            on += now;
            if (zone.Contains(track.Depth(i))) inZone += now;
        }

        return count == 0 ? (0, 0) : (on / count, inZone / count);
    }

    private double At(Track track, int i, double twitch)
    {
        double speed = track.SpeedThroughWater[i];
        if (!(speed > LeastSpeed)) return 0;
        bool falls = -track.VelocityZ[i] > Steep * speed;
        return Math.Max(Steady(speed), Math.Max(falls && fall ? 1 : 0, Twitched(twitch)));
    }

    // Travel of the twitch that is under way or just over (m); 0 for none.
    private static double Twitch(IReadOnlyList<Move> cycle, double length, double time)
    {
        double at = double.IsFinite(length) && length > 0 ? time % length : time, begin = 0;
        foreach (Move move in cycle)
        {
            double end = begin + move.Duration;
            if (move.Kind == MoveKind.Twitch && at >= begin && at < end + AfterTwitch) return move.Travel;
            begin = end;
        }

        // A twitch that ends a cycle is felt in the next.
        Move last = cycle[^1];
        return last.Kind == MoveKind.Twitch && time >= length && at < AfterTwitch ? last.Travel : 0;
    }

    private readonly record struct Key(JigHead Head, LureBody Body, Rigging Rigging, LineKind Kind, double Diameter, double Temperature, double Salinity);
}
