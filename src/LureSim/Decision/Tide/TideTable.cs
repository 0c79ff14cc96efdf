using LureSim.Decision.Inverse;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Decision.Tide;

/// <summary>One moment of the tide.</summary>
/// <param name="Hours">Time (h since midnight).</param>
/// <param name="Current">Current at the surface (m/s), negative against the spot's direction.</param>
/// <param name="Depth">Depth of the water (m).</param>
/// <param name="Best">Head of the box with the highest score; null if no head reaches the zone.</param>
/// <param name="Scores">Score of each head of the box that the hands allow, as in <see cref="TideTable.Heads"/>.</param>
/// <param name="ZoneShares">Share of the retrieve in the zone of each of these heads.</param>
/// <param name="Holding">Lightest common weight that holds the bottom (kg); null if none does.</param>
public sealed record TideRow(double Hours, double Current, double Depth, JigHead? Best, IReadOnlyList<double> Scores, IReadOnlyList<double> ZoneShares, double? Holding);

/// <summary>Lightest common weight that holds the bottom, by depth and current.</summary>
/// <param name="Depths">Depths (m), rows.</param>
/// <param name="Currents">Currents at the surface (m/s), columns.</param>
/// <param name="Weight">Weights (kg), [depth, current]; null where no common weight holds.</param>
public sealed record WeightTable(IReadOnlyList<double> Depths, IReadOnlyList<double> Currents, double?[,] Weight);

/// <summary>Units in which the depths and currents of a table are round.</summary>
/// <param name="Depth">Unit of depth (m), above 0.</param>
/// <param name="Current">Unit of current (m/s), above 0.</param>
public sealed record TideScale(double Depth, double Current)
{
    /// <summary>Round metres and metres a second.</summary>
    public static TideScale Metric { get; } = new(1, 1);
}

/// <summary>Weights for a tide, for one presentation.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Rig">The rig: bait and presentation of all rows.</param>
/// <param name="Rows">One row a moment; empty if the scenario has no tide.</param>
/// <param name="Table">Weight by depth and current.</param>
public sealed record TideTable(Scenario Scenario, Rig Rig, IReadOnlyList<TideRow> Rows, WeightTable Table)
{
    /// <summary>The presentation of all rows.</summary>
    public Presentation Presentation => Rig.Presentation;

    /// <summary>The heads of the rows, in their order: those of the box that the hands allow.</summary>
    public IReadOnlyList<JigHead> Heads => [.. Scenario.Tackle.JigHeads.Where(Scenario.Hands.Allows)];

    // Rows of the table by hour aimed at, and the steps of it (h).
    private const int MostRows = 14;
    private const int DepthRows = 6;
    private const int CurrentColumns = 7;
    private const double MostGrass = 0.9;
    private static readonly double[] Steps = [0.25, 0.5, 1, 2, 3];

    // Without a tide and current the table still reaches to this current (m/s).
    private const double LeastCurrent = PhysicalConstants.Knot;

    /// <summary>Computes the table.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig; its head does not matter.</param>
    /// <param name="scale">The units in which depths and currents are round.</param>
    /// <param name="options">Settings.</param>
    /// <param name="parallel">Threads and cancellation. The result does not depend on the number of threads.</param>
    /// <param name="progress">Told the share of the work done after each cell, from several threads.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static TideTable Compute(Scenario scenario, Rig rig, TideScale scale, SimulationOptions options, ParallelOptions parallel, IProgress<double>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(scale);
        ArgumentNullException.ThrowIfNull(parallel);
        Spot spot = scenario.Spot;
        (LureBody body, Presentation presentation) = (rig.Body, rig.Presentation);
        IReadOnlyList<JigHead> heads = [.. scenario.Tackle.JigHeads.Where(scenario.Hands.Allows)];
        (double Hours, Spot Water, double Current)[] moments = Moments(scenario);
        double[] depths = [.. RoundDepths(spot.Depth, scale.Depth)], currents = Currents(scenario, scale.Current);
        int byHead = moments.Length * heads.Count, holding = moments.Length, cells = depths.Length * currents.Length;
        int total = byHead + holding + cells, done = 0;
        var runs = new Candidate[byHead];
        double?[] weights = new double?[holding + cells];

