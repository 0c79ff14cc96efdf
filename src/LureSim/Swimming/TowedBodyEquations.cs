using LureSim.Hydrodynamics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace LureSim.Swimming;

/// <summary>
/// Equations of motion of a lure on its line: Kirchhoff's equations for the momenta of body and water in body axes (Lamb 1932, art. 124), with the tail's angle as a
/// seventh degree of freedom, the wake oscillator, and the far end of a trailing line.
/// </summary>
/// <remarks>One instance serves one run: its buffers are not shared between threads.</remarks>
internal sealed class TowedBodyEquations : IMotionEquations
{
    // Layout of the state.
    public const int R = 0, Q = 3, V = 7, W = 10, Tail = 13, TailRate = 14, Wake = 15, WakeRate = 16, End = 17, LipWake = 20, LipWakeRate = 21;
    public const int RollTotal = 22, Twist = 23, Work = 24, Exchanged = 25, Count = 26;

    // Tail: uniform stem with a paddle: first and second moments of mass about the hinge over m l and m l^2.
    private const double TailFirstMoment = 0.6, TailSecondMoment = 0.45;

    // Thickness of a paddle along the flow over its width; assumed.
    private const double PaddleThickness = 0.4;

    // Short plate across the flow.
    private const double PaddleDrag = PlateDrag.Broadside;

    // Amplitude of the lift coefficient of a paddle or a lip at rest: a round cylinder has 0.3 (Facchinetti et al. 2004), a square prism 1.3 rms, 1.8 in amplitude (Vickery 1966);
    // a sharp-edged plate with free ends lies between; 0.8 assumed.
    private const double PaddleLift = 0.8;

    // The lift of a plate cannot grow without bound when a twitch drives the wake: C_L = 1.2 tanh((C_L0 q/2)/1.2); 1.2 assumed.
    private const double GreatestTailLift = 1.2;

    // The hinge hardens beyond this angle (radians); assumed.
    private const double TailStop = 1.05;

    // Cylinder across the flow by Re: 1.1 + 4/sqrt(Re) (Choo & Casarella 1971).
    private const double CrossDrag = 1.1, CrossDragViscous = 4;

    // Flat plate that turns about its middle line, strip by strip with Cd 1.2 (assumed; Hoerner's plate across the flow is 1.98 for an endless one and 1.17 for a short one).
    private const double RollDrag = 1.2;
    private const double RollFriction = 0.01;

    // Speed at which the wake that the body leaves its paddle is taken (m/s); between 0.2 and 1 m/s its dynamic pressure changes by a twentieth.
    private const double WakeSpeed = 0.5;

    // Coefficients of Andersen, Pesavento & Wang 2005, J. Fluid Mech. 541:65, eqs 4.7 to 4.9.
    private const double PlateLift = 1.2, PlateRotation = Math.PI, PlateDragA = 1.4, PlateDragB = 1.0, PlateTorque1 = 0.2, PlateTorque2 = 0.2;

    private readonly ActionBody body;
    private readonly TowInput tow;
    private readonly ActionTerms terms;
    private readonly LineEndSchedule schedule;
    private readonly double rho, nu;
    private readonly double[] mass = new double[49], inverse = new double[49], scale = new double[Count];
    private readonly Strip[] strips;
    private readonly Edge[] edges;
    private readonly DragSum? along;
    private readonly double wakeShare, wakeRadius;
    private readonly double wet, buoyancy, weight;
    private readonly FlexibleTail? tail;
    private readonly Vector3d hinge;
    private readonly double tailBend, tailInertia, tailDamping, tailStop;
    private readonly Vector3d lipNormal;
    private readonly double plateReference;
    private readonly double lineLength, lineDamping, lineStiffness, bending, leaderDiameter;
    private readonly Vector3d knotAxis, endStart;
    private readonly bool snug;

