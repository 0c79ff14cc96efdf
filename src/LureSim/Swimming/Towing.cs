using LureSim.Stepping;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming;

/// <summary>Runs a lure on its line through a window of some seconds.</summary>
public static class Towing
{
    // Means over stretches of this length (s) are compared to tell whether a tow goes on in one way; some beats of a tail.
    private const double LookInterval = 0.5;

    // Twice over is a spin; and what goes on in one way: change of the mean roll and heading from stretch to stretch, and turn about the line within one (radians).
    private const double ClearTwist = 4 * Math.PI, SameWay = 1.5 * Math.PI / 180, SmallTwist = 10 * Math.PI / 180;

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
        var stepper = new ExplicitRungeKutta(ExplicitTableau.DormandPrince, equations, options.Tolerance);
        equations.Initial.AsSpan().CopyTo(stepper.State);
        int capacity = Math.Min((int)Math.Floor((options.Duration / options.OutputInterval) + 1e-9), 1_000_000) + 1;
        var samples = new Samples(capacity);
        double energyAtStart = equations.KineticEnergy(stepper.State);
        stepper.Start(0, 1e-3);
        double[] state = new double[BodyState.Size];
        samples.Add(0, stepper.State, equations);
        SimulationStatus status = SimulationStatus.Completed;
        double look = options.SettlingTime + (2 * LookInterval);
        while (stepper.Time < options.Duration)
        {
            if (cancellation.IsCancellationRequested)
            {
                status = SimulationStatus.Cancelled;
                break;
            }

            // Bounded work: rejected steps count.
            if (stepper.Steps + stepper.Rejected >= options.MaximumSteps)
            {
                status = SimulationStatus.StepLimit;
                break;
            }

            if (!stepper.Advance(options.Duration, 0.05))
            {
                status = SimulationStatus.Failed;
                break;
            }

            while (samples.Count < capacity && samples.Count * options.OutputInterval <= stepper.Time + 1e-12)
            {
                double t = samples.Count * options.OutputInterval;
                stepper.Interpolate(t, state);
                samples.Add(t, state, equations);
            }

            if (options.StopsWhenClear && stepper.Time >= look)
            {
                if (samples.IsClear(options, tow)) break;
                look += LookInterval;
            }
        }

        double work = BodyState.Of(stepper.State).Work, exchanged = BodyState.Of(stepper.State).Exchanged;
        double change = equations.KineticEnergy(stepper.State) - energyAtStart;
        double residual = Math.Abs(change - work) / Math.Max(Math.Max(exchanged, energyAtStart), 1e-12);
        double smallest = double.IsFinite(stepper.SmallestStep) ? stepper.SmallestStep : 0;
        var statistics = new SimulationStatistics(stepper.Steps, stepper.Rejected, stepper.Evaluations, smallest, residual);
        return samples.ToTrace(body, knot, tow, options, status, stepper.Time, statistics) with { QuaternionDrift = stepper.Drift };
    }

    private sealed class Samples(int capacity)
    {
        private readonly double[] time = new double[capacity], tail = new double[capacity], tension = new double[capacity], roll = new double[capacity], sideways = new double[capacity], upright = new double[capacity], twist = new double[capacity];
        private readonly Vector3d[] position = new Vector3d[capacity], velocity = new Vector3d[capacity], rate = new Vector3d[capacity], pull = new Vector3d[capacity], end = new Vector3d[capacity];
        private readonly Attitude[] attitude = new Attitude[capacity];

        public int Count { get; private set; }

        public void Add(double t, ReadOnlySpan<double> y, TowedBodyEquations equations)
        {
            ref readonly BodyState s = ref BodyState.Of(y);
            LineState line = equations.LineAt(t, y);
            int i = Count++;
            time[i] = t;
            position[i] = s.Position;
            double norm = s.Attitude.Norm;
            attitude[i] = new(s.Attitude.W / norm, s.Attitude.X / norm, s.Attitude.Y / norm, s.Attitude.Z / norm);
            velocity[i] = s.Velocity;
            rate[i] = s.TurnRate;
            tail[i] = s.TailAngle;
            sideways[i] = s.Sideways;
            upright[i] = s.Upright;
            roll[i] = s.RollTotal;
            twist[i] = s.Twist;
            tension[i] = line.Tension;
            pull[i] = s.Attitude.ToWater(line.Tension * line.Direction);
            end[i] = line.End;
        }

        /// <summary>True when a steady tow has shown what it does.</summary>
        public bool IsClear(ActionOptions options, TowInput tow)
        {
            int from = Math.Min(Count - 1, (int)Math.Ceiling(options.SettlingTime / options.OutputInterval));
            if (tow.Mode != TowMode.Pulled || tow.Strokes.Count > 0 || tow.SpeedChanges.Count > 0) return false;
            if (Math.Abs(twist[Count - 1] - twist[from]) > ClearTwist) return true;
            int stretch = (int)Math.Round(LookInterval / options.OutputInterval);
            if (stretch < 4 || Count < 2 * stretch) return false;
            (double Roll, double Yaw, double Twist) last = Mean(Count - stretch, Count), before = Mean(Count - (2 * stretch), Count - stretch);
            return Math.Abs(last.Roll - before.Roll) < SameWay && Math.Abs(last.Yaw - before.Yaw) < SameWay && Math.Abs(last.Twist) < SmallTwist;
        }

        private (double Roll, double Yaw, double Twist) Mean(int from, int to)
        {
            double sumRoll = 0, sumYaw = 0;
            for (int i = from; i < to; i++)
            {
                sumRoll += roll[i];
                sumYaw += attitude[i].Yaw;
            }

            return (sumRoll / (to - from), sumYaw / (to - from), twist[to - 1] - twist[from]);
        }

        public ActionTrace ToTrace(ActionBody body, Knot knot, TowInput tow, ActionOptions options, SimulationStatus status, double endTime, SimulationStatistics statistics) => new()
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
            BendSideways = sideways[..Count],
            BendUpright = upright[..Count],
            Tension = tension[..Count],
            LinePull = pull[..Count],
            LineEnd = end[..Count],
            RollTotal = roll[..Count],
            TwistTotal = twist[..Count],
        };
    }
}
