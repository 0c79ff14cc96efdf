using LureSim.Cli.Hosting;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows colours with depth.</summary>
internal static class ColourView
{
    /// <summary>Prints a swatch and a hex colour for each depth; the swatch shows on terminals with colour.</summary>
    public static void Write(IAnsiConsole console, Scenario scenario, ColourTable table, UnitFormat units)
    {
        console.MarkupLineInterpolated($"[bold]{scenario.Title}[/]");
        DisplayUnit depth = Views.DepthUnit(units, table.Depths);
        Views.WriteColumns(
            console,
            units.System.Spell("color to a person's eye down there, brightness against white"),
            new ViewColumn($"depth ({depth.Symbol})", [.. table.Depths.Select(depth.Number)], true),
            [.. table.Columns.Select(column => new ViewColumn(
                column.Name,
                [.. Enumerable.Range(0, table.Depths.Count).Select(row => $"[{column.Srgb[row]}]\u2588\u2588[/] {column.Srgb[row]} {UnitFormat.Share.Number(column.RelativeLuminance[row])}% {column.Words[row]}")],
                false))]);
        foreach (PatternParts parts in table.Patterns)
            console.MarkupLineInterpolated($"{ColourWords.Parts(parts, scenario.Spot.TargetFish, units.System)}");
    }

    /// <summary>The table as CSV, one row a colour and depth.</summary>
    public static string ToCsv(ColourTable table)
    {
        var csv = new Csv("colour", "depth_m", "srgb", "relative_luminance", "word");
        foreach (ColourColumn column in table.Columns)
        {
            for (int row = 0; row < table.Depths.Count; row++)
                csv.Row(column.Name, table.Depths[row], column.Srgb[row], column.RelativeLuminance[row], column.Words[row]);
        }

        return csv.ToString();
    }
}
