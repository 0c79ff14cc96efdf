using BenchmarkDotNet.Attributes;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Benchmarks;

/// <summary>A study of twelve weights over draws of all inputs: casts of 25 m with a minute of steady retrieve, on all cores.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class DecisionBenchmarks
{
    private static readonly Scenario Question = new()
    {
        Title = "channel",
        Spot = new Spot
        {
            Depth = 6,
            CurrentSpeed = 0.3,
            CurrentDirection = 1,
            Salinity = 30,
            TemperatureCelsius = 20,
            Clarity = new SecchiClarity(3, WaterKind.CoastalGreen),
            Sky = new SkyByElevation(0.7),
            StrikeZone = new StrikeZone(4, 6) { MovesWithBottom = true },
            TargetFish = "red drum",
        },
        Tackle = new TackleBox
        {
            RodTipHeight = 1.5,
            Reel = new Reel(6.2, 0.045),
            Line = new LineSpecification(LineKind.Braid, 44.5, 0.18e-3),
            Leader = new LeaderSpecification(LineKind.Fluorocarbon, 89, 0.4e-3, 0.75),
            JigHeads = [.. CommonWeights.All.Take(12).Select((mass, i) => new JigHead(mass, HeadMetal.Lead, 1e-3, $"size {i}"))],
            Bodies = [new LureBody(BodyProfile.PaddleTail, 0.09, 0.017, 0.013, 1040, "paddle tail")],
            Colours = ["white"],
        },
        Presentations = [new Presentation { Name = "steady", CastLength = 25, CountDown = 6, RetrieveSpeed = 0.38 }],
    };

    /// <summary>Draws for each head.</summary>
    [Params(24, 200)]
    public int Samples { get; set; }

    /// <summary>Twelve heads over all draws.</summary>
    [Benchmark]
    public UncertaintyStudy TwelveHeads() => UncertaintyStudy.Run(
        Question, Question.Tackle.Bodies[0], Question.Presentations[0], [], Samples, new SimulationOptions(), new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount });
}
