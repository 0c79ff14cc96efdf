using LureSim.Decision.Comparison;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>Which difference between two rigs matters: each one's part in the change of each measure.</summary>
public static class ComparisonBars
{
    /// <summary>Draws the figure.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(RigComparison comparison, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        List<RowBar> rows = [];
        foreach (MeasureComparison item in comparison.Measures)
        {
            rows.Add(new RowBar($"{ComparisonWords.Name(item.Measure.Kind)}: {ComparisonWords.Value(item.Measure.Kind, item.First, format)} to {ComparisonWords.Value(item.Measure.Kind, item.Second, format)}", null, "", OxyColors.White));
            foreach (FeatureEffect effect in item.Effects)
            {
                rows.Add(new RowBar(
                    ComparisonWords.Name(effect.Feature.Kind, options.Units),
                    100 * Math.Sign(effect.Effect) * effect.Share,
                    $"{ComparisonWords.Signed(item.Measure.Kind, effect.Effect, format)} ({UnitFormat.PercentText(effect.Share)})",
                    effect.Effect < 0 ? Palette.Orange : Palette.SkyBlue,
                    effect.Effect < 0 ? Hatch.Rising : Hatch.None,
                    effect == item.Main));
            }
        }

        (PlotModel model, double height) = RowBars.Plot(rows, "part of the change (%)", -100, 100, null, options, value => UnitFormat.Number(Math.Abs(value), 0));
        return new Figure(options)
        {
            Name = "differences",
            Section = FigureSection.Comparison,
            Title = "Which difference matters",
            Subtitle = $"from \"{comparison.First.Name}\" to \"{comparison.Second.Name}\"",
            Model = model,
            PlotHeight = height,
            Keys =
            [
                KeyItem.Box($"better with \"{comparison.Second.Name}\"", Palette.SkyBlue, Palette.SoftInk),
                KeyItem.Box($"worse with \"{comparison.Second.Name}\"", Palette.Orange, Palette.SoftInk, Hatch.Rising),
                KeyItem.Box("matters most", OxyColors.White, Palette.Vermilion),
            ],
            Caption = "Each difference is switched from one rig to the other in every order; the bar is the average of what it changes. The parts add up to the whole difference.",
            AltText = $"Bars: what each of {UnitFormat.Counted(comparison.Differences.Count, "difference")} does. {string.Join(" ", comparison.Measures.Where(item => item.Main is not null).Select(item => $"{Grammar.Capital(ComparisonWords.Name(item.Measure.Kind))}: mostly the {ComparisonWords.Name(item.Main!.Feature.Kind, options.Units)}."))}",
        };
    }
}
