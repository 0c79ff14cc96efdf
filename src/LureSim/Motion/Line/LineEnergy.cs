using LureSim.Tackle;

namespace LureSim.Motion.Line;

/// <summary>Energy that lure and line hold.</summary>
/// <param name="Kinetic">Kinetic energy of the free nodes at the velocities of the mesh, added mass included (J).</param>
/// <param name="Elastic">Elastic energy of line and rod tip (J), none at the unstretched length.</param>
internal readonly record struct StoredEnergy(double Kinetic, double Elastic)
{
    /// <summary>Both (J).</summary>
    public double Total => Kinetic + Elastic;
}

/// <summary>Powers that change the stored energy (W): together they are its rate.</summary>
internal struct EnergyRates
{
    /// <summary>Weight and buoyancy.</summary>
    public double Gravity;

    /// <summary>Drag, lift, bottom, grass and the line's axial damping: negative when they brake, positive when the current pushes.</summary>
    public double Drag;

    /// <summary>Rod tip and reel, less the elastic energy that goes onto the reel with the line.</summary>
    public double Rod;

    /// <summary>
    /// Added mass that comes and goes with immersion and turns with the line, 1/2 v (dM/dt) v: the equations M a = F give a node the acceleration of its mass at the moment, so what
    /// a change of that mass brings or takes is no work of any force.
    /// </summary>
    public double AddedMass;

    /// <summary>Mass that slides through the nodes and leaves at the rod tip when line is reeled in (and comes when it is let out), with its inertia.</summary>
    public double Sliding;

    /// <summary>Rate of the stored energy.</summary>
    public readonly double Total => Gravity + Drag + Rod + AddedMass + Sliding;

    /// <summary>Energy that goes from one to the other of weight, drag and rod, twice counted.</summary>
    public readonly double Exchange => Math.Abs(Gravity) + Math.Abs(Drag) + Math.Abs(Rod);
}

/// <content>The energy balance, apart from the forces: it needs those only as their sum on each node.</content>
internal sealed partial class LineDynamics
{
    /// <summary>Energy of a state, the tensions by their law.</summary>
    /// <param name="position">Node positions, 3 (N + 1), the rod tip last (m).</param>
    /// <param name="velocity">Node velocities, 3 (N + 1) (m/s).</param>
    /// <param name="lineOut">Unstretched line out L (m).</param>
    public StoredEnergy EvaluateStoredEnergy(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, double lineOut)
    {
        double wet = LureImmersion(position[2], out _);
        double kinetic = 0.5 * (lure.Mass + (lure.AddedMassCoefficient * water.Density * lure.Volume * wet)) * Dot(velocity, 0, velocity, 0);
        double elasticEnergy = 0;
        for (int k = 0; k < segments; k++)
        {
            int a = 3 * k, b = a + 3;
            SegmentOf(k, position, velocity, lineOut, 0, out SegmentBalance s);
            elasticEnergy += s.Length0 * s.ElasticDensity(out _, out _);
            kinetic += KineticEnergy(velocity, a, in s, 0.5 * s.Mass, s.ShareA * s.AddedMass);
            if (k + 1 < segments) kinetic += KineticEnergy(velocity, b, in s, 0.5 * s.Mass, s.ShareB * s.AddedMass);
        }

        return new StoredEnergy(kinetic, elasticEnergy);
    }

