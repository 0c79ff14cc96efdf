using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Motion;
using LureSim.Motion.Line;
using LureSim.Stepping;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Validation.Reference;

/// <summary>Rod tip and line out as given functions of time.</summary>
internal sealed class GivenBoundary : ILineBoundary
{
    /// <summary>Tip position (m) and velocity (m/s) at a time.</summary>
    public required Func<double, (double X, double Y, double Z, double Vx, double Vy, double Vz)> TipAt { get; init; }

    /// <summary>Line out (m), rate (m/s) and acceleration (m/s2) at a time.</summary>
    public required Func<double, (double Length, double Rate, double Acceleration)> LineAt { get; init; }

    /// <summary>A fixed tip and a fixed length.</summary>
    public static GivenBoundary Fixed(double x, double z, double length) =>
        new() { TipAt = _ => (x, 0, z, 0, 0, 0), LineAt = _ => (length, 0, 0) };

    public void Tip(double time, Span<double> position, Span<double> velocity) =>
        (position[0], position[1], position[2], velocity[0], velocity[1], velocity[2]) = TipAt(time);

    public void Line(double time, out double length, out double rate, out double acceleration) => (length, rate, acceleration) = LineAt(time);
}

/// <summary>Numerical settings of a run of the engine.</summary>
internal sealed record EngineSettings
{
    /// <summary>Segments; the product's default.</summary>
    public int Segments { get; init; } = new SimulationOptions().Segments;

    /// <summary>Grading exponent; the product's default.</summary>
    public double Grading { get; init; } = new SimulationOptions().Grading;

    /// <summary>Axial damping ratio; the product's default.</summary>
    public double Damping { get; init; } = new SimulationOptions().AxialDampingRatio;

    /// <summary>Method; the product's.</summary>
    public EsdirkTableau Method { get; init; } = EsdirkTableau.TrBdf2;

    /// <summary>Factor on the tolerances.</summary>
    public double Tolerance { get; init; } = 1;

    /// <summary>Largest step (s).</summary>
    public double MaximumStep { get; init; } = StepControl.Default.MaximumStep;

    /// <summary>A fixed step (s), without error control; 0 for adaptive steps.</summary>
    public double FixedStep { get; init; }
}

/// <summary>
/// Drives the engine's integrator through a case that the public commands do not state: given tip, given line, any initial shape.
/// All contact of the reference tests with the engine's internals is here.
/// </summary>
internal sealed class EngineRun
{
    // No case here needs a tenth of it: a test fails rather than hangs.
    private const int StepLimit = 200_000;

    private readonly LineDynamics dynamics;
    private readonly LineIntegrator integrator;
    private readonly EngineSettings settings;
    private readonly StepControl control;
    private double step = 1e-3;

    public EngineRun(LureProperties lure, LineProperties line, WaterColumn water, LineDragLaw law, ILineBoundary boundary, EngineSettings? settings = null)
    {
        this.settings = settings ?? new EngineSettings();
        dynamics = new LineDynamics(lure, line, water, law, new LineMesh(this.settings.Segments, this.settings.Grading, this.settings.Damping));
        integrator = new LineIntegrator(dynamics, boundary, this.settings.Method);
        control = StepControl.Default.Scaled(this.settings.Tolerance) with { MaximumStep = this.settings.MaximumStep, MinimumStep = 1e-10 };
    }

    public int Segments => settings.Segments;

    public double Time => integrator.Time;

    public int Steps { get; private set; }

    public int Rejected { get; private set; }

    public int Evaluations => integrator.Evaluations;

    public double X => integrator.Position[0];

    public double Y => integrator.Position[1];

    public double Z => integrator.Position[2];

    public double Vx => integrator.Velocity[0];

    public double Vy => integrator.Velocity[1];

    public double Vz => integrator.Velocity[2];

    /// <summary>Tension of the segment at the rod tip (N).</summary>
    public double TipTension => dynamics.Tension[^1];

    /// <summary>Tension of the segment at the lure (N).</summary>
    public double LureTension => dynamics.Tension[0];

    /// <summary>Tension of a segment (N), 0 at the lure.</summary>
    public double TensionOf(int segment) => dynamics.Tension[segment];

    /// <summary>Position of a node, 0 the lure, N the tip.</summary>
    public (double X, double Y, double Z) Node(int node) => (integrator.Position[3 * node], integrator.Position[(3 * node) + 1], integrator.Position[(3 * node) + 2]);

    /// <summary>Fraction of the line out at a node, from the lure.</summary>
    public double Fraction(int node) => dynamics.Fractions[node];

    public double LineOut => integrator.LineOut;

    public StoredEnergy Energy => integrator.StoredEnergy;

    /// <summary>
    /// Angle of the line below the horizontal at the tip (radians), extrapolated from the middles of the last two segments, to which the engine's angles belong.
    /// </summary>
    public double TipAngle => AtTip(SegmentAngle(Segments - 1), SegmentAngle(Segments - 2));

