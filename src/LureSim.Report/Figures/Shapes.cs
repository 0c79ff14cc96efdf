using System.Diagnostics;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>Shape of a marker.</summary>
internal enum MarkerShape
{
    Circle,
    Square,
    Triangle,
    Diamond,
    TriangleDown,
    Pentagon,
}

/// <summary>Pattern over a filled area, so that it can be told without colour.</summary>
internal enum Hatch
{
    None,
    Rising,
    Falling,
    Level,
}

/// <summary>Small drawings in the figure's own units.</summary>
internal static class Shapes
{
    /// <summary>The frame of what was chosen, just inside a box.</summary>
    public static void Frame(IRenderContext rc, OxyRect box) =>
        rc.DrawRectangle(box.Deflate(new OxyThickness(1.5)), OxyColors.Undefined, Palette.Vermilion, 2.5, EdgeRenderingMode.Adaptive);

    /// <summary>The pieces of a stroke that lie outside of all boxes, from its start to its end.</summary>
    public static IEnumerable<(ScreenPoint From, ScreenPoint To)> Outside(ScreenPoint from, ScreenPoint to, IEnumerable<OxyRect> boxes)
    {
        double at = 0, dx = to.X - from.X, dy = to.Y - from.Y;
        foreach ((double enter, double leave) in boxes.Select(Within).Where(part => part.Leave > part.Enter).OrderBy(part => part.Enter))
        {
            if (enter > at) yield return (Along(at), Along(enter));
            at = Math.Max(at, leave);
        }

        if (at < 1) yield return (Along(at), to);

        ScreenPoint Along(double part) => new(from.X + (part * dx), from.Y + (part * dy));

        // Part of the stroke between both pairs of edges.
        (double Enter, double Leave) Within(OxyRect box)
        {
            (double left, double right) = Between(from.X, dx, box.Left, box.Right);
            (double top, double bottom) = Between(from.Y, dy, box.Top, box.Bottom);
            return (Math.Max(0, Math.Max(left, top)), Math.Min(1, Math.Min(right, bottom)));
        }

        static (double Enter, double Leave) Between(double start, double step, double low, double high)
        {
            if (Math.Abs(step) < 1e-9) return start > low && start < high ? (0, 1) : (1, 0);
            double a = (low - start) / step, b = (high - start) / step;
            return (Math.Min(a, b), Math.Max(a, b));
        }
    }

    /// <summary>A marker, filled or open, with a white rim that lifts it off the lines.</summary>
    public static void Marker(IRenderContext rc, ScreenPoint centre, MarkerShape shape, bool filled, OxyColor colour, double radius)
    {
        OxyColor fill = filled ? colour : OxyColors.White;
        if (shape == MarkerShape.Circle)
        {
            Disc(rc, centre, radius + 1.5, OxyColors.White, OxyColors.Undefined, 0);
            Disc(rc, centre, radius, fill, colour, 1.6);
            return;
        }

        rc.DrawPolygon(Outline(centre, shape, radius + 2), OxyColors.White, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive, null, LineJoin.Miter);
        rc.DrawPolygon(Outline(centre, shape, radius), fill, colour, 1.6, EdgeRenderingMode.Adaptive, null, LineJoin.Miter);
    }

    /// <summary>A disc.</summary>
    public static void Disc(IRenderContext rc, ScreenPoint centre, double radius, OxyColor fill, OxyColor stroke, double thickness) =>
        rc.DrawEllipse(new OxyRect(centre.X - radius, centre.Y - radius, 2 * radius, 2 * radius), fill, stroke, thickness, EdgeRenderingMode.Adaptive);

