using LureSim.Report.Rendering;
using LureSim.Report.Units;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>A linear axis that can leave out ticks outside a part of its range.</summary>
internal sealed class PlotAxis : LinearAxis
{
    /// <summary>Which ticks are shown.</summary>
    public Func<double, bool> IsShown { get; set; } = static _ => true;

    public override void GetTickValues(out IList<double> majorLabelValues, out IList<double> majorTickValues, out IList<double> minorTickValues)
    {
        base.GetTickValues(out majorLabelValues, out majorTickValues, out minorTickValues);
        majorLabelValues = [.. majorLabelValues.Where(IsShown)];
        majorTickValues = [.. majorTickValues.Where(IsShown)];
    }
}

/// <summary>The look that all plots share.</summary>
internal static class PlotBase
{
    public static PlotModel Model(FigureOptions options) => new()
    {
        DefaultFont = BundledFont.SvgFamilies,
        DefaultFontSize = options.FontSize,
        Padding = new OxyThickness(6, 8, 12, 6),
        PlotAreaBorderColor = Palette.Line,
        PlotAreaBorderThickness = new OxyThickness(1),
        TextColor = Palette.Ink,
        IsLegendVisible = false,
        AxisTierDistance = 2,
    };

    /// <summary>A linear axis from <paramref name="from"/> to <paramref name="to"/> with round steps.</summary>
    public static PlotAxis Axis(FigureOptions options, AxisPosition position, string title, double from, double to)
    {
        bool vertical = position is AxisPosition.Left or AxisPosition.Right;
        return new PlotAxis
        {
            Position = position,
            Title = title,
            Minimum = from,
            Maximum = to,
            FontSize = options.FontSize - 1,
            TitleFontSize = options.FontSize,
            TicklineColor = Palette.Line,
            AxislineColor = Palette.Line,
            MajorGridlineStyle = LineStyle.Solid,
            MajorGridlineColor = Palette.Grid,
            MajorGridlineThickness = 1,
            MinorTickSize = 0,
            MajorTickSize = 5,
            TickStyle = TickStyle.Outside,
            IntervalLength = vertical ? 48 : options.Narrow ? 62 : 84,
            AxisTitleDistance = 6,
            AxisTickToLabelDistance = 3,
            IsPanEnabled = false,
            IsZoomEnabled = false,
        };
    }

    /// <summary>A depth axis, positive down, without numbers above the surface.</summary>
    public static PlotAxis DepthAxis(FigureOptions options, double top, double bottom)
    {
        UnitFormat format = options.Format;
        PlotAxis axis = Axis(options, AxisPosition.Left, $"depth ({format.LengthUnit})", top, bottom);
        axis.StartPosition = 1;
        axis.EndPosition = 0;
        axis.IsShown = value => value >= -1e-9;
        axis.LabelFormatter = value => UnitFormat.Number(value, 2);
        return axis;
    }

    /// <summary>An axis that only scales.</summary>
    public static LinearAxis Hidden(AxisPosition position, double from, double to) => new()
    {
        Position = position,
        Minimum = from,
        Maximum = to,
        IsAxisVisible = false,
    };

    /// <summary>Adds a painter.</summary>
    public static void Paint(this PlotModel model, AnnotationLayer layer, Action<PaintArea> paint, bool clip = true) =>
        model.Annotations.Add(new Painter(layer, paint, clip));

    /// <summary>Draws the strike zone as a band over the whole plot.</summary>
    public static void PaintZone(PaintArea area, double top, double bottom, double left, double right)
    {
        OxyRect band = area.Between(left, top, right, bottom);
        area.Fill(band, Palette.Zone);
        area.Line([new(band.Left, band.Top), new(band.Right, band.Top)], Palette.ZoneEdge, 1.2, [5, 3]);
        area.Line([new(band.Left, band.Bottom), new(band.Right, band.Bottom)], Palette.ZoneEdge, 1.2, [5, 3]);
    }

    /// <summary>Points spread along a horizontal line of the drawing, from the given end.</summary>
    public static List<ScreenPoint> Along(double left, double right, double y, bool fromRight = false)
    {
        const int count = 25;
        List<ScreenPoint> points = [];
        for (int i = 0; i < count; i++)
        {
            double share = (i + 0.5) / count;
            points.Add(new ScreenPoint(fromRight ? right - (share * (right - left)) : left + (share * (right - left)), y));
        }

        return points;
    }
}