    public TowedBodyEquations(ActionBody body, Knot knot, TowInput tow, ActionOptions options)
    {
        this.body = body;
        this.tow = tow;
        terms = options.Terms;
        schedule = new LineEndSchedule(tow);
        rho = tow.WaterDensity;
        nu = tow.KinematicViscosity;
        weight = Has(ActionTerms.Weight) ? body.Mass * tow.Gravity : 0;
        buoyancy = Has(ActionTerms.Buoyancy) ? rho * body.Volume * tow.Gravity : 0;
        wet = (body.Mass - (rho * body.Volume)) * tow.Gravity;
        tail = body.Tail;
        BodyBend bend = body.Bend ?? new BodyBend(0, 0);
        strips = body.Plate is null ? Strips(bend) : [];
        edges = [.. body.TrailingEdges.Select(e => new Edge(Bent(e.Position, bend), Tangent(e.Position.X, bend), Math.PI / 4 * rho * e.Height * e.Height, Math.PI / 4 * rho * e.Width * e.Width))];

        // The drag nose first is that of the same body on its path, and a paddle in line with it stands in its wake.
        if (body.Plate is null)
        {
            along = RoundedBody.NoseFirst(body.Length, 2 * body.SemiAxes.Z, 2 * body.SemiAxes.Y);
            double frontal = Math.PI * body.SemiAxes.Y * body.SemiAxes.Z;
            wakeShare = PlateDrag.WakePressureShare(along.AreaTimesSpeed(WakeSpeed, nu, out _) / (WakeSpeed * frontal));
            wakeRadius = Math.Sqrt(body.SemiAxes.Y * body.SemiAxes.Z);
        }

        if (tail is not null)
        {
            Vector3d at = new(tail.HingePosition, 0, 0);
            hinge = Bent(at, bend);
            Vector3d t = Tangent(tail.HingePosition, bend);
            tailBend = Math.Atan2(-t.Y, t.X);
            hinge = hinge with { Z = hinge.Z - (tail.Length * t.Z) };
        }

        BuildMass(bend);
        if (tail is not null)
        {
            tailInertia = mass[48];
            double stiffness = tail.RootStiffness;
            tailDamping = 2 * tail.RootDamping * Math.Sqrt(stiffness * tailInertia);
            tailStop = tailInertia * 3.5e4;
        }

        if (body.Lip is DivingLip lip)
        {
            (double sa, double ca) = Math.SinCos(lip.Angle);
            (double sy, double cy) = Math.SinCos(lip.Yaw);
            lipNormal = new(sa * cy, sa * sy, ca);
        }

        if (body.Plate is PlateForm plate)
        {
            double area = plate.Length * plate.Width * plate.Fill;
            plateReference = Math.Max(Math.Sqrt(2 * Math.Abs(wet) / (Math.PI * rho * area)), tow.Mode == TowMode.Pulled ? tow.Speed : 0);
        }

        snug = knot.Kind == KnotKind.Snug;
        bending = knot.BendingStiffness;
        leaderDiameter = knot.LeaderDiameter;
        (double ks, double kc) = Math.SinCos(knot.SetYaw);
        (double ps, double pc) = Math.SinCos(knot.SetPitch);
        knotAxis = new(kc * pc, ks * pc, ps);
        lineLength = tow.LineLength + (snug ? 0 : knot.Length);
        lineStiffness = tow.LineStiffness;
        lineDamping = 2 * tow.LineDampingRatio * Math.Sqrt(tow.LineStiffness * (body.Mass + (0.5 * rho * body.Volume)));

        // Start: nose along the line, the line straight or slack by the given length.
        double startPitch = (tow.Mode == TowMode.Pulled ? tow.LineElevation : 0) + options.InitialPitch;
        Attitude attitude = LureSim.Swimming.Attitude.Of(options.InitialYaw, Math.Clamp(startPitch, -1.55, 1.55), options.InitialRoll);
        Vector3d eye = attitude.ToWater(body.TowPoint);
        double reach = Math.Max(0.02, lineLength - tow.InitialSlack);
        endStart = eye + (reach * new Vector3d(Math.Cos(tow.LineElevation), 0, Math.Sin(tow.LineElevation)));
        Initial = new double[Count];
        Initial[Q] = attitude.W;
        Initial[Q + 1] = attitude.X;
        Initial[Q + 2] = attitude.Y;
        Initial[Q + 3] = attitude.Z;
        Vector3d start = attitude.ToBody(new(tow.Speed, 0, 0));
        Initial[V] = start.X;
        Initial[V + 1] = start.Y;
        Initial[V + 2] = start.Z;
        Initial[Tail] = tail?.Offset ?? 0;

        // The wake starts small and on the side of the disturbance, so that a mirrored start gives a mirrored motion.
        Initial[Wake] = options.InitialYaw == 0 && options.InitialRoll == 0 ? 0 : Math.CopySign(0.1, options.InitialYaw == 0 ? options.InitialRoll : options.InitialYaw);
        Initial[LipWake] = Initial[Wake];
        Initial[End] = endStart.X;
        Initial[End + 1] = endStart.Y;
        Initial[End + 2] = endStart.Z;
        SetScale();
    }

    /// <inheritdoc/>
    public int Size => Count;

    /// <inheritdoc/>
    public ReadOnlySpan<double> Scale => scale;

    public double[] Initial { get; }

    /// <summary>Largest distance of the quaternion's norm from 1 so far.</summary>
    public double Drift { get; private set; }

