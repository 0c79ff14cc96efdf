namespace LureSim.Swimming.Bodies;

/// <summary>Where the tail is and how it moves: a stem on a hinge that swings sideways, set aside by the bend of the body.</summary>
internal sealed class TailLinkage
{
    private readonly Vector3d hinge;
    private readonly double bend;

    /// <summary>The tail of a body.</summary>
    /// <param name="tail">The tail.</param>
    /// <param name="axis">Axis of the body on which it hangs.</param>
    public TailLinkage(FlexibleTail tail, BentAxis axis)
    {
        Tail = tail;
        hinge = axis.Point(new(tail.HingePosition, 0, 0));
        Vector3d t = axis.Tangent(tail.HingePosition);
        bend = Math.Atan2(-t.Y, t.X);
        hinge = hinge with { Z = hinge.Z - (tail.Length * t.Z) };
    }

    /// <summary>The tail's dimensions.</summary>
    public FlexibleTail Tail { get; }

    /// <summary>Motion of the tail of a body that moves.</summary>
    /// <param name="state">Angle and wake of the tail.</param>
    /// <param name="bodyVelocity">Velocity of the origin of the body on which it hangs (m/s).</param>
    /// <param name="turnRate">Its rate of turn (rad/s).</param>
    public TailMotion Of(in BodyState state, Vector3d bodyVelocity, Vector3d turnRate)
    {
        (double sine, double cosine) = Math.SinCos(state.TailAngle + bend);
        double l = Tail.Length;
        Vector3d paddle = new(hinge.X - (l * cosine), hinge.Y + (l * sine), hinge.Z - Tail.Drop);
        Vector3d arm = new(l * sine, l * cosine, 0);
        Vector3d velocity = bodyVelocity + Vector3d.Cross(turnRate, paddle) + (state.TailRate * arm);
        return new(state.TailAngle, state.TailRate, state.Wake, paddle, arm, new(cosine, -sine, 0), velocity);
    }
}
