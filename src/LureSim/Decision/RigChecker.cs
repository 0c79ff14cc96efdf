using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Scenarios;
using LureSim.Swimming;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Decision;

/// <summary>Runs the action model on the rigs of a scenario.</summary>
public static class RigChecker
{
    // Windows (s): long enough for ten beats of a slow tail after the start has died away.
    private const double RetrieveWindow = 5;
    private const double SweepWindow = 4;
    private const double Settling = 2;
    private const double FallWindow = 5;
    private const double DragWindow = 3;

    // Twitch, twitch, pause for a retrieve that has none: travel (m), pull and interval (s), pause (s); common practice.
    private const double PlainStroke = 0.3;
    private const double PlainPull = 0.15;
    private const double PlainInterval = 0.7;
    private const double PlainPause = 1.6;

    // Interval of twitches in the ready-made retrieves (s).
    private const double ShortInterval = 0.5;

    // The tip of a rod lifted up pulls the line by less than it travels; the part along the line (assumed).
    private const double StrokeAlongLine = 0.7;

    // A pause may be long; the motion has died away after this time (s).
    private const double LongestPause = 3;

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

    // Factors beyond these are no drag but a failure of the window.
    private const double LeastFactor = 0.5;
    private const double GreatestFactor = 10;

    private enum Fault
    {
        ExitSideways,
        ExitAbove,
        Bend,
        PointLean,
        HeadTurn,
        PulledUp,
        Shank,
        Knot,
    }

    /// <summary>Checks every lure with every presentation, and one closely.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="focus">The rig to look at closely; null for the first lure with the first presentation.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static RigSheet Check(Scenario scenario, Rig? focus, UnitSystem units, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        Rig[] rigs = [.. scenario.Tackle.LuresWith(BodyChoice.Of(scenario).Soft).SelectMany(lure => scenario.Presentations.Select(p => new Rig(lure.Head, lure.Body, p)))];
        focus ??= rigs[0];
        if (!rigs.Contains(focus)) rigs = [focus, .. rigs];
        var rows = new RigAction[rigs.Length];
        int done = 0;

