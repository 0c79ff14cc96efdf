namespace LureSim.Swimming.Bodies;

/// <summary>How the leader is tied to the eye.</summary>
public enum KnotKind
{
    /// <summary>An open loop: the eye slides and turns freely in it.</summary>
    Loop,

    /// <summary>Drawn tight on the eye: the leader leaves it in a fixed direction and has to bend.</summary>
    Snug,

    /// <summary>A wire clip: a free pivot.</summary>
    Clip,

    /// <summary>A split ring: a free pivot, short.</summary>
    SplitRing,
}

/// <summary>The joint between leader and lure.</summary>
/// <remarks>
/// A snug knot holds the leader's end like a clamped beam under tension T: its moment is 2 sqrt(E I T) sin(phi/2) at an angle phi between leader and knot
/// (elastica of a long rod; Love 1927, art. 262), with E I = E pi d^4/64.
/// </remarks>
public sealed record Knot
{
    /// <summary>Kind of joint.</summary>
    public required KnotKind Kind { get; init; }

    /// <summary>Length of loop, clip or ring (m), 0 to 0.1.</summary>
    public double Length { get; init; }

    /// <summary>Diameter of the leader (m), 5e-5 to 2e-3.</summary>
    public double LeaderDiameter { get; init; } = 0.4e-3;

    /// <summary>Young's modulus of the leader in bending (Pa), 1e7 to 2e11: nylon 3e9, fluorocarbon 2e9 (from memory); braid bends like its loose fibres, about 1e8 (assumed).</summary>
    public double LeaderModulus { get; init; } = 2e9;

    /// <summary>Direction to the left in which a snug knot has slipped on the eye (radians), -pi/2 to pi/2; 0 straight ahead.</summary>
    public double SetYaw { get; init; }

    /// <summary>Direction upwards in which a snug knot sits on the eye (radians), -pi/2 to pi/2; 0 straight ahead.</summary>
    public double SetPitch { get; init; }

    /// <summary>E I of the leader (N m2).</summary>
    public double BendingStiffness => LeaderModulus * Math.PI / 64 * Math.Pow(LeaderDiameter, 4);

    /// <summary>A loop knot.</summary>
    /// <param name="length">Length of the loop (m).</param>
    /// <param name="leaderDiameter">Diameter of the leader (m).</param>
    public static Knot Loop(double length = 0.008, double leaderDiameter = 0.4e-3) => new() { Kind = KnotKind.Loop, Length = length, LeaderDiameter = leaderDiameter };

    /// <summary>A knot drawn tight on the eye.</summary>
    /// <param name="leaderDiameter">Diameter of the leader (m).</param>
    /// <param name="leaderModulus">Young's modulus (Pa).</param>
    public static Knot Snug(double leaderDiameter = 0.4e-3, double leaderModulus = 2e9) =>
        new() { Kind = KnotKind.Snug, LeaderDiameter = leaderDiameter, LeaderModulus = leaderModulus };

    /// <summary>A wire clip.</summary>
    /// <param name="length">Length of the clip (m).</param>
    public static Knot Clip(double length = 0.015) => new() { Kind = KnotKind.Clip, Length = length };

    /// <summary>A split ring.</summary>
    /// <param name="diameter">Diameter of the ring (m).</param>
    public static Knot SplitRing(double diameter = 0.005) => new() { Kind = KnotKind.SplitRing, Length = diameter };

    /// <summary>Throws unless every member lies in its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A member is out of range.</exception>
    public void Validate()
    {
        Guard.InRange((int)Kind, 0, (int)KnotKind.SplitRing, nameof(Kind));
        Guard.InRange(Length, 0, 0.1, unit: "m");
        Guard.InRange(LeaderDiameter, 5e-5, 2e-3, unit: "m");
        Guard.InRange(LeaderModulus, 1e7, 2e11, unit: "Pa");
        Guard.InRange(SetYaw, -Math.PI / 2, Math.PI / 2, unit: "rad");
        Guard.InRange(SetPitch, -Math.PI / 2, Math.PI / 2, unit: "rad");
    }

    /// <summary>The knot mirrored in the lure's plane of symmetry.</summary>
    public Knot Mirror() => this with { SetYaw = -SetYaw };
}
