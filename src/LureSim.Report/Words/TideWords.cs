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
        ? $"{UnitFormat.Fixed((metresPerSecond / PhysicalConstants.Knot) + 0.0, 1)} kn"
        : $"{UnitFormat.Fixed(metresPerSecond + 0.0, 2)} m/s";
}
