using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using LureSim.Report.Rendering;
using SkiaSharp;

namespace LureSim.Report.Figures;

/// <summary>
/// Writes figures as PNG, SVG and PDF. The same figure gives the same bytes every time, on a machine with
/// or without installed fonts.
/// </summary>
public static partial class FigureWriter
{
    private const string Hundredths = "0.##";

    /// <summary>Writes a PNG file.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="scale">Pixels per 1/96 inch, 0.25 to 8; 2 gives sharp text on dense screens.</param>
    /// <returns>The file's bytes.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="scale"/> is outside 0.25 to 8.</exception>
    public static byte[] Png(Figure figure, double scale = 2)
    {
        ArgumentNullException.ThrowIfNull(figure);
        if (!(scale is >= 0.25 and <= 8))
            throw new ArgumentOutOfRangeException(nameof(scale), scale, "The scale must be from 0.25 to 8.");

        int width = (int)Math.Ceiling(figure.Width * scale);
        int height = (int)Math.Ceiling(figure.Height * scale);
        using SKBitmap bitmap = new(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul));
        using (SKCanvas canvas = new(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Scale((float)scale);
            using SkiaTextContext context = new(canvas);
            figure.Draw(context);
            canvas.Flush();
        }

        // On flat drawings like these the one filter gives smaller files than all of them, in half the time.
        using SKPixmap pixels = bitmap.PeekPixels() ?? throw new InvalidOperationException("The bitmap has no pixels.");
        using SKData data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Sub, 4)) ?? throw new InvalidOperationException("The bitmap cannot be written as PNG.");
        return data.ToArray();
    }

    /// <summary>Writes figures as a PDF file, one figure a page, page and figure of the same size.</summary>
    /// <param name="figures">The figures, at least one.</param>
    /// <param name="title">Title in the file's metadata.</param>
    /// <returns>The file's bytes.</returns>
    /// <exception cref="ArgumentException"><paramref name="figures"/> is empty.</exception>
    public static byte[] Pdf(IReadOnlyList<Figure> figures, string title)
    {
        ArgumentNullException.ThrowIfNull(figures);
        if (figures.Count == 0)
            throw new ArgumentException("There must be at least one figure.", nameof(figures));

        using PdfBook book = new(title);
        foreach (Figure figure in figures)
        {
            book.Page(figure.Width, figure.Height, canvas =>
            {
                using SkiaTextContext context = new(canvas);
                figure.Draw(context);
            });
        }

        return book.Close();
    }

    /// <summary>Writes an SVG file with title and description for screen readers.</summary>
    /// <param name="figure">The figure.</param>
    /// <returns>The file's bytes (UTF-8).</returns>
    public static byte[] Svg(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        XElement root = Build(figure, figure.Name);
        root.SetAttributeValue("width", Number(figure.Width));
        root.SetAttributeValue("height", Number(figure.Height));
        return Encoding.UTF8.GetBytes("<?xml version=\"1.0\" encoding=\"utf-8\"?>\n" + Text(root) + "\n");
    }

    /// <summary>The SVG element for use inside an HTML page: scales to its box, carries no namespace declaration.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="idPrefix">Put before every id, so that ids stay unique in a page of many figures; letters, digits, hyphens.</param>
    /// <returns>Markup of one svg element.</returns>
    public static string SvgElement(Figure figure, string idPrefix)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentException.ThrowIfNullOrEmpty(idPrefix);
        // HTML gives svg elements their namespace by itself.
        return NamespaceDeclaration().Replace(Text(Build(figure, idPrefix)), "");
    }

    private static XElement Build(Figure figure, string idPrefix)
    {
        using MemoryStream stream = new();
        using (SvgTextContext context = new(stream, figure.Width, figure.Height))
        {
            figure.Draw(context);
            context.Complete();
            context.Flush();
        }

        stream.Position = 0;
        using XmlReader reader = XmlReader.Create(stream, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, IgnoreWhitespace = true });
        XElement root = XDocument.Load(reader).Root!;
        XNamespace svg = root.Name.Namespace;
        foreach (XAttribute attribute in root.DescendantsAndSelf().Attributes().ToList())
        {
            switch (attribute.Name.LocalName)
            {
                case "id":
                    attribute.Value = $"{idPrefix}-{attribute.Value}";
                    break;
                case "clip-path":
                    attribute.Value = attribute.Value.Replace("url(#", $"url(#{idPrefix}-", StringComparison.Ordinal);
                    break;
                case "points" or "transform" or "x" or "y" or "width" or "height" or "cx" or "cy" or "rx" or "ry":
                    // A hundredth of a unit cannot be seen; four decimals double the size of the page.
                    attribute.Value = Shortened(attribute.Value);
                    break;
                case "xlink":
                    attribute.Remove();
                    break;
            }
        }

        root.RemoveAttributes();
        root.SetAttributeValue("viewBox", $"0 0 {Number(figure.Width)} {Number(figure.Height)}");
        root.SetAttributeValue("role", "img");
        root.SetAttributeValue("aria-labelledby", $"{idPrefix}-title {idPrefix}-desc");
        root.AddFirst(
            new XElement(svg + "title", new XAttribute("id", $"{idPrefix}-title"), figure.Title),
            new XElement(svg + "desc", new XAttribute("id", $"{idPrefix}-desc"), figure.AltText));
        foreach (XText text in root.DescendantNodes().OfType<XText>())
            text.Value = VisibleText.Without(text.Value);
        return root;
    }

    private static string Text(XElement root)
    {
        StringBuilder text = new();
        using (XmlWriter writer = XmlWriter.Create(text, new XmlWriterSettings { OmitXmlDeclaration = true, Indent = true, IndentChars = "", NewLineChars = "\n" }))
            root.Save(writer);
        return text.ToString();
    }

    private static string Number(double value) => Rounded(value).ToString(Hundredths, CultureInfo.InvariantCulture);

    // Every number with decimals to a hundredth; the rest as it is.
    private static string Shortened(string text)
    {
        if (!text.Contains('.', StringComparison.Ordinal)) return text;
        StringBuilder result = new(text.Length);
        ReadOnlySpan<char> rest = text;
        Span<char> digits = stackalloc char[32];
        while (!rest.IsEmpty)
        {
            int start = rest.IndexOfAnyInRange('0', '9');
            if (start < 0) break;
            int end = start;
            while (end < rest.Length && char.IsAsciiDigit(rest[end])) end++;
            int point = end;
            if (end + 1 < rest.Length && rest[end] == '.' && char.IsAsciiDigit(rest[end + 1]))
            {
                end++;
                while (end < rest.Length && char.IsAsciiDigit(rest[end])) end++;
            }

            if (end > point && start > 0 && rest[start - 1] == '-') start--;
            result.Append(rest[..start]);
            if (end > point && Rounded(double.Parse(rest[start..end], CultureInfo.InvariantCulture)).TryFormat(digits, out int written, Hundredths, CultureInfo.InvariantCulture))
                result.Append(digits[..written]);
            else
                result.Append(rest[start..end]);
            rest = rest[end..];
        }

        return result.Append(rest).ToString();
    }

    private static double Rounded(double value) => Math.Round(value, 2) + 0;

    [GeneratedRegex(" xmlns(:xlink)?=\"[^\"]*\"")]
    private static partial Regex NamespaceDeclaration();
}
