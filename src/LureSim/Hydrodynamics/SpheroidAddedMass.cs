namespace LureSim.Hydrodynamics;

/// <summary>Added mass of a prolate spheroid in unbounded ideal fluid.</summary>
public static class SpheroidAddedMass
{
    /// <summary>
    /// Coefficients k1 (along the axis) and k2 (across), per displaced mass. Lamb 1932, Hydrodynamics, art. 114-115.
    /// </summary>
    /// <param name="aspectRatio">Length over diameter, 1 or more.</param>
    /// <param name="axial">k1.</param>
    /// <param name="transverse">k2.</param>
    /// <exception cref="ArgumentOutOfRangeException">The aspect ratio is below 1.</exception>
    public static void Coefficients(double aspectRatio, out double axial, out double transverse)
    {
        Guard.InRange(aspectRatio, 1, 1e6);
        double e2 = 1 - (1 / (aspectRatio * aspectRatio));
        double alpha, beta;
        if (e2 < 1e-3)
        {
            // Series in e^2 about the sphere: the closed form cancels there.
            alpha = (2.0 / 3.0) * (1 - e2) * (1 + (3.0 / 5.0 * e2) + (3.0 / 7.0 * e2 * e2));
            beta = 1 - (alpha / 2);
        }
        else
        {
            double e = Math.Sqrt(e2);
            double half = 0.5 * Math.Log((1 + e) / (1 - e));
            alpha = 2 * (1 - e2) / (e2 * e) * (half - e);
            beta = (1 / e2) - ((1 - e2) / (2 * e2 * e) * 2 * half);
        }

        axial = alpha / (2 - alpha);
        transverse = beta / (2 - beta);
    }
}
