using System.Runtime.CompilerServices;

namespace LureSim.Model;

/// <summary>A closed range of values.</summary>
/// <param name="Least">Least value.</param>
/// <param name="Most">Greatest value.</param>
public readonly record struct ValueRange(double Least, double Most)
{
    /// <summary>True if the value is a number inside the range, edges included.</summary>
    /// <param name="value">The value.</param>
    public bool Contains(double value) => value >= Least && value <= Most;

    /// <summary>Returns the value, or throws with the name of the member that calls unless it is inside the range.</summary>
    internal double Check(double value, [CallerMemberName] string name = "") => Guard.InRange(value, Least, Most, name);

    /// <summary>The same for a value that may be missing.</summary>
    internal double? Check(double? value, [CallerMemberName] string name = "") => value is { } given ? Check(given, name) : null;
}
