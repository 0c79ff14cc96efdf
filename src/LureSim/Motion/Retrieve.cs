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

        // What a record cannot say of itself: two of its members together, and what the scheduler's formulas need.
        Guard.InRange(presentation.RetrieveSpeed, presentation.Moves is [{ Kind: MoveKind.Reel }] ? 0.005 : 0, 5);
        foreach (Move move in presentation.Moves)
        {
            Guard.InRange(move.Duration, move.MovesTip ? Move.LeastTipTime : 0, move.Kind == MoveKind.Reel ? double.PositiveInfinity : 3600);
            Guard.InRange(move.ReelShare * presentation.RetrieveSpeed, 0, 5);
        }

        return new CastRun(water, lure, line, rodTipHeight, presentation, zone, options).Run(cancellation);
    }
}

/// <summary>One run: the loop of steps and what each of them is asked for.</summary>
internal sealed class CastRun
{
    // Time after bottom contact before the angler closes the bail (s), assumed.
    private const double ReactionTime = 0.3;

    // Residual of the energy balance above which the track says so: twenty times what a cast normally has.
    private const double EnergyLimit = 0.02;

    // Largest first step after a formula of rod or reel has changed (s): all of them set in gently.
    private const double FirstStep = 0.04;

    // First step into the bottom (s).
    private const double ContactStep = 0.005;

    // Tolerances of a lure that floats, as a share of those of others: its energy then closes within 0.5 % while it hangs (docs/motion.md).
    private const double FloatingTolerance = 0.05;

    // Thick line (m) in strong wind (m/s) whips, and its steps are off by more of the energy: tolerances as a share of those of others, with which it closes within 0.5 %, docs/motion.md.
    private const double WhippingDiameter = 0.45e-3;
    private const double StrongWind = 6;
    private const double WhippingTolerance = 0.1;

    // A light lure (N of weight in water), or any in strong wind, swings in a hundred long, even steps, whose errors all point one way: the same for it.
    private const double LightSwing = 0.1;
    private const double SwingTolerance = 0.2;

    private readonly WaterColumn water;
    private readonly Presentation presentation;
    private readonly SimulationOptions options;
    private readonly LineDynamics dynamics;
    private readonly LineIntegrator integrator;
    private readonly CastProgram program;
    private readonly int nodes;
    private readonly bool floats;
    private readonly bool whips;
    private readonly bool swingsEvenly;
    private readonly TrackBuilder track;
    private readonly EventFinder events;

    private double energyIntegral;
    private double powerBefore;
    private double stepBefore;
    private double energyExchanged;
    private double smallestStep = double.PositiveInfinity;

    public CastRun(WaterColumn water, LureProperties lure, LineProperties line, double rodTipHeight, Presentation presentation, StrikeZone zone, SimulationOptions options)
    {
        this.water = water;
        lure = ScaledDragLure.Of(lure, options.LureDragFactor);
        this.presentation = presentation;
        this.options = options;
        LineProperties softened = line with { Main = Soften(line.Main, options.StiffnessLimit), Leader = Soften(line.Leader, options.StiffnessLimit) };
        dynamics = new LineDynamics(lure, softened, water, options.LineDrag, new LineMesh(options.Segments, options.Grading, options.AxialDampingRatio, options.RodTipStiffness));
        nodes = options.Segments;
        floats = lure.Mass < water.Density * lure.Volume;
        bool strongWind = Math.Sqrt((water.WindX * water.WindX) + (water.WindY * water.WindY)) > StrongWind;
        whips = line.Main.Diameter > WhippingDiameter && strongWind;
        double wetWeight = (lure.Mass - (water.Density * lure.Volume)) * PhysicalConstants.StandardGravity;
        swingsEvenly = (wetWeight < LightSwing || strongWind) && presentation.Moves.Any(move => move.Kind == MoveKind.Swing);
        double chord = Math.Sqrt((presentation.CastLength * presentation.CastLength) + (rodTipHeight * rodTipHeight));
        double lineOut = chord * (1 + options.SplashSlack);
        double surface = double.IsFinite(water.Depth) ? water.Current.Speed(water.Depth, out _) : water.Current.Speed(1, out _);
        program = new CastProgram(
            rodTipHeight, lineOut, presentation.DriftAlong, presentation.DriftLeft, options.LineCapacity,
            surface * water.Current.DirectionX, surface * water.Current.DirectionY);
        integrator = new LineIntegrator(dynamics, program, EsdirkTableau.TrBdf2);
        events = new EventFinder(water, lure.ContactRadius, zone, program);
        track = new TrackBuilder(options.SampleInterval);
        double[] position = new double[3 * nodes];
        double[] velocity = new double[3 * nodes];
        SplashDownShape(presentation.CastLength, rodTipHeight, lineOut, dynamics.Fractions, position);

        integrator.Initialise(0, position, velocity);
        if (presentation.Fall == FallMode.SlackLine)
            integrator.OpenBail(new FreeSpool(options.SpoolFriction, options.SpoolDamping, 1e-3, softened.Main.MassPerLength));
    }

