using System.Runtime.Intrinsics;
using LureSim.Hydrodynamics;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Motion;

/// <summary>Discretisation of the line.</summary>
/// <param name="Segments">Number of segments, 2 to 2000.</param>
/// <param name="Grading">
/// Exponent p of the node spacing xi_j = (j/N)^p, 1 to 3: 1 is uniform, larger values gather nodes at the lure, where the line bends most.
/// </param>
/// <param name="AxialDampingRatio">Damping ratio of a segment's axial vibration (dimensionless), 0 to 2.</param>
/// <param name="RodStiffness">Stiffness of the rod tip in series with the last segment (N/m); infinite for a rigid tip.</param>
internal readonly record struct LineMesh(int Segments, double Grading, double AxialDampingRatio, double RodStiffness = double.PositiveInfinity);

/// <summary>
/// Forces, masses and analytic derivatives of a lure on a line of lumped masses joined by elastic segments that carry no compression.
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
    private const double Gravity = 9.80665;

    // Tension at which the line's stiffness has fallen to half its taut value (N): a line's residual curl straightens under a few grams of force. It also
    // rounds off the corner between slack and taut, which no step size resolves otherwise. At 0.1 N it shortens the line by 7 parts in a million. Assumed.
    private const double StraighteningTension = 0.03;

    // Tension that an iteration does not go below (N), and the share of its own that a tension keeps at least in one iteration.
    private const double LeastTension = 1e-7;
    private const double LeastShare = 0.1;

    // Length that keeps the direction of a fully slack segment defined, relative to its unstretched length.
    private const double DirectionFloor = 1e-3;

    // Half thickness of the smoothed water surface for the line (m): a thin line is held up by surface tension over about this height.
    private const double SurfaceHalfThickness = 0.01;

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
    private readonly double[] direction;
    private readonly double[] elastic;
    private readonly double[] elasticState;
    private readonly double[] elasticTangent;
    private readonly double[] elasticSlope;
    private bool useIterate;

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
        Fractions = new double[segments + 1];
        for (int j = 0; j <= segments; j++) Fractions[j] = Math.Pow((double)j / segments, mesh.Grading);
        Tension = new double[segments];
        TensionByLine = new double[segments];
        TensionByRate = new double[segments];
        direction = new double[3 * segments];
        elastic = new double[segments];
        elasticState = new double[segments];
        elasticTangent = new double[segments];
        elasticSlope = new double[segments];
        int n = segments;
        MassMatrix = new double[6 * (n + 1)];
        PositionDiagonal = new double[9 * n];
        PositionUpper = new double[9 * n];
        PositionLower = new double[9 * n];
        VelocityDiagonal = new double[9 * n];
        VelocityUpper = new double[9 * n];
        VelocityLower = new double[9 * n];
    }

    /// <summary>Number of segments, and of free nodes.</summary>
    public int Segments => segments;

    /// <summary>Node positions as fractions of the line out, from the lure.</summary>
    public double[] Fractions { get; }

    /// <summary>Tension of each segment at the last evaluation (N).</summary>
    public double[] Tension { get; }

    /// <summary>Symmetric nodal mass matrices at the last evaluation (kg): xx, xy, xz, yy, yz, zz a node.</summary>
    public double[] MassMatrix { get; }

    /// <summary>Derivative of the force on a node by its own position (N/m), 3 x 3 row-major a node.</summary>
    public double[] PositionDiagonal { get; }

    /// <summary>Derivative of the force on node j by the position of node j + 1 (N/m).</summary>
    public double[] PositionUpper { get; }

    /// <summary>Derivative of the force on node j by the position of node j - 1 (N/m).</summary>
    public double[] PositionLower { get; }

    /// <summary>Derivative of the force on a node by its own velocity (N s/m).</summary>
    public double[] VelocityDiagonal { get; }

    /// <summary>Derivative of the force on node j by the velocity of node j + 1 (N s/m).</summary>
    public double[] VelocityUpper { get; }

    /// <summary>Derivative of the force on node j by the velocity of node j - 1 (N s/m).</summary>
    public double[] VelocityLower { get; }

    /// <summary>Derivative of the last segment's tension by the position of node N - 1 (N/m).</summary>
    public double[] TipTensionByPosition { get; } = new double[3];

    /// <summary>Derivative of the last segment's tension by the velocity of node N - 1 (N s/m).</summary>
    public double[] TipTensionByVelocity { get; } = new double[3];

    /// <summary>Derivative of each segment's tension by the line out (N/m): its main part, for Newton's method.</summary>
    public double[] TensionByLine { get; }

    /// <summary>Derivative of each segment's tension by the speed of the line out (N s/m).</summary>
    public double[] TensionByRate { get; }

    /// <summary>
    /// Largest difference between the tensions of the iteration and those that the stretch of the last evaluation has by the law, as a share of the tension (and the straightening tension).
    /// </summary>
    public double Mismatch { get; private set; }

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
        force.Clear();
        Array.Clear(MassMatrix);
        if (derivatives)
        {
            Array.Clear(PositionDiagonal);
            Array.Clear(VelocityDiagonal);
            Array.Clear(PositionUpper);
            Array.Clear(PositionLower);
            Array.Clear(VelocityUpper);
            Array.Clear(VelocityLower);
        }

        Mismatch = 0;
        EvaluateLure(position, velocity, force, derivatives);
        for (int k = 0; k < segments; k++)
            EvaluateSegment(k, position, velocity, lineOut, payoutRate, payoutAcceleration, force, derivatives);
        if (bottomZ > double.NegativeInfinity) EvaluateLineContact(position, velocity, lineOut, force, derivatives);
    }

    /// <summary>
    /// Derivative of the forces by the speed of the line out where the line out is a base plus g times that speed. Only the tension is taken, which is the stiff part.
    /// </summary>
    /// <param name="g">Seconds of line speed in the line out.</param>
    /// <param name="column">Result, 3 N (N s/m).</param>
    public void LineColumn(double g, Span<double> column)
    {
        column.Clear();
        for (int k = 0; k < segments; k++)
        {
            double value = TensionByRate[k] + (g * TensionByLine[k]);
            for (int m = 3 * k; m < (3 * k) + 3; m++)
            {
                double part = value * direction[m];
                column[m] += part;
                if (k + 1 < segments) column[m + 3] -= part;
            }
        }
    }

    /// <summary>
    /// Starts an iteration in which the tensions are unknowns of their own (a mixed method, condensed segment by segment): the derivatives then belong to them and not to the
    /// stretch of the iterate, whose tension a sideways step of a millimetre puts off by newtons. The solution is the same.
    /// </summary>
    public void BeginIteration()
    {
        for (int k = 0; k < segments; k++) elastic[k] = Math.Max(elasticState[k], LeastTension);
        useIterate = true;
    }

    /// <summary>Moves the tensions of the iteration along with a step of Newton's method in the positions.</summary>
    /// <param name="step">Velocity increments of the free nodes (m/s).</param>
    /// <param name="g">Seconds of velocity in the positions.</param>
    /// <param name="lineStep">Increment of the line out (m).</param>
    public void AdvanceIteration(ReadOnlySpan<double> step, double g, double lineStep)
    {
        for (int k = 0; k < segments; k++)
        {
            int a = 3 * k;
            double along = -((step[a] * direction[a]) + (step[a + 1] * direction[a + 1]) + (step[a + 2] * direction[a + 2]));
            if (k + 1 < segments) along += (step[a + 3] * direction[a]) + (step[a + 4] * direction[a + 1]) + (step[a + 5] * direction[a + 2]);
            double next = elasticTangent[k] + (elasticSlope[k] * g * along) + (TensionByLine[k] * lineStep);
            elastic[k] = Math.Max(next, Math.Max(LeastTension, LeastShare * elastic[k]));
        }
    }

    /// <summary>Keeps the tensions of the last evaluation, or those of the last iteration, for the next iteration to start from.</summary>
    public void KeepTensions(bool fromIteration)
    {
        Array.Copy(fromIteration ? elastic : elasticTangent, elasticState, segments);
        useIterate = false;
    }

    /// <summary>Accelerations of the free nodes under the forces of the last evaluation.</summary>
    /// <param name="f">Forces, 3 N (N).</param>
    /// <param name="result">Result, 3 N (m/s2).</param>
    public void SolveMass(ReadOnlySpan<double> f, Span<double> result)
    {
        double[] mass = MassMatrix;
        for (int j = 0; j < segments; j++)
        {
            ReadOnlySpan<double> m = mass.AsSpan(6 * j, 6);
            double c00 = (m[3] * m[5]) - (m[4] * m[4]);
            double c01 = (m[2] * m[4]) - (m[1] * m[5]);
            double c02 = (m[1] * m[4]) - (m[2] * m[3]);
            double c11 = (m[0] * m[5]) - (m[2] * m[2]);
            double c12 = (m[1] * m[2]) - (m[0] * m[4]);
            double c22 = (m[0] * m[3]) - (m[1] * m[1]);
            double scale = 1 / ((m[0] * c00) + (m[1] * c01) + (m[2] * c02));
            double f0 = f[3 * j] * scale, f1 = f[(3 * j) + 1] * scale, f2 = f[(3 * j) + 2] * scale;
            result[3 * j] = (c00 * f0) + (c01 * f1) + (c02 * f2);
            result[(3 * j) + 1] = (c01 * f0) + (c11 * f1) + (c12 * f2);
            result[(3 * j) + 2] = (c02 * f0) + (c12 * f1) + (c22 * f2);
        }
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

    private void EvaluateLure(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, Span<double> force, bool derivatives)
    {
        double z = position[2];
        double vx = velocity[0], vy = velocity[1], vz = velocity[2];
        double wet = LureImmersion(z, out double wetSlope);

        double current = water.Current.Speed(z - bottomZ, out double gradient);
        double ux = (current * water.Current.DirectionX) - vx;
        double uy = (current * water.Current.DirectionY) - vy;
        double uz = -vz;
        double speed = Math.Sqrt((ux * ux) + (uy * uy) + (uz * uz));

        // Grass multiplies the drag inside the canopy and holds with a small yield force.
        double canopy = 0, canopySlope = 0;
        if (water.GrassHeight > 0)
        {
            canopy = SmoothStep((bottomZ + water.GrassHeight - z + GrassSmoothing) / (2 * GrassSmoothing), out canopySlope);
            canopySlope /= -2 * GrassSmoothing;
        }

        double areaTimesSpeed = lure.DragAreaTimesSpeed(speed, water.KinematicViscosity, out double areaSlope);
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
        MassMatrix[0] += mass;
        MassMatrix[3] += mass;
        MassMatrix[5] += mass;

        double hold = GrassHold * canopy;
        double holdSpeed = Math.Sqrt((vx * vx) + (vy * vy) + (vz * vz) + 1e-4);
        fx -= hold * vx / holdSpeed;
        fy -= hold * vy / holdSpeed;
        fz -= hold * vz / holdSpeed;

        if (derivatives)
        {
            double directional = speed > 1e-12 ? 0.5 * water.Density * dragFactor * areaSlope / speed : 0;
            ref double v = ref VelocityDiagonal[0];
            Symmetric(ref v, -directional, ux, uy, uz, -coefficient);

            // Drag grows with the current's gradient and with immersion.
            double dragByZ = 0.5 * water.Density * areaTimesSpeed
                * ((wetSlope * (1 + ((GrassDragFactor - 1) * canopy))) + (wet * (GrassDragFactor - 1) * canopySlope));
            double dux = gradient * water.Current.DirectionX, duy = gradient * water.Current.DirectionY;
            double along = directional * ((ux * dux) + (uy * duy));
            PositionDiagonal[2] += (dragByZ * ux) + (coefficient * dux) + (along * ux);
            PositionDiagonal[5] += (dragByZ * uy) + (coefficient * duy) + (along * uy);
            PositionDiagonal[8] += (dragByZ * uz) + (along * uz) + (buoyancy * wetSlope);
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
                AddBlock(VelocityDiagonal, 0, in byFlow, -1, 0);
                PositionDiagonal[2] += (byFlow.A00 * dux) + (byFlow.A01 * duy) - (wetSlope * liftScale * uz * ux);
                PositionDiagonal[5] += (byFlow.A10 * dux) + (byFlow.A11 * duy) - (wetSlope * liftScale * uz * uy);
                PositionDiagonal[8] += (byFlow.A20 * dux) + (byFlow.A21 * duy) + (wetSlope * liftScale * levelSquared);
            }

            if (hold > 0 || canopySlope != 0)
            {
                double inverse = 1 / holdSpeed;
                Symmetric(ref v, hold * inverse * inverse * inverse, vx, vy, vz, -hold * inverse);
                PositionDiagonal[2] -= GrassHold * canopySlope * vx * inverse;
                PositionDiagonal[5] -= GrassHold * canopySlope * vy * inverse;
                PositionDiagonal[8] -= GrassHold * canopySlope * vz * inverse;
            }
        }

        double penetration = bottomZ + lure.ContactRadius - z;
        if (penetration > -20 * ContactSmoothing)
            EvaluateContact(0, penetration, water.Bottom.Stiffness, velocity, ref fx, ref fy, ref fz, derivatives);

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
            int d = 9 * node;
            double normalByZ = -stiffness * depthSlope * factor;
            double normalByVz = stiffness * depth * factorSlope;
            double mu = water.Bottom.Friction;
            PositionDiagonal[d + 8] += normalByZ;
            PositionDiagonal[d + 2] -= mu * normalByZ * vx / slip;
            PositionDiagonal[d + 5] -= mu * normalByZ * vy / slip;
            VelocityDiagonal[d + 8] += normalByVz;
            VelocityDiagonal[d + 2] -= mu * normalByVz * vx / slip;
            VelocityDiagonal[d + 5] -= mu * normalByVz * vy / slip;
            double cubic = friction / (slip * slip);
            VelocityDiagonal[d + 0] += (-friction) + (cubic * vx * vx);
            VelocityDiagonal[d + 1] += cubic * vx * vy;
            VelocityDiagonal[d + 3] += cubic * vx * vy;
            VelocityDiagonal[d + 4] += (-friction) + (cubic * vy * vy);
        }
    }

    private void EvaluateSegment(
        int k,
        ReadOnlySpan<double> position,
        ReadOnlySpan<double> velocity,
        double lineOut,
        double payoutRate,
        double payoutAcceleration,
        Span<double> force,
        bool derivatives)
    {
        int a = 3 * k, b = a + 3;
        double xiA = Fractions[k], xiB = Fractions[k + 1];
        double xi = 0.5 * (xiA + xiB);
        double length0 = lineOut * (xiB - xiA);

        // Material of the segment: the leader covers the first metres from the lure.
        double leader = 0;
        if (line.LeaderLength > 0) leader = Math.Clamp((line.LeaderLength - (lineOut * xiA)) / length0, 0, 1);
        LineMaterial main = line.Main, lead = line.Leader;
        double diameter, area, massPerLength, stiffness;
        if (leader <= 0)
        {
            diameter = main.Diameter;
            area = main.Area;
            massPerLength = main.MassPerLength;
            stiffness = main.AxialStiffness;
        }
        else
        {
            double rest = 1 - leader;
            diameter = (rest * main.Diameter) + (leader * lead.Diameter);
            area = (rest * main.Area) + (leader * lead.Area);
            massPerLength = (rest * main.MassPerLength) + (leader * lead.MassPerLength);

            // Springs in series.
            stiffness = 1 / ((rest / main.AxialStiffness) + (leader / lead.AxialStiffness));
        }

        // The rod tip gives way in series with the last segment.
        bool free = k + 1 < segments;
        if (!free) stiffness = length0 / ((length0 / stiffness) + (1 / mesh.RodStiffness));

        double dx = position[b] - position[a], dy = position[b + 1] - position[a + 1], dz = position[b + 2] - position[a + 2];
        double wx = velocity[b] - velocity[a], wy = velocity[b + 1] - velocity[a + 1], wz = velocity[b + 2] - velocity[a + 2];
        double floor = DirectionFloor * length0;
        double length = Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz) + (floor * floor));
        double inverseLength = 1 / length;
        double tx = dx * inverseLength, ty = dy * inverseLength, tz = dz * inverseLength;
        double mass = massPerLength * length0;

        // Tension without compression: 1/2 EA (e + sqrt(e^2 + e0^2)).
        double strain = (length / length0) - 1;
        double slackStrain = 2 * StraighteningTension / stiffness;
        double strainRoot, taut, tension;
        bool mixed = useIterate && derivatives;
        double iterate = elastic[k];
        if (mixed)
        {
            // The law as a tangent at the tension of the iteration; its strain is T/EA - EA e0^2/(4 T).
            double doubled = 2 * iterate / stiffness;
            double strainThere = 0.5 * (doubled - (slackStrain * slackStrain / doubled));
            strainRoot = Math.Sqrt((strainThere * strainThere) + (slackStrain * slackStrain));
            taut = doubled / (2 * strainRoot);
            tension = iterate + (stiffness * taut * (strain - strainThere));
            double root = Math.Sqrt((strain * strain) + (slackStrain * slackStrain));
            double byLaw = 0.5 * stiffness * (strain >= 0 ? strain + root : slackStrain * slackStrain / (root - strain));
            Mismatch = Math.Max(Mismatch, Math.Abs(tension - byLaw) / (byLaw + StraighteningTension));
        }
        else
        {
            strainRoot = Math.Sqrt((strain * strain) + (slackStrain * slackStrain));
            tension = 0.5 * stiffness * (strain >= 0 ? strain + strainRoot : slackStrain * slackStrain / (strainRoot - strain));
            taut = tension / (stiffness * strainRoot);
            iterate = tension;
        }

        double tensionSlope = stiffness * taut / length0;
        double damping = 2 * mesh.AxialDampingRatio * Math.Sqrt(0.5 * stiffness * massPerLength) * taut;

        // Rate of stretch of the material: the mesh shrinks with the line.
        double stretchRate = (tx * wx) + (ty * wy) + (tz * wz) - (payoutRate * length / lineOut);
        double total = tension + (damping * stretchRate);

        // Derivative of the axial force by the length: damping fades with the tension, and the mesh shrinks.
        double axialSlope = tensionSlope - (damping * payoutRate / lineOut);
        if (!mixed)
            axialSlope += mesh.AxialDampingRatio * Math.Sqrt(0.5 * stiffness * massPerLength) * stretchRate * slackStrain * slackStrain / (strainRoot * strainRoot * strainRoot * length0);
        Tension[k] = total;
        elasticTangent[k] = tension;
        elasticSlope[k] = tensionSlope;
        double reduction = massPerLength * payoutRate * payoutRate * xi * xi;
        double pull = total - reduction;
        double fx = pull * tx, fy = pull * ty, fz = pull * tz;

        // Immersion: smoothed over the segment's own vertical extent.
        double zMid = 0.5 * (position[a + 2] + position[b + 2]);
        double halfHeight = Math.Max(0.5 * Math.Abs(dz), SurfaceHalfThickness);
        bool steep = halfHeight > SurfaceHalfThickness;
        double wet = 1, wetSlope = 0, wetByExtent = 0;
        if (zMid > -halfHeight)
        {
            wet = SmoothStep((halfHeight - zMid) / (2 * halfHeight), out wetSlope);
            wetSlope /= -2 * halfHeight;

            // The extent itself changes with dz where it is not at its floor.
            if (steep) wetByExtent = -0.5 * wetSlope * zMid / halfHeight * Math.Sign(dz);
        }

        double slide = payoutRate / length0;
        double buoyancyFull = water.Density * area * length0 * Gravity;

        // Structural part, half to each end: tension, weight and the inertia of sliding line.
        double slideA = mass * payoutAcceleration * xi / length0;
        double slideB = 2 * mass * payoutRate * xi / length0;
        double weight = mass * Gravity;
        double sx = 0.5 * ((slideA * dx) + (slideB * wx));
        double sy = 0.5 * ((slideA * dy) + (slideB * wy));
        double sz = 0.5 * ((slideA * dz) + (slideB * wz) - weight);
        force[a] += fx + sx;
        force[a + 1] += fy + sy;
        force[a + 2] += fz + sz;
        if (free)
        {
            force[b] += sx - fx;
            force[b + 1] += sy - fy;
            force[b + 2] += sz - fz;
        }

        BlockRows stiff = default, damp = default;
        if (derivatives)
        {
            direction[a] = tx;
            direction[a + 1] = ty;
            direction[a + 2] = tz;
            TensionByLine[k] = -tensionSlope * length / lineOut;
            TensionByRate[k] = -damping * length / lineOut;
            if (!free)
            {
                double wAlong = (tx * wx) + (ty * wy) + (tz * wz);
                TipTensionByPosition[0] = -(axialSlope * tx) - (damping * inverseLength * (wx - (wAlong * tx)));
                TipTensionByPosition[1] = -(axialSlope * ty) - (damping * inverseLength * (wy - (wAlong * ty)));
                TipTensionByPosition[2] = -(axialSlope * tz) - (damping * inverseLength * (wz - (wAlong * tz)));
                TipTensionByVelocity[0] = -damping * tx;
                TipTensionByVelocity[1] = -damping * ty;
                TipTensionByVelocity[2] = -damping * tz;
            }

            // Ks = d(pull t)/dd; the force on end a by the vector d is Ks + 1/2 slideA, on end b -Ks + 1/2 slideA; likewise by w.
            double across = (pull + iterate - tension) * inverseLength;
            double wt = (tx * wx) + (ty * wy) + (tz * wz);
            double turn = damping * inverseLength;
            Vector256<double> t = Vector256.Create(tx, ty, tz, 0);
            stiff = BlockRows.Diagonal(across);
            stiff.AddOuter(tx, ty, tz, (t * (axialSlope - across - (turn * wt))) + (Vector256.Create(wx, wy, wz, 0) * turn));
            damp = default;
            damp.AddOuter(tx, ty, tz, t * damping);
        }

        // Fluid part. Water acts at the centre of the wetted length, air at the centre of the dry length: with half to each end, a node well above the
        // surface would be driven by the current, and the span between rod and water flutters. lean is 1 for a segment that rises towards end b.
        double lean = Math.Clamp(0.5 * dz / halfHeight, -1, 1);
        double leanSlope = steep ? 0 : 0.5 / halfHeight;
        double shareSlope = 0.5 * lean * wetSlope;
        double stretch = xiB - xiA;
        double addedToA = 0, addedToB = 0;
        bool whole = wet >= 1 || wet <= 0;
        if (derivatives && !whole) AddBlocks(k, free, in stiff, in stiff, default, default, default, in damp, in damp, in damp, 0.5 * slideA, 0.5 * slideB);
        if (whole)
        {
            var span = new WholeSpan(k, free, wet > 0, inverseLength, diameter, length0, buoyancyFull, slide, xiA, stretch, 0.5 * slideA, 0.5 * slideB);
            AddWholeFluid(in span, position, velocity, dx, dy, dz, tx, ty, tz, in stiff, in damp, force, derivatives);
            if (wet > 0) addedToA = addedToB = 0.5 * water.Density * area * length0;
        }

        if (wet > 0 && !whole)
        {
            double share = 0.5 - (0.5 * lean * (1 - wet));
            double byExtent = (0.5 * lean * wetByExtent) - (0.5 * leanSlope * (1 - wet));

            // Two Gauss points, each for half of the wetted length: drag as a consistent load. From the middle alone the drag of a zigzag of the nodes would vanish, and
            // the depth of a lure at 40 segments is off by up to 6 mm where it now is by 1 mm.
            for (int side = -1; side <= 1; side += 2)
            {
                double spread = side * DragSpread;
                double at = share + (spread * wet);
                double height = ((1 - at) * position[a + 2]) + (at * position[b + 2]);
                double current = water.Current.Speed(height - bottomZ, out double gradient);
                var fluid = new FluidSpan(
                    at, shareSlope + (spread * wetSlope), byExtent + (spread * wetByExtent), 0.5 * wet, 0.5 * wetSlope, 0.5 * wetByExtent, water.Density, water.Viscosity,
                    current * water.Current.DirectionX, current * water.Current.DirectionY, gradient * water.Current.DirectionX, gradient * water.Current.DirectionY, buoyancyFull);
                AddFluid(k, free, in fluid, velocity, slide * (xiA + (at * stretch)), slide * stretch, dx, dy, dz, tx, ty, tz, inverseLength, diameter, length0, force, derivatives);
            }

            double addedFull = water.Density * area * length0;
            addedToA = (1 - share) * addedFull * wet;
            addedToB = share * addedFull * wet;
        }

        if (wet < 1 && !whole)
        {
            double share = 0.5 + (0.5 * lean * wet);
            var fluid = new FluidSpan(
                share, shareSlope, (0.5 * lean * wetByExtent) + (0.5 * leanSlope * wet), 1 - wet, -wetSlope, -wetByExtent, WaterColumn.AirDensity, WaterColumn.AirViscosity, water.WindX, water.WindY, 0, 0, 0);
            AddFluid(k, free, in fluid, velocity, slide * (xiA + (share * stretch)), slide * stretch, dx, dy, dz, tx, ty, tz, inverseLength, diameter, length0, force, derivatives);
        }

        // The added mass acts across the line only (Ca = 1). Its turning with the line is left out: at fishing speeds it is a few thousandths of the drag.
        AddMass(2 * a, (0.5 * mass) + addedToA, addedToA, tx, ty, tz);
        AddMass(2 * b, (0.5 * mass) + addedToB, addedToB, tx, ty, tz);
    }

    private static void AddBlock(double[] target, int index, in Matrix3 block, double factor, double diagonal)
    {
        Span<double> t = target.AsSpan(index, 9);
        t[0] += (factor * block.A00) + diagonal;
        t[1] += factor * block.A01;
        t[2] += factor * block.A02;
        t[3] += factor * block.A10;
        t[4] += (factor * block.A11) + diagonal;
        t[5] += factor * block.A12;
        t[6] += factor * block.A20;
        t[7] += factor * block.A21;
        t[8] += (factor * block.A22) + diagonal;
    }

    // Adds factor block, and a column for the height of the point where the force acts.
    private static void AddBlock(double[] target, int index, in Matrix3 block, double factor, double x, double y, double z)
    {
        Span<double> t = target.AsSpan(index, 9);
        t[0] += factor * block.A00;
        t[1] += factor * block.A01;
        t[2] += (factor * block.A02) + x;
        t[3] += factor * block.A10;
        t[4] += factor * block.A11;
        t[5] += (factor * block.A12) + y;
        t[6] += factor * block.A20;
        t[7] += factor * block.A21;
        t[8] += (factor * block.A22) + z;
    }

    // Adds a column for the height of a node.
    private static void AddColumn(double[] target, int index, double factor, double x, double y, double z)
    {
        target[index + 2] += factor * x;
        target[index + 5] += factor * y;
        target[index + 8] += factor * z;
    }

    // A segment in one fluid over its whole length.
    private readonly record struct WholeSpan(
        int Index,
        bool Free,
        bool Wet,
        double InverseLength,
        double Diameter,
        double Length0,
        double Buoyancy,
        double Slide,
        double FractionA,
        double Stretch,
        double HalfA,
        double HalfB);

    // Drag and buoyancy of such a segment, as AddFluid has them for its two Gauss points in the water and its middle in the air, and its tension's derivatives with them.
    private void AddWholeFluid(
        in WholeSpan span,
        ReadOnlySpan<double> position,
        ReadOnlySpan<double> velocity,
        double dx,
        double dy,
        double dz,
        double tx,
        double ty,
        double tz,
        in BlockRows stiff,
        in BlockRows damp,
        Span<double> force,
        bool derivatives)
    {
        int a = 3 * span.Index, b = a + 3;
        bool free = span.Free;
        int points = span.Wet ? 2 : 1;
        double fraction = span.Wet ? 0.5 : 1;
        double density = span.Wet ? water.Density : WaterColumn.AirDensity, viscosity = span.Wet ? water.Viscosity : WaterColumn.AirViscosity;
        double reynoldsScale = span.Diameter * density / viscosity;
        double halfViscous = 0.5 * viscosity * span.Length0, along0 = Math.PI * viscosity * span.Length0;
        double quadratic0 = 0.5 * density * Math.PI * span.Diameter * span.Length0 * law.TangentialCoefficient;
        double vax = velocity[a], vay = velocity[a + 1], vaz = velocity[a + 2], vbx = velocity[b], vby = velocity[b + 1], vbz = velocity[b + 2];
        double tt = (tx * tx) + (ty * ty) + (tz * tz);
        double fax = 0, fay = 0, faz = 0, fbx = 0, fby = 0, fbz = 0;
        BlockRows positionA = stiff, positionB = stiff, velocityAa = damp, velocityAb = damp, velocityBb = damp;
        BlockRows heightAa = default, heightAb = default, heightBb = default;
        Vector256<double> t = Vector256.Create(tx, ty, tz, 0);
        for (int point = 0; point < points; point++)
        {
            double toB = points == 1 ? 0.5 : 0.5 + (point == 0 ? -DragSpread : DragSpread), toA = 1 - toB;
            double streamX = water.WindX, streamY = water.WindY, gradient = 0;
            if (span.Wet)
            {
                double current = water.Current.Speed((toA * position[a + 2]) + (toB * position[b + 2]) - bottomZ, out gradient);
                streamX = current * water.Current.DirectionX;
                streamY = current * water.Current.DirectionY;
            }

            double slide = span.Slide * (span.FractionA + (toB * span.Stretch));
            double ux = streamX - (toA * vax) - (toB * vbx) + (slide * dx), uy = streamY - (toA * vay) - (toB * vby) + (slide * dy), uz = (slide * dz) - (toA * vaz) - (toB * vbz);
            double along = (ux * tx) + (uy * ty) + (uz * tz);
            double nx = ux - (along * tx), ny = uy - (along * ty), nz = uz - (along * tz);
            double q = Math.Sqrt((nx * nx) + (ny * ny) + (nz * nz));
            law.Evaluate(q * reynoldsScale, out double g, out double gSlope, out double h, out double hSlope);
            double alpha = halfViscous * g, linear = along0 * h, quadratic = quadratic0 * Math.Abs(along), psi = (linear + quadratic) * along;
            double fx = fraction * ((alpha * nx) + (psi * tx)), fy = fraction * ((alpha * ny) + (psi * ty)), fz = fraction * ((alpha * nz) + (psi * tz));
            fax += toA * fx;
            fay += toA * fy;
            faz += toA * fz;
            fbx += toB * fx;
            fby += toB * fy;
            fbz += toB * fz;
            if (!derivatives) continue;

            double psiByAlong = linear + (2 * quadratic), lessAlpha = psiByAlong - alpha;
            double inverse = q > 1e-12 ? 1 / q : 0;
            double ex = nx * inverse, ey = ny * inverse, ez = nz * inverse;
            double alphaByQ = halfViscous * gSlope, psiByQ = along0 * hSlope * inverse * along;
            double et = (ex * tx) + (ey * ty) + (ez * tz);

            // By the velocity: alpha I + t X + e Y. By the direction: beta I + t (..) - s e Y, s = t.u; it acts through the turning of the segment, (I - t t)/length.
            Vector256<double> e = Vector256.Create(ex, ey, ez, 0);
            Vector256<double> rowX = (t * lessAlpha) + (e * psiByQ), rowY = e * alphaByQ;
            double turn = span.InverseLength, beta = psi - (alpha * along);
            Vector256<double> turnX = (Vector256.Create(ux, uy, uz, 0) * lessAlpha) - (e * (along * psiByQ)) - (t * ((lessAlpha * along) - (along * psiByQ * et) + beta));
            Vector256<double> turnY = (e - (t * et)) * (-along * alphaByQ);
            BlockRows byVelocity = BlockRows.Diagonal(fraction * alpha);
            byVelocity.AddOuter(fraction * tx, fraction * ty, fraction * tz, rowX);
            byVelocity.AddOuter(fraction * ex, fraction * ey, fraction * ez, rowY);
            BlockRows byLength = BlockRows.Diagonal(fraction * ((slide * alpha) + (turn * beta)));
            byLength.AddOuter(fraction * tx, fraction * ty, fraction * tz, (rowX * slide) + (turnX * turn));
            byLength.AddOuter(fraction * ex, fraction * ey, fraction * ez, (rowY * slide) + (turnY * turn));
            positionA.Add(in byLength, toA);
            positionB.Add(in byLength, -toB);
            velocityAa.Add(in byVelocity, toA * toA);
            velocityAb.Add(in byVelocity, -toA * toB);
            velocityBb.Add(in byVelocity, toB * toB);
            if (gradient == 0) continue;

            // By the height of the point, through the current's gradient.
            double gx = gradient * water.Current.DirectionX, gy = gradient * water.Current.DirectionY;
            double rx = (rowX.GetElement(0) * gx) + (rowX.GetElement(1) * gy), ry = (rowY.GetElement(0) * gx) + (rowY.GetElement(1) * gy);
            double cx = fraction * ((alpha * gx) + (tx * rx) + (ex * ry)), cy = fraction * ((alpha * gy) + (ty * rx) + (ey * ry)), cz = fraction * ((tz * rx) + (ez * ry));
            heightAa.AddHeightColumn(toA * toA * cx, toA * toA * cy, toA * toA * cz);
            heightAb.AddHeightColumn(toA * toB * cx, toA * toB * cy, toA * toB * cz);
            heightBb.AddHeightColumn(toB * toB * cx, toB * toB * cy, toB * toB * cz);
        }

        double lift = span.Wet ? 0.5 * span.Buoyancy : 0;
        force[a] += fax;
        force[a + 1] += fay;
        force[a + 2] += faz + lift;
        if (free)
        {
            force[b] += fbx;
            force[b + 1] += fby;
            force[b + 2] += fbz + lift;
        }

        if (!derivatives) return;
        AddBlocks(span.Index, free, in positionA, in positionB, in heightAa, in heightAb, in heightBb, in velocityAa, in velocityAb, in velocityBb, span.HalfA, span.HalfB);
    }

    // Adds the blocks of a segment. By its vector d the force on end a is positionA + halfA, that on end b halfA - positionB; by the velocities of the ends -velocityAa - halfB and
    // velocityAb + halfB on end a, velocityAb - halfB and halfB - velocityBb on end b; height are columns by the heights of the ends.
    private void AddBlocks(
        int k,
        bool free,
        in BlockRows positionA,
        in BlockRows positionB,
        in BlockRows heightAa,
        in BlockRows heightAb,
        in BlockRows heightBb,
        in BlockRows velocityAa,
        in BlockRows velocityAb,
        in BlockRows velocityBb,
        double halfA,
        double halfB)
    {
        int ia = 9 * k, ib = ia + 9;
        BlockRows block = heightAa;
        block.Add(in positionA, -1);
        block.AddDiagonal(-halfA);
        block.AddTo(PositionDiagonal, ia);
        block = BlockRows.Diagonal(-halfB);
        block.Add(in velocityAa, -1);
        block.AddTo(VelocityDiagonal, ia);
        if (!free) return;
        block = heightAb;
        block.Add(in positionA, 1);
        block.AddDiagonal(halfA);
        block.AddTo(PositionUpper, ia);
        block = heightBb;
        block.Add(in positionB, -1);
        block.AddDiagonal(halfA);
        block.AddTo(PositionDiagonal, ib);
        block = heightAb;
        block.Add(in positionB, 1);
        block.AddDiagonal(-halfA);
        block.AddTo(PositionLower, ib);
        block = BlockRows.Diagonal(halfB);
        block.Add(in velocityAb, 1);
        block.AddTo(VelocityUpper, ia);
        block = BlockRows.Diagonal(halfB);
        block.Add(in velocityBb, -1);
        block.AddTo(VelocityDiagonal, ib);
        block = BlockRows.Diagonal(-halfB);
        block.Add(in velocityAb, 1);
        block.AddTo(VelocityLower, ib);
    }

    // Drag and buoyancy of the part of a segment that lies in one fluid.
    private void AddFluid(
        int k,
        bool free,
        in FluidSpan fluid,
        ReadOnlySpan<double> velocity,
        double slide,
        double slideByShare,
        double dx,
        double dy,
        double dz,
        double tx,
        double ty,
        double tz,
        double inverseLength,
        double diameter,
        double length0,
        Span<double> force,
        bool derivatives)
    {
        int a = 3 * k, b = a + 3;
        double toB = fluid.Share, toA = 1 - toB;
        double vx = (toA * velocity[a]) + (toB * velocity[b]);
        double vy = (toA * velocity[a + 1]) + (toB * velocity[b + 1]);
        double vz = (toA * velocity[a + 2]) + (toB * velocity[b + 2]);
        SegmentDrag(
            fluid.StreamX - vx + (slide * dx), fluid.StreamY - vy + (slide * dy), (slide * dz) - vz, tx, ty, tz,
            diameter, length0, fluid.Density, fluid.Viscosity, derivatives, out Matrix3 byVelocity, out Matrix3 byDirection, out double fx, out double fy, out double fz);
        double fraction = fluid.Fraction;
        double px = fraction * fx, py = fraction * fy, pz = fraction * (fz + fluid.Buoyancy);
        force[a] += toA * px;
        force[a + 1] += toA * py;
        force[a + 2] += toA * pz;
        if (free)
        {
            force[b] += toB * px;
            force[b + 1] += toB * py;
            force[b + 2] += toB * pz;
        }

        if (!derivatives) return;

        Matrix3 g = byVelocity;
        g.Scale(slide);
        g.AddTimesProjector(byDirection, inverseLength, tx, ty, tz);

        // By the height of the point of action (the current's gradient) and by the immersion, which follows the middle of the segment.
        double cx = fraction * ((byVelocity.A00 * fluid.GradientX) + (byVelocity.A01 * fluid.GradientY));
        double cy = fraction * ((byVelocity.A10 * fluid.GradientX) + (byVelocity.A11 * fluid.GradientY));
        double cz = fraction * ((byVelocity.A20 * fluid.GradientX) + (byVelocity.A21 * fluid.GradientY));
        double half = 0.5 * fluid.FractionSlope;
        double qx = half * fx, qy = half * fy, qz = half * (fz + fluid.Buoyancy);
        bool partial = fluid.FractionSlope != 0 || fluid.ShareByExtent != 0;
        if (partial)
        {
            // By the vertical extent dz: the fraction itself, seen by both ends alike.
            g.A02 += fluid.FractionByExtent / fraction * fx;
            g.A12 += fluid.FractionByExtent / fraction * fy;
            g.A22 += fluid.FractionByExtent / fraction * (fz + fluid.Buoyancy);
        }

        int ia = 9 * k, ib = ia + 9;
        double ga = fraction * toA, gb = fraction * toB;
        AddBlock(PositionDiagonal, ia, in g, -ga, toA * ((toA * cx) + qx), toA * ((toA * cy) + qy), toA * ((toA * cz) + qz));
        AddBlock(VelocityDiagonal, ia, in byVelocity, -ga * toA, 0);
        if (partial)
        {
            // By the share: the force moves from one end to the other, and meets another stream there.
            double ux = velocity[a] - velocity[b] + (slideByShare * dx) + (fluid.GradientX * dz);
            double uy = velocity[a + 1] - velocity[b + 1] + (slideByShare * dy) + (fluid.GradientY * dz);
            double uz = velocity[a + 2] - velocity[b + 2] + (slideByShare * dz);
            double hx = fraction * ((byVelocity.A00 * ux) + (byVelocity.A01 * uy) + (byVelocity.A02 * uz));
            double hy = fraction * ((byVelocity.A10 * ux) + (byVelocity.A11 * uy) + (byVelocity.A12 * uz));
            double hz = fraction * ((byVelocity.A20 * ux) + (byVelocity.A21 * uy) + (byVelocity.A22 * uz));
            double byA = (0.5 * fluid.ShareSlope) - fluid.ShareByExtent, byB = (0.5 * fluid.ShareSlope) + fluid.ShareByExtent;
            AddColumn(PositionDiagonal, ia, byA, (toA * hx) - px, (toA * hy) - py, (toA * hz) - pz);
            if (free)
            {
                AddColumn(PositionUpper, ia, byB, (toA * hx) - px, (toA * hy) - py, (toA * hz) - pz);
                AddColumn(PositionDiagonal, ib, byB, (toB * hx) + px, (toB * hy) + py, (toB * hz) + pz);
                AddColumn(PositionLower, ib, byA, (toB * hx) + px, (toB * hy) + py, (toB * hz) + pz);
            }
        }

        if (free)
        {
            AddBlock(PositionUpper, ia, in g, ga, toA * ((toB * cx) + qx), toA * ((toB * cy) + qy), toA * ((toB * cz) + qz));
            AddBlock(PositionDiagonal, ib, in g, gb, toB * ((toB * cx) + qx), toB * ((toB * cy) + qy), toB * ((toB * cz) + qz));
            AddBlock(PositionLower, ib, in g, -gb, toB * ((toA * cx) + qx), toB * ((toA * cy) + qy), toB * ((toA * cz) + qz));
            AddBlock(VelocityUpper, ia, in byVelocity, -ga * toB, 0);
            AddBlock(VelocityDiagonal, ib, in byVelocity, -gb * toB, 0);
            AddBlock(VelocityLower, ib, in byVelocity, -gb * toA, 0);
        }
    }

    // The part of a segment in one fluid: where its force acts (share towards end b), how much of the segment it is, and the fluid.
    private readonly record struct FluidSpan(
        double Share,
        double ShareSlope,
        double ShareByExtent,
        double Fraction,
        double FractionSlope,
        double FractionByExtent,
        double Density,
        double Viscosity,
        double StreamX,
        double StreamY,
        double GradientX,
        double GradientY,
        double Buoyancy);

    private static void Symmetric(ref double target, double factor, double x, double y, double z, double diagonal)
    {
        Span<double> t = System.Runtime.InteropServices.MemoryMarshal.CreateSpan(ref target, 9);
        t[0] += (factor * x * x) + diagonal;
        t[1] += factor * x * y;
        t[2] += factor * x * z;
        t[3] += factor * y * x;
        t[4] += (factor * y * y) + diagonal;
        t[5] += factor * y * z;
        t[6] += factor * z * x;
        t[7] += factor * z * y;
        t[8] += (factor * z * z) + diagonal;
    }

    private void AddMass(int index, double isotropic, double axial, double tx, double ty, double tz)
    {
        Span<double> m = MassMatrix.AsSpan(index, 6);
        m[0] += isotropic - (axial * tx * tx);
        m[1] -= axial * tx * ty;
        m[2] -= axial * tx * tz;
        m[3] += isotropic - (axial * ty * ty);
        m[4] -= axial * ty * tz;
        m[5] += isotropic - (axial * tz * tz);
    }

    // Drag of a straight segment in a stream u (fluid minus material), direction t. With u_n = u - t (t.u), q = |u_n|:
    // f = alpha(q) u_n + psi(q, t.u) t.
    private void SegmentDrag(
        double ux,
        double uy,
        double uz,
        double tx,
        double ty,
        double tz,
        double diameter,
        double length,
        double density,
        double viscosity,
        bool derivatives,
        out Matrix3 byVelocity,
        out Matrix3 byDirection,
        out double fx,
        out double fy,
        out double fz)
    {
        double along = (ux * tx) + (uy * ty) + (uz * tz);
        double nx = ux - (along * tx), ny = uy - (along * ty), nz = uz - (along * tz);
        double q = Math.Sqrt((nx * nx) + (ny * ny) + (nz * nz));
        law.Evaluate(q * diameter * density / viscosity, out double g, out double gSlope, out double h, out double hSlope);
        double alpha = 0.5 * viscosity * length * g;
        double linear = Math.PI * viscosity * length * h;
        double quadratic = 0.5 * density * Math.PI * diameter * length * law.TangentialCoefficient * Math.Abs(along);
        double psi = (linear + quadratic) * along;
        fx = (alpha * nx) + (psi * tx);
        fy = (alpha * ny) + (psi * ty);
        fz = (alpha * nz) + (psi * tz);
        byVelocity = default;
        byDirection = default;
        if (!derivatives) return;

        double psiByAlong = linear + (2 * quadratic);
        double inverse = q > 1e-12 ? 1 / q : 0;
        double ex = nx * inverse, ey = ny * inverse, ez = nz * inverse;

        // Re dG/dRe = q dG/dq.
        double alphaByQTimesQ = 0.5 * viscosity * length * gSlope;
        double psiByQ = Math.PI * viscosity * length * hSlope * inverse * along;

        // A = alpha P + alpha' q n n + psi_t t t + psi_q t n
        Matrix3 velocity = Matrix3.Projector(alpha, psiByAlong, tx, ty, tz);
        velocity.AddOuter(alphaByQTimesQ, ex, ey, ez, ex, ey, ez);
        velocity.AddOuter(psiByQ, tx, ty, tz, ex, ey, ez);
        byVelocity = velocity;

        // B = -alpha (s I + t u) - s alpha' q n n + psi I + psi_t t u - psi_q s t n, s = t.u
        Matrix3 direction = default;
        direction.AddDiagonal(psi - (alpha * along));
        direction.AddOuter(psiByAlong - alpha, tx, ty, tz, ux, uy, uz);
        direction.AddOuter(-along * alphaByQTimesQ, ex, ey, ez, ex, ey, ez);
        direction.AddOuter(-along * psiByQ, tx, ty, tz, ex, ey, ez);
        byDirection = direction;
    }
}
