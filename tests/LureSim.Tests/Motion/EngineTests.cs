using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Tests.Motion;

/// <summary>What the engine promises beside accuracy: the same bits, an answer to a cancellation, a bounded number of steps after a hard twitch.</summary>
public class EngineTests
{
    private static readonly WaterColumn Water = WaterColumn.Of(new Spot
    {
        Depth = 2.5,
        CurrentSpeed = 0.05,
        CurrentDirection = 0.5,
        Salinity = 26,
        TemperatureCelsius = 26,
        Clarity = new SecchiClarity(1.5, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.3),
        StrikeZone = new StrikeZone(1, 2),
        TargetFish = "red drum",
    });

    private static readonly LineProperties Line = new(TackleBuilder.Material(LineKind.Braid, 0.18e-3), TackleBuilder.Material(LineKind.Fluorocarbon, 0.40e-3), 0.9);

    private static readonly LureProperties Lure = TackleBuilder.Lure(
        new JigHead(0.0070874, HeadMetal.Lead, 1e-3, "1/4 oz"), new LureBody(BodyProfile.PaddleTail, 0.09, 0.017, 0.013, 1040, "paddle tail"));

    private static readonly Presentation Twitch = new()
    {
        Name = "twitch",
        CastLength = 12,
        CountDown = 3,
        RetrieveSpeed = 0.4,
        Moves = Move.StopAndGo(1.2, 2.5, 2, 0.3),
    };

    [Fact]
    public void The_same_cast_has_the_same_bits_on_any_number_of_threads()
    {
        double[] speeds = [0.3, 0.5];
        Track[] alone = [.. speeds.Select(Cast)];
        var together = new Track[4];
        Parallel.For(0, together.Length, new ParallelOptions { MaxDegreeOfParallelism = 4 }, i => together[i] = Cast(speeds[i % 2]));
        for (int i = 0; i < together.Length; i++)
        {
            Assert.Equal(alone[i % 2].Z, together[i].Z);
            Assert.Equal(alone[i % 2].RodTension, together[i].RodTension);
            Assert.Equal(alone[i % 2].Statistics, together[i].Statistics);
        }
    }

    [Fact]
    public void A_cancelled_run_ends_at_the_next_step()
    {
        // No clock: the token is checked each step, and a step is a millisecond of work or less.
        using var source = new CancellationTokenSource();
        source.Cancel();
        Track track = Retrieve.Simulate(Water, Lure, Line, 1.8, Twitch, new StrikeZone(1, 2), null, source.Token);
        Assert.Equal(SimulationStatus.Cancelled, track.Status);
        Assert.Equal(0, track.Statistics.Steps);
    }

    [Fact]
    public void A_run_cancelled_from_another_thread_ends_within_the_step_at_hand()
    {
        // The lure tells another thread to cancel in the midst of a step, and waits until it has; what is counted is the work after that.
        using var source = new CancellationTokenSource();
        using var reached = new ManualResetEventSlim();
        using var cancelled = new ManualResetEventSlim();
        var other = new Thread(() =>
        {
            reached.Wait();
            source.Cancel();
            cancelled.Set();
        });
        other.Start();
        var lure = new CountingLure { Mass = 7e-3, Volume = 3e-6, AddedMassCoefficient = 0.5, ContactRadius = 0.01 };
        lure.At(1000, () =>
        {
            reached.Set();
            cancelled.Wait();
        });
        Track track = Retrieve.Simulate(Water, lure, Line, 1.8, Twitch, new StrikeZone(1, 2), null, source.Token);
        other.Join();
        Assert.Equal(SimulationStatus.Cancelled, track.Status);
        Assert.NotEmpty(track.Time);

        // Two implicit stages of ten iterations, the accelerations at the end, and the speeds of a sample: a hundred evaluations are a millisecond.
        Assert.InRange(lure.Calls - 1000, 0, 100);
    }

    [Fact]
    public void Hard_twitches_of_stiff_line_take_thousands_of_steps_and_not_hundreds_of_thousands()
    {
        Track track = Retrieve.Simulate(Water, Lure, Line, 1.8, Twitch, new StrikeZone(1, 2));
        Assert.Equal(SimulationStatus.Completed, track.Status);
        // 3,500 when written, 5,100 with the lower drag of line and lure; a linearly implicit step needs about 300,000 for such a cast.
        Assert.InRange(track.Statistics.Steps, 100, 10_000);
    }

    private static Track Cast(double speed) =>
        Retrieve.Simulate(Water, Lure, Line, 1.8, Twitch with { RetrieveSpeed = speed, Moves = Move.StopAndGo(1.2, 1) }, new StrikeZone(1, 2));

    private sealed class CountingLure : LureProperties
    {
        private int at;
        private System.Action? action;

        public int Calls { get; private set; }

        public void At(int call, System.Action what) => (at, action) = (call, what);

        public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
        {
            Calls++;
            if (Calls == at) action?.Invoke();
            slope = 2e-4;
            return 2e-4 * speed;
        }
    }
}
