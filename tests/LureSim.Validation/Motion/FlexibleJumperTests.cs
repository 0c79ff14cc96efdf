using LureSim.Hydrodynamics;
using LureSim.Tackle;
using LureSim.Validation.Reference;
using LureSim.Water;

namespace LureSim.Validation.Motion;

/// <summary>The flexible jumper of Lowe &amp; Langley 2006, whose bending stiffness is left out: what is left is a heavy line between two ends, the upper of which moves.</summary>
/// <remarks>
/// The engine holds the static case. Its error control, which is absolute and made for light tackle, wants steps of 70 microseconds on a line of half a giganewton, so the
/// moving cases are put to the independent code alone: they say that the reference of the other tests is right under forced motion.
/// </remarks>
public class FlexibleJumperTests
{
    private const string Area = "Motion: flexible jumper";
    private const string Source = "Lowe & Langley 2006, with bending stiffness 120.8 kN m2, as in a public mooring code's tests";
    private const double Density = 1000;
    private const double Length = 170;
    private const double Amplitude = 10;
    private const double Period = 27;

    private static readonly LineMaterial Jumper = new(0.396, 165, 5e8, Math.PI * 0.396 * 0.396 / 4);

    private static EngineRun Hang()
    {
        const int Segments = 60;
        var run = new EngineRun(
            Anchor.In(Density), LineProperties.Uniform(Jumper), WaterColumn.Unbounded(Density, 1e-3), LineDragLaw.Constant(1, 0),
            GivenBoundary.Fixed(0, -5, Length), new EngineSettings { Segments = Segments, Grading = 1, MaximumStep = 0.5, Tolerance = 0.03 });
        (double X, double Z)[] rest = Chain(Segments);
        run.Start(0, f => (rest[(int)Math.Round(f * Segments)].X, 0, rest[(int)Math.Round(f * Segments)].Z));
        return run;
    }

    // The chain of stretched links at rest, from the lower end: so stiff a line would ring for minutes from any other shape.
    private static (double X, double Z)[] Chain(int segments)
    {
        double link = Length / segments, weight = (Jumper.MassPerLength - (Density * Jumper.Area)) * 9.80665 * link;
        (double X, double Z)[] Hung(double horizontal, double vertical)
        {
            var nodes = new (double X, double Z)[segments + 1];
            nodes[segments] = (0, -5);
            for (int k = segments - 1; k >= 0; k--)
            {
                double v = vertical - ((segments - k - 0.5) * weight), tension = Math.Sqrt((horizontal * horizontal) + (v * v)), length = link * (1 + (tension / Jumper.AxialStiffness));
                nodes[k] = (nodes[k + 1].X - (length * horizontal / tension), nodes[k + 1].Z - (length * v / tension));
            }

            return nodes;
        }

        double[] force = MathNet.Numerics.RootFinding.Broyden.FindRoot(
            f =>
            {
                (double X, double Z) end = Hung(f[0] * 1e3, f[1] * 1e3)[0];
                return [end.X + 100, end.Z + 55];
            },
            [11.4, 45.7], 1e-9, 200);
        return Hung(force[0] * 1e3, force[1] * 1e3);
    }

    [Fact]
    public void Static_end_forces()
    {
        EngineRun run = Hang();
        run.RunTo(60);
        int n = run.Segments;
        (double h1, double v1) = Force(run, n - 1);
        (double h0, double v0) = Force(run, 0);

        // From the middle of the end segment to the end: half its wet weight.
        double half = 0.5 * Length / n * (165 - (Density * Jumper.Area)) * 9.80665;
        ValidationLog.Absolute(CheckClass.OtherProgram, Area, "Horizontal force at the upper end", Source, 11.40, h1 / 1e3, 0.2, "kN");
        ValidationLog.Absolute(CheckClass.OtherProgram, Area, "Vertical force at the upper end", Source, 45.71, (v1 + half) / 1e3, 0.2, "kN");
        ValidationLog.Absolute(CheckClass.OtherProgram, Area, "Horizontal force at the lower end", Source, 11.40, Math.Abs(h0) / 1e3, 0.2, "kN");
        ValidationLog.Absolute(CheckClass.OtherProgram, Area, "Vertical force at the lower end", Source, 24.04, (-v0 + half) / 1e3, 0.2, "kN");
    }

    private static (double Horizontal, double Vertical) Force(EngineRun run, int segment)
    {
        var (x1, y1, z1) = run.Node(segment + 1);
        var (x0, y0, z0) = run.Node(segment);
        double dx = x1 - x0, dy = y1 - y0, dz = z1 - z0, length = Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz));
        return (run.TensionOf(segment) * Math.Sqrt((dx * dx) + (dy * dy)) / length, run.TensionOf(segment) * dz / length);
    }

    [Theory]
    [InlineData(0, 41.48, 52.24)]
    [InlineData(1, 44.29, 49.12)]
    [InlineData(2, 36.78, 57.78)]
    public void Range_of_tension_as_the_upper_end_moves(int axis, double low, double high)
    {
        (double X, double Y, double Z, double Vx, double Vy, double Vz) Top(double t)
        {
            // A ramp over one period, smooth in its second derivative.
            double u = Math.Clamp(t / Period, 0, 1), omega = 2 * Math.PI / Period;
            double ramp = u * u * u * (10 + (u * (-15 + (6 * u)))), rampRate = 30 * u * u * (1 - u) * (1 - u) / Period;
            double move = Amplitude * ramp * Math.Sin(omega * t), rate = Amplitude * ((rampRate * Math.Sin(omega * t)) + (ramp * omega * Math.Cos(omega * t)));
            return (axis == 0 ? move : 0, axis == 1 ? move : 0, -5 + (axis == 2 ? move : 0), axis == 0 ? rate : 0, axis == 1 ? rate : 0, axis == 2 ? rate : 0);
        }

        const int Segments = 60;
        (double X, double Z)[] rest = Chain(Segments);
        var code = new LumpedMassReference(
            Anchor.In(Density), LineProperties.Uniform(Jumper), WaterColumn.Unbounded(Density, 1e-3), DragFormula.Constant(1, 0), Top, LumpedMassReference.Lengths(Length, 0, Segments, 1),
            f => (rest[(int)Math.Round(f * Segments)].X, 0, rest[(int)Math.Round(f * Segments)].Z), 2e-3);
        code.RunTo(4 * Period, _ => 0);
        double least = double.PositiveInfinity, most = 0;
        for (double t = 4 * Period; t < 6 * Period; t += 0.05)
        {
            code.RunTo(t, _ => 0);
            least = Math.Min(least, code.TipTensionExtrapolated);
            most = Math.Max(most, code.TipTensionExtrapolated);
        }

        string name = $"Independent code, upper end moved 10 m in 27 s {(axis == 0 ? "along" : axis == 1 ? "across" : "up and down")}: ";
        ValidationLog.Absolute(CheckClass.OtherProgram, Area, name + "least tension at the upper end", Source, low, least / 1e3, 1, "kN");
        ValidationLog.Absolute(CheckClass.OtherProgram, Area, name + "greatest tension at the upper end", Source, high, most / 1e3, 1, "kN");
    }
}