    /// <summary>Tension and pull in water axes at the last evaluation.</summary>
    public double Tension { get; private set; }

    public Vector3d Pull { get; private set; }

    public Vector3d LineEnd { get; private set; }

    public double WetWeight => wet;

    /// <summary>Half of u M u: kinetic energy of body and water (J).</summary>
    public double KineticEnergy(ReadOnlySpan<double> y)
    {
        Span<double> u = stackalloc double[7];
        Speeds(y, u);
        double sum = 0;
        for (int i = 0; i < 7; i++)
        {
            for (int j = 0; j < 7; j++) sum += 0.5 * u[i] * mass[(7 * i) + j] * u[j];
        }

        return sum;
    }

    /// <summary>Row-major 7 x 7 matrix of body and water (kg, kg m, kg m2).</summary>
    public ReadOnlySpan<double> MassMatrix => mass;

    /// <summary>Drag of the body held straight along the flow (N).</summary>
    public double StraightDrag(double speed)
    {
        var load = default(Load);
        Span<double> y = stackalloc double[Count];
        y[Q] = 1;
        y[V] = speed;
        y[Tail] = tail is null ? 0 : tail.Offset;
        Hydrodynamic(y, ref load, out _, out _, out _);
        return -load.F.X;
    }

    /// <inheritdoc/>
    public double NextBreak(double time) => tow.Mode == TowMode.Pulled ? schedule.NextBreak(time) : double.PositiveInfinity;

    /// <inheritdoc/>
    public bool Project(Span<double> state)
    {
        double norm = Math.Sqrt((state[Q] * state[Q]) + (state[Q + 1] * state[Q + 1]) + (state[Q + 2] * state[Q + 2]) + (state[Q + 3] * state[Q + 3]));
        Drift = Math.Max(Drift, Math.Abs(norm - 1));
        for (int i = 0; i < 4; i++) state[Q + i] /= norm;
        return false;
    }

    /// <inheritdoc/>
    public void Derivative(double time, ReadOnlySpan<double> y, Span<double> dy)
    {
        Attitude attitude = AttitudeOf(y);
        Vector3d v = new(y[V], y[V + 1], y[V + 2]);
        Vector3d w = new(y[W], y[W + 1], y[W + 2]);
        var load = default(Load);

        // Weight and buoyancy at their own centres.
        Vector3d up = attitude.ToBody(new(0, 0, 1));
        if (weight != 0) load.Add(-weight * up, body.CentreOfMass);
        if (buoyancy != 0) load.Add(buoyancy * up, body.CentreOfBuoyancy);
        Hydrodynamic(y, ref load, out double lipSheddingRate, out double sheddingRate, out Vector3d paddle);
        Line(time, y, attitude, v, w, ref load, out Vector3d direction, out Vector3d endRate);

        // Kirchhoff: dp/dt = p x w + F, dh/dt = h x w + p x v + M, for the tail d(p_t)/dt = Q.
        Span<double> u = [v.X, v.Y, v.Z, w.X, w.Y, w.Z, y[TailRate]];
        Span<double> momentum = stackalloc double[7];
        Multiply(mass, u, momentum);
        Vector3d p = new(momentum[0], momentum[1], momentum[2]);
        Vector3d h = new(momentum[3], momentum[4], momentum[5]);
        Vector3d dp = Vector3d.Cross(p, w) + load.F;
        Vector3d dh = Vector3d.Cross(h, w) + Vector3d.Cross(p, v) + load.M;
        Span<double> rate = [dp.X, dp.Y, dp.Z, dh.X, dh.Y, dh.Z, load.Tail];
        Span<double> du = stackalloc double[7];
        Multiply(inverse, rate, du);

        Vector3d dr = attitude.ToWater(v);
        dy[R] = dr.X;
        dy[R + 1] = dr.Y;
        dy[R + 2] = dr.Z;
        double q0 = y[Q], q1 = y[Q + 1], q2 = y[Q + 2], q3 = y[Q + 3];
        dy[Q] = -0.5 * ((q1 * w.X) + (q2 * w.Y) + (q3 * w.Z));
        dy[Q + 1] = 0.5 * ((q0 * w.X) + (q2 * w.Z) - (q3 * w.Y));
        dy[Q + 2] = 0.5 * ((q0 * w.Y) + (q3 * w.X) - (q1 * w.Z));
        dy[Q + 3] = 0.5 * ((q0 * w.Z) + (q1 * w.Y) - (q2 * w.X));
        for (int i = 0; i < 6; i++) dy[V + i] = du[i];
        dy[Tail] = tail is null ? 0 : y[TailRate];
        dy[TailRate] = tail is null ? 0 : du[6];
        if (tail is not null && Has(ActionTerms.Wake))
        {
            // Sideways acceleration of the paddle in the water, at its place in body axes.
            double acceleration = du[1] + (paddle.X * du[5]) - (paddle.Z * du[3]) + (tail.Length * du[6]) + (w.Z * v.X) - (w.X * v.Z);
            dy[Wake] = y[WakeRate];
            dy[WakeRate] = WakeOscillator.Acceleration(y[Wake], y[WakeRate], sheddingRate, acceleration / tail.PaddleWidth);
        }
        else
        {
            dy[Wake] = 0;
            dy[WakeRate] = 0;
        }

        if (body.Lip is DivingLip lip && Has(ActionTerms.Wake) && Has(ActionTerms.Lip))
        {
            double acceleration = du[1] + (lip.Position.X * du[5]) - (lip.Position.Z * du[3]) + (w.Z * v.X) - (w.X * v.Z);
            dy[LipWake] = y[LipWakeRate];
            dy[LipWakeRate] = WakeOscillator.Acceleration(y[LipWake], y[LipWakeRate], lipSheddingRate, acceleration / lip.Width);
        }
        else
        {
            dy[LipWake] = 0;
            dy[LipWakeRate] = 0;
        }

        dy[End] = endRate.X;
        dy[End + 1] = endRate.Y;
        dy[End + 2] = endRate.Z;
        dy[RollTotal] = w.X;
        dy[Twist] = Vector3d.Dot(w, direction);
        double power = Vector3d.Dot(load.F, v) + Vector3d.Dot(load.M, w) + (load.Tail * y[TailRate]);
        dy[Work] = power;
        dy[Exchanged] = Math.Abs(power);
    }

