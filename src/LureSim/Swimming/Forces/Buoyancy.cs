using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Buoyancy in the centre of the displaced volume; at the surface that of the slices under water.</summary>
internal sealed class Buoyancy : IForce
{
    private readonly double buoyancy;
    private readonly Vector3d centre;
    private readonly Slice[] slices;

    public Buoyancy(ActionBody body, TowInput tow)
    {
        buoyancy = tow.WaterDensity * body.Volume * tow.Gravity;
        centre = body.CentreOfBuoyancy;

        // Slices share the volume by their section, moved so that all of them together have the body's centre.
        double whole = body.Sections.Sum(Area);
        double middle = whole > 0 ? body.Sections.Sum(s => Area(s) * s.Position) / whole : 0;
        slices = [.. body.Sections.Where(s => Area(s) > 0).Select(s => new Slice(centre + new Vector3d(s.Position - middle, 0, 0), 0.25 * (s.Height + s.Width), Area(s) / whole))];
    }

    public ActionTerms Term => ActionTerms.Buoyancy;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        if (motion.SurfaceAbove is null || slices.Length == 0)
        {
            total.Add(buoyancy * motion.Up, centre);
            return;
        }

        foreach (ref readonly Slice s in slices.AsSpan()) total.Add(buoyancy * s.Share * motion.Wet(s.Place, s.Radius) * motion.Up, s.Place);
    }

    private static double Area(BodySection s) => s.Height * s.Width * s.Length;

    private readonly record struct Slice(Vector3d Place, double Radius, double Share);
}
