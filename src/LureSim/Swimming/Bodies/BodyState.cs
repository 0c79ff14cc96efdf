using System.Runtime.InteropServices;

namespace LureSim.Swimming.Bodies;

/// <summary>The unknowns of a lure on its line, or their rates, as a view on the numbers that an integrator steps.</summary>
/// <remarks>The layout is that of the fields; nothing else knows it.</remarks>
[StructLayout(LayoutKind.Sequential)]
internal struct BodyState
{
    /// <summary>Place of the body's origin in water axes (m).</summary>
    public Vector3d Position;

    /// <summary>Body axes to water axes.</summary>
    public Attitude Attitude;

    /// <summary>Velocity of the body's origin in body axes (m/s).</summary>
    public Vector3d Velocity;

    /// <summary>Rate of turn in body axes (rad/s).</summary>
    public Vector3d TurnRate;

    /// <summary>Tail's angle to the left (radians).</summary>
    public double TailAngle;

    /// <summary>Its rate (rad/s).</summary>
    public double TailRate;

    /// <summary>Wake variable of the paddle (dimensionless).</summary>
    public double Wake;

    /// <summary>Its rate (1/s).</summary>
    public double WakeRate;

    /// <summary>Angle of the rear to the left of the front (radians); 0 for a stiff body.</summary>
    public double Sideways;

    /// <summary>Angle of the rear above the front (radians); 0 for a stiff body.</summary>
    public double Upright;

    /// <summary>Rate of <see cref="Sideways"/> (rad/s).</summary>
    public double SidewaysRate;

    /// <summary>Rate of <see cref="Upright"/> (rad/s).</summary>
    public double UprightRate;

    /// <summary>Far end of the line in water axes (m): of a trailing line, or what the reel has taken up beside its schedule.</summary>
    public Vector3d LineEnd;

    /// <summary>Wake variable of the lip (dimensionless).</summary>
    public double LipWake;

    /// <summary>Its rate (1/s).</summary>
    public double LipWakeRate;

    /// <summary>Turn about the long axis since the start (radians).</summary>
    public double RollTotal;

    /// <summary>Turn about the line since the start (radians).</summary>
    public double Twist;

    /// <summary>Work of all forces since the start (J).</summary>
    public double Work;

    /// <summary>The same, each power counted positive (J).</summary>
    public double Exchanged;

    /// <summary>Number of unknowns.</summary>
    public static int Size { get; } = Marshal.SizeOf<BodyState>() / sizeof(double);

    /// <summary>The numbers of a state seen as one.</summary>
    public static ref readonly BodyState Of(ReadOnlySpan<double> numbers) => ref MemoryMarshal.Cast<double, BodyState>(numbers)[0];

    /// <summary>The numbers of a state seen as one, to be written.</summary>
    public static ref BodyState In(Span<double> numbers) => ref MemoryMarshal.Cast<double, BodyState>(numbers)[0];
}
