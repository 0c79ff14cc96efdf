namespace LureSim.Decision.Trials;

/// <summary>What the draws made of one figure.</summary>
/// <param name="Low">One draw in ten lies below.</param>
/// <param name="Median">Half of the draws lie below.</param>
/// <param name="High">One draw in ten lies above.</param>
/// <param name="Mean">Mean; infinite where a draw is.</param>
public sealed record Interval(double Low, double Median, double High, double Mean)
{
    /// <summary>
    /// Step to which a figure of this spread is rounded before it is shown: the greatest of 1, 2 or 5 times a power of ten that is no more than half of
    /// half the width from <see cref="Low"/> to <see cref="High"/>, so that the rounding stays well inside what is not known. 0 where there is no spread or no end of it.
    /// </summary>
    /// <param name="unit">The unit that is shown, in the unit of the values, above 0: 0.3048 for feet of a value in metres. The step is in that unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The unit is not above 0.</exception>
    public double RoundingStep(double unit = 1.0)
    {
        Guard.InRange(unit, double.Epsilon, double.MaxValue);
        double most = (High - Low) / (4.0 * unit);
        if (!(most > 0.0) || double.IsInfinity(most)) return 0.0;
        double power = Math.Pow(10.0, Math.Floor(Math.Log10(most)));
        return power * (most >= 5.0 * power ? 5.0 : most >= 2.0 * power ? 2.0 : 1.0);
    }

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
