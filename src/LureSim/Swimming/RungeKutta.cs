namespace LureSim.Swimming;

/// <summary>A system of first-order equations for <see cref="RungeKutta"/>.</summary>
internal interface IMotionEquations
{
    /// <summary>Number of unknowns.</summary>
    int Size { get; }

    /// <summary>Writes dy/dt.</summary>
    void Derivative(double time, ReadOnlySpan<double> state, Span<double> derivative);

    /// <summary>Size of the unknowns below which the tolerance counts absolutely; infinity takes an unknown out of the step control.</summary>
    ReadOnlySpan<double> Scale { get; }

    /// <summary>Puts invariants right after an accepted step (norm of the quaternion) and returns how far off they were; a correction within the tolerance leaves the derivative as it is.</summary>
    double Project(Span<double> state);

    /// <summary>The next time after <paramref name="time"/> at which the right-hand side has a corner.</summary>
    double NextBreak(double time);
}

/// <summary>Adaptive explicit Runge-Kutta stepping with dense output. Steps allocate nothing.</summary>
internal sealed class RungeKutta
{
    // Step control: PI with the exponents of Hairer, Norsett & Wanner 1993 (II.4), safety 0.9, growth at most 5, shrink at most 0.2.
    private const double Beta = 0.04;
    private const double Safety = 0.9;
    private readonly RungeKuttaTableau tableau;
    private readonly IMotionEquations equations;
    private readonly double tolerance;
    private readonly double[][] k;
    private readonly double[] trial, next, dense;
    private readonly int n;
    private double previousError = 1e-4;

    public RungeKutta(RungeKuttaTableau tableau, IMotionEquations equations, double tolerance)
    {
        this.tableau = tableau;
        this.equations = equations;
        this.tolerance = tolerance;
        n = equations.Size;
        k = new double[tableau.C.Length][];
        for (int i = 0; i < k.Length; i++) k[i] = new double[n];
        trial = new double[n];
        next = new double[n];
        dense = new double[5 * n];
        State = new double[n];
    }

    /// <summary>State at <see cref="Time"/>.</summary>
    public double[] State { get; }

    public double Time { get; private set; }

    /// <summary>Time at the start of the last accepted step.</summary>
    public double PreviousTime { get; private set; }

    public double Step { get; set; }

    public int Steps { get; private set; }

    public int Rejected { get; private set; }

    public int Evaluations { get; private set; }

    /// <summary>Largest distance of the invariants from their values before they were put right.</summary>
    public double Drift { get; private set; }

    /// <summary>Starts at a time with the state in <see cref="State"/>.</summary>
    public void Start(double time, double firstStep)
    {
        Time = time;
        PreviousTime = time;
        Step = firstStep;
        previousError = 1e-4;
        equations.Derivative(time, State, k[0]);
        Evaluations++;
    }

    /// <summary>One accepted step, not beyond the end; false when the step falls below its floor or the state is not finite.</summary>
    public bool Advance(double end, double largestStep)
    {
        double limit = Math.Min(end, equations.NextBreak(Time));
        bool rejectedBefore = false;
        while (true)
        {
            double h = Math.Min(Step, largestStep);
            bool last = Time + (1.0001 * h) >= limit;
            if (last) h = limit - Time;
            if (!(h > 1e-13 * Math.Max(1, Math.Abs(Time)))) return false;
            Stages(h);
            double error = Error(h);
            if (!double.IsFinite(error)) error = 1e6;
            double control = Math.Pow(Math.Max(error, 1e-12), 0.2 - (0.75 * Beta));
            if (error <= 1)
            {
                double factor = Math.Clamp(Safety * Math.Pow(previousError, Beta) / control, 0.2, rejectedBefore ? 1 : 5);
                previousError = Math.Max(error, 1e-4);
                KeepDense(h);
                PreviousTime = Time;
                Time = last ? limit : Time + h;

                // A step cut short by an end or a corner says nothing against the step before it.
                Step = last ? Math.Max(Step, h * factor) : h * factor;
                Steps++;
                next.AsSpan().CopyTo(State);
                bool corner = last && limit < end;
                Drift = Math.Max(Drift, equations.Project(State));
                if (corner)
                {
                    equations.Derivative(Time, State, k[0]);
                    Evaluations++;
                }
                else
                {
                    k[^1].AsSpan().CopyTo(k[0]);
                }

                return true;
            }

            rejectedBefore = true;
            Rejected++;
            Step = h * Math.Max(0.2, Safety / control);
        }
    }

    /// <summary>State inside the last accepted step.</summary>
    public void Interpolate(double time, Span<double> result)
    {
        double h = Time - PreviousTime;
        double s = h > 0 ? (time - PreviousTime) / h : 1;
        double s1 = 1 - s;
        for (int i = 0; i < n; i++)
        {
            int j = 5 * i;
            result[i] = dense[j] + (s * (dense[j + 1] + (s1 * (dense[j + 2] + (s * (dense[j + 3] + (s1 * dense[j + 4])))))));
        }
    }

    private void Stages(double h)
    {
        for (int stage = 1; stage < k.Length; stage++)
        {
            double[] a = tableau.A[stage];
            State.AsSpan().CopyTo(trial);
            for (int j = 0; j < a.Length; j++)
            {
                double factor = h * a[j];
                if (factor == 0) continue;
                double[] kj = k[j];
                for (int i = 0; i < n; i++) trial[i] += factor * kj[i];
            }

            equations.Derivative(Time + (tableau.C[stage] * h), trial, k[stage]);
            Evaluations++;
        }

        // First same as last: the last trial is the solution.
        trial.AsSpan().CopyTo(next);
    }

    private double Error(double h)
    {
        ReadOnlySpan<double> scale = equations.Scale;
        double sum = 0;
        int counted = 0;
        for (int i = 0; i < n; i++)
        {
            if (double.IsPositiveInfinity(scale[i])) continue;
            double e = 0;
            for (int j = 0; j < k.Length; j++) e += tableau.E[j] * k[j][i];
            double size = tolerance * (scale[i] + Math.Max(Math.Abs(State[i]), Math.Abs(next[i])));
            e *= h / size;
            sum += e * e;
            counted++;
        }

        return Math.Sqrt(sum / counted);
    }

    private void KeepDense(double h)
    {
        for (int i = 0; i < n; i++)
        {
            double difference = next[i] - State[i];
            double bspl = (h * k[0][i]) - difference;
            double d = 0;
            for (int j = 0; j < k.Length; j++) d += tableau.Dense[j] * k[j][i];
            int at = 5 * i;
            dense[at] = State[i];
            dense[at + 1] = difference;
            dense[at + 2] = bspl;
            dense[at + 3] = difference - (h * k[^1][i]) - bspl;
            dense[at + 4] = h * d;
        }
    }
}
