using LureSim.Coupling;
using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;

namespace LureSim.Decision.Search;

/// <summary>The rigs of a race and their casts: each rig once, each cast once, all rigs in the same tries.</summary>
/// <param name="scenario">The scenario.</param>
/// <param name="bodies">What the rules want.</param>
/// <param name="simulation">Settings of single runs.</param>
/// <param name="samples">Tries, 0 for the scenario itself.</param>
/// <param name="parallel">Threads and cancellation.</param>
internal sealed class RaceField(Scenario scenario, BodyChoice bodies, SimulationOptions simulation, int samples, ParallelOptions parallel)
{
    private readonly SimulationOptions settings = Trial.ForSearch(simulation);
    private readonly SimulationOptions look = Trial.ForLook(simulation);
    private readonly Dictionary<(Rig Rig, double Depth), double?> counts = [];
    private readonly Dictionary<Rig, RaceArm> known = [];

    /// <summary>Rigs so far.</summary>
    public int Considered => known.Count;

    /// <summary>Casts so far.</summary>
    public int Runs { get; private set; }

    /// <summary>Rigs that were cast in the scenario itself, in the order in which they were thought of.</summary>
    public IReadOnlyList<RaceArm> Looked => [.. known.Values.Where(arm => arm.Look is not null)];

    /// <summary>The rigs of some wishes, their counts sunk.</summary>
    public IReadOnlyList<RaceArm> ArmsOf(IReadOnlyList<(Rig Rig, Presentation Own, SinkTarget Target)> wanted)
    {
        Fall(wanted);
        return [.. wanted.Select(item => ArmOf(item.Rig, item.Own, item.Target)).Distinct()];
    }

    public RaceArm ArmOf(Rig rig, Presentation own, SinkTarget target)
    {
        Rig sunk = rig with { Presentation = Sunk(rig, own, target) };
        if (known.TryGetValue(sunk, out RaceArm? arm)) return arm;
        arm = new RaceArm(sunk, own, target, bodies.Fits.First(fit => fit.Body == rig.Body).Appeal);
        known.Add(sunk, arm);
        return arm;
    }

    public Presentation Sunk(Rig rig, Presentation own, SinkTarget target)
    {
        if (target == SinkTarget.Own) return rig.Presentation with { CountDown = own.CountDown };
        if (target == SinkTarget.Bottom) return rig.Presentation with { CountDown = null };
        double? count = counts[(Falling(rig), Hands.Depth(target, scenario.Spot.StrikeZone))];
        return rig.Presentation with { CountDown = count is { } seconds ? Counted(Hands.Rounded(seconds)) : own.CountDown };
    }

    private double Counted(double seconds) => scenario.Hands.SinkCount is { } range ? Math.Clamp(seconds, range.Least, range.Most) : seconds;

    // A fall depends on the lure and the cast, not on what comes after it.
    private static Rig Falling(Rig rig)
    {
        Presentation way = rig.Presentation;
        return rig with
        {
            Presentation = new Presentation { Name = "fall", CastLength = way.CastLength, CastWith = way.CastWith, FullCast = way.FullCast, RetrieveSpeed = 0.5, Fall = way.Fall, Aim = way.Aim, DriftSpeed = way.DriftSpeed, DriftDirection = way.DriftDirection },
        };
    }

    public void Fall(IEnumerable<(Rig Rig, Presentation Own, SinkTarget Target)> wanted)
    {
        double[] depths = [.. ((SinkTarget[])[SinkTarget.ZoneTop, SinkTarget.ZoneMiddle]).Select(target => Hands.Depth(target, scenario.Spot.StrikeZone))];
        Rig[] falls = [.. wanted.Where(item => item.Target is SinkTarget.ZoneTop or SinkTarget.ZoneMiddle).Select(item => Falling(item.Rig)).Distinct().Where(rig => !counts.ContainsKey((rig, depths[0])))];
        Prepare(falls);
        double?[][] found = new double?[falls.Length][];
        Each(falls.Length, i =>
        {
            Track track = Trial.Simulate(scenario, falls[i], settings with { FallOnly = true, FallLimit = ChoiceSearch.LongestCount }, parallel.CancellationToken);
            found[i] = [.. depths.Select(depth => Trial.TimeToDepth(track, depth))];
        });
        for (int i = 0; i < falls.Length; i++)
        {
            for (int d = 0; d < depths.Length; d++) counts[(falls[i], depths[d])] = found[i][d];
        }
    }

