namespace LureSim.Swimming.Bodies;

/// <summary>A symmetric tensor of inertia (kg m2) about the centre of mass, in body axes; off-diagonal members are minus the products of inertia.</summary>
/// <param name="Xx">About x.</param>
/// <param name="Yy">About y.</param>
/// <param name="Zz">About z.</param>
/// <param name="Xy">-integral of x y dm.</param>
/// <param name="Xz">-integral of x z dm.</param>
/// <param name="Yz">-integral of y z dm.</param>
public readonly record struct InertiaTensor(double Xx, double Yy, double Zz, double Xy = 0, double Xz = 0, double Yz = 0)
{
    /// <summary>The tensor mirrored in the plane y = 0.</summary>
    public InertiaTensor Mirrored => this with { Xy = -Xy, Yz = -Yz };

    /// <summary>The six members. A record would print <see cref="Mirrored"/> too, whose mirror prints its own without end.</summary>
    public override string ToString() => FormattableString.Invariant($"({Xx}, {Yy}, {Zz}; {Xy}, {Xz}, {Yz})");
}

/// <summary>A part of a lure, as a solid ellipsoid or an elongated body of given mass, volume, place and size.</summary>
/// <param name="Mass">Mass (kg), 0 or more.</param>
/// <param name="Volume">Displaced volume (m3), 0 or more.</param>
/// <param name="Centre">Centre (m), body axes.</param>
/// <param name="Size">Full length, width and height along x, y, z (m), 0 or more: its own inertia is that of a solid ellipsoid, m (b^2 + c^2)/5 with semi-axes.</param>
public sealed record MassElement(double Mass, double Volume, Vector3d Centre, Vector3d Size);

/// <summary>Mass, volume, centres and inertia of a lure put together from parts.</summary>
/// <param name="Mass">Mass (kg).</param>
/// <param name="Volume">Displaced volume (m3).</param>
/// <param name="CentreOfMass">Centre of mass (m), body axes.</param>
/// <param name="CentreOfBuoyancy">Centre of the displaced volume (m), body axes.</param>
/// <param name="Inertia">Tensor of inertia about the centre of mass (kg m2).</param>
public sealed record MassProperties(double Mass, double Volume, Vector3d CentreOfMass, Vector3d CentreOfBuoyancy, InertiaTensor Inertia)
{
    /// <summary>Adds the parts up (Huygens-Steiner for the inertia).</summary>
    /// <param name="parts">At least one part with mass and volume.</param>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Mass or volume of the whole is not positive, or a part is negative.</exception>
    public static MassProperties Of(IReadOnlyList<MassElement> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        double mass = 0, volume = 0;
        Vector3d massMoment = default, volumeMoment = default;
        foreach (MassElement p in parts)
        {
            Guard.InRange(p.Mass, 0, 100);
            Guard.InRange(p.Volume, 0, 1);
            mass += p.Mass;
            volume += p.Volume;
            massMoment += p.Mass * p.Centre;
            volumeMoment += p.Volume * p.Centre;
        }

        Guard.Positive(mass);
        Guard.Positive(volume);
        Vector3d centre = (1 / mass) * massMoment;
        double xx = 0, yy = 0, zz = 0, xy = 0, xz = 0, yz = 0;
        foreach (MassElement p in parts)
        {
            Vector3d r = p.Centre - centre;
            Vector3d s = 0.5 * p.Size;
            xx += p.Mass * ((r.Y * r.Y) + (r.Z * r.Z) + (((s.Y * s.Y) + (s.Z * s.Z)) / 5));
            yy += p.Mass * ((r.X * r.X) + (r.Z * r.Z) + (((s.X * s.X) + (s.Z * s.Z)) / 5));
            zz += p.Mass * ((r.X * r.X) + (r.Y * r.Y) + (((s.X * s.X) + (s.Y * s.Y)) / 5));
            xy -= p.Mass * r.X * r.Y;
            xz -= p.Mass * r.X * r.Z;
            yz -= p.Mass * r.Y * r.Z;
        }

        return new(mass, volume, centre, (1 / volume) * volumeMoment, new(xx, yy, zz, xy, xz, yz));
    }
}
