using System.Diagnostics;
using LureSim.Light;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>A lure against the water behind it as the distance grows.</summary>
public static class SilhouetteFigure
{
    // Contrast below which hardly anyone tells a lure from the water (threshold of Duntley 1963 and later, 2 %).
    private const double Lost = 0.02;

    /// <summary>Draws the figure.</summary>
    /// <param name="strips">One row each, at least one, with at least one distance.</param>
    /// <param name="options">Units of the distances, and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There is no strip, or one without distances.</exception>
    public static Figure Create(IReadOnlyList<SilhouetteStrip> strips, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(strips);
        ArgumentNullException.ThrowIfNull(options);
        if (strips.Count == 0 || strips.Any(s => s.Distances.Count == 0))
            throw new ArgumentException("There must be a strip, and a distance in each.", nameof(strips));

        UnitFormat format = options.Format;
        int columns = strips.Max(s => s.Distances.Count);
        double head = (options.FontSize * 1.25) + 8;
        double panel = options.Narrow ? 64 : 96;
        double pair = 16;
        double foot = (options.SmallFontSize * 2.5) + 12;
        double rowHeight = head + panel + pair + foot;
        PlotModel model = PlotBase.Model(options);
        model.PlotAreaBorderThickness = new OxyThickness(0);
        model.Padding = new OxyThickness(12, 8, 6, 6);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Bottom, 0, 1));
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            double width = area.Bounds.Width / columns;
            for (int r = 0; r < strips.Count; r++)
            {
                SilhouetteStrip strip = strips[r];
                double top = area.Bounds.Top + (r * rowHeight);
                area.Text(new ScreenPoint(area.Bounds.Left, top), Heading(strip, format), options.FontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Top, bold: true);
                for (int c = 0; c < strip.Distances.Count; c++)
                {
                    OxyRect box = new(area.Bounds.Left + (c * width), top + head, width - (options.Narrow ? 3 : 8), panel);
                    SeenSwatches seen = strip.Swatches[c];
                    OxyColor water = Colour(seen.Water), lure = Colour(seen.Target);
                    area.Context.DrawRectangle(box, water, Palette.Line, 0.8, EdgeRenderingMode.Adaptive);
                    area.Context.DrawPolygon(Lure(box, strip.Direction), lure, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
                    double half = box.Width / 2;
                    area.Context.DrawRectangle(new OxyRect(box.Left, box.Bottom + 3, box.Width, pair - 3), water, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);
                    area.Context.DrawRectangle(new OxyRect(box.Left, box.Bottom + 3, half, pair - 3), lure, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);
                    area.Context.DrawRectangle(new OxyRect(box.Left, box.Bottom + 3, box.Width, pair - 3), OxyColors.Undefined, Palette.Line, 0.8, EdgeRenderingMode.Adaptive);
                    ScreenPoint foot = new(box.Left + half, box.Bottom + pair + 4);
                    area.Text(foot, strip.Distances[c] <= 0 ? "close up" : format.SeenText(strip.Distances[c]), options.SmallFontSize, Palette.Ink, HorizontalAlignment.Center, VerticalAlignment.Top, bold: true);
                    area.Text(new ScreenPoint(foot.X, foot.Y + (options.SmallFontSize * 1.25)), Contrast(seen.LuminanceContrast), options.SmallFontSize, Palette.SoftInk, HorizontalAlignment.Center, VerticalAlignment.Top);
                }
            }
        }, clip: false);

        return new Figure(options)
        {
            Name = "silhouette",
            Section = FigureSection.Colours,
            Title = $"A {strips[0].Name} lure, close up and farther off",
            Subtitle = "lure against the water behind it, drawn at one size",
            Model = model,
            PlotHeight = (rowHeight * strips.Count) + 14,
            Keys = [KeyItem.Symbol(format.Say($"under each picture: color of lure and water side by side, distance, contrast: brighter (+) or darker (−) than the water"), (rc, at, _) =>
            {
                rc.DrawRectangle(new OxyRect(at.X - 8, at.Y - 5, 8, 10), Palette.Ink, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);
                rc.DrawRectangle(new OxyRect(at.X - 8, at.Y - 5, 16, 10), OxyColors.Undefined, Palette.Line, 1, EdgeRenderingMode.Adaptive);
            })],
            Caption = format.Say($"The water puts its own light between eye and lure, so a lure fades into the water behind it. Seen level it is lit from above and stands against the water; from below it stands against the bright surface, and almost any color is a dark shape. To a person's eye after some minutes; each row has one exposure. Movement is not in the picture."),
            AltText = format.Say($"A {strips[0].Name} lure against the water at growing distance. {string.Join(" ", strips.Select(s => $"{Heading(s, format)}: {Contrast(s.Swatches[0].LuminanceContrast)} close up, {Contrast(s.Swatches[^1].LuminanceContrast)} at {format.SeenText(s.Distances[^1])}."))}"),
        };
    }

    private static string Heading(SilhouetteStrip strip, UnitFormat format) => strip.Direction switch
    {
        ViewDirection.Level => $"Seen level, lure at {format.HandText(strip.Depth)}",
        ViewDirection.Down => $"Seen from above, lure at {format.HandText(strip.Depth)}",
        ViewDirection.Up => $"Seen from below, lure at {format.HandText(strip.Depth)}",
        ViewDirection.SlantUp => $"Seen from below, at an angle, lure at {format.HandText(strip.Depth)}",
        _ => throw new UnreachableException(),
    };

    private static string Contrast(double contrast) =>
        !double.IsFinite(contrast) ? UnitFormat.None
        : Math.Abs(contrast) < Lost ? "lost"
        : (contrast > 0 ? "+" : "−") + UnitFormat.PercentText(Math.Round(Math.Abs(contrast), 2));

    private static OxyColor Colour(Srgb colour) => OxyColor.FromRgb(colour.Red, colour.Green, colour.Blue);

    // A paddle tail: from the side with its tail's foot down, from below as a spindle.
    private static List<ScreenPoint> Lure(OxyRect box, ViewDirection direction)
    {
        double length = 0.74 * box.Width;
        double height = Math.Min(0.34 * box.Height, 0.26 * length);
        double left = box.Left + ((box.Width - length) / 2);
        double middle = box.Top + (box.Height / 2);
        bool side = direction is ViewDirection.Level;
        List<ScreenPoint> upper = [];
        List<ScreenPoint> lower = [];
        for (int i = 0; i <= 40; i++)
        {
            double s = i / 40.0;
            // Blunt head, fullest at a third, thin before the tail.
            double body = 0.5 * height * Math.Max(0.16, Math.Pow(s + 0.001, 0.42) * Math.Pow(Math.Max(0, 1.02 - s), 0.8) * 1.75);
            double paddle = s > 0.86 ? Math.Sin(Math.PI * Math.Min(1, (s - 0.86) / 0.14)) * height : 0;
            double x = left + (s * length);
            upper.Add(new ScreenPoint(x, middle - body - (side ? 0.15 * paddle : 0.3 * paddle)));
            lower.Add(new ScreenPoint(x, middle + body + (side ? 0.55 * paddle : 0.3 * paddle)));
        }

        lower.Reverse();
        return [.. upper, .. lower];
    }
}
