using System.Text.Json.Serialization;
using LureSim.Decision.Tide;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows weights by the hour of the tide, and by depth and current.</summary>
internal static class TideView
{
    /// <summary>Prints both tables.</summary>
    public static void Write(IAnsiConsole console, TideTable table, UnitFormat units)
    {
        console.MarkupLineInterpolated($"[bold]{table.Scenario.Title}[/]");
        console.MarkupLineInterpolated($"Retrieve: {table.Presentation.Name}");
        if (table.Rows.Count > 0)
        {
            IReadOnlyList<JigHead> heads = table.Heads;
            Views.WriteColumns(
                console,
                "best weight, hour by hour",
                new ViewColumn("time", [.. table.Rows.Select(row => TideWords.Clock(row.Hours))], false),
                [
                    new ViewColumn($"current ({units.FlowSpeed.Symbol})", [.. table.Rows.Select(row => TideWords.Current(row.Current, units.System).Split(' ')[0])], true),
                    new ViewColumn($"depth ({units.Length.Symbol})", [.. table.Rows.Select(row => units.Length.Number(row.Depth))], true),
                    new ViewColumn("best", [.. table.Rows.Select(row => row.Best is { } best ? Views.Escape(units.HeadText(best)) : "-")], true),
                    new ViewColumn("in zone", [.. table.Rows.Select(row => row.Best is { } best ? UnitFormat.Share.Text(row.ZoneShares[heads.ToList().IndexOf(best)]) : "-")], true),
                    new ViewColumn("holds bottom", [.. table.Rows.Select(row => Weight(row.Holding, units))], true),
                ]);
        }

        if (table.Scenario.Tide.Count > 2)
            console.MarkupLineInterpolated($"Tide: {TideWords.Events(new TideCurve(table.Scenario.Tide), units.System)}.");
        if (table.Rows.Any(row => row.Current < 0))
            console.WriteLine(TideWords.Minus);
        Views.WriteColumns(
            console,
            "lightest common weight that holds bottom, by depth and current",
            new ViewColumn($"depth ({units.Length.Symbol})", [.. table.Table.Depths.Select(units.Length.Number)], true),
            [.. table.Table.Currents.Select((current, c) => new ViewColumn(
                units.FlowSpeed.Text(current),
                [.. table.Table.Depths.Select((_, r) => Weight(table.Table.Weight[r, c], units))],
                true))]);
    }

    /// <summary>The table by hour as CSV, one row a moment and head.</summary>
    public static string HoursToCsv(TideTable table)
    {
        var csv = new Csv("time", "current_m_s", "depth_m", "head", "head_mass_kg", "zone_share", "score", "best", "holding_kg");
        IReadOnlyList<JigHead> heads = table.Heads;
        foreach (TideRow row in table.Rows)
        {
            for (int h = 0; h < row.Scores.Count; h++)
            {
                JigHead head = heads[h];
                csv.Row(TideWords.Clock(row.Hours), row.Current, row.Depth, head.Label, head.Mass, row.ZoneShares[h], row.Scores[h], row.Best == head ? 1 : 0, row.Holding);
            }
        }

        return csv.ToString();
    }

    /// <summary>The table by depth and current as CSV, one row a cell.</summary>
    public static string WeightsToCsv(TideTable table)
    {
        var csv = new Csv("depth_m", "current_m_s", "holding_kg");
        for (int r = 0; r < table.Table.Depths.Count; r++)
        {
            for (int c = 0; c < table.Table.Currents.Count; c++)
                csv.Row(table.Table.Depths[r], table.Table.Currents[c], table.Table.Weight[r, c]);
        }

        return csv.ToString();
    }

    private static string Weight(double? mass, UnitFormat units) => mass is { } kilograms ? units.Weight(kilograms) : "-";
}

/// <summary>Weights for a tide in JSON.</summary>
internal sealed record TideJson(
    string Title,
    IReadOnlyList<string> Slack,
    string Presentation,
    IReadOnlyList<HeadJson> Heads,
    IReadOnlyList<TideJson.Row> Hours,
    [property: JsonPropertyName("depths_m")] IReadOnlyList<double> Depths,
    [property: JsonPropertyName("currents_m_s")] IReadOnlyList<double> Currents,
    [property: JsonPropertyName("holding_mass_kg")] double?[][] Holding)
{
    public static TideJson Of(TideTable table) => new(
        table.Scenario.Title,
        table.Scenario.Tide.Count > 2 ? [.. new TideCurve(table.Scenario.Tide).Slacks.Select(TideWords.Clock)] : [],
        table.Presentation.Name,
        [.. table.Heads.Select(HeadJson.Of)],
        [.. table.Rows.Select(row => new Row(TideWords.Clock(row.Hours), row.Current, row.Depth, row.Best?.Label, row.Scores, row.ZoneShares, row.Holding))],
        table.Table.Depths,
        table.Table.Currents,
        [.. Enumerable.Range(0, table.Table.Depths.Count).Select(r => Enumerable.Range(0, table.Table.Currents.Count).Select(c => table.Table.Weight[r, c]).ToArray())]);

    internal sealed record Row(
        string Time,
        [property: JsonPropertyName("current_m_s")] double Current,
        [property: JsonPropertyName("depth_m")] double Depth,
        string? Best,
        IReadOnlyList<double> Scores,
        IReadOnlyList<double> ZoneShares,
        [property: JsonPropertyName("holding_mass_kg")] double? Holding);
}
