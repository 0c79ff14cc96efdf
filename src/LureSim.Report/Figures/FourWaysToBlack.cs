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

/// <summary>Four ways in which red is 'black', each with its picture, one sentence and its depth in this water.</summary>
public static class FourWaysToBlack
{
    private const double Tile = 74;

    /// <summary>Draws the figure.</summary>
    /// <param name="spot">The water.</param>
    /// <param name="eye">The eye of the fish.</param>
    /// <param name="water">What the water is called.</param>
    /// <param name="options">Units of the depths, and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(SpotLesson spot, FishEye eye, string water, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(eye);
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        double bottom = spot.Chart.Depths[^1];
        double textWidth = options.Pixels - 24 - Tile - 14;
        List<(string Head, string Sentence, string Depth)> rows =
        [
            .. spot.Ways.Select((way, i) => (
                BundledFont.Wrap($"{i + 1}. {LessonWords.Way(way.Dark.Criterion, FishWords.Everyday(eye.CommonName))}", textWidth, options.FontSize, FontWeights.Bold),
                BundledFont.Wrap(LessonWords.WaySentence(way.Dark.Criterion, format), textWidth, options.SmallFontSize, FontWeights.Normal),
                BundledFont.Wrap(LessonWords.WayDepth(way.Dark, bottom, format), textWidth, options.SmallFontSize, FontWeights.Bold))),
        ];
        List<double> heights = [.. rows.Select(row => Math.Max(Tile, 8 + Height(row.Head, options.FontSize, true) + Height(row.Sentence, options.SmallFontSize, false) + Height(row.Depth, options.SmallFontSize, true)) + 14)];
        PlotModel model = PlotBase.Model(options);
        model.PlotAreaBorderThickness = new OxyThickness(0);
        model.Padding = new OxyThickness(12, 6, 12, 6);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Bottom, 0, 1));
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            double y = area.Bounds.Top;
            for (int i = 0; i < rows.Count; i++)
            {
                Paint(area, spot.Ways[i], new OxyRect(area.Bounds.Left, y, Tile, Tile), options.SmallFontSize - 1);
                double x = area.Bounds.Left + Tile + 14, line = y;
                area.Text(new ScreenPoint(x, line), rows[i].Head, options.FontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Top, bold: true);
                line += Height(rows[i].Head, options.FontSize, true) + 3;
                area.Text(new ScreenPoint(x, line), rows[i].Sentence, options.SmallFontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Top);
                line += Height(rows[i].Sentence, options.SmallFontSize, false) + 3;
                area.Text(new ScreenPoint(x, line), rows[i].Depth, options.SmallFontSize, Palette.Vermilion, HorizontalAlignment.Left, VerticalAlignment.Top, bold: true);
                y += heights[i];
            }
        }, clip: false);
        return new Figure(options)
        {
            Name = "four-ways-to-black",
            Section = FigureSection.Lesson,
            Title = "Four ways to be black",
            Subtitle = $"a red lure in {water}",
            Model = model,
            PlotHeight = heights.Sum() + 12,
            Caption = format.Say($"People who say red turns black at a certain depth often mean different things. Each picture is drawn at the depth named, or at the bottom where red is not dark by that measure: red at the left, what it is judged beside at the right. The bars are the share of white that red sends to each kind of cone of the fish; under the dashed line (6%) it counts as black. {ColourWords.Basis(eye)}"),
            AltText = format.Say($"Four ways in which red is black: {string.Join(" ", spot.Ways.Select(way => $"{LessonWords.Way(way.Dark.Criterion, FishWords.Everyday(eye.CommonName))}. {LessonWords.WayDepth(way.Dark, bottom, format)}"))}"),
        };
    }

    private static double Height(string text, double size, bool bold) => BundledFont.Measure(text, size, bold ? FontWeights.Bold : FontWeights.Normal).Height;

    private static void Paint(PaintArea area, DarkExample way, OxyRect box, double size)
    {
        OxyColor red = Colour(way.Red), beside = Colour(way.Beside);
        if (way.ConeShares.Count > 0)
        {
            area.Fill(box, OxyColor.FromRgb(0xF2, 0xF6, 0xF9));
            double width = box.Width / ((2 * way.ConeShares.Count) + 1), room = box.Height - 14;
            for (int i = 0; i < way.ConeShares.Count; i++)
            {
                double x = box.Left + (((2 * i) + 1) * width), tall = Math.Max(1, room * Math.Min(1, way.ConeShares[i] / LargestShare));
                area.Fill(new OxyRect(x, box.Bottom - tall, width, tall), Palette.SkyBlue);
                area.Text(new ScreenPoint(x + (width / 2), box.Bottom - tall - 1), UnitFormat.PercentText(way.ConeShares[i]), size, Palette.Ink, HorizontalAlignment.Center, VerticalAlignment.Bottom);
            }

            double limit = box.Bottom - (room * ColourLimits.NearBlackLuminance / LargestShare);
            area.Line([new(box.Left, limit), new(box.Right, limit)], Palette.Vermilion, 1.2, [4, 3]);
        }
        else if (way.Dark.Criterion == DarkCriterion.ContrastToWater)
        {
            area.Fill(box, beside);
            area.Context.DrawEllipse(new OxyRect(box.Left + 10, box.Top + (box.Height * 0.36), box.Width - 20, box.Height * 0.28), red, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);
        }
        else
        {
            area.Fill(new OxyRect(box.Left, box.Top, box.Width / 2, box.Height), red);
            area.Fill(new OxyRect(box.Left + (box.Width / 2), box.Top, box.Width / 2, box.Height), beside);
        }

        area.Context.DrawRectangle(box, OxyColors.Undefined, Palette.Line, 1, EdgeRenderingMode.Adaptive);
    }

    // Top of the bars.
    private const double LargestShare = 0.5;

    private static OxyColor Colour(Srgb colour) => OxyColor.FromRgb(colour.Red, colour.Green, colour.Blue);
}
