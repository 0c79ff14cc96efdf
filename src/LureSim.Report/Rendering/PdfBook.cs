using SkiaSharp;

namespace LureSim.Report.Rendering;

/// <summary>A PDF file made page by page. It holds no dates: the same pages give the same bytes.</summary>
internal sealed class PdfBook : IDisposable
{
    private const double PointsPerUnit = 72.0 / 96;

    private readonly MemoryStream stream = new();
    private readonly SKDocument document;

    /// <summary>Opens a file.</summary>
    /// <param name="title">Title in the file's metadata.</param>
    public PdfBook(string title) =>
        document = SKDocument.CreatePdf(stream, new SKDocumentPdfMetadata { Title = title, Creator = "LureSim", RasterDpi = 144, EncodingQuality = 101 });

    /// <summary>Adds a page.</summary>
    /// <param name="width">Width (1/96 inch).</param>
    /// <param name="height">Height (1/96 inch).</param>
    /// <param name="draw">Draws it on a canvas scaled to 1/96 inch.</param>
    public void Page(double width, double height, Action<SKCanvas> draw)
    {
        using SKCanvas canvas = document.BeginPage((float)(width * PointsPerUnit), (float)(height * PointsPerUnit));
        canvas.Scale((float)PointsPerUnit);
        draw(canvas);
        document.EndPage();
    }

    /// <summary>Closes the file and gives its bytes.</summary>
    public byte[] Close()
    {
        document.Close();
        return stream.ToArray();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        document.Dispose();
        stream.Dispose();
    }
}
