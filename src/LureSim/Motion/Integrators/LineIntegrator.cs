using System.Numerics;

namespace LureSim.Motion.Integrators;

/// <summary>What happens at the rod end of the line, as functions of time.</summary>
internal interface ILineBoundary
{
    /// <summary>Rod tip position (m) and velocity (m/s).</summary>
    void Tip(double time, Span<double> position, Span<double> velocity);

    /// <summary>Unstretched line out (m), its rate (m/s, negative when reeling) and acceleration (m/s2); not called while the spool runs free.</summary>
    void Line(double time, out double length, out double rate, out double acceleration);
}

/// <summary>An open bail: line leaves the spool against a small friction.</summary>
/// <param name="Friction">Tension below which no line leaves (N).</param>
/// <param name="Damping">Further tension for each m/s of line speed (N s/m).</param>
/// <param name="Inertia">Mass of the moving line between spool and tip (kg).</param>
internal readonly record struct FreeSpool(double Friction, double Damping, double Inertia)
{
    // Line speed at which friction has reached 70 % of its full value (m/s).
    private const double FrictionSpeed = 0.01;

    /// <summary>Resistance (N) at a line speed (m/s) and its derivative.</summary>
    public double Resistance(double rate, out double slope)
    {
        double root = Math.Sqrt((rate * rate) + (FrictionSpeed * FrictionSpeed));
        slope = (Friction * FrictionSpeed * FrictionSpeed / (root * root * root)) + Damping;
        return (Friction * rate / root) + (Damping * rate);
    }
}

/// <summary>Tolerances and limits of the adaptive integration. The line's own tolerances are wider: what counts of its error is what reaches the lure.</summary>
/// <param name="Position">Absolute tolerance on the lure's position per step (m).</param>
/// <param name="Velocity">Absolute tolerance on the lure's velocity per step (m/s).</param>
/// <param name="LinePosition">Absolute tolerance on the line's position per step (m).</param>
/// <param name="LineVelocity">Absolute tolerance on the line's velocity per step (m/s).</param>
/// <param name="MaximumStep">Largest step (s).</param>
/// <param name="MinimumStep">Step below which the run is given up (s).</param>
internal readonly record struct StepControl(double Position, double Velocity, double LinePosition, double LineVelocity, double MaximumStep, double MinimumStep)
{
    /// <summary>Values measured to keep the depth of a retrieve within a few millimetres (docs/motion.md).</summary>
    public static StepControl Default => new(5e-5, 2.5e-3, 6e-4, 0.12, 1, 1e-7);

    /// <summary>All tolerances multiplied by a factor.</summary>
    public StepControl Scaled(double factor) =>
        this with { Position = Position * factor, Velocity = Velocity * factor, LinePosition = LinePosition * factor, LineVelocity = LineVelocity * factor };
}

/// <summary>
/// Advances lure and line by a diagonally implicit Runge-Kutta method whose stages are solved by Newton's method. Positions are eliminated, so that an iteration solves one
/// block-tridiagonal system of 3 x 3 blocks for the velocities; a free spool adds one bordering row and column.
/// </summary>
internal sealed class LineIntegrator
{
    // Newton ends when what is left of the iteration is below this share of the tolerance: a line that is stiff along itself turns what is left into tension.
    private const double NewtonTolerance = 3e-3;

    // The matrix is kept for the next iteration when an increment is below this share of the tolerance and shrinks faster than that.
    private const double SmallIncrement = 0.1;
    private const double FastContraction = 0.15;

    // And when the tensions of the iteration are within this share of what the stretch says before its last step: a tension that is still on its way to slack would push.
    private const double TensionMismatch = 0.01;

    // An iteration is taken for the last one where the curvature seen in solutions before says that the next increment would be below this share of the tolerance, if the tensions fit there.
    // After so many stages in a row the curvature is seen anew.
    private const double PredictedTolerance = 0.01;
    private const int UnseenLimit = 4;

    private const int IterationLimit = 12;

    private readonly LineDynamics dynamics;
    private readonly EsdirkTableau tableau;
    private readonly ILineBoundary boundary;
    private readonly BlockTridiagonal matrix;
    private readonly int n;
    private readonly int size;
    private readonly double[][] stageW;
    private readonly double[][] stageA;
    private readonly double[] stageRate;
    private readonly double[] stageRateA;
    private readonly double[] acceleration;
    private readonly double[] previousVelocity;
    private readonly double[] baseR;
    private readonly double[] baseW;
    private readonly double[] trialR;
    private readonly double[] trialW;
    private readonly double[] increment;
    private readonly double[] force;
    private readonly double[] border;
    private readonly double[] errorR;
    private readonly double[] errorW;
    private readonly double[] zero;

