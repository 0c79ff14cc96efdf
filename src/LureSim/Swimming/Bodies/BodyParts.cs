using LureSim.Hydrodynamics;

namespace LureSim.Swimming.Bodies;

/// <summary>A slice of the body across its length.</summary>
/// <param name="Position">Middle of the slice along x (m).</param>
/// <param name="Length">Length of the slice along x (m), above 0 to 1.</param>
/// <param name="Height">Height (z) of the section (m), 0 to 0.5: what sideways flow meets.</param>
/// <param name="Width">Width (y) of the section (m), 0 to 0.5: what vertical flow meets.</param>
public sealed record BodySection(double Position, double Length, double Height, double Width)
{
    /// <summary>Slices of an ellipsoid.</summary>
    /// <param name="semiAxes">Half length, half width, half height (m).</param>
    /// <param name="count">Number of slices, 4 to 64.</param>
    public static IReadOnlyList<BodySection> Spheroid(Vector3d semiAxes, int count = 12)
    {
        Guard.InRange(count, 4, 64);
        var sections = new BodySection[count];
        double step = 2 * semiAxes.X / count;
        for (int i = 0; i < count; i++)
        {
            double x = semiAxes.X - ((i + 0.5) * step);
            double share = Math.Sqrt(1 - (x * x / (semiAxes.X * semiAxes.X)));
            sections[i] = new(x, step, 2 * semiAxes.Z * share, 2 * semiAxes.Y * share);
        }

        return sections;
    }

    internal void Validate()
    {
        Guard.InRange(Position, -1, 1, unit: "m");
        Guard.InRange(Length, 1e-5, 1, unit: "m");
        Guard.InRange(Height, 0, 0.5, unit: "m");
        Guard.InRange(Width, 0, 0.5, unit: "m");
    }
}

/// <summary>
/// An edge at which the flow leaves the body, with the span of the section there: it feels rho (pi/4) s^2 u w across its span s at forward speed u and cross speed w
/// (slender-body theory: Jones 1946; Lighthill 1960).
/// </summary>
/// <param name="Position">Middle of the edge (m).</param>
/// <param name="Height">Span that meets sideways flow (m), 0 to 0.5.</param>
/// <param name="Width">Span that meets vertical flow (m), 0 to 0.5.</param>
public sealed record TrailingEdge(Vector3d Position, double Height, double Width)
{
    private const double LeastSlenderness = 3;

    /// <summary>
    /// Share of the water that the body carries across itself which lies behind the edge, 0 to 1: there the flow has left the body, and ideal flow no longer turns it
    /// (Hopkins 1951; Allen &amp; Perkins 1951: the ideal moment is that of the body up to the place of separation).
    /// </summary>
    public double Behind { get; init; }

    /// <summary>
    /// The rear of a round body, from which the flow separates before the end, at Reynolds numbers of 1e6 on the length: for a spheroid the section at 90.5 % of the length
    /// (Hopkins 1951, NACA RM A51C14: x0/L = 0.378 + 0.527 x1/L with x1 where the section shrinks fastest, here the end).
    /// </summary>
    /// <param name="semiAxes">Half length, half width, half height (m).</param>
    public static TrailingEdge OfSpheroid(Vector3d semiAxes)
    {
        const double Station = 0.905;
        return Rear(semiAxes, Station, 4 * Station * (1 - Station));
    }

    /// <summary>
    /// The same at the Reynolds numbers of a lure, 1e4 to 1e5 on the length, where the layer is laminar and leaves sooner: the place of its nose-first drag
    /// (<see cref="LaminarSeparation"/>), 85 % of the length for a spheroid of six diameters.
    /// </summary>
    /// <param name="semiAxes">Half length, half width, half height (m).</param>
    public static TrailingEdge OfLaminarSpheroid(Vector3d semiAxes)
    {
        var parting = LaminarSeparation.OfSpheroid(Math.Clamp(semiAxes.X / Math.Sqrt(semiAxes.Y * semiAxes.Z), 1, 50));
        double rest = IsSlender(semiAxes) ? 1 - parting.Station : 0;

        // Sections of an ellipsoid go by 1 - (x/a)^2: 3 t^2 - 2 t^3 of its volume lie behind a place t of the length before its end.
        return Rear(semiAxes, parting.Station, parting.AreaShare) with { Behind = rest * rest * (3 - (2 * rest)) };
    }

