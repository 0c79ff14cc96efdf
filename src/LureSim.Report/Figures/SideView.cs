using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Current at a depth.</summary>
/// <param name="Depth">Depth (m).</param>
/// <param name="Speed">Speed (m/s) along the spot's current direction.</param>
public sealed record CurrentSample(double Depth, double Speed);

/// <summary>The spot from the side, with the path of every jig head.</summary>
public static class SideView
{
    /// <summary>Draws the side view: rod tip at the left, splash-down at the right, depth down.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="candidates">Candidates fished the same way, one a jig head.</param>
    /// <param name="first">The first choice, or null.</param>
    /// <param name="current">Current at a few depths, from the surface down; may be empty.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(Scenario scenario, IReadOnlyList<Candidate> candidates, Candidate? first, IReadOnlyList<CurrentSample> current, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(current);
        ArgumentNullException.ThrowIfNull(options);

        Spot spot = AlongTheCast(scenario.Spot, candidates);
        UnitFormat format = options.Format;
        Dictionary<JigHead, HeadStyle> styles = HeadStyle.For(scenario, candidates, format);
        List<DrawnTrack> tracks = [.. candidates.Select(c => DrawnTrack.Create(c, styles[c.Rig.Head], IsFirst(c, first),
            (t, i) => new DataPoint(format.LengthValue(Out(spot, c, t.Time[i], t.X[i], t.Y[i])), format.LengthValue(t.Depth(i)))))];

        const double plotPixelsWide = 330;
        double plotHeight = options.Narrow ? 400 : 430;
        double inner = options.Narrow ? 320 : plotPixelsWide;
        double depth = format.LengthValue(spot.Depth);
        double tip = format.LengthValue(scenario.Tackle.RodTipHeight);
        // A high rod over shallow water would take the picture: above 45 % of the depth it is cut, with a note.
        bool cut = tip > 0.45 * depth;
        double sky = cut ? 0.3 * depth : Math.Max(1.12 * tip, 0.14 * depth);
        double floor = WaterScene.FloorFor(spot, format, -sky, inner, 30);

