using System.Globalization;

namespace LureSim.Light;

/// <summary>Argument checks of the optics; messages carry the name, the value and what is allowed.</summary>
internal static class Guard
{
    public static double InRange(double value, double low, double high, string name, string unit)
    {
        // The negated form also catches NaN.
        if (!(value >= low && value <= high))
        {
            throw new ArgumentOutOfRangeException(name, value, string.Create(
                CultureInfo.InvariantCulture, $"{name} must be from {low} to {high} {unit}."));
        }

        return value;
    }
}
