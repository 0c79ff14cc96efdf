using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>The path that a lure takes in ten feet or three metres, from above, and how it lies in the water, from behind.</summary>
internal sealed class RigPath
{
    private const double InsetWidth = 84, RodRoom = 34, LureLength = 46;
    private const int Lures = 4;

    // A helix closer than this is drawn no closer (1/96 in); the way sideways of its turns is not to scale.
    private const double ClosestTurn = 7, HelixReach = 8, RollReach = 4, RollLength = 44, BeatReach = 2.5, BeatLength = 15;

    private readonly double way;
    private readonly ActionReport report;
    private readonly IReadOnlyList<(double Along, double Left)> twitched;

    private RigPath(double way, ActionReport report, IReadOnlyList<(double Along, double Left)> twitched)
    {
        this.way = way;
        this.report = report;
        this.twitched = twitched;
        double end = Math.Clamp(report.CourseSlope, -1, 1) * way;
        Lowest = twitched.Count > 0 ? twitched.Min(p => p.Left) : Math.Min(0, end);
        Highest = twitched.Count > 0 ? twitched.Max(p => p.Left) : Math.Max(0, end);
    }

    /// <summary>Farthest to the right (m), 0 or less.</summary>
    public double Lowest { get; }

    /// <summary>Farthest to the left (m), 0 or more.</summary>
    public double Highest { get; }

    /// <summary>The path of the try that stands for a dozen.</summary>
    public static RigPath Of(EnsembleAssessment tries, UnitFormat format)
    {
        double way = SwimmingWords.Way(format);
        return new(way, tries.Report, tries.Report.Darts.Count > 0 ? Repeated(tries.Trace, way) : []);
    }

    /// <summary>Units of the drawing for a metre of way.</summary>
    public static double Scale(double column) => (column - InsetWidth - RodRoom - LureLength) / 3.048;

    /// <summary>Draws it.</summary>
    public void Draw(PaintArea area, OxyRect water, double scale, double low, double high, LureOutline outline, LureBody body, LureAssembly parts, Rigging rigging, ActionReport r, FigureOptions options)
    {
        area.Line([new(water.Left + InsetWidth, water.Top), new(water.Left + InsetWidth, water.Bottom)], OxyColors.White, 2);
        Behind(area, new(water.Left + (InsetWidth / 2), water.Top + (0.5 * (water.Height - 18))), body, parts, rigging, r, options);
        double start = water.Left + InsetWidth + (0.6 * LureLength), room = water.Height - 64;

        // The farthest path of all panels fills the strip; one that goes beyond leaves it.
        double spread = Math.Max(high - low, 1e-9), up = Math.Min(scale, room / spread);
        double zero = water.Top + 28 + (room / 2) + (up * (high + low) / 2);
        area.Line([new(start, zero), new(water.Right - 6, zero)], Palette.Line, 0.8, [2, 4]);
        area.Text(new(water.Right - 5, water.Bottom - 3), "rod →", options.SmallFontSize, Palette.SoftInk, HorizontalAlignment.Right, VerticalAlignment.Bottom);
        List<ScreenPoint> line = Points(start, zero, scale, up);
        area.Line(line, OxyColors.White, 4);
        area.Line(line, Palette.Blue, 1.8);
        for (int i = 0; i < Lures; i++)
        {
            double share = i / (Lures - 1.0);
            ScreenPoint at = Middle(share, start, zero, scale, up);
            Still(area, at, outline, r, i, share);
        }
    }

    private ScreenPoint Middle(double share, double start, double zero, double scale, double up)
    {
        if (twitched.Count == 0) return new(start + (share * way * scale), zero - (Math.Clamp(report.CourseSlope, -1, 1) * share * way * up));
        (double along, double left) = twitched[(int)Math.Round(share * (twitched.Count - 1))];
        return new(start + (along * scale), zero - (left * up));
    }

    private List<ScreenPoint> Points(double start, double zero, double scale, double up)
    {
        if (twitched.Count > 0) return [.. twitched.Select(p => new ScreenPoint(start + (p.Along * scale), zero - (p.Left * up)))];
        double length = way * scale;
        bool spins = report.Verdict == ActionVerdict.Spins, rolls = report.Verdict == ActionVerdict.Rolls;
        double waves = spins ? Math.Clamp(report.LineTwistsPerMetre * way, 1, length / ClosestTurn) : rolls ? length / RollLength : report.Beats ? length / BeatLength : 0;
        double reach = spins ? HelixReach : rolls ? RollReach : report.Beats ? BeatReach : 0;
        const int steps = 400;
        List<ScreenPoint> points = [];
        for (int i = 0; i <= steps; i++)
        {
            double share = (double)i / steps;
            ScreenPoint at = Middle(share, start, zero, scale, up);
            points.Add(new(at.X, at.Y - (reach * Math.Sin(2 * Math.PI * waves * share))));
        }

        return points;
    }

