using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;
using LureSim.Tackle;
using LureSim.Tests.Scenarios;
using LureSim.Water;

namespace LureSim.Tests.Motion;

/// <summary>Whole casts with the moves of the trade.</summary>
public class RetrieveMovesTests
{
    private static readonly Scenario Base = TestScenario.Read(TestScenario.Text);

    private static Track Run(
        string presentation, string current = "{speed: 1 kn, direction: left, profile: log}", string wind = "{speed: 0 kn, direction: left}", string depth = "12 ft")
    {
        string text = TestScenario.With("current: {speed: 1 kn, direction: left, profile: log}", "current: " + current)
            .Replace("depth: 12 ft", "depth: " + depth, StringComparison.Ordinal)
            .Replace("wind: {speed: 8 kn, direction: 225 deg}", "wind: " + wind, StringComparison.Ordinal);
        text = text[..text.IndexOf("presentations:", StringComparison.Ordinal)] + "presentations:\n  - name: test\n" + presentation;
        Scenario scenario = TestScenario.Read(text);
        Presentation p = scenario.Presentations[0];
        return Retrieve.Simulate(
            WaterColumn.Of(scenario.Spot.SeenAlong(p.Aim)),
            TackleBuilder.Lure(scenario.Tackle.JigHeads[1], scenario.Tackle.Bodies[0]),
            TackleBuilder.Line(scenario.Tackle),
            scenario.Tackle.RodTipHeight,
            p,
            scenario.Spot.StrikeZone);
    }

    // The speed of the tip by hand: 30 cm in 0.45 s are 0.667 m/s, so that 60 cm take 0.9 s. A centimetre would take 0.015 s, shorter than a rod tip can travel, and
    // 5 m at a centimetre a minute longer than a cast.
    [Theory]
    [InlineData(MoveKind.Lift, 0.3, 0.45, 0.6, 0.9)]
    [InlineData(MoveKind.Lift, 0.3, 0.45, 0.01, 0.02)]
    [InlineData(MoveKind.Lower, -0.3, 0.45, -0.6, 0.9)]
    [InlineData(MoveKind.Lift, 0.01, 60, 5, 3600)]
    [InlineData(MoveKind.Twitch, 0.3, 0.45, 0.6, 0.45)]
    public void A_lift_of_another_height_keeps_the_speed_of_the_tip(MoveKind kind, double up, double seconds, double other, double wanted)
    {
        Move lifted = new Move { Kind = kind, Up = up, Duration = seconds, Beats = kind == MoveKind.Twitch ? 1 : 0 }.Lifted(other);
        Assert.Equal(other, lifted.Up);
        Assert.Equal(wanted, lifted.Duration, 12);
    }

    [Theory]
    [InlineData("right", 90)]
    [InlineData("315 deg", 45)]
    [InlineData("away", 0)]
    public void A_swing_ends_below_the_rod(string aim, double degreesUp)
    {
        // Deep enough that a cast up the current has not sunk to the bottom before its line is tight.
        Track track = Run($"    cast: 12 m\n    aim: {aim}\n    style: swing\n", depth: "40 m");
        Assert.Equal(SimulationStatus.Completed, track.Status);
        TrackEvent end = Assert.Single(track.Events, e => e.Kind == TrackEventKind.SwingEnds);
        Assert.InRange(end.Time, 10, 90);

        // The event lies where the lure is.
        int nearest = Enumerable.Range(0, track.Count).MinBy(i => Math.Abs(track.Time[i] - end.Time));
        Assert.Equal(track.Depth(nearest), end.Depth, 0.1);

        // Down the current, which comes from the right of the reference direction, at last.
        double angle = Math.Atan2(track.Y[^1], track.X[^1]) * 180 / Math.PI;
        Assert.InRange(Math.IEEERemainder(angle - 90 - degreesUp, 360), -31, 31);
        Assert.Equal(12, track.X[0], 1e-9);
        Assert.All(track.LineOut, length => Assert.Equal(track.LineOut[0], length, 1e-9));
    }

    [Fact]
    public void What_follows_a_swing_begins_when_it_ends()
    {
        Track track = Run("    cast: 12 m\n    fall: tight line\n    count_down: 0 s\n    moves:\n      - swing: 90 s\n      - reel: {speed: 0.8 m/s}\n");
        double swung = Assert.Single(track.Events, e => e.Kind == TrackEventKind.SwingEnds).Time;
        TrackEvent lineIn = Assert.Single(track.Events, e => e.Kind == TrackEventKind.LineIn);
        Assert.Equal(swung + ((track.LineOut[0] - 3) / 0.8) + 0.25, lineIn.Time, 0.01);
    }

