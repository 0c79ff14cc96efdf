using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;

namespace LureSim.Decision.Uncertainty;

/// <summary>What one jig head does over all draws.</summary>
/// <param name="Head">Jig head.</param>
/// <param name="ZoneShare">Share of the retrieve in the strike zone.</param>
/// <param name="TimeToZone">Seconds from splash-down to the zone; infinite where it never gets there.</param>
/// <param name="BottomShare">Share of the retrieve in contact with the bottom.</param>
/// <param name="GrassShare">Share of the retrieve in the grass.</param>
/// <param name="Swing">Greatest sideways displacement (m).</param>
/// <param name="MedianDepth">Median depth of the retrieve (m).</param>
/// <param name="Score">Ranking value.</param>
/// <param name="ReachesZone">Share of the draws in which it reaches the zone.</param>
/// <param name="ReachesBottom">Share of the draws in which it touches the bottom.</param>
/// <param name="Fouls">Share of the draws in which it is in the grass for a twentieth of the retrieve or more.</param>
/// <param name="ChanceBest">Share of the draws in which it scores better than every other head; equals share the draw.</param>
/// <param name="Drivers">What moves its time in the zone.</param>
/// <param name="Map">Where it spends its time, over all draws.</param>
/// <param name="Outcomes">Coverage in each draw.</param>
/// <param name="Failed">Draws whose computation failed; they count as never in the zone.</param>
public sealed record HeadUncertainty(
    JigHead Head,
    Interval ZoneShare,
    Interval TimeToZone,
    Interval BottomShare,
    Interval GrassShare,
    Interval Swing,
    Interval MedianDepth,
    Interval Score,
    double ReachesZone,
    double ReachesBottom,
    double Fouls,
    double ChanceBest,
    SpreadDrivers Drivers,
    WaterMap Map,
    IReadOnlyList<Coverage> Outcomes,
    int Failed);

