using LureSim.Decision;
using LureSim.Decision.Baits;
using LureSim.Decision.Colours;
using LureSim.Decision.Observations;
using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Workbench.Pocket;

/// <summary>An hour of the tide, computed.</summary>
/// <param name="Hours">Time (h since midnight).</param>
/// <param name="Current">Current (m/s), signed.</param>
/// <param name="Depth">Depth (m).</param>
/// <param name="Best">Place of the best head; -1 where none gets there.</param>
/// <param name="Run">Its run; null for none.</param>
internal sealed record PocketHour(double Hours, double Current, double Depth, int Best, Candidate? Run);

/// <summary>A step of the current, computed.</summary>
/// <param name="Current">Current (m/s), signed.</param>
/// <param name="Depth">Depth (m).</param>
/// <param name="Best">Place of the best head; -1 where none gets there.</param>
/// <param name="Run">Its run; null for none.</param>
internal sealed record PocketStep(double Current, double Depth, int Best, Candidate? Run);

/// <summary>One spot of the pocket page, computed.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Lures">Names of the heads, light to heavy.</param>
/// <param name="Table">Runs over the axes.</param>
/// <param name="Own">Values of the axes in the scenario.</param>
/// <param name="Choice">Place of the head for the scenario itself.</param>
/// <param name="First">Its run.</param>
/// <param name="Steps">The steps of the current at three depths.</param>
/// <param name="Hours">The hours of the tide; empty where there is none.</param>
/// <param name="Falls">The count-down table.</param>
/// <param name="Colors">The colors of the box.</param>
internal sealed record PocketSpot(
    Scenario Scenario, IReadOnlyList<JigHead> Lures, PocketTable Table, IReadOnlyList<double> Own, int Choice, Candidate First, IReadOnlyList<PocketStep> Steps, IReadOnlyList<PocketHour> Hours, FallTable Falls, ColourFinding Colors)
{
    /// <summary>What may go wrong with the head of the scenario itself.</summary>
    public IReadOnlyList<ChoiceWarning> Warnings { get; init; } = [];

    /// <summary>What to look at first, the most telling first.</summary>
    public IReadOnlyList<NextLook> LookNext { get; init; } = [];

    /// <summary>What observations did to the choice; null where there were none.</summary>
    public CalibratedChoice? Observed { get; init; }

    private const double LeastCurrentReach = 0.5;
    private const double MostHours = 13;
    private const int StudyDraws = 12;

    /// <summary>Computes a spot.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="scale">Lengths in which the depth rows are round.</param>
    /// <param name="budget">Limits of the work.</param>
    /// <param name="progress">Told the runs made and those in all.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static PocketSpot Compute(Scenario scenario, LengthScale scale, PocketBudget budget, IProgress<(int Done, int Total)>? progress, CancellationToken cancellation)
    {
        SimulationOptions coarse = Trial.Coarse(new SimulationOptions());

        // The choice of every command, and the other heads worked like it.
        var options = new PlanOptions { Scale = scale };
        ChosenRig chosen = Planner.Choose(scenario, options, null, cancellation);
        scenario = chosen.Search.Scenario;
        Presentation way = chosen.Rig.Presentation;
        (JigHead Head, LureBody Body)[] lures =
        [
            .. scenario.Tackle.LuresWith(chosen.Rig.Body.NeedsHead ? chosen.Rig.Body : BodyChoice.Of(scenario).Soft).OrderBy(lure => lure.Body.NeedsHead ? lure.Head.Mass : lure.Body.Kind.Mass(lure.Body)),
        ];
        Rig[] rigs = [.. lures.Select(lure => new Rig(lure.Head, lure.Body, way))];
        int choice = Array.FindIndex(rigs, rig => rig.Head == chosen.Rig.Head && rig.Body == chosen.Rig.Body);

        PocketAxis[] axes = Axes(scenario, rigs[choice], cancellation);
        double[] own = [.. axes.Select(axis => OwnValue(axis.Kind, scenario.Spot, way))];
        PocketTable table = PocketTable.Make(scenario, rigs, choice, axes, budget, progress, cancellation);

        PocketAxis depths = table.Axes.First(axis => axis.Kind == PocketAxisKind.Depth), currents = table.Axes.First(axis => axis.Kind == PocketAxisKind.Current);
        double[] levels = [depths.Steps[0], scenario.Spot.Depth, depths.Steps[^1]];
        IReadOnlyList<double> flows = currents.Steps.Count > 9 ? [.. currents.Steps.Where((_, i) => i % 2 == 0)] : currents.Steps;
        PocketStep[] steps = new PocketStep[levels.Length * flows.Count];
        Parallel.For(0, steps.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            (double current, double depth) = (flows[i % flows.Count], levels[i / flows.Count]);
            (int best, Candidate? run) = Best(table, rigs.Length, own, current, depth, cancellation);
            steps[i] = new PocketStep(current, depth, best, run);
        });
        PocketHour[] hours = [];
        if (scenario.Tide.Count >= 3)
        {
            var curve = new TideCurve(scenario.Tide);
            double step = curve.End - curve.Start <= 0.5 * MostHours ? 0.5 : 1;
            double[] times = [.. Enumerable.Range(0, (int)((curve.End - curve.Start) / step) + 1).Select(i => curve.Start + (i * step)).Where((_, i) => i <= MostHours)];
            hours = new PocketHour[times.Length];
            Parallel.For(0, times.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
            {
                double current = curve.Current(times[i]), depth = SpotChange.WithDepth(scenario.Spot, scenario.Spot.Depth + curve.DepthChange(times[i])).Depth;
                (int best, Candidate? run) = Best(table, rigs.Length, own, current, depth, cancellation);
                hours[i] = new PocketHour(times[i], current, depth, best, run);
            });
        }

        FallTable falls = Planner.FallTable(scenario, chosen.Rig, options with { Simulation = coarse }, cancellation);
        return new PocketSpot(scenario, [.. lures.Select(lure => lure.Head)], table, own, choice, chosen.Choice.First, steps, hours, falls, chosen.Colours)
        {
            Warnings = chosen.Choice.Warnings,
            LookNext = NextLook.Of(chosen.Search, new SimulationOptions(), new ParallelOptions { CancellationToken = cancellation }),
            Observed = chosen.Seen,
        };
    }

    /// <summary>Value of an axis in a scenario.</summary>
    public static double OwnValue(PocketAxisKind kind, Spot spot, Presentation way) => kind switch
    {
        PocketAxisKind.Current => spot.CurrentSpeed,
        PocketAxisKind.Depth => spot.Depth,
        PocketAxisKind.Speed => way.RetrieveSpeed,
        PocketAxisKind.Cast => way.CastLength,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not an axis."),
    };

    private static (int Best, Candidate? Run) Best(PocketTable table, int heads, double[] own, double current, double depth, CancellationToken cancellation)
    {
        double[] at = [.. table.Axes.Select((axis, a) => axis.Kind == PocketAxisKind.Current ? current : axis.Kind == PocketAxisKind.Depth ? depth : own[a])];
        Candidate[] runs = [.. Enumerable.Range(0, heads).Select(head => table.Run(head, at, cancellation))];
        int best = table.BestOf([.. runs.Select(run => run.Score)]);
        return (best, best < 0 ? null : runs[best]);
    }

    // Current and depth always, which the tide moves; then what moves the result most of what the hand does: speed or cast.
    private static PocketAxis[] Axes(Scenario scenario, Rig rig, CancellationToken cancellation)
    {
        Spot spot = scenario.Spot;
        Presentation way = rig.Presentation;
        ScenarioUncertainty known = scenario.Uncertainty;
        double[] flows = [.. scenario.Tide.Select(point => point.Current), known.Current.At(0.02, spot.CurrentSpeed), known.Current.At(0.98, spot.CurrentSpeed), spot.CurrentSpeed];
        double most = Math.Min(3, Math.Max(flows.Max(), spot.CurrentSpeed + LeastCurrentReach)), least = Math.Max(-3, Math.Min(flows.Min(), scenario.Tide.Count > 0 ? flows.Min() : 0));
        double[] waters = [.. scenario.Tide.Select(point => spot.Depth + point.DepthChange), known.Depth.At(0.02, spot.Depth), known.Depth.At(0.98, spot.Depth)];
        double shallow = SpotChange.WithDepth(spot, Math.Max(waters.Min(), 0.6 * spot.Depth)).Depth, deep = SpotChange.WithDepth(spot, waters.Max()).Depth;
        PocketAxis current = Around(PocketAxisKind.Current, least, spot.CurrentSpeed, most).Refined();
        PocketAxis depth = Around(PocketAxisKind.Depth, Math.Min(shallow, 0.95 * spot.Depth), spot.Depth, Math.Max(deep, 1.05 * spot.Depth));
        PocketAxis cast = Around(PocketAxisKind.Cast, Math.Max(way.LineLeftAtEnd + 1.5, 0.7 * way.CastLength), way.CastLength, Math.Min(80, 1.3 * way.CastLength));
        if (!(way.RetrieveSpeed > 0)) return [current, depth, cast];
        PocketAxis speed = Around(PocketAxisKind.Speed, 0.6 * way.RetrieveSpeed, way.RetrieveSpeed, Math.Min(way.FastestSpeed, 1.6 * way.RetrieveSpeed));
        IReadOnlyList<UncertainDraw> draws = UncertainDraw.Draw(scenario, way, StudyDraws);
        if (draws.Count < 3) return [current, depth, speed];
        double[] shares = new double[draws.Count];
        Parallel.For(0, draws.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
            shares[i] = Trial.Run(draws[i].Scenario, rig with { Presentation = draws[i].Presentation }, Trial.Coarse(new SimulationOptions()), cancellation).Coverage.ZoneShare);
        SpreadDrivers drivers = SpreadDrivers.Of(draws, shares);
        double Weight(UncertainInput input) => Math.Abs(drivers.Drivers.FirstOrDefault(driver => driver.Input == input)?.RankCorrelation ?? 0);
        return [current, depth, Weight(UncertainInput.Cast) > Weight(UncertainInput.RetrieveSpeed) ? cast : speed];
    }

    private static PocketAxis Around(PocketAxisKind kind, double low, double own, double high) =>
        new(kind, low < own - 1e-6 ? high > own + 1e-6 ? [low, own, high] : [low, (low + own) / 2, own] : [own, (own + high) / 2, high]);
}
