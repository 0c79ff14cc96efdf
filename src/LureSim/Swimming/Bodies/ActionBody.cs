namespace LureSim.Swimming.Bodies;

/// <summary>
/// A lure as a rigid body with its parts, in body axes: origin at the middle of the body, x towards the nose, y to the left, z up (the way it should swim).
/// All points in m from the origin.
/// </summary>
/// <remarks>
/// The ellipsoid gives the added mass and the Munk moment and has its centre in the origin. Sections give cross-flow drag, friction and roll damping. A
/// <see cref="Plate"/> replaces the sections by the forces of a thin plate (a spoon). Instances are immutable; <see cref="Validate"/> is called by the model.
/// </remarks>
public sealed record ActionBody
{
    /// <summary>Name, for reports.</summary>
    public required string Name { get; init; }

    /// <summary>Mass of all parts, tail and water in hollow parts included (kg), above 0 to 300.</summary>
    public required double Mass { get; init; }

    /// <summary>Displaced volume of all parts (m3), above 0 to 0.1.</summary>
    public required double Volume { get; init; }

    /// <summary>Centre of mass.</summary>
    public required Vector3d CentreOfMass { get; init; }

    /// <summary>Centre of buoyancy.</summary>
    public required Vector3d CentreOfBuoyancy { get; init; }

    /// <summary>Tensor of inertia about the centre of mass (kg m2).</summary>
    public required InertiaTensor Inertia { get; init; }

    /// <summary>Semi-axes of the ellipsoid that stands for the body in the added mass: half length, half width, half height (m), each above 0 to 1.</summary>
    public required Vector3d SemiAxes { get; init; }

    /// <summary>Where the line pulls: the eye of hook, head or bait.</summary>
    public required Vector3d TowPoint { get; init; }

    /// <summary>Added mass along x, y, z (kg) and about them (kg m2) in place of the ellipsoid's, six figures: for sections of endless bodies.</summary>
    internal IReadOnlyList<double>? AddedMassOverride { get; init; }

    /// <summary>Slices of the body from nose to tail, at most 64; see <see cref="BodySection.Spheroid"/> for a plain one. May be empty for a plate.</summary>
    public IReadOnlyList<BodySection> Sections { get; init; } = [];

    /// <summary>Edges at which the flow leaves the body: the rear of a blunt body, fins, a stiff tail. At most 8.</summary>
    public IReadOnlyList<TrailingEdge> TrailingEdges { get; init; } = [];

    /// <summary>Hooks, rings and other small parts that only drag. At most 16.</summary>
    public IReadOnlyList<AppendageDrag> Appendages { get; init; } = [];

    /// <summary>Diving lip, or null.</summary>
    public DivingLip? Lip { get; init; }

    /// <summary>Hinged tail with a paddle that sheds vortices, or null.</summary>
    public FlexibleTail? Tail { get; init; }

    /// <summary>The body is a thin plate (spoon), or null.</summary>
    public PlateForm? Plate { get; init; }

    /// <summary>Bend of the body by bad rigging, or null for a straight one.</summary>
    public BodyBend? Bend { get; init; }

    /// <summary>The part behind the hook that gives way, or null for a stiff body. With it, masses, centres and inertia of the whole are those of the body laid straight.</summary>
    public FlexibleRear? Rear { get; init; }

    /// <summary>A head that does not sit in line, or null.</summary>
    public HeadSet? Head { get; init; }

    /// <summary>A plain spheroid of parts, without fins, hooks and tail.</summary>
    /// <param name="name">Name, for reports.</param>
    /// <param name="parts">What it is made of.</param>
    /// <param name="semiAxes">Half length, half width, half height (m).</param>
    /// <param name="towPoint">Where the line pulls.</param>
    /// <exception cref="ArgumentNullException">The list is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Mass or volume of the whole is not positive, or a part is negative.</exception>
    public static ActionBody Spheroid(string name, IReadOnlyList<MassElement> parts, Vector3d semiAxes, Vector3d towPoint)
    {
        MassProperties total = MassProperties.Of(parts);
        return new()
        {
            Name = name,
            Mass = total.Mass,
            Volume = total.Volume,
            CentreOfMass = total.CentreOfMass,
            CentreOfBuoyancy = total.CentreOfBuoyancy,
            Inertia = total.Inertia,
            SemiAxes = semiAxes,
            TowPoint = towPoint,
            Sections = BodySection.Spheroid(semiAxes),
            TrailingEdges = [TrailingEdge.OfSpheroid(semiAxes)],
        };
    }

    /// <summary>Length over all, of the ellipsoid (m).</summary>
    public double Length => 2 * SemiAxes.X;