    /// <summary>True for a body that the flow passes slice by slice: three broad sides of its section long or more. A shorter one is a wing, whose ideal moment is left as it is.</summary>
    /// <param name="semiAxes">Half length, half width, half height (m).</param>
    internal static bool IsSlender(Vector3d semiAxes) => semiAxes.X >= LeastSlenderness * Math.Max(semiAxes.Y, semiAxes.Z);

    private static TrailingEdge Rear(Vector3d semiAxes, double station, double areaShare)
    {
        double share = Math.Sqrt(areaShare);
        return new(new((1 - (2 * station)) * semiAxes.X, 0, 0), 2 * semiAxes.Z * share, 2 * semiAxes.Y * share);
    }

    internal void Validate()
    {
        ActionBody.Within(Position, nameof(Position));
        Guard.InRange(Height, 0, 0.5, unit: "m");
        Guard.InRange(Width, 0, 0.5, unit: "m");
        Guard.InRange(Behind, 0, 1);
    }
}

/// <summary>A small part that drags alike from all sides: hook, ring, weight.</summary>
/// <param name="Position">Centre of its drag (m).</param>
/// <param name="DragArea">Cd A (m2), 0 to 0.1.</param>
public sealed record AppendageDrag(Vector3d Position, double DragArea)
{
    internal void Validate()
    {
        ActionBody.Within(Position, nameof(Position));
        Guard.InRange(DragArea, 0, 0.1, unit: "m2");
    }
}

/// <summary>A diving lip: a flat plate of low aspect ratio, seen as a wing.</summary>
/// <param name="Position">Middle of the plate (m).</param>
/// <param name="Area">Area of one face (m2), above 0 to 0.05.</param>
/// <param name="AspectRatio">Width^2 over area, 0.1 to 6 (flume figures: 0.3 to 2).</param>
/// <param name="Angle">Angle between the plate and the body's axis (radians), 0 along it (a deep diver), pi/2 across; its front edge points down.</param>
/// <param name="Yaw">Angle by which the lip is set askew to the left (radians), -pi/4 to pi/4: a bent or badly glued lip.</param>
public sealed record DivingLip(Vector3d Position, double Area, double AspectRatio, double Angle, double Yaw = 0)
{
    /// <summary>Width across the flow (m).</summary>
    public double Width => Math.Sqrt(AspectRatio * Area);

    /// <summary>Its directions in body axes: along to the front edge, across to the left, and square to its face, to the front and up.</summary>
    internal (Vector3d Along, Vector3d Across, Vector3d Normal) Axes
    {
        get
        {
            (double sa, double ca) = Math.SinCos(Angle);
            (double sy, double cy) = Math.SinCos(Yaw);
            return (new(ca * cy, ca * sy, -sa), new(-sy, cy, 0), new(sa * cy, sa * sy, ca));
        }
    }

    internal void Validate()
    {
        ActionBody.Within(Position, nameof(Position));
        Guard.InRange(Area, 1e-7, 0.05, unit: "m2");
        Guard.InRange(AspectRatio, 0.1, 6);
        Guard.InRange(Angle, 0, Math.PI / 2, unit: "rad");
        Guard.InRange(Yaw, -Math.PI / 4, Math.PI / 4, unit: "rad");
    }
}

