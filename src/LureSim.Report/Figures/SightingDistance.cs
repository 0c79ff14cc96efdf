using LureSim.Decision.Colours;
using LureSim.Light;
using LureSim.Report.Rendering;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>How far off a fish sees each colour, one panel a depth, one row a colour: rows keep colours apart that are seen from nearly as far.</summary>
public static class SightingDistance
{
    private const int MostPanels = 4;
    private const int WidePanels = 4;
    private const int NarrowPanels = 2;
    private const double Gap = 12;

    private static readonly (SightMode Mode, MarkerShape Shape, string Words)[] Marks =
    [
        (SightMode.Reflects, MarkerShape.Circle, "brighter than the water"),
        (SightMode.Silhouettes, MarkerShape.TriangleDown, "darker than the water"),
        (SightMode.GoneDark, MarkerShape.Square, "as good as black"),
        (SightMode.MatchesBackground, MarkerShape.Diamond, "as bright as the water"),
    ];

    /// <summary>Draws the figure.</summary>
    /// <param name="sight">What was found; at least one depth and one lure.</param>
    /// <param name="options">Units of depths and distances, and width.</param>
    /// <returns>The figure. Of many depths it shows four, the shallowest and the deepest among them.</returns>
    /// <exception cref="ArgumentException">There is nothing to show, or a row is ragged.</exception>
    public static Figure Create(SightFinding sight, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(sight);
        ArgumentNullException.ThrowIfNull(options);
        if (sight.Rows.Count == 0 || sight.Lures.Count == 0 || sight.Rows.Any(row => row.Seen.Count != sight.Lures.Count))
            throw new ArgumentException("There must be a depth and a lure, and a distance for each pair.", nameof(sight));

        UnitFormat format = options.Format;
        List<SightRow> panels = Shown(sight.Rows);

        // Farthest first by the mean over the depths, in every panel the same.
        List<int> order = [.. Enumerable.Range(0, sight.Lures.Count).OrderByDescending(i => sight.Rows.Average(row => row.Seen[i].SeenFrom)).ThenBy(i => i)];
        int columns = Math.Min(panels.Count, options.Narrow ? NarrowPanels : WidePanels);
        int blocks = (panels.Count + columns - 1) / columns;
        double line = (options.SmallFontSize * 1.25) + 7, head = (options.SmallFontSize * 1.3) + 6, foot = options.SmallFontSize + 10;
        double block = head + (line * order.Count) + foot;
        double names = order.Max(i => BundledFont.Measure(Name(sight.Lures[i], options), options.SmallFontSize, FontWeights.Normal).Width) + 10;
        double farthest = Math.Max(ColourAdvice.StrikeLength, sight.Rows.Max(row => row.Seen.Max(seen => seen.SeenFrom)));
        double step = Step(format.LengthValue(farthest) * 1.06);
        double end = step * Math.Max(1, Math.Ceiling(format.LengthValue(farthest) * 1.06 / step));
        PlotModel model = PlotBase.Model(options);
        model.PlotAreaBorderThickness = new OxyThickness(0);
        model.Padding = new OxyThickness(12, 4, 12, 4);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Bottom, 0, 1));
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            double width = (area.Bounds.Width - names - (Gap * (columns - 1))) / columns;
            for (int p = 0; p < panels.Count; p++)
            {
                double left = area.Bounds.Left + names + (p % columns * (width + Gap)), top = area.Bounds.Top + (p / columns * block);
                Panel(area, panels[p], new OxyRect(left, top + head, width, line * order.Count));
                area.Text(new ScreenPoint(left + (width / 2), top), $"lure at {format.HandText(panels[p].Depth)}", options.SmallFontSize, Palette.Ink, HorizontalAlignment.Center, VerticalAlignment.Top, bold: true);
                if (p % columns > 0)
                    continue;
                for (int r = 0; r < order.Count; r++)
                    area.Text(new ScreenPoint(left - 8, top + head + ((r + 0.5) * line)), Name(sight.Lures[order[r]], options), options.SmallFontSize, Palette.Ink, HorizontalAlignment.Right, VerticalAlignment.Middle);
            }
        }, clip: false);

        string fish = FishWords.Everyday(sight.Eye.CommonName);
        string standIn = sight.Eye.Basis == EyeBasis.StandIn ? " (eye data borrowed from a similar fish)" : "";
        HashSet<SightMode> modes = [.. panels.SelectMany(row => row.Seen.Select(seen => seen.Mode))];
        return new Figure(options)
        {
            Name = "sighting-distance",
            Section = FigureSection.Colours,
            Title = format.Say($"How far off {Grammar.Article(fish)} sees each color"),
            Subtitle = $"from where fish in the strike zone look ({format.LengthUnit}){standIn}",
            Model = model,
            PlotHeight = (block * blocks) + 8,
            Keys =
            [
                .. Marks.Where(m => modes.Contains(m.Mode)).Select(m => KeyItem.Symbol(m.Words, (rc, at, _) => Shapes.Marker(rc, at, m.Shape, true, Palette.Ink, 4.5))),
                .. panels.Any(row => format.LengthValue(row.Reach) <= end) ? [KeyItem.Line("as far as a fish comes for a lure", Palette.Vermilion, 2, [6, 4])] : Array.Empty<KeyItem>(),
            ],
            Caption = format.Say($"One row a color, drawn in its look in air; the mark says how it stands against the water. Small gaps are no real difference: kinds of fish differ by a factor of 1.7 either way (trained sunfish, Spratte et al. 2021). Dashed: from where salmon and trout in tanks turned to a small fish in such light and water (Hansen et al. 2013, Vogel & Beauchamp 1999, Mazur & Beauchamp 2003); being seen from farther gains nothing. Movement and scent are not counted. {ColourWords.Basis(sight.Eye)}"),
            AltText = format.Say($"Dots: how far off {Grammar.Article(fish)} sees each color, by depth. {string.Join("; ", panels.Take(2).Select(row => $"Lure at {format.HandText(row.Depth)}: {string.Join(", ", order.Take(2).Select(i => $"{sight.Lures[i].Name} {format.SeenText(row.Seen[i].SeenFrom)}"))}"))}."),
        };

        void Panel(PaintArea area, SightRow row, OxyRect box)
        {
            area.Fill(box, OxyColor.FromRgb(0xF7, 0xF9, 0xFB));
            double X(double metres) => box.Left + 6 + ((box.Width - 12) * Math.Clamp(format.LengthValue(metres) / end, 0, 1));
            int labels = Math.Max(1, (int)Math.Round(end / step));
            for (int k = 0; k <= labels; k++)
            {
                double x = box.Left + 6 + ((box.Width - 12) * k / labels);
                area.Line([new(x, box.Top), new(x, box.Bottom)], Palette.Grid, 1);
                if (k % 2 == 0 || labels <= 3)
                    area.Text(new ScreenPoint(x, box.Bottom + 3), UnitFormat.Number(k * step, 2), options.SmallFontSize - 1, Palette.SoftInk, HorizontalAlignment.Center, VerticalAlignment.Top);
            }

            if (format.LengthValue(row.Reach) <= end)
                area.Line([new(X(row.Reach), box.Top), new(X(row.Reach), box.Bottom)], Palette.Vermilion, 2, [6, 4]);
            for (int r = 0; r < order.Count; r++)
            {
                SeenLure seen = row.Seen[order[r]];
                double y = box.Top + ((r + 0.5) * line);
                OxyColor look = Look(sight.Lures[order[r]].Side);
                area.Line([new(X(0), y), new(X(seen.SeenFrom), y)], Palette.Line, 1.4);
                MarkerShape shape = Marks.First(m => m.Mode == seen.Mode).Shape;

                // A dark edge keeps white and yellow on the page.
                Shapes.Marker(area.Context, new ScreenPoint(X(seen.SeenFrom), y), shape, true, Palette.Ink, options.Narrow ? 5.5 : 6.5);
                Shapes.Marker(area.Context, new ScreenPoint(X(seen.SeenFrom), y), shape, true, look, options.Narrow ? 4 : 5);
            }
        }
    }

    // One line; a name may be a single word of any length.
    private static string Name(LurePattern lure, FigureOptions options)
    {
        double width = options.Narrow ? 118 : 190;
        return BundledFont.Cut(BundledFont.Wrap(lure.Name, width, options.SmallFontSize, FontWeights.Normal).Split('\n')[0], width, options.SmallFontSize, FontWeights.Normal);
    }

    // Shallowest and deepest, and evenly between.
    private static List<SightRow> Shown(IReadOnlyList<SightRow> rows) => rows.Count <= MostPanels
        ? [.. rows]
        : [.. Enumerable.Range(0, MostPanels).Select(i => rows[(int)Math.Round(i * (rows.Count - 1.0) / (MostPanels - 1))])];

    // Round step for about four ticks.
    private static double Step(double end)
    {
        double rough = end / 4, power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return power * (rough / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 };
    }

    private static OxyColor Look(LureColour colour)
    {
        Spectrum white = Spectrum.Constant(colour.Reflectance.Grid, 1);
        double exposure = white.Dot(Colorimetry.YBar);
        Xyz seen = (1 / exposure) * Colorimetry.Integrate(colour.Exitance(white));
        Xyz light = (1 / exposure) * Colorimetry.Integrate(white);
        Srgb look = Srgb.Vivid(LightestShare * ChromaticAdaptation.Cat16(seen, light, Colorimetry.D65White));
        return OxyColor.FromRgb(look.Red, look.Green, look.Blue);
    }

    // White paint stays a shade under the page.
    private const double LightestShare = 0.85;
}
