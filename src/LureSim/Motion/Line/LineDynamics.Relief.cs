using System.Runtime.Intrinsics;
using LureSim.Water;
using Group = System.Runtime.Intrinsics.Vector256<double>;

namespace LureSim.Motion.Line;

/// <content>Contact with a bottom that slopes.</content>
internal sealed partial class LineDynamics
{
    // What the shape of the bottom makes of the current at the nodes; rows of nothing where it is even.
    private readonly double[] flowRatio = [], flowX = [], flowY = [], flowClimb = [];

    private void LoadRelief()
    {
        for (int j = 0; j < flowRatio.Length; j += Lanes.Count)
        {
            relief!.FlowAt(Load(x, j), Load(y, j), Load(z, j), out _, out Group ratio, out Group alongX, out Group alongY, out Group climb);
            Store(ratio, flowRatio, j);
            Store(alongX, flowX, j);
            Store(alongY, flowY, j);
            Store(climb, flowClimb, j);
        }
    }

    // Between two nodes in proportion: twice as many look-ups would cost a tenth of a run and say no more.
    private void ReliefAt(int k, Group a, Group b, Group place, out Group height, out Group ratio, out Group directionX, out Group directionY, out Group climb)
    {
        ratio = Lanes.Fma(a, Load(flowRatio, k), b * Load(flowRatio, k + 1));
        directionX = Lanes.Fma(a, Load(flowX, k), b * Load(flowX, k + 1));
        directionY = Lanes.Fma(a, Load(flowY, k), b * Load(flowY, k + 1));
        climb = Lanes.Fma(a, Load(flowClimb, k), b * Load(flowClimb, k + 1));
        height = Lanes.Fma(place, ratio, Vector256.Create(water.Depth));
    }

    private void EvaluateLineOnRelief(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, double lineOut, Span<double> force, bool derivatives)
    {
        double reach = (20 * ContactSmoothing) - relief!.Shallowest;
        for (int j = 1; j < segments; j++)
        {
            double height = position[(3 * j) + 2];
            if (height >= reach) continue;
            BottomPlace below = relief.At(position[3 * j], position[(3 * j) + 1]);
            double fx = 0, fy = 0, fz = 0;
            ContactOnRelief(j, in below, -below.Clearance(height), 0.5 * lineOut * (Fractions[j + 1] - Fractions[j - 1]) * LineContactStiffness, velocity, ref fx, ref fy, ref fz, derivatives);
            force[3 * j] += fx;
            force[(3 * j) + 1] += fy;
            force[(3 * j) + 2] += fz;
        }
    }

    // As EvaluateContact, along the normal n of the bottom and across it: N = k d(1 - c v.n), friction against the slip v - (v.n) n. That the normal turns along a rounded edge is left out of
    // the derivatives: there it is a hundredth of the stiffness.
    private void ContactOnRelief(
        int node, in BottomPlace below, double penetration, double stiffness, ReadOnlySpan<double> velocity, ref double fx, ref double fy, ref double fz, bool derivatives)
    {
        if (penetration <= -20 * ContactSmoothing) return;
        double nz = below.NormalZ, lean = below.Slope * nz, nx = lean * below.AxisX, ny = lean * below.AxisY;
        double vx = velocity[3 * node], vy = velocity[(3 * node) + 1], vz = velocity[(3 * node) + 2];
        double away = (vx * nx) + (vy * ny) + (vz * nz);
        double sx = vx - (away * nx), sy = vy - (away * ny), sz = vz - (away * nz);
        double root = Math.Sqrt((penetration * penetration) + (ContactSmoothing * ContactSmoothing));
        double depth = 0.5 * (penetration + root), depthSlope = 0.5 * (1 + (penetration / root));
        double x = -ImpactLoss * away, factorRoot = Math.Sqrt((x * x) + 0.04);
        double factor = 1 + (0.5 * (x + factorRoot)) - 0.1, factorSlope = -ImpactLoss * 0.5 * (1 + (x / factorRoot));
        double normal = stiffness * depth * factor;
        double slip = Math.Sqrt((sx * sx) + (sy * sy) + (sz * sz) + (FrictionSpeed * FrictionSpeed)), mu = below.Friction, drag = mu * normal / slip;
        fx += (normal * nx) - (drag * sx);
        fy += (normal * ny) - (drag * sy);
        fz += (normal * nz) - (drag * sz);
        if (!derivatives) return;

        // By the clearance and by the speed away from the bottom: the direction in which the force on the node then grows.
        double byClearance = -stiffness * depthSlope * factor, byAway = stiffness * depth * factorSlope, share = mu / slip;
        double gx = nx - (share * sx), gy = ny - (share * sy), gz = nz - (share * sz);
        Matrix3 byPosition = default, byVelocity = default;
        byPosition.AddOuter(byClearance, gx, gy, gz, nx, ny, nz);
        byVelocity.AddOuter(byAway, gx, gy, gz, nx, ny, nz);

        // Friction by the slip, which has no part along the normal: -drag (1 - n n) + drag s s/slip^2.
        byVelocity.AddSymmetric(drag / (slip * slip), sx, sy, sz, -drag);
        byVelocity.AddSymmetric(drag, nx, ny, nz, 0);
        AddByVelocity(node, in byVelocity);
        AddByPosition(node, in byPosition);
    }

    // Adds what a change of the place along the profile does to the force on a node.
    private void AddAlongAxis(int node, in BottomPlace below, double fx, double fy, double fz)
    {
        Matrix3 byPosition = default;
        byPosition.AddOuter(1, fx, fy, fz, below.AxisX, below.AxisY, 0);
        AddByPosition(node, in byPosition);
    }

    // Adds to the block of a node by its own position.
    private void AddByPosition(int node, in Matrix3 block) => AddTo(SegmentBlock.PositionAa, node, in block);
}
