using System.Collections.Concurrent;
using System.Diagnostics;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Workbench.Pocket;

/// <summary>What is read off a table between its steps.</summary>
/// <param name="Zone">Share of the retrieve in the zone, 0 to 1.</param>
/// <param name="Wait">Seconds to the zone; not a number where it never gets there.</param>
/// <param name="Middle">Typical height above the bottom (m).</param>
/// <param name="Score">Ranking value, 0 to 1.</param>
internal readonly record struct PocketReading(double Zone, double Wait, double Middle, double Score);

/// <summary>How a head's share in the zone is read off.</summary>
internal enum PocketMethod
{
    /// <summary>The share itself is interpolated.</summary>
    Shares,

    /// <summary>The path is interpolated, and its share counted.</summary>
    Path,

    /// <summary>Nothing is interpolated: the nearest computed step is shown.</summary>
    Nearest,

    /// <summary>The heights in order are interpolated, and their share counted.</summary>
    Spread,
}

/// <summary>Errors of readings against the engine at points that the table was not made from.</summary>
/// <param name="Checks">Comparisons.</param>
/// <param name="Share">Median, 95th percentile and greatest error of the share (0 to 1).</param>
/// <param name="Depth">The same of the typical depth (m).</param>
/// <param name="Wait">The same of the wait (s), where both get there.</param>
/// <param name="SameHead">Points at which the best head is the same, or loses less than five points by the engine's score.</param>
/// <param name="Points">Points in all.</param>
internal sealed record PocketError(int Checks, (double Half, double Most, double Worst) Share, (double Half, double Most, double Worst) Depth, (double Half, double Most, double Worst) Wait, int SameHead, int Points);

/// <summary>Limits of the work on one table.</summary>
/// <param name="Bytes">Most bytes of the table as it is packed.</param>
/// <param name="Time">Most time.</param>
internal sealed record PocketBudget(int Bytes, TimeSpan Time);

/// <summary>
/// The runs of all heads over three axes, and what they are worth between their steps: the axis whose refining helps most is refined until the error at points
/// that the table does not know is small enough, or the room or the time is used up.
/// </summary>
internal sealed class PocketTable
{
    /// <summary>Error of the share that is good enough in 19 cases of 20.</summary>
    public const double GoodShare = 0.03;

    // Errors of depth (m) and wait (s) that are good enough in 19 cases of 20: half a foot, half a second.
    private const double GoodDepth = 0.15;
    private const double GoodWait = 0.5;

    // From this error on a head is shown at its computed steps alone.
    private const double TooFar = 0.05;

    // Halfway goes up, in the page too, whose steps are rounded.
    private const double Halfway = 0.499999;

    private const int MostSteps = 17;

    // Bytes that a cell of a fine table takes, packed: for the progress alone.
    private const int UsualCell = 5;
    private const int Points = 40;
    private const double SmallLoss = 0.05;

    /// <summary>Heads whose ranking values differ by less are as good (assumed; half of what a choice calls a real margin).</summary>
    public const double AsGood = 0.04;

    private readonly ConcurrentDictionary<(int Head, double A, double B, double C), byte[]> cells = new();
    private readonly Scenario scenario;
    private readonly IReadOnlyList<Rig> rigs;
    private readonly PocketLayout layout;
    private PocketAxis[] axes;
    private int room;

    private PocketTable(Scenario scenario, IReadOnlyList<Rig> rigs, int preferred, PocketAxis[] axes, PocketLayout layout)
    {
        Preferred = preferred;
        this.scenario = scenario;
        this.rigs = rigs;
        this.axes = axes;
        this.layout = layout;
        Methods = [.. rigs.Select(_ => PocketMethod.Shares)];
    }

    /// <summary>The axes.</summary>
    public IReadOnlyList<PocketAxis> Axes => axes;

    /// <summary>How cells are laid out.</summary>
    public PocketLayout Layout => layout;

    /// <summary>The heads.</summary>
    public IReadOnlyList<Rig> Rigs => rigs;

    /// <summary>How each head's share is read off.</summary>
    public IReadOnlyList<PocketMethod> Methods { get; private set; }

    /// <summary>Error of each head's share in 19 cases of 20 by each way of reading it: share, path, heights in order.</summary>
    public IReadOnlyList<(double Shares, double Path, double Spread)> Considered { get; private set; } = [];

    /// <summary>What the table is worth.</summary>
    public PocketError Error { get; private set; } = new(0, default, default, default, 0, 0);

    /// <summary>Runs made.</summary>
    public int Runs => cells.Count;

    /// <summary>Place of the head that is the choice for the scenario itself.</summary>
    public int Preferred { get; }

