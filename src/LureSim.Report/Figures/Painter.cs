using OxyPlot;
using OxyPlot.Annotations;

namespace LureSim.Report.Figures;

/// <summary>A text with the place it was given.</summary>
/// <param name="Text">The text.</param>
/// <param name="Box">Its place (1/96 inch).</param>
internal sealed record PlacedText(string Text, OxyRect Box);

/// <summary>Draws into the plot area by hand, below or above the series.</summary>
internal sealed class Painter : Annotation
{
    private readonly Action<PaintArea> paint;
    private readonly bool clip;
    private readonly List<PlacedText> placed = [];

    public Painter(AnnotationLayer layer, Action<PaintArea> paint, bool clip = true)
    {
        Layer = layer;
        ClipByXAxis = false;
        ClipByYAxis = false;
        this.paint = paint;
        this.clip = clip;
    }

    /// <summary>Texts placed at the last drawing.</summary>
    public IReadOnlyList<PlacedText> Placed => placed;

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        EnsureAxes();
        placed.Clear();
        PaintArea area = new(rc, this, PlotModel.PlotArea, placed);
        if (clip)
            rc.PushClip(area.Bounds);
        paint(area);
        if (clip)
            rc.PopClip();
    }

    // The model clips to this as well; an unclipped painter may draw between the plot and its axis labels.
    public override OxyRect GetClippingRect() => clip ? PlotModel.PlotArea : PlotModel.PlotArea.Inflate(new OxyThickness(200));
}

/// <summary>What a painter draws on.</summary>
/// <param name="Context">The render context.</param>
/// <param name="Owner">The annotation, for its axes.</param>
/// <param name="Bounds">The plot area.</param>
/// <param name="Placed">Collects the texts that were placed.</param>
internal sealed record PaintArea(IRenderContext Context, Painter Owner, OxyRect Bounds, List<PlacedText> Placed)
{
    /// <summary>From values on the axes to the drawing.</summary>
    public ScreenPoint At(double x, double y) => Owner.Transform(new DataPoint(x, y));

    /// <summary>The rectangle between two points given by values on the axes.</summary>
    public OxyRect Between(double x0, double y0, double x1, double y1)
    {
        ScreenPoint a = At(x0, y0);
        ScreenPoint b = At(x1, y1);
        return new OxyRect(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Abs(a.X - b.X), Math.Abs(a.Y - b.Y));
    }

    /// <summary>Draws a filled rectangle.</summary>
    public void Fill(OxyRect box, OxyColor colour) =>
        Context.DrawRectangle(box, colour, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);

    /// <summary>Draws a line through points of the drawing.</summary>
    public void Line(IList<ScreenPoint> points, OxyColor colour, double thickness, double[]? dashes = null) =>
        Context.DrawLine(points, colour, thickness, EdgeRenderingMode.Adaptive, dashes, LineJoin.Round);

    /// <summary>Draws text at a point of the drawing and records where it stands.</summary>
    public void Text(ScreenPoint at, string text, double size, OxyColor colour, HorizontalAlignment horizontal = HorizontalAlignment.Center, VerticalAlignment vertical = VerticalAlignment.Middle, bool bold = false)
    {
        double weight = bold ? FontWeights.Bold : FontWeights.Normal;
        OxySize extent = Context.MeasureText(text, "", size, weight);
        double left = at.X - (horizontal == HorizontalAlignment.Left ? 0 : horizontal == HorizontalAlignment.Right ? extent.Width : extent.Width / 2);
        double top = at.Y - (vertical == VerticalAlignment.Top ? 0 : vertical == VerticalAlignment.Bottom ? extent.Height : extent.Height / 2);
        Placed.Add(new PlacedText(text, new OxyRect(left, top, extent.Width, extent.Height)));
        Context.DrawText(at, text, colour, "", size, weight, 0, horizontal, vertical);
    }
}
