using BenchmarkDotNet.Attributes;
using LureSim.Motion;
using LureSim.Scenarios;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Benchmarks;

/// <summary>Casts of a quarter-ounce jig: a fall from 10 m, and a cast with about a minute of steady retrieve, against the number of segments.</summary>
[MemoryDiagnoser]
[ShortRunJob]
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

    private static readonly Presentation LiftAndDrop = Steady with
    {
        Name = "lift and drop",
        CountDown = null,
        Moves = [new Move { Kind = MoveKind.Lift, Duration = 1, Up = 0.6 }, new Move { Kind = MoveKind.Return, Duration = 1.5 }, new Move { Kind = MoveKind.Reel, Duration = 1.5, ReelShare = 1 }],
    };

    /// <summary>Line segments.</summary>
    [Params(40)]
    public int Segments { get; set; }

    /// <summary>Splash-down, 6 s of fall, about a minute of retrieve.</summary>
    [Benchmark]
    public Track Cast() => Retrieve.Simulate(Water, Lure, Line, 1.5, Steady, new StrikeZone(4, 8), new SimulationOptions { Segments = Segments });

    /// <summary>Fall to 10 m on an open bail.</summary>
    [Benchmark]
    public Track Fall() => Retrieve.Simulate(Water, Lure, Line, 1.5, Steady with { CountDown = null }, new StrikeZone(4, 8), new SimulationOptions { Segments = Segments, FallOnly = true });

    /// <summary>Fall to the bottom, then lift, lower and reel until the line is in.</summary>
    [Benchmark]
    public Track LiftDrop() => Retrieve.Simulate(Water, Lure, Line, 1.5, LiftAndDrop, new StrikeZone(4, 8), new SimulationOptions { Segments = Segments });

    /// <summary>Casts of 200 retrieve speeds, 0.2 to 0.8 m/s, on all cores.</summary>
    [Benchmark]
    public int Sweep()
    {
        int steps = 0;
        Parallel.For(0, 200, i =>
        {
            Track track = Retrieve.Simulate(
                Water, Lure, Line, 1.5, Steady with { RetrieveSpeed = 0.2 + (0.003 * i) }, new StrikeZone(4, 8), new SimulationOptions { Segments = Segments });
            Interlocked.Add(ref steps, track.Statistics.Steps);
        });
        return steps;
    }
}
