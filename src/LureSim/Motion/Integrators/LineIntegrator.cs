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

/// <summary>Tolerances and limits of the adaptive integration.</summary>
/// <param name="Position">Absolute tolerance on positions per step (m).</param>
/// <param name="Velocity">Absolute tolerance on velocities per step (m/s).</param>
/// <param name="MaximumStep">Largest step (s).</param>
/// <param name="MinimumStep">Step below which the run is given up (s).</param>
internal readonly record struct StepControl(double Position, double Velocity, double MaximumStep, double MinimumStep)
{
    /// <summary>Values measured to keep the depth of a retrieve within a few millimetres (docs/motion.md).</summary>
    public static StepControl Default => new(1e-4, 5e-3, 0.25, 1e-7);
}

/// <summary>
/// Advances lure and line by a linearly implicit Rosenbrock method. Positions are eliminated, so that each stage solves one block-tridiagonal
/// system of 3 x 3 blocks for the velocities; a free spool adds one bordering row and column.
/// </summary>
internal sealed class LineIntegrator
{
    private readonly LineDynamics dynamics;
    private readonly RosenbrockTableau tableau;
    private readonly ILineBoundary boundary;
    private readonly BlockTridiagonal matrix;
    private readonly int n;
    private readonly int size;
    private readonly double[][] stageR;
    private readonly double[][] stageW;
    private readonly double[] stageLine;
    private readonly double[] stageRate;
    private readonly double[] force;
    private readonly double[] forceShifted;
    private readonly double[] timeDerivative;
    private readonly double[] columnLine;
    private readonly double[] columnRate;
    private readonly double[] border;
    private readonly double[] trialR;
    private readonly double[] trialW;
    private readonly double[] rhsR;
    private readonly double[] rhsW;
    private readonly double[] baseMass;
    private FreeSpool spool;

    // Quantities of the current step start, valid while derivativesValid.
    private bool derivativesValid;
    private double tipTension;
    private double tipTensionByLine;
    private double tipTensionByRate;

    public LineIntegrator(LineDynamics dynamics, ILineBoundary boundary, RosenbrockTableau tableau)
    {
        this.dynamics = dynamics;
        this.boundary = boundary;
        this.tableau = tableau;
        n = dynamics.Segments;
        size = 3 * n;
        matrix = new BlockTridiagonal(n);
        stageR = new double[tableau.Stages][];
        stageW = new double[tableau.Stages][];
        for (int i = 0; i < tableau.Stages; i++)
        {
            stageR[i] = new double[size];
            stageW[i] = new double[size];
        }

        stageLine = new double[tableau.Stages];
        stageRate = new double[tableau.Stages];
        force = new double[size];
        forceShifted = new double[size];
        timeDerivative = new double[size];
        columnLine = new double[size];
        columnRate = new double[size];
        border = new double[size];
        Position = new double[size + 3];
        Velocity = new double[size + 3];
        NextPosition = new double[size + 3];
        NextVelocity = new double[size + 3];
        trialR = new double[size + 3];
        trialW = new double[size + 3];
        rhsR = new double[size];
        rhsW = new double[size];
        baseMass = new double[6 * (n + 1)];
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

    public int Evaluations { get; private set; }

    public LineDynamics Dynamics => dynamics;

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
        derivativesValid = false;
    }

    /// <summary>Opens the bail: line out becomes part of the state.</summary>
    public void OpenBail(FreeSpool freeSpool)
    {
        spool = freeSpool;
        SpoolIsFree = true;
        LineRate = 0;
        derivativesValid = false;
    }

    /// <summary>Closes the bail: from now on the boundary gives the line out.</summary>
    public void CloseBail()
    {
        SpoolIsFree = false;
        derivativesValid = false;
    }

    /// <summary>
    /// Evaluates forces and derivatives at the current state, which puts tensions and powers of <see cref="Dynamics"/> there. The next trial step reuses it.
    /// </summary>
    public void Prepare()
    {
        if (!derivativesValid) PrepareStart();
    }