    internal static Attitude AttitudeOf(ReadOnlySpan<double> y) => new(y[Q], y[Q + 1], y[Q + 2], y[Q + 3]);

    private bool Has(ActionTerms term) => (terms & term) != 0;

    private void Speeds(ReadOnlySpan<double> y, Span<double> u)
    {
        y.Slice(V, 6).CopyTo(u);
        u[6] = tail is null ? 0 : y[TailRate];
    }

    private static void Multiply(double[] matrix, ReadOnlySpan<double> x, Span<double> result)
    {
        for (int i = 0; i < 7; i++)
        {
            int at = 7 * i;
            result[i] = (matrix[at] * x[0]) + (matrix[at + 1] * x[1]) + (matrix[at + 2] * x[2]) + (matrix[at + 3] * x[3])
                + (matrix[at + 4] * x[4]) + (matrix[at + 5] * x[5]) + (matrix[at + 6] * x[6]);
        }
    }

    private void Hydrodynamic(ReadOnlySpan<double> y, ref Load load, out double lipSheddingRate, out double sheddingRate, out Vector3d paddle)
    {
        Vector3d v = new(y[V], y[V + 1], y[V + 2]);
        Vector3d w = new(y[W], y[W + 1], y[W + 2]);
        if (Has(ActionTerms.CrossFlow)) CrossFlow(v, w, ref load);
        if (along is not null && Has(ActionTerms.AxialDrag))
        {
            load.F += new Vector3d(-0.5 * rho * v.X * along.AreaTimesSpeed(Math.Abs(v.X), nu, out _), 0, 0);
        }

        if (Has(ActionTerms.Edges)) Edges(v, w, ref load);
        if (Has(ActionTerms.Appendages))
        {
            foreach (AppendageDrag a in body.Appendages)
            {
                Vector3d at = v + Vector3d.Cross(w, a.Position);
                load.Add(-0.5 * rho * a.DragArea * at.Length * at, a.Position);
            }
        }

        lipSheddingRate = 0;
        if (body.Lip is DivingLip lip && Has(ActionTerms.Lip)) LipForce(lip, y[LipWake], v, w, ref load, out lipSheddingRate);
        if (body.Plate is PlateForm plate && Has(ActionTerms.Plate)) PlateForce(plate, v, w, ref load);
        sheddingRate = 0;
        paddle = default;
        if (tail is not null && Has(ActionTerms.Tail)) TailForce(tail, y, v, w, ref load, out sheddingRate, out paddle);
    }

    private void CrossFlow(Vector3d v, Vector3d w, ref Load load)
    {
        double roll = Math.Abs(w.X) * w.X;
        foreach (ref readonly Strip s in strips.AsSpan())
        {
            Vector3d at = v + Vector3d.Cross(w, s.Position);
            Vector3d normal = at - (Vector3d.Dot(at, s.Tangent) * s.Tangent);
            double size = normal.Length;

            // |V| (1.1 + 4/sqrt(Re)) on height for the sideways part and on width for the vertical one.
            double factor = (CrossDrag * size) + (s.Viscous * Math.Sqrt(size));
            load.Add(new(-factor * s.AcrossHeight * normal.X, -factor * s.AcrossHeight * normal.Y, -factor * s.AcrossWidth * normal.Z), s.Position);
            load.M += new Vector3d(-s.Roll * roll, 0, 0);
        }
    }

