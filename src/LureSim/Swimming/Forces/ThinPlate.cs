using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Forces of a thin plate, the body of a spoon (Andersen, Pesavento &amp; Wang 2005, J. Fluid Mech. 541:65, eqs 4.7 to 4.9).</summary>
internal sealed class ThinPlate : IForce
{
    // Their coefficients.
    private const double Lift = 1.2, Rotation = Math.PI, DragA = 1.4, DragB = 1.0, TorqueBySpeed = 0.2, TorqueByRate = 0.2;

    private readonly PlateForm plate;
    private readonly double rho, area, reference;

    public ThinPlate(PlateForm plate, double wetWeight, TowInput tow)
    {
        this.plate = plate;
        rho = tow.WaterDensity;
        area = plate.Length * plate.Width * plate.Fill;
        reference = Math.Max(Math.Sqrt(2 * Math.Abs(wetWeight) / (Math.PI * rho * area)), tow.Mode == TowMode.Pulled ? tow.Speed : 0);
    }

    public ActionTerms Term => ActionTerms.Plate;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        Vector3d v = motion.Velocity, w = motion.TurnRate;
        double size = v.Length;
        if (size > 1e-12)
        {
            double along = Math.Sqrt((v.X * v.X) + (v.Y * v.Y));
            double effective = v.Z - (2 * plate.CamberDepth / plate.Length * Math.Abs(v.X));
            double lift = rho * area * Lift / size;
            double tangential = lift * effective * v.Z;
            total.Force += new Vector3d(tangential * v.X, tangential * v.Y, -lift * along * along * effective);
            double drag = 0.5 * rho * area * (DragA - (DragB * ((along * along) - (v.Z * v.Z)) / (size * size))) * size;
            total.Force += -drag * v;
        }

        Vector3d circulation = new(plate.Width * w.X, plate.Length * w.Y, 0);
        total.Force += 0.5 * Rotation * rho * area * Vector3d.Cross(circulation, v);
        total.Moment += new Vector3d(Torque(plate.Width, plate.Length * plate.Fill, w.X), Torque(plate.Length, plate.Width * plate.Fill, w.Y), 0);
    }

    // pi rho a^4 (mu1 V/a + mu2 |w|) w per span, a half the chord.
    private double Torque(double chord, double span, double rate)
    {
        double a = chord / 2;
        return -Math.PI * rho * a * a * a * a * span * ((TorqueBySpeed * reference / a) + (TorqueByRate * Math.Abs(rate))) * rate;
    }
}
