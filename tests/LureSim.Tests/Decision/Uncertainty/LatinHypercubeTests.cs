using CsCheck;
using LureSim.Decision.Trials;
using LureSim.Model;
using MathNet.Numerics.Statistics;

namespace LureSim.Tests.Decision.Uncertainty;

public class LatinHypercubeTests
{
    [Fact]
    public void Every_slice_of_every_input_holds_one_point() =>
        Gen.Select(Gen.Int[1, 60], Gen.Int[1, 9], Gen.Int[0, 1_000_000]).HoldsFor((samples, dimensions, seed) =>
        {
            double[,] points = LatinHypercube.Draw(samples, dimensions, seed);
            for (int d = 0; d < dimensions; d++)
                Assert.Equal(Enumerable.Range(0, samples), Enumerable.Range(0, samples).Select(i => (int)(points[i, d] * samples)).Order());
        });

    [Fact]
    public void The_seed_decides_and_a_further_input_leaves_the_others_alone()
    {
        double[,] once = LatinHypercube.Draw(24, 3, 7);
        Assert.Equal(once, LatinHypercube.Draw(24, 3, 7));
        Assert.NotEqual(once, LatinHypercube.Draw(24, 3, 8));
        double[,] wider = LatinHypercube.Draw(24, 5, 7);
        for (int i = 0; i < 24; i++)
        {
            for (int d = 0; d < 3; d++) Assert.Equal(once[i, d], wider[i, d]);
        }
    }

    [Fact]
    public void Inputs_are_paired_at_random()
    {
        // Of 200 hypercubes of 30 points the rank correlation of two inputs has mean 0 and variance 1/29, within four standard errors.
        double[] correlations = [.. Enumerable.Range(0, 200).Select(seed =>
        {
            double[,] p = LatinHypercube.Draw(30, 2, seed);
            return Correlation.Spearman(Enumerable.Range(0, 30).Select(i => p[i, 0]), Enumerable.Range(0, 30).Select(i => p[i, 1]));
        })];
        double variance = 1.0 / 29;
        Assert.InRange(correlations.Mean(), -4 * Math.Sqrt(variance / 200), 4 * Math.Sqrt(variance / 200));
        Assert.InRange(correlations.Select(r => r * r).Mean(), variance * (1 - (4 * Math.Sqrt(2.0 / 200))), variance * (1 + (4 * Math.Sqrt(2.0 / 200))));
    }

    [Fact]
    public void The_mean_of_a_smooth_function_is_far_closer_than_by_plain_draws()
    {
        // x^2 over 0 to 1 has mean 1/3; the error of stratified points is of order n^-1.5, that of plain ones 0.3/sqrt(n).
        double[,] points = LatinHypercube.Draw(100, 1, 3);
        double mean = Enumerable.Range(0, 100).Average(i => points[i, 0] * points[i, 0]);
        Assert.Equal(1.0 / 3, mean, 3e-3);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    public void Nothing_to_draw_is_refused(int samples, int dimensions) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LatinHypercube.Draw(samples, dimensions, 1));
}

public class SpreadTests
{
    [Fact]
    public void Nine_draws_in_ten_lie_within_plus_or_minus()
    {
        Spread share = Spread.OfShare(0.2);
        Assert.Equal(0.8 * 0.5, share.At(0.05, 0.5), 1e-9);
        Assert.Equal(0.5, share.At(0.5, 0.5), 1e-12);
        Assert.Equal(1.2 * 0.5, share.At(0.95, 0.5), 1e-9);
        Assert.Equal(2.0 + 0.3, Spread.OfAmount(0.3).At(0.95, 2), 1e-9);
        Assert.Equal(2.0 + 0.6, Spread.OfAmount(0.3).At(1 - 1e-12, 2), 1e-12);
    }

    [Fact]
    public void Bands_and_triangles_have_their_closed_forms()
    {
        Assert.Equal(1.25, Spread.OfBand(1, 2).At(0.25, 99), 1e-12);
        // F(x) = (x - a)^2/((b - a)(c - a)) below the mode.
        Assert.Equal(Math.Sqrt(0.25 * 4 * 1), Spread.OfTriangle(0, 1, 4).At(0.25, 99), 1e-12);
        Assert.Equal(4 - Math.Sqrt(0.5 * 4 * 3), Spread.OfTriangle(0, 1, 4).At(0.5, 99), 1e-12);
        Assert.Equal(3, Spread.OfTriangle(3, 3, 3).At(0.5, 99));
    }

    [Fact]
    public void Exact_is_exact()
    {
        Assert.True(Spread.OfShare(0).IsExact);
        Assert.True(Spread.OfAmount(0).IsExact);
        Assert.False(Spread.OfBand(1, 1).IsExact);
        Assert.Equal(0.7, Spread.Exact.At(0.9, 0.7));
        Assert.True(ScenarioUncertainty.None.IsExactInMotion);
        Assert.False(ScenarioUncertainty.Assumed.IsExactInMotion);
    }

    [Fact]
    public void Draws_are_finite_and_rise_with_the_quantile() =>
        Gen.Select(Gen.Double[1e-9, 1 - 1e-9], Gen.Double[1e-9, 1 - 1e-9], Gen.Double[0, 3], Gen.Int[0, 3]).HoldsFor((a, b, nominal, form) =>
        {
            Spread spread = form switch
            {
                0 => Spread.OfShare(0.3),
                1 => Spread.OfAmount(0.2),
                2 => Spread.OfBand(0.1, 0.9),
                _ => Spread.OfTriangle(0.1, 0.3, 0.9),
            };
            double low = spread.At(Math.Min(a, b), nominal), high = spread.At(Math.Max(a, b), nominal);
            Assert.True(double.IsFinite(low) && low <= high + 1e-12);
        });
}
