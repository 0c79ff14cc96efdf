using LureSim.Stepping;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming;

/// <summary>
/// The motion of a lure through a window of some seconds: equally long arrays at fixed intervals of time, in water axes (x along the pull, y to the left, z up,
/// moving with the water). SI.
/// </summary>
public sealed record ActionTrace
{
    /// <summary>The lure.</summary>
    public required ActionBody Body { get; init; }

    /// <summary>Its knot.</summary>
    public required Knot Knot { get; init; }

    /// <summary>How it was towed.</summary>
    public required TowInput Tow { get; init; }

    /// <summary>Settings.</summary>
    public required ActionOptions Options { get; init; }

    /// <summary>How it ended.</summary>
    public required SimulationStatus Status { get; init; }

    /// <summary>Time reached (s): the duration asked for, unless the run ended early.</summary>
    public double EndTime { get; init; }

    /// <summary>Work and balance.</summary>
    public required SimulationStatistics Statistics { get; init; }

    /// <summary>Largest distance of the quaternion's norm from 1 before it was put right (dimensionless).</summary>
    public double QuaternionDrift { get; init; }

    /// <summary>Times (s).</summary>
    public required double[] Time { get; init; }

    /// <summary>Position of the body's origin (m).</summary>
    public required Vector3d[] Position { get; init; }

    /// <summary>Attitude: body axes to water axes.</summary>
    public required Attitude[] Attitude { get; init; }

    /// <summary>Velocity of the body's origin in body axes (m/s): x forwards.</summary>
    public required Vector3d[] Velocity { get; init; }

    /// <summary>Rate of turn in body axes (rad/s).</summary>
    public required Vector3d[] AngularVelocity { get; init; }

    /// <summary>Tail angle relative to the body, to the left (radians); zero without a tail.</summary>
    public required double[] TailAngle { get; init; }

    /// <summary>Angle of the part behind the hook to the left of the front (radians): the bend as the water leaves it; zero for a stiff body.</summary>
    public required double[] BendSideways { get; init; }

    /// <summary>The same angle upwards (radians).</summary>
    public required double[] BendUpright { get; init; }

    /// <summary>Tension of the line at the lure (N).</summary>
    public required double[] Tension { get; init; }

    /// <summary>Force of the line on the lure (N), water axes.</summary>
    public required Vector3d[] LinePull { get; init; }

    /// <summary>Far end of the line (m), water axes.</summary>
    public required Vector3d[] LineEnd { get; init; }

    /// <summary>Turn about the long axis since the start, counted on through whole turns (radians).</summary>
    public required double[] RollTotal { get; init; }

    /// <summary>Turn about the line's direction since the start (radians), which is the twist put into the line; about the path where there is no line.</summary>
    public required double[] TwistTotal { get; init; }

    /// <summary>Number of samples.</summary>
    public int Count => Time.Length;
}
