using LureSim.Hydrodynamics;

namespace LureSim.Swimming;

/// <summary>Normal force of a low-aspect-ratio plate, the diving lip.</summary>
public static class LipPlate
{
    /// <summary>
    /// C_N on one face by the incidence. Attached: K_p sin a cos a + K_v sin^2 a with the potential slope K_p of Helmbold 1942, 2 pi AR/(2 + sqrt(AR^2 + 4)), and
    /// the cross flow over the side edges (Polhamus 1966 in its low-aspect form). Separated: the Kirchhoff-Rayleigh plate, scaled to 1.17 broadside.
    /// The stall lies at 15 (1 + 1/AR) degrees, at most 52: chosen so that the greatest downward coefficient at AR 2 agrees with the flume figure 0.82.
    /// </summary>
    /// <param name="sine">Sine of the angle between flow and plate, 0 to 1.</param>
    /// <param name="aspectRatio">Width^2 over area, 0.1 to 6.</param>
    public static double NormalCoefficient(double sine, double aspectRatio)
    {
        double s = Math.Clamp(sine, 0, 1);
        double c = Math.Sqrt(1 - (s * s));
        double potential = 2 * Math.PI * aspectRatio / (2 + Math.Sqrt((aspectRatio * aspectRatio) + 4));
        double attached = (potential * s * c) + (PlateDrag.Broadside * s * s);
        double separated = PlateDrag.Broadside * (4 + Math.PI) * s / (4 + (Math.PI * s));
        double stall = Math.Clamp(15 * (1 + (1 / aspectRatio)), 15, 52) * Math.PI / 180;
        double incidence = Math.Asin(s);
        double share = 0.5 * (1 + Math.Tanh((incidence - stall) / 0.07));

        // Separation never adds force.
        return attached + (share * Math.Min(0, separated - attached));
    }
}
