using LureSim.Model;
using LureSim.Motion.Line;

namespace LureSim.Motion;

/// <summary>
/// What angler and reel do, as functions of time: the rod tip in three dimensions, and the line out. Both are laid out in stretches with continuous second
/// derivatives inside; where a formula changes is a break, which the integrator steps onto.
/// </summary>
/// <remarks>
/// A retrieve is a list of moves (data). Line speed changes by a smoothstep over <see cref="ReelRamp"/>: speeding up within the move, slowing down before the next one. The
/// rod tip goes from place to place by a quintic smoothstep, and out and back by a raised cosine. A drift carries it along at constant velocity.
/// </remarks>
internal sealed class CastProgram : ILineBoundary
{
    /// <summary>Longest retrieve that is computed (s of simulated time) where the scenario sets no end: half an hour.</summary>
    public const double LongestRetrieve = 1800;

    // Time in which the reel comes up to speed or stops (s), assumed.
    private const double ReelRamp = 0.25;

    // Time in which a closing bail stops running line (s), assumed.
    private const double BailRamp = 0.15;

    // Line that is as good as none (m).
    private const double NoLine = 1e-6;

    // Many times the steps of the hardest sensible retrieve (docs/motion.md): no run goes on for ever.
    private const int StepBudget = 400_000;

    private readonly double tipHeight;
    private readonly double driftX;
    private readonly double driftY;
    private readonly double capacity;
    private readonly double streamX;
    private readonly double streamY;
    private readonly List<Stretch> stretches = [];
    private readonly List<TipPiece> pieces = [];
    private readonly List<double> breaks = [];
    private int lastStretch;
    private int lastPiece;
    private int steps;

    // Where the plan has got to.
    private IReadOnlyList<Move> cycle = [];
    private bool repeats;
    private double speed;
    private double endLength;
    private double deadline;
    private bool deadlineIsAsked;
    private double time;
    private double line;
    private double rate;
    private double up;
    private double left;
    private double outward;
    private Swing? swing;

    /// <summary>Creates the programme of the fall: a rod tip that at most drifts, and a fixed length of line.</summary>
    /// <param name="tipHeight">Height of the rod tip (m).</param>
    /// <param name="initialLength">Line out (m).</param>
    /// <param name="driftX">Drift along the cast (m/s).</param>
    /// <param name="driftY">Drift to the left (m/s).</param>
    /// <param name="capacity">Line on the spool (m).</param>
    /// <param name="currentX">Current at the surface along the cast (m/s).</param>
    /// <param name="currentY">Current at the surface to the left (m/s).</param>
    public CastProgram(
        double tipHeight, double initialLength, double driftX = 0, double driftY = 0, double capacity = double.PositiveInfinity, double currentX = 0, double currentY = 0)
    {
        this.tipHeight = tipHeight;
        this.driftX = driftX;
        this.driftY = driftY;
        this.capacity = capacity;

        // As the rod meets it.
        streamX = currentX - driftX;
        streamY = currentY - driftY;
        stretches.Add(new Stretch(0, double.PositiveInfinity, initialLength, 0, 0));
    }

    /// <summary>Time at which the retrieve's programme ends (s); infinite before one is planned.</summary>
    public double End { get; private set; } = double.PositiveInfinity;

    /// <summary>Time at which the reel first turns (s); infinite before a retrieve is planned.</summary>
    public double RetrieveStart { get; private set; } = double.PositiveInfinity;

    /// <summary>Why the retrieve was cut short; null if it ends as the scenario says.</summary>
    public SimulationEnd? CutShort { get; private set; }

    /// <summary>True if the retrieve ends with all line in that is to come in.</summary>
    public bool LineComesIn { get; private set; }

    /// <summary>The end of a swing, when the lure was found to hang below the rod; null if it has not swung, or was not done when its time was up.</summary>
    public TrackEvent? SwingEnd { get; private set; }

    /// <summary>Plans the retrieve from the state at the end of the fall.</summary>
    /// <param name="now">Now (s).</param>
    /// <param name="length">Line out (m).</param>
    /// <param name="lineRate">Line speed off the spool (m/s).</param>
    /// <param name="presentation">The retrieve.</param>
    public void PlanRetrieve(double now, double length, double lineRate, Presentation presentation)
    {
        stretches.Clear();
        pieces.Clear();
        breaks.Clear();
        lastStretch = lastPiece = 0;
        cycle = presentation.Moves;
        repeats = presentation.Repeats;
        speed = presentation.RetrieveSpeed;
        time = now;
        line = length;
        endLength = Math.Min(presentation.LineLeftAtEnd, length);
        Add(BailRamp, lineRate, 0);
        rate = 0;
        up = left = outward = 0;
        RetrieveStart = time;
        deadlineIsAsked = presentation.TimeLimit is not null;
        deadline = time + (presentation.TimeLimit ?? LongestRetrieve);
        Plan(0);
    }

