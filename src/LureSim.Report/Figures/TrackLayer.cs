using LureSim.Decision.Trials;
using LureSim.Motion;
using LureSim.Report.Units;
using OxyPlot;
using OxyPlot.Series;

namespace LureSim.Report.Figures;

/// <summary>One track to draw, as points in the units of the axes.</summary>
/// <param name="Candidate">The candidate.</param>
/// <param name="Style">Its look.</param>
/// <param name="First">True for the first choice.</param>
/// <param name="Fall">Points of the fall.</param>
/// <param name="Retrieve">Points of the retrieve.</param>
/// <param name="Times">Times (s) of all samples.</param>
/// <param name="Points">Points of all samples.</param>
internal sealed record DrawnTrack(
    Candidate Candidate,
    HeadStyle Style,
    bool First,
    IReadOnlyList<DataPoint> Fall,
    IReadOnlyList<DataPoint> Retrieve,
    IReadOnlyList<double> Times,
    IReadOnlyList<DataPoint> Points)
{
    /// <summary>Time of the last sample (s).</summary>
    public double Duration => Times.Count == 0 ? 0 : Times[^1];

    /// <summary>Projects a track; samples that are not finite are left out.</summary>
    public static DrawnTrack Create(Candidate candidate, HeadStyle style, bool first, Func<Track, int, DataPoint> project)
    {
        Track track = candidate.Track;
        List<DataPoint> fall = [];
        List<DataPoint> retrieve = [];
        List<double> times = [];
        List<DataPoint> points = [];
        for (int i = 0; i < track.Count; i++)
        {
            DataPoint p = project(track, i);
            if (!double.IsFinite(p.X) || !double.IsFinite(p.Y))
                continue;

            times.Add(track.Time[i]);
            points.Add(p);
            bool falling = track.State[i].HasFlag(TrackState.Falling) && retrieve.Count == 0;
            if (falling)
            {
                fall.Add(p);
                continue;
            }

            // The two parts share a point, so that no gap shows.
            if (retrieve.Count == 0 && fall.Count > 0)
                retrieve.Add(fall[^1]);
            retrieve.Add(p);
        }

        return new DrawnTrack(candidate, style, first, fall, retrieve, times, points);
    }
}

/// <summary>Draws tracks: the fall dashed, the retrieve solid, the first choice thick, every head with its own marker.</summary>
internal static class TrackLayer
{
    private static readonly double[] FallDashes = [3.5, 2.5];

    /// <summary>Adds the lines, the first choice on top.</summary>
    public static void AddSeries(PlotModel model, IEnumerable<DrawnTrack> tracks)
    {
        foreach (DrawnTrack track in tracks.OrderBy(t => t.First))
        {
            double thickness = track.First ? 3.6 : 1.7;
            if (track.First)
            {
                // A white rim keeps the chosen track apart where others cross it.
                model.Series.Add(Line(track.Fall, OxyColors.White, thickness + 2.4, null));
                model.Series.Add(Line(track.Retrieve, OxyColors.White, thickness + 2.4, null));
            }

            model.Series.Add(Line(track.Fall, track.Style.Colour, track.First ? 2.4 : 1.4, FallDashes));
            model.Series.Add(Line(track.Retrieve, track.Style.Colour, thickness, null));
        }
    }

    /// <summary>Draws markers along the retrieves, at places that differ from head to head and keep off the time marks.</summary>
    public static void PaintMarkers(PaintArea area, IReadOnlyList<DrawnTrack> tracks, double timeStep)
    {
        const double pitch = 110;
        const double clearance = 14;
        for (int t = 0; t < tracks.Count; t++)
        {
            DrawnTrack track = tracks[t];
            List<ScreenPoint> line = [.. track.Retrieve.Select(p => area.At(p.X, p.Y))];
            List<ScreenPoint> marks = track.First || tracks.Count == 1 ? [.. TimeMarks(track, timeStep).Select(m => area.At(m.Point.X, m.Point.Y))] : [];
            // Straight distance from the last marker, not along the line: a sawtooth would be full of them.
            double wanted = pitch * (0.25 + (0.5 * t / Math.Max(1, tracks.Count)));
            ScreenPoint last = line.Count > 0 ? line[0] : default;
            foreach (ScreenPoint point in line)
            {
                if ((point - last).Length < wanted || marks.Any(m => (m - point).Length < clearance))
                    continue;

                Shapes.Marker(area.Context, point, track.Style.Shape, track.Style.Filled, track.Style.Colour, track.First ? 4.2 : 3.4);
                last = point;
                wanted = pitch;
            }
        }
    }