/// <summary>A soft tail: a stem on an elastic hinge, with a paddle at its end in whose wake vortices form.</summary>
/// <param name="HingePosition">Where the tail begins to give, along x (m); a long shank moves it aft.</param>
/// <param name="Length">From hinge to the middle of the paddle (m), 1e-3 to 0.5.</param>
/// <param name="PaddleHeight">Height of the paddle or fin (m), 1e-3 to 0.5.</param>
/// <param name="PaddleWidth">Width across the flow (m), by which the shedding frequency is reckoned, 5e-4 to 0.5.</param>
/// <param name="Mass">Mass of the moving part (kg), counted in the body's mass, 1e-6 to 50.</param>
/// <param name="RootStiffness">Spring of the hinge (N m/rad), 0 to 10,000; E I / stem length of the stem, see <see cref="StemStiffness"/>.</param>
/// <param name="RootDamping">Loss factor of the rubber as a damping ratio, 0 to 2.</param>
/// <param name="Offset">Rest angle of the tail to the left (radians), -pi/3 to pi/3: a tail that was moulded or stored bent.</param>
/// <param name="Drop">How far the middle of the paddle hangs below the body's axis (m), -0.1 to 0.1: it makes the body roll with the beat.</param>
/// <param name="FaceDrag">
/// Share of its drag that the paddle keeps along its face, 0 to 1: a thin plate is pushed square to its face alone and steers like a rudder (0), a round knob along the flow (1).
/// A moulded paddle lies between; 0.5 assumed.
/// </param>
public sealed record FlexibleTail(
    double HingePosition,
    double Length,
    double PaddleHeight,
    double PaddleWidth,
    double Mass,
    double RootStiffness,
    double RootDamping = 0.15,
    double Offset = 0,
    double Drop = 0,
    double FaceDrag = 0.5)
{
    /// <summary>Bending spring of a stem of elliptic section, E (pi/64) h w^3 / l (beam bent by a moment): the root stiffness in N m/rad.</summary>
    /// <param name="modulus">Young's modulus (Pa): soft plastisol about 0.05 to 0.3 MPa (from memory).</param>
    /// <param name="height">Height of the stem (m).</param>
    /// <param name="width">Width of the stem (m), the way it bends.</param>
    /// <param name="length">Length over which it bends (m).</param>
    public static double StemStiffness(double modulus, double height, double width, double length)
    {
        Guard.Positive(modulus);
        Guard.Positive(height);
        Guard.Positive(width);
        Guard.Positive(length);
        return modulus * Math.PI / 64 * height * width * width * width / length;
    }

    internal void Validate()
    {
        Guard.InRange(HingePosition, -1, 1, unit: "m");
        Guard.InRange(Length, 1e-3, 0.5, unit: "m");
        Guard.InRange(PaddleHeight, 1e-3, 0.5, unit: "m");
        Guard.InRange(PaddleWidth, 5e-4, 0.5, unit: "m");
        Guard.InRange(Mass, 1e-6, 50, unit: "kg");
        Guard.InRange(RootStiffness, 0, 1e4, unit: "N m/rad");
        Guard.InRange(RootDamping, 0, 2);
        Guard.InRange(Offset, -Math.PI / 3, Math.PI / 3, unit: "rad");
        Guard.InRange(Drop, -0.1, 0.1, unit: "m");
        Guard.InRange(FaceDrag, 0, 1);
    }
}

