using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion.Line;
using LureSim.Stepping;
using LureSim.Tackle;
using LureSim.Water;
using MathNet.Numerics.RootFinding;

namespace LureSim.Motion;

/// <summary>Simulates one cast: splash-down, fall, retrieve.</summary>
public static class Retrieve
{
    /// <summary>Computes the track of a lure from splash-down to the end of the retrieve.</summary>
    /// <param name="water">The water.</param>
    /// <param name="lure">The lure.</param>
    /// <param name="line">The line.</param>
    /// <param name="rodTipHeight">Height of the rod tip above the surface (m), 0.05 to 10.</param>
    /// <param name="presentation">Cast, fall and retrieve.</param>
    /// <param name="zone">Strike zone, for events and flags.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="cancellation">Checked every step.</param>
    /// <returns>The track; see <see cref="Track.Status"/> for how it ended.</returns>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not a number.</exception>
    public static Track Simulate(
        WaterColumn water,
        LureProperties lure,
        LineProperties line,
        double rodTipHeight,
        Presentation presentation,
        StrikeZone zone,
        SimulationOptions? options = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(lure);
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(presentation);
        ArgumentNullException.ThrowIfNull(zone);
        options ??= new SimulationOptions();
        options.Validate();
        Guard.InRange(rodTipHeight, 0.05, 10);
        Guard.InRange(presentation.CastLength, 1, 200);
        Guard.InRange(presentation.RetrieveSpeed, presentation.Moves is [{ Kind: MoveKind.Reel }] ? 0.005 : 0, 5);
        Guard.InRange(presentation.LineLeftAtEnd, 0.3, 100);
        Guard.InRange(presentation.TimeLimit ?? 1, 0.1, 3600);
        Guard.InRange(presentation.Aim, -10, 10);
        Guard.InRange(presentation.DriftSpeed, 0, 3);
        Guard.InRange(presentation.DriftDirection, -10, 10);
        foreach (Move move in presentation.Moves)
        {
            Guard.InRange(move.Duration, move.MovesTip ? 0.02 : 0, move.Kind == MoveKind.Reel ? double.PositiveInfinity : 3600);
            Guard.InRange(move.ReelShare, 0, 1000);
            Guard.InRange(move.ReelShare * presentation.RetrieveSpeed, 0, 5);
            Guard.InRange(move.FeedSpeed, 0, 5);
            Guard.InRange(move.Up, -5, 5);
            Guard.InRange(move.Left, -5, 5);
            Guard.InRange(move.Out, -5, 5);
            Guard.InRange(move.Beats, 0, 20);
        }

        return new CastRun(water, lure, line, rodTipHeight, presentation, zone, options).Run(cancellation);
    }
}

/// <summary>One run: the loop of steps, samples and events.</summary>
internal sealed class CastRun
{
    // Time after bottom contact before the angler closes the bail (s), assumed.
    private const double ReactionTime = 0.3;

    // Residual of the energy balance above which the track says so: twenty times what a cast normally has.
    private const double EnergyLimit = 0.02;

    // Sub-intervals of a step in which an event is looked for.
    private const int EventSubdivisions = 4;

    // Height above the bottom that a falling lure is brought to before the step that touches (m), and slowest fall that this is done for (m/s).
    private const double ContactGap = 0.001;

    // First step into the bottom (s).
    private const double ContactStep = 0.005;

    // Lift that ends a bottom contact (m).
    private const double ContactHysteresis = 0.005;

    private readonly WaterColumn water;
    private readonly LureProperties lure;
    private readonly Presentation presentation;
    private readonly StrikeZone zone;
    private readonly SimulationOptions options;
    private readonly LineDynamics dynamics;
    private readonly LineIntegrator integrator;
    private readonly CastProgram program;
    private readonly int nodes;
    private readonly TrackBuilder track;
    private readonly double bottomZ;
    private readonly double grassZ;

    private double bottomTouchTime = double.PositiveInfinity;
    private bool onBottom;
    private bool inZone;
    private bool inGrass;
    private bool outOfWater;
    private double energyIntegral;
    private double powerBefore;
    private double stepBefore;
    private double energyExchanged;
    private double smallestStep = double.PositiveInfinity;

