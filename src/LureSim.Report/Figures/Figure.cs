using LureSim.Report.Rendering;
using LureSim.Report.Units;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>The part of a page to which a figure belongs.</summary>
public enum FigureSection
{
    /// <summary>Sheet: where each jig head runs.</summary>
    Where,

    /// <summary>Sheet: the weight.</summary>
    Weight,

    /// <summary>Sheet: how fast.</summary>
    Speed,

    /// <summary>Sheet: the body.</summary>
    Body,

    /// <summary>Sheet: how sure the choice is.</summary>
    Certainty,

    /// <summary>Sheet: what was seen on the water, and what it changed.</summary>
    Observed,

    /// <summary>Sheet: the count-down.</summary>
    CountDown,

    /// <summary>Sheet and lesson: colours at depth.</summary>
    Colours,

    /// <summary>Sheet and rig check: how the lure swims.</summary>
    Rig,

    /// <summary>Lesson: why red turns black.</summary>
    Lesson,

    /// <summary>Comparison of two rigs.</summary>
    Comparison,

    /// <summary>Search for a retrieve.</summary>
    Retrieve,

    /// <summary>Tide: by the hour.</summary>
    TideByHour,

    /// <summary>Tide: by depth and current.</summary>
    TideTable,

    /// <summary>Trip: the day by the clock.</summary>
    Trip,

    /// <summary>Picture of a measurement for the documentation.</summary>
    Documentation,
}

/// <summary>How wide a figure is laid out.</summary>
public enum FigureWidth
{
    /// <summary>For a page, a screen or a projector.</summary>
    Wide,

    /// <summary>For a phone held upright.</summary>
    Narrow,
}

/// <summary>What a reader wants of a figure.</summary>
/// <param name="Units">Units of axes and labels.</param>
/// <param name="Width">How wide the figure is laid out.</param>
public sealed record FigureOptions(UnitSystem Units, FigureWidth Width = FigureWidth.Wide)
{
    /// <summary>Formatter for the units.</summary>
    internal UnitFormat Format => new(Units);

    /// <summary>True for the phone layout.</summary>
    internal bool Narrow => Width == FigureWidth.Narrow;

    /// <summary>Width of the drawing (1/96 inch).</summary>
    internal double Pixels => Narrow ? 380 : 760;

    /// <summary>Size of ordinary text in the drawing (1/96 inch).</summary>
    internal double FontSize => Narrow ? 12 : 14;

    /// <summary>Size of the smallest text in the drawing (1/96 inch).</summary>
    internal double SmallFontSize => Narrow ? 11 : 12;
}

/// <summary>
/// A drawing with the words that belong to it. <see cref="FigureWriter"/> turns it into PNG, SVG and PDF.
/// A figure is not safe for use by several threads at once, because the plot model is laid out on writing.
/// </summary>
public sealed class Figure
{
    private const double Margin = 12;
    private const double KeyGap = 18;

    private readonly FigureOptions options;
    private readonly List<PlacedText> placed = [];

    internal Figure(FigureOptions options)
    {
        this.options = options;
    }

    /// <summary>Name for files, without extension: lower-case letters and hyphens.</summary>
    public required string Name { get; init; }

    /// <summary>Where it belongs on a page.</summary>
    public required FigureSection Section { get; init; }

    /// <summary>Place among the figures of its section: those of a lower number come first, equal ones in the order of the page's figures.</summary>
    public int Order { get; init; }

    /// <summary>What the figure shows, drawn above it.</summary>
    public required string Title { get; init; }

    /// <summary>One line under the title, or empty.</summary>
    public string Subtitle { get; init; } = "";

    /// <summary>How to read the figure; belongs under it.</summary>
    public required string Caption { get; init; }

    /// <summary>What the figure says, in words, for those who cannot see it.</summary>
    public required string AltText { get; init; }

    /// <summary>The plot.</summary>
    public required PlotModel Model { get; init; }

    /// <summary>Height of the plot itself (1/96 inch).</summary>
    internal double PlotHeight { get; init; } = 300;

    /// <summary>Symbols explained under the plot.</summary>
    internal IReadOnlyList<KeyItem> Keys { get; init; } = [];