        // The close look costs about as much as thirty rows.
        double total = rigs.Length + 30;
        Parallel.For(0, rigs.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            rows[i] = Of(scenario, rigs[i], null, cancellation);
            progress?.Report(Interlocked.Increment(ref done) / total);
        });
        RigFocus close = Focus(scenario, rows[Array.IndexOf(rigs, focus)], units, full: true, cancellation);
        progress?.Report(1);
        return new RigSheet(scenario, rows, close);
    }

    /// <summary>What one rig does on its retrieve.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="track">Its track; null to compute it.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static RigAction Of(Scenario scenario, Rig rig, Track? track, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(rig);
        track ??= Planner.Try(scenario, rig, new SimulationOptions(), cancellation).Track;
        double speed = Math.Clamp(Median(track, track.SpeedThroughWater, rig.Presentation.RetrieveSpeed), 0.02, 3);
        double elevation = Math.Clamp(Median(track, track.LureAngle, 0.1), -1.2, 1.2);
        var runner = new Runner(scenario, rig, cancellation);
        ActionRun retrieve = runner.Steady(speed, elevation, RetrieveWindow);
        Rigging clean = scenario.Tackle.Rigging.Straightened;
        bool alike = clean == scenario.Tackle.Rigging && !runner.HasTail;
        ActionRun rest = alike ? retrieve
            : new Runner(scenario with { Tackle = scenario.Tackle with { Rigging = clean } }, rig, cancellation).Steady(speed, elevation, RetrieveWindow, ActionTerms.All & ~ActionTerms.Wake);
        return new RigAction(rig, speed, elevation, retrieve, Twitching(rig.Presentation) is not null ? runner.Twitch(rig.Presentation, null) : null, Ratio(retrieve, rest));
    }

    /// <summary>A close look at one rig.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="action">What it does on its retrieve.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <param name="full">True for the sweep over speeds and the map of spin, which cost a second or two.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static RigFocus Focus(Scenario scenario, RigAction action, UnitSystem units, bool full, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(action);
        Rig rig = action.Rig;
        var runner = new Runner(scenario, rig, cancellation);
        ActionRun fall = null!, loop = null!, snug = null!;
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
            Mend(scenario, action, units, cancellation));
    }

    /// <summary>Reports of one lure on a steady retrieve at some speeds, under two twitches and a pause of some travels, and on the fall.</summary>
    /// <param name="scenario">A validated scenario, for rigging, leader and water.</param>
    /// <param name="head">Head.</param>
    /// <param name="body">Body.</param>
    /// <param name="speeds">Speeds through the water (m/s), 0 to 5.</param>
    /// <param name="travels">Travels of the rod tip (m), above 0 and up to 3.</param>
    /// <param name="parallel">Threads and cancellation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static (ActionReport[] Steady, ActionReport[] Twitched, ActionReport Fall) Reports(
        Scenario scenario, JigHead head, LureBody body, IReadOnlyList<double> speeds, IReadOnlyList<double> travels, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(travels);
        ArgumentNullException.ThrowIfNull(parallel);
        LureProperties lure = TackleBuilder.Lure(head, body);
        var runner = new Runner(scenario, new Rig(head, body, scenario.Presentations[0]), parallel.CancellationToken);
        var reports = new ActionReport[speeds.Count + travels.Count + 1];
        Parallel.For(0, reports.Length, parallel, i =>
        {
            reports[i] = (i < speeds.Count ? runner.Steady(speeds[i], runner.HeldElevation(lure, speeds[i]), SweepWindow)
                : i < reports.Length - 1 ? runner.Twitch(Plain(travels[i - speeds.Count]), null)
                : runner.Fall(FallWindow)).Report;
        });
        return (reports[..speeds.Count], reports[speeds.Count..^1], reports[^1]);

        Presentation Plain(double travel) => scenario.Presentations[0] with
        {
            Moves =
            [
                new Move { Kind = MoveKind.Twitch, Duration = 2 * ShortInterval, Beats = 2, Up = travel },
                new Move { Kind = MoveKind.Pause, Duration = PlainPause },
            ],
        };
    }

    /// <summary>
    /// Drag of a lure as it is rigged over the drag of the same lure put on cleanly with its tail at rest, by speed: what action and faults add on the path.
    /// Both are towed at the same angle of the line, so that the attitude that the line gives does not count. 1 where it could not be computed.
    /// </summary>
    /// <param name="tackle">The tackle, for rigging and leader.</param>
    /// <param name="spot">The spot, for the density and the viscosity of its water.</param>
    /// <param name="head">Head.</param>
    /// <param name="body">Body.</param>
    /// <param name="speeds">Speeds (m/s).</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>Factors and lift areas (m2), one for each speed.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static (double[] Factors, double[] LiftAreas) Drag(TackleBox tackle, Spot spot, JigHead head, LureBody body, IReadOnlyList<double> speeds, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(speeds);
        var water = WaterColumn.Of(spot);
        Rigging clean = tackle.Rigging.Straightened;
        var rigged = new Runner(tackle, head, body, water, cancellation);
        var still = new Runner(tackle with { Rigging = clean }, head, body, water, cancellation);
        bool alike = clean == tackle.Rigging && !rigged.HasTail;
        LureProperties lure = TackleBuilder.Lure(head, body);
        double[] factors = new double[speeds.Count];
        double[] lifts = new double[speeds.Count];
        for (int i = 0; i < speeds.Count; i++)
        {
            double elevation = rigged.HeldElevation(lure, speeds[i]);
            ActionRun run = rigged.Steady(speeds[i], elevation, DragWindow);
            ActionRun? rest = alike ? null : still.Steady(speeds[i], elevation, DragWindow, ActionTerms.All & ~ActionTerms.Wake);
            factors[i] = rest is null ? 1 : Ratio(run, rest);
            Vector3d axes = run.Trace.Body.SemiAxes;
            if (run.Trace.Status == ActionStatus.Completed && double.IsFinite(run.Report.LiftCoefficient)) lifts[i] = Math.Clamp(run.Report.LiftCoefficient * Math.PI * axes.Y * axes.Z, -GreatestLift * axes.X * Math.Max(axes.Y, axes.Z), GreatestLift * axes.X * Math.Max(axes.Y, axes.Z));
        }

        return (factors, lifts);
    }

    // The angle at which the line holds wet weight and drag: towed otherwise, the lure would sink or rise all through the window.
    internal static double HeldElevation(LureProperties lure, double density, double viscosity, double speed)
    {
        double wet = (lure.Mass - (density * lure.Volume)) * PhysicalConstants.StandardGravity;
        double drag = 0.5 * density * speed * lure.DragAreaTimesSpeed(speed, viscosity, out _);
        return Math.Clamp(Math.Atan2(wet, drag), -SteepestElevation, SteepestElevation);
    }

    // On a steady retrieve the mean pull of the line along the path is the mean drag.
    private static double Ratio(ActionRun run, ActionRun rest)
    {
        double with = MeanPull(run.Trace), without = MeanPull(rest.Trace);
        return with > 0 && without > 0 ? Math.Clamp(with / without, LeastFactor, GreatestFactor) : 1;
    }

    private static double MeanPull(ActionTrace trace)
    {
        if (trace.Status != ActionStatus.Completed) return double.NaN;
        double sum = 0;
        int count = 0;
        for (int i = 0; i < trace.Count; i++)
        {
            if (trace.Time[i] < trace.Options.SettlingTime) continue;
            sum += trace.LinePull[i].X;
            count++;
        }

        return count > 0 ? sum / count : double.NaN;
    }

    // Lift coefficient of one on the area seen from above, pi times two semi-axes: no wing of this shape lifts more, so what is more comes of a window that is not steady.
    private const double GreatestLift = Math.PI;

    // Steepest angle of the line at which a lure is towed for its drag (radians): beyond, it hangs rather than swims.
    private const double SteepestElevation = 1.2;

    private static ActionSweep Sweep(Scenario scenario, Rig rig, double elevation, CancellationToken cancellation)
    {
        double[] speeds = [.. Enumerable.Range(0, SweepPoints).Select(i => SlowestSpeed + (i * (FastestSpeed - SlowestSpeed) / (SweepPoints - 1)))];
        Rigging own = scenario.Tackle.Rigging;
        Rigging clean = own.Straightened with { ShankShare = null };
        bool same = clean == own || !rig.Body.NeedsHead;
        var asRigged = new Runner(scenario, rig, cancellation);
        Runner? cleaned = same ? null : new Runner(scenario with { Tackle = scenario.Tackle with { Rigging = clean } }, rig, cancellation);
        var reports = new ActionReport[same ? speeds.Length : 2 * speeds.Length];
        Parallel.For(0, reports.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            Runner runner = i < speeds.Length ? asRigged : cleaned!;
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
        Rigging clean = scenario.Tackle.Rigging.Straightened;
        Parallel.For(0, MapBends * MapSpeeds, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            int b = i / MapSpeeds, s = i % MapSpeeds;
            Rigging bent = clean with
            {
                Bend = bends[b] * Math.Cos(plane),
                ExitAbove = BodyBends.ExitOfBend(bends[b] * Math.Sin(plane), parts.Engagement),
            };
            var runner = new Runner(scenario with { Tackle = scenario.Tackle with { Rigging = bent } }, action.Rig, cancellation);
            ActionReport report = runner.Steady(speeds[s], action.LineElevation, SweepWindow).Report;
            spin[b, s] = Math.Abs(report.SpinRate);
            twists[b, s] = Math.Abs(report.LineTwistsPerMetre);
            verdicts[b, s] = report.Verdict;
        });
        return new SpinMap(bends, speeds, spin, twists, verdicts, own, action.Speed);
    }

    // Each fault is taken away by itself; what that changes is computed, not looked up.
    private static List<Mending> Mend(Scenario scenario, RigAction action, UnitSystem units, CancellationToken cancellation)
    {
        Rigging own = scenario.Tackle.Rigging;
        Rig rig = action.Rig;
        bool twitched = action.Twitch is not null;
        List<(Fault Fault, Rigging Mended)> trials = [];
        if (rig.Body.NeedsHead)
        {
            if (own.ExitSideways != 0) trials.Add((Fault.ExitSideways, own with { ExitSideways = 0 }));
            if (own.ExitAbove != 0) trials.Add((Fault.ExitAbove, own with { ExitAbove = 0 }));
            if (own.Bend != 0) trials.Add((Fault.Bend, own with { Bend = 0 }));
            if (own.PointLean != 0) trials.Add((Fault.PointLean, own with { PointLean = 0 }));
            if (own.HeadTurn != 0) trials.Add((Fault.HeadTurn, own with { HeadTurn = 0 }));
            if (own.PulledUp != 0) trials.Add((Fault.PulledUp, own with { PulledUp = 0 }));
            if (own.ShankShare > rig.Body.Kind.Proportions.ShankShare) trials.Add((Fault.Shank, own with { ShankShare = null }));
        }

        if (own.Knot == KnotStyle.Snug) trials.Add((Fault.Knot, own with { Knot = KnotStyle.Loop, LoopLength = new Rigging().LoopLength }));
        var found = new Mending?[trials.Count];
        double[] gain = new double[trials.Count];
        Parallel.For(0, trials.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            var runner = new Runner(scenario with { Tackle = scenario.Tackle with { Rigging = trials[i].Mended } }, rig, cancellation);
            bool byTwitch = twitched && trials[i].Fault == Fault.Knot;
            ActionReport before = byTwitch ? action.Twitch!.Report : action.Retrieve.Report;
            ActionReport after = (byTwitch ? runner.Twitch(rig.Presentation, null) : runner.Steady(action.Speed, action.LineElevation, RetrieveWindow)).Report;
            gain[i] = Gain(before, after);
            if (gain[i] > WorthMending) found[i] = new Mending(ActionWords.Mend(trials[i].Fault.ToString(), own, rig, before, after, units), before, after);
        });
        return [.. Enumerable.Range(0, trials.Count).Where(i => found[i] is not null).OrderByDescending(i => gain[i]).Select(i => found[i]!)];
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

    // The first twitches of a retrieve and the pause after them; null where the rod only lifts, sweeps or rests.
    private static (int Count, double Height, double Period, double Pause)? Twitching(Presentation presentation)
    {
        IReadOnlyList<Move> cycle = presentation.Cycle;
        for (int i = 0; i < cycle.Count; i++)
        {
            Move move = cycle[i];
            if (move.Kind != MoveKind.Twitch || move.Beats < 1) continue;
            double height = Math.Sqrt((move.Up * move.Up) + (move.Left * move.Left) + (move.Out * move.Out));
            Move next = cycle[(i + 1) % cycle.Count];
            double pause = next.Kind == MoveKind.Pause && double.IsFinite(next.Duration) ? next.Duration : 0;
            return (Math.Min(10, move.Beats), height, move.Duration / move.Beats, Math.Clamp(pause, 0.5, LongestPause));
        }

        return null;
    }

    private static double Median(Track track, double[] values, double otherwise)
    {
        double[] reeling = [.. Enumerable.Range(0, track.Count).Where(i => track.State[i].HasFlag(TrackState.Reeling) && double.IsFinite(values[i])).Select(i => values[i])];
        return reeling.Length > 0 ? MathNet.Numerics.Statistics.ArrayStatistics.MedianInplace(reeling) : otherwise;
    }

    // Runs windows of one rig in the water of one spot.
    private sealed class Runner
    {
        private readonly ActionBody body;
        private readonly TackleBox tackle;
        private readonly double density;
        private readonly double viscosity;
        private readonly CancellationToken cancellation;

        public Runner(Scenario scenario, Rig rig, CancellationToken cancellation)
            : this(scenario.Tackle, rig.Head, rig.Body, WaterColumn.Of(scenario.Spot), cancellation)
        {
        }

        public Runner(TackleBox tackle, JigHead head, LureBody lure, WaterColumn water, CancellationToken cancellation)
        {
            this.tackle = tackle;
            body = ActionBodyBuilder.Of(head, lure, tackle.Rigging);
            density = water.Density;
            viscosity = Math.Clamp(water.KinematicViscosity, 5e-7, 3e-6);
            this.cancellation = cancellation;
        }

        public bool HasTail => body.Tail is not null;

        public double HeldElevation(LureProperties lure, double speed) => RigChecker.HeldElevation(lure, density, viscosity, speed);

        public ActionRun Steady(double speed, double elevation, double window, ActionTerms terms = ActionTerms.All) =>
            Run(TowInput.Steady(speed, elevation), null, new ActionOptions { Duration = window, SettlingTime = Math.Min(Settling, window / 2), Terms = terms });

        public ActionRun Fall(double window) =>
            Run(TowInput.SlackFall(), null, new ActionOptions { Duration = window, SettlingTime = Math.Min(Settling, window / 2) });

        public ActionRun Twitch(Presentation presentation, KnotStyle? knot)
        {
            TowInput tow = Twitching(presentation) is { } t
                ? TowInput.Twitching(Math.Min(3, StrokeAlongLine * t.Height), Math.Max(0.05, t.Period / 2), Math.Max(0.1, t.Period), t.Count, t.Pause)
                : TowInput.Twitching(PlainStroke, PlainPull, PlainInterval, 2, PlainPause);
            return Run(tow, knot, new ActionOptions { Duration = tow.Strokes[^1].End + 1, SettlingTime = 0 });
        }

        private ActionRun Run(TowInput tow, KnotStyle? knot, ActionOptions options)
        {
            cancellation.ThrowIfCancellationRequested();
            TackleBox box = knot is { } style && style != tackle.Rigging.Knot
                ? tackle with { Rigging = tackle.Rigging with { Knot = style, LoopLength = style == KnotStyle.Snug ? 0 : new Rigging().LoopLength } }
                : tackle;
            tow = tow with { WaterDensity = density, KinematicViscosity = viscosity };
            ActionAssessment found = LureActionModel.Assess(body, ActionBodyBuilder.KnotOf(box), tow, options, cancellation);
            cancellation.ThrowIfCancellationRequested();
            return new ActionRun(found.Trace, found.Report);
        }
    }
}
