using LureSim.Decision.Uncertainty;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Which inputs drive the spread: rank correlations of the time in the zone, and of the lead of the heavier of the two best heads, with every input.</summary>
public static class SpreadBars
{
    /// <summary>Draws the figure.</summary>
    /// <param name="study">A study of more than one draw.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(UncertaintyStudy study, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(options);
        HeadUncertainty best = study.Best;
        string head = options.Format.HeadText(best.Head);
        IReadOnlyList<SpreadDriver> zone = best.Drivers.Drivers;
        HeadUncertainty[] pair = study.Rival is { } rival ? [.. new[] { best, rival }.OrderByDescending(h => h.Head.Mass)] : [];
        string lead = options.Units.Spell(pair.Length == 2 ? $"favors the heavier head, {options.Format.HeadText(pair[0].Head)} over {options.Format.HeadText(pair[1].Head)}" : "favors the heavier head");
        int rows = Math.Max(1, zone.Count);
        double noise = best.Drivers.Noise;
        OxyColor zoneColour = Palette.Blue, choiceColour = Palette.DarkOrange;
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, "how strongly it counts", -1.12, 1.12);
        x.MajorStep = 0.5;
        PlotAxis y = CoverageMap.Rows(options, "", rows, i => i < zone.Count ? Label(zone[i].Input, options) : "");
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            OxyRect band = area.Between(-noise, -0.5, noise, rows - 0.5);
            area.Fill(band, OxyColor.FromRgb(0xEE, 0xF1, 0xF4));
            Shapes.Hatch(area.Context, band, Hatch.Rising, OxyColor.FromRgb(0xDC, 0xE1, 0xE6));
        });
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int r = 0; r < zone.Count; r++)
            {
                double other = study.ChoiceDrivers.Drivers.FirstOrDefault(d => d.Input == zone[r].Input)?.RankCorrelation ?? 0;
                Bar(area, zone[r].RankCorrelation, r - 0.36, r - 0.02, zoneColour, Hatch.None);
                Bar(area, other, r + 0.02, r + 0.36, choiceColour, Hatch.Falling);
            }

            area.Line([area.At(0, -0.5), area.At(0, rows - 0.5)], Palette.Ink, 1.2);
        });
        return new Figure(options)
        {
            Name = "spread-bars",
            Section = FigureSection.Certainty,
            Title = "What to check first when you get there",
            Subtitle = $"over {study.Draws.Count} tries with {head}",
            Model = model,
            PlotHeight = (46 * rows) + 66,
            Keys =
            [
                KeyItem.Box($"time in the zone of {head}", zoneColour, zoneColour),
                KeyItem.Box(lead, choiceColour, OxyColors.White, Hatch.Falling),
                KeyItem.Box("may be chance", OxyColor.FromRgb(0xEE, 0xF1, 0xF4), OxyColor.FromRgb(0xB8, 0xC0, 0xC8), Hatch.Rising),
            ],
            Caption = "To the right: the more of it, the more time in the zone, or the better for the heavier head. To the left: the less. Bars inside the hatched band may be chance.",
            AltText = $"Bars: how strongly each input counts for the time in the zone of {head}. {(zone.Count > 0 ? $"First: the {UncertaintyWords.Name(zone[0].Input)}." : "")}".TrimEnd(),
        };
    }

    private static string Label(UncertainInput input, FigureOptions options) => options.Narrow
        ? input switch
        {
            UncertainInput.Cast => "cast",
            UncertainInput.RetrieveSpeed => "speed",
            UncertainInput.Depth => "depth",
            UncertainInput.RodHeight => "rod height",
            UncertainInput.LineDrag => "line drag",
            UncertainInput.LureDrag => "lure drag",
            UncertainInput.LineLaw => "line model",
            _ => UncertaintyWords.Name(input),
        }
        : UncertaintyWords.Name(input);

    private static void Bar(PaintArea area, double value, double from, double to, OxyColor colour, Hatch hatch)
    {
        if (value == 0 || !double.IsFinite(value))
            return;
        OxyRect bar = area.Between(0, from, value, to);
        area.Context.DrawRectangle(bar, colour, OxyColors.White, 0.8, EdgeRenderingMode.Adaptive);
        Shapes.Hatch(area.Context, bar, hatch, OxyColors.White);
    }
}
