using LureSim.Decision.Colours;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>What the colors of the box come to where the lure runs, as the page draws it.</summary>
internal static class ColorPicture
{
    // A swatch darker than this takes white letters (relative luminance at which black and white read equally well).
    private const double Dark = 0.179;

    /// <summary>The picture.</summary>
    /// <param name="question">The question.</param>
    /// <param name="run">Run of the lure that is looked at.</param>
    /// <param name="format">Units.</param>
    /// <param name="asked">A color that is asked about at a depth, whatever is in the box; null for what the box comes to.</param>
    public static ColorsView Of(BenchQuestion question, Candidate run, UnitFormat format, AskedColor? asked = null)
    {
        Scenario scenario = question.Scenario;
        double at = Math.Clamp(run.Coverage.MedianDepth, 0, scenario.Spot.Depth);
        if (asked is not null) return Beside(scenario, asked.Name, Math.Min(asked.Depth ?? scenario.Spot.Depth, scenario.Spot.Depth), format);
        ColourFinding found = SpotColours.At(scenario, run.Rig.Body, ColourAdvice.Running(run.Track, scenario.Spot), at, format.LengthScale);
        ColourChart chart = found.Chart;
        (List<DepthColors> rows, int running) = Rows(chart, at, format, (row, column) => Swatch(chart, row, column));
        ColourAdvice advice = found.Advice;
        ColourWorth[] order = [.. advice.Colours.OrderByDescending(color => color.SeenFrom)];
        double farthest = Math.Max(1e-6, order[0].SeenFrom);
        List<SightView> seen = [.. order.Select(color => new SightView(
            color.Name,
            ColourWords.SeenFrom(advice, color, format),
            (int)Math.Round(100 * Math.Clamp(color.SeenFrom / farthest, 0, 1)),
            PictureWords.Against(color.Seen.Mode),
            color.Tied && advice.Tied.Count > 1))];
        return new ColorsView(
            $"{format.HandText(at)} down, where it runs",
            rows,
            running,
            seen,
            $"How far off {Grammar.Article(FishWords.Everyday(scenario.Spot.TargetFish))} sees each down there",
            "Order firm, distance rough; what the bracket ties, the model cannot tell apart.");
    }

    // A color beside white and chartreuse, whatever is in the box, and how light it is there against white: the question of a lesson.
    private static ColorsView Beside(Scenario scenario, string color, double at, UnitFormat format)
    {
        string[] names = [.. ((string[])[color, "white", "chartreuse"]).Distinct()];
        ColourChart chart = SpotColours.Chart(scenario with { Tackle = scenario.Tackle with { Colours = names, MeasuredColours = [], Patterns = [] } }, format.LengthScale);
        int white = Array.IndexOf(names, "white");
        (List<DepthColors> rows, int running) = Rows(chart, at, format, AgainstWhite);
        return new ColorsView($"{format.HandText(at)} down", rows, running, [], "", "");

        SwatchView AgainstWhite(int row, int column)
        {
            SwatchView swatch = Swatch(chart, row, column);
            double share = chart[row, column].RelativeLuminance / Math.Max(1e-9, chart[row, white].RelativeLuminance);
            return swatch with { Word = column == white ? "" : $"{UnitFormat.PercentText(share)} as light as white" };
        }
    }

    // The depths of the chart, and which of them is nearest to one.
    private static (List<DepthColors> Rows, int Nearest) Rows(ColourChart chart, double at, UnitFormat format, Func<int, int, SwatchView> swatch) => (
        [
            .. chart.Depths.Select((depth, row) => new DepthColors(
                depth == 0 ? "surface" : format.LengthText(depth),
                [.. Enumerable.Range(0, chart.Colours.Count).Select(column => swatch(row, column))])),
        ],
        Enumerable.Range(0, chart.Depths.Count).MinBy(row => Math.Abs(chart.Depths[row] - at)));

    private static SwatchView Swatch(ColourChart chart, int row, int column)
    {
        ColourCell cell = chart[row, column];
        Srgb used = cell.EyeSwatch;
        return new SwatchView(
            chart.Colours[column].Name,
            used.Hex.ToLowerInvariant(),
            cell.UnadaptedSwatch.Hex.ToLowerInvariant(),
            ColourWords.Text(cell.Word),
            cell.RelativeLuminance > Dark ? "#000000" : "#ffffff");
    }
}
