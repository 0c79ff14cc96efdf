using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>
/// Takes the couple of potential flow from the lip: in Kirchhoff's equations the water that a plate carries turns it broadside by p x v (Lamb 1932, art. 124), which for a real plate the
/// place of its normal force stands for (<see cref="LipPlate.CentreOfPressure"/>).
/// </summary>
internal sealed class LipSeparation(DivingLip lip, TowInput tow) : IForce
{
    private readonly double carried = AddedMass.OfLip(lip, tow.WaterDensity);
    private readonly Vector3d normal = lip.Axes.Normal;

    public ActionTerms Term => ActionTerms.Separation;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        Vector3d at = motion.At(lip.Position);
        total.Moment += -carried * Vector3d.Dot(at, normal) * Vector3d.Cross(normal, at);
    }
}
