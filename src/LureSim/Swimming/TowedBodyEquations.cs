using LureSim.Stepping;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Swimming;

/// <summary>
/// Equations of motion of a lure on its line: a <see cref="RigidBody"/> or, where it gives way behind its hook, a <see cref="JointedBody"/> under a list of forces for each of its parts,
/// the wakes of paddle and lip, and the far end of a trailing line.
/// </summary>
/// <remarks>Immutable: every method is a function of its arguments.</remarks>
internal sealed class TowedBodyEquations : IExplicitSystem
{
    // Everything that water does to a lure without its line.
    private const ActionTerms Water =
        ActionTerms.CrossFlow | ActionTerms.AxialDrag | ActionTerms.Edges | ActionTerms.Head | ActionTerms.Appendages | ActionTerms.Lip | ActionTerms.Plate | ActionTerms.Tail | ActionTerms.Separation;

    private readonly ActionBody body;
    private readonly RigidBody? rigid;
    private readonly JointedBody? jointed;
    private readonly TailLinkage? tail;
    private readonly TowLine line;
    private readonly IForce[] forces, rearForces;
    private readonly bool wake;
    private readonly (double Sideways, double Up) carried;
    private readonly double? surface;
    private readonly double[] scale = new double[BodyState.Size];

    public TowedBodyEquations(ActionBody body, Knot knot, TowInput tow, ActionOptions options)
    {
        ActionTerms terms = options.Terms;
        this.body = body;
        FloatingRest? floating = tow.AtSurface ? FloatingRest.Of(body, tow) : null;
        surface = floating?.SurfaceAbove;
        bool carriesWater = terms.HasFlag(ActionTerms.AddedMass);
        BodyHalves? halves = body.Rear is null ? null : BodyHalves.Of(body);
        var axis = new BentAxis(halves is null ? body.Bend : null);
        if (halves is null) rigid = new RigidBody(body, axis, tow.WaterDensity, carriesWater, floating is null ? 1 : body.Mass / (tow.WaterDensity * body.Volume));
        else jointed = new JointedBody(body, tow.WaterDensity, carriesWater);
        FlexibleTail? swinging = (halves?.Rear ?? body).Tail;
        tail = swinging is null ? null : new TailLinkage(swinging, axis);
        line = new TowLine(body, knot, tow, terms.HasFlag(ActionTerms.Line));
        wake = terms.HasFlag(ActionTerms.Wake);
        WetWeight = (body.Mass - (tow.WaterDensity * body.Volume)) * tow.Gravity;

        // A knot clamps a line that is there.
        if (!terms.HasFlag(ActionTerms.Line)) terms &= ~ActionTerms.Knot;
        VortexLift? vortices = wake ? new VortexLift(options.WakeLift) : null;
        double slenderness = CrossFlow.Slenderness(body), share = halves?.FrontShare ?? 1;
        MathNet.Numerics.LinearAlgebra.Matrix<double> whole = AddedMass.Of(body, new BentAxis(null), tow.WaterDensity);
        carried = carriesWater ? (whole[1, 1], whole[2, 2]) : default;
        double flatness = Flatness(AddedMass.Of(body, axis, tow.WaterDensity)), behind = body.Rear is null ? 0 : Flatness(AddedMass.Behind(body, body.Rear.JointPosition, tow.WaterDensity));
        IEnumerable<IForce> onFront = Forces(halves?.Front ?? body, axis, new(slenderness, share, flatness - behind), vortices, tow).Concat(LineForces(body, knot, tow));
        forces = [.. onFront.Where(f => terms.HasFlag(f.Term))];
        rearForces = halves is null ? [] : [.. Forces(halves.Rear, axis, new(slenderness, 1 - share, behind), vortices, tow).Where(f => terms.HasFlag(f.Term))];

        // Start: nose along the line, the line straight or slack by the given length.
        double startPitch = (floating is { } rest ? rest.Pitch : tow.Mode == TowMode.Pulled ? tow.LineElevation : 0) + options.InitialPitch;
        Attitude attitude = Attitude.Of(options.InitialYaw, Math.Clamp(startPitch, -1.55, 1.55), options.InitialRoll);

        // The wake starts small and on the side of the disturbance, so that a mirrored start gives a mirrored motion.
        double push = options.InitialYaw == 0 && options.InitialRoll == 0 ? 0 : Math.CopySign(0.1, options.InitialYaw == 0 ? options.InitialRoll : options.InitialYaw);
        Initial = new double[BodyState.Size];
        ref BodyState start = ref BodyState.In(Initial);
        start.Attitude = attitude;
        start.Velocity = attitude.ToBody(new(tow.Speed, 0, 0));
        start.TailAngle = body.Tail?.Offset ?? 0;
        if (jointed is not null) (start.Sideways, start.Upright) = JointedBody.Rest(body);
        start.Wake = push;
        start.LipWake = push;
        start.LineEnd = line.EndAtStart(attitude);
        SetScale(tow);
    }

