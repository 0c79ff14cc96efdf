using LureSim.Decision.RigChecks;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Path and attitude from above through a twitch, twitch, pause: a loop knot over a snug knot.</summary>
public static class TwitchPath
{
    // Lures drawn along each path.
    private const int Stills = 11;

    // Time after a pull in which a lure glides (s).
    private const double GlideTime = 0.9;

    /// <summary>Draws the figure.</summary>
    /// <param name="focus">The rig.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Figure Create(RigFocus focus, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(focus);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        (string Name, ActionAssessment Run)[] panels = [("loop knot", focus.LoopTwitch.Typical), ("snug knot", focus.SnugTwitch.Typical)];
        (int Start, int End)[] windows = [.. panels.Select(p => Window(p.Run.Trace))];
        double reach = 0, aside = 0;
        for (int i = 0; i < panels.Length; i++)
        {
            ActionTrace t = panels[i].Run.Trace;
            for (int k = windows[i].Start; k < windows[i].End; k++)
            {
                reach = Math.Max(reach, Math.Abs(t.Position[k].X - t.Position[windows[i].Start].X));
                aside = Math.Max(aside, Math.Abs(t.Position[k].Y - t.Position[windows[i].Start].Y));
            }
        }

        double length = focus.Action.Rig.Body.Length;
        double wide = reach + (1.6 * length);
        double half = Math.Max(aside + (0.7 * length), 0.9 * length);
        double plotWidth = options.Pixels - (options.Narrow ? 30 : 60);

