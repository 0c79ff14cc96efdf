using System.Diagnostics;
using OxyPlot;
using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace LureSim.Report.Rendering;

/// <summary>
/// Draws shapes through OxyPlot's Skia context and text with the bundled font. OxyPlot.SkiaSharp resolves
/// font families among those installed and fails on a machine that has none; nothing here asks the system.
/// </summary>
internal sealed class SkiaTextContext : IRenderContext, IDisposable
{
    private readonly SKCanvas canvas;
    private readonly SkiaRenderContext shapes;

    /// <summary>Creates a context on a canvas that is already scaled to the figure's units.</summary>
    public SkiaTextContext(SKCanvas canvas)
    {
        this.canvas = canvas;
        // 'Vector' leaves coordinates as they are: the canvas is scaled, so rounding to whole units would be coarse.
        shapes = new SkiaRenderContext { SkCanvas = canvas, RenderTarget = RenderTarget.VectorGraphic, DpiScale = 1, UseTextShaping = false };
    }

    public bool RendersToScreen => false;

    public int ClipCount => shapes.ClipCount;

    public void Dispose() => shapes.Dispose();

    public void DrawText(
        ScreenPoint p,
        string text,
        OxyColor fill,
        string? fontFamily,
        double fontSize,
        double fontWeight,
        double rotation,
        HorizontalAlignment horizontalAlignment,
        VerticalAlignment verticalAlignment,
        OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text) || !fill.IsVisible())
            return;

        using SKFont font = BundledFont.Create(fontSize, fontWeight);
        using SKPaint paint = new() { Color = new SKColor(fill.R, fill.G, fill.B, fill.A), IsAntialias = true };
        string[] lines = BundledFont.Lines(text);
        canvas.Save();
        canvas.Translate((float)p.X, (float)p.Y);
        canvas.RotateDegrees((float)rotation);
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i].Length == 0)
                continue;

            double width = BundledFont.Width(font, lines[i]);
            double x = horizontalAlignment switch
            {
                HorizontalAlignment.Center => -width / 2,
                HorizontalAlignment.Right => -width,
                HorizontalAlignment.Left => 0,
                _ => throw new UnreachableException(),
            };
            double y = BundledFont.Baseline(i, lines.Length, fontSize, verticalAlignment);
            using SKTextBlob? blob = SKTextBlob.Create(lines[i], font);
            if (blob is not null)
                canvas.DrawText(blob, (float)x, (float)y, paint);
        }

        canvas.Restore();
    }

    public OxySize MeasureText(string text, string? fontFamily, double fontSize, double fontWeight) =>
        BundledFont.Measure(text, fontSize, fontWeight);

    public void DrawEllipse(OxyRect extents, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode) =>
        shapes.DrawEllipse(extents, fill, stroke, thickness, edgeRenderingMode);

    public void DrawEllipses(IList<OxyRect> extents, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode) =>
        shapes.DrawEllipses(extents, fill, stroke, thickness, edgeRenderingMode);

    public void DrawLine(IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin) =>
        shapes.DrawLine(points, stroke, thickness, edgeRenderingMode, dashArray, lineJoin);

    public void DrawLineSegments(IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin) =>
        shapes.DrawLineSegments(points, stroke, thickness, edgeRenderingMode, dashArray, lineJoin);

    public void DrawPolygon(IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin) =>
        shapes.DrawPolygon(points, fill, stroke, thickness, edgeRenderingMode, dashArray, lineJoin);

    public void DrawPolygons(IList<IList<ScreenPoint>> polygons, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin) =>
        shapes.DrawPolygons(polygons, fill, stroke, thickness, edgeRenderingMode, dashArray, lineJoin);

    public void DrawRectangle(OxyRect rectangle, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode) =>
        shapes.DrawRectangle(rectangle, fill, stroke, thickness, edgeRenderingMode);

    public void DrawRectangles(IList<OxyRect> rectangles, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode) =>
        shapes.DrawRectangles(rectangles, fill, stroke, thickness, edgeRenderingMode);

    public void DrawImage(OxyImage source, double srcX, double srcY, double srcWidth, double srcHeight, double destX, double destY, double destWidth, double destHeight, double opacity, bool interpolate) =>
        shapes.DrawImage(source, srcX, srcY, srcWidth, srcHeight, destX, destY, destWidth, destHeight, opacity, interpolate);

    public void SetToolTip(string text)
    {
    }

    public void CleanUp() => shapes.CleanUp();

    public void PushClip(OxyRect clippingRectangle) => shapes.PushClip(clippingRectangle);

    public void PopClip() => shapes.PopClip();
}
