using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>
/// Drag along the body: skin friction of a laminar plate (Blasius 1908) on the wetted area with Hoerner's form factor, and the drag of a blunt rear.
/// </summary>
internal sealed class AxialDrag : IForce
{
    // Base drag of a blunt rear on its area (Hoerner 1965, ch. 3, 0.029/sqrt(Cf) with Cf 0.05 on the base area).
    private const double BaseDrag = 0.13;

    private readonly double friction, form;

    public AxialDrag(ActionBody body, TowInput tow)
    {
        double rho = tow.WaterDensity;
        double thickness = (body.SemiAxes.Y + body.SemiAxes.Z) / (2 * body.SemiAxes.X);
        double factor = 1 + (1.5 * Math.Pow(thickness, 1.5)) + (7 * Math.Pow(Math.Min(thickness, 1), 3));
        friction = 0.5 * rho * PlateDrag.BlasiusFriction * Math.Sqrt(tow.KinematicViscosity / body.Length) * WettedArea(body) * factor;
        double rear = 0;
        foreach (TrailingEdge e in body.TrailingEdges) rear = Math.Max(rear, Math.PI / 4 * e.Height * e.Width);
        form = 0.5 * rho * BaseDrag * rear;
    }

    public ActionTerms Term => ActionTerms.AxialDrag;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        double along = motion.Velocity.X, u = Math.Abs(along);
        total.Force += new Vector3d(-along * ((friction * Math.Sqrt(u)) + (form * u)), 0, 0);
    }

    private static double WettedArea(ActionBody body)
    {
        double area = 0;

        // Ramanujan's first approximation for the outline of an ellipse.
        foreach (BodySection s in body.Sections)
        {
            double a = s.Height / 2, b = s.Width / 2;
            area += s.Length * Math.PI * ((3 * (a + b)) - Math.Sqrt(((3 * a) + b) * (a + (3 * b))));
        }

        return area;
    }
}