    // By stage: the second increment of Newton's method over the square of the first, and the stages since it was seen.
    private readonly double[] curvature;
    private readonly int[] unseen;
    private FreeSpool spool;
    private double spoolAcceleration;
    private double previousRate;
    private double previousStep;
    private double borderDiagonal;
    private bool accelerationValid;
    private bool evaluated;

    public LineIntegrator(LineDynamics dynamics, ILineBoundary boundary, EsdirkTableau tableau)
    {
        this.dynamics = dynamics;
        this.boundary = boundary;
        this.tableau = tableau;
        n = dynamics.Segments;
        size = 3 * n;
        matrix = new BlockTridiagonal(n);
        stageW = new double[tableau.Stages][];
        stageA = new double[tableau.Stages][];
        for (int i = 0; i < tableau.Stages; i++)
        {
            stageW[i] = new double[size];
            stageA[i] = new double[size];
        }

        stageRate = new double[tableau.Stages];
        curvature = new double[tableau.Stages];
        unseen = new int[tableau.Stages];
        stageRateA = new double[tableau.Stages];
        acceleration = new double[size];
        previousVelocity = new double[size];
        Position = new double[size + 3];
        Velocity = new double[size + 3];
        NextPosition = new double[size + 3];
        NextVelocity = new double[size + 3];
        trialR = new double[size + 3];
        trialW = new double[size + 3];
        baseR = new double[size];
        baseW = new double[size];
        increment = new double[size];
        force = new double[size];
        border = new double[size];
        errorR = new double[size];
        errorW = new double[size];
        zero = new double[size];
    }

    public double Time { get; private set; }

    public double[] Position { get; }

    public double[] Velocity { get; }

    public double[] NextPosition { get; }

    public double[] NextVelocity { get; }

    public double LineOut { get; private set; }

    public double LineRate { get; private set; }

    public double NextLineOut { get; private set; }

    public double NextLineRate { get; private set; }

    public bool SpoolIsFree { get; private set; }

    /// <summary>Evaluations of the forces, with derivatives or without.</summary>
    public int Evaluations { get; private set; }

    /// <summary>Evaluations of the derivatives, each with a factorisation.</summary>
    public int Factorisations { get; private set; }

    public LineDynamics Dynamics => dynamics;

    /// <summary>Method.</summary>
    public EsdirkTableau Tableau => tableau;

    /// <summary>Powers at the current state (W).</summary>
    public EnergyRates Powers { get; private set; }

    /// <summary>Powers at the start of the step that was accepted last (W).</summary>
    public EnergyRates PreviousPowers { get; private set; }

    /// <summary>Energy of the current state, the tensions by their law.</summary>
    public StoredEnergy StoredEnergy => dynamics.EvaluateStoredEnergy(Position, Velocity, LineOut);

    /// <summary>Sets the state: node positions and velocities without the tip, which the boundary gives.</summary>
    public void Initialise(double time, ReadOnlySpan<double> position, ReadOnlySpan<double> velocity)
    {
        position[..size].CopyTo(Position);
        velocity[..size].CopyTo(Velocity);
        Time = time;
        boundary.Tip(time, Position.AsSpan(size, 3), Velocity.AsSpan(size, 3));
        boundary.Line(time, out double length, out double rate, out _);
        LineOut = length;
        LineRate = rate;
        Restart();
    }

    /// <summary>Opens the bail: line out becomes part of the state.</summary>
    public void OpenBail(FreeSpool freeSpool)
    {
        spool = freeSpool;
        SpoolIsFree = true;
        LineRate = 0;
        Restart();
    }

    /// <summary>Closes the bail: from now on the boundary gives the line out.</summary>
    public void CloseBail()
    {
        SpoolIsFree = false;
        Restart();
    }

    /// <summary>
    /// Evaluates the forces at the current state, which puts tensions and powers of <see cref="Dynamics"/> there.
    /// </summary>
    public void Prepare()
    {
        if (evaluated && accelerationValid) return;
        EvaluateAt(Time, Position, Velocity, LineOut, LineRate, increment, false);
        evaluated = true;
        dynamics.KeepTensions(false);
        if (accelerationValid) return;
        dynamics.Blocks.SolveMass(increment, acceleration);
        spoolAcceleration = SpoolIsFree ? (dynamics.Tension[n - 1] - spool.Resistance(LineRate, out _)) / spool.Inertia : 0;
        previousStep = 0;
        accelerationValid = true;
        increment.CopyTo(force, 0);
        Powers = EvaluatePowers();
    }

