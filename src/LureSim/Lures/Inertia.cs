namespace LureSim.Lures;

/// <summary>Symmetric tensor of inertia (kg m2) in axes forward, left, up.</summary>
/// <param name="Roll">About the forward axis: integral of left^2 + up^2.</param>
/// <param name="Pitch">About the left axis.</param>
/// <param name="Yaw">About the upward axis.</param>
/// <param name="ForwardLeft">Product: minus the integral of forward x left.</param>
/// <param name="ForwardUp">Product: minus the integral of forward x up.</param>
/// <param name="LeftUp">Product: minus the integral of left x up.</param>
public readonly record struct Inertia(double Roll, double Pitch, double Yaw, double ForwardLeft, double ForwardUp, double LeftUp)
{
    /// <summary>Diagonal tensor.</summary>
    public static Inertia Diagonal(double roll, double pitch, double yaw) => new(roll, pitch, yaw, 0, 0, 0);

    /// <summary>A solid ball: 2/5 m r^2.</summary>
    /// <param name="mass">Mass (kg).</param>
    /// <param name="radius">Radius (m).</param>
    public static Inertia Ball(double mass, double radius) => Diagonal(0.4 * mass * radius * radius, 0.4 * mass * radius * radius, 0.4 * mass * radius * radius);

    /// <summary>A thin rod along the forward axis: m l^2/12.</summary>
    /// <param name="mass">Mass (kg).</param>
    /// <param name="length">Length (m).</param>
    public static Inertia Rod(double mass, double length) => Diagonal(0, mass * length * length / 12, mass * length * length / 12);

    /// <summary>An elliptic cylinder along the forward axis: m (l^2/12 + d^2/16) across.</summary>
    /// <param name="mass">Mass (kg).</param>
    /// <param name="length">Length (m).</param>
    /// <param name="height">Height (m).</param>
    /// <param name="width">Width (m).</param>
    public static Inertia Cylinder(double mass, double length, double height, double width) => Diagonal(
        mass * ((height * height) + (width * width)) / 16,
        mass * ((length * length / 12) + (height * height / 16)),
        mass * ((length * length / 12) + (width * width / 16)));

    /// <summary>Sum of two tensors about the same point.</summary>
    public static Inertia operator +(Inertia a, Inertia b) => new(a.Roll + b.Roll, a.Pitch + b.Pitch, a.Yaw + b.Yaw, a.ForwardLeft + b.ForwardLeft, a.ForwardUp + b.ForwardUp, a.LeftUp + b.LeftUp);

    /// <summary>Sum of two tensors about the same point.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static Inertia Add(Inertia left, Inertia right) => left + right;

    /// <summary>The tensor of a body about a point off its centre of mass (Steiner's parallel axes).</summary>
    /// <param name="mass">Mass (kg).</param>
    /// <param name="forward">Centre of mass from the point, forward (m).</param>
    /// <param name="left">To the left (m).</param>
    /// <param name="up">Up (m).</param>
    public Inertia Moved(double mass, double forward, double left, double up) => this + new Inertia(
        mass * ((left * left) + (up * up)),
        mass * ((forward * forward) + (up * up)),
        mass * ((forward * forward) + (left * left)),
        -mass * forward * left,
        -mass * forward * up,
        -mass * left * up);

    /// <summary>The tensor of the same body turned to the left about the upward axis.</summary>
    /// <param name="angle">Angle (radians).</param>
    public Inertia Yawed(double angle)
    {
        double c = Math.Cos(angle), s = Math.Sin(angle);
        return new Inertia(
            (c * c * Roll) + (s * s * Pitch) - (2 * s * c * ForwardLeft),
            (s * s * Roll) + (c * c * Pitch) + (2 * s * c * ForwardLeft),
            Yaw,
            (s * c * (Roll - Pitch)) + (((c * c) - (s * s)) * ForwardLeft),
            (c * ForwardUp) - (s * LeftUp),
            (s * ForwardUp) + (c * LeftUp));
    }

    /// <summary>The tensor of the same body turned nose up about the left axis.</summary>
    /// <param name="angle">Angle (radians).</param>
    public Inertia Raised(double angle)
    {
        // Nose up is a negative turn about the left axis.
        double c = Math.Cos(angle), s = Math.Sin(angle);
        return new Inertia(
            (c * c * Roll) + (s * s * Yaw) - (2 * s * c * ForwardUp),
            Pitch,
            (s * s * Roll) + (c * c * Yaw) + (2 * s * c * ForwardUp),
            (c * ForwardLeft) - (s * LeftUp),
            (s * c * (Roll - Yaw)) + (((c * c) - (s * s)) * ForwardUp),
            (s * ForwardLeft) + (c * LeftUp));
    }
}
