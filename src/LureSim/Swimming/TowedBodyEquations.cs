using LureSim.Stepping;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Swimming;

/// <summary>Equations of motion of a lure on its line: a <see cref="RigidBody"/> under a list of forces, the wakes of paddle and lip, and the far end of a trailing line.</summary>
/// <remarks>Immutable: every method is a function of its arguments.</remarks>
internal sealed class TowedBodyEquations : IExplicitSystem
{
    // Everything that water does to a lure without its line.
    private const ActionTerms Water =
        ActionTerms.CrossFlow | ActionTerms.AxialDrag | ActionTerms.Edges | ActionTerms.Head | ActionTerms.Appendages | ActionTerms.Lip | ActionTerms.Plate | ActionTerms.Tail;

    private readonly ActionBody body;
    private readonly RigidBody rigid;
    private readonly TailLinkage? tail;
    private readonly TowLine line;
    private readonly Vector3d endStart;
    private readonly IForce[] forces;
    private readonly bool wake;
    private readonly double[] scale = new double[BodyState.Size];

    public TowedBodyEquations(ActionBody body, Knot knot, TowInput tow, ActionOptions options)
    {
        ActionTerms terms = options.Terms;
        this.body = body;
        var axis = new BentAxis(body.Bend);
        rigid = new RigidBody(body, axis, tow.WaterDensity, terms.HasFlag(ActionTerms.AddedMass));
        tail = body.Tail is null ? null : new TailLinkage(body.Tail, axis);
        line = new TowLine(body, knot, tow, terms.HasFlag(ActionTerms.Line));
        wake = terms.HasFlag(ActionTerms.Wake);
        WetWeight = (body.Mass - (tow.WaterDensity * body.Volume)) * tow.Gravity;

        // A knot clamps a line that is there.
        if (!terms.HasFlag(ActionTerms.Line)) terms &= ~ActionTerms.Knot;
        forces = [.. Forces(axis, knot, tow).Where(f => terms.HasFlag(f.Term))];

        // Start: nose along the line, the line straight or slack by the given length.
        double startPitch = (tow.Mode == TowMode.Pulled ? tow.LineElevation : 0) + options.InitialPitch;
        Attitude attitude = Attitude.Of(options.InitialYaw, Math.Clamp(startPitch, -1.55, 1.55), options.InitialRoll);
        endStart = line.EndAtStart(attitude);

        // The wake starts small and on the side of the disturbance, so that a mirrored start gives a mirrored motion.
        double push = options.InitialYaw == 0 && options.InitialRoll == 0 ? 0 : Math.CopySign(0.1, options.InitialYaw == 0 ? options.InitialRoll : options.InitialYaw);
        Initial = new double[BodyState.Size];
        ref BodyState start = ref BodyState.In(Initial);
        start.Attitude = attitude;
        start.Velocity = attitude.ToBody(new(tow.Speed, 0, 0));
        start.TailAngle = body.Tail?.Offset ?? 0;
        start.Wake = push;
        start.LipWake = push;
        start.LineEnd = endStart;
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

    /// <summary>Row-major 7 x 7 matrix of body and water (kg, kg m, kg m2).</summary>
    public ReadOnlySpan<double> MassMatrix => rigid.MassMatrix;

    /// <summary>Half of u M u: kinetic energy of body and water (J).</summary>
    public double KineticEnergy(ReadOnlySpan<double> y) => rigid.KineticEnergy(BodyState.Of(y));

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

    /// <summary>Wrench of some of the forces that act.</summary>
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

        return total;
    }

    /// <summary>The line at a state.</summary>
    public LineState LineAt(double time, ReadOnlySpan<double> y) => line.At(time, BodyState.Of(y), endStart);

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
        rigid.Accelerate(s, total, ref rate);
        Vector3d v = s.Velocity, w = s.TurnRate;
        rate.Position = s.Attitude.ToWater(v);
        rate.Attitude = s.Attitude.Rate(w);
        Wakes(s, motion, ref rate);
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
        double power = Vector3d.Dot(total.Force, v) + Vector3d.Dot(total.Moment, w) + (total.Hinge * s.TailRate);
        rate.Work = power;
        rate.Exchanged = Math.Abs(power);
    }

    private BodyMotion MotionAt(double time, in BodyState s) => new()
    {
        Up = s.Attitude.ToBody(new(0, 0, 1)),
        Velocity = s.Velocity,
        TurnRate = s.TurnRate,
        LipWake = s.LipWake,
        Tail = tail is null ? default : tail.Of(s),
        Line = line.At(time, s, endStart),
    };

    // All forces that the lure has, in the order in which they are added up.
    private IEnumerable<IForce> Forces(BentAxis axis, Knot knot, TowInput tow)
    {
        yield return new Weight(body, tow);
        yield return new Buoyancy(body, tow);
        if (body.Plate is null)
        {
            yield return new CrossFlow(body, axis, tow);
            yield return new AxialDrag(body, tow);
        }

        yield return new TrailingEdges(body, axis, tow);
        if (body.Head is not null) yield return new TurnedHead(body.Head, tow);
        yield return new Appendages(body, tow);
        if (body.Lip is not null) yield return new Lip(body.Lip, tow, wake);
        if (body.Plate is not null) yield return new ThinPlate(body.Plate, WetWeight, tow);
        if (body.Tail is not null) yield return new SwingingTail(body, rigid.TailInertia, tow, wake);
        if (tow.Mode == TowMode.Free) yield break;
        yield return new LinePull(body);
        if (knot.Kind == KnotKind.Snug) yield return new KnotClamp(knot, tow);
    }

    // The wakes feel the sideways acceleration in the water of the places where they leave the body.
    private void Wakes(in BodyState s, in BodyMotion motion, ref BodyState rate)
    {
        rate.Wake = rate.WakeRate = rate.LipWake = rate.LipWakeRate = 0;
        if (!wake) return;
        Vector3d v = s.Velocity, w = s.TurnRate, dv = rate.Velocity, dw = rate.TurnRate;
        if (body.Tail is FlexibleTail t)
        {
            Vector3d paddle = motion.Tail.Place;
            double acceleration = dv.Y + (paddle.X * dw.Z) - (paddle.Z * dw.X) + (t.Length * rate.TailRate) + (w.Z * v.X) - (w.X * v.Z);
            rate.Wake = s.WakeRate;
            rate.WakeRate = WakeOscillator.Acceleration(s.Wake, s.WakeRate, VortexLift.SheddingRate(motion.Tail.PlanarSpeed, t.PaddleWidth), acceleration / t.PaddleWidth);
        }

        if (body.Lip is DivingLip lip)
        {
            Vector3d place = lip.Position;
            double acceleration = dv.Y + (place.X * dw.Z) - (place.Z * dw.X) + (w.Z * v.X) - (w.X * v.Z);
            rate.LipWake = s.LipWakeRate;
            rate.LipWakeRate = WakeOscillator.Acceleration(s.LipWake, s.LipWakeRate, VortexLift.SheddingRate(motion.At(place).Length, lip.Width), acceleration / lip.Width);
        }
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
        s.LipWakeRate = body.Lip is null ? 1 : WakeOscillator.SheddingRate(speed, body.Lip.Width);
        s.RollTotal = s.Twist = s.Work = s.Exchanged = double.PositiveInfinity;
    }
}
