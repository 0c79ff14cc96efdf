namespace LureSim.Sight;

/// <summary>The receptor-noise-limited model of colour discrimination, Vorobyev and Osorio 1998 (vorobyev1998receptor).</summary>
public static class ReceptorNoise
{
    /// <summary>Noise of each receptor channel, e = w sqrt(n_ref/n), with the commonest class as reference (the R package pavo takes the longest-wave class unless told otherwise).</summary>
    /// <param name="weberFraction">Weber fraction w of the reference class, above 0 to 1.</param>
    /// <param name="abundances">Relative number of receptors of each class, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Weber fraction or an abundance is outside its range.</exception>
    public static double[] Noise(double weberFraction, IReadOnlyList<double> abundances)
    {
        _ = Guard.InRange(weberFraction, 1e-6, 1.0, nameof(weberFraction), "");
        ArgumentNullException.ThrowIfNull(abundances);
        foreach (double abundance in abundances)
            _ = Guard.InRange(abundance, 1e-6, 1e6, nameof(abundances), "");
        double reference = abundances.Max();
        return [.. abundances.Select(n => weberFraction * Math.Sqrt(reference / n))];
    }

    /// <summary>
    /// Chromatic distance of two stimuli in just-noticeable steps, for any number of receptor classes: with f_i = ln(q_i/q'_i),
    /// dS^2 = sum over pairs of (f_i - f_j)^2 times the squared noise of all other classes, over the sum over classes of the squared
    /// noise of all but one (Clark, Santer and Brebner 2017, clark2017generalized; equal to the printed forms for two to four classes).
    /// </summary>
    /// <param name="first">Quantum catches of the first stimulus, above 0.</param>
    /// <param name="second">Quantum catches of the second stimulus, above 0.</param>
    /// <param name="noise">Noise of each class, above 0.</param>
    /// <returns>Distance; 0 for fewer than two classes or when a catch is not above 0, since a class without light carries no colour.</returns>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    public static double Chromatic(ReadOnlySpan<double> first, ReadOnlySpan<double> second, ReadOnlySpan<double> noise)
    {
        if (first.Length != second.Length || first.Length != noise.Length)
            throw new ArgumentException("Catches and noise must have one value a receptor class.", nameof(first));
        int count = first.Length;
        if (count < 2)
            return 0.0;

        // Both sums divided by the product of all squared noises: pairs weigh 1/(e_i e_j)^2, classes 1/e_i^2.
        double numerator = 0.0, denominator = 0.0;
        for (int i = 0; i < count; i++)
        {
            if (!(first[i] > 0.0 && second[i] > 0.0))
                return 0.0;
            denominator += 1.0 / (noise[i] * noise[i]);
            for (int j = i + 1; j < count; j++)
            {
                double difference = Math.Log(first[i] / second[i]) - Math.Log(first[j] / second[j]);
                numerator += difference * difference / (noise[i] * noise[i] * noise[j] * noise[j]);
            }
        }

        return Math.Sqrt(numerator / denominator);
    }

    /// <summary>Distance in one channel in just-noticeable steps, |ln(q/q')|/e.</summary>
    /// <param name="first">Catch of the first stimulus, above 0.</param>
    /// <param name="second">Catch of the second stimulus, above 0.</param>
    /// <param name="noise">Noise of the channel, above 0.</param>
    /// <returns>Distance; infinite when one catch is 0 and the other is not.</returns>
    public static double Achromatic(double first, double second, double noise)
    {
        if (first <= 0.0 || second <= 0.0)
            return first == second ? 0.0 : double.PositiveInfinity;
        return Math.Abs(Math.Log(first / second)) / noise;
    }
}
