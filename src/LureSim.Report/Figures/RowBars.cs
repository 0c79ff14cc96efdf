using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>A row of a bar figure: a name on the left and a text on the right over a bar; without a value a heading.</summary>
/// <param name="Label">Name.</param>
/// <param name="Value">Length of the bar on the axis; null for a heading.</param>
/// <param name="Text">What the bar says.</param>
/// <param name="Fill">Colour.</param>
/// <param name="Hatch">Pattern.</param>
/// <param name="Marked">True for the choice.</param>
internal sealed record RowBar(string Label, double? Value, string Text, OxyColor Fill, Hatch Hatch = Hatch.None, bool Marked = false);

/// <summary>Bars one under another, each under its own name: names of any length fit, on a phone too.</summary>
internal static class RowBars
{
    /// <summary>The plot.</summary>
    /// <param name="rows">Rows, top first; at least one.</param>
    /// <param name="axis">Title of the axis.</param>
    /// <param name="from">Start of the axis, 0 or less.</param>
    /// <param name="to">End of the axis, above 0.</param>
    /// <param name="threshold">A value to draw a dashed line at, or null.</param>
    /// <param name="options">Units and width.</param>
    /// <param name="tick">Text of a tick, or null for the number.</param>
    /// <returns>The plot and its height (1/96 inch).</returns>
    public static (PlotModel Model, double Height) Plot(IReadOnlyList<RowBar> rows, string axis, double from, double to, double? threshold, FigureOptions options, Func<double, string>? tick = null)
    {
        double line = options.SmallFontSize * 1.35;
        double bar = options.Narrow ? 12 : 14;
        double row = line + bar + 8;
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, axis, from, to);
        if (tick is not null)
            x.LabelFormatter = tick;
        model.Axes.Add(x);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            double step = area.Bounds.Height / rows.Count;
            for (int r = 0; r < rows.Count; r++)
            {
                RowBar item = rows[r];
                double top = area.Bounds.Top + (r * step);
                if (item.Value is not { } value)
                {
                    area.Fill(new OxyRect(area.Bounds.Left, top, area.Bounds.Width, step), OxyColor.FromRgb(0xF2, 0xF6, 0xF9));
                    area.Text(new ScreenPoint(area.Bounds.Left + 8, top + (step / 2)), item.Label, options.FontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Middle, bold: true);
                    continue;
                }

                area.Text(new ScreenPoint(area.Bounds.Left + 8, top + 3), item.Label, options.SmallFontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Top, bold: item.Marked);
                area.Text(new ScreenPoint(area.Bounds.Right - 8, top + 3), item.Text, options.SmallFontSize, Palette.Ink, HorizontalAlignment.Right, VerticalAlignment.Top, bold: item.Marked);
                if (item.Marked)
                    area.Context.DrawRectangle(new OxyRect(area.Bounds.Left + 2, top + 1, area.Bounds.Width - 4, step - 2), OxyColors.Undefined, Palette.Vermilion, 2, EdgeRenderingMode.Adaptive);
                if (value == 0)
                    continue;
                double zero = area.At(0, 0).X, end = area.At(Math.Clamp(value, from, to), 0).X;
                OxyRect box = new(Math.Min(zero, end), top + line + 2, Math.Max(1.5, Math.Abs(end - zero)), bar);
                area.Context.DrawRectangle(box, item.Fill, Palette.SoftInk, 0.8, EdgeRenderingMode.Adaptive);
                Shapes.Hatch(area.Context, box, item.Hatch, OxyColor.FromAColor(0x70, Palette.TextOn(item.Fill)));
            }

            if (from < 0)
                area.Line([new(area.At(0, 0).X, area.Bounds.Top), new(area.At(0, 0).X, area.Bounds.Bottom)], Palette.SoftInk, 1.2);
            if (threshold is { } limit)
                area.Line([new(area.At(limit, 0).X, area.Bounds.Top), new(area.At(limit, 0).X, area.Bounds.Bottom)], Palette.SoftInk, 1.2, [5, 3]);
        });
        return (model, (row * rows.Count) + 62);
    }
}
