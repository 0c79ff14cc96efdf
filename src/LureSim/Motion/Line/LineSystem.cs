using System.Runtime.Intrinsics;
using LureSim.Stepping;

namespace LureSim.Motion.Line;

/// <summary>
/// Lure and line as a stiff system: an iteration solves one block-tridiagonal system of 3 x 3 blocks for the velocities; a free spool adds one bordering row and column.
/// Entries: the nodes from the lure, the rod tip (held), the line out (held unless the spool runs free).
/// </summary>
internal sealed class LineSystem : IStiffSystem
{
    // Tensions of the iteration fit when they are within this share of what the stretch says before its last step: a tension that is still on its way to slack would push.
    private const double TensionMismatch = 0.01;

    private readonly LineDynamics dynamics;
    private readonly ILineBoundary boundary;
    private readonly BlockTridiagonal matrix;
    private readonly int n;
    private readonly int free;
    private readonly int line;
    private readonly double[] border;
    private readonly double[] zero;
    private readonly double[] scratch;
    private readonly double[] tipPosition = new double[3];
    private readonly double[] tipVelocity = new double[3];
    private FreeSpool spool;
    private double heldLength;
    private double heldRate;
    private double heldAcceleration;
    private double borderDiagonal;

    public LineSystem(LineDynamics dynamics, ILineBoundary boundary)
    {
        this.dynamics = dynamics;
        this.boundary = boundary;
        n = dynamics.Segments;
        free = 3 * n;
        line = free + 3;
        matrix = new BlockTridiagonal(n);
        border = new double[free];
        zero = new double[line + 1];
        scratch = new double[line + 1];
    }

    /// <inheritdoc/>
    public int Size => line + 1;

    /// <summary>Entries of the free nodes.</summary>
    public int Free => free;

    /// <summary>Entry of the line out.</summary>
    public int Line => line;

    /// <summary>Tolerances in which increments and errors are measured.</summary>
    public StepControl Tolerances { get; set; } = StepControl.Default;

    /// <summary>Whether line leaves the spool by itself.</summary>
    public bool SpoolIsFree { get; private set; }

    /// <summary>Evaluations of the forces, with derivatives or without.</summary>
    public int Evaluations { get; private set; }

    /// <summary>Evaluations of the derivatives, each with a factorisation.</summary>
    public int Factorisations { get; private set; }

    /// <inheritdoc/>
    public bool Fits => dynamics.Mismatch < TensionMismatch;

    /// <summary>Opens the bail.</summary>
    public void Open(FreeSpool freeSpool)
    {
        spool = freeSpool;
        SpoolIsFree = true;
    }

    /// <summary>Closes the bail.</summary>
    public void Close() => SpoolIsFree = false;

    /// <summary>Forces on the free nodes at a state of the stage at hand (N).</summary>
    public void Evaluate(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, Span<double> force, bool derivatives)
    {
        if (SpoolIsFree) dynamics.Evaluate(position, velocity, position[line], velocity[line], 0, force, derivatives);
        else dynamics.Evaluate(position, velocity, heldLength, heldRate, heldAcceleration, force, derivatives);
        Evaluations++;
    }

    /// <summary>Accelerations from the forces of the last evaluation (m/s2).</summary>
    public void Accelerate(ReadOnlySpan<double> force, ReadOnlySpan<double> velocity, Span<double> acceleration)
    {
        acceleration.Clear();
        dynamics.Blocks.SolveMass(force, acceleration);
        acceleration[line] = SpoolIsFree ? (dynamics.Tension[n - 1] - spool.Resistance(velocity[line], out _)) / spool.Inertia : 0;
    }

    /// <summary>Forces that give the nodes the accelerations (N).</summary>
    public void Forces(ReadOnlySpan<double> acceleration, Span<double> force)
    {
        force.Clear();
        dynamics.Blocks.AddMassProduct(acceleration, zero, 1, force);
    }

    /// <summary>Powers at a state of the stage at hand, whose forces are given (W).</summary>
    public EnergyRates Powers(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, ReadOnlySpan<double> force) =>
        dynamics.EvaluatePowers(position, velocity, position[line], velocity[line], SpoolIsFree ? 0 : heldAcceleration, force);

    /// <inheritdoc/>
    public void BeginStep() => dynamics.BeginIteration();

    /// <inheritdoc/>
    public void BeginStage(double time)
    {
        boundary.Tip(time, tipPosition, tipVelocity);
        if (!SpoolIsFree) boundary.Line(time, out heldLength, out heldRate, out heldAcceleration);
    }

    /// <inheritdoc/>
    public void Hold(Span<double> position, Span<double> velocity)
    {
        tipPosition.CopyTo(position[free..]);
        tipVelocity.CopyTo(velocity[free..]);
        if (SpoolIsFree) return;
        position[line] = heldLength;
        velocity[line] = heldRate;
    }

