using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>One entry of the key under a plot.</summary>
/// <param name="Text">Explanation.</param>
/// <param name="SymbolWidth">Width kept for the symbol (1/96 inch).</param>
/// <param name="Draw">Draws the symbol: context, left edge, vertical middle, size of the text.</param>
internal sealed record KeyItem(string Text, double SymbolWidth, Action<IRenderContext, double, double, double> Draw)
{
    /// <summary>A filled box, hatched when asked.</summary>
    public static KeyItem Box(string text, OxyColor fill, OxyColor stroke, Hatch hatch = Hatch.None) => new(text, 18, (rc, x, y, _) =>
    {
        OxyRect box = new(x, y - 6, 18, 12);
        rc.DrawRectangle(box, fill, stroke, 1, EdgeRenderingMode.Adaptive);
        Shapes.Hatch(rc, box, hatch, stroke);
    });

    /// <summary>A piece of line.</summary>
    public static KeyItem Line(string text, OxyColor colour, double thickness, double[]? dashes) => new(text, 28, (rc, x, y, _) =>
        rc.DrawLine([new ScreenPoint(x, y), new ScreenPoint(x + 28, y)], colour, thickness, EdgeRenderingMode.Adaptive, dashes, LineJoin.Round));

    /// <summary>A marker of a jig head.</summary>
    public static KeyItem Head(HeadStyle style) => new(style.Label, 12, (rc, x, y, _) =>
        Shapes.Marker(rc, new ScreenPoint(x + 6, y), style.Shape, style.Filled, style.Colour, 4.5));

    /// <summary>A symbol drawn by a function of centre and size.</summary>
    public static KeyItem Symbol(string text, Action<IRenderContext, ScreenPoint, double> draw) => new(text, 16, (rc, x, y, size) =>
        draw(rc, new ScreenPoint(x + 8, y), size));

    /// <summary>A ramp of colours from 0 to 100 %.</summary>
    public static KeyItem Ramp(string text, Func<double, OxyColor> colour) => new(text, 100, (rc, x, y, _) =>
    {
        const int steps = 50;
        for (int i = 0; i < steps; i++)
        {
            // Each piece reaches to the end of the ramp, so that no seam shows between neighbours.
            double left = x + (100.0 * i / steps);
            rc.DrawRectangle(new OxyRect(left, y - 6, x + 100 - left, 12), colour(i / (steps - 1.0)), OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);
        }
    });
}
