using BenchmarkDotNet.Attributes;
using LureSim.Motion;
using LureSim.Scenarios;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Benchmarks;

/// <summary>Casts of a quarter-ounce jig: a fall from 10 m, and a cast with about a minute of steady retrieve, against the number of segments.</summary>
[MemoryDiagnoser]
public class MotionBenchmarks
{
    private static readonly WaterColumn Water = WaterColumn.Of(new Spot
    {
        Depth = 10,
        CurrentSpeed = 0.3,
        CurrentDirection = 1,
        Salinity = 30,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(3, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.7),
        StrikeZone = new StrikeZone(4, 8),
        TargetFish = "red drum",
    });

    private static readonly LineProperties Line = new(TackleBuilder.Material(LineKind.Braid, 0.18e-3), TackleBuilder.Material(LineKind.Fluorocarbon, 0.40e-3), 0.75);

    private static readonly LureProperties Lure = TackleBuilder.Lure(
        new JigHead(0.0070874, HeadMetal.Lead, 1e-3, "1/4 oz"), new LureBody(BodyProfile.PaddleTail, 0.09, 0.017, 0.013, 1040, "paddle tail"));

    private static readonly Presentation Steady = new() { Name = "steady", CastLength = 25, CountDown = 6, RetrieveSpeed = 0.38 };

    /// <summary>Line segments.</summary>
    [Params(20, 40, 80)]
    public int Segments { get; set; }

    /// <summary>Splash-down, 6 s of fall, about a minute of retrieve.</summary>
    [Benchmark]
    public Track Cast() => Retrieve.Simulate(Water, Lure, Line, 1.5, Steady, new StrikeZone(4, 8), new SimulationOptions { Segments = Segments });

    /// <summary>Fall to 10 m on an open bail.</summary>
    [Benchmark]
    public Track Fall() => Retrieve.Simulate(Water, Lure, Line, 1.5, Steady with { CountDown = null }, new StrikeZone(4, 8), new SimulationOptions { Segments = Segments, FallOnly = true });
}
