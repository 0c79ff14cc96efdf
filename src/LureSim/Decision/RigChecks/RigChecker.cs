using LureSim.Coupling;
using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Swimming;
using LureSim.Swimming.Forces;

namespace LureSim.Decision.RigChecks;

/// <summary>Runs the action model on the rigs of a scenario.</summary>
public static class RigChecker
{
    // Windows (s): long enough for ten beats of a slow tail after the start has died away.
    private const double RetrieveWindow = 5;
    private const double SweepWindow = 4;
    private const double FallWindow = 5;

    // Share by which a fault must change the action for its mending to be named.
    private const double WorthMending = 0.25;
    private const double NoSpin = 0.15;

    private const int SweepPoints = 10;
    private const int MapBends = 9;
    private const int MapSpeeds = 8;
    private const double SlowestSpeed = 0.15;
    private const double FastestSpeed = 1.5;
    private const double SmallBend = 2 * Math.PI / 180;
    private const double CommonPlane = 0.5;
    private const double LargestMappedBend = 24 * Math.PI / 180;


    /// <summary>Checks every lure with every presentation, and one closely.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="focus">The rig to look at closely; null for the first lure with the first presentation.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static RigSheet Check(Scenario scenario, Rig? focus, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        Rig[] rigs = [.. scenario.Tackle.LuresWith(focus is { Body.NeedsHead: true } ? focus.Body : BodyChoice.Of(scenario).Soft).SelectMany(lure => scenario.Presentations.Select(p => new Rig(lure.Head, lure.Body, p)))];
        focus ??= rigs[0];
        if (!rigs.Contains(focus)) rigs = [focus, .. rigs];
        var rows = new RigAction[rigs.Length];
        int done = 0;

