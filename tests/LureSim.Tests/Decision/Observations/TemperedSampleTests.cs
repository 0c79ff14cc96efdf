using LureSim.Decision.Observations;
using MathNet.Numerics.Statistics;

namespace LureSim.Tests.Decision.Observations;

public class TemperedSampleTests
{
    [Fact]
    public void The_effective_size_is_that_of_Kong()
    {
        Assert.Equal(4, EffectiveSize.Of([1, 1, 1, 1]), 1e-12);
        Assert.Equal(1, EffectiveSize.Of([0, 0, 3, 0]), 1e-12);
        Assert.Equal(0, EffectiveSize.Of([0, 0]));

        // Kong's n/(1 + cv^2) with the variance of the weights over their number.
        double[] weights = [0.2, 1.3, 0.7, 2.1, 0.4];
        double mean = weights.Mean(), cv2 = weights.PopulationVariance() / (mean * mean);
        Assert.Equal(weights.Length / (1 + cv2), EffectiveSize.Of(weights), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => EffectiveSize.Of([1, -1]));
    }

    [Fact]
    public void Resampling_takes_each_as_often_as_its_weight_says()
    {
        int[] picked = EffectiveSize.Resample([0.5, 0.25, 0.125, 0.125], 64, 0.4);
        Assert.Equal([32, 16, 8, 8], Enumerable.Range(0, 4).Select(i => picked.Count(p => p == i)));
    }

    // One number of which a noisy look is had: a standard normal before, after a look y of deviation s a normal of mean y/(1 + s^2) and variance s^2/(1 + s^2).
    [Theory]
    [InlineData(0.6, 1.5, false)]
    [InlineData(1.0, 0.5, true)]
    [InlineData(2.5, 0.1, true)]
    [InlineData(-3.0, 0.02, true)]
    public void A_Gaussian_number_comes_out_as_the_closed_form_has_it(double look, double deviation, bool collapses)
    {
        var sample = TemperedSample.Draw(3, z => -0.5 * (z[1] - look) * (z[1] - look) / (deviation * deviation), 1);
        double variance = deviation * deviation / (1 + (deviation * deviation)), mean = look / (1 + (deviation * deviation));
        double[] known = [.. sample.Points.Select(z => z[1])], free = [.. sample.Points.Select(z => z[0])];
        Assert.Equal(collapses, sample.Steps > 0);

        // 1024 states that hang together a little: a tenth of a standard deviation in the mean, 12 % of it in the width.
        Assert.Equal(mean, known.Mean(), 0.12 * Math.Sqrt(variance));
        Assert.InRange(known.StandardDeviation() / Math.Sqrt(variance), 0.88, 1.12);
        Assert.Equal(0, free.Mean(), 0.12);
        Assert.InRange(free.StandardDeviation(), 0.88, 1.12);

        // The mean likelihood is that of the look under what was known before: a normal of variance 1 + s^2, but for its constant.
        double evidence = -0.5 * ((look * look / (1 + (deviation * deviation))) + Math.Log((1 + (deviation * deviation)) / (deviation * deviation)));
        Assert.Equal(evidence, sample.LogEvidence, 0.35);
    }

    [Fact]
    public void What_did_not_happen_cuts_the_number_off()
    {
        // Above 1 and nothing else is known: the mean of a normal cut off at 1 is pdf(1)/(1 - cdf(1)) = 1.5251.
        var sample = TemperedSample.Draw(1, z => z[0] > 1 ? 0 : -1e6, 1);
        Assert.All(sample.Points, z => Assert.True(z[0] > 1));
        Assert.Equal(1.5251, sample.Points.Average(z => z[0]), 0.05);
    }

    [Fact]
    public void The_same_seed_gives_the_same_states()
    {
        static double Log(double[] z) => -8 * (z[0] + z[1] - 1) * (z[0] + z[1] - 1);
        Assert.Equal(TemperedSample.Draw(2, Log, 7).Points, TemperedSample.Draw(2, Log, 7).Points);
        Assert.NotEqual(TemperedSample.Draw(2, Log, 7).Points[3], TemperedSample.Draw(2, Log, 8).Points[3]);
    }
}
