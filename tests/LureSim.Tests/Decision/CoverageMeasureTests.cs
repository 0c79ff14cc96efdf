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
    public void Score_is_full_for_a_rig_that_is_always_in_the_zone_at_once_and_falls_with_grass_bottom_waiting_and_swing()
    {
        var spot = new Spot
        {
            Depth = 3,
            Salinity = 20,
            TemperatureCelsius = 20,
            Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
            Sky = new SkyByElevation(0.7),
            StrikeZone = new StrikeZone(1, 2),
            TargetFish = "red drum",
        };
        var best = new Coverage(1, 0, 0, 0, 0, 0, null, 1.5, 2, 30, 0);
        Assert.Equal(1, Ranking.Score(best, spot, 20), 12);
        Assert.True(Ranking.Score(best with { GrassShare = 0.3 }, spot, 20) < 0.71);
        Assert.True(Ranking.Score(best with { BottomShare = 0.3 }, spot, 20) < Ranking.Score(best, spot, 20));
        Assert.True(Ranking.Score(best with { TimeToZone = 20 }, spot, 20) < Ranking.Score(best with { TimeToZone = 5 }, spot, 20));
        Assert.Equal(0, Ranking.Score(best with { TimeToZone = null }, spot, 20));
        Assert.Equal(0.75, Ranking.Score(best with { DriftAcross = 20 }, spot, 20), 12);
        Assert.True(Ranking.Score(best with { DriftAcross = 10 }, spot, 20) < Ranking.Score(best with { DriftAcross = 5 }, spot, 20));
    }
}