        // The close look costs about as much as thirty rows.
        double total = rigs.Length + 30;
        Parallel.For(0, rigs.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            rows[i] = OnRetrieve(scenario, rigs[i], null, cancellation);
            progress?.Report(Interlocked.Increment(ref done) / total);
        });
        RigFocus close = Focus(scenario, rows[Array.IndexOf(rigs, focus)], full: true, cancellation);
        progress?.Report(1);
        return new RigSheet(scenario, rows, close);
    }

    /// <summary>What one rig does on its retrieve.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="track">Its track; null to compute it.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static RigAction OnRetrieve(Scenario scenario, Rig rig, Track? track, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(rig);
        track ??= Trial.Run(scenario, rig, new SimulationOptions(), cancellation).Track;
        double speed = Math.Clamp(Median(track, track.SpeedThroughWater, rig.Presentation.RetrieveSpeed), 0.02, 3);
        double elevation = Math.Clamp(Median(track, track.LureAngle, 0.1), -1.2, 1.2);
        var runner = new RigWindow(scenario.Tackle, scenario.Spot, rig.Head, rig.Body, cancellation);
        ActionAssessment retrieve = runner.Steady(speed, elevation, RetrieveWindow);
        Rigging clean = scenario.Tackle.Rigging.Straightened();
        bool alike = clean == scenario.Tackle.Rigging && !runner.HasTail;
        ActionAssessment rest = alike ? retrieve
            : new RigWindow(scenario.Tackle with { Rigging = clean }, scenario.Spot, rig.Head, rig.Body, cancellation).Steady(speed, elevation, RetrieveWindow, ActionTerms.All & ~ActionTerms.Wake);
        return new RigAction(rig, speed, elevation, retrieve, RigWindow.Twitches(rig.Presentation) ? runner.Twitch(rig.Presentation, null) : null, SwimmingDrag.Ratio(retrieve, rest));
    }

    /// <summary>A close look at one rig.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="action">What it does on its retrieve.</param>
    /// <param name="full">True for the sweep over speeds and the map of spin, which cost a second or two.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static RigFocus Focus(Scenario scenario, RigAction action, bool full, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(action);
        Rig rig = action.Rig;
        var runner = new RigWindow(scenario.Tackle, scenario.Spot, rig.Head, rig.Body, cancellation);
        ActionAssessment fall = null!, loop = null!, snug = null!;
        Parallel.Invoke(
            () => fall = runner.Fall(FallWindow),
            () => loop = runner.Twitch(rig.Presentation, KnotStyle.Loop),
            () => snug = runner.Twitch(rig.Presentation, KnotStyle.Snug));
        LureAssembly parts = LureAssembly.Of(rig.Head, rig.Body, scenario.Tackle.Rigging);
        return new RigFocus(
            action,
            parts,
            fall,
            loop,
            snug,
            full ? Sweep(scenario, rig, action.LineElevation, cancellation) : null,
            full && rig.Body.NeedsHead ? Map(scenario, action, parts, cancellation) : null,
            Mend(scenario, action, cancellation));
    }

    private static ActionSweep Sweep(Scenario scenario, Rig rig, double elevation, CancellationToken cancellation)
    {
        double[] speeds = [.. Enumerable.Range(0, SweepPoints).Select(i => SlowestSpeed + (i * (FastestSpeed - SlowestSpeed) / (SweepPoints - 1)))];
        Rigging own = scenario.Tackle.Rigging;
        Rigging clean = own.Straightened() with { ShankShare = null };
        bool same = clean == own || !rig.Body.NeedsHead;
        var asRigged = new RigWindow(scenario.Tackle, scenario.Spot, rig.Head, rig.Body, cancellation);
        RigWindow? cleaned = same ? null : new RigWindow(scenario.Tackle with { Rigging = clean }, scenario.Spot, rig.Head, rig.Body, cancellation);
        var reports = new ActionReport[same ? speeds.Length : 2 * speeds.Length];
        Parallel.For(0, reports.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            RigWindow runner = i < speeds.Length ? asRigged : cleaned!;
            reports[i] = runner.Steady(speeds[i % speeds.Length], elevation, SweepWindow).Report;
        });
        return new ActionSweep(speeds, reports[..speeds.Length], same ? null : reports[speeds.Length..]);
    }

    private static SpinMap Map(Scenario scenario, RigAction action, LureAssembly parts, CancellationToken cancellation)
    {
        double own = Math.Sqrt((parts.BendSideways * parts.BendSideways) + (parts.BendUp * parts.BendUp));

        // In the plane of the rig's own bend; a straight one is bent sideways and a little up, as baits are.
        double plane = own > SmallBend ? Math.Atan2(parts.BendUp, parts.BendSideways) : CommonPlane;
        double most = Math.Max(LargestMappedBend, Math.Min(0.9, 1.2 * own));
        double[] bends = [.. Enumerable.Range(0, MapBends).Select(i => i * most / (MapBends - 1))];
        double[] speeds = [.. Enumerable.Range(0, MapSpeeds).Select(i => SlowestSpeed + (i * (FastestSpeed - SlowestSpeed) / (MapSpeeds - 1)))];
        double[,] spin = new double[MapBends, MapSpeeds], twists = new double[MapBends, MapSpeeds];
        var verdicts = new ActionVerdict[MapBends, MapSpeeds];
        Rigging clean = scenario.Tackle.Rigging.Straightened();
        Parallel.For(0, MapBends * MapSpeeds, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            int b = i / MapSpeeds, s = i % MapSpeeds;
            Rigging bent = clean with
            {
                Bend = bends[b] * Math.Cos(plane),
                ExitAbove = BodyBends.ExitOfBend(bends[b] * Math.Sin(plane), parts.Engagement),
            };
            var runner = new RigWindow(scenario.Tackle with { Rigging = bent }, scenario.Spot, action.Rig.Head, action.Rig.Body, cancellation);
            ActionReport report = runner.Steady(speeds[s], action.LineElevation, SweepWindow).Report;
            spin[b, s] = Math.Abs(report.SpinRate);
            twists[b, s] = Math.Abs(report.LineTwistsPerMetre);
            verdicts[b, s] = report.Verdict;
        });
        return new SpinMap(bends, speeds, spin, twists, verdicts, own, action.Speed);
    }

    // Each fault is taken away by itself; what that changes is computed, not looked up.
    private static List<Mending> Mend(Scenario scenario, RigAction action, CancellationToken cancellation)
    {
        Rigging own = scenario.Tackle.Rigging;
        Rig rig = action.Rig;
        bool twitched = action.Twitch is not null;
        double common = rig.Body.Kind.Proportions.ShankShare;
        List<(RigFault Fault, double Amount, Rigging Mended)> trials = Trials(own, common, rig.Body.NeedsHead);
        var found = new Mending?[trials.Count];
        double[] gain = new double[trials.Count];
        Parallel.For(0, trials.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            var runner = new RigWindow(scenario.Tackle with { Rigging = trials[i].Mended }, scenario.Spot, rig.Head, rig.Body, cancellation);
            bool byTwitch = twitched && trials[i].Fault == RigFault.Knot;
            ActionReport before = byTwitch ? action.Twitch!.Report : action.Retrieve.Report;
            ActionReport after = (byTwitch ? runner.Twitch(rig.Presentation, null) : runner.Steady(action.Speed, action.LineElevation, RetrieveWindow)).Report;
            gain[i] = Gain(before, after);
            if (gain[i] > WorthMending) found[i] = new Mending(trials[i].Fault, trials[i].Amount, trials[i].Fault == RigFault.Shank ? common : 0, before, after);
        });
        return [.. Enumerable.Range(0, trials.Count).Where(i => found[i] is not null).OrderByDescending(i => gain[i]).Select(i => found[i]!)];
    }

    /// <summary>A rigging with one fault after the other taken away.</summary>
    /// <param name="own">The rigging.</param>
    /// <param name="common">Common share of the shank.</param>
    /// <param name="soft">Whether the body is put on a hook.</param>
    internal static List<(RigFault Fault, double Amount, Rigging Mended)> Trials(Rigging own, double common, bool soft)
    {
        List<(RigFault Fault, double Amount, Rigging Mended)> trials = [];
        if (soft)
        {
            if (own.ExitSideways != 0) trials.Add((RigFault.ExitSideways, own.ExitSideways, own with { ExitSideways = 0 }));
            if (own.ExitAbove != 0) trials.Add((RigFault.ExitAbove, own.ExitAbove, own with { ExitAbove = 0 }));
            if (own.Bend != 0) trials.Add((RigFault.Bend, own.Bend, own with { Bend = 0 }));
            if (own.PointLean != 0) trials.Add((RigFault.PointLean, own.PointLean, own with { PointLean = 0 }));
            if (own.HeadTurn != 0) trials.Add((RigFault.HeadTurn, own.HeadTurn, own with { HeadTurn = 0 }));
            if (own.PulledUp != 0) trials.Add((RigFault.PulledUp, own.PulledUp, own with { PulledUp = 0 }));
            if (own.ShankShare > common) trials.Add((RigFault.Shank, own.ShankShare.Value, own with { ShankShare = null }));
        }

        if (own.Knot == KnotStyle.Snug) trials.Add((RigFault.Knot, 0, own with { Knot = KnotStyle.Loop, LoopLength = new Rigging().LoopLength }));
        return trials;
    }

    // What a change is worth: turns of spin taken away, then share of beat or dart won.
    private static double Gain(ActionReport before, ActionReport after)
    {
        double spin = Math.Abs(before.SpinRate) > NoSpin ? (Math.Abs(before.SpinRate) - Math.Abs(after.SpinRate)) / Math.Abs(before.SpinRate) : 0;
        double tail = before.TailAmplitude > 0 || after.TailAmplitude > 0 ? (after.TailAmplitude - before.TailAmplitude) / Math.Max(after.TailAmplitude, before.TailAmplitude) : 0;
        double dart = after.DartAngle > 0.05 ? (after.DartAngle - before.DartAngle) / after.DartAngle : 0;
        double off = Math.Abs(before.MeanYaw) > 0.05 && Math.Abs(before.SpinRate) < NoSpin ? (Math.Abs(before.MeanYaw) - Math.Abs(after.MeanYaw)) / Math.Abs(before.MeanYaw) : 0;
        return Math.Max(2 * spin, Math.Max(tail, Math.Max(dart, off)));
    }

    private static double Median(Track track, double[] values, double otherwise)
    {
        double[] reeling = [.. Enumerable.Range(0, track.Count).Where(i => track.State[i].HasFlag(TrackState.Reeling) && double.IsFinite(values[i])).Select(i => values[i])];
        return reeling.Length > 0 ? MathNet.Numerics.Statistics.ArrayStatistics.MedianInplace(reeling) : otherwise;
    }
}