    private void Edges(Vector3d v, Vector3d w, ref Load load)
    {
        foreach (ref readonly Edge e in edges.AsSpan())
        {
            Vector3d at = v + Vector3d.Cross(w, e.Position);
            double along = Vector3d.Dot(at, e.Tangent);
            if (along <= 0) continue;
            Vector3d normal = at - (along * e.Tangent);
            load.Add(new(-along * e.Height * normal.X, -along * e.Height * normal.Y, -along * e.Width * normal.Z), e.Position);
        }

        if (body.Head is HeadSet head)
        {
            // A nose set askew by a small angle meets the flow like a slender cone: normal force slope 2 on its base (Munk 1924).
            Vector3d at = v + Vector3d.Cross(w, head.Position);
            double q = rho * head.FrontalArea * at.X * Math.Abs(at.X);
            load.Add(new(0, q * Math.Sin(head.Yaw) * Math.Cos(head.Yaw), q * Math.Sin(head.Pitch) * Math.Cos(head.Pitch)), head.Position);
        }
    }

    private static double SideLift(double wake) => GreatestTailLift * Math.Tanh(0.5 * PaddleLift * wake / GreatestTailLift);

    private void LipForce(DivingLip lip, double wake, Vector3d v, Vector3d w, ref Load load, out double sheddingRate)
    {
        Vector3d at = v + Vector3d.Cross(w, lip.Position);
        double size = at.Length;
        sheddingRate = WakeOscillator.SheddingRate(Math.Max(size, 0.02), lip.Width);
        if (size < 1e-12) return;
        double normal = Vector3d.Dot(at, lipNormal);
        double coefficient = LipPlate.NormalCoefficient(Math.Abs(normal) / size, lip.AspectRatio);
        load.Add(-0.5 * rho * lip.Area * coefficient * size * size * Math.Sign(normal) * lipNormal, lip.Position);

        // Vortices leave the sides of the lip in turn, on the area that it shows the flow.
        if (!Has(ActionTerms.Wake)) return;
        (double sine, double cosine) = Math.SinCos(lip.Yaw);
        double side = 0.5 * rho * lip.Area * Math.Abs(normal) * size * SideLift(wake);
        load.Add(new(-sine * side, cosine * side, 0), lip.Position);
    }

    private void PlateForce(PlateForm plate, Vector3d v, Vector3d w, ref Load load)
    {
        double area = plate.Length * plate.Width * plate.Fill;
        double size = v.Length;
        if (size > 1e-12)
        {
            double along = Math.Sqrt((v.X * v.X) + (v.Y * v.Y));
            double effective = v.Z - (2 * plate.CamberDepth / plate.Length * Math.Abs(v.X));
            double lift = rho * area * PlateLift / size;
            double tangential = lift * effective * v.Z;
            load.F += new Vector3d(tangential * v.X, tangential * v.Y, -lift * along * along * effective);
            double drag = 0.5 * rho * area * (PlateDragA - (PlateDragB * ((along * along) - (v.Z * v.Z)) / (size * size))) * size;
            load.F += -drag * v;
        }

        Vector3d circulation = new(plate.Width * w.X, plate.Length * w.Y, 0);
        load.F += 0.5 * PlateRotation * rho * area * Vector3d.Cross(circulation, v);
        load.M += new Vector3d(PlateTorque(plate.Width, plate.Length * plate.Fill, w.X), PlateTorque(plate.Length, plate.Width * plate.Fill, w.Y), 0);
    }

    // pi rho a^4 (mu1 V/a + mu2 |w|) w per span, a half the chord.
    private double PlateTorque(double chord, double span, double rate)
    {
        double a = chord / 2;
        return -Math.PI * rho * a * a * a * a * span * ((PlateTorque1 * plateReference / a) + (PlateTorque2 * Math.Abs(rate))) * rate;
    }

