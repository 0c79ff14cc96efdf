using LureSim.Lures;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Validation.Reference;

/// <summary>
/// Transient reference, written apart from the engine and unlike it in every choice: nodes fixed to the material (line that is reeled in shortens the last segment, and
/// the last node is dropped when that is short), drag and immersion per node by the printed formulas, hard slack, small steps of a semi-implicit Euler method in
/// which the unknowns are the tensions: one scalar tridiagonal system a step.
/// </summary>
/// <remarks>
/// A step solves M (v' - v)/h = G + D (u - v') + T t - T t for the nodes, D the drag matrix at the old velocity, together with T = EA (l' - l0)/l0 for the segments, where
/// l' = l + h t (v' - v'): the node equations are inverted node by node, which leaves the tensions. Segments that would push are dropped and the system solved again. First order
/// in the step, second in the spacing.
/// </remarks>
internal sealed class LumpedMassReference
{
    private const double Gravity = 9.80665;

    // Contact with the bottom: stiff enough that the body sinks in by less than a tenth of a millimetre.
    private const double ContactStiffness = 5e3;
    private const double ContactDamping = 5;
    private const double FrictionSpeed = 2e-3;

    // c of the condition on the step, 2 at the limit of stability.
    private const double StepOfWaves = 1;

    // Time over which a length that a dropped node had left over comes back into the line (s).
    private const double RepayTime = 0.05;

    private readonly LureProperties body;
    private readonly WaterColumn water;
    private readonly DragFormula drag;
    private readonly Func<double, (double X, double Y, double Z, double Vx, double Vy, double Vz)> tipAt;
    private readonly double longestStep;
    private double step;
    private readonly bool hasBottom;
    private readonly List<LineMaterial> material = [];
    private readonly List<double> restLength = [];
    private double[] x = [], y = [], z = [], vx = [], vy = [], vz = [];
    private double[] tension = [];
    private double[] sx = [], sy = [], sz = [], length = [], px = [], py = [], pz = [], diagonal = [], upper = [], lower = [], right = [], sweepC = [], sweepD = [];
    private double[] inverse = [];
    private double[] dragAcross = [];
    private bool[] slack = [];
    private double nextNodeLength;
    private double owed;
    private double slackFor;

    /// <summary>Creates the line straight from the body to the tip.</summary>
    public LumpedMassReference(
        LureProperties body,
        LineProperties line,
        WaterColumn water,
        DragFormula drag,
        Func<double, (double X, double Y, double Z, double Vx, double Vy, double Vz)> tipAt,
        double[] lengths,
        Func<double, (double X, double Y, double Z)> shape,
        double step)
    {
        this.body = body;
        this.water = water;
        this.drag = drag;
        this.tipAt = tipAt;
        longestStep = step;
        this.step = step;
        hasBottom = double.IsFinite(water.Depth);
        double total = lengths.Sum(), at = 0;
        var nodes = new List<(double X, double Y, double Z)> { shape(0) };
        foreach (double l in lengths)
        {
            material.Add(at + (0.5 * l) < line.LeaderLength ? line.Leader : line.Main);
            restLength.Add(l);
            at += l;
            nodes.Add(shape(at / total));
        }

        Allocate(nodes.Count);
        for (int i = 0; i < nodes.Count; i++) (x[i], y[i], z[i]) = nodes[i];
        nextNodeLength = restLength[^1];
    }

    /// <summary>Time (s).</summary>
    public double Time { get; private set; }

    /// <summary>Body's coordinates (m).</summary>
    public (double X, double Y, double Z) Body => (x[0], y[0], z[0]);

    /// <summary>Tension of the segment at the tip (N).</summary>
    public double TipTension => tension[restLength.Count - 1];

    /// <summary>Tension at the tip itself (N), extrapolated from the middles of the two segments below the shortening last one.</summary>
    public double TipTensionExtrapolated
    {
        get
        {
            int n = restLength.Count;
            double toFirst = restLength[n - 1] + (0.5 * restLength[n - 2]), apart = 0.5 * (restLength[n - 2] + restLength[n - 3]);
            return tension[n - 2] + ((tension[n - 2] - tension[n - 3]) * toFirst / apart);
        }
    }

