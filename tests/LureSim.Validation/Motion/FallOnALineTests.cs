using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Tackle;
using LureSim.Validation.Reference;
using LureSim.Water;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using MathNet.Numerics.RootFinding;

namespace LureSim.Validation.Motion;

/// <summary>The controlled fall on a tight line against a pendulum with drag and against the free fall.</summary>
public class FallOnALineTests
{
    private const string Area = "Motion: fall on a line";
    private const double Gravity = 9.80665;
    private const double Density = 1025;
    private const double LineLength = 6;

    // A quarter ounce of lead with a constant drag area (m2).
    private const double Mass = 7.087380781e-3;
    private const double Volume = 6.249894869e-7;
    private const double DragArea = 3.97e-5;

    private static readonly double[] Depths = [0.5, 1, 2, 3, 4, 5];

    [Fact]
    public void A_tight_line_lets_the_lure_down_as_a_pendulum()
    {
        // The angle below the horizontal: (m + Ca rho V) L a'' = (m - rho V) g cos a - 1/2 rho CdA L^2 |a'| a', by the library's fourth-order Runge-Kutta method.
        const int Steps = 20_000;
        const double End = 30;
        double inertia = Mass + (0.5 * Density * Volume), weight = (Mass - (Density * Volume)) * Gravity;
        Vector<double>[] swing = RungeKutta.FourthOrder(
            Vector<double>.Build.Dense(2), 0, End, Steps + 1,
            (_, y) => Vector<double>.Build.Dense([y[1], ((weight * Math.Cos(y[0])) - (0.5 * Density * DragArea * LineLength * LineLength * Math.Abs(y[1]) * y[1])) / (inertia * LineLength)]));

        var body = new ConstantDragLure { Mass = Mass, Volume = Volume, AddedMassCoefficient = 0.5, ContactRadius = 0.005, Area = DragArea };
        const double TipZ = -20;

        // A line that displaces and weighs next to nothing.
        var line = LineProperties.Uniform(new LineMaterial(1e-5, 1e-6, 1000, 1e-9));
        var run = new EngineRun(
            body, line, WaterColumn.Unbounded(Density, 1.08e-3), LineDragLaw.Constant(1e-3, 0), GivenBoundary.Fixed(0, TipZ, LineLength), new EngineSettings { Segments = 20, Tolerance = 0.1 });
        run.Start(0, f => (LineLength * (1 - f), 0, TipZ));

        // Times at which the depths are passed, by linear interpolation in steps that are short against them.
        double[] times = new double[Depths.Length];
        int next = 0;
        double before = 0, timeBefore = 0;
        run.RunTo(End, _ =>
        {
            double depth = TipZ - run.Z;
            while (next < Depths.Length && depth >= Depths[next])
            {
                times[next] = timeBefore + ((Depths[next] - before) / (depth - before) * (run.Time - timeBefore));
                next++;
            }

            (before, timeBefore) = (depth, run.Time);
        });
        Assert.Equal(Depths.Length, next);
        var rows = new List<(double, double)>();
        for (int i = 0, k = 0; i < Depths.Length; i++)
        {
            while (LineLength * Math.Sin(swing[k + 1][0]) < Depths[i]) k++;
            double from = LineLength * Math.Sin(swing[k][0]), to = LineLength * Math.Sin(swing[k + 1][0]);
            rows.Add(((k + ((Depths[i] - from) / (to - from))) * End / Steps, times[i]));
        }

        ValidationLog.WorstRelative(CheckClass.SameEquations, Area, "Controlled fall on 6 m of weightless line, time to 0.5 to 5 m", "pendulum with quadratic drag, Runge-Kutta of the numerics library", rows, 0.005, "s");

        // v_t^2/g' ln cosh(g' t/v_t) for the free fall: the tight line costs time.
        double terminal = Math.Sqrt(2 * weight / (Density * DragArea)), reduced = weight / inertia;
        double Free(double depth) => Brent.FindRoot(t => (terminal * terminal / reduced * Math.Log(Math.Cosh(reduced * t / terminal)) / depth) - 1, 1e-3, 30, 1e-10);
        ValidationLog.Says(
            CheckClass.CommonPractice, Area, "Controlled fall over free fall, time to 5 of 6 m", "slower on a tight line is common practice", "longer", FormattableString.Invariant($"{times[^1] / Free(5):F2} times as long"), times[^1] > 1.05 * Free(5));
    }
}