    /// <summary>Computes a trial step into the Next properties and returns its error in units of the tolerance (infinite if it failed).</summary>
    public double TryStep(double step, in StepControl control)
    {
        Prepare();
        double g = step * tableau.Gamma;
        AssembleMatrix(g);
        if (!matrix.Factor()) return double.PositiveInfinity;

        double borderDiagonal = 0;
        double byR0 = 0, byR1 = 0, byR2 = 0;
        if (SpoolIsFree)
        {
            // Column: F_P + g F_L; row: -(T_w + g T_r) on the last node.
            for (int i = 0; i < size; i++) border[i] = columnRate[i] + (g * columnLine[i]);
            matrix.Solve(border);
            spool.Resistance(LineRate, out double slope);
            byR0 = dynamics.TipTensionByVelocity[0] + (g * dynamics.TipTensionByPosition[0]);
            byR1 = dynamics.TipTensionByVelocity[1] + (g * dynamics.TipTensionByPosition[1]);
            byR2 = dynamics.TipTensionByVelocity[2] + (g * dynamics.TipTensionByPosition[2]);
            int last = size - 3;
            borderDiagonal = (spool.Inertia / g) + slope - tipTensionByRate - (g * tipTensionByLine)
                - (byR0 * border[last]) - (byR1 * border[last + 1]) - (byR2 * border[last + 2]);
        }

        double stageTension = tipTension;
        double stageLineOut = LineOut, stageLineRate = LineRate;
        force.CopyTo(forceShifted.AsSpan());
        bool shifted = false;
        for (int i = 0; i < tableau.Stages; i++)
        {
            double[] ur = stageR[i], uw = stageW[i];
            if (i > 0 && tableau.NewEvaluation[i])
            {
                Position.AsSpan(0, size).CopyTo(trialR);
                Velocity.AsSpan(0, size).CopyTo(trialW);
                stageLineOut = LineOut;
                stageLineRate = LineRate;
                for (int j = 0; j < i; j++)
                {
                    double a = tableau.GetA(i, j);
                    if (a == 0) continue;
                    AddScaled(trialR, stageR[j], a);
                    AddScaled(trialW, stageW[j], a);
                    stageLineOut += a * stageLine[j];
                    stageLineRate += a * stageRate[j];
                }

                double stageTime = Time + (tableau.Alpha[i] * step);
                boundary.Tip(stageTime, trialR.AsSpan(size, 3), trialW.AsSpan(size, 3));
                if (SpoolIsFree && !(stageLineOut > 0)) return double.PositiveInfinity;
                EvaluateAt(stageTime, trialR, trialW, stageLineOut, stageLineRate, forceShifted, false);
                stageTension = dynamics.Tension[n - 1];
                ToBaseMass(forceShifted);
                shifted = true;
            }

            // Right-hand sides: positions first, then velocities multiplied by the mass at the step's start.
            ReadOnlySpan<double> w = shifted ? trialW.AsSpan(0, size) : Velocity.AsSpan(0, size);
            double lineRhs = stageLineRate;
            double rateRhs = 0;
            w.CopyTo(rhsR);
            Array.Clear(rhsW);
            for (int j = 0; j < i; j++)
            {
                double c = tableau.GetC(i, j) / step;
                if (c == 0) continue;
                AddScaled(rhsR, stageR[j], c);
                AddScaled(rhsW, stageW[j], c);
                lineRhs += c * stageLine[j];
                rateRhs += c * stageRate[j];
            }

            double timeWeight = tableau.GammaSum[i] * step;
            MultiplyMass(rhsW, uw);
            for (int m = 0; m < size; m++) uw[m] += forceShifted[m] + (timeWeight * timeDerivative[m]);
            AddPositionProduct(rhsR, g, uw);

            if (SpoolIsFree)
            {
                for (int m = 0; m < size; m++) uw[m] += g * lineRhs * columnLine[m];
                matrix.Solve(uw);
                int last = size - 3;
                double rhs = stageTension - spool.Resistance(stageLineRate, out _) + (spool.Inertia * rateRhs) + (tipTensionByLine * g * lineRhs);
                for (int m = 0; m < 3; m++) rhs += dynamics.TipTensionByPosition[m] * g * rhsR[last + m];
                rhs += (byR0 * uw[last]) + (byR1 * uw[last + 1]) + (byR2 * uw[last + 2]);
                double up = rhs / borderDiagonal;
                for (int m = 0; m < size; m++) uw[m] += border[m] * up;
                stageRate[i] = up;
                stageLine[i] = g * (lineRhs + up);
            }
            else
            {
                matrix.Solve(uw);
                stageRate[i] = 0;
                stageLine[i] = 0;
            }

            for (int m = 0; m < size; m++) ur[m] = g * (rhsR[m] + uw[m]);
        }

        // Combine.
        Position.AsSpan(0, size).CopyTo(NextPosition);
        Velocity.AsSpan(0, size).CopyTo(NextVelocity);
        double nextLine = LineOut, nextRate = LineRate;
        for (int i = 0; i < tableau.Stages; i++)
        {
            double m = tableau.M[i];
            if (m == 0) continue;
            AddScaled(NextPosition, stageR[i], m);
            AddScaled(NextVelocity, stageW[i], m);
            nextLine += m * stageLine[i];
            nextRate += m * stageRate[i];
        }

        double next = Time + step;
        boundary.Tip(next, NextPosition.AsSpan(size, 3), NextVelocity.AsSpan(size, 3));
        if (SpoolIsFree)
        {
            NextLineOut = nextLine;
            NextLineRate = nextRate;
        }
        else
        {
            boundary.Line(next, out double length, out double rate, out _);
            NextLineOut = length;
            NextLineRate = rate;
        }

        return ErrorNorm(control);
    }