    /// <summary>Throws unless every member lies in its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A member is out of range or not a number; the message names it.</exception>
    /// <exception cref="ArgumentNullException">A list is null.</exception>
    public void Validate()
    {
        Guard.InRange(Mass, 1e-5, 300, unit: "kg");
        Guard.InRange(Volume, 1e-8, 0.1, unit: "m3");
        Within(CentreOfMass, nameof(CentreOfMass));
        Within(CentreOfBuoyancy, nameof(CentreOfBuoyancy));
        Within(TowPoint, nameof(TowPoint));
        Guard.InRange(SemiAxes.X, 1e-4, 1, unit: "m");
        Guard.InRange(SemiAxes.Y, 1e-4, 1, unit: "m");
        Guard.InRange(SemiAxes.Z, 1e-4, 1, unit: "m");
        ValidateInertia();
        ArgumentNullException.ThrowIfNull(Sections);
        ArgumentNullException.ThrowIfNull(TrailingEdges);
        ArgumentNullException.ThrowIfNull(Appendages);
        Guard.InRange(Sections.Count, 0, 64);
        Guard.InRange(TrailingEdges.Count, 0, 8);
        Guard.InRange(Appendages.Count, 0, 16);
        foreach (BodySection s in Sections) s.Validate();
        foreach (TrailingEdge e in TrailingEdges) e.Validate();
        foreach (AppendageDrag a in Appendages) a.Validate();
        Lip?.Validate();
        Tail?.Validate();
        Plate?.Validate();
        Bend?.Validate();
        Rear?.Validate();
        Head?.Validate();
    }

    /// <summary>The lure mirrored in its plane y = 0: a left fault becomes a right one.</summary>
    public ActionBody Mirror() => this with
    {
        CentreOfMass = CentreOfMass.Mirrored,
        CentreOfBuoyancy = CentreOfBuoyancy.Mirrored,
        Inertia = Inertia.Mirrored,
        TowPoint = TowPoint.Mirrored,
        TrailingEdges = [.. TrailingEdges.Select(e => e with { Position = e.Position.Mirrored })],
        Appendages = [.. Appendages.Select(a => a with { Position = a.Position.Mirrored })],
        Lip = Lip is null ? null : Lip with { Position = Lip.Position.Mirrored, Yaw = -Lip.Yaw },
        Tail = Tail is null ? null : Tail with { Offset = -Tail.Offset },
        Bend = Bend is null ? null : Bend with { Roll = Math.PI - Bend.Roll },
        Rear = Rear is null ? null : Rear with { CentreOfMass = Rear.CentreOfMass.Mirrored, CentreOfBuoyancy = Rear.CentreOfBuoyancy.Mirrored, Inertia = Rear.Inertia.Mirrored },
        Head = Head is null ? null : Head with { Position = Head.Position.Mirrored, Yaw = -Head.Yaw },
    };

    internal static void Within(Vector3d point, string name)
    {
        Guard.InRange(point.X, -1, 1, name, "m");
        Guard.InRange(point.Y, -1, 1, name, "m");
        Guard.InRange(point.Z, -1, 1, name, "m");
    }

    // A tensor that no mass can have would let the integrator make energy: positive, and no moment above the sum of the other two.
    private void ValidateInertia()
    {
        InertiaTensor i = Inertia;
        Guard.InRange(i.Xx, 1e-12, 100, "Inertia.Xx", "kg m2");
        Guard.InRange(i.Yy, 1e-12, 100, "Inertia.Yy", "kg m2");
        Guard.InRange(i.Zz, 1e-12, 100, "Inertia.Zz", "kg m2");
        Guard.InRange(i.Xy, -100, 100, "Inertia.Xy", "kg m2");
        Guard.InRange(i.Xz, -100, 100, "Inertia.Xz", "kg m2");
        Guard.InRange(i.Yz, -100, 100, "Inertia.Yz", "kg m2");
        double minor = (i.Xx * i.Yy) - (i.Xy * i.Xy);
        double determinant = (i.Zz * minor) + (2 * i.Xy * i.Xz * i.Yz) - (i.Xx * i.Yz * i.Yz) - (i.Yy * i.Xz * i.Xz);
        bool triangle = i.Xx <= 1.000001 * (i.Yy + i.Zz) && i.Yy <= 1.000001 * (i.Xx + i.Zz) && i.Zz <= 1.000001 * (i.Xx + i.Yy);
        if (!(minor > 0 && determinant > 0 && triangle))
            throw new ArgumentOutOfRangeException(nameof(Inertia), i, "Inertia must be positive definite and its moments must fulfil the triangle inequality.");
    }
}
