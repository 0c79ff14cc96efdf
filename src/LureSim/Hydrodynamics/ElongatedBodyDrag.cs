namespace LureSim.Hydrodynamics;

/// <summary>
/// Drag of a body in the form that the engine evaluates: CdA U = c0 nu + c1 sqrt(nu U) + c2 U, in force = 1/2 rho CdA U^2. The three terms are Stokes drag,
/// friction of a laminar boundary layer and form drag; the sum is regular at rest and its slope is analytic.
/// </summary>
/// <param name="Stokes">c0 (m).</param>
/// <param name="Friction">c1 (m3/2).</param>
/// <param name="Form">c2 (m2): drag area of everything that does not depend on the Reynolds number.</param>
public readonly record struct ElongatedBodyDrag(double Stokes, double Friction, double Form)
{
    // Below it the friction's slope has no limit (m/s); nothing moves there.
    private const double SlowestSpeed = 1e-9;

    /// <summary>
    /// A non-spherical body: Cd = 8/(Re sqrt(f_perp)) + 16/(Re sqrt(f)) + 3/(sqrt(Re) f^(3/4)) + 0.42 x 10^(0.4 (-log10 f)^0.2)/f_perp, reference area and Re by
    /// the volume-equivalent sphere. Hoelzer &amp; Sommerfeld 2008, Powder Technol. 184:361, eq. 10 (hoelzer2008new), with the lengthwise sphericity replaced by
    /// the crosswise f_perp, as the authors allow.
    /// </summary>
    /// <param name="equivalentDiameter">Diameter of the sphere of the same volume (m), above 0.</param>
    /// <param name="sphericity">f, surface of that sphere over surface of the body, above 0 to 1.</param>
    /// <param name="crosswiseSphericity">f_perp, area of that sphere over the body's area projected along the flow, above 0.</param>
    public static ElongatedBodyDrag HoelzerSommerfeld2008(double equivalentDiameter, double sphericity, double crosswiseSphericity)
    {
        double area = Math.PI * equivalentDiameter * equivalentDiameter / 4;
        return new(
            area / equivalentDiameter * ((8 / Math.Sqrt(crosswiseSphericity)) + (16 / Math.Sqrt(sphericity))),
            area / Math.Sqrt(equivalentDiameter) * 3 / Math.Pow(sphericity, 0.75),
            area * 0.42 * Math.Pow(10, 0.4 * Math.Pow(Math.Max(0, -Math.Log10(sphericity)), 0.2)) / crosswiseSphericity);
    }

    /// <summary>The same body with a part that only has form drag.</summary>
    /// <param name="dragArea">Cd A of the part (m2).</param>
    public ElongatedBodyDrag With(double dragArea) => this with { Form = Form + dragArea };

    /// <summary>CdA U (m3/s).</summary>
    /// <param name="speed">U (m/s), 0 or more.</param>
    /// <param name="kinematicViscosity">nu (m2/s), above 0.</param>
    /// <param name="slope">Derivative with respect to U (m2).</param>
    public double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double u = Math.Max(speed, SlowestSpeed);
        double root = Math.Sqrt(u * kinematicViscosity);
        slope = (0.5 * Friction * root / u) + Form;
        return (Stokes * kinematicViscosity) + (Friction * root) + (Form * u);
    }
}
