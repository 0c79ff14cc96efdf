using LureSim.Decision.Observations;

namespace LureSim.Tests.Decision.Observations;

public class ResponseSurfaceTests
{
    [Fact]
    public void A_surface_of_second_order_is_found_again()
    {
        static double Truth(double[] z) => 3 + (0.7 * z[0]) - (0.2 * z[1]) + (0.1 * z[2]) + (0.3 * z[0] * z[1]) - (0.15 * z[1] * z[1]);
        double[][] points = TemperedSample.Before(3, 5, 60);
        var surface = ResponseSurface.Fit(points, [.. points.Select(Truth)], [.. points.Select(_ => 1.0)], 2);
        foreach (double[] point in TemperedSample.Before(3, 9, 20)) Assert.Equal(Truth(point), surface.At(point), 0.02);
        Assert.Equal(0.7, surface.Slope(0), 0.01);
        Assert.InRange(surface.Scatter, 0, 0.02);
        Assert.Equal(7, ResponseSurface.Terms(3, 2));
    }

    [Fact]
    public void What_it_cannot_follow_counts_as_scatter()
    {
        double[][] points = TemperedSample.Before(2, 5, 400);
        var random = new Random(3);
        double[] noisy = [.. points.Select(z => z[0] + (random.NextDouble() < 0.5 ? -0.4 : 0.4))];
        var surface = ResponseSurface.Fit(points, noisy, [.. points.Select(_ => 1.0)], 1);
        Assert.Equal(0.4, surface.Scatter, 0.03);
    }
}