    /// <summary>Names the node with the largest velocity error of the last trial, for messages.</summary>
    public string WorstNode(out double depth)
    {
        int worst = 0;
        double largest = -1;
        double[] e = stageW[tableau.Stages - 1];
        for (int m = 0; m < size; m++)
        {
            double value = double.IsNaN(e[m]) ? double.MaxValue : Math.Abs(e[m]);
            if (value > largest)
            {
                largest = value;
                worst = m / 3;
            }
        }

        depth = -Position[(3 * worst) + 2];
        return worst == 0 ? "at the lure" : FormattableString.Invariant($"at line node {worst} of {n}");
    }

    /// <summary>Makes the trial step the current state.</summary>
    public void Accept(double step)
    {
        NextPosition.CopyTo(Position.AsSpan());
        NextVelocity.CopyTo(Velocity.AsSpan());
        LineOut = NextLineOut;
        LineRate = NextLineRate;
        Time += step;
        derivativesValid = false;
    }

    private static void AddScaled(Span<double> target, ReadOnlySpan<double> source, double factor)
    {
        for (int m = 0; m < source.Length; m++) target[m] += factor * source[m];
    }

    private void EvaluateAt(double time, double[] r, double[] w, double lineOut, double lineRate, double[] result, bool derivatives)
    {
        double length = lineOut, rate = lineRate, acceleration = 0;
        if (!SpoolIsFree) boundary.Line(time, out length, out rate, out acceleration);
        dynamics.Evaluate(r, w, length, rate, acceleration, result, derivatives);
        Evaluations++;
    }