    // Runs what has not been run yet; -1 stands for the scenario itself.
    public void Try(IReadOnlyList<RaceArm> arms, IReadOnlyList<int> tries)
    {
        List<(RaceArm Arm, int Try)> work = [];
        foreach (RaceArm arm in arms.Distinct())
        {
            if (samples > 0 && arm.Draws.Count == 0 && tries.Any(t => t >= 0))
            {
                arm.Draws = UncertainDraw.Draw(scenario, arm.Rig.Presentation, samples);
                arm.Outcomes = new UncertaintyStudy.DrawRun?[arm.Draws.Count];
                arm.Reach = UncertaintyStudy.Reach(arm.Draws);
            }

            foreach (int t in tries)
            {
                if (!arm.Has(t)) work.Add((arm, t));
            }
        }

        Runs += work.Count;
        Prepare(work.Select(item => item.Arm.Rig));
        ActionTable.Prepare(scenario.Tackle, scenario.Spot, work.Select(item => (item.Arm.Rig.Head, item.Arm.Rig.Body)), parallel);
        Each(work.Count, i =>
        {
            (RaceArm arm, int t) = work[i];
            if (t < 0)
            {
                arm.Look = Trial.Run(scenario, arm.Rig, samples > 0 ? look : settings, parallel.CancellationToken);
                return;
            }

            UncertainDraw draw = arm.Draws[t];
            Candidate run = Trial.Run(draw.Scenario, arm.Rig with { Presentation = draw.Presentation }, settings with { LineDrag = draw.LineDrag, LureDragFactor = draw.LureDragOf(arm.Rig.Body) }, parallel.CancellationToken);
            arm.Outcomes[t] = new(run.Coverage, run.Score, run.Track.Status == SimulationStatus.Failed, WaterMap.Of(run.Track, draw.Scenario.Spot, scenario.Spot, draw.Presentation, arm.Reach));
        });
    }

    // Each lure swims once: two runs that wait for the same lure leave a thread idle.
    private void Prepare(IEnumerable<Rig> rigs)
    {
        (JigHead Head, LureBody Body)[] lures = [.. rigs.Select(rig => (rig.Head, rig.Body)).Distinct()];
        Parallel.For(0, lures.Length, parallel, i => ActingLures.Of(scenario.Tackle, scenario.Spot, lures[i].Head, lures[i].Body));
    }

    // Runs take very different times: each thread takes the next one.
    private void Each(int count, Action<int> body) =>
        Parallel.ForEach(System.Collections.Concurrent.Partitioner.Create(Enumerable.Range(0, count), System.Collections.Concurrent.EnumerablePartitionerOptions.NoBuffering), parallel, body);

    // Variations of one hand of some rigs.
    public List<(RaceArm From, RaceArm To)> Varied(IReadOnlyList<RaceArm> arms, Hand hand)
    {
        List<(RaceArm From, Rig Rig, SinkTarget Target)> wanted =
        [
            .. arms.SelectMany(arm => hand == Hand.SinkCount
                ? ((SinkTarget[])[SinkTarget.Own, SinkTarget.ZoneTop, SinkTarget.ZoneMiddle, SinkTarget.Bottom])
                    .Where(target => target != arm.Target && (target != SinkTarget.Bottom || (arm.Own.CountDown is not null && scenario.Hands.SinkCount is null))).Select(target => (arm, arm.Rig, target))
                : Hands.Of(hand, arm.Own, arm.Rig.Presentation, scenario.Spot, scenario.Hands).Select(way => (arm, arm.Rig with { Presentation = way }, arm.Target))),
        ];
        Fall(wanted.Select(item => (item.Rig, item.From.Own, item.Target)));
        return [.. wanted.Select(item => (item.From, ArmOf(item.Rig, item.From.Own, item.Target))).Where(pair => pair.Item2 != pair.From).Distinct()];
    }
}