    /// <summary>Computes a trial step into the Next properties and returns its error in units of the tolerance (infinite if it failed).</summary>
    public double TryStep(double step, in StepControl control)
    {
        if (!accelerationValid) Prepare();
        evaluated = false;
        dynamics.BeginIteration();
        Velocity.AsSpan(0, size).CopyTo(stageW[0]);
        acceleration.CopyTo(stageA[0], 0);
        stageRate[0] = LineRate;
        stageRateA[0] = spoolAcceleration;
        double g = tableau.Gamma * step;
        for (int i = 1; i < tableau.Stages; i++)
        {
            Position.AsSpan(0, size).CopyTo(baseR);
            Velocity.AsSpan(0, size).CopyTo(baseW);
            double baseLine = LineOut, baseRate = LineRate;
            for (int j = 0; j < i; j++)
            {
                double a = step * tableau.GetA(i, j);
                AddScaled(baseR, stageW[j], a);
                AddScaled(baseW, stageA[j], a);
                baseLine += a * stageRate[j];
                baseRate += a * stageRateA[j];
            }

            double rate = Predict(i, step);
            if (!SolveStage(i, Time + (tableau.C[i] * step), g, baseLine, baseRate, ref rate, tableau.C[i] != tableau.C[i - 1], control)) return double.PositiveInfinity;
            trialW.AsSpan(0, size).CopyTo(stageW[i]);
            double inverse = 1 / g;
            double[] stage = stageA[i];
            for (int m = 0; m < size; m++) stage[m] = (trialW[m] - baseW[m]) * inverse;
            stageRate[i] = rate;
            stageRateA[i] = (rate - baseRate) * inverse;
            NextLineOut = baseLine + (g * rate);
            NextLineRate = rate;
        }

        double next = Time + step;
        double[] w = stageW[tableau.Stages - 1];
        w.CopyTo(NextVelocity.AsSpan());
        for (int m = 0; m < size; m++) NextPosition[m] = baseR[m] + (g * w[m]);
        boundary.Tip(next, NextPosition.AsSpan(size, 3), NextVelocity.AsSpan(size, 3));
        if (!SpoolIsFree)
        {
            boundary.Line(next, out double length, out double lineRate, out _);
            NextLineOut = length;
            NextLineRate = lineRate;
        }

        return EstimateError(step, control);
    }

    /// <summary>The node that moved most in the last iteration, 0 for the lure.</summary>
    public int WorstNode(out double depth)
    {
        int worst = 0;
        double largest = -1;
        for (int m = 0; m < size; m++)
        {
            double value = double.IsNaN(increment[m]) ? double.MaxValue : Math.Abs(increment[m]);
            if (value <= largest) continue;
            largest = value;
            worst = m / 3;
        }

        depth = -Position[(3 * worst) + 2];
        return worst;
    }

    /// <summary>Makes the trial step the current state.</summary>
    public void Accept(double step)
    {
        Velocity.AsSpan(0, size).CopyTo(previousVelocity);
        previousRate = LineRate;
        previousStep = step;
        NextPosition.CopyTo(Position.AsSpan());
        NextVelocity.CopyTo(Velocity.AsSpan());
        stageA[tableau.Stages - 1].CopyTo(acceleration, 0);
        spoolAcceleration = stageRateA[tableau.Stages - 1];
        LineOut = NextLineOut;
        LineRate = NextLineRate;
        Time += step;
        evaluated = false;
        dynamics.KeepTensions(true);

        // What the iteration has converged to: forces that give the masses the accelerations of the last stage.
        Array.Clear(force);
        dynamics.Blocks.AddMassProduct(acceleration, zero, 1, force);
        PreviousPowers = Powers;
        Powers = EvaluatePowers();
    }

    private static void AddScaled(Span<double> target, ReadOnlySpan<double> source, double factor)
    {
        int width = Vector<double>.Count, m = 0;
        var f = new Vector<double>(factor);
        for (; m <= source.Length - width; m += width)
        {
            Span<double> t = target.Slice(m, width);
            (new Vector<double>(t) + (f * new Vector<double>(source.Slice(m, width)))).CopyTo(t);
        }

        for (; m < source.Length; m++) target[m] += factor * source[m];
    }