    private void PrepareStart()
    {
        // Explicit dependence on time, by a one-sided difference: tip motion and reeling.
        double delta = 1e-6;
        double later = Time + delta;
        Position.AsSpan(0, size).CopyTo(trialR);
        Velocity.AsSpan(0, size).CopyTo(trialW);
        boundary.Tip(later, trialR.AsSpan(size, 3), trialW.AsSpan(size, 3));
        EvaluateAt(later, trialR, trialW, LineOut, LineRate, timeDerivative, false);
        if (SpoolIsFree)
        {
            double lineDelta = 1e-7 * LineOut;
            EvaluateAt(Time, Position, Velocity, LineOut + lineDelta, LineRate, columnLine, false);
            double tensionLine = dynamics.Tension[n - 1];
            double rateDelta = 1e-6;
            EvaluateAt(Time, Position, Velocity, LineOut, LineRate + rateDelta, columnRate, false);
            double tensionRate = dynamics.Tension[n - 1];
            EvaluateAt(Time, Position, Velocity, LineOut, LineRate, force, true);
            tipTension = dynamics.Tension[n - 1];
            tipTensionByLine = (tensionLine - tipTension) / lineDelta;
            tipTensionByRate = (tensionRate - tipTension) / rateDelta;
            for (int m = 0; m < size; m++)
            {
                columnLine[m] = (columnLine[m] - force[m]) / lineDelta;
                columnRate[m] = (columnRate[m] - force[m]) / rateDelta;
            }
        }
        else
        {
            EvaluateAt(Time, Position, Velocity, LineOut, LineRate, force, true);
        }

        for (int m = 0; m < size; m++) timeDerivative[m] = (timeDerivative[m] - force[m]) / delta;
        dynamics.MassMatrix.CopyTo(baseMass.AsSpan());
        derivativesValid = true;
    }

    // W = M/g - F_w - g F_r
    private void AssembleMatrix(double g)
    {
        Span<double> diagonal = matrix.Diagonal, upper = matrix.Upper, lower = matrix.Lower;
        double inverse = 1 / g;
        double[] pd = dynamics.PositionDiagonal, pu = dynamics.PositionUpper, pl = dynamics.PositionLower;
        double[] vd = dynamics.VelocityDiagonal, vu = dynamics.VelocityUpper, vl = dynamics.VelocityLower;
        for (int m = 0; m < diagonal.Length; m++)
        {
            diagonal[m] = -vd[m] - (g * pd[m]);
            upper[m] = -vu[m] - (g * pu[m]);
            lower[m] = -vl[m] - (g * pl[m]);
        }

        for (int j = 0; j < n; j++)
        {
            ReadOnlySpan<double> mass = baseMass.AsSpan(6 * j, 6);
            Span<double> d = diagonal.Slice(9 * j, 9);
            d[0] += inverse * mass[0];
            d[1] += inverse * mass[1];
            d[2] += inverse * mass[2];
            d[3] += inverse * mass[1];
            d[4] += inverse * mass[3];
            d[5] += inverse * mass[4];
            d[6] += inverse * mass[2];
            d[7] += inverse * mass[4];
            d[8] += inverse * mass[5];
        }
    }

    private void MultiplyMass(ReadOnlySpan<double> x, Span<double> result)
    {
        for (int j = 0; j < n; j++)
        {
            ReadOnlySpan<double> m = baseMass.AsSpan(6 * j, 6);
            double x0 = x[3 * j], x1 = x[(3 * j) + 1], x2 = x[(3 * j) + 2];
            result[3 * j] = (m[0] * x0) + (m[1] * x1) + (m[2] * x2);
            result[(3 * j) + 1] = (m[1] * x0) + (m[3] * x1) + (m[4] * x2);
            result[(3 * j) + 2] = (m[2] * x0) + (m[4] * x1) + (m[5] * x2);
        }
    }