    public CastRun(WaterColumn water, LureProperties lure, LineProperties line, double rodTipHeight, Presentation presentation, StrikeZone zone, SimulationOptions options)
    {
        this.water = water;
        this.lure = lure = ScaledDragLure.Of(lure, options.LureDragFactor);
        this.presentation = presentation;
        this.zone = zone;
        this.options = options;
        bottomZ = -water.Depth;
        grassZ = water.GrassHeight > 0 ? bottomZ + water.GrassHeight : double.NegativeInfinity;
        LineProperties softened = line with { Main = Soften(line.Main, options.StiffnessLimit), Leader = Soften(line.Leader, options.StiffnessLimit) };
        dynamics = new LineDynamics(lure, softened, water, options.LineDrag, new LineMesh(options.Segments, options.Grading, options.AxialDampingRatio, options.RodTipStiffness));
        nodes = options.Segments;
        double chord = Math.Sqrt((presentation.CastLength * presentation.CastLength) + (rodTipHeight * rodTipHeight));
        double lineOut = chord * (1 + options.SplashSlack);
        double surface = double.IsFinite(water.Depth) ? water.Current.Speed(water.Depth, out _) : water.Current.Speed(1, out _);
        program = new CastProgram(
            rodTipHeight, lineOut, presentation.DriftAlong, presentation.DriftLeft, options.LineCapacity,
            surface * water.Current.DirectionX, surface * water.Current.DirectionY);
        integrator = new LineIntegrator(dynamics, program, EsdirkTableau.TrBdf2);
        track = new TrackBuilder(options.SampleInterval);
        double[] position = new double[3 * nodes];
        double[] velocity = new double[3 * nodes];
        SplashDownShape(presentation.CastLength, rodTipHeight, lineOut, dynamics.Fractions, position);

        integrator.Initialise(0, position, velocity);
        if (presentation.Fall == FallMode.SlackLine)
            integrator.OpenBail(new FreeSpool(options.SpoolFriction, options.SpoolDamping, 1e-3));
    }

    public Track Run(CancellationToken cancellation)
    {
        StepControl control = StepControl.Default.Scaled(options.ToleranceFactor);
        double step = 2e-4;
        int accepted = 0, rejected = 0;
        bool fishing = false, failed = false;
        integrator.Prepare();
        double energyStart = integrator.StoredEnergy.Total;
        RecordState();
        track.Sample(this, integrator.Time);
        double fallEnd = presentation.CountDown ?? options.FallLimit, reaction = options.FallOnly ? Math.Min(options.SampleInterval, ReactionTime) : ReactionTime;
        SimulationStatus status = SimulationStatus.Completed;
        SimulationEnd? end = null;
        while (true)
        {
            if (cancellation.IsCancellationRequested)
            {
                status = SimulationStatus.Cancelled;
                end = new SimulationEnd(SimulationEndReason.Cancelled, integrator.Time);
                break;
            }

            double now = integrator.Time;
            if (!fishing && (now >= Math.Min(fallEnd, bottomTouchTime + reaction) - 1e-9 || integrator.LineOut >= options.LineCapacity))
            {
                track.Shape(this);
                if (options.FallOnly) break;
                program.PlanRetrieve(now, integrator.LineOut, integrator.LineRate, presentation);
                integrator.CloseBail();
                fishing = true;
                step = Math.Min(step, 0.01);
                integrator.Prepare();
                track.PlanShapes(program.RetrieveStart, program.End);
            }

            if (now >= program.End - 1e-9) break;

            double limit = fishing ? Math.Min(program.NextBreak(now), program.End) : Math.Min(fallEnd, bottomTouchTime + reaction);
            bool clipped = false;
            double trial = Math.Min(step, control.MaximumStep);
            if (limit - now < trial * 1.0001)
            {
                trial = Math.Max(limit - now, control.MinimumStep);
                clipped = true;
            }
            else if (limit - now < 2 * trial)
            {
                // Two even steps to the break rather than one and a remnant.
                trial = 0.5 * (limit - now);
            }

            double contact = Math.Min(TimeToBottom(), TimeToCapacity());
            if (trial > contact)
            {
                trial = contact;
                clipped = false;
            }

            double error = integrator.TryStep(trial, control);
            double factor = ElementaryController.Factor(error);
            if (error > 1)
            {
                rejected++;
                step = trial * Math.Min(factor, 0.9);
                failed = true;
                if (step < control.MinimumStep)
                {
                    status = SimulationStatus.Failed;
                    end = new SimulationEnd(SimulationEndReason.StepTooSmall, now) { Step = step, Node = integrator.WorstNode(out double nodeDepth), Nodes = nodes, NodeDepth = nodeDepth };
                    break;
                }

                continue;
            }

            FindEvents(trial);
            track.Between(this, trial);
            integrator.Accept(trial);
            AddEnergy(trial);
            program.Observe(integrator.Time, integrator.Position, integrator.Velocity);
            accepted++;
            smallestStep = Math.Min(smallestStep, clipped ? smallestStep : trial);
            if (clipped) stepBefore = 0;
            if (clipped && fishing)
            {
                // A formula changes here: its derivatives jump, so start afresh with a modest step.
                step = Math.Min(step, 0.02);
            }
            else if (trial == contact)
            {
                step = Math.Min(step, ContactStep);
            }
            else if (!clipped || factor < 1)
            {
                // No growth right after a failure: the next step would fail as well.
                step = trial * (failed ? Math.Min(factor, 1) : factor);
            }

            failed = false;
            RecordState();
            track.EndStep(this);
        }

        double residual = Math.Abs(integrator.StoredEnergy.Total - energyStart - energyIntegral) / Math.Max(energyExchanged, 1e-12);
        if (status == SimulationStatus.Completed && residual > EnergyLimit)
        {
            end = new SimulationEnd(SimulationEndReason.EnergyOpen, integrator.Time) { Energy = (residual, EnergyLimit) };
        }

        var statistics = new SimulationStatistics(accepted, rejected, integrator.Evaluations, double.IsFinite(smallestStep) ? smallestStep : 0, residual);
        if (status == SimulationStatus.Completed && program.CutShort is { } why)
        {
            status = SimulationStatus.TimeLimit;
            end = why;
        }

        if (program.SwingEnd is { } swingEnd) track.AddEvent(swingEnd);
        if (status == SimulationStatus.Completed && fishing && program.LineComesIn)
            track.AddEvent(new TrackEvent(TrackEventKind.LineIn, integrator.Time, -integrator.Position[2], DistanceFromTip(integrator.Time, integrator.Position[0], integrator.Position[1])));
        return track.Build(status, end, statistics);
    }

