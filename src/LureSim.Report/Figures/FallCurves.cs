using LureSim.Decision;
using LureSim.Model;
using LureSim.Report.Units;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace LureSim.Report.Figures;

/// <summary>Count-down: seconds of free fall to each depth.</summary>
public static class FallCurves
{
    /// <summary>Draws the figure from the slack-line columns of the table.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="fall">The count-down table.</param>
    /// <param name="first">Jig head of the first choice, or null.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(Scenario scenario, FallTable fall, JigHead? first, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(fall);
        ArgumentNullException.ThrowIfNull(options);

        UnitFormat format = options.Format;
        Spot spot = scenario.Spot;
        Dictionary<JigHead, HeadStyle> styles = HeadStyle.For(scenario.Tackle.JigHeads.Concat(fall.Columns.Select(c => c.Head)), format);
        List<(HeadStyle Style, bool First, List<DataPoint> Points)> curves = [];
        foreach (FallColumn column in fall.Columns)
        {
            List<DataPoint> points = [new DataPoint(0, 0)];
            for (int i = 0; i < Math.Min(fall.Depths.Count, column.SlackLineSeconds.Count); i++)
            {
                if (column.SlackLineSeconds[i] is { } seconds && double.IsFinite(seconds) && fall.Depths[i] > 0)
                    points.Add(new DataPoint(seconds, format.LengthValue(fall.Depths[i])));
            }

            curves.Add((styles[column.Head], column.Head == first, points));
        }

        // A head that hardly sinks would squeeze all others to the left: beyond four times the median it runs out of the plot.
        List<double> ends = [.. curves.Select(c => c.Points[^1].X).Where(e => e > 0).Order()];
        double longest = ends.Count == 0 ? 10 : Math.Min(ends[^1], 4 * ends[ends.Count / 2]);
        double top = -0.04 * format.LengthValue(spot.Depth);
        double floor = WaterScene.FloorFor(spot, format, top, options.Narrow ? 300 : 280, 30);
        double right = longest * 1.06;

        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, "count from when it hits the water (s)", 0, right);
        PlotAxis y = PlotBase.DepthAxis(options, top, floor);
        x.MajorGridlineStyle = LineStyle.None;
        y.MajorGridlineStyle = LineStyle.None;
        model.Axes.Add(x);
        model.Axes.Add(y);
        WaterScene scene = new(spot, format, 0, right, floor);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            area.Fill(area.Bounds, Palette.Sky);
            scene.Paint(area);
        });
        foreach ((HeadStyle style, bool isFirst, List<DataPoint> points) in curves.OrderBy(c => c.First))
        {
            LineSeries series = new() { Color = style.Colour, StrokeThickness = isFirst ? 3.6 : 1.7, LineJoin = LineJoin.Round };
            series.Points.AddRange(points);
            model.Series.Add(series);
        }

        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            LabelPlacer placer = new(area.Bounds);
            List<(HeadStyle Style, bool First, List<ScreenPoint> Line)> lines = [.. curves.Select(c => (c.Style, c.First, Refine(area, c.Points)))];
            foreach ((HeadStyle style, bool isFirst, List<ScreenPoint> line) in lines)
            {
                placer.AddLine(line);
                int place = lines.FindIndex(l => l.Style == style);
                int at = line.Count * (3 + (place % 4)) / 8;
                if (at < line.Count && area.Bounds.Contains(line[at]))
                    Shapes.Marker(area.Context, line[at], style.Shape, style.Filled, style.Colour, isFirst ? 4.2 : 3.4);
            }

            IEnumerable<LabelRequest> heads = lines.OrderByDescending(l => l.First).Where(l => l.Line.Any(area.Bounds.Contains)).Select(l => new LabelRequest
            {
                Text = l.First ? $"{l.Style.Label} (choice)" : l.Style.Label,
                Anchors = [.. l.Line.Where(area.Bounds.Contains).Reverse()],
                Size = l.First ? options.FontSize : options.SmallFontSize,
                Bold = true,
                Colour = l.Style.Colour,
                Marker = l.Style,
                AnchorCost = 60,
                Rivals = [.. lines.Where(o => o.Style != l.Style).Select(o => (IReadOnlyList<ScreenPoint>)o.Line)],
            });
            LabelPlacer.Draw(area, [.. scene.Labels(area, options).Concat(heads).Select(placer.Place).OfType<LabelPlacer.Placement>()]);
        });

        FallColumn slow = fall.Columns.MinBy(c => fall.SinkRate(c))!, fast = fall.Columns.MaxBy(c => fall.SinkRate(c))!;
        return new Figure(options)
        {
            Name = "count-down",
            Section = FigureSection.CountDown,
            Title = "Sink count: how long each jig head takes",
            Subtitle = "bail open",
            Model = model,
            PlotHeight = options.Narrow ? 360 : 370,
            Caption = "Count from when it hits the water, bail open: the curve shows how deep the lure is. With the bail closed it sinks slower; see the table.",
            AltText = $"Depth against seconds of sinking with the bail open, a curve for each head. {format.HeadText(slow.Head)}: {format.SinkText(fall.SinkRate(slow))}; {format.HeadText(fast.Head)}: {format.SinkText(fall.SinkRate(fast))}.",
        };
    }

    // Points every few units along a curve, so that labels find an anchor anywhere on it.
    private static List<ScreenPoint> Refine(PaintArea area, List<DataPoint> points)
    {
        List<ScreenPoint> result = [];
        for (int i = 0; i < points.Count; i++)
        {
            ScreenPoint to = area.At(points[i].X, points[i].Y);
            if (i > 0)
            {
                ScreenPoint from = area.At(points[i - 1].X, points[i - 1].Y);
                int steps = Math.Clamp((int)((to - from).Length / 10), 1, 60);
                for (int k = 1; k < steps; k++)
                    result.Add(from + ((to - from) * (k / (double)steps)));
            }

            result.Add(to);
        }

        return result;
    }
}
