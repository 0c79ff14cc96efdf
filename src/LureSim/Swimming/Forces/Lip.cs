using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Normal force of the diving lip, and the side force of the vortices that leave its sides in turn.</summary>
internal sealed class Lip : IForce
{
    private readonly DivingLip lip;
    private readonly double rho, sine, cosine;
    private readonly Vector3d lipNormal;
    private readonly VortexLift? wake;

    public Lip(DivingLip lip, TowInput tow, VortexLift? wake)
    {
        this.lip = lip;
        this.wake = wake;
        rho = tow.WaterDensity;
        (double sa, double ca) = Math.SinCos(lip.Angle);
        (sine, cosine) = Math.SinCos(lip.Yaw);
        lipNormal = new(sa * cosine, sa * sine, ca);
    }

    public ActionTerms Term => ActionTerms.Lip;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        Vector3d at = motion.At(lip.Position);
        double size = at.Length;
        if (size < 1e-12) return;
        double normal = Vector3d.Dot(at, lipNormal);
        double coefficient = LipPlate.NormalCoefficient(Math.Abs(normal) / size, lip.AspectRatio);
        total.Add(-0.5 * rho * lip.Area * coefficient * size * size * Math.Sign(normal) * lipNormal, lip.Position);

        // Vortices leave the sides of the lip in turn, on the area that it shows the flow.
        if (wake is null) return;
        double side = 0.5 * rho * lip.Area * Math.Abs(normal) * size * wake.Coefficient(motion.LipWake);
        total.Add(new(-sine * side, cosine * side, 0), lip.Position);
    }
}
