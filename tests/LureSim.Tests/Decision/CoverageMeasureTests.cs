using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Stepping;

namespace LureSim.Tests.Decision;

public class CoverageMeasureTests
{
    private static Track Track(double[] depth, TrackState[] state, params TrackEvent[] events)
    {
        double[] zero = new double[depth.Length];
        return new Track
        {
            Status = SimulationStatus.Completed,
            Statistics = new SimulationStatistics(1, 0, 1, 0.1, 0),
            Time = [.. Enumerable.Range(0, depth.Length).Select(i => 0.5 * i)],
            X = zero,
            Y = [.. Enumerable.Range(0, depth.Length).Select(i => -0.1 * i)],
            Z = [.. depth.Select(d => -d)],
            VelocityX = zero,
            VelocityY = zero,
            VelocityZ = zero,
            SpeedThroughWater = zero,
            RodTension = zero,
            LureTension = zero,
            RodAngle = zero,
            LureAngle = zero,
            LineOut = zero,
            State = state,
            Events = events,
            Shapes = [],
        };
    }

    [Fact]
    public void Shares_are_of_the_retrieve_alone()
    {
        // Two samples of fall, then above, in, in, below on the bottom.
        Track track = Track(
            [0, 5, 1, 2, 3, 5],
            [TrackState.Falling, TrackState.Falling, TrackState.None, TrackState.InZone, TrackState.InGrass, TrackState.OnBottom],
            new TrackEvent(TrackEventKind.EntersZone, 0.3, 2, 10),
            new TrackEvent(TrackEventKind.BottomContact, 0.45, 5, 10),
            new TrackEvent(TrackEventKind.EntersZone, 1.2, 2, 9));
        Coverage coverage = CoverageMeasure.Of(track, new StrikeZone(2, 4));
        Assert.Equal(0.25, coverage.AboveShare, 12);
        Assert.Equal(0.5, coverage.ZoneShare, 12);
        Assert.Equal(0.25, coverage.BelowShare, 12);
        Assert.Equal(0.25, coverage.BottomShare, 12);
        Assert.Equal(0.25, coverage.GrassShare, 12);
        Assert.Equal(0.3, coverage.TimeToZone);
        Assert.Equal(0.45, coverage.TimeToBottom);
        Assert.Equal(2.5, coverage.MedianDepth, 12);
        Assert.Equal(5, coverage.DeepestDepth, 12);
        Assert.Equal(1.5, coverage.RetrieveTime, 12);
        Assert.Equal(0.5, coverage.DriftAcross, 12);
    }

    [Fact]
    public void A_track_that_only_falls_has_no_shares()
    {
        Coverage coverage = CoverageMeasure.Of(Track([0, 1], [TrackState.Falling, TrackState.Falling]), new StrikeZone(0.5, 2));
        Assert.Equal(0, coverage.ZoneShare);
        Assert.Null(coverage.TimeToZone);
    }

    [Theory]
    [InlineData(0.914, UnitSystem.Us)]
    [InlineData(5.4864, UnitSystem.Us)]
    [InlineData(0.2, UnitSystem.Metric)]
    [InlineData(60, UnitSystem.Metric)]
    public void Depth_rows_rise_in_round_steps_to_the_bottom(double depth, UnitSystem units)
    {
        IReadOnlyList<double> rows = new UnitFormat(units).LengthScale.Depths(depth);
        Assert.InRange(rows.Count, 2, 16);
        Assert.Equal(depth, rows[^1]);
        Assert.Equal(rows.Order(), rows);
        Assert.True(rows[0] > 0);
    }

    [Fact]
    public void Nearer_than_a_hook_is_contact_and_what_moves_in_contact_is_dragged()
    {
        // Depth of contact 4: 3.99 is above it, 4.01 and 5 touch; a lure that hangs about the limit has touched once.
        Track track = Track([4.01, 3.99, 4.01, 3, 5], [TrackState.None, TrackState.None, TrackState.None, TrackState.None, TrackState.OnBottom]);
        Coverage lying = CoverageMeasure.Of(track, new StrikeZone(2, 6), 4);
        Assert.Equal(0.6, lying.BottomShare, 12);
        Assert.Equal(2, lying.Touches);
        Assert.Equal(0, lying.DragShare);
        Assert.Equal(0.2, CoverageMeasure.Of(track, new StrikeZone(2, 6)).BottomShare, 12);
        Coverage dragged = CoverageMeasure.Of(track with { VelocityX = [0.5, 0.5, 0.5, 0.5, 0.5] }, new StrikeZone(2, 6), 4);
        Assert.Equal(0.6, dragged.DragShare, 12);
        Assert.Equal(0.5, dragged.DraggedLength, 12);
    }

    [Fact]
    public void What_stays_down_for_long_has_settled_and_what_hops_has_not()
    {
        // Samples half a second apart: down for 5 s at a stretch, and down for 2 s between hops.
        double time = ScoreWeights.Default.SettleTime;
        Assert.InRange(time, 2, 4);
        double[] lies = [.. Enumerable.Repeat(5.0, 11)], hops = [.. Enumerable.Range(0, 12).Select(i => i % 6 < 5 ? 5.0 : 3.0)];
        Coverage lying = CoverageMeasure.Of(Track(lies, new TrackState[11]), new StrikeZone(2, 6), 4);
        Assert.Equal((5 - time) / 0.5 / 11, lying.SettledShare, 12);
        Assert.Equal(0, CoverageMeasure.Of(Track(hops, new TrackState[12]), new StrikeZone(2, 6), 4).SettledShare);
    }

    [Fact]
    public void A_tap_is_felt_in_proportion_to_the_pull_up_to_the_one_that_is_needed()
    {
        double needed = ScoreWeights.Default.FeelTension;
        Track track = Track([1, 1, 1, 1], [TrackState.None, TrackState.None, TrackState.None, TrackState.None]);
        Assert.Equal(0, CoverageMeasure.Of(track, new StrikeZone(0.5, 2)).FeltShare);
        Assert.Equal((0.5 + 1 + 1 + 0) / 4, CoverageMeasure.Of(track with { RodTension = [needed / 2, needed, 9 * needed, 0] }, new StrikeZone(0.5, 2)).FeltShare, 12);
    }
}
