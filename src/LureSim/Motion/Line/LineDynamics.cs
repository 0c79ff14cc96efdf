using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Motion.Line;

/// <summary>Discretisation of the line.</summary>
/// <param name="Segments">Number of segments, 2 to 2000.</param>
/// <param name="Grading">
/// Exponent p of the node spacing xi_j = (j/N)^p, 1 to 3: 1 is uniform, larger values gather nodes at the lure, where the line bends most.
/// </param>
/// <param name="AxialDampingRatio">Damping ratio of a segment's axial vibration (dimensionless), 0 to 2.</param>
/// <param name="RodStiffness">Stiffness of the rod tip in series with the last segment (N/m); infinite for a rigid tip.</param>
internal readonly record struct LineMesh(int Segments, double Grading, double AxialDampingRatio, double RodStiffness = double.PositiveInfinity);

/// <summary>
/// Forces, masses and analytic derivatives of a lure on a line of lumped masses joined by elastic segments: their elastic part carries no compression, their axial damper may push for a moment.
/// </summary>
/// <remarks>
/// Node 0 is the lure, node N the rod tip (prescribed). Node j sits at the fraction xi_j of the unstretched line out, L(t), measured from the lure, so line
/// that is reeled in slides through the nodes (arbitrary Lagrangian-Eulerian): no node is ever added or removed and tension has no jumps.
/// With d the vector of a segment and R_s = d/l0, the material velocity is u = w - L' xi R_s and the inertia terms that this brings are the
/// tension reduction m L'^2 xi^2 and the body forces m (L'' xi R_s + 2 L' xi w_s).
/// Arrays hold three doubles a node. Instances own scratch memory: one thread each.
/// </remarks>
internal sealed partial class LineDynamics
{
    private const double Gravity = PhysicalConstants.StandardGravity;

    // Strain at which the line's stiffness has fallen to half its taut value, and the most tension that this may take (N): it rounds off the corner between slack and taut, which
    // no step size resolves otherwise. A strain, so that soft line is not shortened more than stiff line; a limit, so that cables are not shortened either. Assumed.
    private const double StraighteningStrain = 1e-4;
    private const double StraighteningLimit = 0.03;

    // Tension that an iteration does not go below (N), and the share of its own that a tension keeps at least in one iteration.
    private const double LeastTension = 1e-7;
    private const double LeastShare = 0.1;

    // Length that keeps the direction of a fully slack segment defined, relative to its unstretched length.
    private const double DirectionFloor = 1e-3;

    // Half thickness of the smoothed water surface for the line (m): surface tension holds a thin line up over the capillary length, 2.7 mm.
    private const double SurfaceHalfThickness = 0.003;

    // Distance of the two points where a segment's drag is taken from its middle, as a share of the segment: Gauss-Legendre, sqrt(1/12).
    private const double DragSpread = 0.28867513459481287;

    // Penetration over which bottom contact sets in (m).
    private const double ContactSmoothing = 2e-4;

    // Slip speed at which bottom friction has reached 70 % of its Coulomb value (m/s).
    private const double FrictionSpeed = 0.005;

    // Loss on impact with the bottom (s/m), after Hunt & Crossley 1975: a lure does not bounce visibly.
    private const double ImpactLoss = 4.0;

    // Contact stiffness of the line per length (N/m2).
    private const double LineContactStiffness = 20.0;

    // Resistance of a grass canopy to a lure (N), assumed: a 1/32 oz head hangs in the tops, a 1/8 oz head sinks in.
    private const double GrassHold = 0.02;

    // Drag of a lure among blades of grass relative to open water, assumed.
    private const double GrassDragFactor = 4.0;

    // Height over which the canopy sets in (m).
    private const double GrassSmoothing = 0.02;

