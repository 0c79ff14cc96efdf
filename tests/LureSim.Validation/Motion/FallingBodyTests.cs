using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Motion;
using LureSim.Tackle;
using LureSim.Validation.Reference;
using LureSim.Water;

namespace LureSim.Validation.Motion;

/// <summary>A body that falls free of its line, against closed forms.</summary>
public class FallingBodyTests
{
    private const string Area = "Motion: one body";
    private const double Ounce = 28.349523125e-3;

    private static readonly Dictionary<string, double> MetalDensity = new()
    {
        // Densities that the table was computed with.
        ["tungsten"] = 19250,
        ["lead"] = 11340,
        ["bismuth"] = 9780,
        ["steel"] = 7850,
        ["zinc"] = 7140,
    };

    [Fact]
    public void Terminal_speeds_of_spheres_are_those_of_the_table()
    {
        HydroTable table = HydroTable.Read("terminal_speeds");
        ValidationLog.WorstRelative(
            CheckClass.SameEquations, Area, "Terminal speed of spheres of five metals, 1/16 to 1 oz", "force balance with Brown & Lawler 2003, computed elsewhere to 6 figures",
            Enumerable.Range(0, table.Count).Select(i =>
            {
                string[] ounces = table.Text(i, "mass_oz").Split('/');
                double mass = Ounce * (ounces.Length == 2 ? double.Parse(ounces[0], null) / double.Parse(ounces[1], null) : 1);
                SphereLure sphere = SphereLure.Of(mass, MetalDensity[table.Text(i, "metal")]);
                return (table.Value(i, "v_t_m_s"), FreeFall.TerminalSpeed(sphere, 1025, 1.08e-3 / 1025));
            }),
            5e-6, "m/s");
    }

    [Fact]
    public void A_sphere_of_constant_drag_falls_as_the_closed_form_says()
    {
        // Lead, 1/4 oz: v = v_t tanh(t/tau), z = v_t tau ln cosh(t/tau).
        (double T, double V, double Z)[] published =
        [
            (0.05, 0.418568, 0.010565), (0.1, 0.792380, 0.041100), (0.2, 1.317977, 0.149196), (0.5, 1.733726, 0.631525),
            (1, 1.760982, 1.509302), (2, 1.761199, 3.270479), (5, 1.761199, 8.554076),
        ];
        EngineRun run = Drop(tolerance: 1);
        var speeds = new List<(double, double)>();
        var depths = new List<(double, double)>();
        foreach ((double t, double v, double z) in published)
        {
            run.RunTo(t);
            speeds.Add((v, -run.Vz));
            depths.Add((z, -3 - run.Z));
        }

        const string Source = "closed form with added mass 1/2, worked elsewhere";
        ValidationLog.WorstAbsolute(CheckClass.SameEquations, Area, "Falling sphere of constant drag, speed from 0.05 to 5 s, default tolerance", Source, speeds, 2e-3, "m/s");
        ValidationLog.WorstAbsolute(CheckClass.SameEquations, Area, "Falling sphere of constant drag, depth from 0.05 to 5 s, default tolerance", Source, depths, 1e-3, "m");

        EngineRun tight = Drop(tolerance: 1e-3);
        tight.RunTo(2.982014);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, "Falling sphere of constant drag, depth at 2.982014 s", Source, 5, -3 - tight.Z, 2e-5, "m");
        tight.RunTo(5.820988);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, "Falling sphere of constant drag, depth at 5.820988 s", Source, 10, -3 - tight.Z, 2e-5, "m");
    }

    [Fact]
    public void A_sphere_with_its_drag_curve_reaches_the_terminal_speed()
    {
        SphereLure sphere = SphereLure.Of(Ounce / 4, 11340);
        EngineRun run = Drop(1, sphere, 1.08e-3);
        run.RunTo(4);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Sphere of 1/4 oz lead let go: speed after 4 s", "terminal_speeds table", 1.79376, -run.Vz, 1e-5, "m/s");
    }

    [Fact]
    public void A_light_ball_rises()
    {
        // Buoyant sphere, density 500: rises at the terminal speed of the same load.
        SphereLure sphere = SphereLure.Of(2e-3, 500);
        double terminal = FreeFall.TerminalSpeed(sphere, 1025, 1e-6);
        EngineRun run = Drop(1, sphere, 1.025e-3, start: -20);
        run.RunTo(5);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Buoyant ball let go at 20 m: speed after 5 s", "force balance with Brown & Lawler 2003", -terminal, run.Vz, 1e-5, "m/s");
    }

    [Fact]
    public void Order_in_time_is_two_where_nothing_is_stiff()
    {
        double Speed(double step)
        {
            EngineRun run = Drop(1, fixedStep: step);
            run.RunTo(0.2);
            return -run.Vz;
        }

        // Against much smaller steps: the closed form differs by the line's own mass.
        double exact = Speed(2.5e-4);
        double Error(double step) => Math.Abs(Speed(step) - exact);
        ValidationLog.Between(CheckClass.Identity, Area, "Order of the integrator on a falling body, steps 0.01 to 0.0025 s", "order 2 (Bank et al. 1985, Hosea & Shampine 1996)", 1.8, 2.2, Math.Log(Error(0.01) / Error(0.0025), 4));
    }

    // The engine always has a line: here 40 m of it, folded to and fro at the body so that it stays slack for the whole fall, of a nanogram a metre and
    // without drag. Its mass changes the fall by a relative 6e-6 (4e-8 of 7e-3 kg), the tension that the engine leaves in slack line by 1e-7 (1e-8 of 0.06 N).
    private static EngineRun Drop(double tolerance, LureProperties? body = null, double viscosity = 1.08e-3, double start = -3, double fixedStep = 0)
    {
        body ??= new ConstantDragLure
        {
            Mass = 7.087380781e-3,
            Volume = 6.249894869e-7,
            AddedMassCoefficient = 0.5,
            ContactRadius = 5.3e-3,
            Area = 0.45 * Math.PI / 4 * 10.60778470e-3 * 10.60778470e-3,
        };
        var nothing = new LineMaterial(2e-5, 1e-9, 1e5, 1e-12);
        var run = new EngineRun(
            body, LineProperties.Uniform(nothing), WaterColumn.Unbounded(1025, viscosity), LineDragLaw.Constant(0, 0), GivenBoundary.Fixed(0.05, start, 40),
            new EngineSettings { Segments = 8, Grading = 1, Tolerance = tolerance, FixedStep = fixedStep });
        run.Start(0, f => (0.05 * Math.Round(8 * f), 0.02 * Math.Round(8 * f), start));
        return run;
    }
}
