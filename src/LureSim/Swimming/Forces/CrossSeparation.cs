using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>
/// What separation takes from the moment that turns a flat section broadside. In potential flow a section of added masses m_y and m_z is rolled by (m_z - m_y) v w (part of Kirchhoff's
/// equations); behind a real section across the flow the water has parted from its edges. The moment of a plate in free-streamline flow, its normal force
/// going by (4 + pi) s/(4 + pi s) and its centre of pressure standing 3/4 c/(4 + pi s) of the chord off the middle (s and c of the incidence; Rayleigh 1876; Lamb 1932, art. 77), is 10 %
/// of the potential one at 45 degrees.
/// </summary>
/// <remarks>
/// Seen in a plane that the body passes through, its section starts from rest and moves across by s = x tan(incidence) (Allen &amp; Perkins 1951, NACA Report 1048): its wake
/// takes some way to form: half of the drag of a cylinder started at once is there after 0.6 radii (Sarpkaya 1966, from memory). The share of separation goes by s^2/(s^2 + s_h^2) with
/// s at the middle of the body and s_h 0.3 of the broad side of its section (the form is assumed). Bodies shorter than three broad sides keep the potential moment.
/// </remarks>
internal sealed class CrossSeparation : IForce
{
    // Broad sides of the section in the length from which on a body passes through a plane slice by slice; a shorter one is a wing, whose edges do their own (TrailingEdges).
    private const double LeastSlenderness = 3;

    // Way in broad sides of the section after which half of the wake has formed.
    private const double HalfFormed = 0.3;

    private readonly double difference, slenderness;

    /// <summary>The moment for a body or a part of one.</summary>
    /// <param name="flatness">Water that it carries as it moves sideways less that as it moves up (kg).</param>
    /// <param name="semiAxes">Half length, half width, half height of the whole body (m).</param>
    public CrossSeparation(double flatness, Vector3d semiAxes)
    {
        double broad = 2 * Math.Max(semiAxes.Y, semiAxes.Z);
        difference = 2 * semiAxes.X < LeastSlenderness * broad ? 0 : (1 - LeftShare) * flatness;
        slenderness = semiAxes.X / (HalfFormed * broad);
    }

    /// <summary>Share of the potential moment that is left, from both formulas at 45 degrees.</summary>
    public static double LeftShare { get; } = Left();

    public ActionTerms Term => ActionTerms.Separation;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        // Kirchhoff's p x v about the long axis is (m_y - m_z) v_y v_z.
        Vector3d v = motion.Velocity;
        double across = slenderness * slenderness * ((v.Y * v.Y) + (v.Z * v.Z)), along = v.X * v.X;
        if (across + along < 1e-24) return;
        total.Moment += new Vector3d(-difference * across / (across + along) * v.Y * v.Z, 0, 0);
    }

    // On rho/2 V^2 c^2: normal force times arm against pi/2 s c.
    private static double Left()
    {
        double s = Math.Sqrt(0.5), pressed = PlateDrag.Broadside * (4 + Math.PI) * s / (4 + (Math.PI * s)), arm = 0.75 * s / (4 + (Math.PI * s));
        return pressed * arm / (Math.PI / 2 * s * s);
    }
}
