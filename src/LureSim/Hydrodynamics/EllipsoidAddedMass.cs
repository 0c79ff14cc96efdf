namespace LureSim.Hydrodynamics;

/// <summary>Added mass of an ellipsoid with three different axes in unbounded ideal fluid.</summary>
public static class EllipsoidAddedMass
{
    /// <summary>
    /// Coefficients k = alpha0/(2 - alpha0) per displaced mass along the axes, and added moments of inertia about them per displaced mass. Lamb 1932,
    /// Hydrodynamics, art. 114-115, with his integrals through Carlson's R_D: alpha0 = (2/3) a b c R_D(b^2, c^2, a^2) (Carlson 1979, Numer. Math. 33:1).
    /// </summary>
    /// <param name="a">Semi-axis along x (m), above 0.</param>
    /// <param name="b">Semi-axis along y (m), above 0.</param>
    /// <param name="c">Semi-axis along z (m), above 0.</param>
    /// <param name="result">Six numbers: k_x, k_y, k_z (dimensionless), then J_x, J_y, J_z per displaced mass (m2).</param>
    /// <exception cref="ArgumentOutOfRangeException">A semi-axis is not positive, or the span is too short.</exception>
    public static void Coefficients(double a, double b, double c, Span<double> result)
    {
        Guard.Positive(a);
        Guard.Positive(b);
        Guard.Positive(c);
        ArgumentOutOfRangeException.ThrowIfLessThan(result.Length, 6, nameof(result));
        double a2 = a * a, b2 = b * b, c2 = c * c;
        double factor = 2.0 / 3.0 * a * b * c;
        double alpha = factor * CarlsonRD(b2, c2, a2);
        double beta = factor * CarlsonRD(c2, a2, b2);
        double gamma = factor * CarlsonRD(a2, b2, c2);
        result[0] = alpha / (2 - alpha);
        result[1] = beta / (2 - beta);
        result[2] = gamma / (2 - gamma);
        result[3] = Rotation(b2, c2, beta, gamma);
        result[4] = Rotation(c2, a2, gamma, alpha);
        result[5] = Rotation(a2, b2, alpha, beta);
    }

    /// <summary>Carlson's symmetric elliptic integral R_D(x, y, z) by duplication to machine accuracy. Carlson 1979, Numer. Math. 33:1.</summary>
    /// <param name="x">0 or more; at most one of x and y is 0.</param>
    /// <param name="y">0 or more.</param>
    /// <param name="z">Above 0.</param>
    public static double CarlsonRD(double x, double y, double z)
    {
        double sum = 0, scale = 1;
        for (int i = 0; i < 60; i++)
        {
            double mean = (x + y + (3 * z)) / 5;
            double dx = 1 - (x / mean), dy = 1 - (y / mean), dz = 1 - (z / mean);
            if (Math.Max(Math.Abs(dx), Math.Max(Math.Abs(dy), Math.Abs(dz))) < 1e-3)
            {
                double ea = dx * dy, eb = dz * dz, ec = ea - eb, ed = ea - (6 * eb), ee = ed + (2 * ec);
                double s = (ed * ((-3.0 / 14) + (9.0 / 88 * ed) - (9.0 / 52 * dz * ee)))
                    + (dz * ((ee / 6) + (dz * ((-9.0 / 22 * ec) + (dz * 3.0 / 26 * ea)))));
                return (3 * sum) + (scale * (1 + s) / (mean * Math.Sqrt(mean)));
            }

            double rx = Math.Sqrt(x), ry = Math.Sqrt(y), rz = Math.Sqrt(z);
            double lambda = (rx * (ry + rz)) + (ry * rz);
            sum += scale / (rz * (z + lambda));
            scale /= 4;
            x = (x + lambda) / 4;
            y = (y + lambda) / 4;
            z = (z + lambda) / 4;
        }

        return double.NaN;
    }

    // J = (1/5) (p - q)^2 (g_q - g_p)/(2 (p - q) + (p + q)(g_p - g_q)), with p, q the squared semi-axes across and g_p, g_q their integrals; 0 for a round section.
    private static double Rotation(double p, double q, double gp, double gq)
    {
        double difference = p - q;
        if (Math.Abs(difference) <= 1e-7 * (p + q)) return 0;
        return difference * difference * (gq - gp) / (5 * ((2 * difference) + ((p + q) * (gp - gq))));
    }
}
