using System.Runtime.CompilerServices;

namespace LureSim;

/// <summary>Argument checks shared by the model; each throws with the name, the value and the allowed range.</summary>
internal static class Guard
{
    /// <summary>Returns the value, or throws unless it is a number inside the closed interval.</summary>
    public static double InRange(double value, double minimum, double maximum, [CallerArgumentExpression(nameof(value))] string name = "", string unit = "")
    {
        // Written so that NaN fails.
        if (!(value >= minimum && value <= maximum))
            throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"{name} must be from {minimum} to {maximum} {unit}").TrimEnd() + ".");
        return value;
    }

    /// <summary>Throws unless the value is a finite number above zero.</summary>
    public static void Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && double.IsFinite(value)))
            throw new ArgumentOutOfRangeException(name, value, $"{name} must be a finite number above zero.");
    }
}
