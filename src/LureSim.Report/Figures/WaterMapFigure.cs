using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Where in the water column and how far out a lure spends its retrieve, as a heat map.</summary>
public static class WaterMapFigure
{
    // Cells with less of the retrieve than this stay water.
    private const double LeastShare = 2e-4;

    /// <summary>Draws the figure.</summary>
    /// <param name="spot">The spot whose depths the map is drawn on.</param>
    /// <param name="map">The map.</param>
    /// <param name="head">The jig head.</param>
    /// <param name="presentation">Name of the retrieve.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(Spot spot, WaterMap map, JigHead head, string presentation, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        bool many = map.Runs > 1;
        double length = format.LengthValue(map.DistanceEdges[^1]);
        double profileRoom = (options.Narrow ? 0.26 : 0.2) * length, right = length + profileRoom;
        double height = options.Narrow ? 330 : 360;
        double top = -0.05 * format.LengthValue(spot.Depth);
        double floor = WaterScene.FloorFor(spot, format, top, height - 66, 30);
        double most = map.Share.Cast<double>().Max();
        IReadOnlyList<double> profile = map.ByDepth;
        double mostAtDepth = Math.Max(1e-9, profile.Max());

        PlotModel model = PlotBase.Model(options);
        WaterScene scene = WaterScene.ByDistance(spot, format, 0, right, floor);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, $"{(scene.Slope is null ? "distance from the rod tip" : SideView.OutTitle(spot))} ({format.LengthUnit})", 0, right);
        x.IsShown = value => value <= length * 1.001;
        x.MajorGridlineStyle = LineStyle.None;
        PlotAxis y = PlotBase.DepthAxis(options, top, floor);
        y.MajorGridlineStyle = LineStyle.None;
        model.Axes.Add(x);
        model.Axes.Add(y);
        bool moves = scene.Slope is not null && spot.StrikeZone.MovesWithBottom;
        double zoneTop = format.LengthValue(spot.StrikeZone.Top), zoneBottom = format.LengthValue(spot.StrikeZone.Bottom);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            area.Fill(area.Bounds, Palette.Sky);
            scene.Paint(area);
        });
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int r = 0; r < profile.Count; r++)
            {
                double from = format.LengthValue(map.DepthEdges[r]), to = format.LengthValue(map.DepthEdges[r + 1]);
                for (int c = 0; c + 1 < map.DistanceEdges.Count; c++)
                {
                    double share = map.Share[r, c];
                    if (share < LeastShare)
                        continue;
                    OxyRect cell = area.Between(format.LengthValue(map.DistanceEdges[c]), from, format.LengthValue(map.DistanceEdges[c + 1]), to);
                    area.Context.DrawRectangle(cell, Colour(share / most), OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);
                }

                OxyRect bar = area.Between(length + (0.08 * profileRoom), from, length + (0.08 * profileRoom) + (0.86 * profileRoom * profile[r] / mostAtDepth), to);
                if (profile[r] >= LeastShare)
                    area.Fill(bar.Deflate(new OxyThickness(0, 0.6, 0, 0.6)), !moves && spot.StrikeZone.Contains(0.5 * (map.DepthEdges[r] + map.DepthEdges[r + 1])) ? Palette.Blue : Palette.Line);
            }

            area.Line([area.At(length, 0), area.At(length, format.LengthValue(spot.Depth))], Palette.Line, 1);
            scene.Slope?.PaintZoneEdges(area);
            foreach (double edge in scene.Slope is null ? (double[])[zoneTop, zoneBottom] : [])
                area.Line([area.At(0, edge), area.At(right, edge)], Palette.ZoneEdge, 1.6, [5, 3]);
            if (spot.GrassHeight > 0 && scene.Slope is null)
                area.Line([area.At(0, format.LengthValue(spot.Depth - spot.GrassHeight)), area.At(right, format.LengthValue(spot.Depth - spot.GrassHeight))], Palette.Grass, 1.6, [2, 3]);

            // Labels look for water without cells.
            LabelPlacer placer = new(area.Bounds);
            placer.Block(area.Between(length, top, right, format.LengthValue(spot.Depth)));
            for (int r = 0; r < profile.Count; r++)
            {
                double middle = format.LengthValue(0.5 * (map.DepthEdges[r] + map.DepthEdges[r + 1]));
                for (int c = 0; c + 1 < map.DistanceEdges.Count; c++)
                {
                    if (map.Share[r, c] >= LeastShare)
                        placer.AddLine([area.At(format.LengthValue(map.DistanceEdges[c]), middle), area.At(format.LengthValue(map.DistanceEdges[c + 1]), middle)]);
                }
            }

            LabelPlacer.Draw(area, [.. scene.Labels(area, options).Select(placer.Place).OfType<LabelPlacer.Placement>()]);
        });
        double inZone = Enumerable.Range(0, profile.Count).Where(r => spot.StrikeZone.Contains(0.5 * (map.DepthEdges[r] + map.DepthEdges[r + 1]))).Sum(r => profile[r]);
        string headText = format.HeadText(head);
        return new Figure(options)
        {
            Name = many ? "water-map-draws" : "water-map",
            Section = many ? FigureSection.Certainty : FigureSection.Where,
            Order = many ? 1 : 0,
            Title = many ? $"Where {headText} runs, allowing for what you can't know" : $"Where {headText} spends its retrieve",
            Subtitle = many ? $"{map.Runs} tries together: {presentation}" : $"Retrieve: {presentation}",
            Model = model,
            PlotHeight = height,
            Keys =
            [
                KeyItem.Ramp($"share of the retrieve in a cell, 0 to {UnitFormat.Number(100 * most, 1)}%", Colour),
                .. moves
                    ? [KeyItem.Box("right: all distances together", Palette.Line, Palette.Line)]
                    : (KeyItem[])[KeyItem.Box("right: all distances together, in the zone", Palette.Blue, Palette.Blue), KeyItem.Box("out of the zone", Palette.Line, Palette.Line)],
                KeyItem.Line("edge of the strike zone", Palette.ZoneEdge, 1.6, [5, 3]),
            ],
            Caption = (many ? "All tries laid over one another. " : "You stand at the left. The darker a cell, the longer the lure is there during the retrieve; the sinking is left out. ")
                + (many && spot.StrikeZone.MovesWithBottom ? "The depth of the water is drawn too: heights are counted from the bottom. " : "")
                + (many ? "A narrow dark band is a retrieve to trust; a wide pale one depends on what you can't know." : "Between the dashed lines counts."),
            AltText = moves
                ? $"Map of where {headText} runs over a bottom from {SpotWords.Depth(spot, format)} deep, strike zone {SpotWords.Zone(spot, format)}."
                : $"Map of where {headText} runs: about {UnitFormat.PercentText(Math.Min(1, inZone))} of the retrieve at depths of the strike zone, {format.BandText(spot.StrikeZone.Top, spot.StrikeZone.Bottom)} deep.",
        };
    }

    // From nothing over orange to near black, light first; the square root lifts what is rare.
    private static OxyColor Colour(double share)
    {
        double at = Math.Sqrt(Math.Clamp(share, 0, 1));
        return OxyColor.FromAColor((byte)Math.Round(255 * Math.Min(1, 0.25 + (1.5 * at))), Palette.Weight(at));
    }
}