    /// <summary>Width (1/96 inch).</summary>
    public double Width => options.Pixels;

    /// <summary>Height (1/96 inch), title and key included.</summary>
    public double Height => Math.Ceiling(HeaderHeight + PlotHeight + KeyHeight);

    /// <summary>Labels as they were placed at the last drawing, for checks on overlap.</summary>
    internal IReadOnlyList<PlacedText> Placed => placed;

    private double TitleSize => options.FontSize + (options.Narrow ? 2 : 4);

    private string WrappedTitle => BundledFont.Wrap(Title, Width - (2 * Margin), TitleSize, FontWeights.Bold);

    private string WrappedSubtitle => BundledFont.Wrap(Subtitle, Width - (2 * Margin), options.FontSize, FontWeights.Normal);

    private double HeaderHeight
    {
        get
        {
            double title = BundledFont.Measure(WrappedTitle, TitleSize, FontWeights.Bold).Height;
            double subtitle = BundledFont.Measure(WrappedSubtitle, options.FontSize, FontWeights.Normal).Height;
            return Margin + title + (subtitle > 0 ? 3 + subtitle : 0) + 4;
        }
    }

    private double KeyHeight
    {
        get
        {
            (_, double height) = LayoutKeys();
            return height > 0 ? height + Margin : 4;
        }
    }

    /// <summary>Draws the whole figure, background included.</summary>
    internal void Draw(IRenderContext rc)
    {
        placed.Clear();
        rc.DrawRectangle(new OxyRect(0, 0, Width, Height), OxyColors.White, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);
        double y = Margin;
        rc.DrawText(new ScreenPoint(Margin, y), WrappedTitle, Palette.Ink, "", TitleSize, FontWeights.Bold, 0, HorizontalAlignment.Left, VerticalAlignment.Top);
        y += BundledFont.Measure(WrappedTitle, TitleSize, FontWeights.Bold).Height + 3;
        rc.DrawText(new ScreenPoint(Margin, y), WrappedSubtitle, Palette.SoftInk, "", options.FontSize, FontWeights.Normal, 0, HorizontalAlignment.Left, VerticalAlignment.Top);

        IPlotModel model = Model;
        model.Update(true);
        model.Render(rc, new OxyRect(0, HeaderHeight, Width, PlotHeight));
        foreach (Painter painter in Model.Annotations.OfType<Painter>())
            placed.AddRange(painter.Placed);

        (List<(KeyItem Item, double X, double Y, string Text)> keys, _) = LayoutKeys();
        double top = HeaderHeight + PlotHeight;
        foreach ((KeyItem item, double x, double keyY, string text) in keys)
        {
            double middle = top + keyY + (BundledFont.LineHeight(options.SmallFontSize) / 2);
            item.Draw(rc, x, middle, options.SmallFontSize);
            rc.DrawText(new ScreenPoint(x + item.SymbolWidth + 6, top + keyY), text, Palette.Ink, "", options.SmallFontSize, FontWeights.Normal, 0, HorizontalAlignment.Left, VerticalAlignment.Top);
        }
    }

    private (List<(KeyItem Item, double X, double Y, string Text)> Keys, double Height) LayoutKeys()
    {
        List<(KeyItem, double, double, string)> result = [];
        double x = Margin;
        double y = 4;
        double lineHeight = 0;
        double right = Width - Margin;
        foreach (KeyItem item in Keys)
        {
            double indent = item.SymbolWidth + 6;
            double width = indent + BundledFont.Measure(item.Text, options.SmallFontSize, FontWeights.Normal).Width;
            if (x > Margin && x + width > right)
            {
                x = Margin;
                y += lineHeight + 3;
                lineHeight = 0;
            }

            string text = BundledFont.Wrap(item.Text, right - Margin - indent, options.SmallFontSize, FontWeights.Normal);
            result.Add((item, x, y, text));
            lineHeight = Math.Max(lineHeight, BundledFont.Measure(text, options.SmallFontSize, FontWeights.Normal).Height);
            x += width + KeyGap;
        }

        return (result, result.Count == 0 ? 0 : y + lineHeight);
    }
}
