using LureSim.Decision.Observations;
using LureSim.Model;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision.Observations;

public class PoolFallTests
{
    private static readonly Scenario Whole = TestScenario.Read(TestScenario.Text);

    private static Observation Timing(double seconds, double factorOfMass = 1) => new()
    {
        Kind = ObservationKind.PoolFall,
        Value = seconds,
        Length = 1.8,
        Head = Whole.Tackle.JigHeads[1] with { Mass = Whole.Tackle.JigHeads[1].Mass * factorOfMass },
        Body = Whole.Tackle.Bodies[0],
        Date = new DateOnly(2026, 6, 14),
    };

    [Theory]
    [InlineData(2, 0.9, 5)]
    [InlineData(0.3, 1.4, 4)]
    [InlineData(12, 0.4, 6)]
    public void The_closed_form_is_that_of_an_integrated_fall(double depth, double terminal, double acceleration)
    {
        // dv/dt = a (1 - (v/V)^2), stepped through by a general-purpose solver until the depth is reached.
        MathNet.Numerics.LinearAlgebra.Vector<double>[] path = MathNet.Numerics.OdeSolvers.RungeKutta.FourthOrder(
            MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense([0.0, 0.0]), 0, 60, 60001,
            (_, state) => MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense([state[1], acceleration * (1 - (state[1] * state[1] / (terminal * terminal)))]));
        int at = Array.FindIndex(path, state => state[0] >= depth);
        Assert.Equal(at * 1e-3, PoolFall.Seconds(depth, terminal, acceleration), 2e-3);
    }

    [Fact]
    public void A_factor_is_found_again_from_the_time_that_it_makes()
    {
        foreach (double factor in (double[])[0.4, 1, 1.7])
            Assert.Equal(factor, PoolFall.Factor(Whole.Tackle, Timing(PoolFall.Seconds(Whole.Tackle, Timing(1), factor)))!.Value, 1e-6);
        Assert.Null(PoolFall.Factor(Whole.Tackle, Timing(0.2)));
        Assert.Null(PoolFall.Factor(Whole.Tackle, Timing(300)));
    }

    [Fact]
    public void Several_timings_combine_as_independent_measurements_do()
    {
        double truth = PoolFall.Seconds(Whole.Tackle, Timing(1), 1.3);
        DragCalibration one = DragCalibration.Of(Whole.Tackle, [Timing(truth)])[0], four = DragCalibration.Of(Whole.Tackle, [Timing(truth), Timing(truth), Timing(truth), Timing(truth)])[0];
        Assert.Equal(1.3, one.Drag.Factor, 1e-4);
        Assert.Equal(1.3, four.Drag.Factor, 1e-4);

        // Standard errors go as one over the root of the number.
        Assert.Equal(2, Math.Log(one.High / one.Low) / Math.Log(four.High / four.Low), 1e-6);
        Assert.Equal(new DateOnly(2026, 6, 14), four.Drag.Date);
        Assert.Equal(1, four.Scatter);
    }

    [Fact]
    public void Timings_that_scatter_more_than_their_errors_widen_the_margin()
    {
        double truth = PoolFall.Seconds(Whole.Tackle, Timing(1), 1.3);
        DragCalibration tight = DragCalibration.Of(Whole.Tackle, [Timing(truth), Timing(truth)])[0], loose = DragCalibration.Of(Whole.Tackle, [Timing(truth - 0.9), Timing(truth + 0.9)])[0];
        Assert.True(loose.Scatter > 2);
        Assert.True(loose.Drag.Margin > 2 * tight.Drag.Margin);
        DragCalibration odd = DragCalibration.Of(Whole.Tackle, [Timing(truth), Timing(truth), Timing(truth), Timing(truth + 1.6)])[0];
        Assert.Single(odd.Odd);
        Assert.Single(DragCalibration.Of(Whole.Tackle, [Timing(truth), Timing(300)])[0].Impossible);
        Assert.Empty(DragCalibration.Of(Whole.Tackle, [Timing(300)]));
    }

    [Fact]
    public void A_bait_with_a_drag_of_its_own_falls_by_it()
    {
        LureBody body = Whole.Tackle.Bodies[0];
        Spot spot = Whole.Spot;
        double common = LureSim.Coupling.ActingLures.Of(Whole.Tackle, spot, Whole.Tackle.JigHeads[1], body).DragAreaTimesSpeed(0.6, 1e-6, out _);
        double own = LureSim.Coupling.ActingLures.Of(Whole.Tackle, spot, Whole.Tackle.JigHeads[1], body with { Drag = new MeasuredDrag(1.4, 0.1) }).DragAreaTimesSpeed(0.6, 1e-6, out _);
        Assert.Equal(1.4, own / common, 1e-9);
    }
}
