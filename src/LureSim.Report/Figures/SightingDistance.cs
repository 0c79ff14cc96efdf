using LureSim.Light;
using LureSim.Sight;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>How far off a fish makes out each colour, by depth.</summary>
public static class SightingDistance
{
    // Lines that a plot holds without crowding.
    private const int WideLines = 8;
    private const int NarrowLines = 6;

    private static readonly (SightMode Mode, MarkerShape Shape, bool Filled, string Words)[] Marks =
    [
        (SightMode.Reflects, MarkerShape.Circle, true, "reflects: brighter than the water"),
        (SightMode.Silhouettes, MarkerShape.TriangleDown, true, "silhouette: darker than the water"),
        (SightMode.GoneDark, MarkerShape.Square, true, "gone dark: as good as black"),
        (SightMode.MatchesBackground, MarkerShape.Diamond, false, "matches the water"),
    ];

    /// <summary>Draws the figure.</summary>
    /// <param name="chart">The distances; at least one depth and one colour.</param>
    /// <param name="options">Units of depths and distances, and width.</param>
    /// <returns>The figure. Of many colours it shows some from the farthest to the nearest made out.</returns>
    /// <exception cref="ArgumentException">The chart is empty or ragged.</exception>
    public static Figure Create(SightChart chart, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(options);
        if (chart.Depths.Count == 0 || chart.Colours.Count == 0 || chart.Sightings.Count != chart.Depths.Count || chart.Sightings.Any(r => r.Count != chart.Colours.Count))
            throw new ArgumentException("The chart needs a depth and a colour, and a sighting for each pair.", nameof(chart));

        UnitFormat format = options.Format;
        List<int> shown = Shown(chart, options.Narrow ? NarrowLines : WideLines);
        double farthest = shown.Max(c => chart.Sightings.Max(r => Distance(r[c])));
        double bottom = chart.Depths.Max();
        PlotModel model = PlotBase.Model(options);
        // Room right of the longest line for its name.
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, $"sighting distance, looking level ({format.LengthUnit})", 0, Math.Max(format.Length(farthest) * 1.12, 0.1));
        PlotAxis y = PlotBase.DepthAxis(options, 0, Math.Max(format.Length(bottom) * 1.06, 0.1));
        y.Title = $"depth of the lure ({format.LengthUnit})";
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            LabelPlacer placer = new(area.Bounds);
            List<List<ScreenPoint>> lines = [.. shown.Select(c => chart.Depths.Select((d, i) => area.At(format.Length(Distance(chart.Sightings[i][c])), format.Length(d))).ToList())];
            for (int k = 0; k < shown.Count; k++)
            {
                OxyColor colour = Look(chart.Colours[shown[k]]);
                // A dark edge keeps white and yellow on the page, a light one keeps black off its neighbours.
                area.Line(lines[k], OxyColors.White, 6.5);
                area.Line(lines[k], Palette.SoftInk, 4.6);
                area.Line(lines[k], colour, 2.8);
                placer.AddLine(lines[k]);
            }

            for (int k = 0; k < shown.Count; k++)
            {
                for (int d = 0; d < chart.Depths.Count; d++)
                {
                    (_, MarkerShape shape, bool filled, _) = Marks.First(m => m.Mode == chart.Sightings[d][shown[k]].Mode);
                    Shapes.Marker(area.Context, lines[k][d], shape, filled, Palette.Ink, options.Narrow ? 3.2 : 4);
                    if (filled)
                        Shapes.Disc(area.Context, lines[k][d], options.Narrow ? 1.4 : 1.9, Look(chart.Colours[shown[k]]), OxyColors.Undefined, 0);
                }
            }

            List<LabelPlacer.Placement> placements = [];
            for (int k = 0; k < shown.Count; k++)
            {
                // Where the line is farthest from all others it is plainest whose name it is.
                int own = k;
                List<ScreenPoint> anchors = [.. Fine(lines[k]).OrderByDescending(p => lines.Where((_, i) => i != own).Select(l => Fine(l).Min(q => (q - p).Length)).DefaultIfEmpty(0).Min())];
                if (placer.Place(new LabelRequest { Text = chart.Colours[shown[k]].Name, Anchors = anchors, Size = options.SmallFontSize, Bold = true, AnchorCost = 60, Rivals = [.. lines.Where((_, i) => i != own).Select(l => (IReadOnlyList<ScreenPoint>)Fine(l))] }) is { } placement)
                    placements.Add(placement);
            }

