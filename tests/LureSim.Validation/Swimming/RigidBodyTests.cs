using LureSim.Hydrodynamics;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Validation.Swimming;

/// <summary>The rigid body in empty space and in ideal fluid against closed forms.</summary>
public class RigidBodyTests
{
    private const string Area = "Action: rigid body";
    private const double Rho = 1025;
    private static readonly TowInput Still = new() { Mode = TowMode.Free, WaterDensity = Rho };

    [Fact]
    public void Symmetric_top_precesses()
    {
        // Landau & Lifshitz, Mechanics, sect. 36: the turn rate across the axis goes round in the body at (I3 - I1)/I1 w3.
        ActionBody body = ActionBodies.Spheroid(0.04, 0.01, 1100);
        var equations = new TowedBodyEquations(body, Knot.Loop(), Still, new() { Terms = ActionTerms.None });
        const double Axial = 7.0, Across = 3.0;
        double rate = (body.Inertia.Xx - body.Inertia.Yy) / body.Inertia.Yy * Axial;
        var rows = new List<(double, double)>();
        double drift = ActionBodies.Follow(
            equations,
            1e-11,
            [0.3, 1, 3, 5],
            (t, y) =>
            {
                rows.Add((Across * Math.Cos(rate * t), BodyState.Of(y).TurnRate.Y));
                rows.Add((Across * Math.Sin(rate * t), BodyState.Of(y).TurnRate.Z));
                rows.Add((Axial, BodyState.Of(y).TurnRate.X));
            },
            y =>
            {
                BodyState.In(y).TurnRate = new(Axial, Across, 0);
            });
        ValidationLog.WorstAbsolute(CheckClass.SameEquations, Area, "symmetric top: turn rates over 5 s", "Landau & Lifshitz, Mechanics, sect. 36", rows, 1e-7, "rad/s");
        ValidationLog.AtMost(CheckClass.Identity, Area, "norm of the quaternion before it is put right", "kinematics", 1e-10, drift);
    }

    [Fact]
    public void Asymmetric_top_follows_the_elliptic_functions()
    {
        // Landau & Lifshitz, Mechanics, sect. 37: W1 = A cn, W2 = B sn, W3 = C dn for I3 > I2 > I1 and M^2 > 2 E I2.
        const double I1 = 1e-6, I2 = 1.6e-6, I3 = 2.2e-6;
        ActionBody body = ActionBodies.Spheroid(0.04, 0.01, 1100) with { Inertia = new(I1, I2, I3) };
        var equations = new TowedBodyEquations(body, Knot.Loop(), Still, new() { Terms = ActionTerms.None });
        const double W1 = 2.0, W3 = 5.0;
        double e2 = (I1 * W1 * W1) + (I3 * W3 * W3), m2 = (I1 * I1 * W1 * W1) + (I3 * I3 * W3 * W3);
        double pace = Math.Sqrt((I3 - I2) * (m2 - (e2 * I1)) / (I1 * I2 * I3));
        double k2 = (I2 - I1) * ((e2 * I3) - m2) / ((I3 - I2) * (m2 - (e2 * I1)));
        double b = Math.Sqrt(((e2 * I3) - m2) / (I2 * (I3 - I2)));
        Assert.InRange(k2, 0.01, 0.99);
        var rows = new List<(double, double)>();
        ActionBodies.Follow(
            equations,
            1e-11,
            [0.1, 0.5, 1, 2, 4],
            (t, y) =>
            {
                Jacobi(pace * t, k2, out double sn, out double cn, out double dn);
                rows.Add((W1 * cn, BodyState.Of(y).TurnRate.X));
                rows.Add((b * sn, BodyState.Of(y).TurnRate.Y));
                rows.Add((W3 * dn, BodyState.Of(y).TurnRate.Z));
            },
            y =>
            {
                BodyState.In(y).TurnRate = new(W1, 0, W3);
            });
        ValidationLog.WorstAbsolute(CheckClass.SameEquations, Area, "asymmetric top: turn rates over 4 s", "Landau & Lifshitz, Mechanics, sect. 37, Jacobi functions", rows, 1e-7, "rad/s");
    }

