using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>
/// Moment of a snug knot: the clamped end of a long rod under tension, 2 sqrt(E I T) sin(phi/2) (Love 1927, art. 262); the bent length sqrt(E I/T) is swept through the
/// water and damps.
/// </summary>
internal sealed class KnotClamp : IForce
{
    // Slack leader still has the friction of its way through the water (N); assumed.
    private const double SlackTension = 1e-3;

    // Longest bent length that is swept (m); assumed.
    private const double LongestBend = 0.1;

    private readonly Vector3d axis;
    private readonly double bending, diameter, rho;

    public KnotClamp(Knot knot, TowInput tow)
    {
        bending = knot.BendingStiffness;
        diameter = knot.LeaderDiameter;
        rho = tow.WaterDensity;
        (double ks, double kc) = Math.SinCos(knot.SetYaw);
        (double ps, double pc) = Math.SinCos(knot.SetPitch);
        axis = new(kc * pc, ks * pc, ps);
    }

    public ActionTerms Term => ActionTerms.Knot;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        Vector3d direction = motion.Line.Direction, w = motion.TurnRate;
        double held = motion.Line.Tension + SlackTension;
        Vector3d normal = Vector3d.Cross(axis, direction);
        double sine = normal.Length;
        double angle = Math.Atan2(sine, Vector3d.Dot(axis, direction));
        if (sine > 1e-9) total.Moment += 2 * Math.Sqrt(bending * held) * Math.Sin(angle / 2) / sine * normal;
        double bent = Math.Min(Math.Sqrt(bending / held), LongestBend);
        Vector3d across = w - (Vector3d.Dot(w, direction) * direction);
        double power = bent * bent * bent * bent;
        total.Moment += -0.25 * 0.5 * rho * CylinderDrag.NormalForm * diameter * power * across.Length * across;
    }
}
