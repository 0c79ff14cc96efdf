using System.Diagnostics;
using LureSim.Coupling;
using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Swimming;
using LureSim.Swimming.Forces;
using LureSim.Tackle;

namespace LureSim.Decision.RigChecks;

/// <summary>Runs the action model on the rigs of a scenario.</summary>
public static class RigChecker
{
    // Windows (s): long enough for ten beats of a slow tail after the start has died away.
    private const double SweepWindow = 4;

    // Leaders on which knots are compared (m): about 15 and 40 lb of fluorocarbon, common practice.
    private const double LightLeader = 0.33e-3;
    private const double HeavyLeader = 0.6e-3;

    // A knot matters where the medians differ by this factor and as many of a dozen tries say so; assumed.
    private const double KnotMatters = 1.15;
    private const int TriesThatAgree = 9;

    // Maps of faults: speeds of a slow walk to a burn (m/s), some of the dozen tries in each cell, amounts from a careful to a careless hand (m, radians, shares).
    // A gape that is wider by less, or metal that is nearer to its common place, is no fault; assumed.
    private const double GapeMatters = 1.15, StationMatters = 0.05;

    private static readonly double[] Gapes = [1.25, 1.5, 2, 2.5], Stations = [0.1, 0.3, 0.7, 0.9], Losses = [0.15, 0.3, 0.5, 0.75];
    private static readonly double[] FaultSpeeds = [0.3, 0.5, 0.7, 1.0, 1.3];
    private const int FaultTries = 4;
    private static readonly double[] Exits = [0.001, 0.002, 0.004, 0.006], Angles = [5 * Degree, 10 * Degree, 20 * Degree, 30 * Degree], Bunches = [0.001, 0.002, 0.004, 0.008], Shanks = [0.5, 0.6, 0.7, 0.8];
    private const double Degree = Math.PI / 180;

    // Angle of the line at a lure whose track tells none (radians).
    private const double PlainElevation = 0.1;

    private const int SweepPoints = 10;
    private const int MapBends = 9;
    private const int MapSpeeds = 8;
    private const double SlowestSpeed = 0.15;
    private const double FastestSpeed = 1.5;
    private const double SmallBend = 2 * Math.PI / 180;
    private const double CommonPlane = 0.5;
    private const double LargestMappedBend = 24 * Math.PI / 180;

    // The map goes this far beyond the bend that the rig has, and no farther than a body may be bent.
    private const double MapBeyondOwn = 1.2;

    /// <summary>Checks every lure with every presentation, and one closely.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="focus">The rig to look at closely; null for the first lure with the first presentation.</param>
    /// <param name="faults">True for the maps of faults by amount and speed, which cost some seconds.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static RigSheet Check(Scenario scenario, Rig? focus, bool faults = false, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        Rig[] rigs = [.. scenario.Tackle.LuresWith(focus is { Body.NeedsHead: true } ? focus.Body : BodyChoice.Of(scenario).Soft).SelectMany(lure => scenario.Presentations.Select(p => new Rig(lure.Head, lure.Body, p)))];
        focus ??= rigs[0];
        if (!rigs.Contains(focus)) rigs = [focus, .. rigs];
        var rows = new RigAction[rigs.Length];
        int done = 0;

