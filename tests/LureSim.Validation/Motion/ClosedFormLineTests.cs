using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Tackle;
using LureSim.Validation.Reference;
using LureSim.Water;

namespace LureSim.Validation.Motion;

/// <summary>Lines whose shape is known in closed form: catenaries, Pode's cable, the critical angle, the pendulum.</summary>
public class ClosedFormLineTests
{
    private const string Area = "Motion: closed forms";
    private const double Gravity = 9.80665;
    private const double Density = 1025;

    // Segments of the hanging lines: a polygon of 40 misses the catenary's tension by 0.15 %, one of 100 by 0.03 %.
    private const int Fine = 100;

    [Fact]
    public void Inextensible_catenary()
    {
        // H = 2, w = 1, x = 3: y = 2.704819230, s = 4.258558910, T = 4.704819230, slope 64.843258 deg at the upper end.
        const string Source = "closed form, worked elsewhere";
        (double upper, double lower, double slope, _) = Rigid(3, 2.704819230, 4.258558910, 2e4);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Catenary H 2, w 1, x 3: tension at the upper end", Source, 4.704819230, upper, 1e-3, "N");
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Catenary H 2, w 1, x 3: tension at the lower end", Source, 2, lower, 1e-3, "N");
        ValidationLog.Absolute(CheckClass.SameEquations, Area, "Catenary H 2, w 1, x 3: slope at the upper end", Source, 64.843258, slope * 180 / Math.PI, 0.1, "deg");

        // Length 2 over a level span of 1: H/w = 0.229640215, sag 0.796388356, end tension 1.026028571 w.
        (double end, _, _, double sag) = Rigid(1, 0, 2, 2e3);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, "Catenary of length 2 over a level span of 1: sag", Source, 0.796388356, sag, 1e-3, "m");
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Catenary of length 2 over a level span of 1: end tension", Source, 1.026028571, end, 1e-3, "N");

