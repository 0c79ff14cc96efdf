using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Tackle;
using LureSim.Validation.Reference;
using LureSim.Water;
using MathNet.Numerics.RootFinding;

namespace LureSim.Validation.Motion;

/// <summary>A line held at both ends and let go from two straight legs: it whips where it is slack, and must neither ring on nor gain energy.</summary>
public class TwoLegsTests
{
    private const string Area = "Motion: a line let go from two straight legs";
    private const int Segments = 40;
    private const double Length = 4.26, Span = 3, Top = -5, WetWeight = 1, Diameter = 5e-3;

    [Fact]
    public void It_settles_on_the_catenary_and_its_energy_never_grows()
    {
        double area = Math.PI / 4 * Diameter * Diameter;
        LineProperties line = LineProperties.Uniform(new LineMaterial(Diameter, (WetWeight / 9.80665) + (1000 * area), 2e4, area));

        // The held end is a lure of a million tons without weight in the water.
        var held = new ConstantDragLure { Mass = 1e9, Volume = 1e6, AddedMassCoefficient = 0, ContactRadius = 0.01, Area = 1 };
        var run = new EngineRun(
            held, line, WaterColumn.Unbounded(1000, 1e-3), LineDragLaw.ChooCasarella, GivenBoundary.Fixed(Span, Top, Length), new EngineSettings { Segments = Segments, Grading = 1 });
        double dip = Math.Sqrt((Length * Length) - (Span * Span)) / 2;
        run.Start(0, f => (Span * f, 0, Top - (2 * dip * Math.Min(f, 1 - f))));
        double start = Energy(run), before = start, growth = 0, largest = 0;
        run.RunTo(20, _ =>
        {
            double now = Energy(run);
            growth = Math.Max(growth, now - before);
            before = now;
            largest = Math.Max(largest, run.Energy.Kinetic);
        });

        // The sag of the catenary: length 2 a sinh(span/2a), sag a (cosh(span/2a) - 1).
        double a = Brent.FindRoot(p => (2 * p * Math.Sinh(Span / (2 * p))) - Length, 0.3, 30, 1e-12, 200);
        double sag = a * (Math.Cosh(Span / (2 * a)) - 1), released = start - before;
        ValidationLog.Absolute(CheckClass.SameEquations, Area, "Sag after 20 s", "catenary", sag, Top - run.Node(Segments / 2).Z, 2e-3, "m");
        ValidationLog.AtMost(CheckClass.Identity, Area, "Largest growth of the energy in a step, of the energy set free", "fixed ends, water at rest: none", 1e-4, growth / released, "");
        ValidationLog.AtMost(CheckClass.Identity, Area, "Largest kinetic energy, of the energy set free", "conservation of energy", 1, largest / released, "");
        ValidationLog.AtMost(CheckClass.Identity, Area, "Kinetic energy after 20 s, of the largest", "at rest", 1e-3, run.Energy.Kinetic / largest, "");
        ValidationLog.AtMost(CheckClass.Identity, Area, "Steps to 20 s", "three times what it takes without ringing", 300, run.Steps, "");
    }

    // Kinetic, elastic and potential energy (J); the line is under water all over.
    private static double Energy(EngineRun run)
    {
        double height = 0;
        for (int j = 1; j < Segments; j++) height += run.Node(j).Z;
        return run.Energy.Kinetic + run.Energy.Elastic + (WetWeight * Length / Segments * height);
    }
}
