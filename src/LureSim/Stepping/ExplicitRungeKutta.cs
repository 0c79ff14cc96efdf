namespace LureSim.Stepping;

/// <summary>Adaptive explicit Runge-Kutta stepping: any tableau whose last stage is the first of the next step, on any system. Steps allocate nothing.</summary>
internal sealed class ExplicitRungeKutta
{
    // Error that stands for a step whose values are not finite.
    private const double HopelessError = 1e6;

    // Share of the time below which a step makes no way.
    private const double LeastStep = 1e-13;

    private readonly ExplicitTableau tableau;
    private readonly IExplicitSystem system;
    private readonly DenseOutput dense;
    private readonly double tolerance;
    private readonly double[][] k;
    private readonly double[] trial, next, difference;
    private readonly int n;
    private PiController control = new();

    public ExplicitRungeKutta(ExplicitTableau tableau, IExplicitSystem system, double tolerance)
    {
        this.tableau = tableau;
        this.system = system;
        this.tolerance = tolerance;
        n = system.Size;
        k = new double[tableau.C.Length][];
        for (int i = 0; i < k.Length; i++) k[i] = new double[n];
        trial = new double[n];
        next = new double[n];
        difference = new double[n];
        dense = new DenseOutput(n);
        State = new double[n];
    }

    /// <summary>State at <see cref="Time"/>.</summary>
    public double[] State { get; }

    /// <summary>Time reached (s).</summary>
    public double Time { get; private set; }

    /// <summary>Step to be tried next (s).</summary>
    public double Step { get; set; }

    /// <summary>Accepted steps.</summary>
    public int Steps { get; private set; }

    /// <summary>Steps that were repeated.</summary>
    public int Rejected { get; private set; }

    /// <summary>Evaluations of the derivative.</summary>
    public int Evaluations { get; private set; }

    /// <summary>Smallest accepted step that no end or corner cut short (s); infinite before one.</summary>
    public double SmallestStep { get; private set; } = double.PositiveInfinity;

    /// <summary>Largest distance of the invariants from their values before they were put right.</summary>
    public double Drift { get; private set; }

    /// <summary>Starts at a time with the state in <see cref="State"/>.</summary>
    public void Start(double time, double firstStep)
    {
        Time = time;
        Step = firstStep;
        control = new();
        system.Derivative(time, State, k[0]);
        Evaluations++;
    }

    /// <summary>One accepted step, not beyond the end; false when the step falls below its floor or the state is not finite.</summary>
    public bool Advance(double end, double largestStep)
    {
        double limit = Math.Min(end, system.NextBreak(Time));
        bool rejectedBefore = false;
        while (true)
        {
            double h = Math.Min(Step, largestStep);
            bool last = Time + (1.0001 * h) >= limit;
            if (last) h = limit - Time;
            if (!(h > LeastStep * Math.Max(1, Math.Abs(Time)))) return false;
            Stages(h);
            double error = Error(h);
            if (!double.IsFinite(error)) error = HopelessError;
            if (error <= 1)
            {
                Accept(h, error, last, last ? limit : Time + h, last && limit < end, rejectedBefore);
                return true;
            }

            rejectedBefore = true;
            Rejected++;
            Step = h * PiController.Rejected(error);
        }
    }

    /// <summary>State inside the last accepted step.</summary>
    public void Interpolate(double time, Span<double> result) => dense.At(time, result);

    private void Accept(double h, double error, bool cut, double time, bool corner, bool rejectedBefore)
    {
        double factor = control.Accepted(error, rejectedBefore);
        dense.Keep(tableau, Time, time, h, State, next, k);
        Time = time;

        // A step cut short by an end or a corner says nothing against the step before it.
        Step = cut ? Math.Max(Step, h * factor) : h * factor;
        if (!cut) SmallestStep = Math.Min(SmallestStep, h);
        Steps++;
        next.AsSpan().CopyTo(State);
        Drift = Math.Max(Drift, system.Project(State));
        if (corner)
        {
            system.Derivative(Time, State, k[0]);
            Evaluations++;
        }
        else
        {
            k[^1].AsSpan().CopyTo(k[0]);
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
                Spans.AddScaled(trial, k[j], factor);
            }

            system.Derivative(Time + (tableau.C[stage] * h), trial, k[stage]);
            Evaluations++;
        }

        // First same as last: the last trial is the solution.
        trial.AsSpan().CopyTo(next);
    }

    private double Error(double h)
    {
        ReadOnlySpan<double> scale = system.Scale;
        difference.AsSpan().Clear();
        for (int j = 0; j < k.Length; j++) Spans.AddScaled(difference, k[j], tableau.E[j]);
        double sum = 0;
        int counted = 0;
        for (int i = 0; i < n; i++)
        {
            if (double.IsPositiveInfinity(scale[i])) continue;
            double size = tolerance * (scale[i] + Math.Max(Math.Abs(State[i]), Math.Abs(next[i])));
            double e = difference[i] * (h / size);
            sum += e * e;
            counted++;
        }

        return Math.Sqrt(sum / counted);
    }
}