    // The lure on its path, larger than the way: it shows which side is up.
    private static void Still(PaintArea area, ScreenPoint at, LureOutline outline, ActionReport r, int i, double share)
    {
        double side = i % 2 == 0 ? 1 : -1;
        double roll = r.Verdict switch
        {
            ActionVerdict.Spins => Math.CopySign(1, r.SpinRate) * 2 * Math.PI * (i * 0.27),
            ActionVerdict.Rolls => r.MeanRoll + (side * r.RollAmplitude),
            ActionVerdict.Darts or ActionVerdict.Glides => 0,
            _ => r.MeanRoll + (r.Beats ? side * Math.Min(r.RollAmplitude, 0.6) : 0),
        };
        double yaw = r.Darts.Count > 0 ? Math.Clamp(Math.CopySign(r.DartAngle, i < r.Darts.Count ? r.Darts[i].Heading : side), -1, 1)
            : Math.Clamp(Math.Atan(r.CourseSlope), -0.7, 0.7) + (r.Beats && r.TailAmplitude == 0 ? side * Math.Min(r.YawAmplitude, 0.4) : 0);
        Attitude attitude = Attitude.Of(yaw, 0, roll);
        double scale = LureLength / outline.Length;
        outline.Draw(area.Context, p =>
        {
            Vector3d w = attitude.ToWater(p);
            return new ScreenPoint(at.X + (w.X * scale), at.Y - (w.Y * scale));
        }, scale, side * r.TailAmplitude, faint: false, Math.Cos(roll));
    }

    // The largest section with the hook's point, turned as the lure lies; an arc says how far.
    private static void Behind(PaintArea area, ScreenPoint centre, LureBody body, LureAssembly parts, Rigging rigging, ActionReport r, FigureOptions options)
    {
        double scale = 30 / Math.Max(body.Height, body.Width);
        const double ring = 27;
        area.Text(new(centre.X, centre.Y + ring + 15), "from behind", options.SmallFontSize, Palette.SoftInk);
        area.Line([new(centre.X, centre.Y - ring), new(centre.X, centre.Y + ring)], Palette.Line, 0.8, [2, 3]);
        bool spins = r.Verdict == ActionVerdict.Spins, rolls = r.Verdict == ActionVerdict.Rolls, rocks = !spins && !rolls && r.Beats && r.RollAmplitude > Math.PI / 18;
        double lean = spins || r.Darts.Count > 0 ? 0 : r.MeanRoll, swing = rolls || rocks ? r.RollAmplitude : 0;
        if (swing > 0)
        {
            Section(-swing, true);
            Section(swing, true);
        }

        Section(lean, false);
        if (spins) Turn(area, centre, ring, Math.CopySign(5, r.SpinRate), 0);
        else if (swing > 0)
        {
            Turn(area, centre, ring, Math.Min(swing, 2.6), lean);
            Turn(area, centre, ring, -Math.Min(swing, 2.6), lean);
        }
        else if (Math.Abs(lean) > 8 * Math.PI / 180) Turn(area, centre, ring, lean, 0);

        // Rolled by an angle: the left side rises, the back goes to the right.
        void Section(double roll, bool faint)
        {
            (double s, double c) = Math.SinCos(roll);
            ScreenPoint At(double left, double up) => new(centre.X - (scale * ((left * c) - (up * s))), centre.Y - (scale * ((left * s) + (up * c))));
            ScreenPoint[] Ellipse(double half, double tall, double up) => [.. Enumerable.Range(0, 40).Select(i => At(half * Math.Cos(Math.PI * i / 20), up + (tall * Math.Sin(Math.PI * i / 20))))];
            OxyColor fill = faint ? OxyColor.FromArgb(0x60, 0xCF, 0xE4, 0xF2) : Palette.SkyBlue, edge = faint ? OxyColor.FromRgb(0x7F, 0xA9, 0xC7) : Palette.Blue;
            if (body.NeedsHead)
            {
                double rise = 0.28 * body.Height, lie = rigging.PointLean;
                area.Line([At(0, 0), At(Math.Sin(lie) * (rise + (body.Height / 2)), Math.Cos(lie) * (rise + (body.Height / 2)))], faint ? edge : Palette.Ink, faint ? 1 : 1.8);
            }

            area.Context.DrawPolygon(Ellipse(body.Width / 2, Math.Max(body.Height, 0.08 * body.Width) / 2, 0), fill, edge, faint ? 0.8 : 1.5, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
            if (!faint && !body.Kind.IsPlate) area.Line([At(0, body.Height / 2), At(0, 0.2 * body.Height)], OxyColor.FromRgb(0x0B, 0x3A, 0x5C), 1.6);
        }
    }

    // An arrow round a centre, from an angle off the upright on, to the right positive.
    private static void Turn(PaintArea area, ScreenPoint centre, double radius, double by, double from)
    {
        const int steps = 24;
        ScreenPoint At(double angle) => new(centre.X + (radius * Math.Sin(angle)), centre.Y - (radius * Math.Cos(angle)));
        double tip = Math.CopySign(Math.Min(Math.Abs(by), 0.28), by);
        area.Line([.. Enumerable.Range(0, steps + 1).Select(i => At(from + ((by - tip) * i / steps)))], Palette.Vermilion, 1.8);
        Shapes.Arrow(area.Context, At(from + by - (1.05 * tip)), At(from + by), Palette.Vermilion, 1.8, 7);
    }

    // A window of twitches, one after the other until the way is made.
    private static List<(double Along, double Left)> Repeated(ActionTrace trace, double way)
    {
        (int start, int end) = TwitchPath.Window(trace);
        List<(double, double)> points = [];
        if (end - start < 2 || trace.Position[end - 1].X - trace.Position[start].X < 0.02 * way) return points;
        double along = 0, left = 0;
        while (along < way && points.Count < 4000)
        {
            for (int k = start; k < end; k++)
            {
                double x = along + trace.Position[k].X - trace.Position[start].X;
                if (x > way) return points;
                points.Add((x, left + trace.Position[k].Y - trace.Position[start].Y));
            }

            along += trace.Position[end - 1].X - trace.Position[start].X;
            left += trace.Position[end - 1].Y - trace.Position[start].Y;
        }

        return points;
    }
}
