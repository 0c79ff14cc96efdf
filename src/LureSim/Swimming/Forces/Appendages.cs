using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Drag of hooks, rings and weights, alike from all sides.</summary>
internal sealed class Appendages(ActionBody body, TowInput tow) : IForce
{
    private readonly AppendageDrag[] parts = [.. body.Appendages];

    public ActionTerms Term => ActionTerms.Appendages;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        foreach (AppendageDrag a in parts)
        {
            Vector3d at = motion.At(a.Position);
            total.Add(-0.5 * motion.Wet(a.Position, Math.Sqrt(a.DragArea)) * tow.WaterDensity * a.DragArea * at.Length * at, a.Position);
        }
    }
}
