using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using LureSim.Tackle;
using LureSim.Water;
using Group = System.Runtime.Intrinsics.Vector256<double>;

namespace LureSim.Motion.Line;

/// <content>The segments of the line, four neighbours at a time.</content>
internal sealed partial class LineDynamics
{
    // Entries before the first segment in the rows of forces on the ends: the lure is no segment's end b.
    private const int EndLead = 1;

    // Shares of a segment's ends in the velocity at its two Gauss points, and in what the drag there does to the ends.
    private const double NearShare = 0.5 + DragSpread;
    private const double FarShare = 0.5 - DragSpread;

    // Values a segment or node, in rows that end with whole groups of lanes; what lies beyond the line is a straight, taut continuation that nobody reads.
    private readonly double[] x, y, z, vx, vy, vz;
    private readonly double[] fractionLow, fractionStep;
    private readonly double[] diameter, area, massPerLength, stiffness, dampingRoot, straightening;
    private readonly double[] elastic, elasticState, elasticTangent, elasticSlope;
    private readonly double[] tangentX, tangentY, tangentZ;
    private readonly double[] tensionByLine, tensionByRate, tension, axial, damper;
    private readonly double[] forceAx, forceAy, forceAz, forceBx, forceBy, forceBz;
    private int leaderSegments;

    // What the tension gives to the blocks of a group, by coordinates of the variable: rows to multiply with the components of t.
    private struct BlockParts
    {
        public Group TX, TY, TZ;
        public Group StiffX, StiffY, StiffZ, Damping;
        public Group Across, HalfA, HalfB;
    }

    // The drag at one Gauss point and what its derivatives are made of.
    private struct PointDrag
    {
        public Group ForceX, ForceY, ForceZ;
        public Group Alpha, Turn, ByAlong, GradientX, GradientY;
        public Group EX, EY, EZ;
        public Group VX, VY, VZ, VeX, VeY, VeZ, LX, LY, LZ, LeX, LeY, LeZ;
        public Group HeightX, HeightY, HeightZ;
    }

    // What the drag at both points of a group shares.
    private struct GroupFluid
    {
        public Group DX, DY, DZ, TX, TY, TZ, InverseLength, Slide, ReynoldsScale, HalfViscous, Along, Quadratic, Wet, WindX, WindY;
    }

    private void LoadNodes(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, double lineOut)
    {
        for (int j = 0, a = 0; j <= segments; j++, a += 3)
        {
            x[j] = position[a];
            y[j] = position[a + 1];
            z[j] = position[a + 2];
            vx[j] = velocity[a];
            vy[j] = velocity[a + 1];
            vz[j] = velocity[a + 2];
        }

        for (int j = segments + 1; j < x.Length; j++)
        {
            x[j] = x[j - 1] + (lineOut * fractionStep[segments - 1]);
            y[j] = y[segments];
            z[j] = z[segments];
            vx[j] = vx[segments];
            vy[j] = vy[segments];
            vz[j] = vz[segments];
        }

        if (relief is not null && water.Current.SurfaceSpeed != 0) LoadRelief();
        LoadMaterial(lineOut);
    }

    // Material of the segments: the leader covers the first metres from the lure.
    private void LoadMaterial(double lineOut)
    {
        LineMaterial main = line.Main, lead = line.Leader;
        int covered = 0;
        for (; covered < segments; covered++)
        {
            double share = line.LeaderLength > 0 ? Math.Clamp((line.LeaderLength - (lineOut * fractionLow[covered])) / (lineOut * fractionStep[covered]), 0, 1) : 0;
            if (share <= 0) break;
            double rest = 1 - share;

            // Springs in series.
            SetMaterial(
                covered, (rest * main.Diameter) + (share * lead.Diameter), (rest * main.Area) + (share * lead.Area), (rest * main.MassPerLength) + (share * lead.MassPerLength),
                1 / ((rest / main.AxialStiffness) + (share / lead.AxialStiffness)));
        }

        for (int k = covered; k < leaderSegments; k++) SetMaterial(k, main.Diameter, main.Area, main.MassPerLength, main.AxialStiffness);
        leaderSegments = covered;

        // The rod tip gives way in series with the last segment.
        int last = segments - 1;
        double own = covered == segments ? stiffness[last] : main.AxialStiffness, length0 = lineOut * fractionStep[last];
        SetMaterial(last, diameter[last], area[last], massPerLength[last], length0 / ((length0 / own) + (1 / mesh.RodStiffness)));
        straightening[last] = StraighteningTension(own);
    }