    /// <summary>Tension of the segment at the body (N).</summary>
    public double BodyTension => tension[0];

    /// <summary>Unstretched line out (m).</summary>
    public double LineOut => restLength.Sum() + owed;

    /// <summary>Longest time for which any segment has been slack (s).</summary>
    public double LongestSlack { get; private set; }

    /// <summary>Rate of line leaving a free spool (m/s).</summary>
    public double SpoolRate { get; private set; }

    /// <summary>Sets all velocities, for a line that starts in motion.</summary>
    public void Move(double dx, double dy, double dz)
    {
        Array.Fill(vx, dx);
        Array.Fill(vy, dy);
        Array.Fill(vz, dz);
    }

    /// <summary>
    /// Unstretched lengths from body to tip whose nodes follow (j/N)^p, with a node at the end of the leader.
    /// </summary>
    public static double[] Lengths(double total, double leader, int segments, double grading)
    {
        var nodes = new List<double>();
        for (int j = 0; j <= segments; j++) nodes.Add(total * Math.Pow((double)j / segments, grading));
        if (leader > 0)
        {
            int nearest = Enumerable.Range(1, segments - 1).MinBy(j => Math.Abs(nodes[j] - leader));
            nodes[nearest] = leader;
        }

        return [.. Enumerable.Range(0, segments).Select(j => nodes[j + 1] - nodes[j])];
    }

    /// <summary>Advances to a time with line taken in or let out at a given rate (m/s, positive out).</summary>
    public void RunTo(double time, Func<double, double> payout)
    {
        while (time - Time > 0.5 * longestStep)
        {
            int parts = Parts();
            step = longestStep / parts;
            for (int i = 0; i < parts; i++)
            {
                restLength[^1] += step * payout(Time + (0.5 * step));
                Advance(null);
                Settle();
                Remesh();
            }

            step = longestStep;
        }
    }

    /// <summary>Advances to a time with an open spool: inertia dP/dt = T - friction P/sqrt(P^2 + 0.01^2) - damping P.</summary>
    public void RunFree(double time, double friction, double damping, double inertia, Func<bool> stop)
    {
        while (time - Time > 0.5 * step && !stop())
        {
            Advance((friction, damping, inertia));
            restLength[^1] += step * SpoolRate;
            Remesh();
        }
    }

    // Steps are divided so that waves across the line, which the method takes explicitly along the directions of the segments, stay resolved or overdamped: h^2 K <= c (M + D h/2).
    private int Parts()
    {
        double least = longestStep;
        for (int i = 1; i < restLength.Count; i++)
        {
            double mass = 0.5 * ((restLength[i - 1] * Inertia(i, i - 1)) + (restLength[i] * Inertia(i, i)));
            double stiffness = (tension[i - 1] / restLength[i - 1]) + (tension[i] / restLength[i]);
            if (stiffness <= 0) continue;
            double half = 0.25 * StepOfWaves * dragAcross[i] / stiffness;
            least = Math.Min(least, half + Math.Sqrt((half * half) + (StepOfWaves * mass / stiffness)));
        }

        return Math.Clamp((int)Math.Ceiling(longestStep / least), 1, 64);
    }

    private double Inertia(int node, int segment) => material[segment].MassPerLength + (z[node] < 0 ? water.Density * material[segment].Area : 0);

    private void Settle()
    {
        if (owed != 0)
        {
            double part = Math.Min(1, step / RepayTime) * owed;
            restLength[^1] += part;
            owed -= part;
        }

        bool anySlack = false;
        for (int k = 0; k < restLength.Count; k++) anySlack |= tension[k] <= 0;
        slackFor = anySlack ? slackFor + step : 0;
        LongestSlack = Math.Max(LongestSlack, slackFor);
    }

