using LureSim.Decision.Colours;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>What the colors of the box come to where the lure runs, as the page draws it.</summary>
internal static class ColorPicture
{
    // Distances that differ by less than a tenth are as good as the same: the order is firm, the distance rough.
    private const double Alike = 0.1;

    // A swatch darker than this takes white letters (relative luminance at which black and white read equally well).
    private const double Dark = 0.179;

    /// <summary>The picture.</summary>
    /// <param name="question">The question.</param>
    /// <param name="depth">Depth at which the lure runs (m).</param>
    /// <param name="format">Units.</param>
    public static ColorsView Of(BenchQuestion question, double depth, UnitFormat format)
    {
        Scenario scenario = question.Scenario;
        double at = Math.Clamp(depth, 0, scenario.Spot.Depth);
        ColourFinding found = SpotColours.At(scenario, at, format.LengthScale);
        ColourChart chart = found.Chart;
        List<DepthColors> rows = [];
        int running = 0;
        for (int row = 0; row < chart.Depths.Count; row++)
        {
            if (Math.Abs(chart.Depths[row] - at) < Math.Abs(chart.Depths[running] - at)) running = row;
            rows.Add(new DepthColors(
                chart.Depths[row] == 0 ? "surface" : format.LengthText(chart.Depths[row]),
                [.. Enumerable.Range(0, chart.Colours.Count).Select(column => Swatch(chart, row, column))]));
        }

        double farthest = found.SeenLevel.Count > 0 ? Math.Max(1e-6, found.SeenLevel[0].Distance) : 1;
        List<SightView> seen = [];
        double? before = null;
        foreach (Sighting sighting in found.SeenLevel)
        {
            seen.Add(new SightView(
                sighting.Name,
                sighting.Distance > 0.02 ? $"about {format.LengthText(sighting.Distance)}" : "not made out",
                (int)Math.Round(100 * Math.Clamp(sighting.Distance / farthest, 0, 1)),
                (int)Math.Round(100 * Math.Clamp(sighting.ContrastAtTarget, -1, 1)),
                PictureWords.Against(sighting),
                before is { } last && last - sighting.Distance < Alike * farthest));
            before = sighting.Distance;
        }

        return new ColorsView(
            $"{format.LengthText(at)} down, where it runs",
            rows,
            running,
            seen,
            $"How far off a {scenario.Spot.TargetFish} can make it out, looking level",
            "Order firm, distance rough.");
    }

    private static SwatchView Swatch(ColourChart chart, int row, int column)
    {
        ColourCell cell = chart[row, column];
        Srgb used = cell.AdaptedSwatch;
        return new SwatchView(
            chart.Colours[column].Name,
            used.Hex.ToLowerInvariant(),
            cell.UnadaptedSwatch.Hex.ToLowerInvariant(),
            ColourWords.Text(cell.Word),
            cell.RelativeLuminance > Dark ? "#000000" : "#ffffff");
    }
}