    public Track Run(CancellationToken cancellation)
    {
        StepControl usual = StepControl.Default.Scaled(options.ToleranceFactor), control = usual;
        if (whips)
            control = usual.Scaled(WhippingTolerance);
        else if (swingsEvenly)
            control = usual.Scaled(SwingTolerance);

        // All that a floating lure on a still line does is bob by millimetres, as much as a step may be off elsewhere. The tightest of these is enough: the product of two asks for steps
        // that rounding does not grant.
        if (floats)
            control = control with { Position = FloatingTolerance * usual.Position, Velocity = FloatingTolerance * usual.Velocity };
        double step = 2e-4;
        int accepted = 0, rejected = 0;
        bool fishing = false, failed = false;
        var trend = default(PredictiveController);
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
            if (!fishing && (now >= Math.Min(fallEnd, events.FirstContact + reaction) - 1e-9 || integrator.LineOut >= options.LineCapacity))
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

            double limit = fishing ? Math.Min(program.NextBreak(now), program.End) : Math.Min(fallEnd, events.FirstContact + reaction);
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

            double contact = Math.Min(events.TimeToBottom(integrator.Position, integrator.Velocity), TimeToCapacity());
            if (trial > contact)
            {
                trial = contact;
                clipped = false;
            }

            double error = integrator.TryStep(trial, control);
            if (error > 1)
            {
                rejected++;
                step = trial * Math.Min(ElementaryController.Factor(error), 0.9);
                failed = true;
                if (step < control.MinimumStep)
                {
                    status = SimulationStatus.Failed;
                    end = new SimulationEnd(SimulationEndReason.StepTooSmall, now) { Step = step, Node = integrator.WorstNode(out double nodeDepth), Nodes = nodes, NodeDepth = nodeDepth };
                    break;
                }

                continue;
            }

            LureStep path = LureStep.Of(integrator, trial);
            events.Find(path, track.Events);
            track.Between(this, path);
            integrator.Accept(trial);
            AddEnergy(trial);
            program.Observe(integrator.Time, integrator.Position, integrator.Velocity);
            accepted++;
            smallestStep = Math.Min(smallestStep, clipped ? smallestStep : trial);
            if (clipped) stepBefore = 0;

            // No growth right after a failure: the next step would fail as well.
            double factor = trend.Accepted(error, failed);
            if (clipped) trend.Forget();
            if (clipped && fishing)
            {
                // A formula changes here: its derivatives jump, so start afresh with a modest step.
                step = Math.Min(step, FirstStep);
            }
            else if (trial == contact)
            {
                step = Math.Min(step, ContactStep);
            }
            else if (!clipped || factor < 1)
            {
                step = trial * factor;
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

        if (program.SwingEnd is { } swingEnd) track.Events.Add(swingEnd);
        if (status == SimulationStatus.Completed && fishing && program.LineComesIn)
            track.Events.Add(events.At(TrackEventKind.LineIn, integrator.Time, integrator.Position[0], integrator.Position[1], integrator.Position[2]));
        return track.Build(status, end, statistics);
    }

    internal LineIntegrator Integrator => integrator;

    internal int Nodes => nodes;

    /// <summary>Flags at the current state.</summary>
    internal TrackState Flags(double time, double x, double y, double z)
    {
        TrackState state = events.StateAt(x, y, z);
        if (time < program.RetrieveStart) state |= TrackState.Falling;
        else if (integrator.LineRate < -1e-6) state |= TrackState.Reeling;
        return state;
    }

    internal double SpeedThroughWater(double x, double y, double z, double vx, double vy, double vz)
    {
        ReliefFlow flow = new(z + water.Depth, 1, water.Current.DirectionX, water.Current.DirectionY, 0);
        if (water.Relief is { } relief)
        {
            BottomPlace below = relief.At(x, y);
            flow = relief.FlowAt(in below, z);
        }

        double current = water.Current.Speed(flow.Height, out _);
        double ux = (current * flow.X) - vx, uy = (current * flow.Y) - vy, uz = (current * flow.Climb) - vz;
        return Math.Sqrt((ux * ux) + (uy * uy) + (uz * uz));
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
        double best = Length(high) < length ? high : Brent.FindRoot(sag => (Length(sag) / length) - 1, 0, high, 1e-9, 100);

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
}