    [Fact]
    public void The_current_as_the_cast_meets_it_depends_on_the_aim_alone()
    {
        // Across a current to the left, or across one that flows away with a cast to the right: the same water.
        string rest = "    fall: tight line\n    count_down: 3 s\n    retrieve: {speed: 0.6 m/s}\n";
        Track across = Run("    cast: 12 m\n" + rest);
        Track aimed = Run("    cast: 12 m\n    aim: right\n" + rest, "{speed: 1 kn, direction: away, profile: log}");
        Assert.Equal(across.Count, aimed.Count);
        Assert.Equal(across.Z[^1], aimed.Z[^1], 1e-6);
        Assert.Equal(across.Y[^1], aimed.Y[^1], 1e-6);
    }

    [Fact]
    public void Drifting_with_a_uniform_current_is_still_water()
    {
        string rest = "    cast: 12 m\n    count_down: 3 s\n    retrieve: {speed: 0.6 m/s}\n";
        Track still = Run(rest, "{speed: 0 kn, direction: left}");
        Track drift = Run(rest + "    drift: {speed: 0.2 m/s, direction: left}\n", "{speed: 0.2 m/s, direction: left, profile: uniform}", "{speed: 0.2 m/s, direction: left}");
        Assert.Equal(SimulationStatus.Completed, drift.Status);

        // The end may fall on either side of a sample.
        Assert.InRange(drift.Count, still.Count - 1, still.Count + 1);
        for (int i = 0; i < Math.Min(still.Count, drift.Count); i += 20)
        {
            // The lure starts at rest over the ground, which the drifting rod sees as 0.2 m/s to the right: the two come together as it falls.
            Assert.Equal(still.Z[i], drift.Z[i], 0.03);
            Assert.Equal(still.X[i], drift.X[i], 0.08);
        }

        Assert.Equal(0.2 * drift.Time[^1], drift.Y[^1], 0.25);
    }

    [Fact]
    public void Wind_carries_the_line_in_the_air_and_the_lure_with_it()
    {
        string rest = "    cast: 15 m\n    count_down: 3 s\n    retrieve: {speed: 0.5 m/s}\n";
        Track calm = Run(rest, "{speed: 0 kn, direction: left}");
        Track windy = Run(rest, "{speed: 0 kn, direction: left}", "{speed: 20 kn, direction: left}");
        Assert.InRange(calm.Y.Max(Math.Abs), 0, 1e-6);
        Assert.True(windy.Y.Max() > 0.1);
        Assert.True(windy.Y.Min() > -0.05);
    }

    [Fact]
    public void Line_ends_at_the_capacity_of_the_reel()
    {
        Presentation presentation = Base.Presentations[0] with { CastLength = 12, CountDown = null };
        Track track = Retrieve.Simulate(
            WaterColumn.Of(Base.Spot with { Depth = 40, CurrentSpeed = 1 }), TackleBuilder.Lure(Base.Tackle.JigHeads[1], Base.Tackle.Bodies[0]), TackleBuilder.Line(Base.Tackle),
            Base.Tackle.RodTipHeight, presentation, Base.Spot.StrikeZone, new SimulationOptions { LineCapacity = 20 });
        Assert.Equal(SimulationStatus.Completed, track.Status);
        Assert.InRange(track.LineOut.Max(), 19.5, 20.3);
    }

    [Theory]
    [InlineData("steady", 0.25)]
    [InlineData("slow roll", 0.25)]
    [InlineData("burn", 0)]
    [InlineData("stop and go", 1)]
    [InlineData("twitch, twitch, pause", 1)]
    [InlineData("lift and drop", 1)]
    [InlineData("controlled fall", 1)]
    [InlineData("slow lift", 1)]
    public void Every_style_brings_the_line_in(string style, double countDown)
    {
        Track track = Run(FormattableString.Invariant($"    cast: 12 m\n    count_down: {countDown} s\n    style: \"{style}\"\n"));
        Assert.Equal(SimulationStatus.Completed, track.Status);
        Assert.Contains(track.Events, e => e.Kind == TrackEventKind.LineIn);
        Assert.All(track.Z, z => Assert.True(double.IsFinite(z)));
    }
}
