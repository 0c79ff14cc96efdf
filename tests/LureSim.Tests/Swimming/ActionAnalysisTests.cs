using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;

namespace LureSim.Tests.Swimming;

/// <summary>Figures and verdicts of motions that are written down: what they are is known without the model.</summary>
public class ActionAnalysisTests
{
    private const double Interval = 0.005, BodyLength = 0.1;

    private static readonly ActionBody Body = ActionBody.Spheroid("spheroid", [new(0.02, 1.5e-5, default, new(BodyLength, 0.02, 0.02))], new(BodyLength / 2, 0.01, 0.01), new(BodyLength / 2, 0, 0));

    private static ActionReport Report(TowInput tow, double duration, Func<double, (Vector3d Position, Attitude Attitude, double Tension)> at)
    {
        int n = (int)Math.Round(duration / Interval) + 1;
        double[] time = [.. Enumerable.Range(0, n).Select(i => i * Interval)];
        (Vector3d Position, Attitude Attitude, double Tension)[] all = [.. time.Select(at)];
        Vector3d Rate(int i) => (1 / Interval) * (all[Math.Max(i, 1)].Position - all[Math.Max(i, 1) - 1].Position);
        return ActionAnalysis.Of(new ActionTrace
        {
            Body = Body,
            Knot = Knot.Loop(),
            Tow = tow,
            Options = new ActionOptions { Duration = duration, OutputInterval = Interval, SettlingTime = 0 },
            Status = SimulationStatus.Completed,
            EndTime = duration,
            Statistics = new SimulationStatistics(n, 0, n, Interval, 0),
            Time = time,
            Position = [.. all.Select(s => s.Position)],
            Attitude = [.. all.Select(s => s.Attitude)],
            Velocity = [.. Enumerable.Range(0, n).Select(Rate)],
            AngularVelocity = new Vector3d[n],
            TailAngle = new double[n],
            BendSideways = new double[n],
            BendUpright = new double[n],
            Tension = [.. all.Select(s => s.Tension)],
            LinePull = new Vector3d[n],
            LineEnd = new Vector3d[n],
            RollTotal = new double[n],
            TwistTotal = new double[n],
        });
    }

    // A lure sinks on a circle of 0.3 m, two turns in 5 s, its nose along the path: the heading runs through whole turns without a beat.
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_circle_is_counted_through_whole_turns_either_way_round(int side)
    {
        const double Radius = 0.3, Turns = 0.4;
        ActionReport report = Report(new TowInput { Mode = TowMode.Free }, 5, t =>
        {
            double angle = side * 2 * Math.PI * Turns * t;
            return (new(side * Radius * Math.Sin(angle), side * Radius * (1 - Math.Cos(angle)), -0.2 * t), Attitude.Of(angle, 0, 0), 0);
        });

        // The drift is taken out by the quarters of the window, whose middles lie a sample more than three quarters apart: 0.1 degree of 720.
        Assert.Equal(0, report.YawAmplitude, 3e-3);
        Assert.Equal(side * 2 * Math.PI, report.MeanYaw, 1e-9);

        // The first course is known after a sample: two turns of 1,000 samples are seen as 999 of them.
        Assert.Equal(Radius, report.SpiralRadius, 2e-3 * Radius);
        Assert.Equal(side * Turns, report.SpiralRate, 2e-3 * Turns);
        Assert.Equal(0.2, report.SinkRate, 1e-9);
    }

    [Theory]
    [InlineData(0.03, ActionVerdict.Muted)]
    [InlineData(0.08, ActionVerdict.Glides)]
    public void After_a_twitch_it_glides_if_it_makes_half_its_length_on_a_slack_line(double glide, ActionVerdict verdict)
    {
        // Pulled 0.1 m in 0.2 s, then coasting straight ahead within half a second, the nose five degrees off: no dart.
        ActionReport report = Report(new TowInput { Strokes = [new TowStroke(0.5, 0.1, 0.2)] }, 3, t =>
        {
            double pulled = 0.1 * Math.Clamp((t - 0.5) / 0.2, 0, 1), coasted = glide * Math.Clamp((t - 0.7) / 0.5, 0, 1);
            return (new(pulled + coasted, 0, 0), Attitude.Of(5 * Math.PI / 180, 0, 0), t is > 0.5 and < 0.699 ? 1 : 0);
        });
        Assert.Equal(verdict, report.Verdict);
        Assert.Equal(glide, report.Glide, 3e-3);
        Assert.Equal(0.1 + glide, report.DartTravel, 1e-9);
    }

    [Fact]
    public void A_beat_has_its_frequency_and_amplitude()
    {
        // Heading 10 degrees to either side at 3 Hz: the amplitude leaves out the outermost hundredths.
        ActionReport report = Report(new TowInput { Mode = TowMode.SlackFall }, 4, t => (new(0.3 * t, 0, -0.1 * t), Attitude.Of(10 * Math.PI / 180 * Math.Sin(2 * Math.PI * 3 * t), 0, 0), 0));
        Assert.Equal(3, report.Frequency, 0.02);
        Assert.Equal(10 * Math.PI / 180, report.YawAmplitude, 0.02 * 10 * Math.PI / 180);
        Assert.Equal(ActionVerdict.Flutters, report.Verdict);
    }
}
