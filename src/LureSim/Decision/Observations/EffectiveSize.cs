namespace LureSim.Decision.Observations;

/// <summary>What a weighted sample is worth.</summary>
public static class EffectiveSize
{
    /// <summary>Effective size of a weighted sample (Kong 1992, kong1992note): (sum w)^2 / sum w^2, from 1 to the number of weights; 0 where all weights are 0.</summary>
    /// <param name="weights">Weights, none negative.</param>
    /// <exception cref="ArgumentNullException"><paramref name="weights"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A weight is negative or not a number.</exception>
    public static double Of(IReadOnlyList<double> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        double sum = 0, squares = 0;
        foreach (double weight in weights)
        {
            Guard.InRange(weight, 0, double.MaxValue, nameof(weights));
            sum += weight;
            squares += weight * weight;
        }

        return squares > 0 ? sum * sum / squares : 0;
    }

    /// <summary>Weights that sum to 1, of logarithms of likelihoods raised to a power.</summary>
    /// <param name="logs">Logarithms of likelihoods.</param>
    /// <param name="power">Power, 0 to 1.</param>
    internal static double[] Weights(IReadOnlyList<double> logs, double power = 1)
    {
        double most = logs.Max(), sum = 0;
        double[] weights = new double[logs.Count];
        for (int i = 0; i < weights.Length; i++) sum += weights[i] = Math.Exp(power * (logs[i] - most));
        for (int i = 0; i < weights.Length; i++) weights[i] /= sum;
        return weights;
    }

    /// <summary>Systematic resampling (Kitagawa 1996, kitagawa1996monte): each index about as often as its weight says, in rising order.</summary>
    /// <param name="weights">Weights that sum to 1.</param>
    /// <param name="count">Indices wanted.</param>
    /// <param name="offset">Where the comb begins, 0 to 1.</param>
    internal static int[] Resample(double[] weights, int count, double offset)
    {
        int[] picked = new int[count];
        double sum = weights[0];
        int at = 0;
        for (int i = 0; i < count; i++)
        {
            double place = (i + offset) / count;
            while (sum < place && at < weights.Length - 1) sum += weights[++at];
            picked[i] = at;
        }

        return picked;
    }
}
