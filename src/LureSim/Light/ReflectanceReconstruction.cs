using MathNet.Numerics.LinearAlgebra;

namespace LureSim.Light;

/// <summary>A smooth reflectance that has a given colour under D65.</summary>
/// <remarks>
/// Least hyperbolic-tangent slope squared, Burns 2020 (burns2020numerical): reflectance (tanh z + 1)/2 stays between 0 and 1
/// for any z; the z with the least sum of squared steps is found whose colour is the one given. Newton's method on the
/// Lagrangian, with step halving. Endless spectra share one colour (metamers): a measured spectrum is always better.
/// </remarks>
public static class ReflectanceReconstruction
{
    private const int MaximumIterations = 100;
    private const double Tolerance = 1e-8; // residual in tristimulus units and in the gradient

    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;

    /// <summary>The smoothest reflectance of an sRGB colour.</summary>
    /// <param name="colour">The colour under D65.</param>
    /// <returns>Reflectance between 0 and 1 on <see cref="WavelengthGrid.Visible"/>.</returns>
    /// <remarks>Pure black and pure white, which no finite z reaches, give reflectance 0.0001 and 0.9999.</remarks>
    public static Spectrum FromSrgb(Srgb colour)
    {
        if (colour is { Red: 0, Green: 0, Blue: 0 })
            return Spectrum.Constant(Grid, 1e-4);
        if (colour is { Red: 255, Green: 255, Blue: 255 })
            return Spectrum.Constant(Grid, 1.0 - 1e-4);
        (double r, double g, double b) = colour.ToLinear();

        // A channel at exactly 0 or 1 lies on the gamut's edge; a small inset keeps z finite and moves no 8-bit value.
        const double Inset = 1e-4;
        return FromLinear(Math.Clamp(r, Inset, 1.0 - Inset), Math.Clamp(g, Inset, 1.0 - Inset), Math.Clamp(b, Inset, 1.0 - Inset))
            ?? throw new InvalidOperationException($"No reflectance was found for {colour.Hex}.");
    }

    private static Spectrum? FromLinear(double red, double green, double blue)
    {
        int n = Grid.Count;
        Matrix<double> toRgb = Matrix<double>.Build.Dense(3, n);
        double norm = Colorimetry.D65.Dot(Colorimetry.YBar) / Grid.StepNm;
        for (int i = 0; i < n; i++)
        {
            double d = Colorimetry.D65[i] / norm;
            (double r, double g, double b) = Srgb.LinearFrom(new Xyz(d * Colorimetry.XBar[i], d * Colorimetry.YBar[i], d * Colorimetry.ZBar[i]));
            (toRgb[0, i], toRgb[1, i], toRgb[2, i]) = (r, g, b);
        }

        // Unknowns: z (n) and three multipliers. F = [D z + diag(sech^2 z / 2) T' m ; T (tanh z + 1)/2 - rgb].
        Vector<double> unknowns = Vector<double>.Build.Dense(n + 3);
        double grey = (red + green + blue) / 3.0;
        double start = Math.Atanh((2.0 * grey) - 1.0);
        for (int i = 0; i < n; i++)
            unknowns[i] = start;

        Vector<double> function = Vector<double>.Build.Dense(n + 3);
        Residual(toRgb, red, green, blue, unknowns, function);
        double size = function.L2Norm();
        for (int iteration = 0; iteration < MaximumIterations && size > Tolerance; iteration++)
        {
            Vector<double> step = Jacobian(toRgb, unknowns).Solve(-function);
            double share = 1.0;
            while (true)
            {
                Vector<double> trial = unknowns + (share * step);
                Residual(toRgb, red, green, blue, trial, function);
                double trialSize = function.L2Norm();
                if (trialSize < size || share < 1e-3)
                {
                    (unknowns, size) = (trial, trialSize);
                    break;
                }

                share *= 0.5;
            }
        }

        if (!(size <= 1e-5))
            return null;
        return new Spectrum(Grid, [.. Enumerable.Range(0, n).Select(i => 0.5 * (Math.Tanh(unknowns[i]) + 1.0))]);
    }

    private static void Residual(Matrix<double> toRgb, double red, double green, double blue, Vector<double> u, Vector<double> f)
    {
        int n = Grid.Count;
        (f[n], f[n + 1], f[n + 2]) = (-red, -green, -blue);
        for (int i = 0; i < n; i++)
        {
            double tanh = Math.Tanh(u[i]);
            double reflectance = 0.5 * (tanh + 1.0);
            double slope = 0.5 * (1.0 - (tanh * tanh));
            f[i] = (i > 0 ? 2.0 * (u[i] - u[i - 1]) : 0.0)
                + (i < n - 1 ? 2.0 * (u[i] - u[i + 1]) : 0.0)
                + (slope * ((toRgb[0, i] * u[n]) + (toRgb[1, i] * u[n + 1]) + (toRgb[2, i] * u[n + 2])));
            for (int k = 0; k < 3; k++)
                f[n + k] += toRgb[k, i] * reflectance;
        }
    }

    private static Matrix<double> Jacobian(Matrix<double> toRgb, Vector<double> u)
    {
        int n = Grid.Count;
        Matrix<double> jacobian = Matrix<double>.Build.Dense(n + 3, n + 3);
        for (int i = 0; i < n; i++)
        {
            double tanh = Math.Tanh(u[i]);
            double slope = 0.5 * (1.0 - (tanh * tanh));
            double multiplied = (toRgb[0, i] * u[n]) + (toRgb[1, i] * u[n + 1]) + (toRgb[2, i] * u[n + 2]);
            jacobian[i, i] = (i is 0 || i == n - 1 ? 2.0 : 4.0) - (2.0 * tanh * slope * multiplied);
            if (i > 0)
                jacobian[i, i - 1] = -2.0;
            if (i < n - 1)
                jacobian[i, i + 1] = -2.0;
            for (int k = 0; k < 3; k++)
                jacobian[i, n + k] = jacobian[n + k, i] = slope * toRgb[k, i];
        }

        return jacobian;
    }
}