        // The engine's line always stretches; the figures change by parts in a thousand, linearly in 1/EA: two stiffnesses give the limit.
        static (double Upper, double Lower, double Slope, double Sag) Rigid(double x, double y, double length, double stiffness)
        {
            (double Upper, double Lower, double Slope, double Sag) At(double ea)
            {
                EngineRun run = Hang(x, y, length, 1, ea);
                double lowest = Enumerable.Range(0, Fine + 1).Min(j => run.Node(j).Z);
                return (run.TipTensionExtrapolated, run.LureTensionExtrapolated, run.TipAngle, run.Node(Fine).Z - lowest);
            }

            var (a, b) = (At(0.5 * stiffness), At(stiffness));
            return ((2 * b.Upper) - a.Upper, (2 * b.Lower) - a.Lower, (2 * b.Slope) - a.Slope, (2 * b.Sag) - a.Sag);
        }
    }

    [Fact]
    public void Elastic_catenary()
    {
        EngineRun run = Hang(2.989526435, 2.055551275, 3, 1, 10);
        const string Source = "closed form, worked elsewhere";
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Elastic catenary EA 10, H 2, w 1, length 3: tension at the upper end", Source, 3.605551275, run.TipTensionExtrapolated, 1e-3, "N");
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Elastic catenary EA 10, H 2, w 1, length 3: tension at the lower end", Source, 2, run.LureTensionExtrapolated, 1e-3, "N");
    }

    [Fact]
    public void Near_taut_mooring_line()
    {
        // Ends of a static test of MoorPy (Hall et al. 2021). Its printed answer, H 56804.6 and V 60803.4 N, is that of a straight spring: the sag, which the elastic
        // catenary has, adds 2.8 %. The expected values are those of the catenary's equations, solved elsewhere. The engine's floor under the length of
        // a segment is worth 5e-7 of strain, here 0.4 % of the tension.
        EngineRun run = Hang(246.22420940932947, 263.55766330843164, 360.63566262396927, 3.08735, 7e8);
        double angle = run.TipAngle, tension = run.TipTensionExtrapolated;
        const string Source = "elastic catenary, solved elsewhere; ends of a MoorPy test";
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Near-taut mooring line, EA 7e8 N: horizontal end force", Source, 58377.249, tension * Math.Cos(angle), 5e-3, "N");
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Near-taut mooring line, EA 7e8 N: vertical end force", Source, 63044.421, tension * Math.Sin(angle), 5e-3, "N");
    }

    [Theory]
    [InlineData(1.0, 45.0, 0.414213562, 0.881373587)]
    [InlineData(5.0, 11.309932, 4.099019514, 2.312438341)]
    public void Weightless_line_across_a_stream(double length, double angle, double x, double y)
    {
        EngineRun run = Stream(weightOverDrag: 0, reduced: length, out double scale);
        string name = FormattableString.Invariant($"Weightless line, s R/T0 = {length}");
        const string Source = "closed form, worked elsewhere";
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"{name}: x R/T0", Source, x, run.X / scale, 1e-3);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"{name}: y R/T0", Source, y, (-50 - run.Z) / scale, 1e-3);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"{name}: angle at the tip", Source, angle, run.TipAngle * 180 / Math.PI, 0.1, "deg");
        ValidationLog.Relative(CheckClass.SameEquations, Area, $"{name}: T/T0", Source, 1, run.TipTensionExtrapolated, 1e-3);
    }

    [Theory]
    [InlineData(0.0, 0.02, 1.1000000, 11.851063, 4.0857170, 2.3449089)]
    [InlineData(0.1, 0.0, 1.2746334, 20.398279, 3.9064338, 2.7463336)]
    [InlineData(0.1, 0.02, 1.3767855, 20.679202, 3.8940019, 2.7678553)]
    [InlineData(0.5, 0.02, 2.9634805, 40.254413, 3.1782949, 3.7269610)]
    [InlineData(1.0, 0.02, 5.3696147, 53.374010, 2.5085400, 4.2696147)]
    public void Heavy_cable_in_a_stream(double weight, double friction, double tension, double angle, double x, double y)
    {
        // Pode's equations with T0 = R = 1 and the stream along +x: the cable starts across the stream and rises against it.
        string name = FormattableString.Invariant($"Cable of w/R {weight}, F/R {friction}, s R/T0 = 5");
        const string Source = "Pode 1951, equations integrated elsewhere";
        var (px, pz, tx, tz) = SteadyLine.Integrate((0, 1), 5, (a, b) =>
        {
            double t = Math.Sqrt((a * a) + (b * b)), cos = -a / t, sin = b / t;

            // dT/ds = w sin + F; T dphi/ds = -(R sin^2 - w cos), phi the angle to the stream; the tension vector points up and against the stream.
            double along = (weight * sin) + friction, across = -((sin * sin) - (weight * cos));
            return ((-along * cos) + (across * sin), (along * sin) + (across * cos));
        });
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"Shooting: {name}, x R/T0", Source, x, -px, 2e-7);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"Shooting: {name}, y R/T0", Source, y, pz, 2e-7);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"Shooting: {name}, T/T0", Source, tension, Math.Sqrt((tx * tx) + (tz * tz)), 2e-7);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"Shooting: {name}, angle", Source, angle, Math.Atan2(tz, -tx) * 180 / Math.PI, 2e-6, "deg");
        if (friction != 0) return;

        // The engine's friction goes with the velocity along the line, not Pode's constant F: compared where F is nil.
        EngineRun run = Stream(weight, 5, out double scale);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"Engine: {name}, x R/T0", Source, x, run.X / scale, 1e-3);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"Engine: {name}, y R/T0", Source, y, (-50 - run.Z) / scale, 1e-3);
        ValidationLog.Relative(CheckClass.SameEquations, Area, $"Engine: {name}, T/T0", Source, tension, run.TipTensionExtrapolated, 1e-3);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, $"Engine: {name}, angle", Source, angle, run.TipAngle * 180 / Math.PI, 0.1, "deg");
    }

    [Fact]
    public void Critical_angle_of_a_cable_without_a_body()
    {
        (double Q, double Angle)[] pode =
        [
            (0.01, 5.724793), (0.1, 17.964236), (0.2, 25.178392), (0.5, 38.668282), (1, 51.827292), (2, 65.530199), (5, 78.896471), (10, 84.317287),
        ];
        ValidationLog.WorstAbsolute(
            CheckClass.SameEquations, Area, "Critical angle, w/R from 0.01 to 10", "Pode 1951, closed form",
            pode.Select(p =>
            {
                // R = 1/2 rho d Cn U^2. The angle depends neither on stretch (weight and drag go with the unstretched length) nor on friction
                // along the line, which is there to quieten it.
                const double Diameter = 0.01;
                double resistance = 0.5 * Density * Diameter * 3;
                var body = new ConstantDragLure { Mass = 1e-3, Volume = 1e-3 / Density, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = 0 };
                var run = new EngineRun(
                    body, LineProperties.Uniform(Wet(Diameter, p.Q * resistance, 2000 * p.Q * resistance)), WaterColumn.Unbounded(Density, 1e-3, 1), LineDragLaw.Constant(3, 0.1),
                    GivenBoundary.Fixed(0, -50, 20), new EngineSettings { MaximumStep = 20, Tolerance = 0.1 });
                run.Start(0, f => (0, 0, -50 - (20 * (1 - f))));
                run.RunTo(2000);
                return (p.Angle, Math.Atan2(-50 - run.Z, run.X) * 180 / Math.PI);
            }),
            0.02, "deg");
    }

    [Theory]
    [InlineData(5.0, 11340)]
    [InlineData(1.0, 2500)]
    public void Pendulum_in_water_without_drag(double length, double density)
    {
        // 2 pi sqrt(L (m + Ca rho V)/((m - rho V) g)) (1 + a^2/16), a = 3 degrees; the line, 20 microns thick and neutrally buoyant, adds a third of its mass.
        const double Mass = 10e-3;
        double volume = Mass / density;
        var body = new ConstantDragLure { Mass = Mass, Volume = volume, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = 0 };
        var thin = new LineMaterial(2e-5, 3e-10 * Density, 1e4, 3e-10);
        double amplitude = 3 * Math.PI / 180;
        double added = 2 * 3e-10 * Density * length / 3;
        double period = 2 * Math.PI * Math.Sqrt(length * (Mass + (0.5 * Density * volume) + added) / ((Mass - (Density * volume)) * Gravity)) * (1 + (amplitude * amplitude / 16));
        var run = new EngineRun(
            body, LineProperties.Uniform(thin), WaterColumn.Unbounded(Density, 1e-3), LineDragLaw.Constant(0, 0), GivenBoundary.Fixed(0, -50, length),
            new EngineSettings { Segments = 4, Grading = 1, Tolerance = 0.005, MaximumStep = 0.05 });
        run.Start(0, f => (length * (1 - f) * Math.Sin(amplitude), 0, -50 - (length * (1 - f) * Math.Cos(amplitude))));

        // Downward crossings of x = 0, by the cubic through the ends of a step.
        var crossings = new List<double>();
        double before = run.X, rateBefore = run.Vx;
        run.RunTo(10.6 * period, step =>
        {
            if (before > 0 && run.X <= 0)
            {
                double x0 = before, x1 = run.X, m0 = rateBefore * step, m1 = run.Vx * step;
                double Cubic(double u) => ((1 + (2 * u)) * (1 - u) * (1 - u) * x0) + (u * (1 - u) * (1 - u) * m0) + (u * u * (3 - (2 * u)) * x1) + (u * u * (u - 1) * m1);
                crossings.Add(run.Time - step + (step * MathNet.Numerics.RootFinding.Brent.FindRoot(Cubic, 0, 1, 1e-12)));
            }

            before = run.X;
            rateBefore = run.Vx;
        });
        double measured = (crossings[^1] - crossings[0]) / (crossings.Count - 1);
        ValidationLog.Relative(
            CheckClass.SameEquations, Area, FormattableString.Invariant($"Pendulum in water, {length} m, body of {density} kg/m3, mean of {crossings.Count - 1} periods"), "closed form with added mass 1/2", period, measured, 2e-4, "s");
    }

    // A line of a given wet weight (N/m).
    private static LineMaterial Wet(double diameter, double weight, double stiffness)
    {
        double area = Math.PI * diameter * diameter / 4;
        return new LineMaterial(diameter, (weight / Gravity) + (Density * area), stiffness, area);
    }

    // The tolerance is a hundredth of the default: a stiff line in still water, which only its own drag quietens, rings on and on at the default.
    // A line between two fixed points in still water, the lower (or equal) end an immovable body of neutral buoyancy; weight is the wet weight (N/m).
    private static EngineRun Hang(double x, double y, double length, double weight, double stiffness)
    {
        const double TipZ = -500;
        var run = new EngineRun(
            Anchor.In(Density), LineProperties.Uniform(Wet(0.005, weight, stiffness)), WaterColumn.Unbounded(Density, 1e-3), LineDragLaw.Constant(1.2, 0.05),
            GivenBoundary.Fixed(x, TipZ, length), new EngineSettings { Segments = Fine, Grading = 1, MaximumStep = 20, Tolerance = 0.01 });

        // Two straight legs of the right length, or a straight line where it is stretched.
        double chord = Math.Sqrt((x * x) + (y * y)), dip = 0.5 * Math.Sqrt(Math.Max(0, (length * length) - (chord * chord)));
        double px = (0.5 * x) + (dip * y / chord), py = (0.5 * y) - (dip * x / chord);
        run.Start(0, f => f < 0.5 ? (2 * f * px, 0, TipZ - y + (2 * f * py)) : (px + ((2 * f - 1) * (x - px)), 0, TipZ - y + py + ((2 * f - 1) * (y - py))));
        run.RunTo(3000);
        return run;
    }

    // A line in a uniform stream with a body of wet weight T0 = 1 N and no drag of its own; scale is T0/R (m).
    private static EngineRun Stream(double weightOverDrag, double reduced, out double scale)
    {
        const double Diameter = 1e-3, Speed = 0.5, Normal = 1.2;
        double resistance = 0.5 * Density * Diameter * Normal * Speed * Speed;
        scale = 1 / resistance;
        double length = reduced * scale;
        const double Volume = 1e-6;
        var body = new ConstantDragLure { Mass = (1 / Gravity) + (Density * Volume), Volume = Volume, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = 0 };
        var run = new EngineRun(
            body, LineProperties.Uniform(Wet(Diameter, weightOverDrag * resistance, 2e4)), WaterColumn.Unbounded(Density, 1e-3, Speed), LineDragLaw.Constant(Normal, 0),
            GivenBoundary.Fixed(0, -50, length), new EngineSettings { MaximumStep = 50 });
        run.Start(0, f => (0, 0, -50 - (length * (1 - f) * (1 + 5e-5))));
        run.RunTo(5000);
        return run;
    }
}
