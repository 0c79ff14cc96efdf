using LureSim.Decision.Colours;
using LureSim.Light;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Red beside white and chartreuse in one water, by depth: the light that is left, what red sends back of it, and how each looks to an eye and to a camera.</summary>
public static class RedTeachingPlate
{
    private const double FirstNm = 400;
    private const double LastNm = 700;
    private const double StepNm = 5;
    private const double StripHeight = 5;

    // Room above the curves for a number.
    private const double CurveShare = 0.72;
    private const double Gap = 10;

    /// <summary>Draws the figure.</summary>
    /// <param name="spot">The water.</param>
    /// <param name="water">What it is called, such as "green water, a white plate gone at 6 ft".</param>
    /// <param name="options">Units of the depths, and width: on a phone without what red sends back.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There is no depth.</exception>
    public static Figure Create(SpotLesson spot, string water, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(options);
        if (spot.Plate.Rows.Count == 0)
            throw new ArgumentException("There must be a depth.", nameof(spot));

        UnitFormat format = options.Format;
        double small = options.SmallFontSize;
        int panels = options.Narrow ? 1 : 2;
        double rowHeight = options.Narrow ? 64 : 74, head = (options.FontSize * 1.3) + (small * 2.6) + 8;
        PlotModel model = PlotBase.Model(options);
        model.PlotAreaBorderThickness = new OxyThickness(0);
        model.Padding = new OxyThickness(12, 6, 10, 6);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Bottom, 0, 1));
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            double label = options.Narrow ? 40 : 58, panelWidth = options.Narrow ? 62 : 96;
            double left = area.Bounds.Left + label, top = area.Bounds.Top + head;
            double pairs = left + (panels * (panelWidth + Gap));
            double pair = ((area.Bounds.Right - pairs) / 3) - Gap, half = pair / 2;
            string[] heads = options.Narrow ? ["light\nleft"] : ["light\nleft", "red lure\nsends back"];
            for (int p = 0; p < panels; p++)
                area.Text(new ScreenPoint(left + (p * (panelWidth + Gap)) + (panelWidth / 2), top - 6), heads[p], small, Palette.SoftInk, HorizontalAlignment.Center, VerticalAlignment.Bottom);
            for (int c = 0; c < 3; c++)
            {
                double x = Pair(c);
                area.Text(new ScreenPoint(x + half, area.Bounds.Top), spot.Chart.Colours[c].Name, options.FontSize, Palette.Ink, HorizontalAlignment.Center, VerticalAlignment.Top, bold: true);
                area.Text(new ScreenPoint(x + (half / 2), top - 6), "your\neye", small, Palette.SoftInk, HorizontalAlignment.Center, VerticalAlignment.Bottom);
                area.Text(new ScreenPoint(x + (1.5 * half), top - 6), "camera", small, Palette.SoftInk, HorizontalAlignment.Center, VerticalAlignment.Bottom);
            }

            double light = spot.Plate.Rows.Max(row => row.Illuminant.Maximum());
            for (int r = 0; r < spot.Plate.Rows.Count; r++)
            {
                PlateRow row = spot.Plate.Rows[r];
                double y = top + (r * rowHeight), height = rowHeight - 8;
                string depth = row.Depth <= 0 ? "top" : format.HandText(row.Depth);
                area.Text(new ScreenPoint(left - 8, y + (height / 2)), depth, small, Palette.Ink, HorizontalAlignment.Right, VerticalAlignment.Middle, bold: true);
                double peak = row.Illuminant.Maximum();
                OxyRect first = new(left, y, panelWidth, height);
                PaintPanel(area, first, row.Illuminant, light, peak);
                area.Text(new ScreenPoint(first.Right - 3, first.Top), UnitFormat.PercentText(row.LightLeft), small, Palette.Ink, HorizontalAlignment.Right, VerticalAlignment.Top, bold: true);
                if (panels > 1)
                    PaintPanel(area, new OxyRect(left + panelWidth + Gap, y, panelWidth, height), row.Left, light, peak);
                for (int c = 0; c < 3; c++)
                {
                    ColourCell cell = spot.Chart[r, c];
                    Swatch(area, new OxyRect(Pair(c), y, half, height), cell.EyeSwatch, ColourWords.Text(cell.Word), small);
                    Swatch(area, new OxyRect(Pair(c) + half, y, half, height), cell.UnadaptedSwatch, "", small);
                }
            }

            double Pair(int c) => pairs + (c * (pair + Gap));
        }, clip: false);

        return new Figure(options)
        {
            Name = "red-turns-black",
            Section = FigureSection.Lesson,
            Title = "Red beside white and chartreuse, going down",
            Subtitle = water,
            Model = model,
            PlotHeight = head + (rowHeight * spot.Plate.Rows.Count) + 14,
            Keys =
            [
                new KeyItem("light by its color, at the scale of the surface; the line shows the same enlarged", 28, PaintKey),
            ],
            Caption = format.Say($"Your eye: after some minutes down there, as far as a person's eye gets used to such light. Camera: set for the surface and left so; a first glance looks much the same, but for the darkness. The word says what the eye's swatch looks like. Percent: light left of the surface. Fish eyes differ."),
            AltText = format.Say($"Swatches of red, white and chartreuse by depth in this spot's water, as an eye and as a camera sees them. {string.Join("; ", Enumerable.Range(0, spot.Plate.Rows.Count).Where(r => r == 0 || r == spot.Plate.Rows.Count - 1).Select(r => Describe(spot, r, format)))}."),
        };
    }

    private static void PaintKey(IRenderContext rc, double x, double y, double size)
    {
        const int steps = 14;
        for (int i = 0; i < steps; i++)
        {
            double left = x + (28.0 * i / steps);
            rc.DrawRectangle(new OxyRect(left, y - (size / 2), x + 28 - left, size), Rainbow.Colour(FirstNm + ((LastNm - FirstNm) * (i + 0.5) / steps)), OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);
        }
    }

    private static string Describe(SpotLesson spot, int row, UnitFormat format) =>
        $"{(spot.Chart.Depths[row] <= 0 ? "at the top" : $"at {format.HandText(spot.Chart.Depths[row])}")} red is {ColourWords.Text(spot.Chart[row, SpotLesson.Red].Word)}, white {ColourWords.Text(spot.Chart[row, SpotLesson.White].Word)}, chartreuse {ColourWords.Text(spot.Chart[row, SpotLesson.Chartreuse].Word)}";

    private static void Swatch(PaintArea area, OxyRect box, Srgb colour, string word, double size)
    {
        OxyColor fill = OxyColor.FromRgb(colour.Red, colour.Green, colour.Blue);
        area.Context.DrawRectangle(box, fill, Palette.Line, 0.8, EdgeRenderingMode.Adaptive);
        if (word.Length > 0)
            area.Text(new ScreenPoint(box.Left + (box.Width / 2), box.Bottom - 3), word.Replace(' ', '\n'), size - 1, Palette.TextOn(fill), HorizontalAlignment.Center, VerticalAlignment.Bottom);
    }

    // A spectrum as an area in the colours of its wavelengths over a strip of the rainbow, as tall as the panel at the light of the surface, and as a line, as tall at the peak of its own depth.
    private static void PaintPanel(PaintArea area, OxyRect box, Spectrum spectrum, double surface, double peak)
    {
        area.Fill(box, Palette.Sky);
        double floor = box.Bottom - StripHeight;
        double height = (floor - box.Top) * CurveShare;
        double width = box.Width / (LastNm - FirstNm);
        List<ScreenPoint> line = [];
        List<ScreenPoint> edge = [];
        for (double nm = FirstNm; nm < LastNm; nm += StepNm)
        {
            double x = box.Left + ((nm - FirstNm) * width);
            OxyColor colour = Rainbow.Colour(nm + (StepNm / 2));
            double tall = height * Share(nm + (StepNm / 2), surface);
            // Half a unit of overlap, so that no seam shows between neighbours.
            double wide = Math.Min((StepNm * width) + 0.5, box.Right - x);
            area.Fill(new OxyRect(x, floor - tall, wide, tall), colour);
            area.Fill(new OxyRect(x, floor, wide, StripHeight), colour);
        }

        for (double nm = FirstNm; nm <= LastNm; nm += StepNm)
        {
            double x = box.Left + ((nm - FirstNm) * width);
            edge.Add(new ScreenPoint(x, floor - (height * Share(nm, surface))));
            line.Add(new ScreenPoint(x, floor - (height * Share(nm, peak))));
        }

        area.Line(edge, Palette.Line, 0.8);
        area.Line(line, Palette.Ink, 1.3);
        area.Context.DrawRectangle(box, OxyColors.Undefined, Palette.Line, 0.8, EdgeRenderingMode.Adaptive);

        // Of what little light is left in the deep the share is still a number, where a factor that enlarges it is none.
        double Share(double nm, double of) => of > 0 ? Math.Clamp(spectrum.At(nm) / of, 0, 1) : 0;
    }
}
