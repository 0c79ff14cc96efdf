using System.Diagnostics;
using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>Puts the pictures of one scenario together. Thread-safe.</summary>
/// <param name="bench">The scenario on the bench.</param>
internal sealed class PicturePart(WorkBench bench)
{
    // While a knob moves one core is left for the browser; at rest it needs none.
    private static readonly int Workers = Math.Max(1, Environment.ProcessorCount - 1);
    private static readonly int AtRest = Environment.ProcessorCount;

    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<WorkBench, RunCache> Caches = [];

    private readonly RunCache cache = Caches.GetValue(bench, _ => new RunCache());

    /// <summary>The scenario on the bench.</summary>
    public WorkBench Bench => bench;

    /// <summary>Runs made for this scenario so far, and evaluations of the engine in them.</summary>
    public (int Runs, long Evaluations) Made => cache.Made;

    /// <summary>Units of the words.</summary>
    public UnitFormat Format { get; } = new(bench.Units);

    /// <summary>The first picture, which the page is served with: what the box does best, each retrieve of the file tried.</summary>
    /// <param name="cancellation">Stops the work.</param>
    public ServerMessage First(CancellationToken cancellation)
    {
        Begin(cancellation);
        ServerMessage look = Look(0, bench.Opened, null, cancellation);
        return look with { Kind = "hello", Noted = SeenPicture.Noted(this, bench.Ask(bench.Opened)) };
    }

    /// <summary>Finds what is shown where the settings do not say it.</summary>
    /// <param name="cancellation">Stops the work.</param>
    public void Begin(CancellationToken cancellation)
    {
        lock (bench)
        {
            if (bench.Start[KnobIds.Head] is not null) return;
            Scenario scenario = bench.Scenario;
            LureBody? soft = BodyChoice.Of(scenario).Soft;
            Rig[] rigs = [.. scenario.Presentations.SelectMany(way => scenario.Tackle.LuresWith(soft).Select(lure => new Rig(lure.Head, lure.Body, way)))];
            var runs = new Candidate[rigs.Length];
            Parallel.For(0, rigs.Length, new ParallelOptions { CancellationToken = cancellation }, i => runs[i] = Trial.Run(scenario, rigs[i], RunCache.Options(Quality.Drag), cancellation));
            Rig best = runs.MaxBy(run => run.Score)!.Rig;
            BenchSettings start = BenchSettings.None.With(KnobIds.Retrieve, best.Presentation.Name);
            if (soft is not null) start = start.With(KnobIds.Bait, soft.Label);
            BenchQuestion question = bench.Ask(start);
            string name = question.Lures.First(lure => lure.Rig.Head == best.Head && lure.Rig.Body == best.Body).Name;
            bench.BeginWith(start.With(KnobIds.Head, name));
        }
    }

    /// <summary>A whole picture at the quality of a drag, or finer where it is there.</summary>
    public ServerMessage Look(long seq, BenchSettings settings, BenchSettings? pin, CancellationToken cancellation)
    {
        BenchQuestion question = bench.Ask(settings);
        ServerMessage focus = Focus(seq, question, pin, cancellation);
        return Rest(focus, question, cancellation);
    }

    /// <summary>The lure that is looked at, at the quality of a drag.</summary>
    public ServerMessage Focus(long seq, BenchQuestion question, BenchSettings? pin, CancellationToken cancellation) =>
        Message("look", seq, question, pin, Quality.Drag, withRest: false, cancellation);

    /// <summary>The other lures beside it.</summary>
    public ServerMessage Rest(ServerMessage focus, BenchQuestion question, CancellationToken cancellation)
    {
        var watch = Stopwatch.StartNew();
        Candidate[] runs = Runs(question, Quality.Drag, cancellation);
        return focus with
        {
            Lines = WaterPicture.Lines(question, runs.Select((run, i) => (i, run)), focus.Scene!, Format),
            Rows = WaterPicture.Rows(question, runs, Format),
            Work = focus.Work + watch.Elapsed.TotalMilliseconds,
        };
    }

    /// <summary>A whole picture as every command computes it.</summary>
    public ServerMessage Fine(long seq, BenchQuestion question, BenchSettings? pin, CancellationToken cancellation) =>
        Message("fine", seq, question, pin, Quality.Fine, withRest: true, cancellation);

    /// <summary>How the lure that is looked at swims.</summary>
    public SwimView Swim(BenchQuestion question, CancellationToken cancellation) =>
        SwimPicture.Of(question, cache.Run(question, question.Focus, Quality.Fine, cancellation), Format, cancellation);

    /// <summary>What color it shows where it runs, or what is asked about a color.</summary>
    public ColorsView Colors(BenchQuestion question, AskedColor? asked, CancellationToken cancellation) =>
        ColorPicture.Of(question, cache.Run(question, question.Focus, Quality.Fine, cancellation), Format, asked);

    /// <summary>A run as every command computes it.</summary>
    public Candidate FineRun(BenchQuestion question, int index, CancellationToken cancellation) => cache.Run(question, index, Quality.Fine, cancellation);

    private ServerMessage Message(string kind, long seq, BenchQuestion question, BenchSettings? pin, Quality quality, bool withRest, CancellationToken cancellation)
    {
        var watch = Stopwatch.StartNew();
        SceneView scene = WaterPicture.Scene(question, Format);
        Candidate[]? runs = withRest ? Runs(question, quality, cancellation) : null;
        Candidate first = runs is null ? At(question, question.Focus, quality, cancellation) : runs[question.Focus];
        string? difference = null;
        if (pin is not null)
        {
            BenchQuestion kept = bench.Ask(pin);
            difference = PictureWords.Difference(first, At(kept, kept.Focus, quality, cancellation), kept.First.Name, Format);
        }

        return new ServerMessage(kind, seq)
        {
            State = question.Settings.Values,
            Scene = scene,
            Lines = WaterPicture.Lines(question, runs is null ? [(question.Focus, first)] : runs.Select((run, i) => (i, run)), scene, Format),
            Rows = runs is null ? null : WaterPicture.Rows(question, runs, Format),
            Table = runs is null ? null : WaterPicture.Table(question, runs, Format),
            Noted = runs is null ? null : SeenPicture.Noted(this, question),
            Focus = question.First.Name,
            Knobs = WaterPicture.Knobs(question),
            Sentence = PictureWords.Sentence(question, first, Format),
            Difference = difference,
            Note = question.Problems.Count > 0 ? $"These do not go together: {question.Problems[0].Message}. The file as it is is shown." : null,
            Work = watch.Elapsed.TotalMilliseconds,
        };
    }

    private Candidate[] Runs(BenchQuestion question, Quality quality, CancellationToken cancellation)
    {
        var runs = new Candidate[question.Lures.Count];

        // The one that is looked at and its neighbors go first: what is compared first.
        int[] order = [.. Enumerable.Range(0, runs.Length).OrderBy(i => Math.Abs(i - question.Focus))];
        Parallel.For(0, runs.Length, new ParallelOptions { MaxDegreeOfParallelism = quality == Quality.Fine ? AtRest : Workers, CancellationToken = cancellation }, i => runs[order[i]] = At(question, order[i], quality, cancellation));
        return runs;
    }

    private Candidate At(BenchQuestion question, int index, Quality quality, CancellationToken cancellation) =>
        cache.Run(question, index, cache.Has(question, index, Quality.Fine) ? Quality.Fine : quality, cancellation);
}
