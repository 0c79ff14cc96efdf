using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Weight in the centre of mass.</summary>
internal sealed class Weight(ActionBody body, TowInput tow) : IForce
{
    private readonly double weight = body.Mass * tow.Gravity;
    private readonly Vector3d centre = body.CentreOfMass;

    public ActionTerms Term => ActionTerms.Weight;

    public void AddTo(in BodyMotion motion, ref Wrench total) => total.Add(-weight * motion.Up, centre);
}
