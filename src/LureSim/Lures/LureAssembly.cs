using LureSim.Model;

namespace LureSim.Lures;

/// <summary>A place on a lure.</summary>
/// <param name="Aft">From the nose towards the tail (m), along the axis of the straight lure.</param>
/// <param name="Left">To the left (m).</param>
/// <param name="Up">Up (m).</param>
public readonly record struct Station(double Aft, double Left, double Up);

/// <summary>One part of a lure.</summary>
/// <param name="Role">What it does.</param>
/// <param name="Mass">Mass (kg), 0 or more.</param>
/// <param name="Volume">Volume of water it pushes aside (m3); 0 for what lies inside another part.</param>
/// <param name="Centre">Its centre of mass and volume.</param>
/// <param name="Own">Inertia about its own centre (kg m2).</param>
public sealed record LurePart(PartRole Role, double Mass, double Volume, Station Centre, Inertia Own)
{
    /// <summary>Where it hangs free on a ring; null for a part that is held.</summary>
    public Station? Eye { get; init; }

    /// <summary>Wire of a hook's bend that stands in the flow beyond that of a common hook for the body (m), 0 or more.</summary>
    public double Bare { get; init; }
}

/// <summary>A free tail that swings on a hinge.</summary>
/// <param name="Hinge">Place of the hinge from the nose (m).</param>
/// <param name="Length">From the hinge to the tip (m).</param>
/// <param name="Arm">From the hinge to the middle of the paddle (m).</param>
/// <param name="Height">Height of the paddle (m), the length of its edge across the swing.</param>
/// <param name="Width">Width of the paddle across the flow (m).</param>
/// <param name="Drop">How far the middle of the paddle hangs under the axis (m).</param>
/// <param name="Mass">Mass aft of the hinge (kg).</param>
/// <param name="Stiffness">Bending stiffness of the stem as a hinge (N m/rad).</param>
/// <param name="FreeShare">Length of the free tail as a share of what a short hook would leave, 0 to 1.</param>
public sealed record FreeTail(double Hinge, double Length, double Arm, double Height, double Width, double Drop, double Mass, double Stiffness, double FreeShare);

/// <summary>A lure put together from its parts.</summary>
/// <remarks>Places are measured from the nose aft, inertia in axes forward, left, up about the centre of mass. Immutable.</remarks>
public sealed record LureAssembly
{
    /// <summary>The parts.</summary>
    public required IReadOnlyList<LurePart> Parts { get; init; }

    /// <summary>Overall length (m).</summary>
    public required double Length { get; init; }

    /// <summary>Greatest height (m).</summary>
    public required double Height { get; init; }

    /// <summary>Greatest width (m).</summary>
    public required double Width { get; init; }

    /// <summary>Where the line pulls.</summary>
    public required Station TowPoint { get; init; }

    /// <summary>Length of body on the hook, from the eye to where the hook comes out (m); 0 for lures without.</summary>
    public double Engagement { get; init; }

    /// <summary>Sideways bend between nose and tail (radians), tail to the left positive.</summary>
    public double BendSideways { get; init; }

    /// <summary>Bend between nose and tail in the upright plane (radians), tail up positive.</summary>
    public double BendUp { get; init; }

    /// <summary>The tail that swings, or null.</summary>
    public FreeTail? Tail { get; init; }

    /// <summary>The part behind the hook that gives way, or null for a stiff lure.</summary>
    public SoftRear? Rear { get; init; }

    /// <summary>Puts a lure together.</summary>
    /// <param name="head">Jig head or hook; <see cref="JigHead.None"/> for a body that needs none.</param>
    /// <param name="body">Body.</param>
    /// <param name="rigging">How it is put on its hook.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is out of range.</exception>
    public static LureAssembly Of(JigHead head, LureBody body, Rigging rigging)
    {
        ArgumentNullException.ThrowIfNull(body);
        return LureKinds.Of(body.Profile).Assemble(head, body, rigging);
    }

    /// <summary>
    /// The lure as the water and its own turns feel it: a hook on a ring swings by itself, so that its weight and drag act where the ring holds it and its inertia does not follow a roll.
    /// </summary>
    public LureAssembly Swung => Parts.All(part => part.Eye is null) ? this : this with { Parts = [.. Parts.Select(part => part.Eye is { } eye ? part with { Centre = eye } : part)] };

    /// <summary>Mass (kg).</summary>
    public double Mass => Parts.Sum(part => part.Mass);

    /// <summary>Volume (m3).</summary>
    public double Volume => Parts.Sum(part => part.Volume);

    /// <summary>Volume of the sections of the body (m3), without head, hooks and lip.</summary>
    public double SectionVolume => Parts.Where(part => part.Role is PartRole.Body or PartRole.Stem or PartRole.Paddle or PartRole.Claw).Sum(part => part.Volume);

    /// <summary>Centre of mass.</summary>
    public Station MassCentre => Centre(Parts, part => part.Mass);

    /// <summary>Centre of buoyancy.</summary>
    public Station BuoyancyCentre => Centre(Parts, part => part.Volume);

    /// <summary>Inertia about the centre of mass (kg m2), axes forward, left, up.</summary>
    public Inertia InertiaAboutMassCentre
    {
        get
        {
            Station centre = MassCentre;
            return Parts.Aggregate(default(Inertia), (sum, part) => sum + part.Own.Moved(part.Mass, centre.Aft - part.Centre.Aft, part.Centre.Left - centre.Left, part.Centre.Up - centre.Up));
        }
    }

    private static Station Centre(IReadOnlyList<LurePart> parts, Func<LurePart, double> weight)
    {
        double total = 0, aft = 0, left = 0, up = 0;
        foreach (LurePart part in parts)
        {
            double w = weight(part);
            total += w;
            aft += w * part.Centre.Aft;
            left += w * part.Centre.Left;
            up += w * part.Centre.Up;
        }

        return total > 0 ? new Station(aft / total, left / total, up / total) : default;
    }
}
