using System.Text.Json.Serialization;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Report.Units;
using LureSim.Report.Words;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows how sure a choice is.</summary>
internal static class UncertaintyView
{
    /// <summary>Prints one line a head.</summary>
    public static void Write(IAnsiConsole console, UncertaintyStudy study, UnitFormat units)
    {
        Views.WriteColumns(
            console,
            $"over {study.Draws.Count} what-if tries: typical (8 times in 10)",
            new ViewColumn("jig head", [.. study.Heads.Select(h => Views.Escape(units.HeadText(h.Head)))], false),
            [
                new ViewColumn("best in", [.. study.Heads.Select(h => UncertaintyWords.Tries(h.ChanceBest, study))], true),
                new ViewColumn("in zone (%)", [.. study.Heads.Select(h => Band(h.ZoneShare, UnitFormat.Share))], true),
                new ViewColumn("to zone (s)", [.. study.Heads.Select(h => Band(h.TimeToZone, UnitFormat.Seconds))], true),
                new ViewColumn("bottom (%)", [.. study.Heads.Select(h => Band(h.BottomShare, UnitFormat.Share))], true),
                new ViewColumn("grass (%)", [.. study.Heads.Select(h => Band(h.GrassShare, UnitFormat.Share))], true),
                new ViewColumn($"sideways ({units.Length.Symbol})", [.. study.Heads.Select(h => Band(h.Swing, units.Length))], true),
                new ViewColumn("average score", [.. study.Heads.Select(h => UnitFormat.Share.Number(h.Score.Mean))], true),
            ]);
    }

    /// <summary>Every draw of every head as CSV.</summary>
    public static string ToCsv(UncertaintyStudy study)
    {
        var csv = new Csv("head", "head_mass_kg", "draw", "current_m_s", "cast_m", "retrieve_speed_m_s", "depth_m", "rod_tip_m", "line_drag_factor", "line_law", "zone_share", "time_to_zone_s", "bottom_share", "grass_share", "median_depth_m", "drift_across_m");
        foreach (HeadUncertainty head in study.Heads)
        {
            for (int d = 0; d < study.Draws.Count; d++)
            {
                IReadOnlyList<double> v = study.Draws[d].Values;
                Coverage c = head.Outcomes[d];
                csv.Row(head.Head.Label, head.Head.Mass, d + 1, v[0], v[1], v[2], v[3], v[4], v[5], v[6], c.ZoneShare, c.TimeToZone, c.BottomShare, c.GrassShare, c.MedianDepth, c.DriftAcross);
            }
        }

        return csv.ToString();
    }

    private static string Band(Interval i, DisplayUnit unit) => $"{unit.Number(i.Median)} ({unit.Number(i.Low)} to {unit.Number(i.High)})";
}

/// <summary>A study in JSON; null stands for never.</summary>
internal sealed record UncertaintyJson(
    int Draws,
    string Presentation,
    IReadOnlyList<UncertaintyJson.HeadRow> Heads,
    UncertaintyJson.DriversJson ChoiceDrivers,
    double NoneBest)
{
    public static UncertaintyJson Of(UncertaintyStudy study) => new(
        study.Draws.Count,
        study.Presentation.Name,
        [.. study.Heads.Select(h => new HeadRow(HeadJson.Of(h.Head), h.ChanceBest, h.ZoneShare, h.TimeToZone, h.BottomShare, h.GrassShare, h.Swing, h.MedianDepth, h.Score, h.ReachesZone, h.ReachesBottom, h.Fouls, DriversJson.Of(h.Drivers), h.Failed))],
        DriversJson.Of(study.ChoiceDrivers),
        study.NoneBest);

    internal sealed record HeadRow(
        HeadJson Head,
        double ChanceBest,
        Interval ZoneShare,
        [property: JsonPropertyName("time_to_zone_s")] Interval TimeToZone,
        Interval BottomShare,
        Interval GrassShare,
        [property: JsonPropertyName("swing_m")] Interval Swing,
        [property: JsonPropertyName("median_depth_m")] Interval MedianDepth,
        Interval Score,
        double ReachesZone,
        double ReachesBottom,
        double Fouls,
        DriversJson Drivers,
        int Failed);

    internal sealed record DriversJson(IReadOnlyList<SpreadDriver> Drivers, double Explained, double Noise)
    {
        public static DriversJson Of(SpreadDrivers drivers) => new(drivers.Drivers, drivers.Explained, drivers.Noise);
    }
}
