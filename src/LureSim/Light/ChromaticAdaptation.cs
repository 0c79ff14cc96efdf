using MathNet.Numerics.LinearAlgebra;

namespace LureSim.Light;

/// <summary>Von Kries adaptation of the human eye in the CAT16 sensor space, complete or in part.</summary>
/// <remarks>
/// Source: Li et al. 2017 (li2017comprehensive), matrix M16. Complete adaptation takes the local white as white; a camera balanced on a white card does the
/// same. In the strongly coloured light of deep or stained water a person's adaptation is far from complete (<see cref="Degree"/>).
/// </remarks>
public static class ChromaticAdaptation
{
    // CIECAM16: surround factor of an average surround, and the grey world that the eye adapts to.
    private const double Surround = 1.0;
    private const double BackgroundShare = 0.2;

    // Smet et al. 2017: middle and covariance of a Gaussian in ln r and ln b of MacLeod and Boynton, r = L/(L + M), b = S/(L + M), cones of
    // Hunt, Pointer and Estevez with equal energy at r = b = 0.5; the covariance is that of their table over its exponent.
    private const double NeutralR = -0.71025181;
    private const double NeutralB = -0.63627042;
    private const double VarianceR = 0.0067624916;
    private const double VarianceB = 1.5241131;
    private const double Covariance = -0.0471396908;

    /// <summary>
    /// Degree to which a person adapts in colour to a light, 0 to 1: D = F (1 - (1/3.6) exp(-(L_A + 42)/92)) exp(-q/2), with L_A a fifth of the luminance of white there. The first
    /// factor is that of CIECAM16 for an average surround (Li et al. 2017, li2017comprehensive), by the level of the light alone. The second is the fall with the light's colour
    /// that Smet et al. 2017 (smet2017study) measured with memory colours under neutral to strongly coloured lights: q is the squared distance, in standard deviations, from a white of about 6200 K.
    /// Their own greatest degree, 0.65 in a dark surround, is not taken over.
    /// </summary>
    /// <param name="white">Tristimulus values of a perfect white in the light, any unit.</param>
    /// <param name="luminance">Luminance of that white (cd/m2), 0 or more.</param>
    /// <returns>0 for no light.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The luminance is negative or not finite.</exception>
    public static double Degree(Xyz white, double luminance)
    {
        _ = Guard.InRange(luminance, 0.0, 1e9, nameof(luminance), "cd/m2");
        if (!(white.Y > ColourKernel.NoLight))
            return 0.0;
        double byLevel = Surround * (1.0 - (Math.Exp(-((BackgroundShare * luminance) + 42.0) / 92.0) / 3.6));
        double l = (0.38971 * white.X) + (0.68898 * white.Y) - (0.07868 * white.Z);
        double m = (-0.22981 * white.X) + (1.18340 * white.Y) + (0.04641 * white.Z);
        if (!(l > 0.0 && m > 0.0 && white.Z > 0.0))
            return 0.0;
        double r = Math.Log(l / (l + m)) - NeutralR, b = Math.Log(white.Z / (l + m)) - NeutralB;
        double q = ((VarianceB * r * r) - (2.0 * Covariance * r * b) + (VarianceR * b * b)) / ((VarianceR * VarianceB) - (Covariance * Covariance));
        return byLevel * Math.Exp(-0.5 * q);
    }

    // Rows of M16.
    private static readonly double[] M16 =
    [
        0.401288, 0.650173, -0.051461,
        -0.250268, 1.204414, 0.045854,
        -0.002079, 0.048952, 0.953127,
    ];

    private static readonly double[] M16Inverse = Invert(M16);

    /// <summary>The stimulus that under the target white looks as this one does under the source white.</summary>
    /// <param name="value">The stimulus, relative to the source white.</param>
    /// <param name="sourceWhite">White of the light the eye is adapted to.</param>
    /// <param name="targetWhite">White of the light in which the result is shown, D65 for a screen.</param>
    /// <returns>The corresponding stimulus; black when the source white has no luminance.</returns>
    public static Xyz Cat16(Xyz value, Xyz sourceWhite, Xyz targetWhite) => Adaptation.Between(sourceWhite, targetWhite).Apply(value);

