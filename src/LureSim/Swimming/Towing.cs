namespace LureSim.Swimming;

/// <summary>Runs a lure on its line through a window of some seconds.</summary>
public static class Towing
{
    /// <summary>
    /// Integrates the motion (see docs/action.md for the equations). Deterministic; work is bounded by <see cref="ActionOptions.MaximumSteps"/>; a failure is told in
    /// <see cref="ActionTrace.Status"/>.
    /// </summary>
    /// <param name="body">The lure.</param>
    /// <param name="knot">Its knot.</param>
    /// <param name="tow">What the line does.</param>
    /// <param name="options">Settings, or null for the default.</param>
    /// <param name="cancellation">Ends the run early.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A member of the input is out of its range.</exception>
    public static ActionTrace Simulate(ActionBody body, Knot knot, TowInput tow, ActionOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(knot);
        ArgumentNullException.ThrowIfNull(tow);
        options ??= new ActionOptions();
        body.Validate();
        knot.Validate();
        tow.Validate();
        options.Validate();

        var equations = new TowedBodyEquations(body, knot, tow, options);
        var stepper = new RungeKutta(RungeKuttaTableau.DormandPrince, equations, options.Tolerance);
        equations.Initial.AsSpan().CopyTo(stepper.State);
        int capacity = Math.Min((int)Math.Floor((options.Duration / options.OutputInterval) + 1e-9), 1_000_000) + 1;
        var samples = new Samples(capacity);
        double energyAtStart = equations.KineticEnergy(stepper.State);
        stepper.Start(0, 1e-3);
        double[] state = new double[TowedBodyEquations.Count], scratch = new double[TowedBodyEquations.Count];
        samples.Add(0, stepper.State, equations, scratch);
        var status = ActionStatus.Completed;
        while (stepper.Time < options.Duration)
        {
            if (cancellation.IsCancellationRequested)
            {
                status = ActionStatus.Cancelled;
                break;
            }

            // Bounded work: rejected steps count.
            if (stepper.Steps + stepper.Rejected >= options.MaximumSteps)
            {
                status = ActionStatus.StepLimit;
                break;
            }

            if (!stepper.Advance(options.Duration, 0.05))
            {
                status = ActionStatus.Failed;
                break;
            }

            while (samples.Count < capacity && samples.Count * options.OutputInterval <= stepper.Time + 1e-12)
            {
                double t = samples.Count * options.OutputInterval;
                stepper.Interpolate(t, state);
                samples.Add(t, state, equations, scratch);
            }
        }

        double work = stepper.State[TowedBodyEquations.Work], exchanged = stepper.State[TowedBodyEquations.Exchanged];
        double change = equations.KineticEnergy(stepper.State) - energyAtStart;
        double residual = Math.Abs(change - work) / Math.Max(Math.Max(exchanged, energyAtStart), 1e-12);
        return samples.ToTrace(body, knot, tow, options, status, stepper.Time, new(stepper.Steps, stepper.Rejected, stepper.Evaluations, residual, equations.Drift));
    }

    private sealed class Samples(int capacity)
    {
        private readonly double[] time = new double[capacity], tail = new double[capacity], tension = new double[capacity], roll = new double[capacity], twist = new double[capacity];
        private readonly Vector3d[] position = new Vector3d[capacity], velocity = new Vector3d[capacity], rate = new Vector3d[capacity], pull = new Vector3d[capacity], end = new Vector3d[capacity];
        private readonly Attitude[] attitude = new Attitude[capacity];

        public int Count { get; private set; }

        public void Add(double t, ReadOnlySpan<double> y, TowedBodyEquations equations, Span<double> scratch)
        {
            // The evaluation leaves tension and line end behind.
            equations.Derivative(t, y, scratch);
            int i = Count++;
            time[i] = t;
            position[i] = new(y[TowedBodyEquations.R], y[TowedBodyEquations.R + 1], y[TowedBodyEquations.R + 2]);
            Attitude a = TowedBodyEquations.AttitudeOf(y);
            double norm = Math.Sqrt((a.W * a.W) + (a.X * a.X) + (a.Y * a.Y) + (a.Z * a.Z));
            attitude[i] = new(a.W / norm, a.X / norm, a.Y / norm, a.Z / norm);
            velocity[i] = new(y[TowedBodyEquations.V], y[TowedBodyEquations.V + 1], y[TowedBodyEquations.V + 2]);
            rate[i] = new(y[TowedBodyEquations.W], y[TowedBodyEquations.W + 1], y[TowedBodyEquations.W + 2]);
            tail[i] = y[TowedBodyEquations.Tail];
            roll[i] = y[TowedBodyEquations.RollTotal];
            twist[i] = y[TowedBodyEquations.Twist];
            tension[i] = equations.Tension;
            pull[i] = equations.Pull;
            end[i] = equations.LineEnd;
        }

        public ActionTrace ToTrace(ActionBody body, Knot knot, TowInput tow, ActionOptions options, ActionStatus status, double endTime, ActionStatistics statistics) => new()
        {
            Body = body,
            Knot = knot,
            Tow = tow,
            Options = options,
            Status = status,
            EndTime = endTime,
            Statistics = statistics,
            Time = time[..Count],
            Position = position[..Count],
            Attitude = attitude[..Count],
            Velocity = velocity[..Count],
            AngularVelocity = rate[..Count],
            TailAngle = tail[..Count],
            Tension = tension[..Count],
            LinePull = pull[..Count],
            LineEnd = end[..Count],
            RollTotal = roll[..Count],
            TwistTotal = twist[..Count],
        };
    }
}
