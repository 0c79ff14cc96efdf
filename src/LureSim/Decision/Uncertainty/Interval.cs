namespace LureSim.Decision.Uncertainty;

/// <summary>What the draws made of one figure.</summary>
/// <param name="Low">One draw in ten lies below.</param>
/// <param name="Median">Half of the draws lie below.</param>
/// <param name="High">One draw in ten lies above.</param>
/// <param name="Mean">Mean; infinite where a draw is.</param>
public sealed record Interval(double Low, double Median, double High, double Mean)
{
    /// <summary>The interval of some values; infinite ones stand for 'never'.</summary>
    /// <remarks>Quantiles by the nearest rank (Hyndman and Fan 1996, type 1, hyndman1996sample): always a value that was drawn, so 'never' stays 'never'.</remarks>
    /// <param name="values">Values, at least one, none of them NaN.</param>
    /// <exception cref="ArgumentException">There is no value, or one is NaN.</exception>
    public static Interval Of(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        if (sorted.Length == 0 || double.IsNaN(sorted[0]))
            throw new ArgumentException("At least one value, and none that is not a number.", nameof(values));
        return new Interval(At(0.1), At(0.5), At(0.9), sorted.Average());

        double At(double share) => sorted[Math.Clamp((int)Math.Ceiling((share * sorted.Length) - 1e-9) - 1, 0, sorted.Length - 1)];
    }
}
