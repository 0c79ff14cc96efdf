using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Tests.Decision;

/// <summary>The score against the formula of docs/decision.md, worked by hand factor by factor.</summary>
public class RankingTests
{
    private const double Cast = 20;

    private static readonly Coverage Best = new(1, 0, 0, 0, 0, 0, null, 1.5, 2, 30, 0);

    private static Spot Flat(double zoneBottom = 2, BottomKind bottom = BottomKind.Sand) => new()
    {
        Depth = 3,
        Salinity = 20,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.7),
        StrikeZone = new StrikeZone(1, zoneBottom),
        Bottom = bottom,
        TargetFish = "red drum",
    };

    // 1 - t / 90 s.
    [Theory]
    [InlineData(9, 0.9)]
    [InlineData(45, 0.5)]
    [InlineData(81, 0.1)]
    [InlineData(90, 0)]
    [InlineData(200, 0)]
    public void Waiting_costs_in_proportion_to_a_minute_and_a_half(double wait, double expected) =>
        Assert.Equal(expected, Ranking.Score(Best with { TimeToZone = wait }, Flat(), Cast), 12);

    // 1 - w b with half of the retrieve on the bottom: w is 0.5 above the bottom, 0.15 where the zone lies on it, 0.7 over shell whatever the zone.
    [Theory]
    [InlineData(2, BottomKind.Sand, 0.75)]
    [InlineData(2.85, BottomKind.Sand, 0.75)]
    [InlineData(2.95, BottomKind.Sand, 0.925)]
    [InlineData(3, BottomKind.Mud, 0.925)]
    [InlineData(3, BottomKind.Shell, 0.65)]
    public void The_bottom_costs_by_what_it_is_and_where_the_zone_lies(double zoneBottom, BottomKind bottom, double expected) =>
        Assert.Equal(expected, Ranking.Score(Best with { BottomShare = 0.5 }, Flat(zoneBottom, bottom), Cast), 12);

    [Fact]
    public void Factors_multiply()
    {
        // 0.8 (1 - 0.25) (1 - 0.5 x 0.4) (1 - 18/90) (1 - 0.25 x 5/20).
        Coverage coverage = Best with { ZoneShare = 0.8, GrassShare = 0.25, BottomShare = 0.4, TimeToZone = 18, DriftAcross = 5 };
        Assert.Equal(0.8 * 0.75 * 0.8 * 0.8 * 0.9375, Ranking.Score(coverage, Flat(), Cast), 12);
        Assert.Equal(0.75, Ranking.Score(Best with { DriftAcross = 90 }, Flat(), Cast), 12);
    }
}
