using LureSim.Decision.RigChecks;
using LureSim.Report.Units;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace LureSim.Report.Figures;

/// <summary>Heading of the lure second by second through a twitch, twitch, pause, on a loop and on a snug knot.</summary>
public static class TwitchAttitude
{
    /// <summary>Draws the figure.</summary>
    /// <param name="focus">The rig.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Figure Create(RigFocus focus, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(focus);
        ArgumentNullException.ThrowIfNull(options);
        List<DataPoint> loop = Heading(focus.LoopTwitch.Trace), snug = Heading(focus.SnugTwitch.Trace);
        double size = loop.Concat(snug).Select(p => Math.Abs(p.Y)).DefaultIfEmpty(10).Max();
        double most = Math.Clamp(Math.Ceiling(size / 10) * 10, 10, 180);
        double end = loop.Concat(snug).Select(p => p.X).DefaultIfEmpty(1).Max();
        PlotModel model = PlotBase.Model(options);
        model.Axes.Add(PlotBase.Axis(options, AxisPosition.Bottom, "time (s)", 0, end));
        PlotAxis y = PlotBase.Axis(options, AxisPosition.Left, "nose right — left (°)", -1.12 * most, 1.12 * most);
        y.LabelFormatter = value => UnitFormat.Number(Math.Abs(value), 0);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            foreach (TowStroke stroke in focus.LoopTwitch.Trace.Tow.Strokes)
            {
                OxyRect band = area.Between(stroke.Start, -1.12 * most, Math.Min(end, stroke.PullEnd), 1.12 * most);
                area.Fill(band, Palette.Zone);
            }
        });
        Add(model, loop, Palette.Blue, LineStyle.Solid, 2.4);
        Add(model, snug, Palette.Vermilion, LineStyle.Dash, 2);
        return new Figure(options)
        {
            Name = "twitch-attitude",
            Section = FigureSection.Rig,
            Title = "How far the nose swings at each twitch",
            Subtitle = $"{focus.Action.Rig.Body.Label}{(focus.Action.Rig.Head.IsNone ? "" : ", " + options.Format.HeadText(focus.Action.Rig.Head))}",
            Model = model,
            PlotHeight = options.Narrow ? 250 : 260,
            Keys =
            [
                KeyItem.Line("loop knot", Palette.Blue, 2.4, null),
                KeyItem.Line("snug knot", Palette.Vermilion, 2, [6, 4]),
                KeyItem.Box("rod pulls", Palette.Zone, Palette.ZoneEdge),
            ],
            Caption = "Zero is straight towards the rod. After each pull the line is slack and the lure goes where its nose points: the farther it swings, the farther it darts.",
            AltText = $"Heading against time. Loop knot: up to {Most(loop)} degrees off the line; snug knot: up to {Most(snug)} degrees.",
        };
    }

    private static void Add(PlotModel model, List<DataPoint> points, OxyColor colour, LineStyle style, double thickness)
    {
        LineSeries series = new() { Color = colour, LineStyle = style, StrokeThickness = thickness, LineJoin = LineJoin.Round };
        series.Points.AddRange(points);
        model.Series.Add(series);
    }

    private static List<DataPoint> Heading(ActionTrace trace)
    {
        List<DataPoint> points = [];
        double last = double.NaN;
        for (int i = 0; i < trace.Count; i++)
        {
            double degrees = trace.Attitude[i].Yaw * 180 / Math.PI;

            // A lure that has turned right round must not draw a line across the plot.
            if (Math.Abs(degrees - last) > 180)
                points.Add(DataPoint.Undefined);
            points.Add(new DataPoint(trace.Time[i], degrees));
            last = degrees;
        }

        return points;
    }

    private static string Most(List<DataPoint> points) => UnitFormat.Number(points.Where(p => p.IsDefined()).Select(p => Math.Abs(p.Y)).DefaultIfEmpty(0).Max(), 0);
}
