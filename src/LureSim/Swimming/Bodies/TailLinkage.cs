namespace LureSim.Swimming.Bodies;

/// <summary>Where the tail is and how it moves: a stem on a hinge that swings sideways, set aside by the bend of the body.</summary>
internal sealed class TailLinkage
{
    private readonly Vector3d hinge;
    private readonly double bend;

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
    public TailMotion Of(in BodyState state)
    {
        (double sine, double cosine) = Math.SinCos(state.TailAngle + bend);
        double l = Tail.Length;
        Vector3d paddle = new(hinge.X - (l * cosine), hinge.Y + (l * sine), hinge.Z - Tail.Drop);
        Vector3d arm = new(l * sine, l * cosine, 0);
        Vector3d velocity = state.Velocity + Vector3d.Cross(state.TurnRate, paddle) + (state.TailRate * arm);
        return new(state.TailAngle, state.TailRate, state.Wake, paddle, arm, velocity);
    }
}
