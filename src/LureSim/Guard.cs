using System.Diagnostics.CodeAnalysis;
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

    /// <summary>Returns the value, or throws unless it is a finite number.</summary>
    public static double Finite(double value, [CallerMemberName] string name = "") => double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(name, value, $"{name} must be a finite number.");

    /// <summary>Returns the value, or throws unless the enum has it.</summary>
    public static T Defined<T>(T value, [CallerMemberName] string name = "")
        where T : struct, Enum => Enum.IsDefined(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} must be a member of {typeof(T).Name}.");

    /// <summary>Returns the value, or throws unless the flags of the enum make it up.</summary>
    public static T Flags<T>(T value, [CallerMemberName] string name = "")
        where T : struct, Enum => Enum.GetValues<T>().Aggregate(0, (all, flag) => all | Convert.ToInt32(flag, null)) is var known && (Convert.ToInt32(value, null) & ~known) == 0
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} must be made up of {typeof(T).Name}.");

    /// <summary>Returns the value, or throws if there is none.</summary>
    public static T Given<T>([NotNull] T? value, [CallerMemberName] string name = "")
        where T : class => value ?? throw new ArgumentNullException(name);

    /// <summary>Returns the list, or throws if it is missing, too short or holds a missing item.</summary>
    public static IReadOnlyList<T> Items<T>([NotNull] IReadOnlyList<T>? value, int least, [CallerMemberName] string name = "")
        where T : class
    {
        if (value is null)
            throw new ArgumentNullException(name);
        if (value.Count < least)
            throw new ArgumentException(FormattableString.Invariant($"{name} must hold at least {least}."), name);
        foreach (T? item in value)
        {
            if (item is null)
                throw new ArgumentException($"{name} holds a missing item.", name);
        }

        return value;
    }

    /// <summary>Throws unless a relation between values holds.</summary>
    public static void That(bool holds, string message, string name)
    {
        if (!holds)
            throw new ArgumentException(message, name);
    }
}
