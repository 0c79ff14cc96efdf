using LureSim.Model;
using MathNet.Numerics.Distributions;

namespace LureSim.Decision.Observations;

/// <summary>How likely an observation is where a run predicts something.</summary>
public static class Likelihood
{
    // Beyond so many standard deviations all states are as unlikely: nobody's errors are Gaussian so far out.
    private const double Farthest = 8;

    /// <summary>
    /// Logarithm of the likelihood, but for a constant. What happened: a Gaussian error, -((y - p)/s)^2/2. What did not happen up to y is censored: the chance that it comes
    /// later, ln(Phi((p - y)/s)) (Tobin 1958, tobin1958estimation).
    /// </summary>
    /// <param name="observation">The observation.</param>
    /// <param name="predicted">Predicted figure in its unit; infinite where it never happens.</param>
    /// <param name="deviation">Standard deviation of observer and prediction together, above 0.</param>
    /// <exception cref="ArgumentNullException"><paramref name="observation"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The deviation is not above 0, or the prediction is not a number.</exception>
    public static double Log(Observation observation, double predicted, double deviation)
    {
        ArgumentNullException.ThrowIfNull(observation);
        Guard.Positive(deviation);
        if (double.IsNaN(predicted)) throw new ArgumentOutOfRangeException(nameof(predicted), predicted, "A prediction must be a number.");
        double off = Math.Clamp((predicted - Middle(observation)) / deviation, -Farthest, Farthest);
        return observation.Happened ? -0.5 * off * off : Math.Log(Normal.CDF(0, 1, off));
    }

    /// <summary>Chance of a figure no greater than the observed one, or that it did not happen.</summary>
    /// <param name="observation">The observation.</param>
    /// <param name="predicted">Predicted figure; infinite where it never happens.</param>
    /// <param name="deviation">Standard deviation, above 0.</param>
    internal static double Chance(Observation observation, double predicted, double deviation)
    {
        double off = Math.Clamp((Middle(observation) - predicted) / deviation, -Farthest, Farthest);
        return observation.Happened ? Normal.CDF(0, 1, off) : Normal.CDF(0, 1, -off);
    }

    /// <summary>The figure that a prediction is held against: a least whole count n stands for n - 1 to n.</summary>
    internal static double Middle(Observation observation) =>
        observation is { Kind: ObservationKind.FirstTick, Happened: true } ? Math.Max(0, observation.Value - 0.5) : observation.Value;
}
