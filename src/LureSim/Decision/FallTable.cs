using LureSim.Model;

namespace LureSim.Decision;

/// <summary>Fall of one lure: free (on slack line, no line drag) and on the line, straight down in still water and in the spot's current.</summary>
/// <param name="Head">Jig head.</param>
/// <param name="TerminalSpeed">Terminal fall rate of the lure free of the line (m/s).</param>
/// <param name="SlackLineSeconds">Seconds to each depth on slack line with the line pulled through the water; null where not reached.</param>
/// <param name="TightLineSeconds">Seconds to each depth on a closed bail from the end of the cast; null where not reached.</param>
public sealed record FallColumn(JigHead Head, double TerminalSpeed, IReadOnlyList<double?> SlackLineSeconds, IReadOnlyList<double?> TightLineSeconds);

/// <summary>Count-down table: seconds to depth by jig head.</summary>
/// <param name="Depths">Depths (m), increasing.</param>
/// <param name="Columns">One column a jig head, in the order of the tackle box.</param>
public sealed record FallTable(IReadOnlyList<double> Depths, IReadOnlyList<FallColumn> Columns)
{
    /// <summary>Mean rate of fall on the line (m/s), from the surface to the deepest depth of the table that is reached: what a stopwatch gives. Free of the line where no depth is reached.</summary>
    /// <param name="column">A column of this table.</param>
    /// <param name="closedBail">True for the fall on a closed bail, which the line slows more.</param>
    /// <exception cref="ArgumentNullException"><paramref name="column"/> is null.</exception>
    public double SinkRate(FallColumn column, bool closedBail = false)
    {
        ArgumentNullException.ThrowIfNull(column);
        IReadOnlyList<double?> seconds = closedBail ? column.TightLineSeconds : column.SlackLineSeconds;
        for (int i = Math.Min(Depths.Count, seconds.Count) - 1; i >= 0; i--)
        {
            if (seconds[i] is { } time and > 0) return Depths[i] / time;
        }

        return column.TerminalSpeed;
    }
}