    /// <summary>The head to tie on: the choice where it is as good as any, otherwise the lightest of those that are; -1 where none scores.</summary>
    /// <param name="scores">Ranking value of each head.</param>
    public int BestOf(IReadOnlyList<double> scores)
    {
        double most = scores.Max();
        if (!(most > 0)) return -1;
        return scores[Preferred] >= most - AsGood ? Preferred : Enumerable.Range(0, scores.Count).First(head => scores[head] >= most - AsGood);
    }

    /// <summary>Nodes of the table.</summary>
    public int Nodes => axes.Aggregate(1, (product, axis) => product * axis.Steps.Count);

    /// <summary>Makes a table.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rigs">The heads, fished one way.</param>
    /// <param name="preferred">Place of the choice for the scenario itself.</param>
    /// <param name="axes">Three axes with their first steps.</param>
    /// <param name="budget">Limits of the work.</param>
    /// <param name="progress">Told the runs made and those in all as far as they are known.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static PocketTable Make(Scenario scenario, IReadOnlyList<Rig> rigs, int preferred, PocketAxis[] axes, PocketBudget budget, IProgress<(int Done, int Total)>? progress, CancellationToken cancellation)
    {
        double deepest = axes.FirstOrDefault(axis => axis.Kind == PocketAxisKind.Depth)?.Steps[^1] ?? scenario.Spot.Depth;
        bool wanders = rigs[0].Presentation.Moves.Count > 1;
        var table = new PocketTable(scenario, rigs, preferred, axes, new PocketLayout(wanders ? 8 : 12, wanders, 1.02 * deepest));
        var watch = Stopwatch.StartNew();
        double[][] points = [.. Enumerable.Range(1, Points).Select(i => (double[])[Scrambled(i, 2), Scrambled(i, 3), Scrambled(i, 5)])];
        double[][] values = [.. points.Select(point => axes.Select((axis, a) => axis.Steps[0] + (point[a] * (axis.Steps[^1] - axis.Steps[0]))).ToArray())];
        table.room = ((budget.Bytes / UsualCell / rigs.Count) + Points) * rigs.Count;
        table.Fill(table.AllNodes().Concat(values), progress, cancellation);
        table.Judge(values);
        while (!table.IsGood && !cancellation.IsCancellationRequested)
        {
            int worst = table.WorstAxis(values);
            if (worst < 0) break;
            PocketAxis[] finer = [.. axes.Select((axis, a) => a == worst ? axis.Refined() : axis)];
            int nodes = finer.Aggregate(1, (product, axis) => product * axis.Steps.Count);
            double perRun = watch.Elapsed.TotalSeconds / Math.Max(1, table.Runs);
            double more = perRun * (nodes - table.Nodes) * rigs.Count;

            // Steps that lie closer are foretold better, so that there is room for what this says.
            double packed = (double)table.Packed().Length * nodes / table.Nodes;
            if (packed > budget.Bytes || watch.Elapsed.TotalSeconds + more > budget.Time.TotalSeconds) break;
            table.axes = axes = finer;
            table.Fill(table.AllNodes(), progress, cancellation);
            table.Judge(values);
        }

        return table;
    }

    /// <summary>The cells as the page carries them.</summary>
    public byte[] Packed() => PocketPacking.Pack(Bytes(), (rigs.Count, axes[0].Steps.Count, axes[1].Steps.Count, axes[2].Steps.Count), layout.Size);

    /// <summary>The cells, head by head, nodes in the order of the axes, the last one fastest.</summary>
    public byte[] Bytes()
    {
        byte[] all = new byte[rigs.Count * Nodes * layout.Size];
        int at = 0;
        for (int head = 0; head < rigs.Count; head++)
        {
            foreach (double[] node in AllNodes())
            {
                cells[Key(head, node)].CopyTo(all, at);
                at += layout.Size;
            }
        }

        return all;
    }

    /// <summary>The engine's own answer at a place (at the quality of the table).</summary>
    /// <param name="head">The head.</param>
    /// <param name="values">A value for each axis.</param>
    /// <param name="cancellation">Stops the work.</param>
    public Candidate Run(int head, IReadOnlyList<double> values, CancellationToken cancellation)
    {
        (Spot spot, Presentation way) = At(head, values);
        return Trial.Run(scenario with { Spot = spot, Presentations = [way], Tide = [] }, rigs[head] with { Presentation = way }, Trial.Coarse(new SimulationOptions()), cancellation);
    }

    /// <summary>The spot at a place.</summary>
    public Spot SpotAt(IReadOnlyList<double> values) => At(0, values).Spot;