        bool flows = spot.CurrentSpeed > 0 && current.Count > 0;
        double reach = Math.Max(
            candidates.Count == 0 ? 1 : candidates.Max(c => format.LengthValue(c.CastLength)),
            tracks.SelectMany(t => t.Points).Select(p => p.X).DefaultIfEmpty(1).Max());
        double currentRoom = flows ? (options.Narrow ? 0.30 : 0.19) : 0.03;
        double left = -0.05 * reach;
        double right = reach * (1 + currentRoom);

        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, $"{OutTitle(spot)} ({format.LengthUnit})", left, right);
        x.IsShown = value => value >= -1e-9 && value <= reach * 1.02;
        x.MajorGridlineStyle = LineStyle.None;
        PlotAxis y = PlotBase.DepthAxis(options, -sky, floor);
        y.MajorGridlineStyle = LineStyle.None;
        model.Axes.Add(x);
        model.Axes.Add(y);

        WaterScene scene = WaterScene.ByDistance(spot, format, left, right, floor);
        DrawnTrack? chosen = tracks.FirstOrDefault(t => t.First) ?? (tracks.Count == 1 ? tracks[0] : null);
        List<(LineShape Shape, List<DataPoint> Points)> shapes = chosen is null ? [] : LineShapes(spot, chosen.Candidate, format);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            area.Fill(area.Bounds, Palette.Sky);
            scene.Paint(area);
            StructureLayer.PaintSide(area, spot, format, sky);
            foreach ((_, List<DataPoint> points) in shapes)
                area.Line([.. points.Select(p => area.At(p.X, p.Y))], Palette.Line, 1.1);
        });
        TrackLayer.AddSeries(model, tracks);
        double step = chosen is null ? 10 : TrackLayer.TimeStep(chosen.Duration);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            TrackLayer.PaintMarkers(area, tracks, step);
            List<LabelRequest> times = chosen is null ? [] : TrackLayer.PaintTimeMarks(area, chosen, step, options);
            LabelPlacer placer = new(area.Bounds);
            TrackLayer.AddObstacles(area, placer, tracks);
            foreach ((_, List<DataPoint> points) in shapes)
                placer.AddLine([.. points.Select(p => area.At(p.X, p.Y))]);

            PaintRodTip(area, placer, tip, cut, sky, format, options);
            if (flows)
                PaintCurrent(area, placer, spot, current, reach, right, format, options);

            List<LabelPlacer.Placement> placements = [];
            foreach (LabelRequest request in scene.Labels(area, options).Concat(StructureLayer.Labels(area, spot, format, options, sky)).Concat(TrackLayer.Labels(area, tracks, options)).Concat(times).Concat(ShapeLabels(area, shapes, options)))
            {
                if (placer.Place(request) is { } placement)
                    placements.Add(placement);
            }

            LabelPlacer.Draw(area, placements);
        });

        double stretch = Stretch(right - left, options.Narrow ? 320 : 690, floor + sky, inner);
        return new Figure(options)
        {
            Name = "side-view",
            Section = FigureSection.Where,
            Title = "Where each jig head runs, seen from the side",
            Subtitle = RetrieveText(candidates),
            Model = model,
            PlotHeight = plotHeight,
            Keys =
            [
                .. TrackLayer.Keys(chosen is { First: true }),
                .. chosen is null ? Array.Empty<KeyItem>() : [KeyItem.Symbol("seconds since it hit the water", (rc, p, _) => Shapes.Disc(rc, p, 3.6, OxyColors.White, Palette.SoftInk, 1.8))],
                .. shapes.Count == 0 ? Array.Empty<KeyItem>() : [KeyItem.Line("the line, at the time written on it", Palette.Line, 1.1, null)],
            ],
            Caption = "You stand at the left; the lure lands at the right, sinks (dashed) and comes back (solid). "
                + $"Time marks every {UnitFormat.Number(step, 0)} s are on {(chosen is { First: true } ? "the choice" : "the path")}. "
                + (stretch > 1.3 ? $"Depth is stretched about {UnitFormat.Number(stretch, stretch < 3 ? 1 : 0)} times. " : "")
                + (PlanView.IsNeeded(scenario, candidates) ? "It also swings sideways: see the view from above. " : "")
                + (flows ? $"Arrows at the right: the current at depth, flowing {SpotWords.Direction(spot.CurrentDirection, options.Units)}." : ""),
            AltText = Describe(scenario, candidates, first, format),
        };
    }

    /// <summary>The spot with directions counted from the cast that candidates share.</summary>
    internal static Spot AlongTheCast(Spot spot, IReadOnlyList<Candidate> candidates) =>
        candidates.Count == 0 ? spot : spot.SeenAlong(candidates[0].Rig.Presentation.Aim);

    /// <summary>How far out a place is: from the rod tip, or, over a bottom that slopes, along its profile, so that the lure stands over the bottom that it is over.</summary>
    private static double Out(Spot spot, Candidate candidate, double time, double x, double y) =>
        StructureLayer.StraightOut(spot) ? spot.AlongProfile(x, y) : candidate.Rig.Presentation.DistanceFromRod(time, x, y);

    /// <summary>Title of the axis of distances.</summary>
    internal static string OutTitle(Spot spot) => StructureLayer.StraightOut(spot) ? "distance straight out along the bottom" : "distance from the rod tip";

    /// <summary>Name of the retrieve that candidates share, for a subtitle.</summary>
    internal static string RetrieveText(IReadOnlyList<Candidate> candidates) =>
        candidates.Count == 0 ? "" : "Retrieve: " + candidates[0].Rig.Presentation.Name;

    /// <summary>True if a candidate is the first choice.</summary>
    internal static bool IsFirst(Candidate candidate, Candidate? first) =>
        ReferenceEquals(candidate, first) || (first is not null && candidate.Rig == first.Rig);

    private static string Describe(Scenario scenario, IReadOnlyList<Candidate> candidates, Candidate? first, UnitFormat format)
    {
        Spot spot = scenario.Spot;
        string paths = candidates.Count == 1 ? "one head" : $"{candidates.Count} heads";
        string water = spot.Profile is { IsEven: false }
            ? $"Side view of a bottom {SpotWords.Depth(spot, format)} deep, strike zone {SpotWords.Zone(spot, format)}, with the paths of {paths}."
            : $"Side view of {format.HandText(spot.Depth)} of water over {SpotWords.Bottom(spot.Bottom)}, strike zone {format.BandText(spot.StrikeZone.Top, spot.StrikeZone.Bottom)}, with the paths of {paths}.";
        return first is null ? water
            : $"{water} {(first.Rig.Head.IsNone ? "The choice" : format.HeadText(first.Rig.Head))} is in the zone {UnitFormat.PercentText(first.Coverage.ZoneShare)} of the retrieve, typical depth {format.HandText(first.Coverage.MedianDepth)}.";
    }

    private static double Stretch(double rangeX, double pixelsX, double rangeY, double pixelsY) =>
        pixelsY / rangeY / (pixelsX / rangeX);

    // At most two line shapes, one early and one late in the retrieve: more would hide the tracks.
    private static List<(LineShape Shape, List<DataPoint> Points)> LineShapes(Spot spot, Candidate candidate, UnitFormat format)
    {
        Track track = candidate.Track;
        List<LineShape> usable = [.. track.Shapes.Where(s => s.X.Length > 1 && s.X.All(double.IsFinite) && s.Z.All(double.IsFinite))];
        List<LineShape> picked = usable.Count <= 2 ? usable : [usable[usable.Count / 3], usable[2 * usable.Count / 3]];
        return [.. picked.Select(s => (s, s.X.Select((x, i) => new DataPoint(format.LengthValue(Out(spot, candidate, s.Time, x, s.Y[i])), -format.LengthValue(s.Z[i]))).ToList()))];
    }

    private static IEnumerable<LabelRequest> ShapeLabels(PaintArea area, List<(LineShape Shape, List<DataPoint> Points)> shapes, FigureOptions options)
    {
        foreach ((LineShape shape, List<DataPoint> points) in shapes)
        {
            List<ScreenPoint> inside = [.. points.Select(p => area.At(p.X, p.Y)).Where(p => area.Bounds.Contains(p))];
            if (inside.Count == 0)
                continue;

            yield return new LabelRequest
            {
                Text = $"line at {UnitFormat.Number(shape.Time, 0)} s",
                Anchors = [inside[inside.Count / 2], .. inside],
                Size = options.SmallFontSize,
                Colour = Palette.SoftInk,
                Optional = true,
            };
        }
    }

    private static void PaintRodTip(PaintArea area, LabelPlacer placer, double tip, bool cut, double sky, UnitFormat format, FigureOptions options)
    {
        ScreenPoint surface = area.At(0, 0);
        string text = format.System == UnitSystem.Us ? UnitFormat.Number(tip, 1) : UnitFormat.Number(tip, 2);
        text = $"rod tip, {text} {format.LengthUnit} up";
        ScreenPoint at = area.At(0, cut ? -0.86 * sky : -tip);
        if (cut)
        {
            Shapes.Arrow(area.Context, new ScreenPoint(at.X, surface.Y - 2), at, Palette.Ink, 1.6, 9);
        }
        else
        {
            area.Line([surface, at], Palette.Line, 1, [2, 2]);
            Shapes.Disc(area.Context, at, 4.5, Palette.Ink, OxyColors.White, 1.5);
        }

        OxySize size = area.Context.MeasureText(text, "", options.SmallFontSize, FontWeights.Normal);
        double middle = Math.Max(at.Y, area.Bounds.Top + (size.Height / 2) + 2);
        OxyRect box = new(at.X + 9, middle - (size.Height / 2), size.Width + 4, size.Height);
        area.Fill(box, Palette.Halo);
        area.Text(new ScreenPoint(box.Left + 2, middle), text, options.SmallFontSize, Palette.Ink, HorizontalAlignment.Left);
        placer.Block(box);
        placer.Block(new OxyRect(at.X - 6, Math.Min(at.Y, surface.Y) - 6, 12, Math.Abs(at.Y - surface.Y) + 6));
    }

    private static void PaintCurrent(PaintArea area, LabelPlacer placer, Spot spot, IReadOnlyList<CurrentSample> current, double reach, double right, UnitFormat format, FigureOptions options)
    {
        double along = Math.Cos(spot.CurrentDirection);
        double left = Math.Sin(spot.CurrentDirection);
        ScreenPoint from = area.At(reach, 0);
        ScreenPoint to = area.At(right, format.LengthValue(spot.Profile?.DepthAt(reach / format.LengthValue(1)) ?? spot.Depth));
        OxyRect column = new(from.X + 8, from.Y, to.X - from.X - 10, to.Y - from.Y);
        placer.Block(new OxyRect(column.Left, area.Bounds.Top, column.Width + 10, column.Bottom - area.Bounds.Top));

        double centre = column.Left + (column.Width / 2);
        double size = options.SmallFontSize;
        area.Text(new ScreenPoint(centre, column.Top - 5), "current", size, Palette.Blue, HorizontalAlignment.Center, VerticalAlignment.Bottom, bold: true);
        double lineHeight = Rendering.BundledFont.LineHeight(size);
        double block = lineHeight + 18;
        int room = Math.Max(1, (int)(column.Height / block));
        int shown = Math.Min(Math.Min(current.Count, room), 5);
        double fastest = Math.Max(current.Max(c => Math.Abs(c.Speed)), 1e-6);
        for (int i = 0; i < shown; i++)
        {
            // Evenly picked, the first and the last always among them.
            CurrentSample sample = current[shown == 1 ? 0 : (int)Math.Round(i * (current.Count - 1.0) / (shown - 1))];
            // At the foot of a steep slope the column is lower than its first figure, which then reaches into the bottom.
            double y = Math.Max(column.Top + 10, Math.Min(area.At(0, format.LengthValue(sample.Depth)).Y, column.Bottom - lineHeight - 8));
            double length = (column.Width - 14) * Math.Abs(sample.Speed / fastest * along);
            bool across = Math.Abs(left) > 0.26;
            if (Math.Abs(along) > 0.26)
            {
                double sign = along > 0 ? 1 : -1;
                Shapes.Arrow(area.Context, new ScreenPoint(centre - (sign * length / 2), y), new ScreenPoint(centre + (sign * length / 2), y), Palette.Blue, 2.2, Math.Min(9, Math.Max(4, length * 0.4)));
            }

            if (across)
                Shapes.FlowAcross(area.Context, new ScreenPoint(centre, y), 6.5, left > 0, Palette.Blue);
            string text = format.SpeedText(Math.Abs(sample.Speed));
            OxySize extent = area.Context.MeasureText(text, "", size, FontWeights.Normal);
            area.Fill(new OxyRect(centre - (extent.Width / 2) - 2, y + 8, extent.Width + 4, lineHeight), Palette.Halo);
            area.Text(new ScreenPoint(centre, y + 8), text, size, Palette.Ink, HorizontalAlignment.Center, VerticalAlignment.Top);
        }
    }
}