    /// <summary>Labels with the name of the head, each to be placed near its own line and away from the others.</summary>
    public static IEnumerable<LabelRequest> Labels(PaintArea area, IReadOnlyList<DrawnTrack> tracks, FigureOptions options)
    {
        List<(DrawnTrack Track, List<ScreenPoint> Line)> lines = [.. tracks.Select(t => (t, Thin(area, t.Retrieve.Count > 1 ? t.Retrieve : t.Points, 60)))];
        foreach ((DrawnTrack track, List<ScreenPoint> line) in lines.OrderByDescending(l => l.Track.First))
        {
            if (line.Count == 0)
                continue;

            // From the start of the retrieve on: that is where the heads lie furthest apart as a rule.
            yield return new LabelRequest
            {
                Text = track.First ? $"{track.Style.Label} (choice)" : track.Style.Label,
                Anchors = line,
                Size = track.First ? options.FontSize : options.SmallFontSize,
                Bold = true,
                Colour = track.Style.Colour,
                Marker = track.Style,
                AnchorCost = 18,
                Rivals = [.. lines.Where(l => l.Track != track).Select(l => (IReadOnlyList<ScreenPoint>)l.Line)],
            };
        }
    }

    /// <summary>Tells the placer where the lines run.</summary>
    public static void AddObstacles(PaintArea area, LabelPlacer placer, IEnumerable<DrawnTrack> tracks)
    {
        foreach (DrawnTrack track in tracks)
            placer.AddLine([.. track.Points.Select(p => area.At(p.X, p.Y))]);
    }

    /// <summary>Seconds between time marks that give a handful of them.</summary>
    public static double TimeStep(double duration) =>
        ((ReadOnlySpan<double>)[1, 2, 5, 10, 20, 30, 60, 120]).ToArray().FirstOrDefault(s => duration / s <= 9, 300);

    /// <summary>Draws time marks on a track and returns labels for them.</summary>
    public static List<LabelRequest> PaintTimeMarks(PaintArea area, DrawnTrack track, double step, FigureOptions options)
    {
        List<LabelRequest> labels = [];
        foreach ((double time, DataPoint point) in TimeMarks(track, step))
        {
            ScreenPoint at = area.At(point.X, point.Y);
            Shapes.Disc(area.Context, at, 3.6, OxyColors.White, track.Style.Colour, 1.8);
            labels.Add(new LabelRequest { Text = $"{UnitFormat.Number(time, 0)} s", Anchors = [at], Size = options.SmallFontSize, Optional = true });
        }

        return labels;
    }

    /// <summary>Explains dashes and thickness.</summary>
    public static IEnumerable<KeyItem> Keys(bool anyFirst)
    {
        yield return KeyItem.Line("sinking", Palette.SoftInk, 1.6, FallDashes);
        yield return KeyItem.Line("retrieve", Palette.SoftInk, 1.8, null);
        if (anyFirst)
            yield return KeyItem.Line("choice", Palette.SoftInk, 3.8, null);
    }

    private static IEnumerable<(double Time, DataPoint Point)> TimeMarks(DrawnTrack track, double step)
    {
        double next = step;
        for (int i = 0; i < track.Points.Count; i++)
        {
            if (track.Times[i] < next - 1e-9)
                continue;

            yield return (next, track.Points[i]);
            next = step * (Math.Floor((track.Times[i] + 1e-9) / step) + 1);
        }
    }

    private static LineSeries Line(IReadOnlyList<DataPoint> points, OxyColor colour, double thickness, double[]? dashes)
    {
        LineSeries series = new() { Color = colour, StrokeThickness = thickness, LineJoin = LineJoin.Round, Dashes = dashes, MinimumSegmentLength = 1.5 };
        series.Points.AddRange(points);
        return series;
    }

    private static List<ScreenPoint> Thin(PaintArea area, IReadOnlyList<DataPoint> points, int count)
    {
        List<ScreenPoint> result = [];
        int step = Math.Max(1, points.Count / count);
        for (int i = 0; i < points.Count; i += step)
            result.Add(area.At(points[i].X, points[i].Y));
        return result;
    }
}
