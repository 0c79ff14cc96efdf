using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using LureSim.Water;
using Group = System.Runtime.Intrinsics.Vector256<double>;

namespace LureSim.Motion.Line;

/// <content>Segments that are partly wet.</content>
internal sealed partial class LineDynamics
{
    // How much of a segment lies in a fluid and where its force acts, with derivatives: by the height of the segment's middle (slopes) and by its vertical extent dz.
    private struct Part
    {
        public Group Share, ShareSlope, ShareByExtent;
        public Group Fraction, FractionSlope, FractionByExtent;
        public Group Buoyancy;
    }

    // Adds water and air for the segments of a group that are partly wet. Water acts at the centre of the wetted length, air at the centre of the dry length: with half to each end, a node
    // well above the surface would be driven by the current, and the span between rod and water flutters.
    private void AddPartlyWet(int k, double lineOut, double payoutRate, bool derivatives)
    {
        Group half = Vector256.Create(0.5), one = Group.One, zero = Group.Zero;
        Group length0 = Load(fractionStep, k) * lineOut, floor = length0 * DirectionFloor;
        Group dx = Load(x, k + 1) - Load(x, k), dy = Load(y, k + 1) - Load(y, k), dz = Load(z, k + 1) - Load(z, k);
        GroupFluid fluid = default;
        fluid.DX = dx;
        fluid.DY = dy;
        fluid.DZ = dz;
        fluid.InverseLength = one / Vector256.Sqrt(Lanes.Dot(dx, dy, dz, dx, dy, dz) + (floor * floor));
        fluid.TX = dx * fluid.InverseLength;
        fluid.TY = dy * fluid.InverseLength;
        fluid.TZ = dz * fluid.InverseLength;
        fluid.Slide = Vector256.Create(payoutRate) / length0;
        Group zMiddle = half * (Load(z, k) + Load(z, k + 1)), ownHeight = half * Vector256.Abs(dz), smallest = Vector256.Create(SurfaceHalfThickness);
        Group height = Vector256.Max(ownHeight, smallest), steep = Vector256.GreaterThan(ownHeight, smallest);
        Group partly = Vector256.AndNot(Vector256.LessThan(zMiddle, height), Vector256.LessThanOrEqual(zMiddle, -height));
        Group depth = Vector256.ConditionalSelect(partly, half * (height - zMiddle) / height, zero);
        Group wet = depth * depth * (Vector256.Create(3.0) - depth - depth), wetSlope = depth * (depth - one) * 3 / height;

        // The extent itself changes with dz where it is not at its floor. lean is 1 for a segment that rises towards end b.
        Group wetByExtent = Vector256.ConditionalSelect(steep, -half * wetSlope * zMiddle * Vector256.ConditionalSelect(Vector256.LessThan(dz, zero), -one, one) / height, zero);
        Group lean = Vector256.Min(Vector256.Max(half * dz / height, -one), one), leanSlope = Vector256.ConditionalSelect(steep, zero, half / height);
        Group shareSlope = half * lean * wetSlope, share = half - (half * lean * (one - wet)), byExtent = half * ((lean * wetByExtent) - (leanSlope * (one - wet)));
        Group present = Vector256.ConditionalSelect(partly, one, zero), displaced = present * Load(area, k) * length0 * water.Density;
        Part part = default;

        // Two Gauss points in the water, each for half of the wetted length: drag as a consistent load. From the middle alone the drag of a zigzag of the nodes would vanish, and the depth of
        // a lure at 40 segments is off by up to 6 mm where it now is by 1 mm.
        SetFluid(ref fluid, k, length0, water.Density, water.Viscosity, true);
        for (int side = -1; side <= 1; side += 2)
        {
            Group spread = Vector256.Create(side * DragSpread);
            part.Share = Lanes.Fma(spread, wet, share);
            part.ShareSlope = Lanes.Fma(spread, wetSlope, shareSlope);
            part.ShareByExtent = Lanes.Fma(spread, wetByExtent, byExtent);
            part.Fraction = half * wet;
            part.FractionSlope = half * wetSlope;
            part.FractionByExtent = half * wetByExtent;
            part.Buoyancy = displaced * Gravity;
            AddPart(k, in fluid, ref part, lineOut, derivatives);
        }

        SetFluid(ref fluid, k, length0, WaterColumn.AirDensity, WaterColumn.AirViscosity, false);
        part.Share = Lanes.Fma(half * lean, wet, half);
        part.ShareSlope = shareSlope;
        part.ShareByExtent = half * Lanes.Fma(lean, wetByExtent, leanSlope * wet) * present;
        part.Fraction = present * (one - wet);
        part.FractionSlope = -wetSlope;
        part.FractionByExtent = -wetByExtent;
        part.Buoyancy = zero;
        AddPart(k, in fluid, ref part, lineOut, derivatives);
        AddMass(false, k, (one - share) * displaced * wet, in fluid);
        AddMass(true, k, share * displaced * wet, in fluid);
    }

