using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Depth of every lure against time since splash-down.</summary>
public static class DepthTime
{
    /// <summary>Draws the figure.</summary>
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

        UnitFormat format = options.Format;
        Spot spot = scenario.Spot;
        Dictionary<JigHead, HeadStyle> styles = HeadStyle.For(scenario, candidates, format);
        List<DrawnTrack> tracks = [.. candidates.Select(c => DrawnTrack.Create(c, styles[c.Rig.Head], SideView.IsFirst(c, first),
            (t, i) => new DataPoint(t.Time[i], format.LengthValue(t.Depth(i)))))];
        double duration = Math.Max(1, tracks.Select(t => t.Duration).DefaultIfEmpty(1).Max());
        double top = -0.06 * format.LengthValue(spot.Depth);
        double floor = WaterScene.FloorFor(spot, format, top, options.Narrow ? 300 : 290, 30);

        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, "seconds since it hit the water", 0, duration * 1.03);
        x.MajorGridlineStyle = LineStyle.None;
        PlotAxis y = PlotBase.DepthAxis(options, top, floor);
        y.MajorGridlineStyle = LineStyle.None;
        model.Axes.Add(x);
        model.Axes.Add(y);
        WaterScene scene = new(spot, format, 0, duration * 1.03, floor);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            area.Fill(area.Bounds, Palette.Sky);
            scene.Paint(area);
        });
        TrackLayer.AddSeries(model, tracks);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            TrackLayer.PaintMarkers(area, tracks, double.PositiveInfinity);
            LabelPlacer placer = new(area.Bounds);
            TrackLayer.AddObstacles(area, placer, tracks);
            LabelPlacer.Draw(area, [.. scene.Labels(area, options).Concat(TrackLayer.Labels(area, tracks, options)).Select(placer.Place).OfType<LabelPlacer.Placement>()]);
        });

        return new Figure(options)
        {
            Name = "depth-time",
            Section = FigureSection.Where,
            Title = "How deep each jig head is, second by second",
            Subtitle = SideView.RetrieveText(candidates),
            Model = model,
            PlotHeight = options.Narrow ? 380 : 380,
            Keys = [.. TrackLayer.Keys(tracks.Any(t => t.First))],
            Caption = "Read down from a time to see how deep each lure is. The longer a line stays in the yellow band, the longer that lure is where the fish are.",
            AltText = $"Depth of each head second by second{(first is null ? "" : $". {format.HeadText(first.Rig.Head)} {(first.Coverage.TimeToZone is { } seconds ? $"reaches the strike zone after {UnitFormat.SecondsText(seconds)}" : "never reaches the strike zone")}, deepest {format.HandText(first.Coverage.DeepestDepth)}")}.",
        };
    }
}
