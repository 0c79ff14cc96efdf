using LureSim.Decision.Colours;
using LureSim.Light;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Why red turns black: the light at a depth, times the red that a lure returns, is what is left.</summary>
public static class RedTeachingPlate
{
    private const double FirstNm = 400;
    private const double LastNm = 700;
    private const double StepNm = 5;
    private const double StripHeight = 5;

    /// <summary>Draws the figure.</summary>
    /// <param name="waters">The waters to compare, at least one, each with a depth.</param>
    /// <param name="options">Units of the depths, and width: waters side by side, or one below the other on a phone.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There is no water, or one without depths.</exception>
    public static Figure Create(IReadOnlyList<RedLesson> waters, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(waters);
        ArgumentNullException.ThrowIfNull(options);
        if (waters.Count == 0 || waters.Any(w => w.Plate.Rows.Count == 0))
            throw new ArgumentException("There must be a water, and a depth in each.", nameof(waters));

        UnitFormat format = options.Format;
        Layout layout = new(options);
        double blockHeight = layout.HeadHeight + (waters.Max(w => w.Plate.Rows.Count) * layout.RowHeight) + layout.AxisHeight;
        PlotModel model = PlotBase.Model(options);
        model.PlotAreaBorderThickness = new OxyThickness(0);
        model.Padding = new OxyThickness(12, 8, 6, 6);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Bottom, 0, 1));
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int i = 0; i < waters.Count; i++)
            {
                double left = area.Bounds.Left + (options.Narrow ? 0 : i * area.Bounds.Width / waters.Count);
                double top = area.Bounds.Top + (options.Narrow ? i * (blockHeight + 14) : 0);
                PaintWater(area, waters[i], left, top, layout, options);
            }
        }, clip: false);

        return new Figure(options)
        {
            Name = "red-turns-black",
            Section = FigureSection.Lesson,
            Title = "Why red turns black",
            Subtitle = "light at a depth × what a red lure returns = what is left of it; high sun, clear sky",
            Model = model,
            PlotHeight = (options.Narrow ? waters.Count * (blockHeight + 14) : blockHeight) + 14,
            Keys =
            [
                new KeyItem("coloured: on the scale of the surface, as a camera takes it", 28, PaintKey),
                KeyItem.Line("line: the same enlarged until the light fills the panel, as an eye used to it", Palette.Ink, 1.3, null),
                KeyItem.Symbol("triangle: less than a sixteenth of white there, near black", (rc, at, _) => Shapes.Marker(rc, at, MarkerShape.TriangleDown, true, Palette.Ink, 4.5)),
            ],
            Caption = "A lure shows only light that is there to return. Clear water takes the red first, so little is left of a red lure but its grey. Stained water takes the blue and green, so what light there is stays red, and red holds its own while everything fades. Numbers: light left of the surface, and light returned beside a perfect white at the same depth, both as a person sees it. Fish eyes differ.",
            AltText = string.Join(" ", waters.Select(w => Describe(w, format))),
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

    private static string Describe(RedLesson water, UnitFormat format) =>
        $"Red in {LessonWords.Water(water.Water)}: " + string.Join("; ", water.Plate.Rows.Select(r =>
            $"{Depth(r.Depth, format)} {UnitFormat.PercentText(r.LightLeft)} of the light is left and red returns {UnitFormat.PercentText(r.RelativeLuminance)} of white, {ColourWords.Text(r.Cell.Word)}")) + ".";

    private static string Depth(double depth, UnitFormat format) => depth <= 0 ? "at the surface" : $"at {format.LengthText(depth)}";

    private static void PaintWater(PaintArea area, RedLesson water, double left, double top, Layout layout, FigureOptions options)
    {
        UnitFormat format = options.Format;
        double small = options.SmallFontSize - (options.Narrow ? 1 : 0);
        area.Text(new ScreenPoint(left, top), $"{Grammar.Capital(LessonWords.Water(water.Water))}, Secchi depth {format.LengthText(water.SecchiDepth)}", options.FontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Top, bold: true);
        double headBottom = top + layout.HeadHeight - 4;
        string[] heads = ["light,\n% of surface", "red lure\nreturns", "what is left,\n% of white"];
        for (int p = 0; p < 3; p++)
            area.Text(new ScreenPoint(layout.Panel(left, p) + (layout.PanelWidth / 2), headBottom), heads[p], small, Palette.SoftInk, HorizontalAlignment.Center, VerticalAlignment.Bottom);
        area.Text(new ScreenPoint(layout.Swatch(left, 0) + (layout.SwatchWidth / 2), headBottom), "eye", small, Palette.SoftInk, HorizontalAlignment.Center, VerticalAlignment.Bottom);
        area.Text(new ScreenPoint(layout.Swatch(left, 1) + (layout.SwatchWidth / 2), headBottom), "camera", small, Palette.SoftInk, HorizontalAlignment.Center, VerticalAlignment.Bottom);

        double light = water.Plate.Rows.Max(r => r.Illuminant.Maximum());
        double y = top + layout.HeadHeight;
        foreach (PlateRow row in water.Plate.Rows)
        {
            double middle = y + (layout.PanelHeight / 2);
            string depth = $"{format.LengthNumber(row.Depth)}\n{format.LengthUnit}";
            area.Text(new ScreenPoint(left + layout.LabelWidth - 8, middle), depth, options.SmallFontSize, Palette.Ink, HorizontalAlignment.Right, VerticalAlignment.Middle, bold: true);
            double peak = row.Illuminant.Maximum();
            double enlarge = peak > 0 ? light / peak : 0;
            PaintPanel(area, layout.Box(left, 0, y), row.Illuminant, light, enlarge);
            PaintPanel(area, layout.Box(left, 1, y), water.Plate.Colour.Reflectance, 1, 1);
            PaintPanel(area, layout.Box(left, 2, y), row.Left, light, enlarge);
            area.Text(new ScreenPoint(layout.Panel(left, 1) - (layout.Gap / 2), middle), "×", options.FontSize, Palette.Ink);
            area.Text(new ScreenPoint(layout.Panel(left, 2) - (layout.Gap / 2), middle), "=", options.FontSize, Palette.Ink);
            Number(0, UnitFormat.PercentText(row.LightLeft), false);
            Number(2, UnitFormat.PercentText(row.RelativeLuminance), row.RelativeLuminance < ColourLimits.NearBlackLuminance);

            Swatch(0, row.Cell.AdaptedSwatch);
            Swatch(1, row.Cell.UnadaptedSwatch);
            area.Text(new ScreenPoint(layout.Swatch(left, 0) + layout.SwatchWidth + 1, y + layout.PanelHeight), ColourWords.Text(row.Cell.Word), small, Palette.Ink, HorizontalAlignment.Center, VerticalAlignment.Bottom);
            y += layout.RowHeight;

            // Above the curve, right of the panel's top edge.
            void Number(int panel, string text, bool dark)
            {
                OxyRect box = layout.Box(left, panel, y);
                area.Text(new ScreenPoint(box.Right - 2, box.Top), text, small, Palette.Ink, HorizontalAlignment.Right, VerticalAlignment.Top, bold: true);
                if (dark)
                    Shapes.Marker(area.Context, new ScreenPoint(box.Left + 8, box.Top + (small * 0.62)), MarkerShape.TriangleDown, true, Palette.Ink, 4);
            }

            void Swatch(int column, Srgb colour)
            {
                double bottom = y + layout.PanelHeight - (small * 1.2) - 2;
                area.Context.DrawRectangle(new OxyRect(layout.Swatch(left, column), y + 2, layout.SwatchWidth, bottom - y - 2), OxyColor.FromRgb(colour.Red, colour.Green, colour.Blue), Palette.Line, 0.8, EdgeRenderingMode.Adaptive);
            }
        }

        for (int p = 0; p < 3; p++)
        {
            OxyRect box = layout.Box(left, p, y - layout.RowHeight);
            area.Text(new ScreenPoint(box.Left, box.Bottom + 2), "400", small - 1, Palette.SoftInk, HorizontalAlignment.Left, VerticalAlignment.Top);
            area.Text(new ScreenPoint(box.Right, box.Bottom + 2), "700 nm", small - 1, Palette.SoftInk, HorizontalAlignment.Right, VerticalAlignment.Top);
        }
    }

    // A spectrum as an area in the colours of its wavelengths over a strip of the rainbow, and enlarged as a line.
    private static void PaintPanel(PaintArea area, OxyRect box, Spectrum spectrum, double full, double enlarge)
    {
        area.Fill(box, Palette.Sky);
        double floor = box.Bottom - StripHeight;
        double height = (floor - box.Top) * Layout.CurveShare;
        double width = box.Width / (LastNm - FirstNm);
        List<ScreenPoint> line = [];
        List<ScreenPoint> edge = [];
        for (double nm = FirstNm; nm < LastNm; nm += StepNm)
        {
            double x = box.Left + ((nm - FirstNm) * width);
            OxyColor colour = Rainbow.Colour(nm + (StepNm / 2));
            double tall = height * Share(nm + (StepNm / 2));
            // Half a unit of overlap, so that no seam shows between neighbours.
            double wide = Math.Min((StepNm * width) + 0.5, box.Right - x);
            area.Fill(new OxyRect(x, floor - tall, wide, tall), colour);
            area.Fill(new OxyRect(x, floor, wide, StripHeight), colour);
        }

        for (double nm = FirstNm; nm <= LastNm; nm += StepNm)
        {
            double x = box.Left + ((nm - FirstNm) * width);
            edge.Add(new ScreenPoint(x, floor - (height * Share(nm))));
            line.Add(new ScreenPoint(x, floor - (height * Math.Min(1, enlarge * Share(nm)))));
        }

        area.Line(edge, Palette.Line, 0.8);
        area.Line(line, Palette.Ink, 1.3);
        area.Context.DrawRectangle(box, OxyColors.Undefined, Palette.Line, 0.8, EdgeRenderingMode.Adaptive);

        double Share(double nm)
        {
            double value = full > 0 ? spectrum.At(nm) / full : 0;
            return double.IsFinite(value) ? Math.Clamp(value, 0, 1) : 0;
        }
    }

    // Measures of one water's block (1/96 inch).
    private sealed class Layout(FigureOptions options)
    {
        // Room above the curves for a number.
        public const double CurveShare = 0.72;

        public double LabelWidth { get; } = options.Narrow ? 34 : 36;

        public double PanelWidth { get; } = options.Narrow ? 66 : 69;

        public double Gap { get; } = options.Narrow ? 13 : 15;

        public double SwatchWidth { get; } = options.Narrow ? 36 : 39;

        public double PanelHeight { get; } = options.Narrow ? 60 : 66;

        public double RowHeight => PanelHeight + 8;

        public double HeadHeight { get; } = (options.FontSize * 1.3) + (options.SmallFontSize * 2.5) + 8;

        public double AxisHeight { get; } = options.SmallFontSize + 6;

        public double Panel(double left, int index) => left + LabelWidth + (index * (PanelWidth + Gap));

        public double Swatch(double left, int index) => Panel(left, 2) + PanelWidth + 8 + (index * (SwatchWidth + 2));

        public OxyRect Box(double left, int panel, double top) => new(Panel(left, panel), top, PanelWidth, PanelHeight);
    }
}
