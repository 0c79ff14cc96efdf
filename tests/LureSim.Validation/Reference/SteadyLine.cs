using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Tackle;
using LureSim.Water;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using MathNet.Numerics.RootFinding;

namespace LureSim.Validation.Reference;

/// <summary>Drag of a line by the formulas themselves: per length, across (on the diameter) and along.</summary>
/// <param name="Normal">Cn as a function of Re by the normal velocity, reference area d.</param>
/// <param name="Along">Force per length (N/m) along the line, from viscosity, density, diameter, normal Re and tangential velocity.</param>
internal sealed record DragFormula(Func<double, double> Normal, Func<double, double, double, double, double, double> Along)
{
    /// <summary>Constant coefficients: Cn on d, Ct on pi d.</summary>
    public static DragFormula Constant(double normal, double tangential) =>
        new(_ => normal, (_, density, diameter, _, ut) => 0.5 * density * Math.PI * diameter * tangential * Math.Abs(ut) * ut);

    /// <summary>Choo &amp; Casarella 1971 across, with a friction number h(Re) along: pi mu h u_t.</summary>
    public static DragFormula ChooCasarella(Func<double, double> frictionNumber) =>
        new(CylinderDrag.NormalChooCasarella1971, (viscosity, _, _, re, ut) => Math.PI * viscosity * frictionNumber(re) * ut);
}

/// <summary>The equilibrium of a line and its end body.</summary>
/// <param name="X">Coordinates from the body to the tip, relative to the tip (m).</param>
/// <param name="Y">Idem.</param>
/// <param name="Z">Heights (m), absolute.</param>
/// <param name="Tension">Tension (N).</param>
internal sealed record SteadyShape(double[] X, double[] Y, double[] Z, double[] Tension)
{
    /// <summary>Tension at the tip (N).</summary>
    public double TipTension => Tension[^1];

    /// <summary>Tension at the body (N).</summary>
    public double BodyTension => Tension[0];

    /// <summary>Angle of the line below the horizontal at the tip (radians).</summary>
    public double TipAngle { get; init; }
}

/// <summary>
/// Quasi-static reference, written apart from the engine: the equilibrium equations of an elastic line in a stream, r' = (1 + T/EA) t and (T t)' = -f, integrated
/// from the body up by a fourth-order Runge-Kutta method of the numerics library; the body's depth is found by shooting (Brent) so that the upper end meets the tip.
/// </summary>
internal static class SteadyLine
{
    private const double Gravity = 9.80665;

    /// <summary>Solves for a body free in the water at the end of a line of given length.</summary>
    /// <param name="body">The end body.</param>
    /// <param name="line">The line (one material).</param>
    /// <param name="drag">Drag formulas.</param>
    /// <param name="water">Water; current and wind as the engine's column gives them.</param>
    /// <param name="length">Unstretched length (m).</param>
    /// <param name="tipZ">Height of the tip (m).</param>
    /// <param name="steps">Integration steps.</param>
    /// <param name="tow">Velocity of tip, line and body over the ground (m/s).</param>
    public static SteadyShape Solve(
        LureProperties body, LineMaterial line, DragFormula drag, WaterColumn water, double length, double tipZ, int steps = 4000, (double X, double Y) tow = default)
    {
        Vector<double>[] Shoot(double z0)
        {
            (double fx, double fy, double fz) = BodyForce(body, water, z0, tow);
            Vector<double> start = Vector<double>.Build.Dense([0, 0, z0, -fx, -fy, -fz]);
            return RungeKutta.FourthOrder(start, 0, length, steps + 1, (_, state) => Slope(state, line, drag, water, tow));
        }

        double z = tipZ - length;
        if (double.IsInfinity(water.Depth) && water.Current.Kind == LureSim.Model.CurrentProfileKind.Uniform && tipZ < -length)
        {
            // Nothing depends on depth: one shot, then shift.
            z = -10 * length;
            z += tipZ - Shoot(z)[^1][2];
        }
        else
        {
            double low = Math.Max(tipZ - (1.05 * length), double.IsInfinity(water.Depth) ? double.NegativeInfinity : -water.Depth), high = tipZ - (1e-3 * length);
            z = Brent.FindRoot(z0 => (Shoot(z0)[^1][2] - tipZ) / length, low, high, 1e-11, 200);
        }

        Vector<double>[] path = Shoot(z);
        Vector<double> end = path[^1];
        double tip = Norm(end[3], end[4], end[5]);
        return new SteadyShape(
            [.. path.Select(p => p[0] - end[0])],
            [.. path.Select(p => p[1] - end[1])],
            [.. path.Select(p => p[2])],
            [.. path.Select(p => Norm(p[3], p[4], p[5]))])
        {
            TipAngle = Math.Asin(end[5] / tip),
        };
    }

