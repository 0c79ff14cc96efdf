using LureSim.Hydrodynamics;

namespace LureSim.Swimming.Bodies;

/// <summary>Normal force of a low-aspect-ratio plate, the diving lip, and its place.</summary>
public static class LipPlate
{
    /// <summary>Strouhal number by the width of the vortices behind a flat plate across the flow: 0.146 (Fage &amp; Johansen 1927, Proc. R. Soc. A 116:170; from memory).</summary>
    public const double Strouhal = 0.146;

    /// <summary>
    /// C_N on one face by the incidence. Attached: K_p sin a cos a + K_v sin^2 a with the potential slope K_p of Helmbold 1942, 2 pi AR/(2 + sqrt(AR^2 + 4)), and
    /// the cross flow over the side edges (Polhamus 1966 in its low-aspect form). Separated: the Kirchhoff-Rayleigh plate, scaled to 1.17 broadside.
    /// The stall lies at 15 (1 + 1/AR) degrees, at most 52: chosen so that the greatest downward coefficient at AR 2 agrees with the flume figure 0.82.
    /// </summary>
    /// <param name="sine">Sine of the angle between flow and plate, 0 to 1.</param>
    /// <param name="aspectRatio">Width^2 over area, 0.1 to 6.</param>
    public static double NormalCoefficient(double sine, double aspectRatio)
    {
        (double potential, double vortex, double separated, double share) = Parts(sine, aspectRatio);
        double attached = potential + vortex;

        // Separation never adds force.
        return attached + (share * Math.Min(0, separated - attached));
    }

    /// <summary>
    /// How far before the middle the normal force stands, as a share of the plate's extent along the flow. Attached: the potential part at a quarter of the chord, 0.25, the cross flow over
    /// the side edges in the middle. Separated: 3/4 c/(4 + pi s), s and c of the incidence (Rayleigh 1876; Lamb 1932, art. 77).
    /// </summary>
    /// <param name="sine">Sine of the angle between flow and plate, 0 to 1.</param>
    /// <param name="aspectRatio">Width^2 over area, 0.1 to 6.</param>
    public static double CentreOfPressure(double sine, double aspectRatio)
    {
        (double potential, double vortex, _, double share) = Parts(sine, aspectRatio);
        double s = Math.Clamp(sine, 0, 1), c = Math.Sqrt(1 - (s * s));
        double attached = s > 0 ? 0.25 * potential / (potential + vortex) : 0.25;
        return attached + (share * ((0.75 * c / (4 + (Math.PI * s))) - attached));
    }

    private static (double Potential, double Vortex, double Separated, double Share) Parts(double sine, double aspectRatio)
    {
        double s = Math.Clamp(sine, 0, 1);
        double c = Math.Sqrt(1 - (s * s));
        double slope = 2 * Math.PI * aspectRatio / (2 + Math.Sqrt((aspectRatio * aspectRatio) + 4));
        double stall = Math.Clamp(15 * (1 + (1 / aspectRatio)), 15, 52) * Math.PI / 180;
        double share = 0.5 * (1 + Math.Tanh((Math.Asin(s) - stall) / 0.07));
        return (slope * s * c, PlateDrag.Broadside * s * s, PlateDrag.Broadside * (4 + Math.PI) * s / (4 + (Math.PI * s)), share);
    }
}