/// <summary>All jig heads, fished one way, over many draws of what is not known well.</summary>
/// <param name="Presentation">The presentation.</param>
/// <param name="Body">The body.</param>
/// <param name="Draws">The draws, the same for every head, so that heads are compared like with like.</param>
/// <param name="Heads">The heads, in the order of the tackle box.</param>
/// <param name="Rival">The head of the second highest mean score; null where there is one head only.</param>
/// <param name="ChoiceDrivers">What decides between the best head and its rival: inputs against what the heavier scores more than the lighter.</param>
/// <param name="NoneBest">Share of the draws in which no head scores at all.</param>
public sealed record UncertaintyStudy(
    Presentation Presentation,
    LureBody Body,
    IReadOnlyList<UncertainDraw> Draws,
    IReadOnlyList<HeadUncertainty> Heads,
    HeadUncertainty? Rival,
    SpreadDrivers ChoiceDrivers,
    double NoneBest)
{
    // Reach of the maps beyond the longest cast: the lure drifts off on slack line.
    private const double ReachBeyond = 1.15;

    // Share of the retrieve in grass from which a run counts as fouled.
    private const double FoulFrom = 0.05;

    /// <summary>The head of the choice; null for that of the highest mean score.</summary>
    public JigHead? Chosen { get; init; }

    /// <summary>The head of the choice, otherwise that of the highest mean score; of equals the first of the box.</summary>
    public HeadUncertainty Best => Heads.FirstOrDefault(h => h.Head == Chosen) ?? Heads.MaxBy(h => h.Score.Mean)!;

    /// <summary>True if there is one draw only: the scenario itself.</summary>
    public bool IsExact => Draws.Count == 1;

    /// <summary>Runs that a study takes beside those that are there already.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="samples">Draws for each head.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    public static int RunsOf(Scenario scenario, int samples)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return scenario.Uncertainty.IsExactInMotion ? 0 : samples * Math.Max(1, scenario.Tackle.JigHeads.Count);
    }

    /// <summary>Computes a study.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="body">The body on every head.</param>
    /// <param name="presentation">The presentation.</param>
    /// <param name="nominal">Single runs of the scenario itself, used where nothing is uncertain; what is missing is computed.</param>
    /// <param name="samples">Draws for each head, 1 or more.</param>
    /// <param name="options">Settings of single runs; a study uses its own number of segments unless nothing is uncertain.</param>
    /// <param name="parallel">Threads and cancellation. The result does not depend on the number of threads.</param>
    /// <param name="done">Told after each run, from any thread; may be null.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no draw.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static UncertaintyStudy Run(
        Scenario scenario,
        LureBody body,
        Presentation presentation,
        IReadOnlyList<Candidate> nominal,
        int samples,
        SimulationOptions options,
        ParallelOptions parallel,
        Action? done = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(nominal);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(parallel);
        IReadOnlyList<UncertainDraw> draws = UncertainDraw.Draw(scenario, presentation, samples);
        IReadOnlyList<JigHead> heads = body.NeedsHead ? scenario.Tackle.JigHeads : [JigHead.None(body)];
        int n = draws.Count;
        double reach = Reach(draws);
        SimulationOptions coarse = Trial.Coarse(options);
        var runs = new DrawRun[heads.Count * n];
        Parallel.For(0, runs.Length, parallel, i =>
        {
            var rig = new Rig(heads[i / n], body, presentation);
            UncertainDraw draw = draws[i % n];
            Candidate run = n == 1
                ? nominal.FirstOrDefault(c => c.Rig == rig) ?? Trial.Run(scenario, rig, options, parallel.CancellationToken)
                : Trial.Run(draw.Scenario, rig with { Presentation = draw.Presentation }, coarse with { LineDrag = draw.LineDrag, LureDragFactor = draw.LureDragOf(body) }, parallel.CancellationToken);
            runs[i] = new DrawRun(run.Coverage, run.Score, run.Track.Status == SimulationStatus.Failed, WaterMap.Of(run.Track, draw.Scenario.Spot, scenario.Spot, draw.Presentation, reach));
            if (n > 1) done?.Invoke();
        });

        return From(presentation, body, heads, draws, runs);
    }

    /// <summary>Puts runs together: those of the first head in the order of the draws, then those of the second.</summary>
    internal static UncertaintyStudy From(Presentation presentation, LureBody body, IReadOnlyList<JigHead> heads, IReadOnlyList<UncertainDraw> draws, DrawRun[] runs, JigHead? chosen = null)
    {
        int n = draws.Count;
        double[] chances = new double[heads.Count];
        int none = 0;
        for (int d = 0; d < n; d++)
        {
            double best = Enumerable.Range(0, heads.Count).Max(h => runs[(h * n) + d].Score);
            int[] winners = best > 0 ? [.. Enumerable.Range(0, heads.Count).Where(h => runs[(h * n) + d].Score >= best)] : [];
            foreach (int h in winners) chances[h] += 1.0 / (winners.Length * n);
            if (winners.Length == 0) none++;
        }

        HeadUncertainty[] found = [.. heads.Select((head, h) => Summary(head, new ArraySegment<DrawRun>(runs, h * n, n), draws, chances[h]))];
        int[] order = [.. Enumerable.Range(0, found.Length).OrderByDescending(h => found[h].Head == chosen).ThenByDescending(h => found[h].Score.Mean)];
        SpreadDrivers decides = SpreadDrivers.None;
        if (order.Length > 1)
        {
            (int heavy, int light) = heads[order[0]].Mass >= heads[order[1]].Mass ? (order[0], order[1]) : (order[1], order[0]);
            decides = SpreadDrivers.Of(draws, [.. Enumerable.Range(0, n).Select(d => runs[(heavy * n) + d].Score - runs[(light * n) + d].Score)]);
        }

        return new UncertaintyStudy(
            presentation,
            body,
            draws,
            found,
            order.Length > 1 ? found[order[1]] : null,
            decides,
            (double)none / n)
        {
            Chosen = chosen,
        };
    }

    /// <summary>Reach of the maps of some draws (m).</summary>
    internal static double Reach(IReadOnlyList<UncertainDraw> draws) => ReachBeyond * draws.Max(d => d.Presentation.CastLength);

    private static HeadUncertainty Summary(JigHead head, ArraySegment<DrawRun> runs, IReadOnlyList<UncertainDraw> draws, double chance)
    {
        double[] zone = Values(c => c.ZoneShare);
        return new HeadUncertainty(
            head,
            Interval.Of(zone),
            Interval.Of(Values(c => c.TimeToZone ?? double.PositiveInfinity)),
            Interval.Of(Values(c => c.BottomShare)),
            Interval.Of(Values(c => c.GrassShare)),
            Interval.Of(Values(c => c.DriftAcross)),
            Interval.Of(Values(c => c.MedianDepth)),
            Interval.Of(runs.Select(r => r.Score)),
            Share(c => c.TimeToZone is not null),
            Share(c => c.TimeToBottom is not null),
            Share(c => c.GrassShare >= FoulFrom),
            chance,
            SpreadDrivers.Of(draws, zone),
            WaterMap.Mean([.. runs.Select(r => r.Map)]),
            [.. runs.Select(r => r.Coverage)],
            runs.Count(r => r.Failed));

        double[] Values(Func<Coverage, double> value) => [.. runs.Select(r => value(r.Coverage))];
        double Share(Func<Coverage, bool> holds) => runs.Count(r => holds(r.Coverage)) / (double)runs.Count;
    }

    /// <summary>What is kept of one run.</summary>
    internal sealed record DrawRun(Coverage Coverage, double Score, bool Failed, WaterMap Map);
}
