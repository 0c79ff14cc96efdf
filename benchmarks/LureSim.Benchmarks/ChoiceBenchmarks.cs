using BenchmarkDotNet.Attributes;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Motion;

namespace LureSim.Benchmarks;

/// <summary>The search for a choice, on all cores, its tables of swimming known: a small box, and 24 heads with three retrieves and 24 tries.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class ChoiceBenchmarks
{
    private sealed class Stopped : Exception;

    private sealed class StopAtFirst : IProgress<Candidate>
    {
        public void Report(Candidate value) => throw new Stopped();
    }

    /// <summary>Four heads, two baits, two retrieves, six tries.</summary>
    [Benchmark(Baseline = true)]
    public ChoiceSearch SmallBox() => ChoiceSearch.Find(ChoiceSpots.Small[0].Scenario);

    /// <summary>24 heads, two baits, three retrieves, 24 tries.</summary>
    [Benchmark]
    public ChoiceSearch LargeBox() => ChoiceSearch.Find(ChoiceSpots.LargeBox);

    /// <summary>The first choice that is shown for the large box.</summary>
    [Benchmark]
    public bool FirstChoiceOfLargeBox()
    {
        try
        {
            ChoiceSearch.Find(ChoiceSpots.LargeBox, new ChoiceSearchOptions { FirstLook = new StopAtFirst() });
            return false;
        }
        catch (Stopped)
        {
            return true;
        }
    }

    /// <summary>Where the choice of the small box flips.</summary>
    [Benchmark]
    public IReadOnlyList<ChoiceFlip> Flips() => ChoiceFlips.Of(found ??= SmallBox(), new SimulationOptions(), new ParallelOptions());

    private ChoiceSearch? found;
}