    private void Restart()
    {
        accelerationValid = false;
        evaluated = false;
        previousStep = 0;
        Array.Clear(curvature);
    }

    // Starting value of a stage's velocities: a parabola through what is known. Returns that of the line's speed.
    private double Predict(int stage, double step)
    {
        double[] a0 = stageA[0];
        double at = tableau.C[stage] * step;
        if (stage == 1)
        {
            double q = previousStep > 0 ? at * at / (previousStep * previousStep) : 0;
            for (int m = 0; m < size; m++)
                trialW[m] = Velocity[m] + (at * a0[m]) + (q * (previousVelocity[m] - Velocity[m] + (previousStep * a0[m])));
            return LineRate + (at * spoolAcceleration) + (q * (previousRate - LineRate + (previousStep * spoolAcceleration)));
        }

        if (tableau.C[stage] == tableau.C[stage - 1])
        {
            stageW[stage - 1].CopyTo(trialW, 0);
            return stageRate[stage - 1];
        }

        double[] w1 = stageW[stage - 1];
        double before = tableau.C[stage - 1] * step, share = at * at / (before * before);
        for (int m = 0; m < size; m++)
            trialW[m] = Velocity[m] + (at * a0[m]) + (share * (w1[m] - Velocity[m] - (before * a0[m])));
        return LineRate + (at * spoolAcceleration) + (share * (stageRate[stage - 1] - LineRate - (before * spoolAcceleration)));
    }

    // Newton's method for M (w - w0)/g = F(r0 + g w, w), with the line's speed if the spool is free. A stage at the time of the one before starts with its matrix.
    private bool SolveStage(int stage, double time, double g, double baseLine, double baseRate, ref double rate, bool renew, in StepControl control)
    {
        boundary.Tip(time, trialR.AsSpan(size, 3), trialW.AsSpan(size, 3));
        double before = double.PositiveInfinity;
        for (int iteration = 0; iteration < IterationLimit; iteration++)
        {
            for (int m = 0; m < size; m++) trialR[m] = baseR[m] + (g * trialW[m]);
            double line = baseLine + (g * rate);
            if (SpoolIsFree && !(line > 0)) return false;
            EvaluateAt(time, trialR, trialW, line, rate, increment, renew);
            double tipTension = dynamics.Tension[n - 1];
            bool own = renew;
            if (renew)
            {
                dynamics.Blocks.Assemble(matrix, g);
                Factorisations++;
                if (!matrix.Factor()) return false;
                if (SpoolIsFree) PrepareBorder(g, rate);
                renew = false;
            }

            dynamics.Blocks.AddMassProduct(trialW.AsSpan(0, size), baseW, -1 / g, increment);
            matrix.Solve(increment);
            double rateIncrement = 0;
            if (SpoolIsFree)
            {
                double residual = tipTension - spool.Resistance(rate, out _) - (spool.Inertia * (rate - baseRate) / g);
                rateIncrement = (residual + TipProduct(increment, g)) / borderDiagonal;
                AddScaled(increment, border, rateIncrement);
                rate += rateIncrement;
            }

            for (int m = 0; m < size; m++) trialW[m] += increment[m];
            dynamics.AdvanceIteration(increment, g, g * rateIncrement, own);
            double norm = Norm(increment, g, control);
            if (SpoolIsFree) norm = Math.Max(norm, Math.Abs(rateIncrement) * Math.Max(g / control.LinePosition, 1 / control.LineVelocity));
            if (!double.IsFinite(norm)) return false;
            bool fits = dynamics.Mismatch < TensionMismatch;
            if (own && iteration == 1 && before > 0)
            {
                curvature[stage] = Math.Max(norm / (before * before), 0.5 * curvature[stage]);
                unseen[stage] = 0;
            }

            bool small = norm < 1e-2 * NewtonTolerance || (own && norm < NewtonTolerance);
            if (!small && own && iteration == 0 && unseen[stage] < UnseenLimit && curvature[stage] > 0 && 2 * curvature[stage] * norm * norm < PredictedTolerance && TensionsFit(g, g * rateIncrement))
            {
                unseen[stage]++;
                return true;
            }

            double contraction = norm / before;
            if (fits && (small || (iteration > 0 && contraction < 1 && contraction / (1 - contraction) * norm < NewtonTolerance)))
                return true;

            renew = !fits || norm > SmallIncrement || contraction > FastContraction;
            before = norm;
        }

        return false;
    }

