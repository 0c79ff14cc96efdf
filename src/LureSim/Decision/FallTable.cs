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
public sealed record FallTable(IReadOnlyList<double> Depths, IReadOnlyList<FallColumn> Columns);
