using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>
/// The diving lip: normal force of a plate, strip by strip across its width so that a roll or a turn is resisted; its place on the plate, which moves towards the edge that leads; and
/// the vortices that leave its sides in turn. A thin plate can only be pushed square to its face: the vortices press on its back more on one side than on the other, and push the part
/// of the body that stands in their way to the side.
/// </summary>
internal sealed class Lip : IForce
{
    // Strips across the width.
    private const int Strips = 6;

    // A pressure that falls evenly across the back from C_L/2 at one edge to -C_L/2 at the other turns the plate by C_L/12 on its area and width.
    private const double Turning = 1.0 / 12;

    private readonly DivingLip lip;
    private readonly double rho, length, shadow;
    private readonly Vector3d along, across, normal, behind;
    private readonly Vector3d[] strips = new Vector3d[Strips];
    private readonly VortexLift? wake;

    public Lip(ActionBody body, DivingLip lip, TowInput tow, VortexLift? wake)
    {
        this.lip = lip;
        this.wake = wake;
        rho = tow.WaterDensity;
        length = lip.Area / lip.Width;
        (along, across, normal) = lip.Axes;
        for (int i = 0; i < Strips; i++) strips[i] = lip.Position + (lip.Width * (((i + 0.5) / Strips) - 0.5) * across);

        // The head behind the lip: what of its height lies behind that of the lip, one width behind the nose, where the vortices have formed.
        double reach = 0.5 * length * Math.Sin(lip.Angle), half = body.Sections.Count == 0 ? 0 : 0.5 * body.Sections.MaxBy(s => s.Position)!.Height;
        double top = Math.Min(half, lip.Position.Z + reach), bottom = Math.Max(-half, lip.Position.Z - reach);
        shadow = lip.Width * Math.Max(0, top - bottom);
        behind = new(body.SemiAxes.X - lip.Width, 0, 0.5 * (top + bottom));
    }

    public ActionTerms Term => ActionTerms.Lip;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        Vector3d at = motion.At(lip.Position);
        double size = at.Length;
        if (size < 1e-12) return;
        double pressed = 0;
        foreach (Vector3d strip in strips)
        {
            Vector3d there = motion.At(strip);
            double speed = there.Length, into = Vector3d.Dot(there, normal);
            if (speed < 1e-12) continue;
            double push = -0.5 * rho * (lip.Area / Strips) * LipPlate.NormalCoefficient(Math.Abs(into) / speed, lip.AspectRatio) * speed * speed * Math.Sign(into);
            total.Add(push * normal, strip);
            pressed += push;
        }

        // The force stands off the middle towards the edge that leads.
        double crossing = Vector3d.Dot(at, normal), forwards = Vector3d.Dot(at, along), sideways = Vector3d.Dot(at, across);
        double inPlane = Math.Sqrt((forwards * forwards) + (sideways * sideways));
        if (inPlane > 1e-12)
        {
            double off = LipPlate.CentreOfPressure(Math.Abs(crossing) / size, lip.AspectRatio) / inPlane;
            total.Moment += pressed * Vector3d.Cross((off * forwards * length * along) + (off * sideways * lip.Width * across), normal);
        }

        if (wake is null) return;
        double pressure = 0.5 * rho * Math.Abs(crossing) * size * wake.Coefficient(motion.LipWake);
        total.Moment += -Math.Sign(crossing) * Turning * pressure * lip.Area * lip.Width * Vector3d.Cross(across, normal);
        total.Add(new(0, pressure * shadow, 0), behind);
    }
}
