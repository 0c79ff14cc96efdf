using LureSim.Validation.Reference;

namespace LureSim.Validation.Motion;

/// <summary>
/// A light jig towed off from a hanging line, with and without lift-drop of the tip: engine and independent lumped-mass code against published figures and each other.
/// </summary>
public class TransientTowTests
{
    private const string Area = "Motion: transient tow";
    private const string Published = "MoorDyn 2.7.1 (Hall & Goupee 2015), 80 segments";
    private const string Independent = "independent lumped-mass code, extrapolated from 80 and 160 segments";

    private static readonly double[] TowTimes = [5, 20, 40, 60];
    private static readonly double[] LiftTimes = [5, 20, 22, 23, 30];

    // Behind the tip and below the tip's resting height (m), tension of the top segment (N).
    private static readonly (double Time, double Behind, double Below, double Tension)[] LiftDrop =
    [
        (5, 1.16501, 19.87817, 0.063090), (20, 4.97368, 18.80298, 0.064188), (22, 5.42501, 18.46444, 0.082194),
        (23, 5.64494, 18.50945, 0.076055), (30, 7.07111, 17.70398, 0.055506),
    ];

    [Fact]
    public void Independent_code_gives_the_published_lift_drop()
    {
        LumpedMassReference code = TowedJig.TowReference(lift: true, 80);
        var behind = new List<(double, double)>();
        var below = new List<(double, double)>();
        var tension = new List<(double, double)>();
        foreach (var row in LiftDrop)
        {
            code.RunTo(row.Time, _ => 0);
            behind.Add((row.Behind, TowedJig.Tip(row.Time, true).X - code.Body.X));
            below.Add((row.Below, -50 - code.Body.Z));
            tension.Add((row.Tension, code.TipTension));
        }

        ValidationLog.WorstAbsolute(CheckClass.OtherProgram, Area, "Independent code, lift-drop, behind", Published, behind, 5e-4, "m");
        ValidationLog.WorstAbsolute(CheckClass.OtherProgram, Area, "Independent code, lift-drop, below", Published, below, 5e-4, "m");
        ValidationLog.WorstRelative(CheckClass.OtherProgram, Area, "Independent code, lift-drop, tension of the top segment", Published, tension, 0.01, "N");
    }

    [Fact]
    public void Engine_gives_the_published_lift_drop()
    {
        // The published run has 2.6 mm and 1.1 % between 40 and 80 segments. At ten times this tolerance the depths are the same, but the tension of a segment at the
        // tip carries 2 % of axial noise.
        EngineRun run = TowedJig.Tow(lift: true, new EngineSettings { Segments = 160, Tolerance = 0.01 });
        var behind = new List<(double, double)>();
        var below = new List<(double, double)>();
        var tension = new List<(double, double)>();
        foreach (var row in LiftDrop)
        {
            run.RunTo(row.Time);
            behind.Add((row.Behind, TowedJig.Tip(row.Time, true).X - run.X));
            below.Add((row.Below, -50 - run.Z));
            tension.Add((row.Tension, run.TipTension));
        }

        ValidationLog.WorstAbsolute(CheckClass.OtherProgram, Area, "Engine, 160 segments, lift-drop, behind", Published, behind, 0.003, "m");
        ValidationLog.WorstAbsolute(CheckClass.OtherProgram, Area, "Engine, 160 segments, lift-drop, below", Published, below, 0.003, "m");
        ValidationLog.WorstRelative(CheckClass.OtherProgram, Area, "Engine, 160 segments, lift-drop, tension of the top segment", Published, tension, 0.015, "N");
    }

    [Fact]
    public void Settling_is_slow()
    {
        EngineRun run = TowedJig.Tow(lift: false);
        run.RunTo(120);
        ValidationLog.Absolute(CheckClass.OtherProgram, Area, "Tow at 0.3 m/s: depth after 120 s, where the steady depth is 10.36 m", "MoorDyn 2.7.1, one figure", 11.7, -50 - run.Z, 0.05, "m");
    }