    private void SetMaterial(int k, double ownDiameter, double ownArea, double ownMass, double ownStiffness)
    {
        diameter[k] = ownDiameter;
        area[k] = ownArea;
        massPerLength[k] = ownMass;
        stiffness[k] = ownStiffness;
        dampingRoot[k] = mesh.AxialDampingRatio * Math.Sqrt(0.5 * ownStiffness * ownMass);
        straightening[k] = StraighteningTension(ownStiffness);
    }

    private static double StraighteningTension(double stiffness) => Math.Min(StraighteningStrain * stiffness, StraighteningLimit);

    // Forces on the ends of all segments, masses and derivatives.
    private void EvaluateSegments(double lineOut, double payoutRate, double payoutAcceleration, bool derivatives)
    {
        Group worst = Group.Zero;
        for (int k = 0; k < segments; k += Lanes.Count)
        {
            if (!EvaluateGroup(k, lineOut, payoutRate, payoutAcceleration, derivatives, ref worst)) AddPartlyWet(k, lineOut, payoutRate, derivatives);
        }

        for (int i = 0; i < Lanes.Count; i++) Mismatch = Math.Max(Mismatch, worst[i]);
    }

    // False if some are partly wet: what water and air do to those is left to AddPartlyWet.
    private bool EvaluateGroup(int k, double lineOut, double payoutRate, double payoutAcceleration, bool derivatives, ref Group worst)
    {
        Group half = Vector256.Create(0.5);
        Group low = Load(fractionLow, k), step = Load(fractionStep, k), middle = Lanes.Fma(half, step, low);
        Group length0 = step * lineOut, inverseLength0 = Group.One / length0;
        Group mass = Load(massPerLength, k) * length0, stiff = Load(stiffness, k), root = Load(dampingRoot, k);
        Group dx = Load(x, k + 1) - Load(x, k), dy = Load(y, k + 1) - Load(y, k), dz = Load(z, k + 1) - Load(z, k);
        Group wx = Load(vx, k + 1) - Load(vx, k), wy = Load(vy, k + 1) - Load(vy, k), wz = Load(vz, k + 1) - Load(vz, k);
        Group floor = length0 * DirectionFloor;
        Group length = Vector256.Sqrt(Lanes.Dot(dx, dy, dz, dx, dy, dz) + (floor * floor));
        Group inverseLength = Group.One / length;
        Group tx = dx * inverseLength, ty = dy * inverseLength, tz = dz * inverseLength;

        // Tension without compression: 1/2 EA (e + sqrt(e^2 + e0^2)).
        Group strain = (length * inverseLength0) - Group.One, straight = Load(straightening, k), slackStrain = (straight + straight) / stiff;
        Group slackSquared = slackStrain * slackStrain, strainRoot = Vector256.Sqrt(Lanes.Fma(strain, strain, slackSquared));
        Group byLaw = half * stiff * Vector256.ConditionalSelect(Vector256.GreaterThanOrEqual(strain, Group.Zero), strain + strainRoot, slackSquared / (strainRoot - strain));
        Group pullElastic, taut, iterate;
        if (useIterate && derivatives)
        {
            // The law as a tangent at the tension of the iteration; its strain is T/EA - EA e0^2/(4 T).
            iterate = Load(elastic, k);
            Group doubled = (iterate + iterate) / stiff, strainThere = half * (doubled - (slackSquared / doubled));
            Group rootThere = Vector256.Sqrt(Lanes.Fma(strainThere, strainThere, slackSquared));
            taut = half * doubled / rootThere;
            pullElastic = Lanes.Fma(stiff * taut, strain - strainThere, iterate);
            Group off = Vector256.Abs(pullElastic - byLaw) / (byLaw + straight);
            worst = Vector256.Max(worst, Vector256.ConditionalSelect(Vector256.LessThan(Vector256.Create(k, k + 1.0, k + 2.0, k + 3.0), Vector256.Create((double)segments)), off, Group.Zero));
        }
        else
        {
            pullElastic = iterate = byLaw;
            taut = byLaw / (stiff * strainRoot);
        }

        Group slope = stiff * taut * inverseLength0;
        Group damping = (root + root) * taut;

        // Rate of stretch of the material: the mesh shrinks with the line.
        Group wt = Lanes.Dot(tx, ty, tz, wx, wy, wz), shrink = length * (payoutRate / lineOut), stretchRate = wt - shrink;
        Group total = Lanes.Fma(damping, stretchRate, pullElastic);

        // Derivative of the axial force by the length: damping fades with the tension, and the mesh shrinks.
        Group axialSlope = slope - (damping * (payoutRate / lineOut));
        if (!useIterate) axialSlope += root * stretchRate * slackSquared * inverseLength0 / (strainRoot * strainRoot * strainRoot);
        Store(total, tension, k);
        Store(pullElastic, elasticTangent, k);
        Store(slope, elasticSlope, k);
        Group reduction = Load(massPerLength, k) * middle * middle * (payoutRate * payoutRate);
        Group pull = total - reduction;
        Group fx = pull * tx, fy = pull * ty, fz = pull * tz;

        // Weight and the inertia of sliding line, half to each end.
        Group halfA = half * mass * middle * inverseLength0 * payoutAcceleration, halfB = mass * middle * inverseLength0 * payoutRate;
        Group sx = Lanes.Fma(halfA, dx, halfB * wx), sy = Lanes.Fma(halfA, dy, halfB * wy), sz = Lanes.Fma(halfA, dz, halfB * wz) - (mass * (0.5 * Gravity));

        // Immersion: a segment wholly in water or in air is done here. The surface is smoothed over the segment's own vertical extent.
        Group zMiddle = half * (Load(z, k) + Load(z, k + 1)), height = Vector256.Max(half * Vector256.Abs(dz), Vector256.Create(SurfaceHalfThickness));
        Group wet = Vector256.LessThanOrEqual(zMiddle, -height), dry = Vector256.GreaterThanOrEqual(zMiddle, height);
        Group own = Load(diameter, k), displaced = Vector256.ConditionalSelect(wet, Load(area, k) * length0 * (0.5 * water.Density), Group.Zero);
        Group viscosity = Vector256.ConditionalSelect(wet, Vector256.Create(water.Viscosity), Vector256.ConditionalSelect(dry, Vector256.Create(WaterColumn.AirViscosity), Group.Zero));
        Group density = Vector256.ConditionalSelect(wet, Vector256.Create(water.Density), Vector256.ConditionalSelect(dry, Vector256.Create(WaterColumn.AirDensity), Group.Zero));
        GroupFluid fluid;
        fluid.DX = dx;
        fluid.DY = dy;
        fluid.DZ = dz;
        fluid.TX = tx;
        fluid.TY = ty;
        fluid.TZ = tz;
        fluid.InverseLength = inverseLength;
        fluid.Slide = inverseLength0 * payoutRate;
        fluid.ReynoldsScale = own * Vector256.ConditionalSelect(wet, Vector256.Create(water.Density / water.Viscosity), Vector256.Create(WaterColumn.AirDensity / WaterColumn.AirViscosity));

        // Each Gauss point stands for half of the segment.
        fluid.HalfViscous = viscosity * length0 * 0.25;
        fluid.Along = viscosity * length0 * (0.5 * Math.PI);
        fluid.Quadratic = density * own * length0 * (0.25 * Math.PI * law.TangentialCoefficient);
        fluid.Wet = wet;
        fluid.WindX = Vector256.ConditionalSelect(wet, Group.Zero, Vector256.Create(water.WindX));
        fluid.WindY = Vector256.ConditionalSelect(wet, Group.Zero, Vector256.Create(water.WindY));
        Group reachNear = Lanes.Fma(step, Vector256.Create(FarShare), low), reachFar = Lanes.Fma(step, Vector256.Create(NearShare), low);
        Group p = Vector256.Create(NearShare), m = Vector256.Create(FarShare), lift = displaced * Gravity;
        EvaluatePoint(k, in fluid, p, m, reachNear, derivatives, out PointDrag near);
        EvaluatePoint(k, in fluid, m, p, reachFar, derivatives, out PointDrag far);
        Group ax = Lanes.Fma(p, near.ForceX, m * far.ForceX), ay = Lanes.Fma(p, near.ForceY, m * far.ForceY), az = Lanes.Fma(p, near.ForceZ, Lanes.Fma(m, far.ForceZ, lift));
        Group bx = Lanes.Fma(m, near.ForceX, p * far.ForceX), by = Lanes.Fma(m, near.ForceY, p * far.ForceY), bz = Lanes.Fma(m, near.ForceZ, Lanes.Fma(p, far.ForceZ, lift));
        StoreEnd(sx + fx + ax, forceAx, k);
        StoreEnd(sy + fy + ay, forceAy, k);
        StoreEnd(sz + fz + az, forceAz, k);
        StoreEnd(sx - fx + bx, forceBx, k);
        StoreEnd(sy - fy + by, forceBy, k);
        StoreEnd(sz - fz + bz, forceBz, k);

        // The added mass acts across the line only (Ca = 1). Its turning with the line is left out: at fishing speeds it is a few thousandths of the drag.
        StoreMass(k, Lanes.Fma(half, mass, displaced), displaced, tx, ty, tz);
        bool whole = Vector256.EqualsAll((wet | dry).AsInt64(), Vector256<long>.AllBitsSet);
        if (!derivatives) return whole;

        Store(tx, tangentX, k);
        Store(ty, tangentY, k);
        Store(tz, tangentZ, k);
        Store(axialSlope, axial, k);
        Store(damping, damper, k);
        Group byLine = slope * length * (-1 / lineOut), byRate = damping * length * (-1 / lineOut);
        Store(byLine, tensionByLine, k);
        Store(byRate, tensionByRate, k);

        BlockParts parts;
        parts.TX = tx;
        parts.TY = ty;
        parts.TZ = tz;
        Group turn = damping * inverseLength;
        parts.Across = (pull + iterate - pullElastic) * inverseLength;
        Group alongRow = axialSlope - parts.Across - (turn * wt);
        parts.StiffX = Lanes.Fma(tx, alongRow, wx * turn);
        parts.StiffY = Lanes.Fma(ty, alongRow, wy * turn);
        parts.StiffZ = Lanes.Fma(tz, alongRow, wz * turn);
        parts.Damping = damping;
        parts.HalfA = halfA;
        parts.HalfB = halfB;
        StoreRow(k, 0, tx, near.EX, far.EX, near.HeightX, far.HeightX, in parts, in near, in far);
        StoreRow(k, 1, ty, near.EY, far.EY, near.HeightY, far.HeightY, in parts, in near, in far);
        StoreRow(k, 2, tz, near.EZ, far.EZ, near.HeightZ, far.HeightZ, in parts, in near, in far);

        // By the line out and its speed, for an open bail: the tension, the stream along the sliding line, and all that is proportional to the length.
        Group slideA = Lanes.Fma(p * near.ByAlong, reachNear, m * far.ByAlong * reachFar) * length, slideB = Lanes.Fma(m * near.ByAlong, reachNear, p * far.ByAlong * reachFar) * length;
        Group inner = byRate - (Load(massPerLength, k) * middle * middle * (2 * payoutRate)), sliding = mass * middle * inverseLength0;
        StoreColumn(false, false, k, tx, ty, tz, Lanes.Fma(slideA, inverseLength0, inner), wx * sliding, wy * sliding, wz * sliding);
        StoreColumn(false, true, k, tx, ty, tz, Lanes.Fma(slideB, inverseLength0, -inner), wx * sliding, wy * sliding, wz * sliding);
        Group perLine = Vector256.Create(1 / lineOut), weight = mass * (0.5 * Gravity);
        inner = -axialSlope * length * perLine;
        StoreColumn(true, false, k, tx, ty, tz, inner - (slideA * fluid.Slide * perLine), ax * perLine, ay * perLine, (az - weight) * perLine);
        StoreColumn(true, true, k, tx, ty, tz, -inner - (slideB * fluid.Slide * perLine), bx * perLine, by * perLine, (bz - weight) * perLine);
        return whole;
    }