    /// <summary>Tension at the tip itself (N), extrapolated likewise.</summary>
    public double TipTensionExtrapolated => AtTip(dynamics.Tension[Segments - 1], dynamics.Tension[Segments - 2]);

    /// <summary>Tension at the lure itself (N), extrapolated likewise.</summary>
    public double LureTensionExtrapolated
    {
        get
        {
            double m0 = 0.5 * (Fraction(0) + Fraction(1)), m1 = 0.5 * (Fraction(1) + Fraction(2));
            return dynamics.Tension[0] - ((dynamics.Tension[1] - dynamics.Tension[0]) * m0 / (m1 - m0));
        }
    }

    /// <summary>Sets the initial shape and velocity by fraction of the line from the lure.</summary>
    public void Start(double time, Func<double, (double X, double Y, double Z)> shape, Func<double, (double X, double Y, double Z)>? motion = null)
    {
        int n = settings.Segments;
        double[] position = new double[3 * n];
        double[] velocity = new double[3 * n];
        for (int j = 0; j < n; j++)
        {
            (position[3 * j], position[(3 * j) + 1], position[(3 * j) + 2]) = shape(dynamics.Fractions[j]);
            if (motion is not null) (velocity[3 * j], velocity[(3 * j) + 1], velocity[(3 * j) + 2]) = motion(dynamics.Fractions[j]);
        }

        integrator.Initialise(time, position, velocity);
        integrator.Prepare();
    }

    /// <summary>Starts from the state of another run of the same rig and segments.</summary>
    public void StartFrom(EngineRun other)
    {
        int n = settings.Segments;
        integrator.Initialise(other.Time, other.integrator.Position[..(3 * n)], other.integrator.Velocity[..(3 * n)]);
        integrator.Prepare();
    }

    /// <summary>Positions and then velocities of the free nodes.</summary>
    public MathNet.Numerics.LinearAlgebra.Vector<double> State() => MathNet.Numerics.LinearAlgebra.Vector<double>.Build.DenseOfArray(
        [.. integrator.Position[..(3 * Segments)], .. integrator.Velocity[..(3 * Segments)]]);

    private double SegmentAngle(int k)
    {
        var (x1, y1, z1) = Node(k + 1);
        var (x0, y0, z0) = Node(k);
        return Math.Atan2(z1 - z0, Math.Sqrt(((x1 - x0) * (x1 - x0)) + ((y1 - y0) * (y1 - y0))));
    }

    private double AtTip(double last, double before)
    {
        int n = Segments;
        double m1 = 0.5 * (Fraction(n) + Fraction(n - 1)), m0 = 0.5 * (Fraction(n - 1) + Fraction(n - 2));
        return last + ((last - before) * (1 - m1) / (m1 - m0));
    }

    public void OpenBail(FreeSpool spool) => integrator.OpenBail(spool);

    public void CloseBail() => integrator.CloseBail();

    /// <summary>Advances to a time exactly; tensions and energies are then those of that time.</summary>
    /// <param name="time">Target (s).</param>
    /// <param name="afterStep">Called with the length of each accepted step (s), the state being at its end.</param>
    public void RunTo(double time, Action<double>? afterStep = null)
    {
        if (settings.FixedStep > 0)
        {
            int count = (int)Math.Round((time - integrator.Time) / settings.FixedStep);
            for (int i = 0; i < count; i++)
            {
                if (double.IsInfinity(integrator.TryStep(settings.FixedStep, control)))
                    throw new InvalidOperationException(FormattableString.Invariant($"A fixed step of {settings.FixedStep} s was not solved at {integrator.Time:F4} s."));
                integrator.Accept(settings.FixedStep);
                Steps++;
                if (afterStep is null) continue;
                integrator.Prepare();
                afterStep(settings.FixedStep);
            }

            integrator.Prepare();
            return;
        }

        while (time - integrator.Time > 1e-12)
        {
            double remaining = time - integrator.Time;
            if (Steps + Rejected > StepLimit) throw new InvalidOperationException(FormattableString.Invariant($"The engine took {StepLimit} steps to {integrator.Time:F4} s."));
            bool clipped = step >= remaining;
            double trial = clipped ? remaining : step;
            double error = integrator.TryStep(trial, control);
            double factor = double.IsInfinity(error) ? 0.1 : Math.Clamp(0.9 * Math.Pow(Math.Max(error, 1e-9), -1.0 / 3), 0.2, 3);
            if (error > 1)
            {
                Rejected++;
                step = trial * Math.Min(factor, 0.9);
                if (step < control.MinimumStep) throw new InvalidOperationException(FormattableString.Invariant($"The engine's step fell to {step:E1} s at {integrator.Time:F4} s."));
                continue;
            }

            integrator.Accept(trial);
            Steps++;
            if (!clipped || factor < 1) step = Math.Min(trial * factor, control.MaximumStep);
            if (afterStep is null) continue;
            integrator.Prepare();
            afterStep(trial);
        }

        integrator.Prepare();
    }
}
