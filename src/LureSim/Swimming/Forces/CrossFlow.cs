using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Drag across the body, strip by strip along its bent axis, and damping of the roll.</summary>
internal sealed class CrossFlow : IForce
{
    // Flat plate that turns about its middle line, strip by strip with Cd 1.2 (assumed; Hoerner's plate across the flow is 1.98 for an endless one and 1.17 for a short one).
    private const double RollDrag = 1.2;
    private const double RollFriction = 0.01;

    private readonly Strip[] strips;

    /// <summary>The drag of a body or of a part of one.</summary>
    /// <param name="body">The body or the part, whose strips are meant.</param>
    /// <param name="axis">Its axis.</param>
    /// <param name="slenderness">Length over thickness of the whole body (<see cref="Slenderness"/>).</param>
    /// <param name="tow">The water.</param>
    public CrossFlow(ActionBody body, BentAxis axis, double slenderness, TowInput tow)
    {
        double rho = tow.WaterDensity, nu = tow.KinematicViscosity;
        strips = new Strip[body.Sections.Count];
        double finite = CylinderDrag.FiniteLengthShare(slenderness);
        for (int i = 0; i < strips.Length; i++)
        {
            BodySection s = body.Sections[i];
            Vector3d at = new(s.Position, 0, 0);
            double size = Math.Max(1e-5, 0.5 * (s.Height + s.Width));
            double difference = Math.Abs(Math.Pow(s.Height, 4) - Math.Pow(s.Width, 4));
            strips[i] = new(
                axis.Point(at),
                axis.Tangent(s.Position),
                0.5 * rho * finite * s.Height * s.Length,
                0.5 * rho * finite * s.Width * s.Length,
                CylinderDrag.NormalViscous * Math.Sqrt(nu / size),
                0.5 * size,
                rho * s.Length * ((RollDrag * difference / 64) + (RollFriction * Math.PI * size * size * size * size / 16)));
        }
    }

    public ActionTerms Term => ActionTerms.CrossFlow;

    /// <summary>Length of a body over its mean thickness, 1 or more.</summary>
    public static double Slenderness(ActionBody body)
    {
        double length = 0, area = 0;
        foreach (BodySection s in body.Sections)
        {
            length += s.Length;
            area += s.Length * 0.5 * (s.Height + s.Width);
        }

        return area > 0 ? Math.Max(1, length * length / area) : 1;
    }

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        // Locals: the sum could stand anywhere in memory, and the loop would read and write it for each strip.
        Vector3d v = motion.Velocity, w = motion.TurnRate;
        Wrench sum = total;
        double roll = Math.Abs(w.X) * w.X;
        foreach (ref readonly Strip s in strips.AsSpan())
        {
            Vector3d at = v + Vector3d.Cross(w, s.Position);
            Vector3d normal = at - (Vector3d.Dot(at, s.Tangent) * s.Tangent);
            double size = normal.Length;

            // |V| (1.1 + 4/sqrt(Re)) on height for the sideways part and on width for the vertical one.
            double wet = motion.Wet(s.Position, s.Radius);
            double factor = wet * ((CylinderDrag.NormalForm * size) + (s.Viscous * Math.Sqrt(size)));
            sum.Add(new(-factor * s.AcrossHeight * normal.X, -factor * s.AcrossHeight * normal.Y, -factor * s.AcrossWidth * normal.Z), s.Position);
            sum.Moment += new Vector3d(-wet * s.Roll * roll, 0, 0);
        }

        total = sum;
    }

    private readonly record struct Strip(Vector3d Position, Vector3d Tangent, double AcrossHeight, double AcrossWidth, double Viscous, double Radius, double Roll);
}