    [Fact]
    public void Engine_at_its_defaults_is_near_the_converged_track()
    {
        double[] tow = Deviations(lift: false, new EngineSettings()), lift = Deviations(lift: true, new EngineSettings());
        ValidationLog.AtMost(CheckClass.SameEquations, Area, "Engine at its defaults, tow of 60 s: largest error in depth", Independent, 0.003, tow.Max(Math.Abs), "m");
        ValidationLog.AtMost(CheckClass.SameEquations, Area, "Engine at its defaults, lift-drop: largest error in depth", Independent, 0.007, lift.Max(Math.Abs), "m");
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(1.5)]
    public void Error_falls_with_the_square_of_the_spacing(double grading)
    {
        double[] at = new double[4];
        int[] segments = [20, 40, 80, 160];
        for (int i = 0; i < 4; i++)
        {
            double[] errors = Deviations(lift: true, new EngineSettings { Segments = segments[i], Grading = grading, Tolerance = 0.1 });
            at[i] = errors[^1];
            double[] bound = [0.025, 0.007, 0.002, 0.001];
            ValidationLog.AtMost(
                CheckClass.SameEquations, Area, FormattableString.Invariant($"Lift-drop, {segments[i]} segments of grading {grading}: largest error in depth"), Independent, bound[i], errors.Max(Math.Abs), "m");
        }

        // From differences, so that the limit itself (0.3 mm apart by the engine's soft corner between slack and taut) does not enter.
        double order = Math.Log2((at[0] - at[1]) / (at[1] - at[2]));
        ValidationLog.Between(CheckClass.Identity, Area, FormattableString.Invariant($"Order of convergence in the spacing, grading {grading}"), "second order or better: the drag at two Gauss points cancels a part of the second-order error", 1.8, 3.5, order);
    }

    [Fact]
    public void Order_in_time_is_kept_on_a_stiff_line()
    {
        // A tow at speed, long past its start; error of the lure's position after 4 s at fixed steps against much smaller ones.
        EngineRun start = TowedJig.Tow(lift: false, new EngineSettings { Tolerance = 0.001 });
        start.RunTo(6);
        double[] End(double step)
        {
            EngineRun run = TowedJig.Tow(lift: false, new EngineSettings { FixedStep = step });
            run.StartFrom(start);
            run.RunTo(10);
            return [run.X, run.Z];
        }

        double[] exact = End(5e-4);
        double coarse = Distance(End(0.04), exact), fine = Distance(End(0.01), exact);
        ValidationLog.AtMost(CheckClass.Identity, Area, "Error in the lure's position of 100 fixed steps of 0.04 s", "the same line with steps of 0.5 ms", 1e-5, coarse, "m");
        ValidationLog.Between(
            CheckClass.Identity, Area, "Order of the integrator on a stiff line, steps 0.04 to 0.01 s", "order 2, stiffly accurate (Bank et al. 1985, Hosea & Shampine 1996)", 1.8, 2.2, Math.Log(coarse / fine, 4));
    }

    private static double Distance(double[] a, double[] b) => Math.Sqrt(a.Zip(b, (p, q) => (p - q) * (p - q)).Sum());

    private static readonly Lazy<double[]> ConvergedTow = new(() => Converged(false));
    private static readonly Lazy<double[]> ConvergedLift = new(() => Converged(true));

    private static double[] Converged(bool lift)
    {
        double[] coarse = Depths(lift, 80), fine = Depths(lift, 160);
        return [.. coarse.Zip(fine, (c, f) => f + ((f - c) / 3))];
    }

    private static double[] Depths(bool lift, int segments)
    {
        LumpedMassReference code = TowedJig.TowReference(lift, segments);
        return [.. (lift ? LiftTimes : TowTimes).Select(t =>
        {
            code.RunTo(t, _ => 0);
            return -50 - code.Body.Z;
        })];
    }

    private static double[] Deviations(bool lift, EngineSettings settings)
    {
        EngineRun run = TowedJig.Tow(lift, settings);
        double[] converged = (lift ? ConvergedLift : ConvergedTow).Value;
        return [.. (lift ? LiftTimes : TowTimes).Select((t, i) =>
        {
            run.RunTo(t);
            return -50 - run.Z - converged[i];
        })];
    }
}
