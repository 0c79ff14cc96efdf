using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;
using LureSim.Tackle;
using LureSim.Water;
using MathNet.Numerics.RootFinding;

namespace LureSim.Decision.Inverse;

/// <summary>Answers questions asked backwards, by root finding on whole simulated casts.</summary>
/// <remarks>
/// A model of a cast need not be monotone, so every question is first scanned over its range; a root finder then works inside a bracket that the scan has
/// shown. Residuals are scaled to order 1, because the finder takes its accuracy for the residual too.
/// </remarks>
public static class InverseQuestions
{
    /// <summary>Share of the retrieve in contact with the bottom from which a head holds it. Assumed: on the last third of a cast any line lifts any lure.</summary>
    public const double HoldingShare = 1.0 / 3.0;

    // Speeds scanned, as multiples of the presentation's.
    private const double SlowestFactor = 0.5;
    private const double FastestFactor = 3.0;
    private const int SpeedSteps = 11;

    // Accuracy of a root in the logarithm of weight or speed, and of its scaled residual.
    private const double Accuracy = 0.01;
    private const int MostIterations = 25;

    /// <summary>Longest fall that a count-down is looked for in (s).</summary>
    public const double LongestCount = 90;

    /// <summary>Share of the retrieve that a head spends on the bottom after it was let fall to it.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="head">Jig head.</param>
    /// <param name="body">Body.</param>
    /// <param name="presentation">Presentation; its count-down is replaced by a fall to the bottom.</param>
    /// <param name="options">Settings.</param>
    /// <param name="cancellation">Honoured within the simulation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static double BottomShare(Scenario scenario, JigHead head, LureBody body, Presentation presentation, SimulationOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(presentation);
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(options);
        (Track track, Coverage coverage) = Trial.RunPath(scenario, new Rig(head, body, presentation with { CountDown = null }), options, cancellation);
        return track.Status == SimulationStatus.Failed ? 0 : coverage.BottomShare;
    }

    /// <summary>A head of any weight, otherwise like those of the box; without a label.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="mass">Mass of the metal (kg).</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    public static JigHead HeadOf(Scenario scenario, double mass)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        IReadOnlyList<JigHead> heads = scenario.Tackle.JigHeads;
        JigHead like = heads.Where(h => h.Mass > 0).MinBy(h => Math.Abs(Math.Log(h.Mass / mass))) ?? heads[0] with { Metal = HeadMetal.Lead };
        return like with { Mass = mass, Label = "" };
    }

    /// <summary>The lightest head that holds the bottom in this current with this presentation.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="body">Body.</param>
    /// <param name="presentation">Presentation; its count-down is replaced by a fall to the bottom.</param>
    /// <param name="options">Settings.</param>
    /// <param name="parallel">Threads and cancellation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static InverseAnswer HeadForBottom(Scenario scenario, LureBody body, Presentation presentation, SimulationOptions options, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(parallel);
        ArgumentNullException.ThrowIfNull(body);
        if (!body.NeedsHead || scenario.Tackle.JigHeads.Count == 0)
            return new(InverseQuestion.HeadForBottom, InverseStatus.NotReachable, null, presentation, null, null, null, null, null, null, InverseReason.TakesNoHead, 0, 0);
        IReadOnlyList<double> common = CommonWeights.All;
        IReadOnlyList<JigHead> owned = scenario.Tackle.JigHeads;
        JigHead[] scanned = [.. common.Select(mass => HeadOf(scenario, mass))];

        // Heads of the box that are no common size, by weight or by metal, are tried as well.
        JigHead[] all = [.. scanned, .. owned.Where(own => !scanned.Any(head => Alike(head, own)))];
        double[] shares = new double[all.Length];
        Parallel.For(0, shares.Length, parallel, i => shares[i] = Share(all[i]));
        int runs = shares.Length;
        JigHead? own = owned.Where(h => shares[Array.FindIndex(all, head => Alike(head, h))] >= HoldingShare).MinBy(h => h.Mass);

        // The lightest from which on all heavier ones hold.
        int first = common.Count;
        while (first > 0 && shares[first - 1] >= HoldingShare) first--;
        InverseReason odd = Enumerable.Range(0, first).Any(i => shares[i] >= HoldingShare) ? InverseReason.SomeLighterHold : InverseReason.None;
        if (first == common.Count)
        {
            double best = shares.Take(common.Count).Max();
            return Answer(InverseStatus.NotReachable, null, null, best <= 0 ? InverseReason.NeverTouchesBottom : InverseReason.SeldomOnBottom, best);
        }

        if (first == 0) return Answer(InverseStatus.AnyWillDo, common[0], common[0], InverseReason.LightestHolds);
        double root = common[first];
        bool converged = Brent.TryFindRoot(
            x =>
            {
                runs++;
                return (Share(HeadOf(scenario, Math.Exp(x))) / HoldingShare) - 1;
            },
            Math.Log(common[first - 1]),
            Math.Log(common[first]),
            Accuracy,
            MostIterations,
            out double found);
        if (converged) root = Math.Exp(found);
        return Answer(InverseStatus.Found, root, common[first], odd);

        static bool Alike(JigHead a, JigHead b) => a.Metal == b.Metal && a.HookMass == b.HookMass && Math.Abs(a.Mass - b.Mass) <= 1e-9;
        double Share(JigHead head) => BottomShare(scenario, head, body, presentation, options, parallel.CancellationToken);
        InverseAnswer Answer(InverseStatus status, double? value, double? size, InverseReason reason, double figure = 0) =>
            new(InverseQuestion.HeadForBottom, status, null, presentation, value, null, null, own, size, null, reason, figure, runs);
    }

    /// <summary>The reel speed at which the middle depth of the retrieve is a given one; as the band, the speeds at which it is inside the strike zone.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="depth">Depth wanted (m); null for the middle of the strike zone.</param>
    /// <param name="options">Settings.</param>
    /// <param name="parallel">Threads and cancellation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The depth is outside the water.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static InverseAnswer SpeedForDepth(Scenario scenario, Rig rig, double? depth, SimulationOptions options, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(parallel);
        StrikeZone zone = scenario.Spot.StrikeZone;
        double target = depth ?? (0.5 * (zone.Top + zone.Bottom));
        Guard.InRange(target, 0, scenario.Spot.Depth);

        // A swing without reeling is asked for the speed at which line may come in meanwhile.
        double most = rig.Presentation.FastestSpeed, least = Math.Min(0.02, most), own = rig.Presentation.RetrieveSpeed > 0 ? rig.Presentation.RetrieveSpeed : 0.1;
        double slowest = Math.Clamp(own * SlowestFactor, least, most), fastest = Math.Clamp(own * FastestFactor, least, most);
        double[] logs = [.. Enumerable.Range(0, SpeedSteps).Select(i => Math.Log(slowest) + ((Math.Log(fastest) - Math.Log(slowest)) * i / (SpeedSteps - 1)))];
        double[] medians = new double[SpeedSteps];
        Parallel.For(0, SpeedSteps, parallel, i => medians[i] = Median(logs[i]));
        int runs = SpeedSteps;
        double? value = Root(target, out bool several);
        double? top = Root(zone.Top, out _), bottom = Root(zone.Bottom, out _);
        bool slowestInside = zone.Contains(medians[0]), fastestInside = zone.Contains(medians[^1]);
        double? from = bottom is { } b ? Math.Exp(b) : slowestInside ? slowest : null;
        double? to = top is { } t ? Math.Exp(t) : fastestInside ? fastest : null;
        InverseReason reason = several ? InverseReason.OtherSpeedsToo : InverseReason.None;
        InverseStatus status = InverseStatus.Found;
        if (value is null)
        {
            status = InverseStatus.NotReachable;
            reason = medians.Max() < target ? InverseReason.SlowestRunsAbove
                : medians.Min() > target ? InverseReason.FastestRunsBelow
                : InverseReason.NoSpeedGivesIt;
        }

        return new(InverseQuestion.SpeedForDepth, status, rig.Head, rig.Presentation, value is { } log ? Math.Exp(log) : null, from, to, null, null, target, reason, 0, runs);

        double Median(double log)
        {
            (Track track, Coverage coverage) = Trial.RunPath(scenario, rig with { Presentation = rig.Presentation with { RetrieveSpeed = Math.Clamp(Math.Exp(log), least, most) } }, options, parallel.CancellationToken);
            return track.Status == SimulationStatus.Failed ? 0 : coverage.MedianDepth;
        }

        // The fastest crossing from deeper to shallower: the one that a faster hand leaves upwards.
        double? Root(double at, out bool more)
        {
            int[] brackets = [.. Enumerable.Range(0, SpeedSteps - 1).Where(i => medians[i] >= at && medians[i + 1] < at)];
            more = brackets.Length > 1;
            if (brackets.Length == 0) return null;
            int i = brackets[^1];
            double scale = Math.Max(0.05, 0.1 * scenario.Spot.Depth);
            bool converged = Brent.TryFindRoot(
                x =>
                {
                    runs++;
                    return (Median(x) - at) / scale;
                },
                logs[i],
                logs[i + 1],
                Accuracy,
                MostIterations,
                out double root);
            return converged ? root : 0.5 * (logs[i] + logs[i + 1]);
        }
    }

    /// <summary>The count-down that brings the lure to the middle of the strike zone; as the band, from its upper to its lower edge.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="options">Settings.</param>
    /// <param name="cancellation">Honoured within the simulation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static InverseAnswer CountDownForZone(Scenario scenario, Rig rig, SimulationOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(options);
        StrikeZone zone = scenario.Spot.StrikeZone;
        Presentation falls = rig.Presentation with { CountDown = null };
        Track track = Trial.Simulate(scenario, rig with { Presentation = falls }, options with { FallOnly = true, FallLimit = LongestCount, SampleInterval = 0.05 }, cancellation);
        double resting = WaterColumn.Of(scenario.Spot).Depth - TackleBuilder.Lure(rig.Head, rig.Body).ContactRadius - 0.005;
        double middle = Math.Min(0.5 * (zone.Top + zone.Bottom), resting);
        double? value = TimeTo(middle), from = zone.Top <= 0 ? 0 : TimeTo(zone.Top), to = TimeTo(Math.Min(zone.Bottom, resting));
        double deepest = track.Count > 0 ? Enumerable.Range(0, track.Count).Max(track.Depth) : 0;
        bool stays = zone.Bottom >= resting;
        InverseReason reason = track.Status == SimulationStatus.Failed ? InverseReason.FallNotComputed
            : value is null ? from is not null ? InverseReason.UpperPartOnly
                : rig.Presentation.Fall == FallMode.TightLine ? InverseReason.SinksNoDeeperTight : InverseReason.SinksNoDeeperSlack
            : stays ? InverseReason.ZoneReachesBottom : InverseReason.None;
        double? found = value ?? from;
        return new(InverseQuestion.CountDownForZone, found is null ? InverseStatus.NotReachable : InverseStatus.Found, rig.Head, rig.Presentation, found, from, stays ? null : to, null, null, middle, reason, reason is InverseReason.SinksNoDeeperTight or InverseReason.SinksNoDeeperSlack ? deepest : 0, 1)
        {
            Failure = track.Status == SimulationStatus.Failed ? track.End : null,
        };

        double? TimeTo(double depth) => Trial.TimeToDepth(track, depth);
    }

    /// <summary>The three questions for one rig.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="depth">Depth that the retrieve should hold (m); null for the middle of the strike zone.</param>
    /// <param name="options">Settings.</param>
    /// <param name="parallel">Threads and cancellation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static IReadOnlyList<InverseAnswer> All(Scenario scenario, Rig rig, double? depth, SimulationOptions options, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(parallel);
        return
        [
            HeadForBottom(scenario, rig.Body, rig.Presentation, options, parallel),
            SpeedForDepth(scenario, rig, depth, options, parallel),
            CountDownForZone(scenario, rig, options, parallel.CancellationToken),
        ];
    }
}
