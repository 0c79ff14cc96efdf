namespace LureSim.Lures;

/// <summary>The part of a soft body behind its hook, which gives way, laid straight; a tail that swings on it counts in it.</summary>
/// <param name="Joint">Where the hook comes out, from the nose (m).</param>
/// <param name="Mass">Mass (kg).</param>
/// <param name="Volume">Volume (m3).</param>
/// <param name="Centre">Centre of its mass and its volume.</param>
/// <param name="Inertia">Inertia about its centre (kg m2).</param>
/// <param name="StiffnessSideways">Bending to the side seen as a joint where the hook comes out (N m/rad).</param>
/// <param name="StiffnessUpright">Bending up and down (N m/rad).</param>
public sealed record SoftRear(double Joint, double Mass, double Volume, Station Centre, Inertia Inertia, double StiffnessSideways, double StiffnessUpright)
{
    // Lengths over the broad side from which on a body is a beam; a shorter one is stiff, and its water cannot be shared out by strips.
    private const double LeastSlenderness = 4;

    // Shorter rears than this share of the body are held by the hook; assumed.
    private const double ShortestShare = 0.1;

    // A rear that swings faster than this (Hz) by itself moves with the front; above any beat of a lure.
    private const double FastestSwing = 30;

    // Water that swings with the rear over its own mass: a long body of about the density of water.
    private const double CarriedWater = 1;

    private const int Steps = 60;

    /// <summary>The rear of a body, or null where the hook leaves nothing to bend, or what it leaves is stiff.</summary>
    /// <param name="sections">Sections of the body from nose to tail.</param>
    /// <param name="length">Length (m).</param>
    /// <param name="height">Greatest height (m).</param>
    /// <param name="width">Greatest width (m).</param>
    /// <param name="volume">Volume of the body (m3).</param>
    /// <param name="density">Density of the body (kg/m3).</param>
    /// <param name="joint">Where the hook comes out (m).</param>
    /// <param name="solidEnd">Where the body ends or its tail begins to swing (m).</param>
    /// <param name="tailMass">Mass of a tail that swings (kg), 0 for none. A rear lighter than its tail moves with it: the tail's hinge bends instead.</param>
    /// <param name="modulus">Young's modulus of the soft material (Pa).</param>
    public static SoftRear? Of(IReadOnlyList<OutlineSection> sections, double length, double height, double width, double volume, double density, double joint, double solidEnd, double tailMass, double modulus)
    {
        ArgumentNullException.ThrowIfNull(sections);
        if (length < LeastSlenderness * Math.Max(height, width)) return null;
        if (solidEnd - joint < ShortestShare * length || joint < ShortestShare * length) return null;
        double sum = sections.Sum(s => s.Weight), mass = 0, all = 0, aft = 0;
        List<(double Mass, double Middle, double Aside, Inertia Own)> pieces = [];
        foreach (OutlineSection s in sections)
        {
            double from = Math.Max(joint, s.From * length), to = s.To * length;
            if (to <= from) continue;
            double share = s.Weight / sum * (to - from) / ((s.To - s.From) * length), m = density * volume * share, middle = (from + to) / 2;
            Inertia own = Inertia.Cylinder(m, to - from, s.Height * height, s.Width * width);
            if (s.Aside == 0) pieces.Add((m, middle, 0, own));
            else foreach (double side in (double[])[-1, 1]) pieces.Add((m / 2, middle, side * s.Aside * width, Inertia.Cylinder(m / 2, to - from, s.Height * height, s.Width * width)));
            mass += m;
            all += volume * share;
            aft += m * middle;
        }

        if (mass < 2 * tailMass) return null;
        var centre = new Station(aft / mass, 0, 0);
        Inertia inertia = pieces.Aggregate(default(Inertia), (total, piece) => total + piece.Own.Moved(piece.Mass, centre.Aft - piece.Middle, piece.Aside, 0));
        (double sideways, double upright) = Stiffness(sections, length, height, width, joint, solidEnd, modulus);
        double swinging = (1 + CarriedWater) * (inertia.Yaw + (mass * (centre.Aft - joint) * (centre.Aft - joint)));
        return Math.Sqrt(Math.Min(sideways, upright) / swinging) > 2 * Math.PI * FastestSwing ? null : new SoftRear(joint, mass, all, centre, inertia, sideways, upright);
    }

    // A cantilever under a load that goes by its depth across the bending: the joint that does the same work, k = M0^2/(integral of M^2/(E I)) with M the bending moment and M0 that at the
    // root (Castigliano; Euler-Bernoulli beam of elliptic sections, I = pi/64 h w^3).
    private static (double Sideways, double Upright) Stiffness(IReadOnlyList<OutlineSection> sections, double length, double height, double width, double joint, double end, double modulus)
    {
        double step = (end - joint) / Steps;
        double loadSide = 0, loadUp = 0, momentSide = 0, momentUp = 0, workSide = 0, workUp = 0;
        for (int i = Steps - 1; i >= 0; i--)
        {
            double at = (joint + ((i + 0.5) * step)) / length;
            OutlineSection s = sections.FirstOrDefault(x => x.Aside == 0 && at >= x.From && at < x.To) ?? sections.Last(x => x.Aside == 0);
            double h = s.Height * height, w = s.Width * width;

            // Moments in the middle of the slice, then at its fore end.
            momentSide += (loadSide * step / 2) + (h * step * step / 8);
            momentUp += (loadUp * step / 2) + (w * step * step / 8);
            workSide += momentSide * momentSide / (h * w * w * w) * step;
            workUp += momentUp * momentUp / (w * h * h * h) * step;
            loadSide += h * step;
            loadUp += w * step;
            momentSide += ((loadSide - (h * step / 2)) * step / 2) + (h * step * step / 8);
            momentUp += ((loadUp - (w * step / 2)) * step / 2) + (w * step * step / 8);
        }

        double section = modulus * Math.PI / 64;
        return (section * momentSide * momentSide / workSide, section * momentUp * momentUp / workUp);
    }
}
