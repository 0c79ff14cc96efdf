using BenchmarkDotNet.Attributes;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Benchmarks;

/// <summary>A quarter-ounce jig on braid and leader in 10 m of water with a current.</summary>
internal static class BenchmarkRig
{
    public static readonly WaterColumn Water = WaterColumn.Of(new Spot
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

    public static readonly LineProperties Line = new(TackleBuilder.Material(LineKind.Braid, 0.18e-3), TackleBuilder.Material(LineKind.Fluorocarbon, 0.40e-3), 0.75);

    public static readonly LureProperties Lure = TackleBuilder.Lure(
        new JigHead(0.0070874, HeadMetal.Lead, 1e-3, "1/4 oz"), new LureBody(BodyProfile.PaddleTail, 0.09, 0.017, 0.013, 1040, "paddle tail"));

    public static readonly Presentation Steady = new() { Name = "steady", CastLength = 25, CountDown = 6, RetrieveSpeed = 0.38 };

    public static readonly Presentation LiftAndDrop = Steady with
    {
        Name = "lift and drop",
        CountDown = null,
        Moves = [new Move { Kind = MoveKind.Lift, Duration = 1, Up = 0.6 }, new Move { Kind = MoveKind.Return, Duration = 1.5, Up = -0.6 }, new Move { Kind = MoveKind.Reel, Duration = 1.5, ReelShare = 1 }],
    };

    /// <summary>One run with the defaults but for what is given.</summary>
    public static Track Run(Presentation presentation, SimulationOptions? options = null) =>
        Retrieve.Simulate(Water, Lure, Line, 1.5, presentation, new StrikeZone(4, 8), options);
}

/// <summary>A cast with about a minute of steady retrieve against the number of segments.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class SegmentBenchmarks
{
    /// <summary>Line segments.</summary>
    [Params(20, 40, 80, 160)]
    public int Segments { get; set; }

    /// <summary>Splash-down, 6 s of fall, about a minute of retrieve.</summary>
    [Benchmark]
    public Track Cast() => BenchmarkRig.Run(BenchmarkRig.Steady, new SimulationOptions { Segments = Segments });
}

/// <summary>A slow retrieve cut off after some time, against that time.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class SimulatedTimeBenchmarks
{
    /// <summary>Simulated time after splash-down (s).</summary>
    [Params(30, 60, 120, 240)]
    public int Seconds { get; set; }

    /// <summary>Six seconds of fall, then reeling at 0.1 m/s.</summary>
    [Benchmark]
    public Track Cast() => BenchmarkRig.Run(BenchmarkRig.Steady with { CastLength = 40, RetrieveSpeed = 0.1, TimeLimit = Seconds });
}

/// <summary>Kinds of casts at the defaults.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class MotionBenchmarks
{
    /// <summary>Fall to 10 m on an open bail.</summary>
    [Benchmark]
    public Track Fall() => BenchmarkRig.Run(BenchmarkRig.Steady with { CountDown = null }, new SimulationOptions { FallOnly = true });

    /// <summary>Fall to the bottom, then lift, lower and reel until the line is in.</summary>
    [Benchmark]
    public Track LiftDrop() => BenchmarkRig.Run(BenchmarkRig.LiftAndDrop);
}

/// <summary>What the shape of the bottom costs a cast: the same water, once as even water and once as a profile that changes nothing; and the same cast over a ledge.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class BottomBenchmarks
{
    private static readonly Spot Even = new()
    {
        Depth = 3,
        Bottom = BottomKind.Shell,
        CurrentSpeed = 0.3,
        CurrentDirection = 1,
        Salinity = 30,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(3, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.7),
        StrikeZone = new StrikeZone(2, 3),
        TargetFish = "red drum",
    };

    private static readonly Presentation Steady = BenchmarkRig.Steady with { CountDown = null };

    private static readonly WaterColumn Same = WaterColumn.Of(Even with { Profile = new BottomProfile { Points = [new(0, 3)], Stretches = [new(0, 30) { Bottom = BottomKind.Shell }] } });

    private static readonly WaterColumn Ledge = WaterColumn.Of(Even with { Profile = new BottomProfile { Points = [new(0, 1), new(12, 1.2), new(14, 3)] } });

    private static readonly WaterColumn Water = WaterColumn.Of(Even);

    /// <summary>Even water.</summary>
    [Benchmark(Baseline = true)]
    public Track EvenBottom() => Run(Water);

    /// <summary>The same bottom by the way of a profile.</summary>
    [Benchmark]
    public Track SameByProfile() => Run(Same);

    /// <summary>Over a ledge: another path, with its own steps.</summary>
    [Benchmark]
    public Track OverLedge() => Run(Ledge);

    private static Track Run(WaterColumn water) => Retrieve.Simulate(water, BenchmarkRig.Lure, BenchmarkRig.Line, 1.5, Steady, new StrikeZone(2, 3));
}

/// <summary>Many retrieves on some of the cores.</summary>
[SimpleJob(launchCount: 1, warmupCount: 1, iterationCount: 3, invocationCount: 1)]
public class SweepBenchmarks
{
    private const int Runs = 2400;

    /// <summary>Threads.</summary>
    [Params(1, 2)]
    public int Threads { get; set; }

    /// <summary>Casts of 2,400 retrieve speeds, 0.2 to 0.8 m/s.</summary>
    [Benchmark]
    public int Sweep()
    {
        int steps = 0;
        Parallel.For(0, Runs, new ParallelOptions { MaxDegreeOfParallelism = Threads }, i =>
        {
            Track track = BenchmarkRig.Run(BenchmarkRig.Steady with { RetrieveSpeed = 0.2 + (0.6 * i / Runs) });
            Interlocked.Add(ref steps, track.Statistics.Steps);
        });
        return steps;
    }
}
