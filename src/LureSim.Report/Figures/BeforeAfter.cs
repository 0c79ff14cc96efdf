using LureSim.Decision.Observations;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>What was known of each input before and what is known after what was seen: two small distributions a row, over each other.</summary>
public static class BeforeAfter
{
    private const int Bins = 24;

    /// <summary>Draws the figure.</summary>
    /// <param name="update">What was learned.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure, or null where nothing was learned.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Figure? Create(ObservationUpdate update, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(update);
        ArgumentNullException.ThrowIfNull(options);
        LearnedInput[] inputs = [.. update.Learned.OrderBy(input => input.Narrowed).Take(4)];
        if (inputs.Length == 0) return null;
        UnitFormat format = options.Format;
        OxyColor before = Palette.Blue, after = Palette.DarkOrange;
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, "", 0, 1);
        x.IsAxisVisible = false;
        PlotAxis y = PlotBase.Axis(options, AxisPosition.Left, "", 0, inputs.Length);
        y.IsAxisVisible = false;
        y.StartPosition = 1;
        y.EndPosition = 0;
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int r = 0; r < inputs.Length; r++)
            {
                LearnedInput input = inputs[r];
                double low = Math.Min(input.BeforeValues.Min(), input.AfterValues.Min()), high = Math.Max(input.BeforeValues.Max(), input.AfterValues.Max());
                double[] was = Shares(input.BeforeValues, low, high), now = Shares(input.AfterValues, low, high);
                double most = Math.Max(was.Max(), now.Max());
                Steps(area, was, most, r, before, Hatch.Rising);
                Steps(area, now, most, r, after, Hatch.None);
                area.Line([area.At(0, r + 0.92), area.At(1, r + 0.92)], Palette.Line, 1);
                area.Text(area.At(0.01, r + 0.14), $"{Grammar.Capital(ObservationWords.Name(input, format))}", options.FontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Middle, bold: true);
                area.Text(area.At(0.01, r + 0.3), $"{ObservationWords.Band(input.Kind, input.Before, format)}", options.SmallFontSize, before, HorizontalAlignment.Left);
                area.Text(area.At(0.01, r + 0.45), $"now {ObservationWords.Band(input.Kind, input.After, format)}", options.SmallFontSize, after, HorizontalAlignment.Left);
            }
        });
        return new Figure(options)
        {
            Name = "before-after",
            Section = FigureSection.Observed,
            Title = "What you saw narrows it down",
            Subtitle = "before and after, 8 of 10 tries inside the ranges named",
            Model = model,
            PlotHeight = (118 * inputs.Length) + 16,
            Keys = [KeyItem.Box("before", before, OxyColors.White, Hatch.Rising), KeyItem.Box("now", after, after)],
            Caption = "The wider a hill, the less is known. A hill that moved and grew narrow is what the water told.",
            AltText = $"Two hills a row, before and after what was seen. {Grammar.Capital(ObservationWords.Learned(inputs[0], format))}.",
        };
    }

    private static double[] Shares(IReadOnlyList<double> values, double low, double high)
    {
        double[] shares = new double[Bins];
        foreach (double value in values) shares[high > low ? Math.Clamp((int)((value - low) / (high - low) * Bins), 0, Bins - 1) : 0] += 1.0 / values.Count;
        return shares;
    }

    // The right two thirds of a row belong to the hills, the left third to their words.
    private static void Steps(PaintArea area, double[] shares, double most, int row, OxyColor colour, Hatch hatch)
    {
        const double Left = 0.44;
        for (int b = 0; b < Bins; b++)
        {
            if (shares[b] <= 0) continue;
            double from = Left + ((1 - Left) * b / Bins), to = Left + ((1 - Left) * (b + 1) / Bins);
            OxyRect bar = area.Between(from, row + 0.92 - (0.8 * shares[b] / most), to, row + 0.92);
            area.Context.DrawRectangle(bar, OxyColor.FromAColor(hatch == Hatch.None ? (byte)170 : (byte)60, colour), colour, 0.6, EdgeRenderingMode.Adaptive);
            Shapes.Hatch(area.Context, bar, hatch, colour);
        }
    }
}
