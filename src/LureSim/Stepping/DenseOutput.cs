namespace LureSim.Stepping;

/// <summary>State inside the last accepted step of an explicit method: the quartic polynomial of Hairer, Norsett &amp; Wanner 1993, II.6.</summary>
internal sealed class DenseOutput(int size)
{
    private const int Terms = 5;

    private readonly double[] terms = new double[Terms * size];
    private double start, length;

    /// <summary>Keeps a step.</summary>
    /// <param name="tableau">Method.</param>
    /// <param name="time">Start of the step (s).</param>
    /// <param name="end">Its end (s).</param>
    /// <param name="step">Step (s).</param>
    /// <param name="from">State at its start.</param>
    /// <param name="to">State at its end.</param>
    /// <param name="rates">Derivatives of the stages.</param>
    public void Keep(ExplicitTableau tableau, double time, double end, double step, ReadOnlySpan<double> from, ReadOnlySpan<double> to, double[][] rates)
    {
        start = time;
        length = end - time;
        for (int i = 0; i < size; i++)
        {
            double difference = to[i] - from[i];
            double bspl = (step * rates[0][i]) - difference;
            double d = 0;
            for (int j = 0; j < rates.Length; j++) d += tableau.Dense[j] * rates[j][i];
            int at = Terms * i;
            terms[at] = from[i];
            terms[at + 1] = difference;
            terms[at + 2] = bspl;
            terms[at + 3] = difference - (step * rates[^1][i]) - bspl;
            terms[at + 4] = step * d;
        }
    }

    /// <summary>State at a time of the step.</summary>
    public void At(double time, Span<double> result)
    {
        double s = length > 0 ? (time - start) / length : 1;
        double s1 = 1 - s;
        for (int i = 0; i < size; i++)
        {
            int j = Terms * i;
            result[i] = terms[j] + (s * (terms[j + 1] + (s1 * (terms[j + 2] + (s * (terms[j + 3] + (s1 * terms[j + 4])))))));
        }
    }
}
