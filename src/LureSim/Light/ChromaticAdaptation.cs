using MathNet.Numerics.LinearAlgebra;

namespace LureSim.Light;

/// <summary>Full von Kries adaptation of the human eye in the CAT16 sensor space.</summary>
/// <remarks>
/// Source: Li et al. 2017 (li2017comprehensive), matrix M16. The degree of adaptation is 1: the eye takes the local
/// white as white. In the strongly coloured light of deep or stained water real adaptation is less than complete, so
/// this is the bound 'as neutral as it can look'; the unadapted view is the other bound.
/// </remarks>
public static class ChromaticAdaptation
{
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
