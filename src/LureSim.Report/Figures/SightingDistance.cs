using LureSim.Light;
using LureSim.Report.Rendering;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>How far off a fish makes out each colour, by depth.</summary>
public static class SightingDistance
{
    // Lines that a plot holds without crowding.
    private const int WideLines = 10;
    private const int NarrowLines = 6;
    private const double NameGap = 8;

    // What the axis below the plot takes of its height (1/96 inch).
    private const double AxisRoom = 70;

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
        double farthest = Math.Max(chart.Reactions.Max(), shown.Max(c => chart.Sightings.Max(r => Distance(r[c]))));
        double bottom = chart.Depths.Max();
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, $"sighting distance, looking level ({format.LengthUnit})", 0, Math.Max(format.LengthValue(farthest) * 1.08, 0.1));
        double height = options.Narrow ? 380 : 420;
        double deep = Math.Max(format.LengthValue(bottom), 0.1);
        // Room above and below the lines for the names, in units of the axis.
        double room = (options.SmallFontSize * 1.2 * (options.Narrow ? 3 : 2)) + 24;
        double margin = deep * room / (height - AxisRoom - (2 * room));
        PlotAxis y = PlotBase.DepthAxis(options, -margin, deep + margin);
        y.IsShown = value => value >= -1e-9 && value <= deep + 1e-9;
        y.Title = $"depth of the lure ({format.LengthUnit})";
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            foreach (double level in (ReadOnlySpan<double>)[0, format.LengthValue(bottom)])
                area.Line([new(area.Bounds.Left, area.At(0, level).Y), new(area.Bounds.Right, area.At(0, level).Y)], level > 0 ? Palette.Line : Palette.Surface, level > 0 ? 1 : 1.6);
            List<List<ScreenPoint>> lines = [.. shown.Select(c => chart.Depths.Select((d, i) => area.At(format.LengthValue(Distance(chart.Sightings[i][c])), format.LengthValue(d))).ToList())];
            for (int k = 0; k < shown.Count; k++)
            {
                OxyColor colour = Look(chart.Colours[shown[k]]);
                // A dark edge keeps white and yellow on the page, a light one keeps black off its neighbours.
                area.Line(lines[k], OxyColors.White, 6.5);
                area.Line(lines[k], Palette.SoftInk, 4.6);
                area.Line(lines[k], colour, 2.8);
            }

            area.Line([.. chart.Depths.Select((d, i) => area.At(format.LengthValue(chart.Reactions[i]), format.LengthValue(d)))], Palette.Vermilion, 2, [6, 4]);

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

            // Names stand over and under the lines by turns, in the order of their ends, so that no leader crosses another.
            List<int> order = [.. Enumerable.Range(0, lines.Count).OrderBy(k => lines[k][0].X).ThenBy(k => k)];
            Name([.. order.Where((_, i) => i % 2 == 0)], above: true);
            Name([.. order.Where((_, i) => i % 2 == 1).OrderBy(k => lines[k][^1].X)], above: false);

            void Name(List<int> row, bool above)
            {
                List<string> names = [.. row.Select(k => BundledFont.Wrap(chart.Colours[shown[k]].Name, (area.Bounds.Width / Math.Max(1, row.Count)) - NameGap, options.SmallFontSize, FontWeights.Bold))];
                List<OxySize> sizes = [.. names.Select(n => BundledFont.Measure(n, options.SmallFontSize, FontWeights.Bold))];
                double[] lefts = Spread([.. row.Select((k, i) => (above ? lines[k][0].X : lines[k][^1].X) - (sizes[i].Width / 2))], [.. sizes.Select(z => z.Width)], area.Bounds.Left + 4, area.Bounds.Right - 4);
                for (int i = 0; i < row.Count; i++)
                {
                    ScreenPoint end = above ? lines[row[i]][0] : lines[row[i]][^1];
                    double middle = lefts[i] + (sizes[i].Width / 2);
                    ScreenPoint near = new(middle, above ? area.Bounds.Top + 4 + sizes[i].Height : area.Bounds.Bottom - 4 - sizes[i].Height);
                    area.Line([near, new(end.X, end.Y + (above ? -6 : 6))], Palette.SoftInk, 0.9);
                    area.Text(near, names[i], options.SmallFontSize, Palette.Ink, HorizontalAlignment.Center, above ? VerticalAlignment.Bottom : VerticalAlignment.Top, bold: true);
                }
            }
        }, clip: false);

        HashSet<SightMode> modes = [.. shown.SelectMany(c => chart.Sightings.Select(r => r[c].Mode))];
        string left = shown.Count < chart.Colours.Count ? $"; {shown.Count} of {chart.Colours.Count} colours" : "";
        string standIn = chart.Eye.Basis == EyeBasis.StandIn ? " (stand-in eye)" : "";
        return new Figure(options)
        {
            Name = "sighting-distance",
            Section = FigureSection.Colours,
            Title = $"How far off a {chart.Eye.CommonName} makes out each colour",
            Subtitle = $"{chart.Eye.CommonName}{standIn} {ColourWords.Looking(chart.Direction)}{left}",
            Model = model,
            PlotHeight = height,
            Keys =
            [
                .. Marks.Where(m => modes.Contains(m.Mode)).Select(m => KeyItem.Symbol(m.Words, (rc, at, _) => Shapes.Marker(rc, at, m.Shape, m.Filled, Palette.Ink, 4))),
                KeyItem.Line("fish in tanks turned to prey from here", Palette.Vermilion, 2, [6, 4]),
            ],
            Caption = $"Each line is a colour of the box, drawn in its look in air; the mark says whether it shines or stands dark against the water. The order of colours is firmer than the distances, which differ between kinds of fish by a factor of 1.7 either way (what trained sunfish made out, Spratte et al. 2021). Dashed: from where salmon and trout in tanks turned to a fish of 5 cm in this light and turbidity (Hansen et al. 2013, Vogel & Beauchamp 1999, Mazur & Beauchamp 2003; a factor of 1.4 either way, no inshore fish measured). Movement and scent are not in it. {ColourWords.Basis(chart.Eye)}",
            AltText = $"Sighting distance of a {chart.Eye.CommonName}{standIn}, {ColourWords.Looking(chart.Direction)}. " + string.Join("; ", shown.Select(c => Describe(chart, c, format))) + $". Fish in tanks turned to prey at {string.Join(", ", chart.Depths.Select((d, i) => $"{format.LengthText(chart.Reactions[i])} at {format.LengthText(d)} deep"))}.",
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
        // A fluorescent colour is brighter than any screen can show it: darker, its hue stays.
        double share = 0.85;
        Srgb look = Show(share, out double kept);
        while (kept < 0.9 && share > 0.3)
            look = Show(share *= 0.92, out kept);
        return OxyColor.FromRgb(look.Red, look.Green, look.Blue);

        Srgb Show(double scale, out double saturation) => Srgb.FromXyz(scale * ChromaticAdaptation.Cat16(seen, light, Colorimetry.D65White), out saturation);
    }

    // Left edges near those wished for, in their order, without overlap and inside the bounds where there is room: the
    // mean of pushing all to the right and pushing all to the left, which keeps both order and gaps.
    private static double[] Spread(double[] wished, double[] widths, double from, double to)
    {
        double[] right = Push([.. wished], leftFirst: false);
        double[] left = Push([.. wished], leftFirst: true);
        return [.. right.Select((r, i) => (r + left[i]) / 2)];

        double[] Push(double[] edges, bool leftFirst)
        {
            foreach (bool toLeft in (bool[])[leftFirst, !leftFirst])
            {
                for (int k = 0; k < edges.Length; k++)
                {
                    int i = toLeft ? edges.Length - 1 - k : k;
                    edges[i] = toLeft
                        ? Math.Min(edges[i], (i == edges.Length - 1 ? to : edges[i + 1] - NameGap) - widths[i])
                        : Math.Max(edges[i], i == 0 ? from : edges[i - 1] + widths[i - 1] + NameGap);
                }
            }

            return edges;
        }
    }
}