    /// <summary>An arrow from one point to another.</summary>
    public static void Arrow(IRenderContext rc, ScreenPoint from, ScreenPoint to, OxyColor colour, double thickness, double head)
    {
        ScreenVector along = to - from;
        if (along.Length < 1e-6)
            return;

        along.Normalize();
        ScreenVector across = new(-along.Y, along.X);
        ScreenPoint neck = to - (along * head);
        rc.DrawLine([from, neck], colour, thickness, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        rc.DrawPolygon([to, neck + (across * head * 0.5), neck - (across * head * 0.5)], colour, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive, null, LineJoin.Miter);
    }

    /// <summary>Flow along the line of sight: a dot in a ring towards the viewer, a cross in a ring away.</summary>
    public static void FlowAcross(IRenderContext rc, ScreenPoint centre, double radius, bool away, OxyColor colour)
    {
        Disc(rc, centre, radius, OxyColors.White, colour, 1.6);
        if (!away)
        {
            Disc(rc, centre, radius * 0.3, colour, OxyColors.Undefined, 0);
            return;
        }

        double d = radius * 0.7;
        rc.DrawLine([new(centre.X - d, centre.Y - d), new(centre.X + d, centre.Y + d)], colour, 1.6, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        rc.DrawLine([new(centre.X - d, centre.Y + d), new(centre.X + d, centre.Y - d)], colour, 1.6, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
    }

    /// <summary>Mark for a lure that drags on the bottom: a weight on a line of ground.</summary>
    public static void BottomMark(IRenderContext rc, ScreenPoint centre, double size, OxyColor colour)
    {
        double r = size * 0.4;
        rc.DrawPolygon([new(centre.X - r, centre.Y - r), new(centre.X + r, centre.Y - r), new(centre.X, centre.Y + (r * 0.5))], colour, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive, null, LineJoin.Miter);
        rc.DrawLine([new(centre.X - (r * 1.2), centre.Y + (r * 0.9)), new(centre.X + (r * 1.2), centre.Y + (r * 0.9))], colour, 1.6, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
    }

    /// <summary>Mark for a lure in the grass: three blades.</summary>
    public static void GrassMark(IRenderContext rc, ScreenPoint centre, double size, OxyColor colour)
    {
        double h = size * 0.45;
        foreach (double lean in (ReadOnlySpan<double>)[-0.7, 0.0, 0.7])
        {
            ScreenPoint root = new(centre.X + (lean * h * 0.3), centre.Y + h);
            rc.DrawLine([root, new(centre.X + (lean * h * 0.5), centre.Y), new(centre.X + (lean * h * 1.2), centre.Y - h)], colour, 1.6, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        }
    }

    /// <summary>Fills a rectangle with a pattern.</summary>
    public static void Hatch(IRenderContext rc, OxyRect area, Hatch hatch, OxyColor colour)
    {
        const double pitch = 6;
        if (hatch == Figures.Hatch.None || area.Width < 1 || area.Height < 1)
            return;

        if (hatch == Figures.Hatch.Level)
        {
            List<ScreenPoint> levels = [];
            for (double y = area.Top + (pitch / 2); y < area.Bottom; y += pitch)
            {
                levels.Add(new ScreenPoint(area.Left, y));
                levels.Add(new ScreenPoint(area.Right, y));
            }

            rc.DrawLineSegments(levels, colour, 0.9, EdgeRenderingMode.Adaptive, null, LineJoin.Miter);
            return;
        }

        List<ScreenPoint> segments = [];
        for (double offset = pitch / 2; offset < area.Width + area.Height; offset += pitch)
        {
            // A diagonal that starts on the top or right edge and ends on the left or bottom edge.
            double fromX = Math.Min(offset, area.Width);
            double fromY = Math.Max(0, offset - area.Width);
            double toX = Math.Max(0, offset - area.Height);
            double toY = Math.Min(offset, area.Height);
            if (hatch == Figures.Hatch.Falling)
            {
                fromX = area.Width - fromX;
                toX = area.Width - toX;
            }

            segments.Add(new ScreenPoint(area.Left + fromX, area.Top + fromY));
            segments.Add(new ScreenPoint(area.Left + toX, area.Top + toY));
        }

        rc.DrawLineSegments(segments, colour, 0.9, EdgeRenderingMode.Adaptive, null, LineJoin.Miter);
    }

    private static ScreenPoint[] Outline(ScreenPoint centre, MarkerShape shape, double radius)
    {
        (int corners, double turn, double size) = shape switch
        {
            MarkerShape.Square => (4, 45.0, 1.2),
            MarkerShape.Triangle => (3, 0.0, 1.25),
            MarkerShape.TriangleDown => (3, 180.0, 1.25),
            MarkerShape.Diamond => (4, 0.0, 1.25),
            MarkerShape.Pentagon => (5, 0.0, 1.1),
            _ => throw new UnreachableException("A circle has no corners."),
        };
        ScreenPoint[] points = new ScreenPoint[corners];
        for (int i = 0; i < corners; i++)
        {
            double angle = (turn + (360.0 * i / corners)) * Math.PI / 180;
            points[i] = new ScreenPoint(centre.X + (size * radius * Math.Sin(angle)), centre.Y - (size * radius * Math.Cos(angle)));
        }

        return points;
    }
}
