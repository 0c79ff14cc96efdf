using LureSim.Stepping;

namespace LureSim.Motion;

/// <summary>Collects samples at even intervals of time from steps of uneven length.</summary>
internal sealed class TrackBuilder
{
    private readonly double interval;
    private readonly List<double> time = new(1024), x = new(1024), y = new(1024), z = new(1024);
    private readonly List<double> vx = new(1024), vy = new(1024), vz = new(1024), speed = new(1024);
    private readonly List<double> rodTension = new(1024), lureTension = new(1024), rodAngle = new(1024), lureAngle = new(1024), lineOut = new(1024);
    private readonly List<TrackState> state = new(1024);
    private readonly List<TrackEvent> events = [];
    private readonly List<LineShape> shapes = [];
    private readonly Queue<double> shapeTimes = new();

    // End values of the step before and of the step now, for linear interpolation of tension and angles.
    private Ends previous, current;
    private int firstPending;

    public TrackBuilder(double interval) => this.interval = interval;

    /// <summary>Takes events, in any order.</summary>
    public ICollection<TrackEvent> Events => events;

    /// <summary>Stores tensions and angles at the integrator's current state.</summary>
    public void Record(CastRun run, double tipTension, double bodyTension)
    {
        previous = current;
        ReadOnlySpan<double> p = run.Integrator.Position;
        int last = 3 * (run.Nodes - 1);
        current = new Ends(
            run.Integrator.Time,
            Math.Max(0, tipTension),
            Math.Max(0, bodyTension),
            Math.Atan2(p[last + 5] - p[last + 2], Horizontal(p[last] - p[last + 3], p[last + 1] - p[last + 4])),
            Math.Atan2(p[5] - p[2], Horizontal(p[3] - p[0], p[4] - p[1])),
            run.Integrator.LineOut);
    }

    /// <summary>Adds a sample at the integrator's current state.</summary>
    public void Sample(CastRun run, double now)
    {
        ReadOnlySpan<double> p = run.Integrator.Position, v = run.Integrator.Velocity;
        AddKinematics(run, now, p[0], p[1], p[2], v[0], v[1], v[2]);
        EndStep(run);
    }

    /// <summary>Adds the kinematics of all sample times inside the step about to be accepted.</summary>
    public void Between(CastRun run, in LureStep step)
    {
        double end = step.Start + step.Length;
        while (true)
        {
            double next = time.Count * interval;
            if (next > end + 1e-12) break;
            double px = step.X.At(next, out double wx);
            double py = step.Y.At(next, out double wy);
            double pz = step.Z.At(next, out double wz);
            AddKinematics(run, next, px, py, pz, wx, wy, wz);
        }
    }

    /// <summary>Completes the samples of the step just accepted with tensions and angles.</summary>
    public void EndStep(CastRun run)
    {
        for (; firstPending < time.Count; firstPending++)
        {
            double span = current.Time - previous.Time;
            double f = span > 0 ? Math.Clamp((time[firstPending] - previous.Time) / span, 0, 1) : 1;
            rodTension.Add(Mix(previous.RodTension, current.RodTension, f));
            lureTension.Add(Mix(previous.LureTension, current.LureTension, f));
            rodAngle.Add(Mix(previous.RodAngle, current.RodAngle, f));
            lureAngle.Add(Mix(previous.LureAngle, current.LureAngle, f));
            lineOut.Add(Mix(previous.LineOut, current.LineOut, f));
        }

        while (shapeTimes.Count > 0 && run.Integrator.Time >= shapeTimes.Peek())
        {
            shapeTimes.Dequeue();
            Shape(run);
        }
    }

    /// <summary>Plans line shapes at quarters of the retrieve.</summary>
    public void PlanShapes(double start, double end)
    {
        for (int i = 1; i <= 3; i++) shapeTimes.Enqueue(start + ((end - start) * i / 4));
    }

    /// <summary>Stores the line's shape now.</summary>
    public void Shape(CastRun run)
    {
        int count = run.Nodes + 1;
        ReadOnlySpan<double> p = run.Integrator.Position;
        double[] sx = new double[count];
        double[] sy = new double[count];
        double[] sz = new double[count];
        for (int j = 0; j < count; j++)
        {
            sx[j] = p[3 * j];
            sy[j] = p[(3 * j) + 1];
            sz[j] = p[(3 * j) + 2];
        }

        shapes.Add(new LineShape(run.Integrator.Time, sx, sy, sz));
    }

    public Track Build(SimulationStatus status, SimulationEnd? end, SimulationStatistics statistics) => new()
    {
        Status = status,
        End = end,
        Statistics = statistics,
        Time = [.. time],
        X = [.. x],
        Y = [.. y],
        Z = [.. z],
        VelocityX = [.. vx],
        VelocityY = [.. vy],
        VelocityZ = [.. vz],
        SpeedThroughWater = [.. speed],
        RodTension = [.. rodTension],
        LureTension = [.. lureTension],
        RodAngle = [.. rodAngle],
        LureAngle = [.. lureAngle],
        LineOut = [.. lineOut],
        State = [.. state],
        Events = [.. events.OrderBy(e => e.Time)],
        Shapes = shapes,
    };

    private static double Horizontal(double dx, double dy) => Math.Sqrt((dx * dx) + (dy * dy));

    private static double Mix(double a, double b, double f) => a + (f * (b - a));

    private void AddKinematics(CastRun run, double t, double px, double py, double pz, double wx, double wy, double wz)
    {
        time.Add(t);
        x.Add(px);
        y.Add(py);
        z.Add(pz);
        vx.Add(wx);
        vy.Add(wy);
        vz.Add(wz);
        speed.Add(run.SpeedThroughWater(px, py, pz, wx, wy, wz));
        state.Add(run.Flags(t, px, py, pz));
    }

    private readonly record struct Ends(double Time, double RodTension, double LureTension, double RodAngle, double LureAngle, double LineOut);
}
