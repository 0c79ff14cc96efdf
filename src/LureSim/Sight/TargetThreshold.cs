namespace LureSim.Sight;

/// <summary>
/// Contrast that a fish needs to make out a single target, against the angle that the target fills: C = C_large (1 + (alpha_0/alpha)^n).
/// </summary>
/// <remarks>
/// Fitted, in the logarithm of contrast, to what six trained sunfish made out (Spratte et al. 2021, spratte2021single): Weber contrast 1
/// at 0.17 degrees, 0.67 at 0.34, 0.41 at 0.42, with the large-target limit of trained bluegill, Weber 0.06 (Northmore et al. 2007,
/// northmore2007spatial: Michelson 0.03), for which the 0.05 that is usual in models stands. The curve gives 0.178, 0.285 and 0.485
/// degrees for the three contrasts. A target as large as the 1.6 degrees over which goldfish sum (Northmore and Dvorak 1979,
/// northmore1979contrast) needs 3.4 times the contrast of a large one. How the threshold rises in dim light comes from the photons
/// that the receptors catch (<see cref="SightScene"/>).
/// </remarks>
public static class TargetThreshold
{
    /// <summary>Angle alpha_0 (rad) at which a target needs twice the contrast of a large one, 3.95 degrees.</summary>
    public const double SummationAngle = 3.95 * Math.PI / 180.0;

    /// <summary>Exponent n of the curve, dimensionless.</summary>
    public const double Exponent = 0.95;

    /// <summary>
    /// Factor, either way, by which the angle of a target at threshold differs between kinds of fish, 1.65: one standard deviation of the
    /// logarithm over seven kinds tested at full contrast, 0.10 (bluegill) to 0.38 degrees (ambon damsel), geometric mean 0.20.
    /// </summary>
    public const double AngleSpread = 1.65;

    /// <summary>Factor, either way, of the contrast threshold of large targets, 2: 0.016 (triplefin) to 0.06 (bluegill), Weber; taken as the range of nine kinds in ten (assumed, two kinds are too few to tell).</summary>
    public const double ContrastSpread = 2.0;

    /// <summary>How many times the contrast of a large target a target needs, 1 or more, dimensionless.</summary>
    /// <param name="angle">Angle that the target fills (rad), above 0; infinite for a target without end.</param>
    public static double Factor(double angle) => Factor(angle, SummationAngle);

    /// <summary>The same for an eye whose summation angle is another.</summary>
    /// <param name="angle">Angle that the target fills (rad), above 0; infinite for a target without end.</param>
    /// <param name="summationAngle">Angle (rad) at which a target needs twice the contrast of a large one, above 0.</param>
    public static double Factor(double angle, double summationAngle) => 1.0 + Math.Pow(summationAngle / angle, Exponent);

    /// <summary>
    /// Summation angle (rad) of an eye that differs from the mean in both of what was measured: the contrast of a large target and the smallest angle at
    /// full contrast. Either is varied with the other held, as they come from different tests and fish.
    /// </summary>
    /// <param name="contrast">Factor on the contrast of a large target, above 0 and below 20.</param>
    /// <param name="smallest">Factor on the smallest angle at Weber contrast 1, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A factor is outside its range.</exception>
    public static double SummationAngleOf(double contrast, double smallest)
    {
        _ = Guard.InRange(contrast, 1e-3, 0.999 / FishEye.WeberFraction, nameof(contrast), "");
        _ = Guard.InRange(smallest, 1e-3, 1e3, nameof(smallest), "");
        double steps = (1.0 / FishEye.WeberFraction) - 1.0, own = (1.0 / (contrast * FishEye.WeberFraction)) - 1.0;
        return SummationAngle * smallest * Math.Pow(own / steps, 1.0 / Exponent);
    }

    /// <summary>Smallest angle (rad) at which a target of a contrast is made out in good light; infinite where it is not made out at any size.</summary>
    /// <param name="contrast">Weber contrast, its sign left out.</param>
    public static double SmallestAngle(double contrast)
    {
        double steps = Math.Abs(contrast) / FishEye.WeberFraction;
        return steps > 1.0 ? SummationAngle / Math.Pow(steps - 1.0, 1.0 / Exponent) : double.PositiveInfinity;
    }
}