    /// <inheritdoc/>
    public bool Iterate(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, ReadOnlySpan<double> baseVelocity, double g, bool renew, Span<double> increment)
    {
        if (SpoolIsFree && !(position[line] > 0)) return false;
        increment[free..].Clear();
        Evaluate(position, velocity, increment, renew);
        double tipTension = dynamics.Tension[n - 1], rate = velocity[line];
        if (renew)
        {
            dynamics.Blocks.Assemble(matrix, g);
            Factorisations++;
            if (!matrix.Factor()) return false;
            if (SpoolIsFree) PrepareBorder(g, rate);
        }

        dynamics.Blocks.AddMassProduct(velocity, baseVelocity, -1 / g, increment);
        matrix.Solve(increment);
        if (!SpoolIsFree) return true;
        double residual = tipTension - spool.Resistance(rate, out _) - (spool.Inertia * (rate - baseVelocity[line]) / g);
        double rateIncrement = (residual + TipProduct(increment, g)) / borderDiagonal;
        Spans.AddScaled(increment, border, rateIncrement);
        increment[line] = rateIncrement;
        return true;
    }

    /// <inheritdoc/>
    public void Follow(ReadOnlySpan<double> increment, double g, bool renewed) => dynamics.AdvanceIteration(increment, g, g * increment[line], renewed);

    /// <inheritdoc/>
    public bool FitsAt(ReadOnlySpan<double> position, ReadOnlySpan<double> increment, double g) => dynamics.MismatchAt(position, g * increment[line]) < TensionMismatch;

    /// <inheritdoc/>
    public double IncrementSize(ReadOnlySpan<double> increment, double g)
    {
        StepControl control = Tolerances;
        ReadOnlySpan<double> x = increment[..free];
        double own = SumOfSquares(x[..3]), rest = SumOfSquares(x[3..]);
        double scaleOwn = Math.Max(g / control.Position, 1 / control.Velocity), scaleRest = Math.Max(g / control.LinePosition, 1 / control.LineVelocity);
        double size = Math.Max(Math.Sqrt(own) * scaleOwn, Math.Sqrt(rest / Math.Max(1, n - 1)) * scaleRest);
        return SpoolIsFree ? Math.Max(size, Math.Abs(increment[line]) * Math.Max(g / control.LinePosition, 1 / control.LineVelocity)) : size;
    }

    /// <summary>
    /// e := (I - g J)^-1 e with the matrix of the last stage, e' of the velocities from W e' = M e_w/g + F_r e_r and e_r' = e_r + g e'. Axial vibrations of the line, which the
    /// method damps within the step, then do not set its length.
    /// </summary>
    public void Damp(Span<double> positionError, Span<double> velocityError, double g)
    {
        Array.Clear(scratch);
        dynamics.Blocks.AddMassProduct(velocityError, zero, 1 / g, scratch);
        dynamics.Blocks.AddPositionProduct(positionError, scratch);
        matrix.Solve(scratch);
        scratch.CopyTo(velocityError);
        Spans.AddScaled(positionError, scratch, g);
    }

    /// <inheritdoc/>
    public double ErrorSize(ReadOnlySpan<double> positionError, ReadOnlySpan<double> velocityError)
    {
        StepControl control = Tolerances;
        ReadOnlySpan<double> r = positionError[..free], w = velocityError[..free];
        double inverseR = 1 / control.Position, inverseW = 1 / control.Velocity, lineR = 1 / control.LinePosition, lineW = 1 / control.LineVelocity;
        double own = (SumOfSquares(r[..3]) * inverseR * inverseR) + (SumOfSquares(w[..3]) * inverseW * inverseW);
        double rest = (SumOfSquares(r[3..]) * lineR * lineR) + (SumOfSquares(w[3..]) * lineW * lineW);

        // The lure and the rest of the line are judged apart: the lure must not be averaged away by forty nodes.
        double error = Math.Sqrt(Math.Max(own, rest / Math.Max(1, n - 1)));
        return SpoolIsFree ? Math.Max(error, Math.Abs(positionError[line]) * lineR) : error;
    }

    private static double SumOfSquares(ReadOnlySpan<double> x)
    {
        int m = 0;
        Vector256<double> sum = Vector256<double>.Zero, other = Vector256<double>.Zero;
        for (; m <= x.Length - (2 * Lanes.Count); m += 2 * Lanes.Count)
        {
            Vector256<double> a = Vector256.Create(x.Slice(m, Lanes.Count)), b = Vector256.Create(x.Slice(m + Lanes.Count, Lanes.Count));
            sum = Lanes.Fma(a, a, sum);
            other = Lanes.Fma(b, b, other);
        }

        double total = Vector256.Sum(sum + other);
        for (; m < x.Length; m++) total += x[m] * x[m];
        return total;
    }

    // Column of the forces by the line's speed, solved, and the pivot of the bordering row.
    private void PrepareBorder(double g, double rate)
    {
        dynamics.LineColumn(g, border);
        matrix.Solve(border);
        spool.Resistance(rate, out double slope);
        borderDiagonal = (spool.Inertia / g) + slope - dynamics.TipTensionByRate - (g * dynamics.TipTensionByLine) - TipProduct(border, g);
    }

    private double TipProduct(ReadOnlySpan<double> x, double g)
    {
        double sum = 0;
        for (int m = 0; m < 3; m++) sum += (dynamics.TipTensionByVelocity[m] + (g * dynamics.TipTensionByPosition[m])) * x[free - 3 + m];
        return sum;
    }
}