    /// <summary>
    /// Powers at a state. That of drag, lift, bottom and grass is what is left of the power of the forces without weight, tension and sliding line, so that none of them is computed
    /// again; the tensions of that are <see cref="Tension"/>. With M(r, L) a = F the stored energy 1/2 w M w + sum l0 Phi changes by w F + 1/2 w (dM/dt) w +
    /// d(sum l0 Phi)/dt; the tensions are those of the law.
    /// </summary>
    /// <param name="position">Node positions (m).</param>
    /// <param name="velocity">Node velocities (m/s).</param>
    /// <param name="lineOut">Unstretched line out L (m).</param>
    /// <param name="payoutRate">L' (m/s).</param>
    /// <param name="payoutAcceleration">L'' (m/s2).</param>
    /// <param name="force">The forces on the free nodes (N); none for all powers but that of drag.</param>
    public EnergyRates EvaluatePowers(
        ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, double lineOut, double payoutRate, double payoutAcceleration, ReadOnlySpan<double> force)
    {
        EnergyRates rates = default;
        double wet = LureImmersion(position[2], out double wetSlope);
        rates.Gravity = LureWeight(wet) * velocity[2];
        if (!force.IsEmpty) rates.Drag -= rates.Gravity;
        rates.AddedMass = 0.5 * lure.AddedMassCoefficient * water.Density * lure.Volume * wetSlope * velocity[2] * Dot(velocity, 0, velocity, 0);
        for (int k = 0; k < segments; k++)
        {
            SegmentOf(k, position, velocity, lineOut, payoutRate, out SegmentBalance s);
            double tension = s.ElasticTension(out double taut);
            double damping = 2 * mesh.AxialDampingRatio * Math.Sqrt(0.5 * s.Stiffness * s.Mass / s.Length0) * taut;
            double shrink = s.Length * payoutRate / lineOut, burnt = damping * s.StretchRate * s.StretchRate;
            double stored = tension * (s.LengthRate - shrink);

            // The energy density, with its logarithm, counts only where line comes in or goes out.
            if (payoutRate != 0)
            {
                double density = s.ElasticDensity(out double byStiffness, out double byStraightening);
                stored += (s.Length0Rate * density) + (s.Length0 * ((s.StiffnessRate * byStiffness) + (s.StraighteningRate * byStraightening)));
            }

            // What rod tip and reel give is what the segment stores, burns and hands on to the nodes.
            rates.Rod += stored + burnt - ((tension + (damping * s.StretchRate)) * s.Parting);
            rates.Drag -= burnt;
            rates.Gravity += s.Weight;
            double sliding = SlidingPower(k, in s, payoutRate, payoutAcceleration);
            rates.Sliding += sliding;
            if (!force.IsEmpty) rates.Drag += Dot(velocity, 3 * k, force, 3 * k) + (Tension[k] * s.Parting) - s.Weight - sliding;
            AddMassPowers(velocity, 3 * k, in s, s.ShareA, s.ShareARate, ref rates);
            if (k + 1 < segments) AddMassPowers(velocity, (3 * k) + 3, in s, s.ShareB, s.ShareBRate, ref rates);
        }

        return rates;
    }

    // Power on the free ends of the reduction of the tension by m L'^2 xi^2 and of the body forces m (L'' xi R_s + 2 L' xi w_s), half to each.
    private double SlidingPower(int k, in SegmentBalance s, double payoutRate, double payoutAcceleration)
    {
        double xi = 0.5 * (Fractions[k] + Fractions[k + 1]), massPerLength = s.Mass / s.Length0;
        double byD = 0.5 * massPerLength * payoutAcceleration * xi, byW = massPerLength * payoutRate * xi;
        return (massPerLength * payoutRate * payoutRate * xi * xi * s.Parting)
            + (((byD * s.Dx) + (byW * s.Wx)) * s.SumX) + (((byD * s.Dy) + (byW * s.Wy)) * s.SumY) + (((byD * s.Dz) + (byW * s.Wz)) * s.SumZ);
    }

    // Buoyancy less weight of the lure (N).
    private double LureWeight(double wet) => ((water.Density * lure.Volume * wet) - lure.Mass) * Gravity;

    private static double Dot(ReadOnlySpan<double> x, int i, ReadOnlySpan<double> y, int j) => (x[i] * y[j]) + (x[i + 1] * y[j + 1]) + (x[i + 2] * y[j + 2]);

    private static double KineticEnergy(ReadOnlySpan<double> velocity, int node, in SegmentBalance s, double mass, double added)
    {
        double along = (s.Tx * velocity[node]) + (s.Ty * velocity[node + 1]) + (s.Tz * velocity[node + 2]);
        return 0.5 * (((mass + added) * Dot(velocity, node, velocity, node)) - (added * along * along));
    }