    // Whether the tensions of the iteration are those of the stretch after its last step.
    private bool TensionsFit(double g, double lineStep)
    {
        for (int m = 0; m < size; m++) trialR[m] = baseR[m] + (g * trialW[m]);
        return dynamics.MismatchAt(trialR, lineStep) < TensionMismatch;
    }

    private void EvaluateAt(double time, double[] r, double[] w, double lineOut, double lineRate, double[] result, bool derivatives)
    {
        double length = lineOut, rate = lineRate, lineAcceleration = 0;
        if (!SpoolIsFree) boundary.Line(time, out length, out rate, out lineAcceleration);
        dynamics.Evaluate(r, w, length, rate, lineAcceleration, result, derivatives);
        Evaluations++;
    }

    // Powers at the current state, whose forces are in force.
    private EnergyRates EvaluatePowers()
    {
        double lineAcceleration = 0;
        if (!SpoolIsFree) boundary.Line(Time, out _, out _, out lineAcceleration);
        return dynamics.EvaluatePowers(Position, Velocity, LineOut, LineRate, lineAcceleration, force);
    }

    // Column of the forces by the line's speed, solved, and the pivot of the bordering row.
    private void PrepareBorder(double g, double rate)
    {
        dynamics.LineColumn(g, border);
        matrix.Solve(border);
        spool.Resistance(rate, out double slope);
        borderDiagonal = (spool.Inertia / g) + slope - dynamics.TipTensionByRate - (g * dynamics.TipTensionByLine) - TipProduct(border, g);
    }

    private double TipProduct(double[] x, double g)
    {
        double sum = 0;
        for (int m = 0; m < 3; m++) sum += (dynamics.TipTensionByVelocity[m] + (g * dynamics.TipTensionByPosition[m])) * x[size - 3 + m];
        return sum;
    }

    // Velocity increments in units of the tolerance, as velocities and as the displacements they make.
    private double Norm(double[] x, double g, in StepControl control)
    {
        double own = (x[0] * x[0]) + (x[1] * x[1]) + (x[2] * x[2]), rest = 0;
        for (int m = 3; m < size; m++) rest += x[m] * x[m];
        double scaleOwn = Math.Max(g / control.Position, 1 / control.Velocity), scaleRest = Math.Max(g / control.LinePosition, 1 / control.LineVelocity);
        return Math.Max(Math.Sqrt(own) * scaleOwn, Math.Sqrt(rest / Math.Max(1, n - 1)) * scaleRest);
    }

    // e := (I - g J)^-1 e with the matrix of the last stage, e' of the velocities from W e' = M e_w/g + F_r e_r and e_r' = e_r + g e'. Axial vibrations of the line, which the method
    // damps within the step, then do not set its length.
    private void DampError(double step)
    {
        double g = tableau.Gamma * step;
        Array.Clear(increment);
        dynamics.Blocks.AddMassProduct(errorW, zero, 1 / g, increment);
        dynamics.Blocks.AddPositionProduct(errorR, increment);
        matrix.Solve(increment);
        increment.CopyTo(errorW, 0);
        AddScaled(errorR, increment, g);
    }

    private double EstimateError(double step, in StepControl control)
    {
        Array.Clear(errorR);
        Array.Clear(errorW);
        double errorLine = 0;
        for (int i = 0; i < tableau.Stages; i++)
        {
            double e = step * tableau.E[i];
            AddScaled(errorR, stageW[i], e);
            AddScaled(errorW, stageA[i], e);
            errorLine += e * stageRate[i];
        }

        if (tableau.DampsError) DampError(step);
        double own = 0, rest = 0;
        double inverseR = 1 / control.Position, inverseW = 1 / control.Velocity, lineR = 1 / control.LinePosition, lineW = 1 / control.LineVelocity;
        for (int m = 0; m < 3; m++)
            own += (errorR[m] * errorR[m] * inverseR * inverseR) + (errorW[m] * errorW[m] * inverseW * inverseW);
        for (int m = 3; m < size; m++)
            rest += (errorR[m] * errorR[m] * lineR * lineR) + (errorW[m] * errorW[m] * lineW * lineW);

        // The lure and the rest of the line are judged apart: the lure must not be averaged away by forty nodes.
        double error = Math.Sqrt(Math.Max(own, rest / Math.Max(1, n - 1)));
        if (SpoolIsFree) error = Math.Max(error, Math.Abs(errorLine) * lineR);
        return double.IsFinite(error) ? error : double.PositiveInfinity;
    }
}