    private void SetFluid(ref GroupFluid fluid, int k, Group length0, double density, double viscosity, bool wet)
    {
        Group own = Load(diameter, k);
        fluid.ReynoldsScale = own * (density / viscosity);
        fluid.HalfViscous = length0 * (0.5 * viscosity);
        fluid.Along = length0 * (Math.PI * viscosity);
        fluid.Quadratic = own * length0 * (0.5 * density * Math.PI * law.TangentialCoefficient);
        fluid.Wet = wet ? Group.AllBitsSet : Group.Zero;
        fluid.WindX = wet ? Group.Zero : Vector256.Create(water.WindX);
        fluid.WindY = wet ? Group.Zero : Vector256.Create(water.WindY);
    }

    // Drag and buoyancy of one part. The force moves from one end to the other, and meets another stream there, as the segment goes under.
    private void AddPart(int k, in GroupFluid fluid, ref Part part, double lineOut, bool derivatives)
    {
        Group toB = part.Share, toA = Group.One - toB;
        EvaluatePoint(k, in fluid, toA, toB, Lanes.Fma(toB, Load(fractionStep, k), Load(fractionLow, k)), derivatives, out PointDrag point);
        Group fx = point.ForceX, fy = point.ForceY, fz = point.ForceZ + part.Buoyancy;
        Group px = part.Fraction * fx, py = part.Fraction * fy, pz = part.Fraction * fz;
        AddEnd(toA * px, forceAx, k);
        AddEnd(toA * py, forceAy, k);
        AddEnd(toA * pz, forceAz, k);
        AddEnd(toB * px, forceBx, k);
        AddEnd(toB * py, forceBy, k);
        AddEnd(toB * pz, forceBz, k);
        if (!derivatives) return;

        Group alongShare = fluid.Slide * Load(fractionStep, k);
        Group sx = Load(vx, k) - Load(vx, k + 1) + Lanes.Fma(alongShare, fluid.DX, point.GradientX * fluid.DZ);
        Group sy = Load(vy, k) - Load(vy, k + 1) + Lanes.Fma(alongShare, fluid.DY, point.GradientY * fluid.DZ);
        Group sz = Load(vz, k) - Load(vz, k + 1) + (alongShare * fluid.DZ);
        Group bySpeedT = Lanes.Dot(point.VX, point.VY, point.VZ, sx, sy, sz), bySpeedE = Lanes.Dot(point.VeX, point.VeY, point.VeZ, sx, sy, sz);
        Group slope = Vector256.Create(0.5) * part.ShareSlope;
        Group byA = slope - part.ShareByExtent, byB = slope + part.ShareByExtent;
        StorePart(k, 0, fluid.TX, point.EX, in point, in part, toA, toB, fx, px, part.Fraction * point.HeightX, part.Fraction * Lanes.Fma(point.Alpha, sx, Lanes.Fma(fluid.TX, bySpeedT, point.EX * bySpeedE)), byA, byB);
        StorePart(k, 1, fluid.TY, point.EY, in point, in part, toA, toB, fy, py, part.Fraction * point.HeightY, part.Fraction * Lanes.Fma(point.Alpha, sy, Lanes.Fma(fluid.TY, bySpeedT, point.EY * bySpeedE)), byA, byB);
        StorePart(k, 2, fluid.TZ, point.EZ, in point, in part, toA, toB, fz, pz, part.Fraction * point.HeightZ, part.Fraction * Lanes.Fma(point.Alpha, sz, Lanes.Fma(fluid.TZ, bySpeedT, point.EZ * bySpeedE)), byA, byB);

        // By the line out: all is proportional to the length.
        AddColumn(false, k, toA * (1 / lineOut), px, py, pz);
        AddColumn(true, k, toB * (1 / lineOut), px, py, pz);
    }