    private readonly LureProperties lure;
    private readonly LineProperties line;
    private readonly WaterColumn water;
    private readonly LineDragLaw law;
    private readonly LineMesh mesh;
    private readonly int segments;
    private readonly double bottomZ;
    private readonly BottomRelief? relief;
    private readonly double pressedStiffness;
    private readonly double bottomStiffness;
    private readonly LineBlocks blocks;
    private bool useIterate;
    private double evaluatedLine;

    /// <summary>Creates the dynamics of one rig.</summary>
    public LineDynamics(LureProperties lure, LineProperties line, WaterColumn water, LineDragLaw law, LineMesh mesh)
    {
        this.lure = lure;
        this.line = line;
        this.water = water;
        this.law = law;
        this.mesh = mesh;
        segments = mesh.Segments;
        bottomZ = -water.Depth;
        relief = water.Relief;

        // A lure at rest is in the bottom by no more than half of itself. Clay bears 5.14 times its undrained shear strength (Prandtl 1921), 0.5 kPa on a mud of
        // 0.1 kPa (both from memory), about what the heaviest spoon presses with where it lies flat; the give of the penalty alone would let it sink without end.
        double pressed = (lure.Mass - (water.Density * lure.Volume)) * Gravity;
        pressedStiffness = pressed / Math.Max(lure.ContactRadius, ContactSmoothing);
        bottomStiffness = Math.Max(water.Bottom.Stiffness, pressedStiffness);
        Fractions = new double[segments + 1];
        for (int j = 0; j <= segments; j++) Fractions[j] = Math.Pow((double)j / segments, mesh.Grading);
        int padded = Lanes.Padded(segments);
        double[] Row() => new double[padded + Lanes.Count];
        (x, y, z, vx, vy, vz) = (Row(), Row(), Row(), Row(), Row(), Row());
        (fractionLow, fractionStep, diameter, area, massPerLength, stiffness, dampingRoot, straightening) = (Row(), Row(), Row(), Row(), Row(), Row(), Row(), Row());
        (elastic, elasticState, elasticTangent, elasticSlope) = (Row(), Row(), Row(), Row());
        (tangentX, tangentY, tangentZ) = (Row(), Row(), Row());
        (tensionByLine, tensionByRate, tension, axial, damper) = (Row(), Row(), Row(), Row(), Row());
        (forceAx, forceAy, forceAz, forceBx, forceBy, forceBz) = (Row(), Row(), Row(), Row(), Row(), Row());
        if (relief is not null) (flowRatio, flowX, flowY, flowClimb) = (Row(), Row(), Row(), Row());
        blocks = new LineBlocks(segments);
        for (int k = 0; k < padded; k++)
        {
            fractionLow[k] = k <= segments ? Fractions[k] : 1;
            fractionStep[k] = k < segments ? Fractions[k + 1] - Fractions[k] : fractionStep[segments - 1];
            SetMaterial(k, line.Main.Diameter, line.Main.Area, line.Main.MassPerLength, line.Main.AxialStiffness);
        }
    }

    /// <summary>Number of segments, and of free nodes.</summary>
    public int Segments => segments;

    /// <summary>Node positions as fractions of the line out, from the lure.</summary>
    public double[] Fractions { get; }

    /// <summary>Tension of each segment at the last evaluation (N).</summary>
    public ReadOnlySpan<double> Tension => tension.AsSpan(0, segments);

    /// <summary>Derivatives and masses at the last evaluation.</summary>
    public LineBlocks Blocks => blocks;

    /// <summary>Derivative of the last segment's tension by the position of node N - 1 (N/m).</summary>
    public double[] TipTensionByPosition { get; } = new double[3];

    /// <summary>Derivative of the last segment's tension by the velocity of node N - 1 (N s/m).</summary>
    public double[] TipTensionByVelocity { get; } = new double[3];

    /// <summary>
    /// Largest difference between the tensions of the iteration and those that the stretch of the last evaluation has by the law, as a share of the tension (and the straightening tension).
    /// </summary>
    public double Mismatch { get; private set; }

    /// <summary>Derivative of the last segment's tension by the line out (N/m).</summary>
    public double TipTensionByLine => tensionByLine[segments - 1];

