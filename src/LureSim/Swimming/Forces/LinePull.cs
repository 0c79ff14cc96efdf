using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Pull of the line on the eye.</summary>
internal sealed class LinePull(ActionBody body) : IForce
{
    private readonly Vector3d eye = body.TowPoint;

    public ActionTerms Term => ActionTerms.Line;

    public void AddTo(in BodyMotion motion, ref Wrench total) => total.Add(motion.Line.Tension * motion.Line.Direction, eye);
}