    private void TailForce(FlexibleTail t, ReadOnlySpan<double> y, Vector3d v, Vector3d w, ref Load load, out double sheddingRate, out Vector3d paddle)
    {
        double angle = y[Tail];
        (double sine, double cosine) = Math.SinCos(angle + tailBend);
        double l = t.Length;
        paddle = new(hinge.X - (l * cosine), hinge.Y + (l * sine), hinge.Z - t.Drop);
        Vector3d arm = new(l * sine, l * cosine, 0);
        Vector3d at = v + Vector3d.Cross(w, paddle) + (y[TailRate] * arm);

        // Out to the side it meets the stream.
        double aside = paddle.Y / wakeRadius;
        double area = t.PaddleHeight * t.PaddleWidth * (1 - ((1 - wakeShare) * Math.Exp(-aside * aside)));
        Vector3d force = -0.5 * rho * area * PaddleDrag * at.Length * at;
        double planar = Math.Sqrt((at.X * at.X) + (at.Y * at.Y));

        // Below 2 cm/s the wake is taken to keep the rhythm of 2 cm/s, so that the oscillator stays one.
        sheddingRate = WakeOscillator.SheddingRate(Math.Max(planar, 0.02), t.PaddleWidth);
        if (Has(ActionTerms.Wake))
        {
            double q = 0.5 * rho * area * SideLift(y[Wake]) * planar;
            force += new Vector3d(-q * at.Y, q * at.X, 0);
        }

        load.Add(force, paddle);
        double excess = Math.Abs(angle) - TailStop;
        double stop = excess > 0 ? tailStop * excess * Math.Sign(angle) : 0;
        load.Tail += Vector3d.Dot(force, arm) - (t.RootStiffness * (angle - t.Offset)) - (tailDamping * y[TailRate]) - stop;
    }

    private void Line(double time, ReadOnlySpan<double> y, Attitude attitude, Vector3d v, Vector3d w, ref Load load, out Vector3d direction, out Vector3d endRate)
    {
        endRate = default;
        Tension = 0;
        Pull = default;
        double speed = v.Length;
        direction = speed > 1e-9 ? (1 / speed) * v : new(1, 0, 0);
        Vector3d origin = new(y[R], y[R + 1], y[R + 2]);
        Vector3d end;
        Vector3d endVelocity;
        if (tow.Mode == TowMode.Pulled)
        {
            schedule.Evaluate(time, out double way, out double endSpeed);
            end = endStart + new Vector3d(way, 0, 0);
            endVelocity = attitude.ToBody(new(endSpeed, 0, 0));
        }
        else
        {
            end = new(y[End], y[End + 1], y[End + 2]);
            endVelocity = default;
        }

        LineEnd = end;
        if (tow.Mode == TowMode.Free || !Has(ActionTerms.Line)) return;
        Vector3d eyeVelocity = v + Vector3d.Cross(w, body.TowPoint);
        Vector3d line = attitude.ToBody(end - origin) - body.TowPoint;
        double distance = Math.Max(line.Length, 1e-9);
        direction = (1 / distance) * line;
        double tension;
        if (tow.Mode == TowMode.Pulled)
        {
            double stretch = distance - lineLength;
            double rate = Vector3d.Dot(endVelocity - eyeVelocity, direction);

            // The damper takes hold over a millimetre, and a line does not push.
            double hold = Math.Clamp(stretch / 1e-3, 0, 1);
            tension = stretch > 0 ? Math.Max(0, (lineStiffness * stretch) + (hold * lineDamping * rate)) : 0;
        }
        else
        {
            // Slack line is drawn lengthwise through the water: its end follows on the tractrix, its friction is that of an axial boundary layer (Glauert & Lighthill 1955).
            double drawn = -Vector3d.Dot(eyeVelocity, direction);
            double follow = Math.Clamp((distance / lineLength * 50) - 49, 0, 1.02);
            double pace = Math.Max(0, drawn) * follow;
            endRate = attitude.ToWater(-pace * direction);
            tension = Math.PI * rho * nu * LineDragLaw.AxialFrictionNumber * lineLength * pace;
        }

        Tension = tension;
        Vector3d pull = tension * direction;
        Pull = attitude.ToWater(pull);
        load.Add(pull, body.TowPoint);
        if (snug && Has(ActionTerms.Knot)) KnotMoment(tension, direction, w, ref load);
    }

    // Clamped end of a long rod under tension: 2 sqrt(E I T) sin(phi/2) (Love 1927, art. 262); the bent length sqrt(E I/T) is swept through the water and damps.
    private void KnotMoment(double tension, Vector3d direction, Vector3d w, ref Load load)
    {
        // Slack leader still has the friction of its way through the water; 1 mN assumed.
        double held = tension + 1e-3;
        Vector3d axis = Vector3d.Cross(knotAxis, direction);
        double sine = axis.Length;
        double angle = Math.Atan2(sine, Vector3d.Dot(knotAxis, direction));
        if (sine > 1e-9) load.M += 2 * Math.Sqrt(bending * held) * Math.Sin(angle / 2) / sine * axis;
        double bent = Math.Min(Math.Sqrt(bending / held), 0.1);
        Vector3d across = w - (Vector3d.Dot(w, direction) * direction);
        double power = bent * bent * bent * bent;
        load.M += -0.25 * 0.5 * rho * CrossDrag * leaderDiameter * power * across.Length * across;
    }

