using MathNet.Numerics.LinearAlgebra;

namespace LureSim.Decision.Observations;

/// <summary>
/// A figure of a run as a smooth function of the inputs, fitted to a few dozen runs: full second order in those that matter most and first order in the rest (response
/// surface: Box and Wilson 1951, box1951experimental). The scatter of the runs about it counts as error of the prediction.
/// </summary>
internal sealed class ResponseSurface
{
    // A little of a ridge keeps inputs that do not vary from mattering.
    private const double Ridge = 1e-3;

    private readonly int second;
    private readonly double[] coefficients;

    private ResponseSurface(int second, double[] coefficients, double scatter)
    {
        this.second = second;
        this.coefficients = coefficients;
        Scatter = scatter;
    }

    /// <summary>Standard deviation of the runs about the surface.</summary>
    public double Scatter { get; }

    /// <summary>Coefficients that a surface has.</summary>
    /// <param name="inputs">Inputs.</param>
    /// <param name="second">Inputs, the first ones, that count to second order.</param>
    public static int Terms(int inputs, int second) => 1 + inputs + (second * (second + 1) / 2);

    /// <summary>Fits a surface by weighted least squares.</summary>
    /// <param name="points">Inputs, standard normal numbers, one row a run.</param>
    /// <param name="values">The figure of each run, finite.</param>
    /// <param name="weights">Weight of each run, above 0.</param>
    /// <param name="second">Inputs, the first ones, that count to second order.</param>
    public static ResponseSurface Fit(IReadOnlyList<double[]> points, IReadOnlyList<double> values, IReadOnlyList<double> weights, int second)
    {
        int n = points.Count, terms = Terms(points[0].Length, second);
        Matrix<double> x = Matrix<double>.Build.Dense(n + terms, terms);
        Vector<double> y = Vector<double>.Build.Dense(n + terms);
        double[] row = new double[terms];
        double total = weights.Sum();
        for (int i = 0; i < n; i++)
        {
            double root = Math.Sqrt(weights[i]);
            Row(points[i], second, row);
            for (int t = 0; t < terms; t++) x[i, t] = root * row[t];
            y[i] = root * values[i];
        }

        for (int t = 1; t < terms; t++) x[n + t, t] = Math.Sqrt(Ridge * total);
        double[] fitted = x.QR().Solve(y).ToArray();
        double square = 0;
        for (int i = 0; i < n; i++)
        {
            Row(points[i], second, row);
            double off = values[i] - Dot(row, fitted);
            square += weights[i] * off * off;
        }

        // Weighted scatter; the coefficients take their degrees of freedom.
        double spare = Math.Max(1, n - terms);
        return new ResponseSurface(second, fitted, Math.Sqrt(square / total * n / spare));
    }

    /// <summary>The figure at some inputs.</summary>
    public double At(ReadOnlySpan<double> point)
    {
        double sum = coefficients[0];
        int inputs = point.Length, t = 1;
        for (int i = 0; i < inputs; i++) sum += coefficients[t++] * point[i];
        for (int i = 0; i < second; i++)
        {
            for (int j = i; j < second; j++) sum += coefficients[t++] * (i == j ? (point[i] * point[i]) - 1 : point[i] * point[j]);
        }

        return sum;
    }

    /// <summary>Slope of the first order by an input, at the middle.</summary>
    public double Slope(int input) => coefficients[1 + input];

    // Hermite polynomials: independent of each other for standard normal inputs.
    private static void Row(double[] point, int second, double[] row)
    {
        int t = 0;
        row[t++] = 1;
        foreach (double value in point) row[t++] = value;
        for (int i = 0; i < second; i++)
        {
            for (int j = i; j < second; j++) row[t++] = i == j ? (point[i] * point[i]) - 1 : point[i] * point[j];
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