    /// <inheritdoc/>
    public int Size => BodyState.Size;

    /// <inheritdoc/>
    public ReadOnlySpan<double> Scale => scale;

    /// <summary>State at the start.</summary>
    public double[] Initial { get; }

    /// <summary>Weight less buoyancy (N).</summary>
    public double WetWeight { get; }

    /// <summary>Row-major 7 x 7 matrix of a stiff body and its water (kg, kg m, kg m2).</summary>
    /// <exception cref="InvalidOperationException">The body is flexible: its matrix goes by its shape.</exception>
    public ReadOnlySpan<double> MassMatrix => rigid is null ? throw new InvalidOperationException("The matrix of a flexible body goes by its shape.") : rigid.MassMatrix;

    /// <summary>Half of u M u: kinetic energy of body and water (J).</summary>
    public double KineticEnergy(ReadOnlySpan<double> y) => rigid?.KineticEnergy(BodyState.Of(y)) ?? jointed!.KineticEnergy(BodyState.Of(y));

    /// <summary>Drag of the body held straight along the flow (N).</summary>
    public double StraightDrag(double speed)
    {
        Span<double> y = stackalloc double[BodyState.Size];
        y.Clear();
        ref BodyState state = ref BodyState.In(y);
        state.Attitude = Attitude.Level;
        state.Velocity = new(speed, 0, 0);
        state.TailAngle = body.Tail?.Offset ?? 0;
        return -WrenchOf(Water, 0, y).Force.X;
    }

    /// <summary>Wrench of some of the forces that act, on both parts of a flexible body together, without the joint between them.</summary>
    /// <param name="terms">Which; those that are switched off or absent add nothing.</param>
    /// <param name="time">Time (s).</param>
    /// <param name="y">State.</param>
    public Wrench WrenchOf(ActionTerms terms, double time, ReadOnlySpan<double> y)
    {
        BodyMotion motion = MotionAt(time, BodyState.Of(y));
        Wrench total = default;
        foreach (IForce force in forces)
        {
            if (terms.HasFlag(force.Term)) force.AddTo(motion, ref total);
        }

        if (jointed is null) return total;
        RearMotion rear = jointed.Motion(BodyState.Of(y));
        BodyMotion behind = RearMotionOf(BodyState.Of(y), rear);
        Wrench own = default;
        foreach (IForce force in rearForces)
        {
            if (terms.HasFlag(force.Term)) force.AddTo(behind, ref own);
        }

        Wrench carried = rear.ToFront(own);
        return new() { Force = total.Force + carried.Force, Moment = total.Moment + carried.Moment, Hinge = total.Hinge + carried.Hinge };
    }

    /// <summary>The line at a state.</summary>
    public LineState LineAt(double time, ReadOnlySpan<double> y) => line.At(time, BodyState.Of(y));

    /// <inheritdoc/>
    public double NextBreak(double time) => line.NextBreak(time);

    /// <inheritdoc/>
    public double Project(Span<double> state)
    {
        ref BodyState s = ref BodyState.In(state);
        Attitude q = s.Attitude;
        double norm = q.Norm;
        s.Attitude = new(q.W / norm, q.X / norm, q.Y / norm, q.Z / norm);
        return Math.Abs(norm - 1);
    }

