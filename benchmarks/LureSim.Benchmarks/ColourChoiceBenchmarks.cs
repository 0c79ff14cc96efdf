using BenchmarkDotNet.Attributes;
using LureSim.Decision.Colours;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Benchmarks;

/// <summary>The choice of a colour, from the light of the spot to the advice with its tries.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class ColourChoiceBenchmarks
{
    private Scenario scenario = null!;

    /// <summary>Reads the scenario of the channel under a bridge.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LureSim.sln"))) folder = folder.Parent;
        ScenarioReading reading = ScenarioReader.Read(Path.Combine(folder?.FullName ?? throw new InvalidOperationException("The benchmarks are to be run from the tree."), "scenarios", "bridge-channel.yaml"));
        scenario = reading.Scenario ?? throw new InvalidOperationException("The scenario cannot be read.");
    }

    /// <summary>Eight colours at five metres of 5.5.</summary>
    [Benchmark]
    public ColourFinding Choice() => SpotColours.At(scenario, 5, LengthScale.Metres);
}