    // Drag at a Gauss point, for half of the segment: f = alpha(q) u_n + psi(q, t.u) t with u_n = u - t (t.u), q = |u_n|, u the stream past the material.
    private void EvaluatePoint(int k, in GroupFluid f, Group a, Group b, Group reach, bool derivatives, out PointDrag point)
    {
        Unsafe.SkipInit(out point);
        Group speed = Group.Zero, gradient = Group.Zero, climb = Group.Zero, directionX = Vector256.Create(water.Current.DirectionX), directionY = Vector256.Create(water.Current.DirectionY);
        if (water.Current.SurfaceSpeed != 0)
        {
            Group place = Lanes.Fma(a, Load(z, k), b * Load(z, k + 1)), at = place - Vector256.Create(bottomZ), byHeight = Group.One;
            if (relief is not null) ReliefAt(k, a, b, place, out at, out byHeight, out directionX, out directionY, out climb);
            speed = Vector256.ConditionalSelect(f.Wet, water.Current.Speed(at, out gradient), Group.Zero);
            gradient = Vector256.ConditionalSelect(f.Wet, gradient * byHeight, Group.Zero);
        }

        Group slide = f.Slide * reach;
        Group ux = Lanes.Fma(slide, f.DX, Lanes.Fma(speed, directionX, f.WindX)) - Lanes.Fma(a, Load(vx, k), b * Load(vx, k + 1));
        Group uy = Lanes.Fma(slide, f.DY, Lanes.Fma(speed, directionY, f.WindY)) - Lanes.Fma(a, Load(vy, k), b * Load(vy, k + 1));
        Group uz = (slide * f.DZ) - Lanes.Fma(a, Load(vz, k), b * Load(vz, k + 1)) + (speed * climb);
        Group along = Lanes.Dot(ux, uy, uz, f.TX, f.TY, f.TZ);
        Group nx = ux - (along * f.TX), ny = uy - (along * f.TY), nz = uz - (along * f.TZ);
        Group q = Vector256.Sqrt(Lanes.Dot(nx, ny, nz, nx, ny, nz));
        law.Evaluate(q * f.ReynoldsScale, out Group normal, out Group normalSlope, out Group tangential, out Group tangentialSlope);
        Group alpha = f.HalfViscous * normal, linear = f.Along * tangential, quadratic = f.Quadratic * Vector256.Abs(along), psi = (linear + quadratic) * along;
        point.ForceX = Lanes.Fma(alpha, nx, psi * f.TX);
        point.ForceY = Lanes.Fma(alpha, ny, psi * f.TY);
        point.ForceZ = Lanes.Fma(alpha, nz, psi * f.TZ);
        if (!derivatives) return;

        Group psiByAlong = linear + quadratic + quadratic, lessAlpha = psiByAlong - alpha;
        Group inverse = Vector256.ConditionalSelect(Vector256.GreaterThan(q, Vector256.Create(1e-12)), Group.One / q, Group.Zero);
        Group ex = nx * inverse, ey = ny * inverse, ez = nz * inverse;
        Group alphaByQ = f.HalfViscous * normalSlope, psiByQ = f.Along * tangentialSlope * inverse * along;
        Group et = Lanes.Dot(ex, ey, ez, f.TX, f.TY, f.TZ);

        // By the velocity: alpha I + t V + e Ve. By the direction: beta I + t (..) - s e (..), s = t.u; it acts through the turning of the segment, (I - t t)/length.
        point.Alpha = alpha;
        point.ByAlong = psiByAlong;
        point.EX = ex;
        point.EY = ey;
        point.EZ = ez;
        point.VX = Lanes.Fma(f.TX, lessAlpha, ex * psiByQ);
        point.VY = Lanes.Fma(f.TY, lessAlpha, ey * psiByQ);
        point.VZ = Lanes.Fma(f.TZ, lessAlpha, ez * psiByQ);
        point.VeX = ex * alphaByQ;
        point.VeY = ey * alphaByQ;
        point.VeZ = ez * alphaByQ;
        Group beta = psi - (alpha * along), turnE = along * psiByQ, turnT = Lanes.Fma(lessAlpha, along, beta) - (turnE * et), turnBy = -along * alphaByQ;
        point.Turn = Lanes.Fma(slide, alpha, f.InverseLength * beta);
        point.LX = Lanes.Fma(slide, point.VX, f.InverseLength * ((ux * lessAlpha) - (ex * turnE) - (f.TX * turnT)));
        point.LY = Lanes.Fma(slide, point.VY, f.InverseLength * ((uy * lessAlpha) - (ey * turnE) - (f.TY * turnT)));
        point.LZ = Lanes.Fma(slide, point.VZ, f.InverseLength * ((uz * lessAlpha) - (ez * turnE) - (f.TZ * turnT)));
        Group across = f.InverseLength * turnBy;
        point.LeX = Lanes.Fma(slide, point.VeX, across * (ex - (f.TX * et)));
        point.LeY = Lanes.Fma(slide, point.VeY, across * (ey - (f.TY * et)));
        point.LeZ = Lanes.Fma(slide, point.VeZ, across * (ez - (f.TZ * et)));

        // By the height of the point, through the current's gradient.
        Group gx = gradient * directionX, gy = gradient * directionY;
        point.GradientX = gx;
        point.GradientY = gy;
        Group rx = Lanes.Fma(point.VX, gx, point.VY * gy), ry = Lanes.Fma(point.VeX, gx, point.VeY * gy);
        point.HeightX = Lanes.Fma(alpha, gx, Lanes.Fma(f.TX, rx, ex * ry));
        point.HeightY = Lanes.Fma(alpha, gy, Lanes.Fma(f.TY, rx, ey * ry));
        point.HeightZ = Lanes.Fma(f.TZ, rx, ez * ry);
    }

