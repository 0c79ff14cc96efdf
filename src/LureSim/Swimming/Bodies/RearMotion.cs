namespace LureSim.Swimming.Bodies;

/// <summary>
/// How the part behind the joint of a flexible body stands and moves: turned by the angle to the left about the front's upward axis, then by the angle up about its own left axis.
/// Its axes are those of the front when the body lies straight, its origin is the joint.
/// </summary>
internal readonly struct RearMotion
{
    /// <summary>The motion of the rear.</summary>
    /// <param name="state">State of the body.</param>
    /// <param name="joint">Place of the joint along the front's axis (m).</param>
    public RearMotion(in BodyState state, double joint)
    {
        (double ss, double cs) = Math.SinCos(state.Sideways);
        (double su, double cu) = Math.SinCos(state.Upright);
        Forward = new(cs * cu, -ss * cu, -su);
        Left = new(ss, cs, 0);
        Up = new(cs * su, -ss * su, cu);
        SidewaysAxis = new(su, 0, -cu);
        Relative = (state.SidewaysRate * SidewaysAxis) + new Vector3d(0, state.UprightRate, 0);
        Joint = new(joint, 0, 0);
        TurnRate = ToRear(state.TurnRate) + Relative;
        Velocity = ToRear(state.Velocity + Vector3d.Cross(state.TurnRate, Joint));

        // What is left of the accelerations when the unknowns do not accelerate: the rear's axes turn against the front's, and the axis of the joint turns with the angle up.
        Vector3d own = TurnRate - Relative;
        double both = state.SidewaysRate * state.UprightRate;
        VelocityBias = Vector3d.Cross(Velocity, Relative);
        TurnBias = Vector3d.Cross(own, Relative) + new Vector3d(both * cu, 0, both * su);
    }

    /// <summary>Axis of the rear towards the nose, in the front's axes.</summary>
    public Vector3d Forward { get; }

    /// <summary>The rear's left, in the front's axes.</summary>
    public Vector3d Left { get; }

    /// <summary>The rear's upward axis, in the front's axes.</summary>
    public Vector3d Up { get; }

    /// <summary>Axis about which the angle to the left turns the rear, in its own axes.</summary>
    public Vector3d SidewaysAxis { get; }

    /// <summary>Rate of turn against the front, in the rear's axes (rad/s).</summary>
    public Vector3d Relative { get; }

    /// <summary>Place of the joint in the front's axes (m).</summary>
    public Vector3d Joint { get; }

    /// <summary>Rate of turn in the rear's axes (rad/s).</summary>
    public Vector3d TurnRate { get; }

    /// <summary>Velocity of the joint in the rear's axes (m/s).</summary>
    public Vector3d Velocity { get; }

    /// <summary>Rate of <see cref="Velocity"/> when no unknown accelerates (m/s2).</summary>
    public Vector3d VelocityBias { get; }

    /// <summary>Rate of <see cref="TurnRate"/> when no unknown accelerates (rad/s2).</summary>
    public Vector3d TurnBias { get; }

    /// <summary>A vector of the front's axes in the rear's.</summary>
    public Vector3d ToRear(Vector3d v) => new(Vector3d.Dot(Forward, v), Vector3d.Dot(Left, v), Vector3d.Dot(Up, v));

    /// <summary>A vector of the rear's axes in the front's.</summary>
    public Vector3d ToFront(Vector3d v) => (v.X * Forward) + (v.Y * Left) + (v.Z * Up);

    /// <summary>A wrench about the joint in the rear's axes, about the body's origin in the front's.</summary>
    public Wrench ToFront(in Wrench rear)
    {
        Vector3d force = ToFront(rear.Force);
        return new() { Force = force, Moment = ToFront(rear.Moment) + Vector3d.Cross(Joint, force), Hinge = rear.Hinge };
    }
}
