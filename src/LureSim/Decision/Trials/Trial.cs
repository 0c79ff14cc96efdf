using LureSim.Coupling;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;
using LureSim.Tackle;

namespace LureSim.Decision.Trials;

/// <summary>Simulates and measures rigs.</summary>
public static class Trial
{
    /// <summary>Line segments of coarse runs; docs/decision.md has the effect against the 40 of single runs.</summary>
    public const int CoarseSegments = 20;

    /// <summary>Line segments of the runs that a choice is sought with, and their error tolerance; docs/decision.md has the effect.</summary>
    public const int SearchSegments = 10;
    private const double SearchTolerance = 10;

    // Line segments of the first look of a search, which is only to tell what is worth more runs.
    private const int LookSegments = 6;

    // Coarser still: error tolerance, for runs of which many are averaged.
    private const double CoarseTolerance = 3;

    /// <summary>Simulates and measures one rig.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="options">Settings.</param>
    /// <param name="cancellation">Honoured within the simulation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static Candidate Run(Scenario scenario, Rig rig, SimulationOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(options);
        Track track = Simulate(scenario, rig, options, cancellation);
        Coverage coverage = Measure(scenario, rig, track);
        return new Candidate(rig, track, coverage, track.Status == SimulationStatus.Failed ? 0 : Ranking.Score(coverage, scenario.Spot, rig));
    }

    /// <summary>Simulates one rig and measures where it ran, not whether its action was on: what asks for depths and bottom alone swims no lure.</summary>
    internal static (Track Track, Coverage Coverage) RunPath(Scenario scenario, Rig rig, SimulationOptions options, CancellationToken cancellation)
    {
        Track track = Simulate(scenario, rig, options, cancellation);
        return (track, MeasurePath(scenario, rig, track));
    }

    /// <summary>Settings of the runs that a choice is sought with, of which very many are made.</summary>
    /// <param name="options">Settings of single runs.</param>
    /// <exception cref="ArgumentNullException"><paramref name="options"/> is null.</exception>
    public static SimulationOptions ForSearch(SimulationOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return options with
        {
            Segments = Math.Min(SearchSegments, options.Segments),
            ToleranceFactor = Math.Max(SearchTolerance, options.ToleranceFactor),
        };
    }

    /// <summary>Settings of the first look of a search.</summary>
    /// <param name="options">Settings of single runs.</param>
    /// <exception cref="ArgumentNullException"><paramref name="options"/> is null.</exception>
    public static SimulationOptions ForLook(SimulationOptions options)
    {
        SimulationOptions search = ForSearch(options);
        return search with { Segments = Math.Min(LookSegments, search.Segments) };
    }

    /// <summary>Where a rig spent its time on a track, and when its action was on.</summary>
    internal static Coverage Measure(Scenario scenario, Rig rig, Track track)
    {
        Coverage coverage = MeasurePath(scenario, rig, track);
        if (coverage.ZoneShare == 0) return coverage;
        (_, double live) = ActionTable.Shares(scenario.Tackle, scenario.Spot, rig.Head, rig.Body, track, rig.Presentation);
        return coverage with { LiveZoneShare = live };
    }

    private static Coverage MeasurePath(Scenario scenario, Rig rig, Track track)
    {
        Spot spot = scenario.Spot;
        double touching = spot.Depth - TackleBuilder.Lure(rig.Head, rig.Body).ContactRadius - ScoreWeights.Default.HookLength;
        Coverage coverage = CoverageMeasure.Of(track, spot.StrikeZone, touching, spot.Profile is { IsEven: false } ? spot.SeenAlong(rig.Presentation.Aim) : null);
        if (spot.Structures.Count > 0)
        {
            IReadOnlyList<StructurePass> passes = StructurePass.Of(spot, rig, track);
            coverage = coverage with
            {
                StructureSnag = 1 - passes.Aggregate(1.0, (free, pass) => free * (1 - pass.SnagChance)),
                NearTime = passes.Where(pass => pass.Structure.Role == StructureRole.PassClose).Sum(pass => pass.ReachTime),
                ShadeShare = passes.Max(pass => pass.ShadeShare),
            };
        }

        return coverage;
    }

    /// <summary>Coarser settings, for runs of which many are made; docs/decision.md has what they cost in accuracy.</summary>
    /// <param name="options">Settings of single runs.</param>
    /// <exception cref="ArgumentNullException"><paramref name="options"/> is null.</exception>
    public static SimulationOptions Coarse(SimulationOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return options with
        {
            Segments = Math.Min(CoarseSegments, options.Segments),
            ToleranceFactor = Math.Max(CoarseTolerance, options.ToleranceFactor),
        };
    }

    /// <summary>Time at which a track first reaches a depth (m), in s; null if it does not.</summary>
    internal static double? TimeToDepth(Track track, double depth)
    {
        for (int i = 1; i < track.Count; i++)
        {
            double before = track.Depth(i - 1), after = track.Depth(i);
            if (after < depth) continue;
            double f = after > before ? Math.Clamp((depth - before) / (after - before), 0, 1) : 1;
            return track.Time[i - 1] + (f * (track.Time[i] - track.Time[i - 1]));
        }

        return null;
    }

    /// <summary>The path of a rig.</summary>
    internal static Track Simulate(Scenario scenario, Rig rig, SimulationOptions options, CancellationToken cancellation)
    {
        Track track = Cast.Simulate(scenario.Spot, FishingRig.Of(scenario.Tackle, rig.Head, rig.Body), rig.Presentation, options, cancellation);
        if (track.Status == SimulationStatus.Cancelled) throw new OperationCanceledException(cancellation);
        return track;
    }
}