    /// <summary>Derivative of the last segment's tension by the speed of the line out (N s/m).</summary>
    public double TipTensionByRate => tensionByRate[segments - 1];

    /// <summary>
    /// Evaluates the forces on nodes 0 to N - 1, the mass matrices and, on request, the derivatives.
    /// </summary>
    /// <param name="position">Node positions, 3 (N + 1), the rod tip last (m).</param>
    /// <param name="velocity">Node velocities, 3 (N + 1) (m/s).</param>
    /// <param name="lineOut">Unstretched line out L (m).</param>
    /// <param name="payoutRate">L' (m/s), negative when reeling in.</param>
    /// <param name="payoutAcceleration">L'' (m/s2).</param>
    /// <param name="force">Result, 3 N (N).</param>
    /// <param name="derivatives">Whether to fill the derivative arrays.</param>
    public void Evaluate(
        ReadOnlySpan<double> position,
        ReadOnlySpan<double> velocity,
        double lineOut,
        double payoutRate,
        double payoutAcceleration,
        Span<double> force,
        bool derivatives)
    {
        Mismatch = 0;
        evaluatedLine = lineOut;
        LoadNodes(position, velocity, lineOut);
        EvaluateSegments(lineOut, payoutRate, payoutAcceleration, derivatives);
        JoinForces(force);
        blocks.JoinMasses();
        if (derivatives) KeepTipTension(velocity);
        EvaluateLure(position, velocity, force, derivatives);
        if (relief is not null) EvaluateLineOnRelief(position, velocity, lineOut, force, derivatives);
        else if (bottomZ > double.NegativeInfinity) EvaluateLineContact(position, velocity, lineOut, force, derivatives);
    }

    /// <summary>Derivative of the forces by the speed of the line out where the line out is a base plus g times that speed.</summary>
    /// <param name="g">Seconds of line speed in the line out.</param>
    /// <param name="column">Result, 3 N (N s/m).</param>
    public void LineColumn(double g, Span<double> column)
    {
        int s = blocks.Stride;
        for (int i = 0; i < 3; i++)
        {
            ref double rateA = ref blocks.Column(false, false, 0), rateB = ref blocks.Column(false, true, 0), lineA = ref blocks.Column(true, false, 0), lineB = ref blocks.Column(true, true, 0);
            for (int j = 0; j < segments; j++)
            {
                int at = (i * s) + j;
                column[(3 * j) + i] = Unsafe.Add(ref rateA, at) + Unsafe.Add(ref rateB, at - 1) + (g * (Unsafe.Add(ref lineA, at) + Unsafe.Add(ref lineB, at - 1)));
            }
        }
    }

    /// <summary>
    /// Starts an iteration in which the tensions are unknowns of their own (a mixed method, condensed segment by segment): the derivatives then belong to them and not to the
    /// stretch of the iterate, whose tension a sideways step of a millimetre puts off by newtons. The solution is the same.
    /// </summary>
    public void BeginIteration()
    {
        for (int k = 0; k < elastic.Length; k++) elastic[k] = Math.Max(elasticState[k], LeastTension);
        useIterate = true;
    }

    /// <summary>Moves the tensions of the iteration along with a step of Newton's method in the positions.</summary>
    /// <param name="step">Velocity increments of the free nodes (m/s).</param>
    /// <param name="g">Seconds of velocity in the positions.</param>
    /// <param name="lineStep">Increment of the line out (m).</param>
    /// <param name="own">Whether the derivatives are those of the last evaluation; the tensions of the iteration are left where they are if not.</param>
    public void AdvanceIteration(ReadOnlySpan<double> step, double g, double lineStep, bool own)
    {
        for (int k = 0; k < segments; k++)
        {
            int a = 3 * k;
            double along = -((step[a] * tangentX[k]) + (step[a + 1] * tangentY[k]) + (step[a + 2] * tangentZ[k]));
            if (k + 1 < segments) along += (step[a + 3] * tangentX[k]) + (step[a + 4] * tangentY[k]) + (step[a + 5] * tangentZ[k]);
            double next = elasticTangent[k] + (elasticSlope[k] * g * along) + (tensionByLine[k] * lineStep);
            if (own) next = elastic[k] = Math.Max(next, Math.Max(LeastTension, LeastShare * elastic[k]));
            tension[k] += next - elasticTangent[k] + (damper[k] * along) + (tensionByRate[k] * lineStep / g);
        }
    }

