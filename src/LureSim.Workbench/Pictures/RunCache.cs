using System.Collections.Concurrent;
using LureSim.Decision.Trials;
using LureSim.Motion;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>How exactly a run is made.</summary>
internal enum Quality
{
    /// <summary>While a knob moves.</summary>
    Drag,

    /// <summary>At rest: as every command does it.</summary>
    Fine,
}

/// <summary>Runs of the page, each made once. Thread-safe.</summary>
internal sealed class RunCache
{
    // A bound on memory: a run is some hundred kilobytes at the most.
    private const int MostKept = 400;

    private readonly ConcurrentDictionary<(string Settings, string Lure, Quality Quality), Candidate> kept = new();

    private int runs;
    private long evaluations;

    /// <summary>Runs made so far, and how often the engine evaluated its equations in them: work that depends on no machine.</summary>
    public (int Runs, long Evaluations) Made => (Volatile.Read(ref runs), Interlocked.Read(ref evaluations));

    /// <summary>Settings of the simulations of a quality. Drag runs stay within a point of the share and two pixels of the path of fine ones (docs/workbench.md).</summary>
    /// <param name="quality">The quality.</param>
    public static SimulationOptions Options(Quality quality) => quality switch
    {
        Quality.Drag => new SimulationOptions { Segments = 20, ToleranceFactor = 6 },
        Quality.Fine => new SimulationOptions(),
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "Not a quality."),
    };

    /// <summary>The run of a lure.</summary>
    /// <param name="question">The question.</param>
    /// <param name="index">The lure.</param>
    /// <param name="quality">How exactly.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Candidate Run(BenchQuestion question, int index, Quality quality, CancellationToken cancellation)
    {
        BenchLure lure = question.Lures[index];
        (string Settings, string Lure, Quality Quality) key = (Motion(question), lure.Name, quality);
        if (kept.TryGetValue(key, out Candidate? known)) return known;
        Candidate run = Trial.Run(question.Scenario, lure.Rig, Options(quality), cancellation);
        Interlocked.Increment(ref runs);
        Interlocked.Add(ref evaluations, run.Track.Statistics.Evaluations);
        if (kept.Count > MostKept) kept.Clear();
        return kept[key] = run;
    }

    /// <summary>Whether a run is there.</summary>
    public bool Has(BenchQuestion question, int index, Quality quality) => kept.ContainsKey((Motion(question), question.Lures[index].Name, quality));

    // Clarity and sun move no lure.
    private static string Motion(BenchQuestion question) => question.Settings.Without(KnobIds.Head, KnobIds.Clarity, KnobIds.Water, KnobIds.Sun).ToString();
}
