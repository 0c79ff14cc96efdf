using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Side force of a head that does not sit in line: a nose set askew by a small angle meets the flow like a slender cone, normal force slope 2 on its base (Munk 1924).</summary>
internal sealed class TurnedHead(HeadSet head, TowInput tow) : IForce
{
    public ActionTerms Term => ActionTerms.Head;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        Vector3d at = motion.At(head.Position);
        double q = tow.WaterDensity * head.FrontalArea * at.X * Math.Abs(at.X);
        total.Add(new(0, q * Math.Sin(head.Yaw) * Math.Cos(head.Yaw), q * Math.Sin(head.Pitch) * Math.Cos(head.Pitch)), head.Position);
    }
}
