using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearRegression;
using MathNet.Numerics.Statistics;

namespace LureSim.Decision.Uncertainty;

/// <summary>How one input moves a figure.</summary>
/// <param name="Input">The input.</param>
/// <param name="RankCorrelation">Spearman's rank correlation with the figure, -1 to 1.</param>
/// <param name="Coefficient">Standardised coefficient of the rank regression on all inputs, about -1 to 1; its square is about the share of the spread that the input explains.</param>
public sealed record SpreadDriver(UncertainInput Input, double RankCorrelation, double Coefficient);

/// <summary>What moves a figure from draw to draw.</summary>
/// <param name="Drivers">The inputs that were drawn, the strongest first.</param>
/// <param name="Explained">Share of the variance of the figure's ranks that the regression explains (R squared), 0 to 1.</param>
/// <param name="Noise">
/// Size of a rank correlation below which it may be chance, at most 1: of k inputs without any influence the strongest passes it once in twenty times,
/// z/sqrt(n - 1) with z the normal quantile of 1 - 0.025/k.
/// </param>
public sealed record SpreadDrivers(IReadOnlyList<SpreadDriver> Drivers, double Explained, double Noise)
{
    /// <summary>Nothing moves it.</summary>
    public static SpreadDrivers None { get; } = new([], 0, 1);

    /// <summary>The strongest input, or null if none stands out from chance.</summary>
    public SpreadDriver? Decisive => Drivers.Count > 0 && Math.Abs(Drivers[0].RankCorrelation) > Noise ? Drivers[0] : null;

    /// <summary>
    /// Rank correlations and standardised rank regression (Iman and Conover 1979, iman1979use): ranks in place of values, so that any monotone influence counts
    /// and 'never' (infinite) may be among the values.
    /// </summary>
    /// <param name="draws">The draws.</param>
    /// <param name="figure">The figure, one a draw; none is NaN.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There are not as many values as draws.</exception>
    public static SpreadDrivers Of(IReadOnlyList<UncertainDraw> draws, IReadOnlyList<double> figure)
    {
        ArgumentNullException.ThrowIfNull(draws);
        ArgumentNullException.ThrowIfNull(figure);
        int n = draws.Count;
        if (figure.Count != n)
            throw new ArgumentException("One value a draw.", nameof(figure));
        if (n < 3) return None;
        double[]? y = Standardised(figure);
        var inputs = new List<(UncertainInput Input, double[] Ranks)>();
        foreach (UncertainInput input in UncertainInputs.All)
        {
            if (Standardised([.. draws.Select(d => d.Values[(int)input])]) is { } ranks)
                inputs.Add((input, ranks));
        }

        double noise = inputs.Count == 0 ? 1 : Math.Min(1, Normal.InvCDF(0, 1, 1 - (0.025 / inputs.Count)) / Math.Sqrt(n - 1.0));
        if (y is null || inputs.Count == 0)
            return new SpreadDrivers([.. inputs.Select(i => new SpreadDriver(i.Input, 0, 0))], 0, noise);
        double[] simple = [.. inputs.Select(i => Math.Clamp(i.Ranks.Zip(y, (a, b) => a * b).Sum() / n, -1, 1))];
        double[] coefficients = simple;
        double explained = simple.Max(r => r * r);
        if (n > inputs.Count + 1)
        {
            // Columns of a hypercube are all but independent, so the matrix is far from singular.
            Matrix<double> x = Matrix<double>.Build.DenseOfColumnArrays([.. inputs.Select(i => i.Ranks)]);
            Vector<double> solved = MultipleRegression.QR(x, Vector<double>.Build.DenseOfArray(y));
            if (solved.All(double.IsFinite))
            {
                coefficients = solved.ToArray();
                Vector<double> residual = (x * solved) - Vector<double>.Build.DenseOfArray(y);
                explained = Math.Clamp(1 - (residual.DotProduct(residual) / n), 0, 1);
            }
        }

        return new SpreadDrivers(
            [.. inputs.Select((input, i) => new SpreadDriver(input.Input, simple[i], coefficients[i])).OrderByDescending(d => Math.Abs(d.RankCorrelation))],
            explained,
            noise);
    }

    // Mean ranks, with mean 0 and variance 1; null if all values are the same.
    private static double[]? Standardised(IReadOnlyList<double> values)
    {
        double[] ranks = ArrayStatistics.RanksInplace([.. values], RankDefinition.Average);
        double mean = ranks.Average();
        double deviation = Math.Sqrt(ranks.Average(r => (r - mean) * (r - mean)));
        return deviation > 0 ? [.. ranks.Select(r => (r - mean) / deviation)] : null;
    }
}
