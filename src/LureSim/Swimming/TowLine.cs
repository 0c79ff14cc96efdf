using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming;

/// <summary>The line between lure and rod: an elastic straight line whose far end is drawn along, slack line that trails, or none.</summary>
internal sealed class TowLine
{
    // The damper takes hold over this stretch (m).
    private const double DamperOnset = 1e-3;

    // The reel sets in over this length of slack (m).
    private const double TakeUpOnset = 0.01;

    private readonly TowInput tow;
    private readonly LineEndSchedule schedule;
    private readonly Vector3d eye;
    private readonly double length, damping;
    private readonly bool acts;

    public TowLine(ActionBody body, Knot knot, TowInput tow, bool acts)
    {
        this.tow = tow;
        this.acts = acts && tow.Mode != TowMode.Free;
        schedule = new LineEndSchedule(tow);
        eye = body.TowPoint;
        length = tow.LineLength + (knot.Kind == KnotKind.Snug ? 0 : knot.Length);
        damping = 2 * tow.LineDampingRatio * Math.Sqrt(tow.LineStiffness * (body.Mass + (0.5 * tow.WaterDensity * body.Volume)));
    }

    /// <summary>Far end at the start for a body of the given attitude: the line straight, or slack by the given length (m, water axes).</summary>
    public Vector3d EndAtStart(Attitude attitude)
    {
        double reach = Math.Max(0.02, length - tow.InitialSlack);
        return attitude.ToWater(eye) + (reach * new Vector3d(Math.Cos(tow.LineElevation), 0, Math.Sin(tow.LineElevation)));
    }

    /// <summary>Next time at which the rod or reel changes what it does (s).</summary>
    public double NextBreak(double time) => tow.Mode == TowMode.Pulled ? schedule.NextBreak(time) : double.PositiveInfinity;

    /// <summary>The line at a moment.</summary>
    /// <param name="time">Time (s).</param>
    /// <param name="state">State of the body.</param>
    public LineState At(double time, in BodyState state)
    {
        Vector3d v = state.Velocity;
        double speed = v.Length;
        Vector3d path = speed > 1e-9 ? (1 / speed) * v : new(1, 0, 0);
        return tow.Mode == TowMode.Pulled ? Pulled(time, state, path) : Trailing(state, path);
    }

    private LineState Pulled(double time, in BodyState state, Vector3d path)
    {
        schedule.Evaluate(time, out double way, out double endSpeed);
        Vector3d end = state.LineEnd + new Vector3d(way, 0, 0);
        if (!acts) return new(0, path, end, default);
        Vector3d endVelocity = state.Attitude.ToBody(new(endSpeed, 0, 0));
        Vector3d line = FromEye(state, end, out double distance, out Vector3d eyeVelocity);
        double stretch = distance - length;
        double rate = Vector3d.Dot(endVelocity - eyeVelocity, line);

        // The damper takes hold over a millimetre, and a line does not push.
        double hold = Math.Clamp(stretch / DamperOnset, 0, 1);
        double tension = stretch > 0 ? Math.Max(0, (tow.LineStiffness * stretch) + (hold * damping * rate)) : 0;
        double taken = tow.TakeUp * Math.Clamp((-stretch - tow.SlackLeft) / TakeUpOnset, 0, 1);
        return new(tension, line, end, new(taken, 0, 0));
    }

    // Slack line is drawn lengthwise through the water: its end follows on the tractrix, its friction is that of an axial boundary layer (Glauert & Lighthill 1955).
    private LineState Trailing(in BodyState state, Vector3d path)
    {
        Vector3d end = state.LineEnd;
        if (!acts) return new(0, path, end, default);
        Vector3d line = FromEye(state, end, out double distance, out Vector3d eyeVelocity);
        double drawn = -Vector3d.Dot(eyeVelocity, line);
        double follow = Math.Clamp((distance / length * 50) - 49, 0, 1.02);
        double pace = Math.Max(0, drawn) * follow;
        double tension = Math.PI * tow.WaterDensity * tow.KinematicViscosity * LineDragLaw.AxialFrictionNumber * length * pace;
        return new(tension, line, end, state.Attitude.ToWater(-pace * line));
    }

    private Vector3d FromEye(in BodyState state, Vector3d end, out double distance, out Vector3d eyeVelocity)
    {
        eyeVelocity = state.Velocity + Vector3d.Cross(state.TurnRate, eye);
        Vector3d line = state.Attitude.ToBody(end - state.Position) - eye;
        distance = Math.Max(line.Length, 1e-9);
        return (1 / distance) * line;
    }
}