    // The mass matrix turns with the line: F becomes M_start M_stage^-1 F.
    private void ToBaseMass(Span<double> f)
    {
        double[] stageMass = dynamics.MassMatrix;
        for (int j = 0; j < n; j++)
        {
            ReadOnlySpan<double> m = stageMass.AsSpan(6 * j, 6);
            double c00 = (m[3] * m[5]) - (m[4] * m[4]);
            double c01 = (m[2] * m[4]) - (m[1] * m[5]);
            double c02 = (m[1] * m[4]) - (m[2] * m[3]);
            double c11 = (m[0] * m[5]) - (m[2] * m[2]);
            double c12 = (m[1] * m[2]) - (m[0] * m[4]);
            double c22 = (m[0] * m[3]) - (m[1] * m[1]);
            double scale = 1 / ((m[0] * c00) + (m[1] * c01) + (m[2] * c02));
            double f0 = f[3 * j] * scale, f1 = f[(3 * j) + 1] * scale, f2 = f[(3 * j) + 2] * scale;
            double a0 = (c00 * f0) + (c01 * f1) + (c02 * f2);
            double a1 = (c01 * f0) + (c11 * f1) + (c12 * f2);
            double a2 = (c02 * f0) + (c12 * f1) + (c22 * f2);
            ReadOnlySpan<double> b = baseMass.AsSpan(6 * j, 6);
            f[3 * j] = (b[0] * a0) + (b[1] * a1) + (b[2] * a2);
            f[(3 * j) + 1] = (b[1] * a0) + (b[3] * a1) + (b[4] * a2);
            f[(3 * j) + 2] = (b[2] * a0) + (b[4] * a1) + (b[5] * a2);
        }
    }

    // result += factor F_r x
    private void AddPositionProduct(ReadOnlySpan<double> x, double factor, Span<double> result)
    {
        double[] pd = dynamics.PositionDiagonal, pu = dynamics.PositionUpper, pl = dynamics.PositionLower;
        for (int j = 0; j < n; j++)
        {
            double s0 = 0, s1 = 0, s2 = 0;
            Accumulate(pd.AsSpan(9 * j, 9), x.Slice(3 * j, 3), ref s0, ref s1, ref s2);
            if (j > 0) Accumulate(pl.AsSpan(9 * j, 9), x.Slice(3 * (j - 1), 3), ref s0, ref s1, ref s2);
            if (j + 1 < n) Accumulate(pu.AsSpan(9 * j, 9), x.Slice(3 * (j + 1), 3), ref s0, ref s1, ref s2);
            result[3 * j] += factor * s0;
            result[(3 * j) + 1] += factor * s1;
            result[(3 * j) + 2] += factor * s2;
        }
    }

    private static void Accumulate(ReadOnlySpan<double> block, ReadOnlySpan<double> x, ref double s0, ref double s1, ref double s2)
    {
        s0 += (block[0] * x[0]) + (block[1] * x[1]) + (block[2] * x[2]);
        s1 += (block[3] * x[0]) + (block[4] * x[1]) + (block[5] * x[2]);
        s2 += (block[6] * x[0]) + (block[7] * x[1]) + (block[8] * x[2]);
    }

    // Line nodes weigh next to nothing and are dragged along: their velocity may be off by more than the lure's at the same error in depth.
    private const double LineVelocitySlack = 4;

    // The lure and the rest of the line are judged apart: the lure must not be averaged away by forty nodes.
    private double ErrorNorm(in StepControl control)
    {
        double rest = 0, own = 0;
        double inverseR = 1 / control.Position, inverseW = 1 / control.Velocity;
        double inverseLineW = inverseW / LineVelocitySlack;
        for (int m = 0; m < size; m++)
        {
            double er = 0, ew = 0;
            for (int i = 0; i < tableau.Stages; i++)
            {
                double e = tableau.E[i];
                if (e == 0) continue;
                er += e * stageR[i][m];
                ew += e * stageW[i][m];
            }

            er *= inverseR;
            ew *= m < 3 ? inverseW : inverseLineW;
            double square = (er * er) + (ew * ew);
            if (m < 3) own += square;
            else rest += square;
        }

        double error = Math.Sqrt(Math.Max(own, rest / Math.Max(1, n - 1)));
        if (SpoolIsFree)
        {
            double el = 0;
            for (int i = 0; i < tableau.Stages; i++) el += tableau.E[i] * stageLine[i];
            error = Math.Max(error, Math.Abs(el) * inverseR);
        }

        return double.IsFinite(error) ? error : double.PositiveInfinity;
    }
}
