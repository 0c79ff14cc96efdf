using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>The spot from above: how far the current carries each lure sideways.</summary>
public static class PlanView
{
    /// <summary>Draws the plan view from above: distance from the rod tip to the right, the caster's left up.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="candidates">Candidates fished the same way, one a jig head.</param>
    /// <param name="first">The first choice, or null.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(Scenario scenario, IReadOnlyList<Candidate> candidates, Candidate? first, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(options);

        Spot spot = SideView.AlongTheCast(scenario.Spot, candidates);
        UnitFormat format = options.Format;
        Dictionary<JigHead, HeadStyle> styles = HeadStyle.For(scenario, candidates, format);
        List<DrawnTrack> tracks = [.. candidates.Select(c => DrawnTrack.Create(c, styles[c.Rig.Head], SideView.IsFirst(c, first),
            (t, i) => new DataPoint(format.LengthValue(t.X[i]), format.LengthValue(t.Y[i]))))];
        List<DataPoint> all = [.. tracks.SelectMany(t => t.Points)];
        double reach = Math.Max(all.Select(p => p.X).DefaultIfEmpty(1).Max(), candidates.Count == 0 ? 1 : candidates.Max(c => format.LengthValue(c.CastLength)));
        Presentation? fished = candidates.Count == 0 ? null : candidates[0].Rig.Presentation;
        double longest = candidates.Select(c => c.Track.Count > 0 ? c.Track.Time[^1] : 0).DefaultIfEmpty(0).Max();
        DataPoint drifted = new(format.LengthValue((fished?.DriftAlong ?? 0) * longest), format.LengthValue((fished?.DriftLeft ?? 0) * longest));
        all.Add(drifted);
        (double turnY, double turnX) = Math.SinCos(spot.ProfileDirection);
        List<(SpotStructure Structure, DataPoint[] Corners)> standing = [.. spot.Structures.Select(structure => (structure, StructureLayer.Corners(structure).Select(c => new DataPoint(format.LengthValue((c.Along * turnX) - (c.Left * turnY)), format.LengthValue((c.Along * turnY) + (c.Left * turnX)))).ToArray()))];
        all.AddRange(standing.SelectMany(s => s.Corners));
        double low = Math.Min(0, all.Select(p => p.Y).DefaultIfEmpty(0).Min());
        double high = Math.Max(0, all.Select(p => p.Y).DefaultIfEmpty(0).Max());
        double back = all.Select(p => p.X).DefaultIfEmpty(0).Min();
        double span = Math.Max(high - low, 0.08 * reach);
        low -= 0.25 * span;
        high += 0.25 * span;

