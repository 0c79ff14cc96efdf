using LureSim.Decision;
using LureSim.Report.Units;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows the share of the retrieve in the strike zone by jig head and retrieve speed.</summary>
internal static class CoverageView
{
    // Smaller shares than this would only clutter the cells.
    private const double WorthSaying = 0.005;

    /// <summary>Prints a grid.</summary>
    public static void Write(IAnsiConsole console, CoverageGrid grid, UnitFormat units)
    {
        Views.WriteColumns(
            console,
            $"percent of the retrieve in the strike zone: {grid.PresentationName}",
            new ViewColumn("jig head", [.. grid.Heads.Select(head => Views.Escape(units.HeadText(head)))], false),
            [.. grid.Speeds.Select((value, speed) => new ViewColumn(
                units.Speed.Text(value),
                [.. Enumerable.Range(0, grid.Heads.Count).Select(head => Cell(grid, head, speed, units))],
                true))]);
    }

    /// <summary>Grids as CSV, one row a presentation, head and speed.</summary>
    public static string ToCsv(IEnumerable<CoverageGrid> grids)
    {
        var csv = new Csv("presentation", "head", "head_mass_kg", "speed_m_s", "zone_share", "bottom_share", "grass_share", "median_depth_m");
        foreach (CoverageGrid grid in grids)
        {
            for (int head = 0; head < grid.Heads.Count; head++)
            {
                for (int speed = 0; speed < grid.Speeds.Count; speed++)
                    csv.Row(grid.PresentationName, grid.Heads[head].Label, grid.Heads[head].Mass, grid.Speeds[speed], grid.ZoneShare[head, speed], grid.BottomShare[head, speed], grid.GrassShare[head, speed], grid.MedianDepth[head, speed]);
            }
        }

        return csv.ToString();
    }

    private static string Cell(CoverageGrid grid, int head, int speed, UnitFormat units)
    {
        var extras = new List<string>();
        if (grid.BottomShare[head, speed] >= WorthSaying)
            extras.Add($"bottom {UnitFormat.Share.Number(grid.BottomShare[head, speed])}");
        if (grid.GrassShare[head, speed] >= WorthSaying)
            extras.Add($"grass {UnitFormat.Share.Number(grid.GrassShare[head, speed])}");
        string zone = UnitFormat.Share.Text(grid.ZoneShare[head, speed]);
        return extras.Count == 0 ? zone : $"{zone} ({string.Join(", ", extras)})";
    }
}
