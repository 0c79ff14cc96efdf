using LureSim.Decision;
using LureSim.Scenarios;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows the count-down table.</summary>
internal static class FallView
{
    /// <summary>Prints the table: seconds to each depth, on slack and on tight line.</summary>
    public static void Write(IAnsiConsole console, Scenario scenario, FallTable table, MeasureFormatter units)
    {
        console.MarkupLineInterpolated($"[bold]{scenario.Title}[/]");
        console.MarkupLineInterpolated($"Seconds to depth, with {scenario.Tackle.Bodies[0].Label}; - where the lure does not get there.");
        WriteOne(console, "slack line", table, units, column => column.SlackLineSeconds);
        WriteOne(console, "tight line", table, units, column => column.TightLineSeconds);
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

    private static void WriteOne(IAnsiConsole console, string title, FallTable table, MeasureFormatter units, Func<FallColumn, IReadOnlyList<double?>> seconds)
    {
        Table view = Views.NewTable(title);
        DisplayUnit depth = Views.DepthUnit(units, table.Depths);
        view.AddColumn(new TableColumn(Views.Escape($"depth ({units.Length.Symbol})")).RightAligned());
        foreach (FallColumn column in table.Columns)
            view.AddColumn(new TableColumn(Views.Escape(units.HeadLabel(column.Head))).RightAligned());
        for (int row = 0; row < table.Depths.Count; row++)
            view.AddRow([depth.Number(table.Depths[row]), .. table.Columns.Select(column => Views.Optional(units.Seconds, seconds(column)[row]))]);
        view.AddRow([Views.Escape($"free fall ({units.Speed.Symbol})"), .. table.Columns.Select(column => units.Speed.Number(column.TerminalSpeed))]);
        console.Write(view);
    }
}

/// <summary>What the views share.</summary>
internal static class Views
{
    /// <summary>A table in the house style.</summary>
    public static Table NewTable(string title) => new Table { Border = TableBorder.Simple, Title = new TableTitle(Escape(title)) };

    /// <summary>Text that must not be read as markup.</summary>
    public static string Escape(string text) => Markup.Escape(text);

    /// <summary>The unit for a column of depths, with the digits that their steps need (quarters of a foot take two).</summary>
    public static DisplayUnit DepthUnit(MeasureFormatter units, IEnumerable<double> depths)
    {
        DisplayUnit unit = units.Length;
        bool fine = depths.Select(unit.FromSi).Any(depth => Math.Abs((depth * 10.0) - Math.Round(depth * 10.0)) > 1e-6);
        return fine && unit.Decimals < 2 ? unit with { Decimals = 2 } : unit;
    }

    /// <summary>A number, or a dash for none.</summary>
    public static string Optional(DisplayUnit unit, double? value) => unit.Number(value ?? double.NaN);
}
