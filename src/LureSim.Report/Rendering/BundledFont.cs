using System.Globalization;
using OxyPlot;
using SkiaSharp;

namespace LureSim.Report.Rendering;

/// <summary>
/// The fonts that travel inside this assembly, so that text is drawn and measured alike on every machine,
/// one without any installed font included.
/// </summary>
internal static class BundledFont
{
    /// <summary>
    /// Families named in SVG files, nearest in width first: the layout was measured with DejaVu Sans, and
    /// Verdana shares its widths; the others are narrower, so text never outgrows the place it was given.
    /// </summary>
    public const string SvgFamilies = "DejaVu Sans, Verdana, Segoe UI, Roboto, Helvetica, Arial, sans-serif";

    // The upper-case letters of DejaVu Sans are 0.729 em high.
    private const double CapHeightOfEm = 0.729;

    private static readonly Lazy<SKTypeface> RegularFace = new(() => Load("Fonts/DejaVuSans.ttf"));
    private static readonly Lazy<SKTypeface> BoldFace = new(() => Load("Fonts/DejaVuSans-Bold.ttf"));

    /// <summary>True for the weights that are drawn with the bold face.</summary>
    public static bool IsBold(double weight) => weight >= 600;

    /// <summary>The typeface for a weight (100 to 900).</summary>
    public static SKTypeface Face(double weight) => IsBold(weight) ? BoldFace.Value : RegularFace.Value;

    /// <summary>Height of a line of text, in units of <paramref name="size"/>.</summary>
    public static double LineHeight(double size) => size * 1.2;

    /// <summary>Size of a text of one or more lines, unrotated.</summary>
    public static OxySize Measure(string? text, double size, double weight)
    {
        if (string.IsNullOrEmpty(text))
            return OxySize.Empty;

        using SKFont font = Create(size, weight);
        string[] lines = Lines(text);
        double width = 0;
        foreach (string line in lines)
            width = Math.Max(width, Width(font, line));
        return new OxySize(width, lines.Length * LineHeight(size));
    }

    /// <summary>A font of the bundled face without hinting, so that shapes do not depend on the scale.</summary>
    public static SKFont Create(double size, double weight) => new(Face(weight), (float)size)
    {
        Hinting = SKFontHinting.None,
        Subpixel = true,
        LinearMetrics = true,
        Edging = SKFontEdging.Antialias,
    };

    /// <summary>Width of one line of text in a font.</summary>
    public static double Width(SKFont font, string line) => font.MeasureText(font.Typeface.GetGlyphs(line));

    /// <summary>Splits a text into its lines.</summary>
    public static string[] Lines(string text) => text.ReplaceLineEndings("\n").Split('\n');

    /// <summary>
    /// Distances from the anchor point down to the baseline of each line, for a vertical alignment. Middle
    /// means the middle of the capitals, which is what the eye takes for the middle of a label.
    /// </summary>
    public static double Baseline(int line, int lines, double size, VerticalAlignment alignment)
    {
        double lineHeight = LineHeight(size);
        double capHeight = CapHeightOfEm * size;
        double inset = (lineHeight - capHeight) / 2;
        double first = alignment switch
        {
            VerticalAlignment.Top => inset + capHeight,
            VerticalAlignment.Bottom => -(lines * lineHeight) + inset + capHeight,
            VerticalAlignment.Middle => (capHeight / 2) - ((lines - 1) * lineHeight / 2),
            _ => throw new ArgumentOutOfRangeException(nameof(alignment), alignment, "Not an alignment."),
        };
        return first + (line * lineHeight);
    }

    private const string Ellipsis = "…";

    /// <summary>Breaks a text into lines no wider than <paramref name="width"/> where it has spaces.</summary>
    public static string Wrap(string text, double width, double size, double weight)
    {
        using SKFont font = Create(size, weight);
        List<string> lines = [];
        foreach (string paragraph in Lines(text))
        {
            string line = "";
            foreach (string word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                string longer = line.Length == 0 ? word : line + " " + word;
                if (line.Length > 0 && Width(font, longer) > width)
                {
                    lines.Add(line);
                    longer = word;
                }

                line = longer;
            }

            lines.Add(line);
        }

        return string.Join('\n', lines);
    }

    /// <summary>A line as it is, or as much of its start as is no wider than <paramref name="width"/> with an ellipsis.</summary>
    public static string Cut(string line, double width, double size, double weight)
    {
        using SKFont font = Create(size, weight);
        if (Width(font, line) <= width) return line;
        int[] starts = StringInfo.ParseCombiningCharacters(line);
        int kept = starts.Length - 1;
        while (kept > 0 && Width(font, line[..starts[kept]] + Ellipsis) > width) kept--;
        return line[..starts[kept]] + Ellipsis;
    }

    private static SKTypeface Load(string resource)
    {
        using Stream stream = typeof(BundledFont).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The embedded resource '{resource}' is missing from the build.");
        using MemoryStream copy = new();
        stream.CopyTo(copy);
        using SKData data = SKData.CreateCopy(copy.ToArray());
        return SKTypeface.FromData(data)
            ?? throw new InvalidOperationException($"The embedded font '{resource}' cannot be read.");
    }
}
