using LureSim.Motion.Integrators;
using LureSim.Scenarios;

namespace LureSim.Motion;

/// <summary>
/// What angler and reel do, as functions of time: a fixed rod tip with raised-cosine lifts, and line speed in stretches joined by smooth ramps.
/// A new retrieve is new data here, not new code.
/// </summary>
internal sealed class CastProgram : ILineBoundary
{
    // Time in which the reel comes up to speed or stops (s), assumed.
    private const double ReelRamp = 0.25;

    // Time in which a closing bail stops running line (s), assumed.
    private const double BailRamp = 0.15;

    private readonly double tipHeight;
    private readonly List<Stretch> stretches = [];
    private readonly List<Lift> lifts = [];
    private readonly List<double> breaks = [];
    private int lastStretch;

    public CastProgram(double tipHeight, double initialLength)
    {
        this.tipHeight = tipHeight;
        stretches.Add(new Stretch(0, double.PositiveInfinity, initialLength, 0, 0));
    }

    /// <summary>Time at which the retrieve's programme ends (s); infinite before one is planned.</summary>
    public double End { get; private set; } = double.PositiveInfinity;

    /// <summary>Time at which the reel first turns (s); infinite before a retrieve is planned.</summary>
    public double RetrieveStart { get; private set; } = double.PositiveInfinity;

    /// <summary>Plans the retrieve from the state at the end of the fall.</summary>
    /// <param name="time">Now (s).</param>
    /// <param name="length">Line out (m).</param>
    /// <param name="rate">Line speed off the spool (m/s).</param>
    /// <param name="presentation">The retrieve.</param>
    public void PlanRetrieve(double time, double length, double rate, Presentation presentation)
    {
        stretches.Clear();
        lifts.Clear();
        breaks.Clear();
        lastStretch = 0;
        double t = time, line = length;
        void Add(double duration, double from, double to)
        {
            stretches.Add(new Stretch(t, duration, line, from, to));
            breaks.Add(t);
            line += 0.5 * (from + to) * duration;
            t += duration;
        }

        Add(BailRamp, rate, 0);
        RetrieveStart = t;
        double speed = presentation.RetrieveSpeed, endLength = Math.Min(presentation.LineLeftAtEnd, line);
        bool steady = presentation.ReelFor is null || presentation.PauseFor <= 0;
        double lineInRamps = speed * ReelRamp;
        double reelFor = presentation.ReelFor ?? 0;
        while (line - endLength > 1e-6)
        {
            double left = line - endLength;
            if (left < 1.2 * lineInRamps)
            {
                // Too short for a full ramp up and down: a slower last pull.
                double last = left / ReelRamp;
                Add(ReelRamp, 0, -last);
                Add(ReelRamp, -last, 0);
                break;
            }

            double steadyTime = steady ? (left - lineInRamps) / speed : Math.Min(Math.Max(0, reelFor - ReelRamp), (left - lineInRamps) / speed);
            Add(ReelRamp, 0, -speed);
            if (steadyTime > 0) Add(steadyTime, -speed, -speed);
            Add(ReelRamp, -speed, 0);
            if (steady) break;
            if (line - endLength <= 1e-6) break;
            double pauseStart = t;
            double twitchTime = presentation.Twitches * presentation.TwitchPeriod;
            for (int i = 0; i < presentation.Twitches; i++)
            {
                double start = pauseStart + (i * presentation.TwitchPeriod);
                lifts.Add(new Lift(start, presentation.TwitchPeriod, presentation.TwitchHeight));
                breaks.Add(start);
                breaks.Add(start + presentation.TwitchPeriod);
            }

            Add(Math.Max(presentation.PauseFor, twitchTime), 0, 0);
        }

        End = t;
        stretches.Add(new Stretch(t, double.PositiveInfinity, line, 0, 0));
        breaks.Add(t);
        breaks.Sort();
    }

    /// <summary>The next time after the given one at which a formula changes; infinite if there is none.</summary>
    public double NextBreak(double time)
    {
        int index = breaks.BinarySearch(time + 1e-9);
        if (index < 0) index = ~index;
        return index < breaks.Count ? breaks[index] : double.PositiveInfinity;
    }

    /// <inheritdoc/>
    public void Tip(double time, Span<double> position, Span<double> velocity)
    {
        double z = tipHeight, vz = 0;
        foreach (Lift lift in lifts)
        {
            double x = time - lift.Start;
            if (x <= 0) break;
            if (x >= lift.Period) continue;
            double omega = 2 * Math.PI / lift.Period;
            z += 0.5 * lift.Height * (1 - Math.Cos(omega * x));
            vz += 0.5 * lift.Height * omega * Math.Sin(omega * x);
        }

        position[0] = 0;
        position[1] = 0;
        position[2] = z;
        velocity[0] = 0;
        velocity[1] = 0;
        velocity[2] = vz;
    }

    /// <inheritdoc/>
    public void Line(double time, out double length, out double rate, out double acceleration)
    {
        int index = Math.Min(lastStretch, stretches.Count - 1);
        while (index + 1 < stretches.Count && time >= stretches[index + 1].Start) index++;
        while (index > 0 && time < stretches[index].Start) index--;
        lastStretch = index;
        Stretch s = stretches[index];
        double x = time - s.Start;
        if (double.IsPositiveInfinity(s.Duration) || x <= 0)
        {
            length = s.Length;
            rate = s.From;
            acceleration = 0;
            return;
        }

        // Smoothstep between the rates: rate = a + (b - a)(3 u^2 - 2 u^3).
        double u = Math.Min(x / s.Duration, 1);
        double change = s.To - s.From;
        rate = s.From + (change * u * u * (3 - (2 * u)));
        acceleration = change * 6 * u * (1 - u) / s.Duration;
        length = s.Length + (s.Duration * ((s.From * u) + (change * u * u * u * (1 - (0.5 * u)))));
    }

    private readonly record struct Stretch(double Start, double Duration, double Length, double From, double To);

    private readonly record struct Lift(double Start, double Period, double Height);
}
