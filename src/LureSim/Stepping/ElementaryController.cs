namespace LureSim.Stepping;

/// <summary>Step control from the error of the last step alone, for an error estimate that falls with the third power of the step (Hairer, Norsett &amp; Wanner 1993, II.4).</summary>
internal static class ElementaryController
{
    private const double Safety = 0.9;
    /// <summary>Least factor from one step to the next.</summary>
    public const double LeastFactor = 0.2;

    private const double GreatestFactor = 3;

    // Factor after a step that was not solved at all.
    private const double AfterFailure = 0.25;

    /// <summary>Factor on the step for an error in units of the tolerance.</summary>
    public static double Factor(double error) =>
        double.IsInfinity(error) ? AfterFailure : Math.Clamp(Safety * Math.Pow(Math.Max(error, 1e-9), -1.0 / 3.0), LeastFactor, GreatestFactor);
}
