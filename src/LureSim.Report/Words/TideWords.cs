using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Times and currents of a tide as texts.</summary>
public static class TideWords
{
    /// <summary>A time of the tide as the clock shows it.</summary>
    /// <param name="hours">Time (h since midnight).</param>
    public static string Clock(double hours)
    {
        int minutes = (int)Math.Round(hours * 60) % (24 * 60);
        return FormattableString.Invariant($"{minutes / 60:00}:{minutes % 60:00}");
    }

    /// <summary>A current with its sign, in knots or m/s.</summary>
    /// <param name="metresPerSecond">Current (m/s).</param>
    /// <param name="units">Units.</param>
    public static string Current(double metresPerSecond, UnitSystem units) => units == UnitSystem.Us
        ? $"{Signed(metresPerSecond / PhysicalConstants.Knot, 1)} kn"
        : $"{Signed(metresPerSecond, 2)} m/s";

    /// <summary>What the current of a tide does, hour by hour, in one line; empty without a tide.</summary>
    /// <param name="tide">The tide.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="tide"/> is null.</exception>
    public static string Line(IReadOnlyList<TidePoint> tide, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(tide);
        return tide.Count == 0 ? "" : $"Tide: {string.Join(", ", tide.Select(point => $"{Clock(point.Hours)} {(Math.Abs(point.Current) < Slack ? "slack" : Current(point.Current, units))}"))}.{(tide.Any(point => point.Current < -Slack) ? " " + Minus : "")}";
    }

    /// <summary>What a minus before a current says.</summary>
    public const string Minus = "Minus = tide running the other way.";

    // A current below this is none (m/s).
    private const double Slack = 0.03;

    private static string Signed(double value, int decimals)
    {
        string text = UnitFormat.Fixed(Math.Abs(value), decimals);
        return value < 0 && text.AsSpan().IndexOfAnyExcept('0', '.') >= 0 ? "−" + text : text;
    }
}