    // One row of the blocks of a part: f the force of the whole segment, p that of the part, h and m the part's changes by the height of its point and by its share.
    private void StorePart(int k, int row, Group t, Group e, in PointDrag point, in Part part, Group toA, Group toB, Group f, Group p, Group h, Group m, Group byA, Group byB)
    {
        Group weightA = part.Fraction * toA, weightB = part.Fraction * toB;
        AddEntry(k, 3 * row, row == 0, t, e, point.VX, point.VeX, point.LX, point.LeX, in point, weightA, weightB, toA, toB, Group.Zero, Group.Zero, Group.Zero, Group.Zero);
        AddEntry(k, (3 * row) + 1, row == 1, t, e, point.VY, point.VeY, point.LY, point.LeY, in point, weightA, weightB, toA, toB, Group.Zero, Group.Zero, Group.Zero, Group.Zero);

        // By the height of the point of action (the current's gradient), by the immersion, which follows the middle of the segment, by the extent, which both ends see alike, and by the share.
        Group immersion = Vector256.Create(0.5) * part.FractionSlope * f, extent = part.FractionByExtent * f;
        Group endA = toA * (immersion - extent), endB = toA * (immersion + extent), farA = toB * (immersion - extent), farB = toB * (immersion + extent);
        AddEntry(
            k, (3 * row) + 2, row == 2, t, e, point.VZ, point.VeZ, point.LZ, point.LeZ, in point, weightA, weightB, toA, toB,
            Lanes.Fma(toA * toA, h, endA) + (byA * ((toA * m) - p)), Lanes.Fma(toA * toB, h, endB) + (byB * ((toA * m) - p)),
            Lanes.Fma(toA * toB, h, farA) + (byA * Lanes.Fma(toB, m, p)), Lanes.Fma(toB * toB, h, farB) + (byB * Lanes.Fma(toB, m, p)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void AddEntry(
        int k, int entry, bool diagonal, Group t, Group e, Group v, Group ve, Group l, Group le, in PointDrag point, Group weightA, Group weightB, Group toA, Group toB,
        Group columnAa, Group columnAb, Group columnBa, Group columnBb)
    {
        Group velocity = Lanes.Fma(t, v, e * ve), position = Lanes.Fma(t, l, e * le);
        if (diagonal)
        {
            velocity += point.Alpha;
            position += point.Turn;
        }

        ref double first = ref blocks.At(SegmentBlock.PositionAa, k);
        int stride = blocks.Stride;
        Group positionA = weightA * position, positionB = weightB * position, velocityA = weightA * velocity, velocityB = weightB * velocity;
        Add(columnAa - positionA, ref Unsafe.Add(ref first, entry * stride));
        Add(columnAb + positionA, ref Unsafe.Add(ref first, (9 + entry) * stride));
        Add(columnBa - positionB, ref Unsafe.Add(ref first, (18 + entry) * stride));
        Add(columnBb + positionB, ref Unsafe.Add(ref first, (27 + entry) * stride));
        Add(-toA * velocityA, ref Unsafe.Add(ref first, (36 + entry) * stride));
        Add(-toB * velocityA, ref Unsafe.Add(ref first, (45 + entry) * stride));
        Add(-toA * velocityB, ref Unsafe.Add(ref first, (54 + entry) * stride));
        Add(-toB * velocityB, ref Unsafe.Add(ref first, (63 + entry) * stride));
    }

    private void AddMass(bool endB, int k, Group added, in GroupFluid fluid)
    {
        ref double first = ref blocks.Mass(endB, k);
        int stride = blocks.Stride;
        Group mx = added * fluid.TX, my = added * fluid.TY, mz = added * fluid.TZ;
        Add(added - (mx * fluid.TX), ref first);
        Add(-mx * fluid.TY, ref Unsafe.Add(ref first, stride));
        Add(-mx * fluid.TZ, ref Unsafe.Add(ref first, 2 * stride));
        Add(added - (my * fluid.TY), ref Unsafe.Add(ref first, 3 * stride));
        Add(-my * fluid.TZ, ref Unsafe.Add(ref first, 4 * stride));
        Add(added - (mz * fluid.TZ), ref Unsafe.Add(ref first, 5 * stride));
    }

    private void AddColumn(bool endB, int k, Group factor, Group px, Group py, Group pz)
    {
        ref double first = ref blocks.Column(true, endB, k);
        Add(factor * px, ref first);
        Add(factor * py, ref Unsafe.Add(ref first, blocks.Stride));
        Add(factor * pz, ref Unsafe.Add(ref first, 2 * blocks.Stride));
    }

    private static void AddEnd(Group value, double[] row, int k) => Add(value, ref row[k + EndLead]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(Group value, ref double target) => (Vector256.LoadUnsafe(ref target) + value).StoreUnsafe(ref target);
}
