using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Hydrodynamics;
using LureSim.Model;
using LureSim.Tests.Report;

namespace LureSim.Tests.Decision.Uncertainty;

public class SpreadDriversTests
{
    private static readonly Scenario Bridge = Samples.Bridge();
    private static readonly IReadOnlyList<UncertainDraw> Draws = UncertainDraw.Draw(Bridge, Bridge.Presentations[0], 60);

    [Fact]
    public void A_figure_that_hangs_on_one_input_alone_names_it()
    {
        SpreadDrivers found = SpreadDrivers.Of(Draws, [.. Draws.Select(d => -Math.Exp(3 * d.Values[(int)UncertainInput.Current]))]);
        Assert.Equal(UncertainInput.Current, found.Decisive!.Input);
        Assert.Equal(-1, found.Decisive.RankCorrelation, 1e-9);
        Assert.Equal(-1, found.Decisive.Coefficient, 1e-9);
        Assert.Equal(1, found.Explained, 1e-9);
        Assert.All(found.Drivers.Skip(1), d => Assert.Equal(0, d.Coefficient, 1e-9));
    }

    [Fact]
    public void Two_independent_inputs_share_the_spread_by_their_squares()
    {
        // Linear in two uniform ranks with weights 2 and 1: squares of the coefficients about 0.8 and 0.2.
        double[] current = Ranks(UncertainInput.Current), depth = Ranks(UncertainInput.Depth);
        SpreadDrivers found = SpreadDrivers.Of(Draws, [.. current.Zip(depth, (c, d) => (2 * c) + d)]);
        Assert.Equal(UncertainInput.Current, found.Drivers[0].Input);
        Assert.Equal(Math.Sqrt(0.8), found.Drivers[0].Coefficient, 0.08);
        Assert.Equal(Math.Sqrt(0.2), found.Drivers.Single(d => d.Input == UncertainInput.Depth).Coefficient, 0.08);
        Assert.True(found.Explained > 0.9);
    }

    [Fact]
    public void Never_may_be_among_the_values_and_a_constant_has_no_driver()
    {
        SpreadDrivers late = SpreadDrivers.Of(Draws, [.. Draws.Select(d => d.Values[0] > Draws.Select(x => x.Values[0]).Max() * 0.8 ? double.PositiveInfinity : d.Values[0])]);
        Assert.Equal(UncertainInput.Current, late.Decisive!.Input);
        Assert.All(late.Drivers, d => Assert.True(double.IsFinite(d.Coefficient)));
        SpreadDrivers constant = SpreadDrivers.Of(Draws, [.. Draws.Select(_ => 0.4)]);
        Assert.Null(constant.Decisive);
        Assert.Equal(0, constant.Explained);
    }

    [Fact]
    public void Chance_passes_the_noise_in_about_one_study_of_twenty()
    {
        // The figure is noise that no input knows: how often does the strongest input look decisive?
        int alarms = 0;
        const int Trials = 400;
        for (int t = 0; t < Trials; t++)
        {
            double[,] noise = LatinHypercube.Draw(Draws.Count, 1, 1000 + t);
            alarms += SpreadDrivers.Of(Draws, [.. Enumerable.Range(0, Draws.Count).Select(i => noise[i, 0])]).Decisive is null ? 0 : 1;
        }

        Assert.InRange(alarms / (double)Trials, 0.01, 0.09);
    }

    [Fact]
    public void The_noise_of_60_draws_is_that_of_the_normal_table()
    {
        // The inputs drawn are as many as have a driver; two-sided 5 % shared among them, from a table of the normal distribution: 8 inputs, 0.3125 % in each tail, z = 2.734; 9: 2.773; 10: 2.807.
        SpreadDrivers found = SpreadDrivers.Of(Draws, [.. Draws.Select(d => d.Values[0])]);
        double z = found.Drivers.Count switch { 4 => 2.498, 5 => 2.576, 6 => 2.638, 7 => 2.690, 8 => 2.734, 9 => 2.773, 10 => 2.807, int n => throw new InvalidOperationException($"No row for {n}.") };
        Assert.Equal(z / Math.Sqrt(59), found.Noise, 1e-4);

        // Of three draws, and where nothing was drawn, no correlation stands out.
        Assert.Equal(1, SpreadDrivers.Of([.. Draws.Take(3)], [1, 2, 3]).Noise);
        Assert.Equal(1, SpreadDrivers.Of([Draws[0], Draws[0], Draws[0], Draws[0]], [1, 2, 3, 4]).Noise);
    }

    [Fact]
    public void Intervals_take_values_that_were_drawn()
    {
        Interval ten = Interval.Of(Enumerable.Range(1, 10).Select(i => (double)i));
        Assert.Equal(new Interval(1, 5, 9, 5.5), ten);
        Interval never = Interval.Of([3, double.PositiveInfinity, double.PositiveInfinity]);
        Assert.Equal(3, never.Low);
        Assert.Equal(double.PositiveInfinity, never.Median);
        Assert.Throws<ArgumentException>(() => Interval.Of([]));
        Assert.Throws<ArgumentException>(() => Interval.Of([1, double.NaN]));
    }

    [Fact]
    public void A_scaled_drag_law_scales_both_forces_and_their_slopes()
    {
        LineDragLaw law = LineDragLaw.ChooCasarella, more = law.Scaled(1.3);
        law.Evaluate(120, out double n, out double dn, out double t, out double dt);
        more.Evaluate(120, out double n2, out double dn2, out double t2, out double dt2);
        Assert.Equal(1.3, n2 / n, 1e-12);
        Assert.Equal(1.3, dn2 / dn, 1e-10);
        Assert.Equal(1.3, t2 / t, 1e-12);
        Assert.Equal(1.3, dt2 / dt, 1e-10);
        Assert.Same(law, law.Scaled(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => law.Scaled(double.NaN));
    }

    private static double[] Ranks(UncertainInput input) => MathNet.Numerics.Statistics.ArrayStatistics.RanksInplace([.. Draws.Select(d => d.Values[(int)input])]);
}
