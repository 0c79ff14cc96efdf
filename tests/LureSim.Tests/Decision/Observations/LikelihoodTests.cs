using LureSim.Decision.Observations;
using LureSim.Model;
using MathNet.Numerics.Distributions;

namespace LureSim.Tests.Decision.Observations;

public class LikelihoodTests
{
    private static Observation Fall(double seconds, bool happened = true) => new() { Kind = ObservationKind.BottomTime, Value = seconds, Happened = happened };

    [Theory]
    [InlineData(9, 9.0, 0.5)]
    [InlineData(9, 9.7, 0.5)]
    [InlineData(9, 7.2, 0.9)]
    public void What_happened_is_a_Gaussian_about_the_prediction(double seen, double predicted, double deviation)
    {
        // Against the density of a general-purpose library, but for the constant.
        double expected = Normal.PDFLn(predicted, deviation, seen) - Normal.PDFLn(predicted, deviation, predicted);
        Assert.Equal(expected, Likelihood.Log(Fall(seen), predicted, deviation), 1e-12);
    }

    [Theory]
    [InlineData(20, 25, 2)]
    [InlineData(20, 20, 2)]
    [InlineData(20, 17, 2)]
    public void What_did_not_happen_is_the_chance_that_it_comes_later(double until, double predicted, double deviation)
    {
        double later = 1 - Normal.CDF(predicted, deviation, until);
        Assert.Equal(Math.Log(later), Likelihood.Log(Fall(until, happened: false), predicted, deviation), 1e-9);
    }

    [Fact]
    public void Never_is_certain_not_to_have_happened_and_all_but_impossible_to_have()
    {
        Assert.Equal(0, Likelihood.Log(Fall(20, happened: false), double.PositiveInfinity, 1), 1e-12);
        Assert.Equal(-32, Likelihood.Log(Fall(20), double.PositiveInfinity, 1), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Likelihood.Log(Fall(20), double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Likelihood.Log(Fall(20), 3, 0));
    }

    [Fact]
    public void The_first_count_that_ticks_stands_for_the_second_before_it()
    {
        var first = new Observation { Kind = ObservationKind.FirstTick, Value = 7 };
        Assert.True(Likelihood.Log(first, 6.5, 0.5) > Likelihood.Log(first, 7, 0.5));
        Assert.Equal(Likelihood.Log(first, 6, 0.5), Likelihood.Log(first, 7, 0.5), 1e-12);
    }

    [Fact]
    public void Errors_are_those_of_the_observer_where_stated_and_of_the_kind_otherwise()
    {
        // A watch is off by a reaction; a count by a reaction, a tenth of pace and the rounding to whole counts.
        Assert.Equal(0.3, ObservationErrors.Of(Fall(9)), 1e-12);
        Assert.Equal(Math.Sqrt(0.09 + 0.81 + (1.0 / 12)), ObservationErrors.Of(Fall(9) with { Counted = true }), 1e-12);
        Assert.Equal(1.5, ObservationErrors.Of(Fall(9) with { Error = 1.5 }), 1e-12);
        foreach (ObservationKind kind in Enum.GetValues<ObservationKind>())
            Assert.InRange(ObservationErrors.Of(new Observation { Kind = kind, Value = 1, Length = 2 }), 1e-3, 1e3);
    }
}