        // Equal scales both ways, no taller than a screen.
        double scale = Math.Min(plotWidth / wide, (options.Narrow ? 120 : 130) / half);
        double panelHeight = (2 * half * scale) + 30;
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, $"distance along the pull ({format.LengthUnit})", format.LengthValue(-0.9 * length), format.LengthValue(-0.9 * length + (plotWidth / scale)));
        model.Axes.Add(x);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));
        model.Paint(AnnotationLayer.BelowSeries, area => area.Fill(area.Bounds, Palette.Water));
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int i = 0; i < panels.Length; i++)
                Panel(area, i, panels[i].Name, panels[i].Run, windows[i], focus, options, format);
        });
        return new Figure(options)
        {
            Name = "twitch-path",
            Section = FigureSection.Rig,
            Title = "Twitch, twitch, pause from above: loop knot and snug knot",
            Subtitle = $"{format.LureText(focus.Action.Rig.Body)}{(focus.Action.Rig.Head.IsNone ? "" : ", " + format.HeadText(focus.Action.Rig.Head))}",
            Model = model,
            PlotHeight = (2 * panelHeight) + (options.Narrow ? 50 : 60),
            Keys =
            [
                KeyItem.Line("path of the lure's middle", Palette.Blue, 1.6, null),
                KeyItem.Symbol("a twitch begins", (rc, p, _) => Shapes.Marker(rc, p, MarkerShape.Triangle, true, Palette.Vermilion, 4.5)),
            ],
            Caption = "Both scales are the same: lengths and angles are true. The rod is far to the right; the lure is drawn at even steps of time, its nose to the rod.",
            AltText = $"On a loop knot {SwimmingWords.It(focus.LoopTwitch, options.Units)}. On a snug knot {SwimmingWords.It(focus.SnugTwitch, options.Units)}.",
        };
    }

    // From just before the first twitch to the end of its glide after the last of the group: in a longer pause a lure only sinks and turns on its slack line, which tells nothing from above.
    internal static (int Start, int End) Window(ActionTrace trace)
    {
        IReadOnlyList<TowStroke> strokes = trace.Tow.Strokes;
        double from = strokes.Count > 0 ? Math.Max(0, strokes[0].Start - 0.1) : 0;
        double to = trace.Count > 0 ? trace.Time[^1] : 0;

        // The group of twitches ends where the next comes after a longer wait than between the first two.
        TowStroke? last = strokes.Count > 0 ? strokes[^1] : null;
        for (int i = 2; i < strokes.Count; i++)
        {
            if (strokes[i].Start - strokes[i - 1].Start > 1.2 * (strokes[1].Start - strokes[0].Start))
            {
                to = strokes[i].Start;
                last = strokes[i - 1];
                break;
            }
        }

        if (last is not null) to = Math.Min(to, last.PullEnd + GlideTime);
        int start = Math.Clamp(Array.FindIndex(trace.Time, t => t >= from), 0, Math.Max(0, trace.Count - 1));
        int end = Array.FindIndex(trace.Time, t => t >= to);
        return (start, end < 0 ? trace.Count : Math.Max(end, Math.Min(trace.Count, start + 1)));
    }

    private static void Panel(PaintArea area, int index, string name, ActionAssessment run, (int Start, int End) window, RigFocus focus, FigureOptions options, UnitFormat format)
    {
        double top = area.Bounds.Top + (index * area.Bounds.Height / 2), height = area.Bounds.Height / 2;
        if (index > 0)
            area.Line([new(area.Bounds.Left, top), new(area.Bounds.Right, top)], Palette.Line, 1);
        area.Text(new ScreenPoint(area.Bounds.Left + 8, top + 5), name, options.FontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Top, bold: true);
        string figures = Figures(run.Report, options);
        area.Text(new ScreenPoint(area.Bounds.Right - 8, top + 6), figures, options.SmallFontSize, Palette.SoftInk, HorizontalAlignment.Right, VerticalAlignment.Top);
        ActionTrace trace = run.Trace;
        if (window.End - window.Start < 2)
        {
            area.Text(new ScreenPoint(area.Bounds.Left + (area.Bounds.Width / 2), top + (height / 2)), "could not be computed", options.FontSize, Palette.SoftInk);
            return;
        }

        double scale = Math.Abs(area.At(format.LengthValue(1), 0).X - area.At(0, 0).X);
        Vector3d origin = trace.Position[window.Start];
        double middle = top + 14 + ((height - 14) / 2);
        double zero = area.At(0, 0).X;
        ScreenPoint Map(Vector3d p) => new(zero + ((p.X - origin.X) * scale), middle - ((p.Y - origin.Y) * scale));
        area.Line([new(area.Bounds.Left, middle), new(area.Bounds.Right, middle)], Palette.Line, 0.8, [2, 4]);
        List<ScreenPoint> path = [];
        for (int k = window.Start; k < window.End; k++) path.Add(Map(trace.Position[k]));
        var outline = new LureOutline(focus.Action.Rig, focus.Parts);
        for (int s = 0; s < Stills; s++)
        {
            int k = window.Start + (int)Math.Round((window.End - 1 - window.Start) * s / (Stills - 1.0));
            Attitude attitude = trace.Attitude[k];
            Vector3d at = trace.Position[k];
            outline.Draw(area.Context, p => Map(at + attitude.ToWater(p)), scale, trace.TailAngle[k], faint: s % 2 == 1);
        }

        area.Line(path, Palette.Blue, 1.6);
        foreach (TowStroke stroke in trace.Tow.Strokes)
        {
            int k = Array.FindIndex(trace.Time, t => t >= stroke.Start);
            if (k >= window.Start && k < window.End)
                Shapes.Marker(area.Context, Map(trace.Position[k]), MarkerShape.Triangle, true, Palette.Vermilion, 4.5);
        }
    }

    private static string Figures(ActionReport report, FigureOptions options)
    {
        string angle = $"{UnitFormat.Number(report.DartAngle * 180 / Math.PI, 0)}° off the line";
        return options.Narrow ? $"{SwimmingWords.Word(report.Verdict)}, {angle}" : $"{SwimmingWords.Word(report.Verdict)}: {angle}, {options.Format.SizeText(report.DartTravel)} a twitch, glides {options.Format.SizeText(report.Glide)}";
    }
}
