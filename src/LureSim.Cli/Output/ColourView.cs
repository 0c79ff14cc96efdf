using LureSim.Scenarios;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows colours with depth.</summary>
internal static class ColourView
{
    /// <summary>Prints a swatch and a hex colour for each depth; the swatch shows on terminals with colour.</summary>
    public static void Write(IAnsiConsole console, Scenario scenario, ColourTable table, MeasureFormatter units)
    {
        console.MarkupLineInterpolated($"[bold]{scenario.Title}[/]");
        Table view = Views.NewTable("colour shown at depth, to an eye used to the light there, and its luminance against a white there");
        DisplayUnit depth = Views.DepthUnit(units, table.Depths);
        view.AddColumn(new TableColumn(Views.Escape($"depth ({units.Length.Symbol})")).RightAligned());
        foreach (ColourColumn column in table.Columns)
            view.AddColumn(Views.Escape(column.Name));
        for (int row = 0; row < table.Depths.Count; row++)
            view.AddRow([depth.Number(table.Depths[row]), .. table.Columns.Select(column => $"[{column.Srgb[row]}]\u2588\u2588[/] {column.Srgb[row]} {units.Share.Number(column.RelativeLuminance[row])} % {column.Words[row]}")]);
        console.Write(view);
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
