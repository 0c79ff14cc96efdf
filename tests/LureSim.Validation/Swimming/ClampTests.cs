using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Validation.Swimming;

/// <summary>Moment of a snug knot against a bent rod integrated by its own equation, and side force of a turned head against the momentum it gives to the water.</summary>
public class ClampTests
{
    private const string Area = "Action: knot and head";

    [Fact]
    public void A_snug_knot_holds_the_leader_like_a_clamped_rod()
    {
        // Leader 0.6 mm fluorocarbon: E I = E pi d^4/64.
        var knot = new Knot { Kind = KnotKind.Snug, LeaderDiameter = 0.6e-3, LeaderModulus = 2e9 };
        double stiffness = 2e9 * Math.PI / 64 * Math.Pow(0.6e-3, 4);
        var rows = new List<(double, double)>();
        foreach (double angle in new[] { 0.05, 0.5, 1.0, 2.0 })
        {
            foreach (double tension in new[] { 2.0, 20.0 }) rows.Add((Elastica(stiffness, tension, angle), -Clamp(knot, tension, angle).Moment.Y));
        }

        // 1 mN of slack tension is added by the model: 0.03 % at 2 N.
        ValidationLog.WorstRelative(CheckClass.SameEquations, Area, "snug knot: moment at angles to 115 degrees", "rod under end tension, E I theta'' = T sin theta integrated apart (Love 1927, art. 262)", rows, 4e-4, "N m");

        // Small angles: an Euler-Bernoulli cantilever under tension, E I y'''' = T y'': the moment at the clamp is sqrt(E I T) per radian.
        ValidationLog.Relative(
            CheckClass.SameEquations, Area, "snug knot: moment per radian at 0.01 radians and 20 N", "Euler-Bernoulli cantilever under tension, sqrt(E I T)", Math.Sqrt(stiffness * 20), -Clamp(knot, 20, 0.01).Moment.Y / 0.01, 1e-4, "N m");
    }

    [Fact]
    public void A_turned_head_is_pushed_by_the_momentum_that_it_gives_to_the_water()
    {
        // Slender cone at an angle to its way: each slice of it gives the water its cross speed, d/dx (rho A w) U cos a, on the side away from which it points (Munk 1924).
        const double Rho = 1020, Speed = 0.7, Turn = 0.25, Radius = 0.006, Length = 0.03;
        double push = 0;
        const int Slices = 1000;
        for (int i = 0; i < Slices; i++)
        {
            double r0 = Radius * i / Slices, r1 = Radius * (i + 1) / Slices;
            push += Rho * Math.PI * ((r1 * r1) - (r0 * r0)) * Speed * Math.Sin(Turn) * Speed * Math.Cos(Turn);
        }

        ActionBody body = ActionBodies.Spheroid(0.04, 0.01, 1100) with { Head = new HeadSet(new(Length, 0, 0), Math.PI * Radius * Radius, Turn) };
        var equations = new TowedBodyEquations(body, Knot.Loop(), new TowInput { Mode = TowMode.Free, WaterDensity = Rho }, new() { InitialYaw = 0, InitialRoll = 0 });
        double[] y = [.. equations.Initial];
        BodyState.In(y).Velocity = new(Speed, 0, 0);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "head turned 14 degrees to the left: force to the left", "momentum given to the water by a slender cone, slice by slice (Munk 1924)", push, equations.WrenchOf(ActionTerms.Head, 0, y).Force.Y, 1e-9, "N");
    }

    // The line leaves the level body upwards at an angle, drawn out until it has the tension.
    private static Wrench Clamp(Knot knot, double tension, double angle)
    {
        ActionBody body = ActionBodies.Spheroid(0.04, 0.01, 1100);
        var tow = new TowInput { LineElevation = angle, LineStiffness = 2000, LineLength = 1 };
        var equations = new TowedBodyEquations(body, knot, tow, new() { InitialYaw = 0, InitialRoll = 0, InitialPitch = -angle });
        double[] y = [.. equations.Initial];
        ref BodyState state = ref BodyState.In(y);
        state.Position = -(tension / tow.LineStiffness) * new Vector3d(Math.Cos(angle), 0, Math.Sin(angle));
        Assert.Equal(tension, equations.LineAt(0, y).Tension, 1e-6);
        return equations.WrenchOf(ActionTerms.Knot, 0, y);
    }

    // E I theta'' = T sin theta from theta = angle at the clamp to 0 far away: the slope at the clamp by bisection, twelve bent lengths of rod by steps of the fourth order.
    private static double Elastica(double stiffness, double tension, double angle)
    {
        double rate = tension / stiffness, reach = 12 / Math.Sqrt(rate);
        double low = -4 * Math.Sqrt(rate), high = 0;
        for (int i = 0; i < 60; i++)
        {
            double middle = 0.5 * (low + high), theta = angle, slope = middle;
            const int Steps = 4000;
            double h = reach / Steps;
            for (int k = 0; k < Steps && theta > 0 && slope < 0; k++)
            {
                double k1 = rate * Math.Sin(theta), k2 = rate * Math.Sin(theta + (h / 2 * slope)), s2 = slope + (h / 2 * k1);
                double k3 = rate * Math.Sin(theta + (h / 2 * s2)), s3 = slope + (h / 2 * k2), k4 = rate * Math.Sin(theta + (h * s3)), s4 = slope + (h * k3);
                theta += h / 6 * (slope + (2 * s2) + (2 * s3) + s4);
                slope += h / 6 * (k1 + (2 * k2) + (2 * k3) + k4);
            }

            // Too steep a start passes through 0, too flat a one turns back.
            if (theta <= 0) low = middle;
            else high = middle;
        }

        return -0.5 * (low + high) * stiffness;
    }
}
