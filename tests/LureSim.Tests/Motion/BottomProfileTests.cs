using LureSim.Model;

namespace LureSim.Tests.Motion;

/// <summary>Depths of a bottom profile, and what it refuses.</summary>
public class BottomProfileTests
{
    private static readonly BottomProfile Ledge = new()
    {
        Points = [new(0, 1), new(10, 1.5), new(12, 4)],
        Stretches = [new(10, 30) { Bottom = BottomKind.Shell }, new(0, 10) { Bottom = BottomKind.Mud, GrassHeight = 0.3 }],
    };

    [Theory]
    [InlineData(-3, 1)]
    [InlineData(5, 1.25)]
    [InlineData(11, 2.75)]
    [InlineData(12.2, 4)]
    [InlineData(100, 4)]
    public void Between_points_the_bottom_is_straight_and_beyond_them_even(double distance, double depth) => Assert.Equal(depth, Ledge.DepthAt(distance), 1e-12);

    [Fact]
    public void A_corner_is_rounded_and_the_slope_is_the_derivative_of_the_depth()
    {
        // Mean of 1:20 and 5:4 at the corner; the depth there is off by an eighth of the change of slope times the length rounded over.
        Ledge.DepthAt(10, out double slope);
        Assert.Equal((0.05 + 1.25) / 2, slope, 1e-12);
        Assert.Equal(1.5 + ((1.25 - 0.05) * 2 * BottomProfile.RoundedOver / 8), Ledge.DepthAt(10), 1e-12);
        for (double at = -0.5; at < 13; at += 0.037)
        {
            double difference = (Ledge.DepthAt(at + 1e-6) - Ledge.DepthAt(at - 1e-6)) / 2e-6;
            Ledge.DepthAt(at, out double analytic);
            Assert.Equal(difference, analytic, 1e-5);
        }
    }

    [Fact]
    public void Stretches_are_found_in_order()
    {
        Assert.Equal([0.0, 10.0], Ledge.Stretches.Select(s => s.From));
        Assert.Equal(BottomKind.Mud, Ledge.StretchAt(9.99)!.Bottom);
        Assert.Equal(BottomKind.Shell, Ledge.StretchAt(10)!.Bottom);
        Assert.Null(Ledge.StretchAt(30));
        Assert.Equal((4.0, 1.0, false), (Ledge.Deepest, Ledge.Shallowest, Ledge.IsEven));
    }

    [Fact]
    public void Water_that_falls_leaves_the_least_that_a_spot_may_have()
    {
        BottomProfile low = Ledge.Deepened(-1.1);
        Assert.Equal([0.2, 0.4, 2.9], low.Points.Select(p => Math.Round(p.Depth, 12)));
        Assert.Equal(Ledge.Stretches, low.Stretches);
    }

    [Fact]
    public void Disorder_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new BottomProfile { Points = [] });
        Assert.Throws<ArgumentException>(() => new BottomProfile { Points = [new(1, 1), new(1, 2)] });
        Assert.Throws<ArgumentException>(() => Ledge with { Stretches = [new(0, 3), new(2.9, 4)] });
        Assert.Throws<ArgumentException>(() => Ledge with { Stretches = [new(3, 3)] });
    }
}