    /// <summary>The adaptation from one white to another as one matrix, for many stimuli under the same light.</summary>
    internal readonly struct Adaptation
    {
        private readonly Xyz first;
        private readonly Xyz second;
        private readonly Xyz third;

        private Adaptation(Xyz first, Xyz second, Xyz third)
        {
            this.first = first;
            this.second = second;
            this.third = third;
        }

        /// <summary>The adaptation between two whites; the zero matrix when the source has no luminance (<see cref="ColourKernel.NoLight"/>).</summary>
        public static Adaptation Between(Xyz sourceWhite, Xyz targetWhite)
        {
            if (!(sourceWhite.Y > ColourKernel.NoLight))
                return default;
            (double rs, double gs, double bs) = Multiply(M16, sourceWhite.X, sourceWhite.Y, sourceWhite.Z);
            (double rt, double gt, double bt) = Multiply(M16, targetWhite.X, targetWhite.Y, targetWhite.Z);

            // A white in spectral light can leave a sensor of the sharpened space at or below zero: that sensor carries no
            // signal, so it is floored at a ten-thousandth of the white's luminance.
            double floor = 1e-4 * sourceWhite.Y;
            double r = rt / Math.Max(rs, floor), g = gt / Math.Max(gs, floor), b = bt / Math.Max(bs, floor);
            Xyz Row(int at)
            {
                double x = M16Inverse[at] * r, y = M16Inverse[at + 1] * g, z = M16Inverse[at + 2] * b;
                return new Xyz(
                    (x * M16[0]) + (y * M16[3]) + (z * M16[6]),
                    (x * M16[1]) + (y * M16[4]) + (z * M16[7]),
                    (x * M16[2]) + (y * M16[5]) + (z * M16[8]));
            }

            return new Adaptation(Row(0), Row(3), Row(6));
        }

        /// <summary>
        /// The adaptation of an eye that came from one white to another and has adapted to it in part: each sensor's gain lies between that of an eye still used to the first white, at the same
        /// brightness, and that of complete adaptation (CIECAM16's mixture).
        /// </summary>
        /// <param name="white">White of the light there.</param>
        /// <param name="before">White of the light before.</param>
        /// <param name="targetWhite">White of the light in which the result is shown.</param>
        /// <param name="degree">Degree, 0 to 1.</param>
        public static Adaptation InPart(Xyz white, Xyz before, Xyz targetWhite, double degree)
        {
            if (!(white.Y > ColourKernel.NoLight && before.Y > ColourKernel.NoLight))
                return default;
            Adaptation complete = Between(white, targetWhite), none = Between((white.Y / before.Y) * before, targetWhite);
            return new Adaptation(Mix(complete.first, none.first), Mix(complete.second, none.second), Mix(complete.third, none.third));

            Xyz Mix(Xyz one, Xyz other) => (degree * one) + ((1.0 - degree) * other);
        }

        /// <summary>The stimulus under the target white.</summary>
        public Xyz Apply(Xyz value) => new(
            (first.X * value.X) + (first.Y * value.Y) + (first.Z * value.Z),
            (second.X * value.X) + (second.Y * value.Y) + (second.Z * value.Z),
            (third.X * value.X) + (third.Y * value.Y) + (third.Z * value.Z));
    }

    private static (double First, double Second, double Third) Multiply(double[] m, double x, double y, double z) => (
        (m[0] * x) + (m[1] * y) + (m[2] * z),
        (m[3] * x) + (m[4] * y) + (m[5] * z),
        (m[6] * x) + (m[7] * y) + (m[8] * z));

    private static double[] Invert(double[] m)
    {
        Matrix<double> matrix = Matrix<double>.Build.DenseOfRowMajor(3, 3, m);
        return matrix.Inverse().ToRowMajorArray();
    }
}