    private Strip[] Strips(BodyBend bend)
    {
        var result = new Strip[body.Sections.Count];
        double length = 0, area = 0;
        foreach (BodySection s in body.Sections)
        {
            length += s.Length;
            area += s.Length * 0.5 * (s.Height + s.Width);
        }

        double slenderness = area > 0 ? Math.Max(1, length * length / area) : 1;
        double finite = CylinderDrag.FiniteLengthShare(slenderness);
        for (int i = 0; i < result.Length; i++)
        {
            BodySection s = body.Sections[i];
            Vector3d at = new(s.Position, 0, 0);
            double size = Math.Max(1e-5, 0.5 * (s.Height + s.Width));
            double difference = Math.Abs(Math.Pow(s.Height, 4) - Math.Pow(s.Width, 4));
            result[i] = new(
                Bent(at, bend),
                Tangent(s.Position, bend),
                0.5 * rho * finite * s.Height * s.Length,
                0.5 * rho * finite * s.Width * s.Length,
                CrossDragViscous * Math.Sqrt(nu / size),
                rho * s.Length * ((RollDrag * difference / 64) + (RollFriction * Math.PI * size * size * size * size / 16)));
        }

        return result;
    }

    private static Vector3d Bent(Vector3d point, BodyBend bend)
    {
        double behind = bend.Position - point.X;
        if (behind <= 0 || bend.Angle == 0) return point;
        Vector3d t = Tangent(point.X, bend);
        return new(bend.Position - (behind * t.X), point.Y - (behind * t.Y), point.Z - (behind * t.Z));
    }

    // Direction of the body's axis at a place, forwards.
    private static Vector3d Tangent(double x, BodyBend bend)
    {
        if (x >= bend.Position || bend.Angle == 0) return new(1, 0, 0);
        (double s, double c) = Math.SinCos(bend.Angle);
        (double sr, double cr) = Math.SinCos(bend.Roll);
        return new(c, -s * cr, -s * sr);
    }

    private void BuildMass(BodyBend bend)
    {
        Matrix<double> m = Matrix<double>.Build.Dense(7, 7);
        Matrix<double> shift = Shift(body.CentreOfMass);
        Matrix<double> rigid = Matrix<double>.Build.Dense(6, 6);
        for (int i = 0; i < 3; i++) rigid[i, i] = body.Mass;
        InertiaTensor t = body.Inertia;
        rigid[3, 3] = t.Xx;
        rigid[4, 4] = t.Yy;
        rigid[5, 5] = t.Zz;
        rigid[3, 4] = rigid[4, 3] = t.Xy;
        rigid[3, 5] = rigid[5, 3] = t.Xz;
        rigid[4, 5] = rigid[5, 4] = t.Yz;
        m.SetSubMatrix(0, 0, shift.TransposeThisAndMultiply(rigid) * shift);
        if (Has(ActionTerms.AddedMass)) m.SetSubMatrix(0, 0, m.SubMatrix(0, 6, 0, 6) + AddedMass(bend));
        if (tail is null)
        {
            m[6, 6] = 1;
        }
        else
        {
            double l = tail.Length;
            double first = TailFirstMoment * tail.Mass * l, second = TailSecondMoment * tail.Mass * l * l;
            m[6, 6] = second;
            m[1, 6] = m[6, 1] = first;
            m[5, 6] = m[6, 5] = (tail.HingePosition * first) - second;

            // Water carried by the paddle as it moves edgewise: rho (pi/4) t^2 per height (elliptic cylinder, Lamb 1932, art. 71), t its thickness along the flow.
            double thickness = PaddleThickness * tail.PaddleWidth;
            double carried = Has(ActionTerms.AddedMass) ? rho * Math.PI / 4 * thickness * thickness * tail.PaddleHeight : 0;
            double[] g = [0, 1, 0, tail.Drop, 0, tail.HingePosition - l, l];
            for (int i = 0; i < 7; i++)
            {
                for (int j = 0; j < 7; j++) m[i, j] += carried * g[i] * g[j];
            }
        }

        Cholesky<double> factor;
        try
        {
            factor = m.Cholesky();
        }
        catch (ArgumentException e)
        {
            throw new ArgumentOutOfRangeException("The body's inertia is too small for its tail: mass and inertia of the whole must include the tail.", e);
        }

        Matrix<double> inverted = factor.Solve(Matrix<double>.Build.DenseIdentity(7));
        for (int i = 0; i < 7; i++)
        {
            for (int j = 0; j < 7; j++)
            {
                mass[(7 * i) + j] = m[i, j];
                inverse[(7 * i) + j] = 0.5 * (inverted[i, j] + inverted[j, i]);
            }
        }
    }

