namespace LureSim.Swimming.Bodies;

/// <summary>Kinematics at one moment: all that a force may depend on.</summary>
internal readonly struct BodyMotion
{
    /// <summary>Upwards, in body axes.</summary>
    public required Vector3d Up { get; init; }

    /// <summary>Velocity of the body's origin in body axes (m/s).</summary>
    public required Vector3d Velocity { get; init; }

    /// <summary>Rate of turn in body axes (rad/s).</summary>
    public required Vector3d TurnRate { get; init; }

    /// <summary>Wake variable of the lip (dimensionless).</summary>
    public double LipWake { get; init; }

    /// <summary>The tail; all zero without one.</summary>
    public TailMotion Tail { get; init; }

    /// <summary>The line.</summary>
    public LineState Line { get; init; }

    /// <summary>Height of the water's surface above the body's origin (m); null where it is too far to matter.</summary>
    public double? SurfaceAbove { get; init; }

    /// <summary>Share of a round slice that is under water: the segment of a circle below the surface; 1 without a surface.</summary>
    /// <param name="place">Middle of the slice in body axes (m).</param>
    /// <param name="radius">Its radius (m).</param>
    public double Wet(Vector3d place, double radius)
    {
        if (SurfaceAbove is not { } surface) return 1;
        double x = Math.Clamp((surface - Vector3d.Dot(Up, place)) / Math.Max(radius, 1e-4), -1, 1);
        return ((0.5 * Math.PI) + Math.Asin(x) + (x * Math.Sqrt(1 - (x * x)))) / Math.PI;
    }

    /// <summary>Velocity of a point fixed to the body (m/s).</summary>
    /// <param name="place">Point in body axes (m).</param>
    public Vector3d At(Vector3d place) => Velocity + Vector3d.Cross(TurnRate, place);
}

/// <summary>Motion of the tail, in body axes.</summary>
/// <param name="Angle">Angle to the left (radians).</param>
/// <param name="Rate">Its rate (rad/s).</param>
/// <param name="Wake">Wake variable of the paddle (dimensionless).</param>
/// <param name="Place">Middle of the paddle (m).</param>
/// <param name="Arm">Way of the paddle for each radian of the hinge (m).</param>
/// <param name="Normal">Square to the face of the paddle, forwards.</param>
/// <param name="Velocity">Velocity of the paddle (m/s).</param>
internal readonly record struct TailMotion(double Angle, double Rate, double Wake, Vector3d Place, Vector3d Arm, Vector3d Normal, Vector3d Velocity)
{
    /// <summary>Speed of the paddle in the plane in which it swings (m/s).</summary>
    public double PlanarSpeed => Math.Sqrt((Velocity.X * Velocity.X) + (Velocity.Y * Velocity.Y));
}

/// <summary>The line at one moment.</summary>
/// <param name="Tension">Tension at the lure (N).</param>
/// <param name="Direction">From the eye along the line, in body axes; along the path where there is no line.</param>
/// <param name="End">Far end in water axes (m).</param>
/// <param name="EndRate">Velocity of a trailing end in water axes (m/s).</param>
internal readonly record struct LineState(double Tension, Vector3d Direction, Vector3d End, Vector3d EndRate);