        PlotModel model = PlotBase.Model(options);
        model.Axes.Add(PlotBase.Axis(options, AxisPosition.Bottom, $"distance along the cast ({format.LengthUnit})", Math.Min(back, 0) - (0.05 * reach), 1.06 * reach));
        PlotAxis across = PlotBase.Axis(options, AxisPosition.Left, $"right  —  left ({format.LengthUnit})", low, high);
        across.LabelFormatter = value => UnitFormat.Number(Math.Abs(value), 2);
        model.Axes.Add(across);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            area.Fill(area.Bounds, Palette.Water);
            foreach ((SpotStructure structure, DataPoint[] corners) in standing)
                area.Context.DrawPolygon([.. corners.Select(c => area.At(c.X, c.Y))], StructureLayer.FillFromAbove(structure), Palette.SoftInk, 1, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
            ScreenPoint tip = area.At(0, 0);
            ScreenPoint splash = area.At(reach, 0);
            area.Line([tip, splash], Palette.Line, 1, [2, 4]);
            if (fished?.DriftSpeed > 0)
                area.Line([tip, area.At(drifted.X, drifted.Y)], Palette.Ink, 2, [1, 3]);
        });
        TrackLayer.AddSeries(model, tracks);
        DrawnTrack? chosen = tracks.FirstOrDefault(t => t.First) ?? (tracks.Count == 1 ? tracks[0] : null);
        double step = chosen is null ? 10 : TrackLayer.TimeStep(chosen.Duration);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            TrackLayer.PaintMarkers(area, tracks, step);
            LabelPlacer placer = new(area.Bounds);
            TrackLayer.AddObstacles(area, placer, tracks);
            List<LabelRequest> times = chosen is null ? [] : TrackLayer.PaintTimeMarks(area, chosen, step, options);
            ScreenPoint tip = area.At(0, 0);
            Shapes.Disc(area.Context, tip, 5, Palette.Ink, OxyColors.White, 1.5);
            placer.Block(new OxyRect(tip.X - 7, tip.Y - 7, 14, 14));
            List<LabelRequest> requests =
            [
                .. TrackLayer.Labels(area, tracks, options),
                new LabelRequest { Text = "rod tip", Anchors = [tip], Size = options.SmallFontSize },
                .. FlowLabels(area, spot, format, options, placer),
                .. times,
                .. standing.Select(s => new LabelRequest { Text = StructureWords.Name(s.Structure), Anchors = [.. s.Corners.Select(c => area.At(c.X, c.Y)).Select(c => new ScreenPoint(c.X, c.Y - 10))], Size = options.SmallFontSize, Optional = true }),
            ];
            LabelPlacer.Draw(area, [.. requests.Select(placer.Place).OfType<LabelPlacer.Placement>()]);
        });
        double drift = candidates.Count == 0 ? 0 : candidates.Max(c => c.Coverage.DriftAcross);
        return new Figure(options)
        {
            Name = "plan-view",
            Section = FigureSection.Where,
            Title = "Where the current carries the lure, seen from above",
            Subtitle = SideView.RetrieveText(candidates),
            Model = model,
            PlotHeight = options.Narrow ? 280 : 300,
            Keys = [.. TrackLayer.Keys(chosen is { First: true })],
            Caption = "The cast goes to the right along the dotted line; your left hand is up. The two scales differ." + (fished?.DriftSpeed > 0 ? " The rod tip drifts along the thick dotted line." : ""),
            AltText = spot.CurrentSpeed == 0 ? "View from above." : $"View from above. The current flowing {SpotWords.Direction(spot.CurrentDirection, options.Units)} at {format.CurrentText(spot.CurrentSpeed)} carries the lure up to {format.HandText(drift)} sideways.",
        };
    }

    /// <summary>True if a plan view has something to show: current across the cast, or a lure that left the plane.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="candidates">The candidates.</param>
    /// <returns>Whether the plan view is worth its place.</returns>
    public static bool IsNeeded(Scenario scenario, IReadOnlyList<Candidate> candidates)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(candidates);
        // Less sideways than a rod length's sway is not worth a picture.
        return scenario.Spot.Structures.Count > 0 || candidates.Any(c => c.Coverage.DriftAcross > 0.5);
    }

    private static List<LabelRequest> FlowLabels(PaintArea area, Spot spot, UnitFormat format, FigureOptions options, LabelPlacer placer)
    {
        if (!(spot.CurrentSpeed > 0))
            return [];

        // In the corner away from the drift, where no track runs.
        double left = Math.Sin(spot.CurrentDirection);
        double y = left > 0 ? area.Bounds.Bottom - 38 : area.Bounds.Top + 38;
        ScreenPoint centre = new(area.Bounds.Left + (area.Bounds.Width * 0.14), y);
        ScreenVector half = new(26 * Math.Cos(spot.CurrentDirection), -26 * left);
        Shapes.Arrow(area.Context, centre - half, centre + half, Palette.Blue, 3, 11);
        placer.Block(new OxyRect(centre.X - 28, centre.Y - 28, 56, 56));
        return
        [
            new LabelRequest
            {
                Text = $"current {format.SpeedText(spot.CurrentSpeed)}",
                Anchors = [new ScreenPoint(centre.X + 26, centre.Y)],
                Size = options.SmallFontSize,
                Colour = Palette.Blue,
                Bold = true,
            },
        ];
    }
}
