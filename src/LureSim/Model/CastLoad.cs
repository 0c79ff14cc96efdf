namespace LureSim.Model;

/// <summary>What a line can cast.</summary>
public static class CastLoad
{
    /// <summary>
    /// A cast loads the line with a multiple of the lure's weight. Ten is far less than a hard cast does (common
    /// practice for heavy casting is a hundred and more), so what fails this test cannot be cast at all.
    /// </summary>
    public const double Factor = 10.0;

    /// <summary>Greatest mass (kg) that a line can cast.</summary>
    /// <param name="strength">Nominal breaking force of the weakest of line and leader (N), 0 or more; infinite for no limit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The strength is negative or not a number.</exception>
    public static double MostMass(double strength) =>
        Guard.InRange(strength, 0, double.PositiveInfinity) / (Factor * PhysicalConstants.StandardGravity);
}