            LabelPlacer.Draw(area, placements);
        });

        HashSet<SightMode> modes = [.. shown.SelectMany(c => chart.Sightings.Select(r => r[c].Mode))];
        string left = shown.Count < chart.Colours.Count ? $"; {shown.Count} of {chart.Colours.Count} colours" : "";
        string standIn = chart.Eye.Basis == EyeBasis.StandIn ? " (stand-in eye)" : "";
        return new Figure(options)
        {
            Name = "sighting-distance",
            Title = $"How far off a {chart.Eye.CommonName} makes out each colour",
            Subtitle = $"{chart.Eye.CommonName}{standIn} {chart.Direction.Words()}{left}",
            Model = model,
            PlotHeight = options.Narrow ? 340 : 380,
            Keys = [.. Marks.Where(m => modes.Contains(m.Mode)).Select(m => KeyItem.Symbol(m.Words, (rc, at, _) => Shapes.Marker(rc, at, m.Shape, m.Filled, Palette.Ink, 4)))],
            Caption = $"Each line is a colour of the box, drawn in its look in air; the mark says whether it shines or stands dark against the water. The order of colours is firmer than the distances, which hang on assumed thresholds. Movement and scent are not in it. {chart.Eye.BasisNote}",
            AltText = $"Sighting distance of a {chart.Eye.CommonName}{standIn}, {chart.Direction.Words()}. " + string.Join("; ", shown.Select(c => Describe(chart, c, format))) + ".",
        };
    }

    private static string Describe(SightChart chart, int colour, UnitFormat format) =>
        $"{chart.Colours[colour].Name}: " + string.Join(", ", chart.Depths.Select((d, i) => $"{format.LengthText(Distance(chart.Sightings[i][colour]))} at {format.LengthText(d)} deep, {Words(chart.Sightings[i][colour].Mode)}"));

    private static string Words(SightMode mode) => Marks.First(m => m.Mode == mode).Words.Split(':')[0];

    private static double Distance(Sighting sighting) => double.IsFinite(sighting.Distance) ? Math.Max(0, sighting.Distance) : 0;

    // Colours from the best to the worst by rank, evenly picked when there are many.
    private static List<int> Shown(SightChart chart, int most)
    {
        List<int> ranked = [.. chart.ByMeanRank().Select(colour => Enumerable.Range(0, chart.Colours.Count).First(i => ReferenceEquals(chart.Colours[i], colour))).Distinct()];
        return ranked.Count <= most ? ranked : [.. Enumerable.Range(0, most).Select(i => ranked[(int)Math.Round(i * (ranked.Count - 1.0) / (most - 1))]).Distinct()];
    }

    private static OxyColor Look(LureColour colour)
    {
        Spectrum white = Spectrum.Constant(colour.Reflectance.Grid, 1);
        double exposure = white.Dot(Colorimetry.YBar);
        Xyz seen = (1 / exposure) * Colorimetry.Integrate(colour.Exitance(white));
        Xyz light = (1 / exposure) * Colorimetry.Integrate(white);
        Srgb look = Srgb.FromXyz(ChromaticAdaptation.Cat16(seen, light, Colorimetry.D65White));
        return OxyColor.FromRgb(look.Red, look.Green, look.Blue);
    }

    // A line with points close together.
    private static List<ScreenPoint> Fine(List<ScreenPoint> line)
    {
        const int pieces = 8;
        List<ScreenPoint> points = [line[0]];
        for (int i = 1; i < line.Count; i++)
        {
            for (int k = 1; k <= pieces; k++)
                points.Add(line[i - 1] + ((line[i] - line[i - 1]) * ((double)k / pieces)));
        }

        return points;
    }
}
