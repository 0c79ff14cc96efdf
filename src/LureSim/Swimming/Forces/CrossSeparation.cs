using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>
/// What separation takes from the moment that turns a flat section broadside. In potential flow a section of added masses m_y and m_z is rolled by (m_z - m_y) v w (part of Kirchhoff's
/// equations); behind a real section across the flow the water has parted from its edges. The moment of a plate in free-streamline flow, its normal force
/// going by (4 + pi) s/(4 + pi s) and its centre of pressure standing 3/4 c/(4 + pi s) of the chord off the middle (s and c of the incidence; Rayleigh 1876; Lamb 1932, art. 77), is 10 %
/// of the potential one at 45 degrees.
/// </summary>
internal sealed class CrossSeparation : IForce
{
    private readonly double difference;

    /// <summary>The moment for a body or a part of one.</summary>
    /// <param name="flatness">Water that it carries as it moves sideways less that as it moves up (kg).</param>
    public CrossSeparation(double flatness) => difference = (1 - LeftShare) * flatness;

    /// <summary>Share of the potential moment that is left, from both formulas at 45 degrees.</summary>
    public static double LeftShare { get; } = Left();

    public ActionTerms Term => ActionTerms.Separation;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        // Kirchhoff's p x v about the long axis is (m_y - m_z) v_y v_z.
        Vector3d v = motion.Velocity;
        total.Moment += new Vector3d(-difference * v.Y * v.Z, 0, 0);
    }

    // On rho/2 V^2 c^2: normal force times arm against pi/2 s c.
    private static double Left()
    {
        double s = Math.Sqrt(0.5), pressed = PlateDrag.Broadside * (4 + Math.PI) * s / (4 + (Math.PI * s)), arm = 0.75 * s / (4 + (Math.PI * s));
        return pressed * arm / (Math.PI / 2 * s * s);
    }
}