    private void Allocate(int nodes)
    {
        x = new double[nodes + 400];
        y = new double[nodes + 400];
        z = new double[nodes + 400];
        vx = new double[nodes + 400];
        vy = new double[nodes + 400];
        vz = new double[nodes + 400];
        tension = new double[nodes + 400];
        sx = new double[nodes + 400];
        sy = new double[nodes + 400];
        sz = new double[nodes + 400];
        length = new double[nodes + 400];
        px = new double[nodes + 400];
        py = new double[nodes + 400];
        pz = new double[nodes + 400];
        diagonal = new double[nodes + 400];
        upper = new double[nodes + 400];
        lower = new double[nodes + 400];
        right = new double[nodes + 400];
        sweepC = new double[nodes + 400];
        sweepD = new double[nodes + 400];
        dragAcross = new double[nodes + 400];
        slack = new bool[nodes + 400];
        inverse = new double[6 * (nodes + 400)];
    }

    private void Remesh()
    {
        int n = restLength.Count;
        if (n > 3 && restLength[n - 1] < 0.5 * restLength[n - 2])
        {
            // Drop the node below the tip. The chord is shorter than the two segments: with their length in it the line would be slack at once. It starts at the tension that
            // the two had, and what is left over comes in little by little.
            double both = restLength[n - 2] + restLength[n - 1];
            double mean = ((tension[n - 2] * restLength[n - 2]) + (tension[n - 1] * restLength[n - 1])) / both;
            double dx = x[n] - x[n - 2], dy = y[n] - y[n - 2], dz = z[n] - z[n - 2];
            restLength[n - 2] = Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz)) / (1 + (mean / material[n - 2].AxialStiffness));
            owed += both - restLength[n - 2];
            tension[n - 2] = mean;
            x[n - 1] = x[n];
            y[n - 1] = y[n];
            z[n - 1] = z[n];
            vx[n - 1] = vx[n];
            vy[n - 1] = vy[n];
            vz[n - 1] = vz[n];
            restLength.RemoveAt(n - 1);
            material.RemoveAt(n - 1);
        }
        else if (restLength[n - 1] > 1.5 * nextNodeLength && n < x.Length - 2)
        {
            // A new node two thirds up the last segment.
            double f = nextNodeLength / restLength[n - 1];
            x[n + 1] = x[n];
            y[n + 1] = y[n];
            z[n + 1] = z[n];
            vx[n + 1] = vx[n];
            vy[n + 1] = vy[n];
            vz[n + 1] = vz[n];
            x[n] = x[n - 1] + (f * (x[n + 1] - x[n - 1]));
            y[n] = y[n - 1] + (f * (y[n + 1] - y[n - 1]));
            z[n] = z[n - 1] + (f * (z[n + 1] - z[n - 1]));
            vx[n] = vx[n - 1] + (f * (vx[n + 1] - vx[n - 1]));
            vy[n] = vy[n - 1] + (f * (vy[n + 1] - vy[n - 1]));
            vz[n] = vz[n - 1] + (f * (vz[n + 1] - vz[n - 1]));
            restLength.Add(restLength[n - 1] - nextNodeLength);
            restLength[n - 1] = nextNodeLength;
            material.Add(material[n - 1]);
        }
    }

    private void Advance((double Friction, double Damping, double Inertia)? spool)
    {
        int n = restLength.Count;
        double h = step;
        for (int k = 0; k < n; k++)
        {
            double dx = x[k + 1] - x[k], dy = y[k + 1] - y[k], dz = z[k + 1] - z[k];
            length[k] = Math.Max(Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz)), 1e-9);
            sx[k] = dx / length[k];
            sy[k] = dy / length[k];
            sz[k] = dz / length[k];
        }

        for (int i = 0; i < n; i++) PrepareNode(i);
        (_, _, _, px[n], py[n], pz[n]) = tipAt(Time + h);
        inverse.AsSpan(6 * n, 6).Clear();

        // Compliance of a free spool at the tip.
        double spoolRate = 0, spoolGain = 0;
        if (spool is { } s)
        {
            double resistance = (s.Friction / Math.Sqrt((SpoolRate * SpoolRate) + 1e-4)) + s.Damping;
            double scale = 1 / (s.Inertia + (h * resistance));
            spoolRate = s.Inertia * SpoolRate * scale;
            spoolGain = h * scale;
        }

        for (int k = 0; k < n; k++)
        {
            double own = Quadratic(k, k) + Quadratic(k + 1, k);
            diagonal[k] = (restLength[k] / material[k].AxialStiffness) + (h * own);
            if (k + 1 < n) upper[k] = -h * Bilinear(k + 1, k, k + 1);
            if (k > 0) lower[k] = -h * Bilinear(k, k, k - 1);
            right[k] = length[k] - restLength[k] + (h * ((sx[k] * (px[k + 1] - px[k])) + (sy[k] * (py[k + 1] - py[k])) + (sz[k] * (pz[k + 1] - pz[k]))));
        }

        if (spool is not null)
        {
            diagonal[n - 1] += h * spoolGain;
            right[n - 1] -= h * spoolRate;
        }

        SolveTensions(n);
        if (spool is not null) SpoolRate = spoolRate + (spoolGain * tension[n - 1]);

        for (int i = 0; i < n; i++)
        {
            double qx = tension[i] * sx[i], qy = tension[i] * sy[i], qz = tension[i] * sz[i];
            if (i > 0)
            {
                qx -= tension[i - 1] * sx[i - 1];
                qy -= tension[i - 1] * sy[i - 1];
                qz -= tension[i - 1] * sz[i - 1];
            }

            ReadOnlySpan<double> a = inverse.AsSpan(6 * i, 6);
            vx[i] = px[i] + (a[0] * qx) + (a[1] * qy) + (a[2] * qz);
            vy[i] = py[i] + (a[1] * qx) + (a[3] * qy) + (a[4] * qz);
            vz[i] = pz[i] + (a[2] * qx) + (a[4] * qy) + (a[5] * qz);
            x[i] += h * vx[i];
            y[i] += h * vy[i];
            z[i] += h * vz[i];
        }

        Time += h;
        (x[n], y[n], z[n], vx[n], vy[n], vz[n]) = tipAt(Time);
    }

    // Velocity without tension and inverse of M/h + D.
    private void PrepareNode(int i)
    {
        double h = step;
        double tx = sx[i], ty = sy[i], tz = sz[i];
        if (i > 0)
        {
            tx += sx[i - 1];
            ty += sy[i - 1];
            tz += sz[i - 1];
            double norm = Math.Sqrt((tx * tx) + (ty * ty) + (tz * tz));
            if (norm < 1e-6) (tx, ty, tz) = (sx[i], sy[i], sz[i]);
            else (tx, ty, tz) = (tx / norm, ty / norm, tz / norm);
        }

        double mass = 0, added = 0, up = 0, cross = 0, along = 0, gx = 0, gy = 0, gz = 0;
        double wetLength = 0, dryLength = 0, diameter = material[i].Diameter;
        for (int side = -1; side <= 0; side++)
        {
            int k = i + side;
            if (k < 0) continue;
            LineMaterial m = material[k];
            if (m.Diameter != diameter)
            {
                // Two materials meet at the node.
                DragOf(i, diameter, wetLength, dryLength, tx, ty, tz, ref cross, ref along, ref gx, ref gy, ref gz);
                wetLength = dryLength = 0;
                diameter = m.Diameter;
            }

            double half = 0.5 * restLength[k];
            double wet = WetPart(z[i], z[side == 0 ? k + 1 : k]);
            mass += half * m.MassPerLength;
            added += half * wet * water.Density * m.Area;
            up += half * ((wet * water.Density * m.Area) - m.MassPerLength) * Gravity;
            wetLength += half * wet;
            dryLength += half * (1 - wet);
        }

        DragOf(i, diameter, wetLength, dryLength, tx, ty, tz, ref cross, ref along, ref gx, ref gy, ref gz);
        dragAcross[i] = cross;
        double isotropic = mass / h, kx = 0, kz = 0;
        gx += mass / h * vx[i];
        gy += mass / h * vy[i];
        gz += (mass / h * vz[i]) + up;

        // Added mass across the line.
        double va = (tx * vx[i]) + (ty * vy[i]) + (tz * vz[i]);
        gx += added / h * (vx[i] - (va * tx));
        gy += added / h * (vy[i] - (va * ty));
        gz += added / h * (vz[i] - (va * tz));
        cross += added / h;
        double radius = 0;
        if (i == 0)
        {
            radius = body.ContactRadius;
            double wet = Math.Clamp(0.5 - (z[0] / (2 * Math.Max(radius, 1e-3))), 0, 1);
            double current = water.Current.Speed(z[0] + water.Depth, out _);
            double ux = (current * water.Current.DirectionX) - vx[0], uy = (current * water.Current.DirectionY) - vy[0], uz = -vz[0];
            double coefficient = 0.5 * water.Density * wet * body.DragAreaTimesSpeed(Math.Sqrt((ux * ux) + (uy * uy) + (uz * uz)), water.KinematicViscosity, out _);
            double total = body.Mass + (wet * body.AddedMassCoefficient * water.Density * body.Volume);
            isotropic += (total / h) + coefficient;
            gx += (total / h * vx[0]) + (coefficient * current * water.Current.DirectionX);
            gy += (total / h * vy[0]) + (coefficient * current * water.Current.DirectionY);
            gz += (total / h * vz[0]) + (((wet * water.Density * body.Volume) - body.Mass) * Gravity);
        }

        if (hasBottom)
        {
            double depth = radius - water.Depth - z[i];
            if (depth > 0)
            {
                double share = i == 0 ? 1 : Math.Min(1, 0.05 * (restLength[i] + restLength[i - 1]));
                gz += share * ContactStiffness * depth;
                kz = share * ((ContactStiffness * h) + (vz[i] < 0 ? ContactDamping : 0));
                double slip = Math.Sqrt((vx[i] * vx[i]) + (vy[i] * vy[i]) + (FrictionSpeed * FrictionSpeed));
                kx = water.Bottom.Friction * share * ContactStiffness * depth / slip;
            }
        }

        // A = (isotropic + cross)(I - t t) + (isotropic + along) t t + diag(kx, kx, kz)
        double b = isotropic + cross, d = along - cross;
        double a00 = b + (d * tx * tx) + kx, a01 = d * tx * ty, a02 = d * tx * tz, a11 = b + (d * ty * ty) + kx, a12 = d * ty * tz, a22 = b + (d * tz * tz) + kz;
        double c00 = (a11 * a22) - (a12 * a12), c01 = (a02 * a12) - (a01 * a22), c02 = (a01 * a12) - (a02 * a11);
        double scale = 1 / ((a00 * c00) + (a01 * c01) + (a02 * c02));
        Span<double> v = inverse.AsSpan(6 * i, 6);
        v[0] = c00 * scale;
        v[1] = c01 * scale;
        v[2] = c02 * scale;
        v[3] = ((a00 * a22) - (a02 * a02)) * scale;
        v[4] = ((a01 * a02) - (a00 * a12)) * scale;
        v[5] = ((a00 * a11) - (a01 * a01)) * scale;
        px[i] = (v[0] * gx) + (v[1] * gy) + (v[2] * gz);
        py[i] = (v[1] * gx) + (v[3] * gy) + (v[4] * gz);
        pz[i] = (v[2] * gx) + (v[4] * gy) + (v[5] * gz);
    }

    // Share of a node at za in the part of a segment, from there to zb, that is below the surface, as of half the segment: the integral of a weight that falls evenly from 1 at za to 0
    // at zb. By nearness to the node alone, the water that a line enters at a low angle would act up to a quarter of a segment off.
    private static double WetPart(double za, double zb)
    {
        if (za <= 0 && zb <= 0) return 1;
        if (za >= 0 && zb >= 0) return 0;
        double wet = Math.Min(za, zb) / (Math.Min(za, zb) - Math.Max(za, zb));
        return za < 0 ? wet * (2 - wet) : wet * wet;
    }

    private void DragOf(
        int i, double diameter, double wetLength, double dryLength, double tx, double ty, double tz, ref double cross, ref double along, ref double gx, ref double gy, ref double gz)
    {
        if (wetLength > 0)
        {
            double current = water.Current.Speed(Math.Min(z[i], 0) + water.Depth, out _);
            Drag(i, diameter, wetLength, water.Density, water.Viscosity, current * water.Current.DirectionX, current * water.Current.DirectionY, tx, ty, tz, ref cross, ref along, ref gx, ref gy, ref gz);
        }

        if (dryLength > 0)
            Drag(i, diameter, dryLength, WaterColumn.AirDensity, WaterColumn.AirViscosity, water.WindX, water.WindY, tx, ty, tz, ref cross, ref along, ref gx, ref gy, ref gz);
    }

    // Adds a piece's drag as matrix (cross, along) and as matrix times stream.
    private void Drag(
        int i, double diameter, double piece, double density, double viscosity, double streamX, double streamY, double tx, double ty, double tz,
        ref double cross, ref double along, ref double gx, ref double gy, ref double gz)
    {
        double ux = streamX - vx[i], uy = streamY - vy[i], uz = -vz[i];
        double ut = (ux * tx) + (uy * ty) + (uz * tz);
        double un = Math.Sqrt(Math.Max(0, (ux * ux) + (uy * uy) + (uz * uz) - (ut * ut)));
        double re = Math.Max(un * diameter * density / viscosity, 1e-6);
        double alpha = 0.5 * density * diameter * piece * drag.Normal(re) * (re * viscosity / (diameter * density));
        double beta = Math.Abs(ut) > 1e-12 ? piece * drag.Along(viscosity, density, diameter, re, ut) / ut : 0;
        cross += alpha;
        along += beta;
        double st = (streamX * tx) + (streamY * ty);
        gx += (alpha * (streamX - (st * tx))) + (beta * st * tx);
        gy += (alpha * (streamY - (st * ty))) + (beta * st * ty);
        gz += ((beta - alpha) * st) * tz;
    }

    // Tridiagonal in the tensions; pushing segments are let go and the rest solved again.
    private void SolveTensions(int n)
    {
        Array.Clear(slack);
        for (int pass = 0; pass < 6; pass++)
        {
            Span<double> c = sweepC.AsSpan(0, n), d = sweepD.AsSpan(0, n);
            for (int k = 0; k < n; k++)
            {
                double lo = k > 0 && !slack[k] ? lower[k] : 0, di = slack[k] ? 1 : diagonal[k], up = k + 1 < n && !slack[k] ? upper[k] : 0, r = slack[k] ? 0 : right[k];
                double pivot = k > 0 ? di - (lo * c[k - 1]) : di;
                c[k] = up / pivot;
                d[k] = k > 0 ? (r - (lo * d[k - 1])) / pivot : r / pivot;
            }

            for (int k = n - 1; k >= 0; k--) tension[k] = k + 1 < n ? d[k] - (c[k] * tension[k + 1]) : d[k];
            bool again = false;
            for (int k = 0; k < n; k++)
            {
                if (tension[k] >= 0) continue;
                slack[k] = true;
                again = true;
            }

            if (!again) return;
        }

        for (int k = 0; k < n; k++) tension[k] = Math.Max(0, tension[k]);
    }

    // t_k A_i^-1 t_k
    private double Quadratic(int i, int k) => Bilinear(i, k, k);

    private double Bilinear(int i, int k, int m)
    {
        ReadOnlySpan<double> a = inverse.AsSpan(6 * i, 6);
        double qx = (a[0] * sx[m]) + (a[1] * sy[m]) + (a[2] * sz[m]);
        double qy = (a[1] * sx[m]) + (a[3] * sy[m]) + (a[4] * sz[m]);
        double qz = (a[2] * sx[m]) + (a[4] * sy[m]) + (a[5] * sz[m]);
        return (sx[k] * qx) + (sy[k] * qy) + (sz[k] * qz);
    }
}
