using BenchmarkDotNet.Attributes;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;

namespace LureSim.Benchmarks;

/// <summary>Windows of five seconds: a paddle tail on the retrieve, the dearest kind, and a straight soft bait.</summary>
[MemoryDiagnoser]
public class ActionBenchmarks
{
    private static readonly FlexibleTail Tail = new(-0.018, 0.027, 0.014, 0.012, 1.3e-3, FlexibleTail.StemStiffness(1e5, 0.006, 0.005, 0.008), Drop: 0.003);

    private static readonly ActionBody Paddle = Body(Tail), Straight = Body(null);

    /// <summary>Paddle tail at 0.5 m/s.</summary>
    [Benchmark]
    public ActionAssessment PaddleTail() => LureActionModel.Assess(Paddle, Knot.Loop(), TowInput.Steady(0.5, 0.7));

    /// <summary>The same bait without a tail.</summary>
    [Benchmark]
    public ActionAssessment SoftBait() => LureActionModel.Assess(Straight, Knot.Loop(), TowInput.Steady(0.5, 0.7));

    /// <summary>The verdict on one rig: a dozen tries of the paddle tail at 0.5 m/s.</summary>
    [Benchmark]
    public EnsembleAssessment PaddleTailTries() =>
        ActionEnsemble.Assess(Paddle, Knot.Loop(), TowInput.Steady(0.5, 0.7), new() { SettlingTime = 1.5, OutputInterval = 0.01, Tolerance = 1e-3, StopsWhenClear = true });

    private static ActionBody Body(FlexibleTail? tail)
    {
        Vector3d semi = new(0.045, 0.007, 0.009);
        double volume = 4.0 / 3 * Math.PI * semi.X * semi.Y * semi.Z;
        return ActionBody.Spheroid(
            "soft bait",
            [new(volume * 1050, volume, default, new(0.09, 0.014, 0.018)), new(5e-3, 5e-3 / 11340, new(0.042, 0, -0.004), new(0.009, 0.009, 0.009))],
            semi,
            new(0.047, 0, 0.006)) with
        {
            Appendages = [new(new(0, 0, 0.009), 2.5e-5)],
            Tail = tail,
        };
    }
}
