using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;

namespace LureSim.Tests.Decision;

public class WaterMapTests
{
    private static Spot Flat(double depth, bool moves) => new()
    {
        Depth = depth,
        Salinity = 20,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.7),
        StrikeZone = new StrikeZone(1, 2) { MovesWithBottom = moves },
        TargetFish = "red drum",
    };

    // 0.45 m above the bottom in 4 m of water: where depths are counted from the bottom it is drawn at 2.55 m of 3 m, in row 25 of 30; else below the map, in its last row.
    [Theory]
    [InlineData(true, 25)]
    [InlineData(false, 29)]
    public void Depths_count_from_the_bottom_where_the_zone_does(bool moves, int row)
    {
        double[] zero = [0, 0, 0];
        var track = new Track
        {
            Status = SimulationStatus.Completed,
            Statistics = new SimulationStatistics(1, 0, 1, 0.1, 0),
            Time = [0, 1, 2],
            X = zero,
            Y = zero,
            Z = [-3.55, -3.55, -3.55],
            VelocityX = zero,
            VelocityY = zero,
            VelocityZ = zero,
            SpeedThroughWater = zero,
            RodTension = zero,
            LureTension = zero,
            RodAngle = zero,
            LureAngle = zero,
            LineOut = zero,
            State = [TrackState.Falling, TrackState.None, TrackState.None],
            Events = [],
            Shapes = [],
        };
        var presentation = new Presentation { Name = "steady", CastLength = 12, CountDown = 3, RetrieveSpeed = 0.4, Moves = Move.StopAndGo(1.2, 2.5, 2, 0.3) };
        IReadOnlyList<double> byDepth = WaterMap.Of(track, Flat(4, moves), Flat(3, moves), presentation, 10).ByDepth;
        Assert.Equal(1, byDepth[row], 12);
        Assert.Equal(1, byDepth.Sum(), 12);
    }
}
