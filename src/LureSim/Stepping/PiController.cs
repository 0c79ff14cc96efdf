namespace LureSim.Stepping;

/// <summary>
/// Step control from the errors of two steps (proportional and integral), for a method of order 5 with an error estimate of order 4: exponents, safety and bounds of Hairer,
/// Norsett &amp; Wanner 1993, II.4. Errors are in units of the tolerance.
/// </summary>
internal struct PiController()
{
    private const double Beta = 0.04;
    private const double Safety = 0.9;
    private const double LeastFactor = 0.2;
    private const double GreatestFactor = 5;
    private const double LeastRemembered = 1e-4;

    private double previousError = LeastRemembered;

    /// <summary>Factor on the step after an accepted one; no growth right after a rejected one.</summary>
    public double Accepted(double error, bool rejectedBefore)
    {
        double factor = Math.Clamp(Safety * Math.Pow(previousError, Beta) / Control(error), LeastFactor, rejectedBefore ? 1 : GreatestFactor);
        previousError = Math.Max(error, LeastRemembered);
        return factor;
    }

    /// <summary>Factor on a step that is to be repeated.</summary>
    public static double Rejected(double error) => Math.Max(LeastFactor, Safety / Control(error));

    private static double Control(double error) => Math.Pow(Math.Max(error, 1e-12), 0.2 - (0.75 * Beta));
}