    /// <summary>The <see cref="Mismatch"/> of the tensions of the iteration at other positions, near to those of the last evaluation.</summary>
    /// <param name="position">Node positions, 3 (N + 1) (m).</param>
    /// <param name="lineStep">Line out beyond that of the last evaluation (m).</param>
    public double MismatchAt(ReadOnlySpan<double> position, double lineStep)
    {
        double worst = 0, lineOut = evaluatedLine + lineStep;
        for (int k = 0; k < segments; k++)
        {
            int a = 3 * k;
            double dx = position[a + 3] - position[a], dy = position[a + 4] - position[a + 1], dz = position[a + 5] - position[a + 2];
            double length0 = lineOut * fractionStep[k], floor = DirectionFloor * length0;
            double strain = (Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz) + (floor * floor)) / length0) - 1, byLaw = TensionByLaw(strain, stiffness[k], straightening[k], out _);
            worst = Math.Max(worst, Math.Abs(elastic[k] - byLaw) / (byLaw + straightening[k]));
        }

        return worst;
    }

    /// <summary>Keeps the tensions of the last evaluation, or those of the last iteration, for the next iteration to start from.</summary>
    public void KeepTensions(bool fromIteration)
    {
        Array.Copy(fromIteration ? elastic : elasticTangent, elasticState, elasticState.Length);
        useIterate = false;
    }

    private void KeepTipTension(ReadOnlySpan<double> velocity)
    {
        int k = segments - 1, a = 3 * k;
        double wx = velocity[a + 3] - velocity[a], wy = velocity[a + 4] - velocity[a + 1], wz = velocity[a + 5] - velocity[a + 2];
        double tx = tangentX[k], ty = tangentY[k], tz = tangentZ[k], along = (tx * wx) + (ty * wy) + (tz * wz);
        double dx = x[k + 1] - x[k], dy = y[k + 1] - y[k], dz = z[k + 1] - z[k], turn = damper[k] * ((tx * dx) + (ty * dy) + (tz * dz)) / ((dx * dx) + (dy * dy) + (dz * dz));
        TipTensionByPosition[0] = -(axial[k] * tx) - (turn * (wx - (along * tx)));
        TipTensionByPosition[1] = -(axial[k] * ty) - (turn * (wy - (along * ty)));
        TipTensionByPosition[2] = -(axial[k] * tz) - (turn * (wz - (along * tz)));
        TipTensionByVelocity[0] = -damper[k] * tx;
        TipTensionByVelocity[1] = -damper[k] * ty;
        TipTensionByVelocity[2] = -damper[k] * tz;
    }

    // Tension without compression, 1/2 EA (e + s) with s = sqrt(e^2 + e0^2) and e0 = 2 T0/EA.
    private static double TensionByLaw(double strain, double axialStiffness, double straighteningTension, out double strainRoot)
    {
        double slack = 2 * straighteningTension / axialStiffness;
        strainRoot = Math.Sqrt((strain * strain) + (slack * slack));
        return 0.5 * axialStiffness * (strain >= 0 ? strain + strainRoot : slack * slack / (strainRoot - strain));
    }

    private static double SmoothStep(double x, out double slope)
    {
        if (x <= 0)
        {
            slope = 0;
            return 0;
        }

        if (x >= 1)
        {
            slope = 0;
            return 1;
        }

        slope = 6 * x * (1 - x);
        return x * x * (3 - (2 * x));
    }

    // Adds to the block of a node by its own velocity.
    private void AddByVelocity(int node, in Matrix3 block) => AddTo(SegmentBlock.VelocityAa, node, in block);

    private void AddTo(SegmentBlock kind, int node, in Matrix3 block)
    {
        int s = blocks.Stride;
        Span<double> t = MemoryMarshal.CreateSpan(ref blocks.At(kind, node), (8 * s) + 1);
        t[0] += block.A00;
        t[s] += block.A01;
        t[2 * s] += block.A02;
        t[3 * s] += block.A10;
        t[4 * s] += block.A11;
        t[5 * s] += block.A12;
        t[6 * s] += block.A20;
        t[7 * s] += block.A21;
        t[8 * s] += block.A22;
    }

    // Adds to the block of a node by its own height.
    private void AddByHeight(int node, double fx, double fy, double fz)
    {
        int s = blocks.Stride;
        Span<double> t = MemoryMarshal.CreateSpan(ref blocks.At(SegmentBlock.PositionAa, node), (8 * s) + 1);
        t[2 * s] += fx;
        t[5 * s] += fy;
        t[8 * s] += fz;
    }

    private void EvaluateLure(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, Span<double> force, bool derivatives)
    {
        double z = position[2];
        double vx = velocity[0], vy = velocity[1], vz = velocity[2];
        double wet = LureImmersion(z, out double wetSlope);

        BottomPlace below = relief?.At(position[0], position[1]) ?? default;
        ReliefFlow flow = relief?.FlowAt(in below, z) ?? new ReliefFlow(z - bottomZ, 1, water.Current.DirectionX, water.Current.DirectionY, 0);
        double current = water.Current.Speed(flow.Height, out double gradient);
        gradient *= flow.Ratio;
        double ux = (current * flow.X) - vx;
        double uy = (current * flow.Y) - vy;
        double uz = (current * flow.Climb) - vz;
        double speed = Math.Sqrt((ux * ux) + (uy * uy) + (uz * uz));

        // Grass multiplies the drag inside the canopy and holds with a small yield force.
        double canopy = 0, canopySlope = 0, grassTop = relief is null ? bottomZ + water.GrassHeight : below.Grass - below.Depth;
        if (relief is null ? water.GrassHeight > 0 : below.Grass > 0)
        {
            canopy = SmoothStep((grassTop - z + GrassSmoothing) / (2 * GrassSmoothing), out canopySlope);
            canopySlope /= -2 * GrassSmoothing;
        }

        // A lure that sinks through the water falls as it falls, one that is drawn along trails nose first: between the two by the square of the share of its speed that
        // is downward.
        double areaTimesSpeed = lure.DragAreaTimesSpeed(speed, water.KinematicViscosity, out double areaSlope);
        double fallShare = uz > 0 && speed > 1e-9 ? uz * uz / (speed * speed) : 0, fallExcess = 0;
        if (fallShare > 0)
        {
            fallExcess = lure.FallDragAreaTimesSpeed(speed, water.KinematicViscosity, out double fallSlope) - areaTimesSpeed;
            areaTimesSpeed += fallShare * fallExcess;
            areaSlope += fallShare * (fallSlope - areaSlope - (2 * fallExcess / speed));
        }

        double dragFactor = wet * (1 + ((GrassDragFactor - 1) * canopy));
        double coefficient = 0.5 * water.Density * dragFactor * areaTimesSpeed;
        double fx = coefficient * ux, fy = coefficient * uy, fz = coefficient * uz;

        // Lift: across the flow, in its vertical plane. L (|u|^2 z - u_z u).
        double liftArea = lure.LiftAreaAt(speed, out double liftSlope);
        double liftScale = 0.5 * water.Density * liftArea;
        double lift = wet * liftScale;
        double levelSquared = (ux * ux) + (uy * uy);
        if (liftArea != 0)
        {
            fx -= lift * uz * ux;
            fy -= lift * uz * uy;
            fz += lift * levelSquared;
        }

        double weight = lure.Mass * Gravity;
        double buoyancy = water.Density * lure.Volume * Gravity;
        double addedMass = lure.AddedMassCoefficient * water.Density * lure.Volume * wet;
        double mass = lure.Mass + addedMass;
        Span<double> ownMass = MemoryMarshal.CreateSpan(ref blocks.Mass(false, 0), (5 * blocks.Stride) + 1);
        ownMass[0] += mass;
        ownMass[3 * blocks.Stride] += mass;
        ownMass[5 * blocks.Stride] += mass;

        double hold = GrassHold * canopy;
        double holdSpeed = Math.Sqrt((vx * vx) + (vy * vy) + (vz * vz) + 1e-4);
        fx -= hold * vx / holdSpeed;
        fy -= hold * vy / holdSpeed;
        fz -= hold * vz / holdSpeed;

        if (derivatives)
        {
            double directional = speed > 1e-12 ? 0.5 * water.Density * dragFactor * areaSlope / speed : 0;
            Matrix3 byVelocity = default;
            byVelocity.AddSymmetric(-directional, ux, uy, uz, -coefficient);
            if (fallExcess != 0)
            {
                double byDescent = water.Density * dragFactor * fallExcess * uz / (speed * speed);
                byVelocity.A02 -= byDescent * ux;
                byVelocity.A12 -= byDescent * uy;
                byVelocity.A22 -= byDescent * uz;
            }

            // Drag grows with the current's gradient and with immersion.
            double dragByZ = 0.5 * water.Density * areaTimesSpeed
                * ((wetSlope * (1 + ((GrassDragFactor - 1) * canopy))) + (wet * (GrassDragFactor - 1) * canopySlope));
            double dux = gradient * flow.X, duy = gradient * flow.Y;
            double along = directional * ((ux * dux) + (uy * duy));
            double byHeightX = (dragByZ * ux) + (coefficient * dux) + (along * ux);
            double byHeightY = (dragByZ * uy) + (coefficient * duy) + (along * uy);
            double byHeightZ = (dragByZ * uz) + (along * uz) + (buoyancy * wetSlope);
            if (liftArea != 0 || liftSlope != 0)
            {
                Matrix3 byFlow = default;
                byFlow.A00 = -lift * uz;
                byFlow.A11 = -lift * uz;
                byFlow.A02 = -lift * ux;
                byFlow.A12 = -lift * uy;
                byFlow.A20 = 2 * lift * ux;
                byFlow.A21 = 2 * lift * uy;
                double bySpeed = speed > 1e-12 ? 0.5 * water.Density * wet * liftSlope / speed : 0;
                byFlow.AddOuter(bySpeed, -uz * ux, -uz * uy, levelSquared, ux, uy, uz);
                byHeightX += (byFlow.A00 * dux) + (byFlow.A01 * duy) - (wetSlope * liftScale * uz * ux);
                byHeightY += (byFlow.A10 * dux) + (byFlow.A11 * duy) - (wetSlope * liftScale * uz * uy);
                byHeightZ += (byFlow.A20 * dux) + (byFlow.A21 * duy) + (wetSlope * liftScale * levelSquared);
                byFlow.Scale(-1);
                AddByVelocity(0, in byFlow);
            }

            if (hold > 0 || canopySlope != 0)
            {
                double inverse = 1 / holdSpeed;
                byVelocity.AddSymmetric(hold * inverse * inverse * inverse, vx, vy, vz, -hold * inverse);
                byHeightX -= GrassHold * canopySlope * vx * inverse;
                byHeightY -= GrassHold * canopySlope * vy * inverse;
                byHeightZ -= GrassHold * canopySlope * vz * inverse;
            }

            AddByVelocity(0, in byVelocity);
            AddByHeight(0, byHeightX, byHeightY, byHeightZ);
            if (canopySlope != 0 && relief is not null)
            {
                double byCanopy = 0.5 * water.Density * areaTimesSpeed * wet * (GrassDragFactor - 1), inverse = GrassHold / holdSpeed, rise = canopySlope * (below.Slope - below.GrassSlope);
                AddAlongAxis(0, in below, rise * ((byCanopy * ux) - (inverse * vx)), rise * ((byCanopy * uy) - (inverse * vy)), rise * ((byCanopy * uz) - (inverse * vz)));
            }
        }

        double penetration = bottomZ + lure.ContactRadius - z;
        if (relief is not null)
            ContactOnRelief(0, in below, lure.ContactRadius - below.Clearance(z), Math.Max(below.Stiffness, pressedStiffness), velocity, ref fx, ref fy, ref fz, derivatives);
        else if (penetration > -20 * ContactSmoothing)
            EvaluateContact(0, penetration, bottomStiffness, velocity, ref fx, ref fy, ref fz, derivatives);

        force[0] += fx;
        force[1] += fy;
        force[2] += fz + (buoyancy * wet) - weight;
    }

    private void EvaluateLineContact(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, double lineOut, Span<double> force, bool derivatives)
    {
        for (int j = 1; j < segments; j++)
        {
            double penetration = bottomZ - position[(3 * j) + 2];
            if (penetration <= -20 * ContactSmoothing) continue;
            double length = 0.5 * lineOut * (Fractions[j + 1] - Fractions[j - 1]);
            double fx = 0, fy = 0, fz = 0;
            EvaluateContact(j, penetration, LineContactStiffness * length, velocity, ref fx, ref fy, ref fz, derivatives);
            force[3 * j] += fx;
            force[(3 * j) + 1] += fy;
            force[(3 * j) + 2] += fz;
        }
    }

    // Penalty contact with loss on impact (Hunt & Crossley 1975) and regularised Coulomb friction.
    private void EvaluateContact(
        int node,
        double penetration,
        double stiffness,
        ReadOnlySpan<double> velocity,
        ref double fx,
        ref double fy,
        ref double fz,
        bool derivatives)
    {
        double vx = velocity[3 * node], vy = velocity[(3 * node) + 1], vz = velocity[(3 * node) + 2];
        double root = Math.Sqrt((penetration * penetration) + (ContactSmoothing * ContactSmoothing));
        double depth = 0.5 * (penetration + root);
        double depthSlope = 0.5 * (1 + (penetration / root));

        // The damping factor 1 - ImpactLoss v_z, kept positive smoothly: a lure that is pulled off is not sucked down.
        double x = -ImpactLoss * vz;
        double factorRoot = Math.Sqrt((x * x) + 0.04);
        double factor = 1 + (0.5 * (x + factorRoot)) - 0.1;
        double factorSlope = -ImpactLoss * 0.5 * (1 + (x / factorRoot));
        double normal = stiffness * depth * factor;
        double slip = Math.Sqrt((vx * vx) + (vy * vy) + (FrictionSpeed * FrictionSpeed));
        double friction = water.Bottom.Friction * normal / slip;
        fx -= friction * vx;
        fy -= friction * vy;
        fz += normal;
        if (derivatives)
        {
            double normalByZ = -stiffness * depthSlope * factor;
            double normalByVz = stiffness * depth * factorSlope;
            double mu = water.Bottom.Friction;
            Matrix3 byVelocity = default;
            double cubic = friction / (slip * slip);
            byVelocity.A00 = (-friction) + (cubic * vx * vx);
            byVelocity.A01 = byVelocity.A10 = cubic * vx * vy;
            byVelocity.A11 = (-friction) + (cubic * vy * vy);
            byVelocity.A02 = -mu * normalByVz * vx / slip;
            byVelocity.A12 = -mu * normalByVz * vy / slip;
            byVelocity.A22 = normalByVz;
            AddByVelocity(node, in byVelocity);
            AddByHeight(node, -mu * normalByZ * vx / slip, -mu * normalByZ * vy / slip, normalByZ);
        }
    }
}