    internal LineIntegrator Integrator => integrator;

    internal int Nodes => nodes;

    /// <summary>Flags at the current state.</summary>
    internal TrackState Flags(double time, double z)
    {
        TrackState state = TrackState.None;
        if (onBottom) state |= TrackState.OnBottom;
        if (z < grassZ) state |= TrackState.InGrass;
        if (zone.Contains(-z)) state |= TrackState.InZone;
        if (z > lure.ContactRadius) state |= TrackState.OutOfWater;
        if (time < program.RetrieveStart) state |= TrackState.Falling;
        else if (integrator.LineRate < -1e-6) state |= TrackState.Reeling;
        return state;
    }

    internal double SpeedThroughWater(double z, double vx, double vy, double vz)
    {
        double current = water.Current.Speed(z - bottomZ, out _);
        double ux = (current * water.Current.DirectionX) - vx, uy = (current * water.Current.DirectionY) - vy;
        return Math.Sqrt((ux * ux) + (uy * uy) + (vz * vz));
    }

    // Line at splash-down: it sags from the rod tip and lies on the water as far as its slack allows. A straight slack line would first fall and crack like a
    // whip, which costs most of the steps of a cast and moves no lure.
    private static void SplashDownShape(double distance, double height, double length, double[] fractions, double[] position)
    {
        const int Points = 400;
        double Z(double f, double sag) => Math.Max(0, (height * f) - (4 * sag * f * (1 - f)));
        double Length(double sag)
        {
            double sum = 0;
            for (int i = 1; i <= Points; i++)
            {
                double rise = Z((double)i / Points, sag) - Z((i - 1.0) / Points, sag), run = distance / Points;
                sum += Math.Sqrt((rise * rise) + (run * run));
            }

            return sum;
        }

        double high = height;
        while (Length(high) < length && high < 1e3 * height) high *= 2;
        double best = Length(high) < length ? high : Bisection.FindRoot(sag => (Length(sag) / length) - 1, 0, high, 1e-9, 100);

        // Nodes by their share of the arc length, from the lure.
        double scale = Length(best), along = 0;
        int node = 0;
        for (int i = 0; i < Points; i++)
        {
            double f0 = (double)i / Points, f1 = (i + 1.0) / Points, z0 = Z(f0, best), z1 = Z(f1, best);
            double piece = Math.Sqrt(((z1 - z0) * (z1 - z0)) + (distance * distance / ((double)Points * Points)));
            while (node < fractions.Length - 1 && fractions[node] * scale <= along + piece)
            {
                double part = ((fractions[node] * scale) - along) / piece;
                position[3 * node] = distance * (1 - f0 - (part / Points));
                position[(3 * node) + 2] = z0 + (part * (z1 - z0));
                node++;
            }

            along += piece;
        }
    }

    private static LineMaterial Soften(LineMaterial material, double limit) =>
        material.AxialStiffness > limit ? material with { AxialStiffness = limit } : material;

    private double DistanceFromTip(double time, double x, double y)
    {
        Span<double> tip = stackalloc double[3], velocity = stackalloc double[3];
        program.Tip(time, tip, velocity);
        return Math.Sqrt(((x - tip[0]) * (x - tip[0])) + ((y - tip[1]) * (y - tip[1])));
    }

    // Time until a falling lure is just above the bottom (s), infinite where that is not ahead: a step across the contact would fail.
    private double TimeToBottom()
    {
        double gap = integrator.Position[2] - bottomZ - lure.ContactRadius - ContactGap, speed = -integrator.Velocity[2];
        return gap > 0.2 * ContactGap && speed > ContactGap ? gap / speed : double.PositiveInfinity;
    }

