using LureSim.Decision;
using LureSim.Model;
using LureSim.Report.Units;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows the count-down table.</summary>
internal static class FallView
{
    /// <summary>Prints the table: seconds to each depth, on slack and on tight line.</summary>
    public static void Write(IAnsiConsole console, Scenario scenario, LureBody body, FallTable table, UnitFormat units)
    {
        console.MarkupLineInterpolated($"[bold]{scenario.Title}[/]");
        console.MarkupLineInterpolated($"Seconds to depth with the {units.LureText(body)}; - where it never gets there.");
        WriteOne(console, "bail open", table, units, column => column.SlackLineSeconds, false);
        WriteOne(console, "bail closed, tight line", table, units, column => column.TightLineSeconds, true);
    }

    /// <summary>The table as CSV, one row a head and depth.</summary>
    public static string ToCsv(FallTable table)
    {
        var csv = new Csv("head", "head_mass_kg", "terminal_speed_m_s", "depth_m", "slack_line_s", "tight_line_s");
        foreach (FallColumn column in table.Columns)
        {
            for (int row = 0; row < table.Depths.Count; row++)
                csv.Row(column.Head.Label, column.Head.Mass, column.TerminalSpeed, table.Depths[row], column.SlackLineSeconds[row], column.TightLineSeconds[row]);
        }

        return csv.ToString();
    }

    private static void WriteOne(IAnsiConsole console, string title, FallTable table, UnitFormat units, Func<FallColumn, IReadOnlyList<double?>> seconds, bool closedBail)
    {
        DisplayUnit depth = Views.DepthUnit(units, table.Depths);
        Views.WriteColumns(
            console,
            title,
            new ViewColumn($"depth ({depth.Symbol})", [.. table.Depths.Select(depth.Number), $"sink rate ({units.Speed.Symbol})"], true),
            [.. table.Columns.Select(column => new ViewColumn(
                units.HeadText(column.Head),
                [.. seconds(column).Select(value => Views.Optional(UnitFormat.Seconds, value)), units.Speed.Number(table.SinkRate(column, closedBail))],
                true))]);
    }
}