    // One row of the blocks of a group. By its vector d the force on end a is positionA + halfA, that on end b halfA - positionB; by the velocities of the ends -velocityAa - halfB and
    // velocityAb + halfB on end a, velocityAb - halfB and halfB - velocityBb on end b.
    private void StoreRow(int k, int row, Group t, Group e1, Group e2, Group height1, Group height2, in BlockParts parts, in PointDrag near, in PointDrag far)
    {
        StoreEntry(
            k, 3 * row, row == 0, t, e1, e2, parts.StiffX, parts.TX, near.VX, near.VeX, far.VX, far.VeX, near.LX, near.LeX, far.LX, far.LeX, in parts, in near, in far,
            Group.Zero, Group.Zero, Group.Zero);
        StoreEntry(
            k, (3 * row) + 1, row == 1, t, e1, e2, parts.StiffY, parts.TY, near.VY, near.VeY, far.VY, far.VeY, near.LY, near.LeY, far.LY, far.LeY, in parts, in near, in far,
            Group.Zero, Group.Zero, Group.Zero);
        Group nearSquared = Vector256.Create(NearShare * NearShare), farSquared = Vector256.Create(FarShare * FarShare), both = Vector256.Create(NearShare * FarShare);
        StoreEntry(
            k, (3 * row) + 2, row == 2, t, e1, e2, parts.StiffZ, parts.TZ, near.VZ, near.VeZ, far.VZ, far.VeZ, near.LZ, near.LeZ, far.LZ, far.LeZ, in parts, in near, in far,
            Lanes.Fma(nearSquared, height1, farSquared * height2), both * (height1 + height2), Lanes.Fma(farSquared, height1, nearSquared * height2));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void StoreEntry(
        int k, int entry, bool diagonal, Group t, Group e1, Group e2, Group stiffRow, Group tRow, Group v1, Group v1e, Group v2, Group v2e, Group l1, Group l1e, Group l2, Group l2e,
        in BlockParts parts, in PointDrag near, in PointDrag far, Group heightAa, Group heightAb, Group heightBb)
    {
        Group nearSquared = Vector256.Create(NearShare * NearShare), farSquared = Vector256.Create(FarShare * FarShare), both = Vector256.Create(NearShare * FarShare), p = Vector256.Create(NearShare), m = Vector256.Create(FarShare);
        Group velocity1 = Lanes.Fma(t, v1, e1 * v1e), velocity2 = Lanes.Fma(t, v2, e2 * v2e), position1 = Lanes.Fma(t, l1, e1 * l1e), position2 = Lanes.Fma(t, l2, e2 * l2e);
        Group stiff = t * stiffRow, damp = t * tRow * parts.Damping, halfA = Group.Zero, halfB = Group.Zero;
        if (diagonal)
        {
            velocity1 += near.Alpha;
            velocity2 += far.Alpha;
            position1 += near.Turn;
            position2 += far.Turn;
            stiff += parts.Across;
            halfA = parts.HalfA;
            halfB = parts.HalfB;
        }

        Group positionA = Lanes.Fma(p, position1, Lanes.Fma(m, position2, stiff)), positionB = stiff - Lanes.Fma(m, position1, p * position2);
        Group velocityAa = Lanes.Fma(nearSquared, velocity1, Lanes.Fma(farSquared, velocity2, damp)), velocityAb = damp - (both * (velocity1 + velocity2)), velocityBb = Lanes.Fma(farSquared, velocity1, Lanes.Fma(nearSquared, velocity2, damp));
        ref double first = ref blocks.At(SegmentBlock.PositionAa, k);
        int stride = blocks.Stride;
        (heightAa - positionA - halfA).StoreUnsafe(ref Unsafe.Add(ref first, entry * stride));
        (heightAb + positionA + halfA).StoreUnsafe(ref Unsafe.Add(ref first, (9 + entry) * stride));
        (heightAb + positionB - halfA).StoreUnsafe(ref Unsafe.Add(ref first, (18 + entry) * stride));
        (heightBb - positionB + halfA).StoreUnsafe(ref Unsafe.Add(ref first, (27 + entry) * stride));
        (-velocityAa - halfB).StoreUnsafe(ref Unsafe.Add(ref first, (36 + entry) * stride));
        (velocityAb + halfB).StoreUnsafe(ref Unsafe.Add(ref first, (45 + entry) * stride));
        (velocityAb - halfB).StoreUnsafe(ref Unsafe.Add(ref first, (54 + entry) * stride));
        (halfB - velocityBb).StoreUnsafe(ref Unsafe.Add(ref first, (63 + entry) * stride));
    }

    private void StoreMass(int k, Group isotropic, Group added, Group tx, Group ty, Group tz)
    {
        Group mx = added * tx, my = added * ty, mz = added * tz;
        for (int end = 0; end < 2; end++)
        {
            ref double first = ref blocks.Mass(end == 1, k);
            int stride = blocks.Stride;
            (isotropic - (mx * tx)).StoreUnsafe(ref first);
            (-mx * ty).StoreUnsafe(ref Unsafe.Add(ref first, stride));
            (-mx * tz).StoreUnsafe(ref Unsafe.Add(ref first, 2 * stride));
            (isotropic - (my * ty)).StoreUnsafe(ref Unsafe.Add(ref first, 3 * stride));
            (-my * tz).StoreUnsafe(ref Unsafe.Add(ref first, 4 * stride));
            (isotropic - (mz * tz)).StoreUnsafe(ref Unsafe.Add(ref first, 5 * stride));
        }
    }

    private void StoreColumn(bool byLine, bool endB, int k, Group tx, Group ty, Group tz, Group along, Group fx, Group fy, Group fz)
    {
        ref double first = ref blocks.Column(byLine, endB, k);
        Lanes.Fma(tx, along, fx).StoreUnsafe(ref first);
        Lanes.Fma(ty, along, fy).StoreUnsafe(ref Unsafe.Add(ref first, blocks.Stride));
        Lanes.Fma(tz, along, fz).StoreUnsafe(ref Unsafe.Add(ref first, 2 * blocks.Stride));
    }

    // Forces on the nodes from those on the ends.
    private void JoinForces(Span<double> force)
    {
        for (int j = 0, a = 0; j < segments; j++, a += 3)
        {
            force[a] = forceAx[j + EndLead] + forceBx[j + EndLead - 1];
            force[a + 1] = forceAy[j + EndLead] + forceBy[j + EndLead - 1];
            force[a + 2] = forceAz[j + EndLead] + forceBz[j + EndLead - 1];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Group Load(double[] row, int at) => Vector256.Create<double>(row.AsSpan(at, Lanes.Count));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(Group value, double[] row, int at) => value.CopyTo(row.AsSpan(at, Lanes.Count));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void StoreEnd(Group value, double[] row, int at) => value.CopyTo(row.AsSpan(at + EndLead, Lanes.Count));
}