    /// <inheritdoc/>
    public void Derivative(double time, ReadOnlySpan<double> y, Span<double> dy)
    {
        ref readonly BodyState s = ref BodyState.Of(y);
        ref BodyState rate = ref BodyState.In(dy);
        BodyMotion motion = MotionAt(time, s);
        Wrench total = default;
        foreach (IForce force in forces) force.AddTo(motion, ref total);
        rate.Wake = rate.WakeRate = 0;
        Vector3d v = s.Velocity, w = s.TurnRate;
        double power = Vector3d.Dot(total.Force, v) + Vector3d.Dot(total.Moment, w);
        rate.Sideways = rate.Upright = rate.SidewaysRate = rate.UprightRate = 0;
        if (jointed is null)
        {
            rigid!.Accelerate(s, total, ref rate);
            power += total.Hinge * s.TailRate;
            if (wake && tail is not null) TailWake(s, motion.Tail, v, w, rate.Velocity, rate.TurnRate, ref rate);
        }
        else
        {
            RearMotion rear = jointed.Motion(s);
            BodyMotion behind = RearMotionOf(s, rear);
            Wrench own = default;
            foreach (IForce force in rearForces) force.AddTo(behind, ref own);
            (double Sideways, double Upright) moments = jointed.JointMoments(s);
            jointed.Accelerate(s, rear, total, own, moments, ref rate);
            rate.Sideways = s.SidewaysRate;
            rate.Upright = s.UprightRate;
            power += Vector3d.Dot(own.Force, rear.Velocity) + Vector3d.Dot(own.Moment, rear.TurnRate) + (own.Hinge * s.TailRate) + (moments.Sideways * s.SidewaysRate) + (moments.Upright * s.UprightRate);
            if (wake && tail is not null)
            {
                Vector3d joint = rear.ToRear(rate.Velocity + Vector3d.Cross(rate.TurnRate, rear.Joint)) + rear.VelocityBias;
                Vector3d turn = rear.ToRear(rate.TurnRate) + (rate.SidewaysRate * rear.SidewaysAxis) + new Vector3d(0, rate.UprightRate, 0) + rear.TurnBias;
                TailWake(s, behind.Tail, rear.Velocity, rear.TurnRate, joint, turn, ref rate);
            }
        }

        rate.Position = s.Attitude.ToWater(v);
        rate.Attitude = s.Attitude.Rate(w);
        LipWake(s, motion, ref rate);
        if (tail is null)
        {
            rate.TailAngle = 0;
            rate.TailRate = 0;
        }
        else
        {
            rate.TailAngle = s.TailRate;
        }

        rate.LineEnd = motion.Line.EndRate;
        rate.RollTotal = w.X;
        rate.Twist = Vector3d.Dot(w, motion.Line.Direction);
        rate.Work = power;
        rate.Exchanged = Math.Abs(power);
    }

    private BodyMotion MotionAt(double time, in BodyState s) => new()
    {
        Up = s.Attitude.ToBody(new(0, 0, 1)),
        Velocity = s.Velocity,
        TurnRate = s.TurnRate,
        LipWake = s.LipWake,
        SurfaceAbove = surface - s.Position.Z,
        Tail = tail is null || jointed is not null ? default : tail.Of(s, s.Velocity, s.TurnRate),
        Line = line.At(time, s),
    };

    private BodyMotion RearMotionOf(in BodyState s, in RearMotion rear) => new()
    {
        Up = rear.ToRear(s.Attitude.ToBody(new(0, 0, 1))),
        Velocity = rear.Velocity,
        TurnRate = rear.TurnRate,
        Tail = tail is null ? default : tail.Of(s, rear.Velocity, rear.TurnRate),
    };