        // The close look costs about as much as thirty rows.
        double total = rigs.Length + 30;
        var parallel = new ParallelOptions { CancellationToken = cancellation };
        Parallel.For(0, rigs.Length, parallel, i =>
        {
            rows[i] = OnRetrieve(scenario, rigs[i], null, cancellation);
            progress?.Report(Interlocked.Increment(ref done) / total);
        });
        RigFocus close = Focus(scenario, rows[Array.IndexOf(rigs, focus)], full: true, parallel);
        if (faults && focus.Body.NeedsHead) close = close with { Faults = Faults(scenario, close.Action, parallel) };
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
        (double speed, double elevation) = Working(track, rig.Presentation.RetrieveSpeed);
        speed = Math.Clamp(speed, 0.02, 3);
        elevation = Math.Clamp(elevation, -1.2, 1.2);
        var runner = new RigWindow(scenario.Tackle, scenario.Spot, rig.Head, rig.Body, cancellation);
        EnsembleAssessment retrieve = runner.SteadyTries(speed, elevation);
        Rigging clean = scenario.Tackle.Rigging.Straightened();
        bool alike = clean == scenario.Tackle.Rigging && !runner.HasTail;
        ActionAssessment rest = alike ? retrieve.Typical
            : new RigWindow(scenario.Tackle with { Rigging = clean }, scenario.Spot, rig.Head, rig.Body, cancellation).Steady(speed, elevation, SweepWindow, ActionTerms.All & ~ActionTerms.Wake);
        return new RigAction(rig, speed, elevation, retrieve, RigWindow.Twitches(rig.Presentation) ? runner.TwitchTries(rig.Presentation) : null, SwimmingDrag.Ratio(retrieve.Typical, rest));
    }

    /// <summary>A close look at one rig.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="action">What it does on its retrieve.</param>
    /// <param name="full">True for the sweep over speeds and the map of spin, which cost a second or two.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads. Null for all threads.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static RigFocus Focus(Scenario scenario, RigAction action, bool full, ParallelOptions? parallel = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(action);
        parallel ??= new ParallelOptions();
        Rig rig = action.Rig;
        var runner = new RigWindow(scenario.Tackle, scenario.Spot, rig.Head, rig.Body, parallel.CancellationToken);
        EnsembleAssessment fall = null!, loop = null!, snug = null!;
        Parallel.Invoke(
            parallel,
            () => fall = runner.FallTries(),
            () => loop = runner.TwitchTries(rig.Presentation, KnotStyle.Loop),
            () => snug = runner.TwitchTries(rig.Presentation, KnotStyle.Snug));
        LureAssembly parts = LureAssembly.Of(rig.Head, rig.Body, scenario.Tackle.Rigging);
        List<RigFix> fixes = Fixes(scenario, action, parallel);
        return new RigFocus(
            action,
            parts,
            fall,
            loop,
            snug,
            full ? Sweep(scenario, rig, action.LineElevation, parallel) : null,
            full && rig.Body.NeedsHead ? Map(scenario, action, parts, parallel) : null,
            fixes,
            full ? Knots(scenario, action, parallel) : [],
            [])
        {
            Rigging = scenario.Tackle.Rigging,
            Fixed = PutRight(scenario, action, fixes, parallel),
            Range = full && !rig.Body.NeedsHead && !rig.Body.Kind.OnTop ? runner.Range(action.LineElevation) : null,
        };
    }

    private static FixedRig? PutRight(Scenario scenario, RigAction action, List<RigFix> fixes, ParallelOptions parallel)
    {
        Rig rig = action.Rig;
        Rigging own = scenario.Tackle.Rigging;
        if (!rig.Body.NeedsHead || Trials(own, rig).Count == 0) return null;
        Rigging right = fixes.Count > 0 ? fixes[0].Fixed : Right(own, rig);
        var runner = new RigWindow(scenario.Tackle with { Rigging = right }, scenario.Spot, rig.Head, rig.Body, parallel.CancellationToken);
        return new FixedRig(
            right,
            LureAssembly.Of(rig.Head, rig.Body, right),
            fixes.Count > 0 ? fixes[0].After : runner.SteadyTries(action.Speed, action.LineElevation),
            action.Twitch is null ? null : runner.TwitchTries(rig.Presentation));
    }

    // Everything in its place, on a hook that leaves the rear free.
    private static Rigging Right(Rigging own, Rig rig) => own.Straightened() with
    {
        ShankShare = own.ShankShare > rig.Body.Kind.Proportions.ShankShare ? null : own.ShankShare,
        HookGape = own.HookGape > SoftBait.CommonGape(rig.Head, rig.Body, own) ? null : own.HookGape,
        WeightStation = null,
    };

    private static ActionSweep Sweep(Scenario scenario, Rig rig, double elevation, ParallelOptions parallel)
    {
        double[] speeds = [.. Enumerable.Range(0, SweepPoints).Select(i => SlowestSpeed + (i * (FastestSpeed - SlowestSpeed) / (SweepPoints - 1)))];
        Rigging own = scenario.Tackle.Rigging;
        Rigging clean = own.Straightened() with { ShankShare = null, HookGape = null, WeightStation = null };
        bool same = clean == own || !rig.Body.NeedsHead;
        var asRigged = new RigWindow(scenario.Tackle, scenario.Spot, rig.Head, rig.Body, parallel.CancellationToken);
        RigWindow? cleaned = same ? null : new RigWindow(scenario.Tackle with { Rigging = clean }, scenario.Spot, rig.Head, rig.Body, parallel.CancellationToken);
        var reports = new ActionReport[same ? speeds.Length : 2 * speeds.Length];
        Parallel.For(0, reports.Length, parallel, i =>
        {
            RigWindow runner = i < speeds.Length ? asRigged : cleaned!;
            reports[i] = runner.Steady(speeds[i % speeds.Length], elevation, SweepWindow).Report;
        });
        return new ActionSweep(speeds, reports[..speeds.Length], same ? null : reports[speeds.Length..]);
    }

    private static SpinMap Map(Scenario scenario, RigAction action, LureAssembly parts, ParallelOptions parallel)
    {
        double own = Math.Sqrt((parts.BendSideways * parts.BendSideways) + (parts.BendUp * parts.BendUp));

        // In the plane of the rig's own bend; a straight one is bent sideways and a little up, as baits are.
        double plane = own > SmallBend ? Math.Atan2(parts.BendUp, parts.BendSideways) : CommonPlane;
        double most = Math.Max(LargestMappedBend, Math.Min(Limits.Lean.Most, MapBeyondOwn * own));
        double[] bends = [.. Enumerable.Range(0, MapBends).Select(i => i * most / (MapBends - 1))];
        double[] speeds = [.. Enumerable.Range(0, MapSpeeds).Select(i => SlowestSpeed + (i * (FastestSpeed - SlowestSpeed) / (MapSpeeds - 1)))];
        double[,] spin = new double[MapBends, MapSpeeds], twists = new double[MapBends, MapSpeeds];
        var verdicts = new ActionVerdict[MapBends, MapSpeeds];
        Rigging clean = scenario.Tackle.Rigging.Straightened();
        Parallel.For(0, MapBends * MapSpeeds, parallel, i =>
        {
            int b = i / MapSpeeds, s = i % MapSpeeds;
            Rigging bent = clean with
            {
                Bend = bends[b] * Math.Cos(plane),
                ExitAbove = BodyBends.ExitOfBend(bends[b] * Math.Sin(plane), parts.Engagement),
            };
            var runner = new RigWindow(scenario.Tackle with { Rigging = bent }, scenario.Spot, action.Rig.Head, action.Rig.Body, parallel.CancellationToken);
            ActionReport report = runner.Steady(speeds[s], action.LineElevation, SweepWindow).Report;
            spin[b, s] = Math.Abs(report.SpinRate);
            twists[b, s] = Math.Abs(report.LineTwistsPerMetre);
            verdicts[b, s] = report.Verdict;
        });
        return new SpinMap(bends, speeds, spin, twists, verdicts, own, action.Speed);
    }

    // Each fault is taken away by itself and the rig is tried again; only what changes the verdict for the better is told. Where none cures it alone,
    // all are taken away together.
    private static List<RigFix> Fixes(Scenario scenario, RigAction action, ParallelOptions parallel)
    {
        Rigging own = scenario.Tackle.Rigging;
        Rig rig = action.Rig;
        if (!rig.Body.NeedsHead) return [];
        List<(RigFault Fault, double Amount, Rigging Fixed)> trials = Trials(own, rig);
        List<RigFix> found = Tried(trials);
        if (trials.Count < 2 || found.Any(fix => !fix.After.Report.IsFault)) return found;
        int best = found.Count > 0 ? ActionEnsemble.Badness(found[0].After.Verdict) : int.MaxValue;
        List<RigFix> together = Tried([(RigFault.Several, 0, Right(own, rig))]);
        return [.. together.Where(fix => ActionEnsemble.Badness(fix.After.Verdict) < best), .. found];

        List<RigFix> Tried(List<(RigFault Fault, double Amount, Rigging Fixed)> all)
        {
            var fixes = new RigFix[all.Count];
            Parallel.For(0, all.Count, parallel, i =>
            {
                var runner = new RigWindow(scenario.Tackle with { Rigging = all[i].Fixed }, scenario.Spot, rig.Head, rig.Body, parallel.CancellationToken);
                fixes[i] = new RigFix(all[i].Fault, all[i].Amount, Common(all[i].Fault, own, rig), action.Retrieve, runner.SteadyTries(action.Speed, action.LineElevation), all[i].Fixed);
            });
            int before = ActionEnsemble.Badness(action.Retrieve.Verdict);
            return [.. fixes.Where(fix => ActionEnsemble.Badness(fix.After.Verdict) < before).OrderBy(fix => ActionEnsemble.Badness(fix.After.Verdict)).ThenByDescending(fix => fix.After.Agreeing)];
        }
    }

    // What is common for a rig instead of a figure that is too great or in the wrong place.
    private static double Common(RigFault fault, Rigging own, Rig rig) => fault switch
    {
        RigFault.Shank => rig.Body.Kind.Proportions.ShankShare,
        RigFault.HookGape => SoftBait.CommonGape(rig.Head, rig.Body, own),
        RigFault.WeightStation => SoftBait.CommonWeightStation,
        RigFault.ExitSideways or RigFault.ExitAbove or RigFault.Bend or RigFault.PointLean or RigFault.HeadTurn or RigFault.PulledUp or RigFault.TailLost or RigFault.Several => 0,
        _ => throw new UnreachableException(),
    };

    /// <summary>A rigging with one fault after the other taken away.</summary>
    /// <param name="own">The rigging of a soft bait.</param>
    /// <param name="rig">The soft bait on its hook.</param>
    internal static List<(RigFault Fault, double Amount, Rigging Fixed)> Trials(Rigging own, Rig rig)
    {
        double common = rig.Body.Kind.Proportions.ShankShare;
        List<(RigFault Fault, double Amount, Rigging Fixed)> trials = [];
        if (own.ExitSideways != 0) trials.Add((RigFault.ExitSideways, own.ExitSideways, own with { ExitSideways = 0 }));
        if (own.ExitAbove != 0) trials.Add((RigFault.ExitAbove, own.ExitAbove, own with { ExitAbove = 0 }));
        if (own.Bend != 0) trials.Add((RigFault.Bend, own.Bend, own with { Bend = 0 }));
        if (own.PointLean != 0) trials.Add((RigFault.PointLean, own.PointLean, own with { PointLean = 0 }));
        if (own.HeadTurn != 0) trials.Add((RigFault.HeadTurn, own.HeadTurn, own with { HeadTurn = 0 }));
        if (own.PulledUp != 0) trials.Add((RigFault.PulledUp, own.PulledUp, own with { PulledUp = 0 }));
        if (own.TailLost != 0) trials.Add((RigFault.TailLost, own.TailLost, own with { TailLost = 0 }));
        if (own.HookGape > GapeMatters * SoftBait.CommonGape(rig.Head, rig.Body, own)) trials.Add((RigFault.HookGape, own.HookGape.Value, own with { HookGape = null }));
        if (own.WeightStation is { } station && OnShank(rig.Head) && Math.Abs(station - SoftBait.CommonWeightStation) > StationMatters) trials.Add((RigFault.WeightStation, station, own with { WeightStation = null }));
        if (own.ShankShare > common) trials.Add((RigFault.Shank, own.ShankShare.Value, own with { ShankShare = null }));
        return trials;
    }

    // The clean lure on a loop, and snug on a light and a heavy leader; the same tries for each knot, so that try stands against try.
    private static KnotRow[] Knots(Scenario scenario, RigAction action, ParallelOptions parallel)
    {
        Rig rig = action.Rig;
        Outfit clean = scenario.Tackle with { Rigging = scenario.Tackle.Rigging.Straightened() };
        var runner = new RigWindow(clean, scenario.Spot, rig.Head, rig.Body, parallel.CancellationToken);
        (KnotStyle Style, double Leader)[] knots = [(KnotStyle.Loop, HeavyLeader), (KnotStyle.Snug, LightLeader), (KnotStyle.Snug, HeavyLeader)];
        TriedRetrieve[] retrieves = Enum.GetValues<TriedRetrieve>();
        var tries = new EnsembleAssessment[retrieves.Length * knots.Length];
        Parallel.For(0, tries.Length, parallel, i =>
        {
            (KnotStyle style, double leader) = knots[i % knots.Length];
            tries[i] = runner.KnotTries(retrieves[i / knots.Length], action.Speed, action.LineElevation, style, leader);
        });
        return [.. retrieves.Select((retrieve, r) => Row(retrieve, tries[knots.Length * r], tries[(knots.Length * r) + 1], tries[(knots.Length * r) + 2], runner.HasTail))];
    }

    private static KnotRow Row(TriedRetrieve retrieve, EnsembleAssessment loop, EnsembleAssessment light, EnsembleAssessment heavy, bool hasTail)
    {
        double Swing(ActionReport r) => retrieve == TriedRetrieve.Steady && hasTail ? r.TailAmplitude : r.Darts.Count > 0 ? r.Darts.Average(dart => Math.Abs(dart.Heading)) : r.NoseSwing;
        int more = loop.Members.Zip(heavy.Members, (a, b) => Swing(a) > Swing(b)).Count(wins => wins);
        TrySpread onLoop = loop.Of(Swing), onLight = light.Of(Swing), onHeavy = heavy.Of(Swing);
        KnotAdvice advice = more >= TriesThatAgree && onLoop.Median > (KnotMatters * onHeavy.Median) + ActionReport.Noticeable ? KnotAdvice.Loop
            : loop.Members.Count - more >= TriesThatAgree && onHeavy.Median > (KnotMatters * onLoop.Median) + ActionReport.Noticeable ? KnotAdvice.Snug
            : KnotAdvice.Either;
        return new KnotRow(retrieve, onLoop, onLight, onHeavy, more, advice);
    }

    private static bool OnShank(JigHead head) => head.Mass > 0 && head.Place == WeightPlace.Shank;

    private static FaultMap[] Faults(Scenario scenario, RigAction action, ParallelOptions parallel)
    {
        Rig rig = action.Rig;
        Rigging clean = scenario.Tackle.Rigging.Straightened() with { ShankShare = null, HookGape = null, WeightStation = null };
        LureProperties lure = TackleBuilder.Lure(rig.Head, rig.Body);
        bool nose = rig.Head.Mass > 0 && rig.Head.Place == WeightPlace.Nose;
        List<(RigFault Fault, double[] Amounts)> faults = [(RigFault.Bend, Angles), (RigFault.ExitSideways, Exits), (RigFault.ExitAbove, Exits)];
        faults.Add(nose ? (RigFault.HeadTurn, Angles) : (RigFault.PulledUp, Bunches));
        faults.Add((RigFault.Shank, [.. Shanks.Where(share => share > rig.Body.Kind.Proportions.ShankShare)]));
        faults.Add((RigFault.HookGape, [.. Gapes.Select(times => times * SoftBait.CommonGape(rig.Head, rig.Body, clean)).Where(Limits.HookGape.Contains)]));
        if (OnShank(rig.Head)) faults.Add((RigFault.WeightStation, Stations));
        faults.Add((RigFault.TailLost, Losses));
        FaultMap[] maps = [.. faults.Where(f => f.Amounts.Length > 0).Select(f => new FaultMap(f.Fault, f.Amounts, FaultSpeeds, new EnsembleAssessment[f.Amounts.Length, FaultSpeeds.Length]))];
        (FaultMap Map, int Amount, int Speed)[] cells = [.. maps.SelectMany(map => Enumerable.Range(0, map.Amounts.Count * map.Speeds.Count).Select(i => (map, i / map.Speeds.Count, i % map.Speeds.Count)))];
        Parallel.ForEach(cells, parallel, cell =>
        {
            double amount = cell.Map.Amounts[cell.Amount], speed = cell.Map.Speeds[cell.Speed];
            Rigging faulty = cell.Map.Fault switch
            {
                RigFault.Bend => clean with { Bend = amount },
                RigFault.ExitSideways => clean with { ExitSideways = amount },
                RigFault.ExitAbove => clean with { ExitAbove = amount },
                RigFault.HeadTurn => clean with { HeadTurn = amount },
                RigFault.PulledUp => clean with { PulledUp = amount },
                RigFault.Shank => clean with { ShankShare = amount },
                RigFault.HookGape => clean with { HookGape = amount },
                RigFault.WeightStation => clean with { WeightStation = amount },
                RigFault.TailLost => clean with { TailLost = amount },
                _ => throw new InvalidOperationException($"No map is drawn of {cell.Map.Fault}."),
            };
            var runner = new RigWindow(scenario.Tackle with { Rigging = faulty }, scenario.Spot, rig.Head, rig.Body, parallel.CancellationToken);
            cell.Map.Cells[cell.Amount, cell.Speed] = runner.SteadyTries(speed, runner.HeldElevation(lure, speed), FaultTries);
        });
        return maps;
    }

    // The speed and the angle of the line at which half of the water of the retrieve is covered: a lure that lies or hangs still covers none, and does not swim. In a swing nothing is reeled.
    private static (double Speed, double Elevation) Working(Track track, double otherwise)
    {
        int[] worked = [.. Enumerable.Range(0, track.Count).Where(i => (track.State[i] & (TrackState.Falling | TrackState.OutOfWater)) == 0 && double.IsFinite(track.SpeedThroughWater[i])).OrderBy(i => track.SpeedThroughWater[i])];
        double half = 0.5 * worked.Sum(i => track.SpeedThroughWater[i]), covered = 0;
        double speed = otherwise;
        foreach (int i in worked)
        {
            covered += track.SpeedThroughWater[i];
            if (covered < half) continue;
            speed = track.SpeedThroughWater[i];
            break;
        }

        double[] angles = [.. worked.Where(i => track.SpeedThroughWater[i] >= 0.5 * speed && double.IsFinite(track.LureAngle[i])).Select(i => track.LureAngle[i])];
        return (speed, angles.Length > 0 ? MathNet.Numerics.Statistics.ArrayStatistics.MedianInplace(angles) : PlainElevation);
    }
}