    /// <summary>Takes note of an accepted step: ends a swing whose lure hangs below the rod, and a run that goes on for ever.</summary>
    /// <param name="now">Time (s).</param>
    /// <param name="position">Positions of lure, line and rod tip (m).</param>
    /// <param name="velocity">Their velocities (m/s).</param>
    public void Observe(double now, ReadOnlySpan<double> position, ReadOnlySpan<double> velocity)
    {
        if (++steps >= StepBudget)
        {
            CutShort = new SimulationEnd(SimulationEndReason.OutOfSteps, now) { Steps = StepBudget };
            End = now;
            LineComesIn = false;
            return;
        }

        if (swing is not { } s) return;
        int tip = position.Length - 3;
        double x = position[0] - position[tip], y = position[1] - position[tip + 1];
        if (!s.Watch.IsOver(now, x, y, velocity[0] - velocity[tip], velocity[1] - velocity[tip + 1])) return;
        swing = null;
        SwingEnd = new TrackEvent(TrackEventKind.SwingEnds, now, -position[2], Math.Sqrt((x * x) + (y * y)));
        Line(now, out double length, out double lineRate, out _);
        stretches.RemoveAll(stretch => stretch.Start > now);
        pieces.RemoveAll(piece => piece.Start > now);
        breaks.RemoveAll(b => b > now);
        time = now;
        line = length;
        rate = lineRate;
        (up, left, outward) = (s.Up, s.Left, s.Outward);
        LineComesIn = false;
        CutShort = null;
        Plan(s.Next);
    }

    /// <summary>The next time after the given one at which a formula changes; infinite if there is none.</summary>
    public double NextBreak(double after)
    {
        int index = breaks.BinarySearch(after + 1e-9);
        if (index < 0) index = ~index;
        return index < breaks.Count ? breaks[index] : double.PositiveInfinity;
    }

    /// <inheritdoc/>
    public void Tip(double at, Span<double> position, Span<double> velocity)
    {
        double x = driftX * at, y = driftY * at, z = tipHeight, vx = driftX, vy = driftY, vz = 0;
        if (pieces.Count > 0 && at > pieces[0].Start)
        {
            int index = Math.Clamp(lastPiece, 0, pieces.Count - 1);
            while (index + 1 < pieces.Count && at >= pieces[index + 1].Start) index++;
            while (index > 0 && at < pieces[index].Start) index--;
            lastPiece = index;
            TipPiece p = pieces[index];
            double u = Math.Clamp((at - p.Start) / p.Duration, 0, 1), share, shareRate;
            if (p.IsBeat)
            {
                share = 0.5 * (1 - Math.Cos(2 * Math.PI * u));
                shareRate = Math.PI * Math.Sin(2 * Math.PI * u) / p.Duration;
            }
            else
            {
                share = u * u * u * (10 + (u * (-15 + (6 * u))));
                shareRate = 30 * u * u * (1 - u) * (1 - u) / p.Duration;
            }

            x += p.FromOut + (share * p.Out);
            y += p.FromLeft + (share * p.Left);
            z += p.FromUp + (share * p.Up);
            vx += shareRate * p.Out;
            vy += shareRate * p.Left;
            vz += shareRate * p.Up;
        }

        position[0] = x;
        position[1] = y;
        position[2] = z;
        velocity[0] = vx;
        velocity[1] = vy;
        velocity[2] = vz;
    }

    /// <inheritdoc/>
    public void Line(double at, out double length, out double lineRate, out double acceleration)
    {
        int index = Math.Min(lastStretch, stretches.Count - 1);
        while (index + 1 < stretches.Count && at >= stretches[index + 1].Start) index++;
        while (index > 0 && at < stretches[index].Start) index--;
        lastStretch = index;
        Stretch s = stretches[index];
        double x = at - s.Start;
        if (double.IsPositiveInfinity(s.Duration) || x <= 0)
        {
            length = s.Length;
            lineRate = s.From;
            acceleration = 0;
            return;
        }

        // Smoothstep between the rates: rate = a + (b - a)(3 u^2 - 2 u^3).
        double u = Math.Min(x / s.Duration, 1);
        double change = s.To - s.From;
        lineRate = s.From + (change * u * u * (3 - (2 * u)));
        acceleration = change * 6 * u * (1 - u) / s.Duration;
        length = s.Length + (s.Duration * ((s.From * u) + (change * u * u * u * (1 - (0.5 * u)))));
    }