    /// <summary>Reads a head off the table, as the page's script does.</summary>
    /// <param name="head">The head.</param>
    /// <param name="values">A value for each axis.</param>
    public PocketReading Read(int head, double[] values) => Read(head, values, axes, Methods[head]);

    private bool IsGood => Methods.All(method => method != PocketMethod.Nearest) && Error.Share.Most <= GoodShare && Error.Depth.Most <= GoodDepth && Error.Wait.Most <= GoodWait;

    private IEnumerable<double[]> AllNodes() =>
        from a in axes[0].Steps from b in axes[1].Steps from c in axes[2].Steps select (double[])[a, b, c];

    private static (int, double, double, double) Key(int head, double[] values) => (head, values[0], values[1], values[2]);

    private (Spot Spot, Presentation Way) At(int head, IReadOnlyList<double> values)
    {
        (Spot spot, Presentation way) = (scenario.Spot, rigs[head].Presentation);
        for (int a = 0; a < axes.Length; a++) (spot, way) = axes[a].Apply(spot, way, Math.Clamp(values[a], axes[a].Steps[0], axes[a].Steps[^1]));
        return (spot, way);
    }

    private void Fill(IEnumerable<double[]> places, IProgress<(int Done, int Total)>? progress, CancellationToken cancellation)
    {
        (int Head, double[] Values)[] missing = [.. places.SelectMany(values => Enumerable.Range(0, rigs.Count).Select(head => (head, values))).Where(item => !cells.ContainsKey(Key(item.head, item.values)))];

        // How far it will be refined shows only on the way; more than the room holds it is not.
        int total = Math.Max(room, cells.Count + missing.Length);
        Parallel.ForEach(missing, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount }, item =>
        {
            Candidate run = Run(item.Head, item.Values, cancellation);
            cells[Key(item.Head, item.Values)] = PocketCell.Pack(run, SpotAt(item.Values).Depth, layout);
            progress?.Report((cells.Count, total));
        });
    }

    // Which head is read off how, and what all of it is worth.
    private void Judge(double[][] values)
    {
        var methods = new PocketMethod[rigs.Count];
        var considered = new (double Shares, double Path, double Spread)[rigs.Count];
        for (int head = 0; head < rigs.Count; head++)
        {
            double shares = Percentile([.. values.Select(v => Off(head, v, PocketMethod.Shares))], 0.95);
            double path = layout.Wanders ? double.PositiveInfinity : Percentile([.. values.Select(v => Off(head, v, PocketMethod.Path))], 0.95);
            double spread = !layout.Wanders ? double.PositiveInfinity : Percentile([.. values.Select(v => Off(head, v, PocketMethod.Spread))], 0.95);
            considered[head] = (shares, path, spread);
            double least = Math.Min(shares, Math.Min(path, spread));
            methods[head] = least > TooFar ? PocketMethod.Nearest : Least(considered[head]);
        }

        Considered = considered;

        Methods = methods;
        Error = ErrorOf(values, axes, methods);

        double Off(int head, double[] v, PocketMethod method) => Math.Abs(Read(head, v, axes, method).Zone - Decode(cells[Key(head, v)]).Zone);
    }

    private static PocketMethod Least((double Shares, double Path, double Spread) error) =>
        error.Shares <= Math.Min(error.Path, error.Spread) ? PocketMethod.Shares : error.Path <= error.Spread ? PocketMethod.Path : PocketMethod.Spread;

    // A head at its computed steps alone is not read off between them: its errors are those of another question.
    private PocketError ErrorOf(double[][] values, PocketAxis[] over, PocketMethod[] methods)
    {
        List<double> share = [], depth = [], wait = [];
        int same = 0;
        foreach (double[] v in values)
        {
            double[] read = new double[rigs.Count], truths = new double[rigs.Count];
            for (int head = 0; head < rigs.Count; head++)
            {
                PocketReading here = Read(head, v, over, methods[head]), truth = Decode(cells[Key(head, v)]);
                (read[head], truths[head]) = (here.Score, truth.Score);
                if (methods[head] == PocketMethod.Nearest) continue;
                share.Add(Math.Abs(here.Zone - truth.Zone));
                depth.Add(Math.Abs(here.Middle - truth.Middle));
                if (double.IsFinite(here.Wait) && double.IsFinite(truth.Wait)) wait.Add(Math.Abs(here.Wait - truth.Wait));
            }

            int best = BestOf(read);
            if (truths.Max() - (best < 0 ? 0 : truths[best]) < SmallLoss) same++;
        }

        return new PocketError(share.Count, Of(share), Of(depth), Of(wait), same, values.Length);

        static (double Half, double Most, double Worst) Of(List<double> errors) => (Percentile([.. errors], 0.5), Percentile([.. errors], 0.95), errors.Count == 0 ? 0 : errors.Max());
    }

    // The axis whose every second step is missed most: without it the errors grow most. None where all are fine enough.
    private int WorstAxis(double[][] values)
    {
        int worst = -1;
        double most = 0;
        for (int a = 0; a < axes.Length; a++)
        {
            if (axes[a].Steps.Count >= MostSteps) continue;
            PocketAxis[] without = [.. axes.Select((axis, i) => i == a ? axis with { Steps = [.. axis.Steps.Where((_, step) => step % 2 == 0)] } : axis)];
            PocketError error = ErrorOf(values, without, [.. Considered.Select(Least)]);
            double grown = (error.Share.Most / GoodShare) + (error.Depth.Most / GoodDepth) + (error.Wait.Most / GoodWait);
            if (grown > most) (worst, most) = (a, grown);
        }

        return worst;
    }

    private PocketReading Read(int head, double[] values, PocketAxis[] over, PocketMethod method)
    {
        Span<int> below = stackalloc int[3];
        Span<double> part = stackalloc double[3];
        for (int a = 0; a < 3; a++)
        {
            (below[a], part[a]) = over[a].Place(values[a]);
            if (method == PocketMethod.Nearest) part[a] = part[a] < Halfway ? 0 : 1;
        }

        double[] sum = new double[layout.Size];
        double never = 0, waits = 0, weightOfWaits = 0;
        for (int corner = 0; corner < 8; corner++)
        {
            double weight = 1;
            double[] node = new double[3];
            for (int a = 0; a < 3; a++)
            {
                bool upper = ((corner >> a) & 1) == 1;
                weight *= upper ? part[a] : 1 - part[a];
                node[a] = over[a].Steps[below[a] + (upper ? 1 : 0)];
            }

            if (weight == 0) continue;
            byte[] cell = cells[Key(head, node)];
            for (int i = 0; i < cell.Length; i++) sum[i] += weight * cell[i];
            if (cell[PocketLayout.Wait] == PocketCell.Never) never += weight;
            else (waits, weightOfWaits) = (waits + (weight * cell[PocketLayout.Wait]), weightOfWaits + weight);
        }

        double zone = sum[PocketLayout.Zone] / 200;
        if (method is PocketMethod.Path or PocketMethod.Spread)
        {
            // Over a bottom that slopes the zone has no one height: the share is read as it was measured.
            Spot spot = SpotAt(values);
            if (spot.Profile is not { IsEven: false }) zone = PathShare(method == PocketMethod.Path ? sum.AsSpan(PocketLayout.Path, layout.Slices) : sum.AsSpan(layout.Lowest, layout.Spread), spot.Depth - spot.StrikeZone.Bottom, spot.Depth - spot.StrikeZone.Top);
        }

        return new PocketReading(zone, never < 0.5 && weightOfWaits > 0 ? waits / weightOfWaits / 2 : double.NaN, sum[PocketLayout.Middle] / 255 * layout.Tallest, sum[PocketLayout.Score] / 200);
    }

    // Part of a path, as a line through some heights, between two heights (m).
    private double PathShare(ReadOnlySpan<double> heights, double low, double high)
    {
        double inside = 0;
        for (int s = 0; s + 1 < heights.Length; s++)
        {
            double a = heights[s] / 255 * layout.Tallest, b = heights[s + 1] / 255 * layout.Tallest;
            double from = Math.Min(a, b), to = Math.Max(a, b);
            inside += to - from < 1e-9 ? (a >= low && a <= high ? 1 : 0) : Math.Max(0, Math.Min(to, high) - Math.Max(from, low)) / (to - from);
        }

        return inside / (heights.Length - 1);
    }

    private PocketReading Decode(byte[] cell) => new(
        cell[PocketLayout.Zone] / 200.0,
        cell[PocketLayout.Wait] == PocketCell.Never ? double.NaN : cell[PocketLayout.Wait] / 2.0,
        cell[PocketLayout.Middle] / 255.0 * layout.Tallest,
        cell[PocketLayout.Score] / 200.0);

    private static double Percentile(double[] errors, double share)
    {
        if (errors.Length == 0) return 0;
        Array.Sort(errors);
        return errors[(int)Math.Min(errors.Length - 1, Math.Ceiling(share * errors.Length) - 1 < 0 ? 0 : Math.Ceiling(share * errors.Length) - 1)];
    }

    // Points that fill a box evenly in any number (Halton 1960).
    private static double Scrambled(int index, int radix)
    {
        double share = 1, found = 0;
        for (int i = index; i > 0; i /= radix)
        {
            share /= radix;
            found += share * (i % radix);
        }

        return found;
    }
}