    // Time until an open bail has let all line go (s).
    private double TimeToCapacity() =>
        integrator.SpoolIsFree && integrator.LineRate > 0 ? Math.Max((options.LineCapacity - integrator.LineOut) / integrator.LineRate, 1e-3) : double.PositiveInfinity;

    // Work of a step just accepted: by the parabola through the powers at its ends and at the start of the step before (Adams-Moulton, order 3). The stage between
    // its ends is left out: the trapezoidal rule that leads there lets stiff motions of the line ring, and the drag on them is none that the step has.
    private void AddEnergy(double step)
    {
        EnergyRates start = integrator.PreviousPowers, end = integrator.Powers;
        double work = 0.5 * (start.Total + end.Total);
        if (stepBefore > 0) work -= step * step / (6 * (step + stepBefore)) * (((end.Total - start.Total) / step) - ((start.Total - powerBefore) / stepBefore));
        powerBefore = start.Total;
        stepBefore = step;
        energyIntegral += step * work;

        // What one loses another gains: half of the trapezoidal sum.
        energyExchanged += 0.25 * step * (start.Exchange + end.Exchange);
    }

    private void RecordState() => track.Record(this, dynamics.Tension[nodes - 1], dynamics.Tension[0]);

    private void FindEvents(double step)
    {
        double start = integrator.Time;
        for (int i = 1; i <= EventSubdivisions; i++)
        {
            double from = start + (step * (i - 1) / EventSubdivisions), to = start + (step * i / EventSubdivisions);
            double z = LureZ(to, step);
            ZoneCrossing(z <= -zone.Top && z >= -zone.Bottom, ref inZone, from, to, step, TrackEventKind.EntersZone, TrackEventKind.LeavesZone);
            if (grassZ > double.NegativeInfinity) Level(z < grassZ, ref inGrass, grassZ, from, to, step, TrackEventKind.EntersGrass, TrackEventKind.LeavesGrass);
            double touch = bottomZ + lure.ContactRadius;
            Level(z < (onBottom ? touch + ContactHysteresis : touch), ref onBottom, onBottom ? touch + ContactHysteresis : touch, from, to, step, TrackEventKind.BottomContact, TrackEventKind.LeavesBottom);
            if (onBottom && double.IsPositiveInfinity(bottomTouchTime)) bottomTouchTime = to;
            Level(z > lure.ContactRadius, ref outOfWater, lure.ContactRadius, from, to, step, TrackEventKind.BreaksSurface, null);
        }
    }

    private void ZoneCrossing(bool now, ref bool state, double from, double to, double step, TrackEventKind enters, TrackEventKind leaves)
    {
        if (now == state) return;
        state = now;
        double z = LureZ(now ? from : to, step);
        double level = z > -zone.Top ? -zone.Top : -zone.Bottom;
        AddLocated(now ? enters : leaves, level, from, to, step);
    }

    private void Level(bool now, ref bool state, double level, double from, double to, double step, TrackEventKind enters, TrackEventKind? leaves)
    {
        if (now == state) return;
        state = now;
        TrackEventKind? kind = now ? enters : leaves;
        if (kind is { } k) AddLocated(k, level, from, to, step);
    }

    private void AddLocated(TrackEventKind kind, double level, double from, double to, double step)
    {
        double time = to;
        if (Brent.TryFindRoot(t => LureZ(t, step) - level, from, to, 1e-7, 60, out double root)) time = root;
        track.AddEvent(new TrackEvent(kind, time, -LureZ(time, step), DistanceFromTip(time, LureCoordinate(time, step, 0), LureCoordinate(time, step, 1))));
    }

    private double LureZ(double time, double step) => LureCoordinate(time, step, 2);

    /// <summary>Dense output of a lure coordinate: the cubic Hermite polynomial of the step being accepted.</summary>
    internal double LureCoordinate(double time, double step, int axis) => Hermite(time, step, axis, out _);

    internal double Hermite(double time, double step, int axis, out double rate)
    {
        double x = (time - integrator.Time) / step;
        double p0 = integrator.Position[axis], p1 = integrator.NextPosition[axis];
        double m0 = integrator.Velocity[axis] * step, m1 = integrator.NextVelocity[axis] * step;
        double x2 = x * x;
        rate = ((6 * (x2 - x) * (p0 - p1)) + (((3 * x2) - (4 * x) + 1) * m0) + (((3 * x2) - (2 * x)) * m1)) / step;
        return ((1 + (2 * x)) * (1 - x) * (1 - x) * p0) + (x * (1 - x) * (1 - x) * m0) + (x2 * (3 - (2 * x)) * p1) + (x2 * (x - 1) * m1);
    }
}