    [Fact]
    public void Free_spheroid_in_ideal_fluid_swings_and_diverges()
    {
        // Kirchhoff's equations: theta'' = -(P^2/I)(1/M1 - 1/M2) sin theta cos theta (Lamb 1932, art. 127); figures by complete elliptic integral.
        ActionBody body = ActionBodies.Spheroid(0.04, 0.01, 1.1 * Rho);
        var equations = new TowedBodyEquations(body, Knot.Loop(), Still, new() { Terms = ActionTerms.AddedMass, InitialYaw = 0, InitialRoll = 0 });
        ReadOnlySpan<double> m = equations.MassMatrix;
        double m1 = m[0], m2 = m[8], inertia = m[40];
        const string Source = "Kirchhoff's equations, Lamb 1932, art. 127";
        ValidationLog.Relative(CheckClass.SameEquations, Area, "spheroid: mass with water along", Source, 0.0202921113, m1, 1e-8, "kg");
        ValidationLog.Relative(CheckClass.SameEquations, Area, "spheroid: mass with water across", Source, 0.0336570063, m2, 1e-8, "kg");
        ValidationLog.Relative(CheckClass.SameEquations, Area, "spheroid: inertia with water", Source, 9.97294627e-6, inertia, 1e-8, "kg m2");

        double impulse = 0.5 * m2;
        ValidationLog.Relative(CheckClass.SameEquations, Area, "spheroid broadside: period of small swings", Source, 0.2665414, Period(equations, impulse, 1e-4, m1, m2), 1e-6, "s");
        ValidationLog.Relative(CheckClass.SameEquations, Area, "spheroid broadside: period from 30 degrees", Source, 0.2860475, Period(equations, impulse, Math.PI / 6, m1, m2), 1e-6, "s");

        double energy = 0, atStart = 0;
        ActionBodies.Follow(
            equations, 1e-11, [1e-9, 5], (t, y) => (atStart, energy) = t < 1e-6 ? (equations.KineticEnergy(y), 0) : (atStart, equations.KineticEnergy(y)), y => Release(y, impulse, Math.PI / 6, m1, m2));
        ValidationLog.Relative(CheckClass.SameEquations, Area, "spheroid broadside from 30 degrees: energy", Source, 4.89985551e-3, atStart, 1e-8, "J");
        ValidationLog.AtMost(CheckClass.Identity, Area, "spheroid: energy change over 5 s", "balance", 1e-9, Math.Abs(energy - atStart) / atStart);

        // Nose first at 0.5 m/s: theta grows as sinh; the growth rate from two times, where it has outgrown the decaying part.
        var angles = new List<double>();
        ActionBodies.Follow(
            equations, 1e-12, [0.5, 0.7], (_, y) => angles.Add(BodyState.Of(y).Attitude.Yaw), y =>
            {
                ref BodyState start = ref BodyState.In(y);
                start.Velocity = start.Velocity with { X = 0.5 };
                start.TurnRate = start.TurnRate with { Z = 1e-7 };
            });
        ValidationLog.Relative(CheckClass.SameEquations, Area, "spheroid nose first at 0.5 m/s: growth rate", Source, 14.21238, Math.Log(angles[1] / angles[0]) / 0.2, 1e-6, "1/s");
    }

