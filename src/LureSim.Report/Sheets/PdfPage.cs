using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using OxyPlot;
using SkiaSharp;

namespace LureSim.Report.Sheets;

/// <summary>Sets text and figures down a page to print. Lengths in 1/96 inch.</summary>
/// <param name="canvas">Canvas of the page, scaled to 1/96 inch.</param>
internal sealed class PdfPage(SKCanvas canvas) : IDisposable
{
    /// <summary>Width of a page that fits both letter and A4 paper.</summary>
    public const double Width = 794;

    /// <summary>Height of a page that fits both letter and A4 paper.</summary>
    public const double Height = 1056;

    /// <summary>Margin on all sides.</summary>
    public const double Margin = 45;

    /// <summary>Colour of headings and rules.</summary>
    public static readonly OxyColor Accent = OxyColor.FromRgb(0x00, 0x59, 0x8C);

    /// <summary>Ground of every other row and of boxes.</summary>
    public static readonly OxyColor Tint = OxyColor.FromRgb(0xF2, 0xF6, 0xF9);

    private readonly SkiaTextContext context = new(canvas);

    /// <summary>Width of the text.</summary>
    public static double TextWidth => Width - (2 * Margin);

    /// <summary>Where the next thing goes.</summary>
    public double Y { get; private set; } = Margin;

    /// <summary>Room left above the lower margin.</summary>
    public double Left => Height - Margin - Y;

    /// <summary>Adds a page to a file.</summary>
    public static void Add(PdfBook book, Action<PdfPage> draw) => book.Page(Width, Height, canvas =>
    {
        using PdfPage page = new(canvas);
        draw(page);
    });

    /// <inheritdoc/>
    public void Dispose() => context.Dispose();

    /// <summary>Goes on from a place.</summary>
    public void MoveTo(double y) => Y = y;

    /// <summary>Draws a thin line.</summary>
    public void Line(double x0, double y0, double x1, double y1, OxyColor colour) =>
        context.DrawLine([new(x0, y0), new(x1, y1)], colour, 1, EdgeRenderingMode.Adaptive, null, LineJoin.Miter);

    /// <summary>Leaves room.</summary>
    public void Skip(double height) => Y += height;

    /// <summary>Height of a text set in a width.</summary>
    public static double HeightOf(string text, double size, double width, bool bold = false) =>
        BundledFont.Measure(BundledFont.Wrap(text, width, size, Weight(bold)), size, Weight(bold)).Height;

    /// <summary>Sets a paragraph.</summary>
    public void Text(string text, double size, OxyColor colour, bool bold = false, double indent = 0)
    {
        if (text.Length == 0)
            return;
        Y += Put(text, Margin + indent, Y, TextWidth - indent, size, colour, bold) + (0.25 * size);
    }

    /// <summary>Sets a text at a place and gives its height.</summary>
    public double Put(string text, double x, double y, double width, double size, OxyColor colour, bool bold = false)
    {
        string wrapped = BundledFont.Wrap(text, width, size, Weight(bold));
        context.DrawText(new ScreenPoint(x, y), wrapped, colour, "", size, Weight(bold), 0, HorizontalAlignment.Left, VerticalAlignment.Top, null);
        return BundledFont.Measure(wrapped, size, Weight(bold)).Height;
    }

    /// <summary>Sets a rule.</summary>
    public void Rule(OxyColor colour, double thickness)
    {
        Y += 3;
        context.DrawLine([new(Margin, Y), new(Width - Margin, Y)], colour, thickness, EdgeRenderingMode.Adaptive, null, LineJoin.Miter);
        Y += thickness + 5;
    }

    /// <summary>Fills a box.</summary>
    public void Box(double x, double y, double width, double height, OxyColor fill, OxyColor stroke) =>
        context.DrawRectangle(new OxyRect(x, y, width, height), fill, stroke, 1, EdgeRenderingMode.Adaptive);

    /// <summary>Height of a row of cells.</summary>
    public static double RowHeight(IReadOnlyList<(string Text, double Width, bool Bold)> cells, double size) =>
        cells.Max(cell => HeightOf(cell.Text, size, cell.Width - 8, cell.Bold)) + 8;

    /// <summary>Sets a row of cells under one another's columns and gives its height.</summary>
    public void Row(IReadOnlyList<(string Text, double Width, bool Bold)> cells, double size, OxyColor fill)
    {
        double height = RowHeight(cells, size);
        Box(Margin, Y, TextWidth, height, fill, OxyColors.Undefined);
        double x = Margin;
        foreach ((string text, double width, bool bold) in cells)
        {
            if (text.Length > 0)
                Put(text, x + 4, Y + 4, width - 8, size, Palette.Ink, bold);
            x += width;
        }

        Y += height;
    }

    /// <summary>Sets a figure over the width of the text, or smaller to fit the room left; false where there is too little room to read it.</summary>
    public bool Draw(Figure figure, double mostHeight)
    {
        const double leastScale = 0.55;
        double scale = Math.Min(TextWidth / figure.Width, Math.Min(mostHeight, Left) / figure.Height);
        if (scale < leastScale)
            return false;
        canvas.Save();
        canvas.Translate((float)(Margin + ((TextWidth - (scale * figure.Width)) / 2)), (float)Y);
        canvas.Scale((float)scale);
        figure.Draw(context);
        canvas.Restore();
        Y += (scale * figure.Height) + 6;
        return true;
    }

    private static double Weight(bool bold) => bold ? FontWeights.Bold : FontWeights.Normal;
}
