using LureSim.Decision.RigChecks;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Swimming;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace LureSim.Report.Figures;

/// <summary>Swing and beat against speed.</summary>
public static class ActionBySpeed
{
    private const double Gap = 0.08;

    /// <summary>Draws the figure.</summary>
    /// <param name="focus">The rig; it must hold a sweep.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is no sweep.</exception>
    public static Figure Create(RigFocus focus, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(focus);
        ArgumentNullException.ThrowIfNull(options);
        if (focus.Sweep is not { Speeds.Count: > 1 } sweep)
            throw new ArgumentException("There is no sweep over speeds.", nameof(focus));
        UnitFormat format = options.Format;
        bool tail = focus.Parts.Tail is not null;
        double[] speeds = [.. sweep.Speeds.Select(format.SpeedValue)];
        double Swing(ActionReport r) => r.Verdict == ActionVerdict.Unknown ? double.NaN : (tail ? r.TailAmplitude : r.YawAmplitude) * 180 / Math.PI;
        double Beat(ActionReport r) => r.Verdict == ActionVerdict.Unknown ? double.NaN : r.Beats ? r.Frequency : 0;
        IEnumerable<ActionReport> all = sweep.AsRigged.Concat(sweep.Clean ?? []);
        double most = Math.Max(5, all.Select(Swing).Where(double.IsFinite).DefaultIfEmpty(5).Max() * 1.15);
        double fastest = Math.Max(1, all.Select(Beat).Where(double.IsFinite).DefaultIfEmpty(1).Max() * 1.15);

        PlotModel model = PlotBase.Model(options);
        model.Axes.Add(PlotBase.Axis(options, AxisPosition.Bottom, $"speed ({format.SpeedUnit})", 0, speeds[^1] * 1.03));
        PlotAxis swing = PlotBase.Axis(options, AxisPosition.Left, $"{(tail ? "tail" : "nose")} (± °)", 0, most);
        swing.StartPosition = 0.5 + (Gap / 2);
        swing.Key = "swing";
        PlotAxis beat = PlotBase.Axis(options, AxisPosition.Left, "beats a second", 0, fastest);
        beat.EndPosition = 0.5 - (Gap / 2);
        beat.Key = "beat";
        model.Axes.Add(swing);
        model.Axes.Add(beat);
        double own = format.SpeedValue(focus.Action.Speed);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            // Speeds at which the rig as it is spins, as bands half a step to each side.
            double step = (speeds[^1] - speeds[0]) / (speeds.Length - 1) / 2;
            for (int i = 0; i < speeds.Length; i++)
            {
                if (sweep.AsRigged[i].Verdict != ActionVerdict.Spins)
                    continue;
                double left = area.At(speeds[i] - step, 0).X, right = Math.Min(area.Bounds.Right, area.At(speeds[i] + step, 0).X);
                OxyRect band = new(left, area.Bounds.Top, Math.Max(0, right - left), area.Bounds.Height);
                area.Fill(band, OxyColor.FromRgb(0xFB, 0xE6, 0xDA));
                Shapes.Hatch(area.Context, band, Hatch.Rising, OxyColor.FromArgb(0x60, 0xD5, 0x5E, 0x00));
            }

            double at = area.At(own, 0).X;
            area.Line([new(at, area.Bounds.Top), new(at, area.Bounds.Bottom)], Palette.ZoneEdge, 1.4, [5, 3]);
        });
        model.Paint(AnnotationLayer.AboveSeries, area => Named(area, speeds, sweep.AsRigged, options));
        Add(model, speeds, sweep.AsRigged, Swing, "swing", true);
        Add(model, speeds, sweep.AsRigged, Beat, "beat", true);
        if (sweep.Clean is { } clean)
        {
            Add(model, speeds, clean, Swing, "swing", false);
            Add(model, speeds, clean, Beat, "beat", false);
        }

        bool spins = sweep.AsRigged.Any(r => r.Verdict == ActionVerdict.Spins);
        return new Figure(options)
        {
            Name = "action-by-speed",
            Section = FigureSection.Rig,
            Title = tail ? "How wide and how fast the tail beats" : "How wide and how fast the nose swings",
            Subtitle = $"{format.LureText(focus.Action.Rig.Body)}{(focus.Action.Rig.Head.IsNone ? "" : ", " + format.HeadText(focus.Action.Rig.Head))}, steady retrieve",
            Model = model,
            PlotHeight = options.Narrow ? 400 : 420,
            Keys =
            [
                KeyItem.Line(sweep.Clean is null ? "the rig" : "as it is rigged", Palette.Blue, 2.4, null),
                .. sweep.Clean is null ? Array.Empty<KeyItem>() : [KeyItem.Line("rigged straight, usual hook", Palette.BluishGreen, 2, [6, 4])],
                KeyItem.Line("this retrieve", Palette.ZoneEdge, 1.4, [5, 3]),
                .. spins ? [KeyItem.Box("spins", OxyColor.FromRgb(0xFB, 0xE6, 0xDA), Palette.Vermilion, Hatch.Rising)] : Array.Empty<KeyItem>(),
            ],
            Caption = "Upper part: how far it swings to each side. Lower part: how often. The words between them say what the lure as it is rigged does instead where the beats stop: dead, it hardly moves; leaning, running off, rolling or spinning, it no longer beats about its line.",
            AltText = $"Swing and beats a second against reel speed. At {format.SpeedText(sweep.Speeds[^1])}: {SwimmingWords.Line(sweep.AsRigged[^1], options.Units)}.",
        };
    }

    // What the rig does, in words between the two parts: one word for each stretch of speeds.
    private static void Named(PaintArea area, double[] speeds, IReadOnlyList<ActionReport> reports, FigureOptions options)
    {
        double y = area.Bounds.Top + (area.Bounds.Height / 2), half = (speeds[1] - speeds[0]) / 2;
        for (int from = 0, to; from < speeds.Length; from = to)
        {
            to = from + 1;
            while (to < speeds.Length && reports[to].Verdict == reports[from].Verdict) to++;
            double left = Math.Max(area.Bounds.Left, area.At(speeds[from] - half, 0).X), right = Math.Min(area.Bounds.Right, area.At(speeds[to - 1] + half, 0).X);
            if (from > 0) area.Line([new(left, y - 9), new(left, y + 9)], Palette.Line, 1);
            string word = SwimmingWords.Word(reports[from].Verdict);
            double wide = area.Context.MeasureText(word, "", options.SmallFontSize, FontWeights.Normal).Width;
            if (wide >= right - left - 4) continue;
            area.Fill(new OxyRect(((left + right) / 2) - (wide / 2) - 3, y - 8, wide + 6, 16), Palette.Halo);
            area.Text(new((left + right) / 2, y), word, options.SmallFontSize, reports[from].IsFault ? Palette.Vermilion : Palette.Ink);
        }
    }

    private static void Add(PlotModel model, double[] speeds, IReadOnlyList<ActionReport> reports, Func<ActionReport, double> value, string axis, bool own)
    {
        LineSeries series = new()
        {
            YAxisKey = axis,
            Color = own ? Palette.Blue : Palette.BluishGreen,
            LineStyle = own ? LineStyle.Solid : LineStyle.Dash,
            StrokeThickness = own ? 2.4 : 2,
            MarkerType = own ? MarkerType.Circle : MarkerType.Square,
            MarkerSize = own ? 3.2 : 2.8,
            MarkerFill = own ? Palette.Blue : OxyColors.White,
            MarkerStroke = own ? Palette.Blue : Palette.BluishGreen,
            MarkerStrokeThickness = 1.4,
            LineJoin = LineJoin.Round,
        };
        for (int i = 0; i < speeds.Length; i++)
            series.Points.Add(new DataPoint(speeds[i], value(reports[i])));
        model.Series.Add(series);
    }
}