    // All forces that a part of the lure has, or the whole of a stiff one, in the order in which they are added up.
    private IEnumerable<IForce> Forces(ActionBody part, BentAxis axis, PartOfBody of, VortexLift? vortices, TowInput tow)
    {
        yield return new Weight(part, tow);
        yield return new Buoyancy(part, tow);
        if (part.Plate is null)
        {
            yield return new CrossFlow(part, axis, of.Slenderness, tow);
            yield return new CrossSeparation(of.Flatness, body.SemiAxes);
            yield return new AxialDrag(part, of.Share, tow);
        }

        yield return new TrailingEdges(part, axis, carried, tow);
        if (part.Head is not null) yield return new TurnedHead(part.Head, tow);
        yield return new Appendages(part, tow);
        if (part.Lip is not null)
        {
            yield return new Lip(part, part.Lip, tow, vortices is null ? null : VortexLift.OfLip);
            if (rigid is not null) yield return new LipSeparation(part.Lip, tow);
        }

        if (part.Plate is not null) yield return new ThinPlate(part.Plate, WetWeight, tow);
        if (part.Tail is not null) yield return new SwingingTail(part, rigid?.TailInertia ?? jointed!.TailInertia, tow, vortices);
    }

    private static double Flatness(MathNet.Numerics.LinearAlgebra.Matrix<double> carried) => carried[1, 1] - carried[2, 2];

    private static IEnumerable<IForce> LineForces(ActionBody body, Knot knot, TowInput tow)
    {
        if (tow.Mode == TowMode.Free) yield break;
        yield return new LinePull(body);
        if (knot.Kind == KnotKind.Snug) yield return new KnotClamp(knot, tow);
    }

    // The wake of the paddle feels its sideways acceleration in the water: velocity, turn rate and their rates are those of the part on which it hangs, in its axes.
    private void TailWake(in BodyState s, in TailMotion motion, Vector3d v, Vector3d w, Vector3d dv, Vector3d dw, ref BodyState rate)
    {
        FlexibleTail t = tail!.Tail;
        Vector3d paddle = motion.Place;
        double acceleration = dv.Y + (paddle.X * dw.Z) - (paddle.Z * dw.X) + (t.Length * rate.TailRate) + (w.Z * v.X) - (w.X * v.Z);
        rate.Wake = s.WakeRate;
        rate.WakeRate = WakeOscillator.Acceleration(s.Wake, s.WakeRate, VortexLift.SheddingRate(motion.PlanarSpeed, t.PaddleWidth), acceleration / t.PaddleWidth);
    }

    private void LipWake(in BodyState s, in BodyMotion motion, ref BodyState rate)
    {
        rate.LipWake = rate.LipWakeRate = 0;
        if (!wake || body.Lip is not DivingLip lip) return;
        Vector3d v = s.Velocity, w = s.TurnRate, dv = rate.Velocity, dw = rate.TurnRate, place = lip.Position;
        double acceleration = dv.Y + (place.X * dw.Z) - (place.Z * dw.X) + (w.Z * v.X) - (w.X * v.Z);
        rate.LipWake = s.LipWakeRate;
        rate.LipWakeRate = WakeOscillator.Acceleration(s.LipWake, s.LipWakeRate, VortexLift.OfLipRate(motion.At(place).Length, lip.Width), acceleration / lip.Width);
    }

    private void SetScale(TowInput tow)
    {
        double length = body.Length;
        double speed = Math.Max(0.1, tow.Speed), turn = speed / length;
        ref BodyState s = ref BodyState.In(scale);
        s.Position = s.LineEnd = new(length, length, length);
        s.Attitude = new(1, 1, 1, 1);
        s.Velocity = new(speed, speed, speed);
        s.TurnRate = new(turn, turn, turn);
        s.TailAngle = s.Wake = s.LipWake = 1;
        s.TailRate = turn;
        s.WakeRate = body.Tail is null ? 1 : WakeOscillator.SheddingRate(speed, body.Tail.PaddleWidth);
        s.LipWakeRate = body.Lip is null ? 1 : VortexLift.OfLipRate(speed, body.Lip.Width);
        s.Sideways = s.Upright = jointed is null ? double.PositiveInfinity : 1;
        s.SidewaysRate = s.UprightRate = jointed is null ? double.PositiveInfinity : turn;
        s.RollTotal = s.Twist = s.Work = s.Exchanged = double.PositiveInfinity;
    }

    // What a part owes to the whole: slenderness of the whole body, the part's share of its length, the part's own water sideways less that upwards (kg).
    private readonly record struct PartOfBody(double Slenderness, double Share, double Flatness);
}