        // Cells that take several runs first, so that no thread is left with one at the end.
        Parallel.For(0, total, parallel, i =>
        {
            if (i < holding)
            {
                weights[i] = Lightest(moments[i].Water);
            }
            else if (i < holding + cells)
            {
                int cell = i - holding;
                double depth = depths[cell / currents.Length];
                Spot water = spot with { Profile = null, Depth = depth, GrassHeight = Math.Min(spot.GrassHeight, MostGrass * depth), StrikeZone = new StrikeZone(0, depth) };
                weights[i] = Lightest(SpotChange.WithCurrent(water, currents[cell % currents.Length]));
            }
            else
            {
                int run = i - holding - cells;
                runs[run] = Trial.Run(scenario with { Spot = moments[run / heads.Count].Water }, new Rig(heads[run % heads.Count], body, presentation), options, parallel.CancellationToken);
            }

            progress?.Report((double)Interlocked.Increment(ref done) / total);
        });

        double?[,] table = new double?[depths.Length, currents.Length];
        for (int i = 0; i < cells; i++) table[i / currents.Length, i % currents.Length] = weights[holding + i];
        TideRow[] rows = [.. moments.Select((moment, m) =>
        {
            Candidate[] here = runs[(m * heads.Count)..((m + 1) * heads.Count)];
            Candidate best = Preference.Of(here, c => c.Rig, c => c.Score);
            return new TideRow(moment.Hours, moment.Current, moment.Water.Depth, best.Score > 0 ? best.Rig.Head : null, [.. here.Select(c => c.Score)], [.. here.Select(c => c.Coverage.ZoneShare)], weights[m]);
        })];
        return new TideTable(scenario, rig, rows, new WeightTable(depths, currents, table));

        // Bisection on the list of weights: a heavier head is never less on the bottom (a test holds that on the demo spots).
        double? Lightest(Spot water)
        {
            Scenario here = scenario with { Spot = water };
            IReadOnlyList<double> sizes = CommonWeights.All;
            int low = 0, high = sizes.Count;
            while (low < high)
            {
                int middle = (low + high) / 2;
                if (InverseQuestions.BottomShare(here, InverseQuestions.HeadOf(scenario, sizes[middle]), body, presentation, options, parallel.CancellationToken) >= InverseQuestions.HoldingShare) high = middle;
                else low = middle + 1;
            }

            return low < sizes.Count ? sizes[low] : null;
        }
    }

    private static (double Hours, Spot Water, double Current)[] Moments(Scenario scenario)
    {
        if (scenario.Tide.Count < 3) return [];
        var curve = new TideCurve(scenario.Tide);
        double step = Steps.FirstOrDefault(s => (curve.End - curve.Start) / s < MostRows, Steps[^1]);
        var moments = new List<(double, Spot, double)>();
        for (double hours = curve.Start; hours < curve.End + 1e-9; hours += step)
        {
            double current = curve.Current(hours);
            Spot water = SpotChange.WithCurrent(SpotChange.WithDepth(scenario.Spot, scenario.Spot.Depth + curve.DepthChange(hours)), current);
            moments.Add((hours, water, current));
        }

        return [.. moments];
    }

    private static IEnumerable<double> RoundDepths(double depth, double unit)
    {
        double ideal = 1.5 * depth / unit / DepthRows;
        double step = new[] { 0.25, 0.5, 1, 2, 3, 5, 10, 20 }.First(s => s >= 0.8 * ideal || s == 20);
        return Enumerable.Range(1, DepthRows).Select(i => i * step * unit).Where(d => d is >= 0.2 and <= 60);
    }

    private static double[] Currents(Scenario scenario, double unit)
    {
        double most = Math.Max(LeastCurrent, Math.Max(scenario.Spot.CurrentSpeed * 1.25, scenario.Tide.Select(p => Math.Abs(p.Current)).DefaultIfEmpty().Max()));
        double ideal = most / unit / (CurrentColumns - 1);
        double step = new[] { 0.1, 0.2, 0.25, 0.5, 1 }.First(s => s >= 0.85 * ideal || s == 1);
        return [.. Enumerable.Range(0, CurrentColumns).Select(i => i * step * unit).Where(c => c <= 3)];
    }
}