    // Velocity of a point from that of the origin: v + w x r.
    private static Matrix<double> Shift(Vector3d r)
    {
        Matrix<double> s = Matrix<double>.Build.DenseIdentity(6);
        s[0, 4] = r.Z;
        s[0, 5] = -r.Y;
        s[1, 3] = -r.Z;
        s[1, 5] = r.X;
        s[2, 3] = r.Y;
        s[2, 4] = -r.X;
        return s;
    }

    private Matrix<double> AddedMass(BodyBend bend)
    {
        Span<double> k = stackalloc double[6];
        Vector3d a = body.SemiAxes;
        if (body.AddedMassOverride is IReadOnlyList<double> given)
        {
            for (int i = 0; i < 6; i++) k[i] = given[i];
        }
        else
        {
            EllipsoidAddedMass.Coefficients(a.X, a.Y, a.Z, k);
            double displaced = rho * 4.0 / 3 * Math.PI * a.X * a.Y * a.Z;
            for (int i = 0; i < 6; i++) k[i] *= displaced;
        }

        Matrix<double> diagonal = Matrix<double>.Build.DenseOfDiagonalArray(k.ToArray());
        if (bend.Angle == 0) return diagonal;

        // A bent body is seen as its ellipsoid turned by the bend in proportion to the share that lies behind it, about the bend.
        double share = Math.Clamp((bend.Position + a.X) / (2 * a.X), 0, 1);
        var mean = new BodyBend(bend.Angle * share, bend.Roll, bend.Position);
        Vector3d t = Tangent(double.NegativeInfinity, mean);
        double turned = Math.Asin(Math.Clamp(Math.Sqrt((t.Y * t.Y) + (t.Z * t.Z)), 0, 1));
        (double sr, double cr) = Math.SinCos(bend.Roll);

        // Turn about the axis x cross t.
        Vector3d axis = new(0, sr, -cr);
        (double s, double c) = Math.SinCos(turned / 2);
        var attitude = new Attitude(c, s * axis.X, s * axis.Y, s * axis.Z);
        Matrix<double> rotation = Matrix<double>.Build.Dense(6, 6);
        Span<Vector3d> columns = [attitude.ToWater(new(1, 0, 0)), attitude.ToWater(new(0, 1, 0)), attitude.ToWater(new(0, 0, 1))];
        for (int j = 0; j < 3; j++)
        {
            rotation[0, j] = rotation[3, j + 3] = columns[j].X;
            rotation[1, j] = rotation[4, j + 3] = columns[j].Y;
            rotation[2, j] = rotation[5, j + 3] = columns[j].Z;
        }

        double reach = 0.5 * (bend.Position + a.X) * share;
        (double sb, double cb) = Math.SinCos(bend.Angle);
        Vector3d centre = new(reach * (1 - cb), reach * sb * cr, reach * sb * sr);
        Matrix<double> shift = Shift(centre);
        return shift.TransposeThisAndMultiply(rotation * diagonal * rotation.Transpose()) * shift;
    }

    private void SetScale()
    {
        double length = body.Length;
        double speed = Math.Max(0.1, tow.Speed);
        for (int i = 0; i < 3; i++)
        {
            scale[R + i] = length;
            scale[V + i] = speed;
            scale[W + i] = speed / length;
            scale[End + i] = length;
        }

        for (int i = 0; i < 4; i++) scale[Q + i] = 1;
        scale[Tail] = 1;
        scale[TailRate] = speed / length;
        scale[Wake] = 1;
        scale[WakeRate] = tail is null ? 1 : WakeOscillator.SheddingRate(speed, tail.PaddleWidth);
        scale[LipWake] = 1;
        scale[LipWakeRate] = body.Lip is null ? 1 : WakeOscillator.SheddingRate(speed, body.Lip.Width);
        for (int i = RollTotal; i < Count; i++) scale[i] = double.PositiveInfinity;
    }

    private struct Load
    {
        public Vector3d F, M;
        public double Tail;

        public void Add(Vector3d force, Vector3d at)
        {
            F += force;
            M += Vector3d.Cross(at, force);
        }
    }

    private readonly record struct Strip(Vector3d Position, Vector3d Tangent, double AcrossHeight, double AcrossWidth, double Viscous, double Roll);

    private readonly record struct Edge(Vector3d Position, Vector3d Tangent, double Height, double Width);
}
