namespace LureSim.Hydrodynamics;

/// <summary>Drag of thin plates.</summary>
public static class PlateDrag
{
    /// <summary>Cd of a disc or a square plate broadside to the flow, on its area (dimensionless): NACA TR 513 has 1.16 and 1.17; Hoerner 1965, ch. 3 (hoerner1965fluid).</summary>
    public const double Broadside = 1.17;

    // Growth of the coefficient with the aspect ratio a, in a + 1/a, after Hoerner 1965, ch. 3: 1.10 + 0.02 (a + 1/a) there.
    private const double ByAspect = 0.02;

    // From here on a plate counts as a strip: 1.93, where a strip without ends has 1.98 (Hoerner 1965, ch. 3).
    private const double MostAspect = 40;

    /// <summary>
    /// Drag coefficient of a rectangular plate across the flow, on its area: 1.13 + 0.02 (a + 1/a), the form of Hoerner 1965, ch. 3, with 1.13 for his 1.10, so that a
    /// square has <see cref="Broadside"/>; a disc counts as a square. Within 3 % of published plates of aspect ratio 1 to 20.
    /// </summary>
    /// <param name="aspectRatio">Longer over shorter side, or its inverse, 1e-6 to 1e6; a plate of more than 40 counts as one of 40.</param>
    /// <exception cref="ArgumentOutOfRangeException">The aspect ratio is outside its range.</exception>
    public static double Across(double aspectRatio)
    {
        Guard.InRange(aspectRatio, 1e-6, 1e6);
        double aspect = Math.Min(Math.Max(aspectRatio, 1 / aspectRatio), MostAspect);
        return Broadside + (ByAspect * (aspect + (1 / aspect) - 2));
    }

    /// <summary>Drag area of a plate at an incidence by the flow across it (m2): Cd A sin^3 a with the coefficient of <see cref="Across"/>, of which one sine is the part of the normal force along the flow.</summary>
    /// <param name="area">A, area of one face (m2).</param>
    /// <param name="aspectRatio">Longer over shorter side, or its inverse, 1e-6 to 1e6; a plate of more than 40 counts as one of 40.</param>
    /// <param name="sine">Sine of the angle a between plate and flow, 0 to 1.</param>
    public static double AreaAtIncidence(double area, double aspectRatio, double sine) => Across(aspectRatio) * area * sine * sine * sine;

    /// <summary>
    /// Dynamic pressure in the wake of a body over that of the stream, from the momentum that the body has taken out: with C its drag coefficient on the wake's area,
    /// x (1 - x) = C/2 for the speed x, and x^2 is returned.
    /// </summary>
    /// <param name="dragCoefficient">C, 0 to 0.5; above, the wake is taken as at 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">The coefficient is negative.</exception>
    public static double WakePressureShare(double dragCoefficient)
    {
        Guard.InRange(dragCoefficient, 0, 100);
        double speed = 0.5 * (1 + Math.Sqrt(Math.Max(0, 1 - (2 * dragCoefficient))));
        return speed * speed;
    }
}
