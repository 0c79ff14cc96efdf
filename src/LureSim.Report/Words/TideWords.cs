using LureSim.Decision.Tide;
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
        if (tide.Count > MostPoints) return $"Tide: {Events(new TideCurve(tide), units)}.{(tide.Any(point => point.Current < -Slack) ? " " + Minus : "")}";
        return tide.Count == 0 ? "" : $"Tide: {string.Join(", ", tide.Select(point => $"{Clock(point.Hours)} {(Math.Abs(point.Current) < Slack ? "slack" : Current(point.Current, units))}"))}.{(tide.Any(point => point.Current < -Slack) ? " " + Minus : "")}";
    }

    /// <summary>High and low water, slack and the strongest current between, in order of time: "high 06:10 (+2 ft), slack 06:41, +1.1 kn 09:40".</summary>
    /// <param name="curve">The tide.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="curve"/> is null.</exception>
    public static string Events(TideCurve curve, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(curve);
        var format = new UnitFormat(units);
        double[] slacks = [.. curve.Slacks];
        List<(double Hours, string Text)> events =
        [
            .. curve.Turns.Select(turn => (turn.Hours, $"{(turn.High ? "high" : "low")} {Clock(turn.Hours)} ({(turn.DepthChange < 0 ? "−" : "+")}{format.LengthText(Math.Abs(turn.DepthChange))})")),
            .. slacks.Select(hours => (hours, $"slack {Clock(hours)}")),
        ];
        double[] edges = [curve.Start, .. slacks, curve.End];
        for (int i = 1; i < edges.Length; i++)
        {
            double strongest = Enumerable.Range(0, 101).Select(k => edges[i - 1] + ((edges[i] - edges[i - 1]) * k / 100)).MaxBy(hours => Math.Abs(curve.Current(hours)));
            if (Math.Abs(curve.Current(strongest)) >= Slack) events.Add((strongest, $"{Current(curve.Current(strongest), units)} {Clock(strongest)}"));
        }

        return string.Join(", ", events.OrderBy(item => item.Hours).Select(item => item.Text));
    }

    // A tide of more points is told by its turns.
    private const int MostPoints = 12;

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
