using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Buoyancy in the centre of the displaced volume.</summary>
internal sealed class Buoyancy(ActionBody body, TowInput tow) : IForce
{
    private readonly double buoyancy = tow.WaterDensity * body.Volume * tow.Gravity;
    private readonly Vector3d centre = body.CentreOfBuoyancy;

    public ActionTerms Term => ActionTerms.Buoyancy;

    public void AddTo(in BodyMotion motion, ref Wrench total) => total.Add(buoyancy * motion.Up, centre);
}
