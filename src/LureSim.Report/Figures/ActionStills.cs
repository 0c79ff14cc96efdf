using LureSim.Decision.RigChecks;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Stills of the lure on its retrieve, seen from above and from the side, through one beat or turn.</summary>
public static class ActionStills
{
    private const int WideStills = 6;
    private const int NarrowStills = 4;

    // Time shown where nothing beats or turns (s).
    private const double Plain = 1;

    /// <summary>Draws the figure.</summary>
    /// <param name="focus">The rig.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Figure Create(RigFocus focus, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(focus);
        ArgumentNullException.ThrowIfNull(options);
        ActionAssessment run = focus.Action.Retrieve.Typical;
        ActionTrace trace = run.Trace;
        int count = options.Narrow ? NarrowStills : WideStills;
        double period = Period(run.Report);
        double end = trace.Count > 0 ? trace.Time[^1] : 0;
        double start = Math.Max(0, end - period);
        double cell = (options.Pixels - 90) / count;
        double scale = 0.86 * cell / (focus.Action.Rig.Body.Length * 1.12);
        double row = Math.Max(54, Math.Min(cell, (0.75 * cell) + 10));
        PlotModel model = PlotBase.Model(options);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Bottom, 0, count));
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));
        model.PlotAreaBorderThickness = new OxyThickness(0);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            const double margin = 62;
            double step = (area.Bounds.Width - margin) / count;
            double rowHeight = (area.Bounds.Height - 22) / 2;
            string[] names = ["from above", "from the side"];
            for (int r = 0; r < 2; r++)
            {
                OxyRect band = new(area.Bounds.Left + margin, area.Bounds.Top + (r * rowHeight) + 2, area.Bounds.Width - margin, rowHeight - 4);
                area.Fill(band, Palette.Water);
                double middle = band.Top + (band.Height / 2);
                area.Line([new(band.Left, middle), new(band.Right, middle)], Palette.Line, 0.7, [2, 4]);
                string[] words = names[r].Split(' ', 2);
                area.Text(new ScreenPoint(area.Bounds.Left + 2, middle - 8), words[0], options.SmallFontSize, Palette.SoftInk, HorizontalAlignment.Left);
                area.Text(new ScreenPoint(area.Bounds.Left + 2, middle + 8), words[1], options.SmallFontSize, Palette.SoftInk, HorizontalAlignment.Left);
            }

            if (trace.Count < 2)
                return;
            var outline = new LureOutline(focus.Action.Rig, focus.Parts);
            for (int i = 0; i < count; i++)
            {
                double time = start + (period * i / count);
                int k = Array.FindIndex(trace.Time, t => t >= time - 1e-9);
                if (k < 0) k = trace.Count - 1;
                Attitude attitude = trace.Attitude[k];
                double cx = area.Bounds.Left + margin + ((i + 0.5) * step);
                for (int r = 0; r < 2; r++)
                {
                    double cy = area.Bounds.Top + (r * rowHeight) + (rowHeight / 2);
                    bool above = r == 0;
                    outline.Draw(area.Context, p =>
                    {
                        Vector3d w = attitude.ToWater(p);
                        return new ScreenPoint(cx + (w.X * scale), cy - ((above ? w.Y : w.Z) * scale));
                    }, scale, trace.TailAngle[k], faint: false);
                }

                area.Text(new ScreenPoint(cx, area.Bounds.Bottom - 9), $"{UnitFormat.Number(time - start, 2)} s", options.SmallFontSize, Palette.SoftInk);
            }
        });
        return new Figure(options)
        {
            Name = "action-stills",
            Section = FigureSection.Rig,
            Title = $"What it looks like: {SwimmingWords.Word(run.Report.Verdict)}",
            Subtitle = $"{options.Format.LureText(focus.Action.Rig.Body)}{(focus.Action.Rig.Head.IsNone ? "" : ", " + options.Format.HeadText(focus.Action.Rig.Head))} at {options.Format.SpeedText(focus.Action.Speed)}, the rod to the right",
            Model = model,
            PlotHeight = (2 * row) + 40,
            Caption = run.Report.Beats && Math.Abs(run.Report.SpinRate) < SpinOnset.Onset
                ? "One beat, to scale."
                : Math.Abs(run.Report.SpinRate) >= SpinOnset.Onset ? "One turn over, to scale." : "One second, to scale.",
            AltText = $"The lure on its retrieve, from above and from the side: {SwimmingWords.It(focus.Action.Retrieve, options.Units)}.",
        };
    }

    private static double Period(ActionReport report)
    {
        double rate = Math.Abs(report.SpinRate) >= SpinOnset.Onset ? Math.Abs(report.SpinRate) : report.Beats ? report.Frequency : 0;
        return rate > 0.2 ? Math.Clamp(1 / rate, 0.05, 3) : Plain;
    }
}
