namespace LureSim.Hydrodynamics;

/// <summary>Drag of a smooth sphere.</summary>
public static class SphereDrag
{
    /// <summary>
    /// Cd of a ball at Re of 4e3 to 2e4, on pi d^2/4 (dimensionless): the level part of the standard curve, on which <see cref="CoefficientTimesSpeed"/>
    /// lies between 0.40 and 0.44. For a ball in the lee or in the side of a body, whose flow is not that of a free ball.
    /// </summary>
    public const double Plateau = 0.42;

    /// <summary>
    /// Cd U (m/s) with Cd = 24/Re (1 + 0.150 Re^0.681) + 0.407/(1 + 8710/Re), reference area pi d^2/4, written so that it is regular at rest:
    /// Cd U = 24 nu/d (1 + 0.150 Re^0.681) + 0.407 U Re/(Re + 8710). Brown &amp; Lawler 2003, J. Environ. Eng. 129:222 (brown2003sphere). Valid for Re below 2e5
    /// (before the drag crisis); it is not extended beyond.
    /// </summary>
    /// <param name="speed">U (m/s), 0 or more.</param>
    /// <param name="diameter">d (m), above 0.</param>
    /// <param name="kinematicViscosity">nu (m2/s), above 0.</param>
    /// <param name="slope">d(Cd U)/dU (dimensionless).</param>
    public static double CoefficientTimesSpeed(double speed, double diameter, double kinematicViscosity, out double slope)
    {
        double scale = diameter / kinematicViscosity;
        double reynolds = scale * speed;
        double power = reynolds > 0 ? Math.Pow(reynolds, 0.681) : 0;
        double denominator = reynolds + 8710;
        double viscous = reynolds > 1e-12 ? 24 * 0.15 * 0.681 * power / reynolds : 0;
        slope = viscous + (0.407 * ((2 * reynolds / denominator) - (reynolds * reynolds / (denominator * denominator))));
        return (24 / scale * (1 + (0.15 * power))) + (0.407 * speed * reynolds / denominator);
    }

    /// <summary>Frontal area of a ball of a volume (m2).</summary>
    /// <param name="volume">Volume (m3), 0 or more.</param>
    public static double FrontalArea(double volume)
    {
        double radius = Math.Cbrt(3 * volume / (4 * Math.PI));
        return Math.PI * radius * radius;
    }
}
