using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Which eye a swatch chart is for.</summary>
public enum SwatchView
{
    /// <summary>A person's eye after some minutes at that depth.</summary>
    Eye,

    /// <summary>A camera set for the surface, or a first glance.</summary>
    Camera,
}

/// <summary>Lure colours as they look at depth.</summary>
public static class ColourSwatches
{
    // Colours named in the alternative text.
    private const int MostNamed = 4;

    /// <summary>Draws the figure.</summary>
    /// <param name="plate">The colours; at least one colour and one depth.</param>
    /// <param name="zone">The strike zone, or null.</param>
    /// <param name="view">Which eye.</param>
    /// <param name="options">Units of the depths, and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">The plate is empty or ragged.</exception>
    public static Figure Create(ColourPlate plate, StrikeZone? zone, SwatchView view, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(plate);
        ArgumentNullException.ThrowIfNull(options);
        int rows = plate.Depths.Count;
        int columns = plate.Colours.Count;
        if (rows == 0 || columns == 0 || plate.Cells.Count != rows || plate.Cells.Any(r => r.Count != columns))
            throw new ArgumentException("The plate needs a depth and a colour, and a cell for each pair.", nameof(plate));

        UnitFormat format = options.Format;
        PlotModel model = PlotBase.Model(options);
        model.PlotAreaBorderThickness = new OxyThickness(0);
        double cellHeight = Math.Clamp(440.0 / rows, 34, 48);
        double nameHeight = (options.SmallFontSize * 1.2 * 3) + 6;
        PlotAxis y = CoverageMap.Rows(options, "", rows, DepthLabel);
        y.AxisTickToLabelDistance = 10;
        // Room above the first row for the names, in rows.
        y.Minimum = -0.5 - (nameHeight / cellHeight);
        LinearAxis x = PlotBase.Hidden(AxisPosition.Bottom, -0.5, columns - 0.5);
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int c = 0; c < columns; c++)
            {
                OxyRect head = area.Between(c - 0.5, -0.5, c + 0.5, -0.5);
                double size = options.SmallFontSize;
                string name = Fit(plate.Colours[c], head.Width - 4, ref size);
                area.Text(new ScreenPoint(head.Left + (head.Width / 2), head.Top - 4), name, size, Palette.Ink, HorizontalAlignment.Center, VerticalAlignment.Bottom, bold: true);
                for (int r = 0; r < rows; r++)
                {
                    PlateCell cell = plate.Cells[r][c];
                    OxyColor fill = OxyColor.Parse(view == SwatchView.Eye ? cell.Eye : cell.Camera);
                    OxyRect box = area.Between(c - 0.5, r - 0.5, c + 0.5, r + 0.5);
                    area.Context.DrawRectangle(box, fill, OxyColors.White, 1.5, EdgeRenderingMode.Adaptive);
                    if (view == SwatchView.Camera)
                        continue;

                    double wordSize = options.SmallFontSize;
                    string word = Fit(cell.Word, box.Width - 4, ref wordSize);
                    area.Text(new ScreenPoint(box.Left + (box.Width / 2), box.Top + (box.Height / 2)), word, wordSize, Palette.TextOn(fill));
                }
            }

            if (zone is not null)
                PaintZone(area, plate.Depths, zone);
        }, clip: false);

        string DepthLabel(int i) => plate.Depths[i] <= 0 ? "surface" : format.LengthText(plate.Depths[i]);

        IEnumerable<string> parts = Enumerable.Range(0, Math.Min(columns, MostNamed)).Select(c => $"{plate.Colours[c]} {plate.Cells[^1][c].Word}");
        bool eye = view == SwatchView.Eye;
        return new Figure(options)
        {
            Name = eye ? "colours-eye" : "colours-camera",
            Section = FigureSection.Colours,
            Title = format.Say($"{(eye ? "Your eye's view" : "The camera's view")}: colors at depth"),
            Subtitle = eye ? "after some minutes down there" : format.Say($"set for light and color at the surface; a first glance looks much the same"),
            Model = model,
            PlotHeight = (cellHeight * rows) + nameHeight + 20,
            Keys = zone is null ? [] : [KeyItem.Line("bracket: strike zone", Palette.ZoneEdge, 3.5, null)],
            Caption = eye
                ? format.Say($"A person's eye gets used to part of the color of the light, the less the stronger the color (Smet et al. 2017, CIECAM16). The word says what the swatch looks like. Fish eyes differ.")
                : "The same lures with the fading light left in: what a photograph shows.",
            AltText = format.Say($"Swatches of {columns} colors by depth, {(eye ? "as an eye sees them after minutes" : "as a camera set for the surface takes them")}. At {format.LengthText(plate.Depths[^1])}: {string.Join(", ", parts)}."),
        };
    }

    // Wraps a text, and shrinks it a little when a single word is still too wide.
    private static string Fit(string text, double width, ref double size)
    {
        double smallest = size * 0.78;
        while (true)
        {
            string wrapped = Rendering.BundledFont.Wrap(text.Replace("-", "- ", StringComparison.Ordinal), width, size, FontWeights.Bold).Replace("- ", "-", StringComparison.Ordinal);
            if (Rendering.BundledFont.Measure(wrapped, size, FontWeights.Bold).Width <= width || size <= smallest)
                return wrapped;

            size *= 0.94;
        }
    }

    // A bar beside the rows whose depth lies in the zone, or beside the nearest row if none does.
    private static void PaintZone(PaintArea area, IReadOnlyList<double> depths, StrikeZone zone)
    {
        List<int> rows = [.. Enumerable.Range(0, depths.Count).Where(r => zone.Contains(depths[r]))];
        if (rows.Count == 0)
            rows.Add(Enumerable.Range(0, depths.Count).MinBy(r => Math.Abs(depths[r] - ((zone.Top + zone.Bottom) / 2))));
        OxyRect band = area.Between(-0.5, rows[0] - 0.5, 0.5, rows[^1] + 0.5);
        double x = band.Left - 4;
        area.Line([new(x + 4, band.Top + 2), new(x, band.Top + 2), new(x, band.Bottom - 2), new(x + 4, band.Bottom - 2)], Palette.ZoneEdge, 3.5);
    }
}