    [Fact]
    public void Munk_moment_of_a_spheroid()
    {
        // Munk 1924: 1/2 rho V (k2 - k1) U^2 sin 2a.
        ActionBody body = ActionBodies.Spheroid(0.03, 0.005, Rho);
        var equations = new TowedBodyEquations(body, Knot.Loop(), Still, new() { Terms = ActionTerms.AddedMass, InitialYaw = 0, InitialRoll = 0 });
        double[] y = [.. equations.Initial], dy = new double[BodyState.Size];
        const double Incidence = 10 * Math.PI / 180;
        BodyState.In(y).Velocity = new(Math.Cos(Incidence), -Math.Sin(Incidence), 0);
        equations.Derivative(0, y, dy);

        // No force acts: the moment shows as I dw/dt. The nose points left of the path and goes on to the left.
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Munk moment at 10 degrees, 1 m/s", "Munk 1924, NACA TR 184", 4.801559e-4, equations.MassMatrix[40] * BodyState.Of(dy).TurnRate.Z, 1e-6, "N m");
    }

    [Fact]
    public void Added_mass_of_ellipsoids()
    {
        double[] k = new double[6];
        var rows = new List<(double, double)>();

        // Spheroids, computed from Lamb 1932, art. 114-115 in a separate program: k1, k2, k' to seven figures.
        foreach ((double ratio, double k1, double k2, double kr) in new[]
        {
            (1.5, 0.3037494, 0.6220844, 0.0951243), (2, 0.2100150, 0.7042104, 0.2394239), (3, 0.1219686, 0.8038991, 0.4656782),
            (5, 0.0591212, 0.8942605, 0.6998510), (7, 0.0358493, 0.9330982, 0.8066942),
        })
        {
            EllipsoidAddedMass.Coefficients(ratio, 1, 1, k);
            rows.Add((k1, k[0]));
            rows.Add((k2, k[1]));
            rows.Add((k2, k[2]));
            rows.Add((kr, k[4] / (((ratio * ratio) + 1) / 5)));
            rows.Add((kr, k[5] / (((ratio * ratio) + 1) / 5)));
        }

        ValidationLog.WorstAbsolute(CheckClass.SameEquations, Area, "added mass of spheroids by the three-axes formula", "Lamb 1932, art. 114-115, table to 7 figures", rows, 6e-8);

        // Published three-figure table for a = 3.99 b (Munk 1924).
        EllipsoidAddedMass.Coefficients(3.99, 1, 1, k);
        ValidationLog.WorstAbsolute(CheckClass.Measured, Area, "added mass, length 3.99 diameters", "Munk 1924, NACA TR 184, table", [(0.082, k[0]), (0.860, k[1]), (0.608, k[5] / ((16.9201) / 5))], 2e-3);

        // Limits: an endless elliptic cylinder has pi rho b^2 per length across (Lamb 1932, art. 71); a thin disc 8/3 rho a^3 broadside and 16/45 rho a^5 about a diameter.
        EllipsoidAddedMass.Coefficients(1000, 1, 0.2, k);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "long elliptic cylinder across its flat side", "Lamb 1932, art. 71", 1 / 0.2, k[2], 1e-3);
        const double Thin = 1e-4;
        EllipsoidAddedMass.Coefficients(1, 1, Thin, k);
        double displaced = 4.0 / 3 * Math.PI * Thin;
        ValidationLog.Relative(CheckClass.SameEquations, Area, "thin disc broadside", "Lamb 1932, art. 102", 8.0 / 3, k[2] * displaced, 1e-3);
        ValidationLog.Relative(CheckClass.FromMemory, Area, "thin disc about a diameter", "Lamb 1932, art. 102; 16/45 from memory", 16.0 / 45, k[3] * displaced, 1e-3);
    }

    [Fact]
    public void Pendulum_in_water_swings_at_the_rate_of_weight_and_carried_water()
    {
        // A sphere of density 2 rho on a short stiff line: w^2 = g (m - rho V)/((m + rho V/2) l) for the point mass on a long line, damping off (Stokes 1851 for the
        // carried half; drag off here).
        const double Radius = 0.01;
        ActionBody body = ActionBodies.Spheroid(Radius * 1.0000001, Radius, 2 * Rho) with { TowPoint = Vector3d.Zero };
        TowInput tow = new() { LineLength = 1, LineStiffness = 1000, LineDampingRatio = 0.05, LineElevation = 1.5, WaterDensity = Rho };
        var equations = new TowedBodyEquations(body, Knot.Loop(0), tow, new() { Terms = ActionTerms.AddedMass | ActionTerms.Weight | ActionTerms.Buoyancy | ActionTerms.Line });
        double stretch = equations.WetWeight / tow.LineStiffness;
        double expected = 2 * Math.PI * Math.Sqrt((1 + stretch) * 2.5 / 9.80665);
        double before = double.NaN, previous = 0;
        var crossings = new List<double>();
        ActionBodies.Follow(
            equations,
            1e-9,
            Enumerable.Range(1, 12000).Select(i => i * 1e-3),
            (t, y) =>
            {
                // Sideways, out of the plane of the start.
                double x = BodyState.Of(y).Position.Y;
                if (previous < 0 && x >= 0) crossings.Add(before + (1e-3 * -previous / (x - previous)));
                previous = x;
                before = t;
            },
            y =>
            {
                // Hang straight under the end and push sideways a little.
                ref BodyState start = ref BodyState.In(y);
                start.Position = new(Math.Cos(1.5), 0, Math.Sin(1.5) - 1 - stretch);
                start.Velocity = start.Velocity with { Y = 0.02 };
            });
        double period = (crossings[^1] - crossings[0]) / (crossings.Count - 1);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "pendulum in water, sphere of twice the water's density", "closed form with carried mass rho V/2 (Lamb 1932, art. 92)", expected, period, 2e-4, "s");
    }

    private static void Release(double[] y, double impulse, double angle, double m1, double m2)
    {
        // The body's axis lies across the impulse (along y), turned by the angle; both are given in body axes.
        ref BodyState start = ref BodyState.In(y);
        start.Velocity = start.Velocity with { X = impulse * Math.Sin(angle) / m1, Y = impulse * Math.Cos(angle) / m2 };
    }

    private static double Period(TowedBodyEquations equations, double impulse, double angle, double m1, double m2)
    {
        // The turn rate is zero at the start and every half period after.
        var stepper = new ExplicitRungeKutta(ExplicitTableau.DormandPrince, equations, 1e-12);
        equations.Initial.AsSpan().CopyTo(stepper.State);
        Release(stepper.State, impulse, angle, m1, m2);
        stepper.Start(0, 1e-4);
        double[] y = new double[BodyState.Size];
        double previous = 0;
        while (true)
        {
            double from = stepper.Time;
            Assert.True(stepper.Advance(1, 2e-3));
            double rate = BodyState.Of(stepper.State).TurnRate.Z;
            if (from > 0 && previous * rate < 0)
            {
                double low = from, high = stepper.Time;
                for (int i = 0; i < 60; i++)
                {
                    double middle = 0.5 * (low + high);
                    stepper.Interpolate(middle, y);
                    if (BodyState.Of(y).TurnRate.Z * previous > 0) low = middle;
                    else high = middle;
                }

                return 2 * low;
            }

            previous = rate;
        }
    }

    // sn, cn, dn by the arithmetic-geometric mean (Abramowitz & Stegun 16.4).
    private static void Jacobi(double u, double m, out double sn, out double cn, out double dn)
    {
        var a = new List<double> { 1 };
        var c = new List<double> { Math.Sqrt(m) };
        double b = Math.Sqrt(1 - m);
        while (Math.Abs(c[^1]) > 1e-15 && a.Count < 20)
        {
            double an = a[^1];
            a.Add(0.5 * (an + b));
            c.Add(0.5 * (an - b));
            b = Math.Sqrt(an * b);
        }

        int n = a.Count - 1;
        double phi = Math.Pow(2, n) * a[n] * u;
        for (int i = n; i > 0; i--) phi = 0.5 * (phi + Math.Asin(Math.Clamp(c[i] / a[i] * Math.Sin(phi), -1, 1)));
        sn = Math.Sin(phi);
        cn = Math.Cos(phi);
        dn = Math.Sqrt(1 - (m * sn * sn));
    }
}