    /// <summary>Integrates from a given end force and direction in a uniform stream along +x, with no body: for Pode's functions.</summary>
    /// <param name="tension">Vector of tension at the start (N), pointing along the line.</param>
    /// <param name="length">Length (m).</param>
    /// <param name="slope">dT/ds as a function of the tension vector (x and z).</param>
    /// <param name="steps">Steps.</param>
    public static (double X, double Z, double Tx, double Tz) Integrate((double X, double Z) tension, double length, Func<double, double, (double X, double Z)> slope, int steps = 4000)
    {
        Vector<double> start = Vector<double>.Build.Dense([0, 0, tension.X, tension.Z]);
        Vector<double>[] path = RungeKutta.FourthOrder(start, 0, length, steps + 1, (_, s) =>
        {
            double t = Math.Sqrt((s[2] * s[2]) + (s[3] * s[3]));
            (double dx, double dz) = slope(s[2], s[3]);
            return Vector<double>.Build.Dense([s[2] / t, s[3] / t, dx, dz]);
        });
        Vector<double> end = path[^1];
        return (end[0], end[1], end[2], end[3]);
    }

    private static (double X, double Y, double Z) BodyForce(LureProperties body, WaterColumn water, double z, (double X, double Y) tow)
    {
        double current = water.Current.Speed(z + water.Depth, out _);
        double ux = (current * water.Current.DirectionX) - tow.X, uy = (current * water.Current.DirectionY) - tow.Y;
        double coefficient = 0.5 * water.Density * body.DragAreaTimesSpeed(Norm(ux, uy, 0), water.KinematicViscosity, out _);
        return (
            coefficient * ux,
            coefficient * uy,
            ((water.Density * body.Volume) - body.Mass) * Gravity);
    }

    private static Vector<double> Slope(Vector<double> state, LineMaterial line, DragFormula drag, WaterColumn water, (double X, double Y) tow)
    {
        double tension = Norm(state[3], state[4], state[5]);
        double tx = state[3] / tension, ty = state[4] / tension, tz = state[5] / tension;
        double z = state[2];
        bool wet = z < 0;
        double density = wet ? water.Density : WaterColumn.AirDensity, viscosity = wet ? water.Viscosity : WaterColumn.AirViscosity;
        double ux, uy;
        if (wet)
        {
            double current = water.Current.Speed(z + water.Depth, out _);
            ux = current * water.Current.DirectionX;
            uy = current * water.Current.DirectionY;
        }
        else
        {
            ux = water.WindX;
            uy = water.WindY;
        }

        ux -= tow.X;
        uy -= tow.Y;
        double along = (ux * tx) + (uy * ty);
        double nx = ux - (along * tx), ny = uy - (along * ty), nz = -along * tz;
        double un = Norm(nx, ny, nz);
        double re = un * line.Diameter * density / viscosity;
        double across = un > 0 ? 0.5 * density * line.Diameter * drag.Normal(re) * un : 0;
        double friction = drag.Along(viscosity, density, line.Diameter, re, along);
        double fx = (across * nx) + (friction * tx);
        double fy = (across * ny) + (friction * ty);
        double fz = (across * nz) + (friction * tz) + (((wet ? water.Density * line.Area : 0) - line.MassPerLength) * Gravity);
        double stretch = 1 + (tension / line.AxialStiffness);
        return Vector<double>.Build.Dense([stretch * tx, stretch * ty, stretch * tz, -fx, -fy, -fz]);
    }

    private static double Norm(double x, double y, double z) => Math.Sqrt((x * x) + (y * y) + (z * z));
}
