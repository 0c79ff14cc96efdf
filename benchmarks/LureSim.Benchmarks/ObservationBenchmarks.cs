using BenchmarkDotNet.Attributes;
using LureSim.Decision.Observations;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Benchmarks;

/// <summary>What observations cost on top of a plan's runs: six weights, a stopwatch fall, a count that did not come, a float and a white plate, on all cores. The plan's search is run once and not measured.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class ObservationBenchmarks
{
    private static readonly Scenario Plain = new()
    {
        Title = "channel",
        Spot = new Spot
        {
            Depth = 4.3,
            CurrentSpeed = 0.4,
            CurrentDirection = 1.5,
            Salinity = 27,
            TemperatureCelsius = 21,
            Clarity = new SecchiClarity(1.5, WaterKind.CoastalGreen),
            Sky = new SkyByElevation(0.7),
            StrikeZone = new StrikeZone(3.1, 4.15) { MovesWithBottom = true },
            TargetFish = "red drum",
        },
        Tackle = new TackleBox
        {
            RodTipHeight = 1.5,
            Reel = new Reel(6.2, 0.045),
            Line = new LineSpecification(LineKind.Braid, 44.5, 0.18e-3),
            Leader = new LeaderSpecification(LineKind.Fluorocarbon, 89, 0.4e-3, 0.6),
            JigHeads = [.. ((double[])[3.54, 5.32, 7.09, 10.6, 14.2, 21.3]).Select((grams, i) => new JigHead(grams * 1e-3, HeadMetal.Lead, 1.1e-3, $"size {i}"))],
            Bodies = [new LureBody(BodyProfile.PaddleTail, 0.1, 0.019, 0.0164, 1050, "paddle tail")],
            Colours = ["white"],
        },
        Presentations = [new Presentation { Name = "slow", CastLength = 18, RetrieveSpeed = 0.3 }],
        Fixed = Enum.GetValues<Hand>(),
        Uncertainty = new ScenarioUncertainty { Current = Spread.OfShare(0.6) },
    };

    private static readonly Scenario Seen = Plain with
    {
        Seen =
        [
            new Observation { Kind = ObservationKind.BottomTime, Value = 6, Head = Plain.Tackle.JigHeads[4], Body = Plain.Tackle.Bodies[0], Way = Plain.Presentations[0] },
            new Observation { Kind = ObservationKind.BottomTime, Value = 10, Happened = false, Counted = true, Head = Plain.Tackle.JigHeads[0], Body = Plain.Tackle.Bodies[0], Way = Plain.Presentations[0] },
            new Observation { Kind = ObservationKind.FloatDrift, Value = 18, Length = 9 },
            new Observation { Kind = ObservationKind.WhiteVanishes, Value = 1.3 },
        ],
    };

    private readonly ChoiceSearch search = ChoiceSearch.Find(Plain);
    private readonly ParallelOptions parallel = new();

    /// <summary>What was learned of the inputs.</summary>
    [Benchmark]
    public ObservationUpdate Update() => ObservationUpdate.Of(Seen, parallel)!;

    /// <summary>What was learned, and the choice with it.</summary>
    [Benchmark]
    public CalibratedChoice UpdateAndChoose() => CalibratedChoice.Of(search, ObservationUpdate.Of(Seen, parallel)!, new SimulationOptions(), parallel);
}