/// <summary>
/// The part of a soft body behind its hook. The shank holds what lies before it straight; behind, the body gives way on an elastic joint, sideways and upright. All places and
/// moments are those of the body laid straight; a tail hangs on this part and counts in it.
/// </summary>
/// <param name="JointPosition">Where the hook comes out, along x (m).</param>
/// <param name="Mass">Mass (kg), above 0; counted in the body's.</param>
/// <param name="Volume">Displaced volume (m3), above 0; counted in the body's.</param>
/// <param name="CentreOfMass">Its centre of mass (m), body axes.</param>
/// <param name="CentreOfBuoyancy">Its centre of buoyancy (m), body axes.</param>
/// <param name="Inertia">Its tensor of inertia about its own centre of mass (kg m2).</param>
/// <param name="StiffnessSideways">Spring of the joint against bending to the side (N m/rad), above 0 to 10,000.</param>
/// <param name="StiffnessUpright">Spring of the joint against bending up and down (N m/rad), above 0 to 10,000.</param>
/// <param name="Damping">Loss of the soft material as a damping ratio, 0 to 2.</param>
public sealed record FlexibleRear(
    double JointPosition,
    double Mass,
    double Volume,
    Vector3d CentreOfMass,
    Vector3d CentreOfBuoyancy,
    InertiaTensor Inertia,
    double StiffnessSideways,
    double StiffnessUpright,
    double Damping = 0.15)
{
    internal void Validate()
    {
        Guard.InRange(JointPosition, -1, 1, unit: "m");
        Guard.InRange(Mass, 1e-7, 300, unit: "kg");
        Guard.InRange(Volume, 1e-10, 0.1, unit: "m3");
        ActionBody.Within(CentreOfMass, nameof(CentreOfMass));
        ActionBody.Within(CentreOfBuoyancy, nameof(CentreOfBuoyancy));
        Guard.InRange(StiffnessSideways, 1e-9, 1e4, unit: "N m/rad");
        Guard.InRange(StiffnessUpright, 1e-9, 1e4, unit: "N m/rad");
        Guard.InRange(Damping, 0, 2);
    }
}

/// <summary>A thin plate, the body of a spoon.</summary>
/// <param name="Length">Length along x (m), 5e-3 to 0.5.</param>
/// <param name="Width">Width along y (m), 2e-3 to 0.3.</param>
/// <param name="CamberDepth">Depth of the dish, lengthwise (m), -0.05 to 0.05; the hollow side faces down when positive.</param>
/// <param name="Fill">Area of the outline over length times width, 0.3 to 1: pi/4 for an ellipse.</param>
public sealed record PlateForm(double Length, double Width, double CamberDepth = 0, double Fill = Math.PI / 4)
{
    internal void Validate()
    {
        Guard.InRange(Length, 5e-3, 0.5, unit: "m");
        Guard.InRange(Width, 2e-3, 0.3, unit: "m");
        Guard.InRange(CamberDepth, -0.05, 0.05, unit: "m");
        Guard.InRange(Fill, 0.3, 1);
    }
}

/// <summary>A body that is crooked on its hook: everything behind the bend points aside; where it gives way (<see cref="FlexibleRear"/>), while nothing pushes it.</summary>
/// <param name="Angle">Angle between rear and front (radians), 0 to pi/3.</param>
/// <param name="Roll">Plane of the bend (radians): 0 the tail goes to the left, pi/2 up, pi to the right, -pi/2 down.</param>
/// <param name="Position">Where it bends, along x (m); a body with a <see cref="FlexibleRear"/> bends at its joint.</param>
public sealed record BodyBend(double Angle, double Roll, double Position = 0)
{
    internal void Validate()
    {
        Guard.InRange(Angle, 0, Math.PI / 3, unit: "rad");
        Guard.InRange(Roll, -2 * Math.PI, 2 * Math.PI, unit: "rad");
        Guard.InRange(Position, -1, 1, unit: "m");
    }
}

/// <summary>A head that does not sit in line with the body: it meets the flow askew and is pushed aside.</summary>
/// <param name="Position">Centre of the head (m).</param>
/// <param name="FrontalArea">Area of the head from the front (m2), 0 to 0.01.</param>
/// <param name="Yaw">Head points to the left (radians), -pi/3 to pi/3.</param>
/// <param name="Pitch">Head points up (radians), -pi/3 to pi/3.</param>
public sealed record HeadSet(Vector3d Position, double FrontalArea, double Yaw, double Pitch = 0)
{
    internal void Validate()
    {
        ActionBody.Within(Position, nameof(Position));
        Guard.InRange(FrontalArea, 0, 0.01, unit: "m2");
        Guard.InRange(Yaw, -Math.PI / 3, Math.PI / 3, unit: "rad");
        Guard.InRange(Pitch, -Math.PI / 3, Math.PI / 3, unit: "rad");
    }
}
