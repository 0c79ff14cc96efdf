using System.Text.Json.Serialization;
using LureSim.Casting;
using LureSim.Report.Units;
using LureSim.Report.Words;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows the casts of a box.</summary>
internal static class CastView
{
    /// <summary>Prints the table.</summary>
    public static void Write(IAnsiConsole console, CastTable table, UnitFormat units)
    {
        console.MarkupLineInterpolated($"[bold]{table.Scenario.Title}[/]");
        console.MarkupLineInterpolated($"{CastingWords.Basis(table, units)}");
        Views.WriteColumns(
            console,
            $"how far each one flies: {table.Presentation.Name}",
            new ViewColumn("lure", [.. table.Rows.Select(row => Views.Escape(CastingWords.Name(row, units)))], false),
            [
                new ViewColumn($"cast ({units.Length.Symbol})", [.. table.Rows.Select(row => units.Length.Number(row.Cast.Length))], true),
                new ViewColumn($"in still air ({units.Length.Symbol})", [.. table.Rows.Select(row => units.Length.Number(row.Cast.InStillAir))], true),
                new ViewColumn("", [.. table.Rows.Select(row => CastingWords.Note(row.Cast, units))], false),
            ]);
    }

    /// <summary>The table as CSV, one row a lure.</summary>
    public static string ToCsv(CastTable table)
    {
        var csv = new Csv("head", "body", "mass_kg", "cast_m", "cast_in_still_air_m", "wanted_m", "launch_speed_m_s", "effort", "falls_short");
        foreach (CastRow row in table.Rows)
            csv.Row(row.Head.Label, row.Body.Label, row.Cast.Mass, row.Cast.Length, row.Cast.InStillAir, row.Cast.Wanted, Known(row.Cast.LaunchSpeed), Known(row.Cast.Effort), row.Cast.FallsShort ? 1 : 0);
        return csv.ToString();
    }

    /// <summary>A number, or none.</summary>
    public static double? Known(double value) => double.IsFinite(value) ? value : null;
}

/// <summary>The casts of a box in JSON.</summary>
internal sealed record CastJson(string Title, string Presentation, IReadOnlyList<CastJson.Row> Lures)
{
    public static CastJson Of(CastTable table) => new(table.Scenario.Title, table.Presentation.Name, [.. table.Rows.Select(row => new Row(
        row.Head.IsNone ? null : HeadJson.Of(row.Head), row.Body.Label, row.Cast.Mass, row.Cast.Length, row.Cast.InStillAir, row.Cast.Wanted, CastView.Known(row.Cast.LaunchSpeed), CastView.Known(row.Cast.Effort), row.Cast.Rating, row.Cast.FallsShort))]);

    internal sealed record Row(
        HeadJson? Head,
        string Body,
        [property: JsonPropertyName("mass_kg")] double Mass,
        [property: JsonPropertyName("cast_m")] double Cast,
        [property: JsonPropertyName("cast_in_still_air_m")] double InStillAir,
        [property: JsonPropertyName("wanted_m")] double? Wanted,
        [property: JsonPropertyName("launch_speed_m_s")] double? LaunchSpeed,
        double? Effort,
        RodRating Rating,
        bool FallsShort);
}