    // 1/2 v (dM/dt) v of one end: by the share of the added mass and the turning of the segment, and by the line that slides.
    private static void AddMassPowers(ReadOnlySpan<double> velocity, int node, in SegmentBalance s, double share, double shareRate, ref EnergyRates rates)
    {
        double along = (s.Tx * velocity[node]) + (s.Ty * velocity[node + 1]) + (s.Tz * velocity[node + 2]);
        double square = Dot(velocity, node, velocity, node), across = square - (along * along);
        double byW = (s.Wx * velocity[node]) + (s.Wy * velocity[node + 1]) + (s.Wz * velocity[node + 2]);
        double turning = (byW - (s.LengthRate * along)) / s.Length;
        rates.AddedMass += s.AddedMass * ((0.5 * shareRate * across) - (share * along * turning));
        rates.Sliding += (0.25 * s.MassRate * square) + (0.5 * s.AddedMassRate * share * across);
    }

    private double LureImmersion(double z, out double slope)
    {
        double half = Math.Max(lure.ContactRadius, SurfaceHalfThickness);
        double wet = SmoothStep((half - z) / (2 * half), out slope);
        slope /= -2 * half;
        return wet;
    }

    private void SegmentOf(int k, ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, double lineOut, double payoutRate, out SegmentBalance s)
    {
        int a = 3 * k, b = a + 3;
        s = default;
        double part = Fractions[k + 1] - Fractions[k];
        double length0 = s.Length0 = lineOut * part;
        s.Length0Rate = payoutRate * part;

        LineMaterial main = line.Main, lead = line.Leader;
        double leader = 0, leaderRate = 0;
        if (line.LeaderLength > 0)
        {
            leader = Math.Clamp((line.LeaderLength - (lineOut * Fractions[k])) / length0, 0, 1);
            if (leader is > 0 and < 1) leaderRate = -line.LeaderLength * payoutRate / (lineOut * length0);
        }

        double massPerLength = main.MassPerLength + (leader * (lead.MassPerLength - main.MassPerLength)), area = main.Area + (leader * (lead.Area - main.Area));
        double moreFlexible = (1 / lead.AxialStiffness) - (1 / main.AxialStiffness);
        double stiffness = 1 / ((1 / main.AxialStiffness) + (leader * moreFlexible));
        double flexibilityRate = leaderRate * moreFlexible;
        s.Straightening = StraighteningTension(stiffness);
        if (s.Straightening < StraighteningLimit) s.StraighteningRate = -StraighteningStrain * stiffness * stiffness * flexibilityRate;
        if (k + 1 == segments)
        {
            stiffness = length0 / ((length0 / stiffness) + (1 / mesh.RodStiffness));
            flexibilityRate -= s.Length0Rate / (mesh.RodStiffness * length0 * length0);
        }

        s.Stiffness = stiffness;
        s.StiffnessRate = -stiffness * stiffness * flexibilityRate;
        s.Mass = massPerLength * length0;
        s.MassRate = (massPerLength * s.Length0Rate) + (leaderRate * (lead.MassPerLength - main.MassPerLength) * length0);
        s.AddedMass = water.Density * area * length0;
        s.AddedMassRate = water.Density * ((area * s.Length0Rate) + (leaderRate * (lead.Area - main.Area) * length0));

        double dx = s.Dx = position[b] - position[a], dy = s.Dy = position[b + 1] - position[a + 1], dz = s.Dz = position[b + 2] - position[a + 2];
        s.Wx = velocity[b] - velocity[a];
        s.Wy = velocity[b + 1] - velocity[a + 1];
        s.Wz = velocity[b + 2] - velocity[a + 2];
        double floor = DirectionFloor * length0;
        double length = s.Length = Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz) + (floor * floor));
        s.Tx = dx / length;
        s.Ty = dy / length;
        s.Tz = dz / length;
        double along = (s.Tx * s.Wx) + (s.Ty * s.Wy) + (s.Tz * s.Wz);
        s.LengthRate = along + (floor * floor * payoutRate / (lineOut * length));
        s.StretchRate = along - (length * payoutRate / lineOut);

        // Immersion and where along the segment it acts, with their rates.
        double middle = 0.5 * (position[a + 2] + position[b + 2]), middleRate = 0.5 * (velocity[a + 2] + velocity[b + 2]);
        double halfHeight = Math.Max(0.5 * Math.Abs(dz), SurfaceHalfThickness);
        bool steep = halfHeight > SurfaceHalfThickness;
        double wet = 1, wetRate = 0;
        if (middle > -halfHeight)
        {
            wet = SmoothStep((halfHeight - middle) / (2 * halfHeight), out double slope);
            double halfHeightRate = steep ? 0.5 * Math.Sign(dz) * s.Wz : 0;
            wetRate = slope * ((middle * halfHeightRate / halfHeight) - middleRate) / (2 * halfHeight);
        }

        double lean = Math.Clamp(0.5 * dz / halfHeight, -1, 1), leanRate = steep ? 0 : 0.5 * s.Wz / halfHeight;
        double share = 0.5 - (0.5 * lean * (1 - wet)), shareRate = (0.5 * lean * wetRate) - (0.5 * leanRate * (1 - wet));
        s.ShareA = (1 - share) * wet;
        s.ShareB = share * wet;
        s.ShareARate = ((1 - share) * wetRate) - (shareRate * wet);
        s.ShareBRate = (share * wetRate) + (shareRate * wet);

        // The rod tip is no free end.
        double vbx = 0, vby = 0, vbz = 0;
        if (k + 1 < segments) (vbx, vby, vbz) = (velocity[b], velocity[b + 1], velocity[b + 2]);
        double vax = velocity[a], vay = velocity[a + 1], vaz = velocity[a + 2];
        s.SumX = vax + vbx;
        s.SumY = vay + vby;
        s.SumZ = vaz + vbz;
        s.Parting = (s.Tx * (vbx - vax)) + (s.Ty * (vby - vay)) + (s.Tz * (vbz - vaz));
        s.Weight = Gravity * ((s.AddedMass * ((s.ShareA * vaz) + (s.ShareB * vbz))) - (0.5 * s.Mass * s.SumZ));
    }

    // What the balance needs to know of a segment, and how fast it changes. AddedMass is that of the whole segment in water, which is also what it displaces; ShareA and ShareB of it
    // act at the ends.
    private struct SegmentBalance
    {
        public double Length0, Length0Rate, Stiffness, StiffnessRate, Straightening, StraighteningRate, Mass, MassRate, AddedMass, AddedMassRate;
        public double Dx, Dy, Dz, Wx, Wy, Wz, Tx, Ty, Tz, Length, LengthRate, StretchRate;
        public double ShareA, ShareB, ShareARate, ShareBRate;

        // Of the free ends: the sum of their velocities, how fast they part along the segment, and the power of weight and buoyancy on them.
        public double SumX, SumY, SumZ, Parting, Weight;

        // Tension by the law of the evaluation, 1/2 EA (e + s), and how taut the segment is.
        public readonly double ElasticTension(out double taut)
        {
            double tension = TensionByLaw((Length / Length0) - 1, Stiffness, Straightening, out double root);
            taut = tension / (Stiffness * root);
            return tension;
        }

        // Elastic energy per unstretched length, the integral of T = 1/2 EA (e + s), s = sqrt(e^2 + e0^2), from e = 0: 1/4 EA (e^2 + e s + e0^2 asinh(e/e0)). With e0 = 2 T0/EA its
        // derivative by EA at a given e is 1/4 (e^2 + e s - e0^2 asinh(e/e0)), that by T0 e0 asinh(e/e0).
        public readonly double ElasticDensity(out double byStiffness, out double byStraightening)
        {
            double strain = (Length / Length0) - 1, slackStrain = 2 * Straightening / Stiffness;
            double root = Math.Sqrt((strain * strain) + (slackStrain * slackStrain));
            double power = strain >= 0 ? strain * (strain + root) : strain * slackStrain * slackStrain / (root - strain);
            double logarithm = slackStrain * slackStrain * Math.Asinh(strain / slackStrain);
            byStiffness = 0.25 * (power - logarithm);
            byStraightening = logarithm / slackStrain;
            return 0.25 * Stiffness * (power + logarithm);
        }
    }
}
