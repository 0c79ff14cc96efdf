namespace LureSim.Tackle;

/// <summary>A place on a lure.</summary>
/// <param name="Aft">From the nose towards the tail (m), along the axis of the straight lure.</param>
/// <param name="Left">To the left (m).</param>
/// <param name="Up">Up (m).</param>
public readonly record struct Station(double Aft, double Left, double Up);

/// <summary>One part of a lure.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Mass">Mass (kg), 0 or more.</param>
/// <param name="Volume">Volume of water it pushes aside (m3); 0 for what lies inside another part.</param>
/// <param name="Centre">Its centre of mass and volume.</param>
/// <param name="Own">Inertia about its own centre (kg m2).</param>
public sealed record LurePart(string Name, double Mass, double Volume, Station Centre, Inertia Own);

/// <summary>A free tail that swings on a hinge.</summary>
/// <param name="Hinge">Place of the hinge from the nose (m).</param>
/// <param name="Length">From the hinge to the tip (m).</param>
/// <param name="Height">Height of the paddle (m), the length of its edge across the swing.</param>
/// <param name="Area">Area of the paddle across the flow (m2).</param>
/// <param name="Mass">Mass aft of the hinge (kg).</param>
/// <param name="Inertia">Moment of inertia about the hinge (kg m2).</param>
/// <param name="Stiffness">Bending stiffness of the stem as a hinge (N m/rad).</param>
/// <param name="FreeShare">Length of the free tail as a share of what a short hook would leave, 0 to 1.</param>
public sealed record FreeTail(double Hinge, double Length, double Height, double Area, double Mass, double Inertia, double Stiffness, double FreeShare);

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

    /// <summary>Mass (kg).</summary>
    public double Mass => Parts.Sum(part => part.Mass);

    /// <summary>Volume (m3).</summary>
    public double Volume => Parts.Sum(part => part.Volume);

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
