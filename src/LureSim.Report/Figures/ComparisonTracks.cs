using LureSim.Decision.Comparison;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>The tracks of two rigs in one side view.</summary>
public static class ComparisonTracks
{
    /// <summary>Draws the figure.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(RigComparison comparison, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        Spot spot = comparison.Scenario.Spot;
        (string Name, Candidate Run, OxyColor Colour, double[]? Dash)[] runs =
        [
            (comparison.First.Name, comparison.FirstOutcome.Candidate, Palette.Vermilion, null),
            (comparison.Second.Name, comparison.SecondOutcome.Candidate, Palette.Blue, [7, 4]),
        ];
        double far = Math.Max(1, runs.Max(run => Enumerable.Range(0, run.Run.Track.Count).Select(i => Distance(run.Run, i)).DefaultIfEmpty().Max()));
        double deep = format.LengthValue(spot.Depth);
        PlotModel model = PlotBase.Model(options);
        model.Axes.Add(PlotBase.Axis(options, AxisPosition.Bottom, $"distance from the rod tip ({format.LengthUnit})", 0, format.LengthValue(far) * 1.03));
        model.Axes.Add(PlotBase.DepthAxis(options, -0.04 * deep, deep * 1.08));
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            double end = format.LengthValue(far) * 1.03;
            area.Fill(area.Between(0, 0, end, deep), Palette.Water);
            PlotBase.PaintZone(area, format.LengthValue(spot.StrikeZone.Top), format.LengthValue(spot.StrikeZone.Bottom), 0, end);
            if (spot.GrassHeight > 0)
            {
                OxyRect grass = area.Between(0, format.LengthValue(spot.Depth - spot.GrassHeight), end, deep);
                Shapes.Hatch(area.Context, grass, Hatch.Rising, OxyColor.FromAColor(0x90, Palette.Grass));
            }

            area.Fill(area.Between(0, deep, end, deep * 1.08), OxyColor.FromRgb(0xD9, 0xC9, 0xA3));
            area.Line([area.At(0, 0), area.At(end, 0)], Palette.Surface, 1.6);
            foreach ((_, Candidate run, OxyColor colour, double[]? dash) in runs)
            {
                List<ScreenPoint> points = [.. Enumerable.Range(0, run.Track.Count).Select(i => area.At(format.LengthValue(Distance(run, i)), format.LengthValue(run.Track.Depth(i))))];
                if (points.Count < 2)
                    continue;
                area.Line(points, OxyColors.White, 5);
                area.Line(points, colour, 2.6, dash);
            }
        });
        return new Figure(options)
        {
            Name = "two-tracks",
            Section = FigureSection.Comparison,
            Title = "Where the two rigs run",
            Subtitle = "seen from the side",
            Model = model,
            PlotHeight = options.Narrow ? 260 : 330,
            Keys =
            [
                .. runs.Select(run => KeyItem.Line(run.Name, run.Colour, 2.6, run.Dash)),
                KeyItem.Box("strike zone", Palette.Zone, Palette.ZoneEdge),
                .. spot.GrassHeight > 0 ? [KeyItem.Box("grass", OxyColors.White, Palette.Grass, Hatch.Rising)] : Array.Empty<KeyItem>(),
            ],
            Caption = "From where it lands, at the right, to the end of the retrieve at the left. Depth is stretched.",
            AltText = $"{string.Join("; ", new[] { (comparison.First.Name, comparison.FirstOutcome), (comparison.Second.Name, comparison.SecondOutcome) }.Select(p => $"{p.Name}: {TrackWords.Verdict(p.Item2.Candidate)}, typical depth {format.HandText(p.Item2.Depth)}"))}.",
        };
    }

    private static double Distance(Candidate run, int i) => run.Rig.Presentation.DistanceFromRod(run.Track.Time[i], run.Track.X[i], run.Track.Y[i]);
}
