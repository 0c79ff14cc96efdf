using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Validation.Swimming;

/// <summary>Balances, order of accuracy and convergence of whole runs.</summary>
public class BalanceTests
{
    private const string Area = "Action: balance";

    [Fact]
    public void Energy_and_quaternion_are_kept()
    {
        foreach ((string name, ActionBody body, TowInput tow) in Cases())
        {
            ActionTrace loose = Towing.Simulate(body, Knot.Loop(), tow);
            ActionTrace tight = Towing.Simulate(body, Knot.Loop(), tow, new() { Tolerance = 1e-8 });
            ValidationLog.AtMost(CheckClass.Identity, Area, $"{name}: energy not accounted for, default tolerance", "kinetic energy against work", 0.03, loose.Statistics.EnergyResidual);
            ValidationLog.AtMost(CheckClass.Identity, Area, $"{name}: energy not accounted for, tolerance 1e-8", "kinetic energy against work", 1e-6, tight.Statistics.EnergyResidual);
            ValidationLog.AtMost(CheckClass.Identity, Area, $"{name}: norm of the quaternion, tolerance 1e-8", "kinematics", 1e-7, tight.QuaternionDrift);
        }
    }

    [Fact]
    public void Dormand_Prince_is_of_fifth_order()
    {
        // A spinning top in empty space, steps fixed by the largest step: the error of the turn rates falls with the fifth power.
        ActionBody body = ActionBodies.Spheroid(0.04, 0.01, 1100) with { Inertia = new(1e-6, 1.6e-6, 2.2e-6) };
        var still = new TowInput { Mode = TowMode.Free };
        double[] Run(double h)
        {
            var equations = new TowedBodyEquations(body, Knot.Loop(), still, new() { Terms = ActionTerms.None });
            var stepper = new ExplicitRungeKutta(ExplicitTableau.DormandPrince, equations, 1e3);
            equations.Initial.AsSpan().CopyTo(stepper.State);
            BodyState.In(stepper.State).TurnRate = new(2, 0, 5);
            stepper.Start(0, h);
            while (stepper.Time < 1)
            {
                stepper.Step = h;
                Assert.True(stepper.Advance(1, h));
            }

            return [.. stepper.State];
        }

        double[] exact = Run(1.0 / 640), coarse = Run(1.0 / 20), fine = Run(1.0 / 40);
        double Error(double[] y)
        {
            Vector3d off = BodyState.Of(y).TurnRate - BodyState.Of(exact).TurnRate;
            return Math.Abs(off.Y) + Math.Abs(off.X);
        }

        ValidationLog.Between(CheckClass.Identity, Area, "order of the integrator", "Dormand & Prince 1980", 4.7, 5.6, Math.Log2(Error(coarse) / Error(fine)));
    }

    private static IEnumerable<(string Name, ActionBody Body, TowInput Tow)> Cases()
    {
        ActionBody soft = ActionBodies.Soft(length: 0.125, height: 0.0155, width: 0.0145, headMass: 0, density: 1040, hookMass: 1.2e-3, ballastDrop: 0.006);
        yield return ("paddle tail on a retrieve", ActionBodies.PaddleTail(), TowInput.Steady(0.4, 0.8));
        yield return ("spinning soft bait", soft with { Bend = new(0.35, 0.6) }, TowInput.Steady(0.9));
        yield return ("twitched soft bait", soft, TowInput.Twitching(0.2));
        yield return ("paddle tail on the fall", ActionBodies.PaddleTail(), TowInput.SlackFall());
    }
}
