using LureSim.Stepping;

namespace LureSim.Tests.Stepping;

public class CubicStepTests
{
    // A ball thrown up at 5 m/s from 2 m, and a cubic: both are what a cubic polynomial can be.
    [Fact]
    public void A_throw_and_a_cubic_are_followed_exactly()
    {
        static double Height(double t) => 2 + (5 * t) - (0.5 * 9.8 * t * t);
        static double Rate(double t) => 5 - (9.8 * t);
        var thrown = new CubicStep(0.3, 0.4, Height(0.3), Rate(0.3), Height(0.7), Rate(0.7));
        var cubic = new CubicStep(1, 2, 1, 3, 27, 27);
        for (double u = 0; u <= 1; u += 0.125)
        {
            double t = 0.3 + (0.4 * u), s = 1 + (2 * u);
            Assert.Equal(Height(t), thrown.At(t, out double rate), 1e-14);
            Assert.Equal(Rate(t), rate, 1e-13);
            Assert.Equal(s * s * s, cubic.At(s, out rate), 1e-13);
            Assert.Equal(3 * s * s, rate, 1e-13);
        }
    }

    // Free fall from rest at 5 m: it passes 2 m after sqrt(2 x 3/g).
    [Fact]
    public void A_falling_stone_passes_a_level_when_the_closed_form_says()
    {
        const double g = 9.80665;
        var fall = new CubicStep(0, 1, 5, 0, 5 - (0.5 * g), -g);
        Assert.Equal(Math.Sqrt(6 / g), fall.Crossing(2, 0.5, 1), 1e-7);
    }

    [Fact]
    public void A_level_that_is_not_passed_gives_the_later_end()
    {
        var still = new CubicStep(0, 1, 3, 0, 3, 0);
        Assert.Equal(0.75, still.Crossing(2, 0.5, 0.75));
    }
}
