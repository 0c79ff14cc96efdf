using LureSim.Decision.RigChecks;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Swimming;
using MathNet.Numerics.Interpolation;

namespace LureSim.Decision.Search;

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

    // What a dart leaves behind has died away after this time (s), assumed.
    private const double AfterTwitch = 1;

    // Sinking by more than this part of its speed through the water a lure falls rather than being drawn.
    private const double Steep = 0.8;

    // Slower than this nothing moves that a fish would notice (m/s).
    private const double LeastSpeed = 0.02;

    private readonly LinearSpline steady;
    private readonly LinearSpline twitched;
    private readonly bool fall;

    private ActionTable(IReadOnlyList<ActionReport> steadyReports, IReadOnlyList<ActionReport> twitchedReports, ActionReport fallReport)
    {
        SteadyReports = steadyReports;
        TwitchedReports = twitchedReports;
        FallReport = fallReport;
        steady = LinearSpline.InterpolateSorted([0, .. Grid], [0, .. steadyReports.Select(r => IsOn(r) ? 1.0 : 0.0)]);
        twitched = LinearSpline.InterpolateSorted(Travels, [.. twitchedReports.Select(r => IsOn(r) ? 1.0 : 0.0)]);
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
    /// <param name="scenario">A validated scenario, for rigging, leader and water.</param>
    /// <param name="head">Head.</param>
    /// <param name="body">Body.</param>
    /// <param name="parallel">Threads and cancellation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ActionTable Compute(Scenario scenario, JigHead head, LureBody body, ParallelOptions parallel)
    {
        (ActionReport[] steady, ActionReport[] twitched, ActionReport fall) = RigChecker.Reports(scenario, head, body, Grid, Travels, parallel);
        return new ActionTable(steady, twitched, fall);
    }

    /// <summary>A table of given reports.</summary>
    internal static ActionTable From(IReadOnlyList<ActionReport> steady, IReadOnlyList<ActionReport> twitched, ActionReport fall) => new(steady, twitched, fall);

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
    public double Steady(double speed) => steady.Interpolate(Math.Clamp(speed, 0, Grid[^1]));

    /// <summary>How far it is on under a twitch, 0 to 1.</summary>
    /// <param name="travel">Travel of the rod tip (m).</param>
    public double Twitched(double travel) => travel > 0 ? twitched.Interpolate(Math.Clamp(travel, Travels[0], Travels[^1])) : 0;

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
}