    // Lays out moves from the one of this index to the end of the retrieve.
    private void Plan(int next)
    {
        bool lineIsIn = line - endLength <= NoLine;
        double cycleStart = time;
        while (!lineIsIn)
        {
            if (next == cycle.Count)
            {
                if (!repeats || time <= cycleStart) break;
                next = 0;
                cycleStart = time;
            }

            if (time >= deadline) break;
            Move move = cycle[next++];
            double target = move.FeedSpeed - (move.ReelShare * speed);
            if (rate != 0 && (target * rate <= 0 || Math.Abs(target) < Math.Abs(rate)) && SlowDown(target * rate <= 0 ? 0 : target))
            {
                lineIsIn = true;
                break;
            }

            double from = time;
            if (move.MovesTip) MoveTip(move);
            (double swingUp, double swingLeft, double swingOut) = (up, left, outward);
            lineIsIn = Run(target, move.Duration);
            if (move.Kind == MoveKind.Swing) swing = new Swing(new SwingWatch(from, time, streamX, streamY), next, swingUp, swingLeft, swingOut);
        }

        if (!lineIsIn && rate != 0) lineIsIn = SlowDown(0);
        LineComesIn = lineIsIn;
        End = time;
        if (End > deadline)
        {
            End = deadline;
            LineComesIn = false;
        }

        if (End >= deadline && !LineComesIn && !deadlineIsAsked)
            CutShort = new SimulationEnd(SimulationEndReason.LineNotIn, LongestRetrieve);
        stretches.Add(new Stretch(time, double.PositiveInfinity, line, 0, 0));
        breaks.Add(time);
        breaks.Sort();
    }

    // Changes the rate towards a smaller one; true if the line is in by that.
    private bool SlowDown(double target)
    {
        double leftOver = line - endLength;
        bool reeling = rate < 0;
        if (reeling && leftOver + (0.5 * (rate + target) * ReelRamp) < -0.5 * target * ReelRamp) return Stop(leftOver);
        if (!reeling && rate > 0)
        {
            // Never past the end of the line on the spool.
            double room = Math.Max(0, capacity - line), way = 0.5 * (rate + target) * ReelRamp;
            if (way > room)
            {
                Add(Math.Max(2 * room / rate, 1e-3), rate, 0);
                rate = 0;
                return false;
            }
        }

        Add(ReelRamp, rate, target);
        rate = target;
        return reeling && target == 0 && line - endLength <= NoLine;
    }

    // Comes to rest exactly where the line is in.
    private bool Stop(double leftOver)
    {
        if (leftOver > NoLine) Add(2 * leftOver / -rate, rate, 0);
        rate = 0;
        return true;
    }

    // Speeds up to a rate and keeps it; true if the line is in at the end.
    private bool Run(double target, double duration)
    {
        double ramp = target == rate ? 0 : ReelRamp;
        if (target < 0)
        {
            double speedNow = -rate, reel = -target, leftOver = line - endLength;

            // Line that comes in while the reel speeds up, and while it stops.
            double need = (0.5 * (speedNow + reel) * ramp) + (0.5 * reel * ReelRamp);
            if (speedNow == 0 && leftOver < 1.2 * need)
            {
                // Too short for a full ramp up and down: a slower last pull.
                double last = leftOver / ReelRamp;
                Add(ReelRamp, 0, -last);
                Add(ReelRamp, -last, 0);
                return true;
            }

            if (leftOver < need) return Stop(leftOver);
            double wanted = Math.Max(0, duration - ramp), possible = (leftOver - need) / reel;
            bool toEnd = possible <= wanted;
            if (ramp > 0) Add(ramp, rate, target);
            rate = target;
            double steady = Math.Min(wanted, possible);
            if (steady > 0) Add(steady, target, target);
            if (!toEnd) return false;
            Add(ReelRamp, target, 0);
            rate = 0;
            return true;
        }

        if (double.IsPositiveInfinity(duration)) duration = Math.Max(0, deadline - time);
        if (target > 0)
        {
            double room = capacity - line - (0.5 * (rate + target) * ramp) - (0.5 * target * ReelRamp);
            if (room > 0)
            {
                double start = time;
                if (ramp > 0) Add(ramp, rate, target);
                rate = target;
                double wanted = Math.Max(0, duration - ramp), steady = Math.Min(wanted, room / target);
                if (steady > 0) Add(steady, target, target);
                if (steady >= wanted) return false;
                SlowDown(0);
                duration -= time - start;
            }
            else if (rate > 0)
            {
                SlowDown(0);
            }
        }

        if (duration > 0) Add(duration, 0, 0);
        return false;
    }

    private void MoveTip(Move move)
    {
        bool beats = move.Beats > 0;
        int count = Math.Max(1, move.Beats);
        double each = Math.Max(move.Duration, 1e-3) / count;
        for (int i = 0; i < count; i++)
        {
            double start = time + (i * each);
            pieces.Add(new TipPiece(start, each, up, left, outward, move.Up, move.Left, move.Out, beats));
            breaks.Add(start);
            breaks.Add(start + each);
        }

        if (beats) return;
        up += move.Up;
        left += move.Left;
        outward += move.Out;
    }

    private void Add(double duration, double from, double to)
    {
        stretches.Add(new Stretch(time, duration, line, from, to));
        breaks.Add(time);
        line += 0.5 * (from + to) * duration;
        time += duration;
    }

    private readonly record struct Stretch(double Start, double Duration, double Length, double From, double To);

    private readonly record struct TipPiece(double Start, double Duration, double FromUp, double FromLeft, double FromOut, double Up, double Left, double Out, bool IsBeat);

    // A swing under way: what ends it, the move after it, and the rod tip's place.
    private readonly record struct Swing(SwingWatch Watch, int Next, double Up, double Left, double Outward);
}
