using LureSim.Hydrodynamics;
using LureSim.Scenarios;
using LureSim.Tackle;
using LureSim.Validation.Reference;
using LureSim.Water;

namespace LureSim.Validation.Motion;

/// <summary>Rigs held in a sheared current from a rod above the water, with wind on the dry part: the engine at rest against the shooting solution.</summary>
public class SteadyRigTests
{
    private const string Area = "Motion: steady tow";
    private const int Fine = 160;

    private sealed record Agreement(List<(double, double)> Depths, List<(double, double)> Distances, List<(double, double)> Tensions);

    [Fact]
    public void Random_rigs_held_in_a_current()
    {
        var random = new Random(20240611);
        double Range(double low, double high) => low + ((high - low) * random.NextDouble());
        Agreement fine = new([], [], []), standard = new([], [], []);
        while (fine.Depths.Count < 24)
        {
            // Lead balls of 1/32 to 2 oz on 0.1 to 0.5 mm line.
            SphereLure ball = SphereLure.Of(28.349523125e-3 * Math.Pow(2, Range(-5, 1)), 11340);
            double diameter = Range(0.1e-3, 0.5e-3);
            LineMaterial line = TackleBuilder.Material((LineKind)random.Next(3), diameter);
            double length = Range(5, 40), tip = Range(0.5, 2.5), depth = Range(5, 20), surface = Range(0.1, 1.5), heading = Range(-3, 3);
            double windX = Range(-5, 5), windY = Range(-5, 5);
            var profile = new CurrentProfile((CurrentProfileKind)random.Next(3), surface, heading, depth, 4e-4);
            var water = new WaterColumn(depth, 1020, 1.05e-3, profile, BottomProperties.Of(BottomKind.Sand), 0, windX, windY);
            bool linear = random.Next(2) == 0;
            DragFormula formula = linear ? DragFormula.ChooCasarella(Floored) : DragFormula.Constant(1.2, 0.01);
            LineDragLaw law = linear ? LineDragLaw.ChooCasarella : LineDragLaw.Constant(1.2, 0.01);
            SteadyShape shape;
            try
            {
                shape = SteadyLine.Solve(ball, line, formula, water, length, tip);
            }
            catch (MathNet.Numerics.NonConvergenceException)
            {
                // No equilibrium off the bottom.
                continue;
            }

            // Off the bottom and well under water, the line never sagging below its lure.
            if (shape.Z[0] < -depth + 0.3 || shape.Z[0] > -0.3 || shape.Z.Min() < shape.Z[0] - 1e-9) continue;
            foreach ((int segments, Agreement result) in new[] { (Fine, fine), (new EngineSettings().Segments, standard) })
            {
                var run = new EngineRun(
                    ball, LineProperties.Uniform(line), water, law, GivenBoundary.Fixed(0, tip, length), new EngineSettings { Segments = segments, MaximumStep = 20 });
                run.Start(0, f => Along(shape, f));
                run.RunTo(1500);
                result.Depths.Add((-shape.Z[0], -run.Z));
                result.Distances.Add((Horizontal(shape.X[0], shape.Y[0]), Horizontal(run.X, run.Y)));
                result.Tensions.Add((shape.TipTension, run.TipTensionExtrapolated));
            }
        }

        Record("Random rigs in a sheared current, rod above the water, wind, 160 segments", fine, 0.005, 0.010, 0.01);

        // The default's own error: second order, largest for a light ball on thick line that planes just under the surface.
        Record("Random rigs in a sheared current, rod above the water, wind, default 40 segments", standard, 0.015, 0.015, 0.02);
    }

    private static void Record(string name, Agreement result, double depth, double distance, double tension)
    {
        const string Source = "shooting solution with the drag formulas themselves";
        ValidationLog.WorstAbsolute(Area, name + ": depth", Source, result.Depths, depth, "m");
        ValidationLog.WorstAbsolute(Area, name + ": horizontal distance", Source, result.Distances, distance, "m");
        ValidationLog.WorstRelative(Area, name + ": tension at the tip", Source, result.Tensions, tension, "N");
    }

    private static double Horizontal(double x, double y) => Math.Sqrt((x * x) + (y * y));

    private static double Floored(double re)
    {
        double printed = CylinderDrag.TangentialChooCasarella1971(re);
        return Math.Sqrt((LineDragLaw.AxialFrictionNumber * LineDragLaw.AxialFrictionNumber) + (printed * printed));
    }

    private static (double X, double Y, double Z) Along(SteadyShape shape, double fraction)
    {
        double at = fraction * (shape.X.Length - 1);
        int i = Math.Min((int)at, shape.X.Length - 2);
        double u = at - i;
        double Mix(double[] a) => a[i] + (u * (a[i + 1] - a[i]));
        return (Mix(shape.X), Mix(shape.Y), Mix(shape.Z));
    }
}
