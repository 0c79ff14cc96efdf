using OxyPlot;

namespace LureSim.Report.Rendering;

/// <summary>
/// OxyPlot's managed SVG writer with text measured by the bundled font. Baselines are computed here, since
/// <c>dominant-baseline</c>, which the writer would use, is ignored by several SVG readers.
/// </summary>
internal sealed class SvgTextContext(Stream stream, double width, double height)
    : SvgRenderContext(stream, width, height, isDocument: false, textMeasurer: BundledTextMeasurer.Instance, background: OxyColors.Undefined)
{
    public override void DrawLine(IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin) =>
        base.DrawLine(points, stroke, thickness, edgeRenderingMode, Scale(dashArray, thickness), lineJoin);

    public override void DrawPolygon(IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin) =>
        base.DrawPolygon(points, fill, stroke, thickness, edgeRenderingMode, Scale(dashArray, thickness), lineJoin);

    public override void DrawText(
        ScreenPoint p,
        string text,
        OxyColor c,
        string? fontFamily,
        double fontSize,
        double fontWeight,
        double rotate,
        HorizontalAlignment halign,
        VerticalAlignment valign,
        OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text) || !c.IsVisible())
            return;

        string[] lines = BundledFont.Lines(text);
        double angle = rotate * Math.PI / 180;
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i].Length == 0)
                continue;

            double down = BundledFont.Baseline(i, lines.Length, fontSize, valign);
            ScreenPoint baseline = new(p.X - (down * Math.Sin(angle)), p.Y + (down * Math.Cos(angle)));
            double weight = BundledFont.IsBold(fontWeight) ? 700 : 400;
            base.DrawText(baseline, lines[i], c, BundledFont.SvgFamilies, fontSize, weight, rotate, halign, VerticalAlignment.Bottom, null);
        }
    }

    // Elsewhere in OxyPlot dashes are in units of the thickness; its SVG writer takes them as they are.
    private static double[]? Scale(double[]? dashes, double thickness) => dashes is null ? null : [.. dashes.Select(d => d * thickness)];
}

/// <summary>Measures text with the bundled font and draws nothing.</summary>
internal sealed class BundledTextMeasurer : RenderContextBase
{
    public static readonly BundledTextMeasurer Instance = new();

    public override OxySize MeasureText(string text, string? fontFamily, double fontSize, double fontWeight) =>
        BundledFont.Measure(text, fontSize, fontWeight);

    public override void DrawLine(IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin)
    {
    }

    public override void DrawPolygon(IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin)
    {
    }

    public override void DrawText(ScreenPoint p, string text, OxyColor fill, string? fontFamily, double fontSize, double fontWeight, double rotate, HorizontalAlignment halign, VerticalAlignment valign, OxySize? maxSize)
    {
    }

    public override void PushClip(OxyRect clippingRectangle)
    {
    }

    public override void PopClip()
    {
    }

    public override int ClipCount => 0;
}
