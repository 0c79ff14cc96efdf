using System.Text;
using LureSim.Report.Figures;

namespace LureSim.Report.Sheets;

/// <summary>Figures as files and as parts of a page, the same for every sheet.</summary>
internal static class FigureFiles
{
    /// <summary>Each figure as PNG and SVG, and all of them in one PDF, as far as they are asked for.</summary>
    /// <param name="figures">The figures.</param>
    /// <param name="outputs">What to make.</param>
    /// <param name="folder">What goes before the names of PNG and SVG: a folder with its slash, or nothing.</param>
    /// <param name="pdf">Name of the PDF.</param>
    /// <param name="title">Title of the PDF.</param>
    public static IEnumerable<SheetFile> Of(IReadOnlyList<Figure> figures, SheetOutputs outputs, string folder, string pdf, string title)
    {
        foreach (Figure figure in figures)
        {
            if (outputs.HasFlag(SheetOutputs.Png))
                yield return new($"{folder}{figure.Name}.png", FigureWriter.Png(figure));
            if (outputs.HasFlag(SheetOutputs.Svg))
                yield return new($"{folder}{figure.Name}.svg", FigureWriter.Svg(figure));
        }

        if (outputs.HasFlag(SheetOutputs.Pdf))
            yield return new(pdf, FigureWriter.Pdf(figures, title));
    }

    /// <summary>A page with its figures: name.html, the figures as PNG and SVG in their folder, and name.pdf when asked for.</summary>
    /// <param name="name">Name of page and PDF.</param>
    /// <param name="html">The page.</param>
    /// <param name="figures">Its figures.</param>
    /// <param name="pdf">True for a PDF of the figures too.</param>
    /// <param name="title">Title of the PDF.</param>
    public static IReadOnlyList<SheetFile> Page(string name, string html, IReadOnlyList<Figure> figures, bool pdf, string title) =>
        [new(name + ".html", Encoding.UTF8.GetBytes(html)), .. Of(figures, Outputs(pdf), "figures/", name + ".pdf", title)];

    /// <summary>PNG and SVG, and PDF when asked for.</summary>
    /// <param name="pdf">True for the PDF too.</param>
    public static SheetOutputs Outputs(bool pdf) => SheetOutputs.Png | SheetOutputs.Svg | (pdf ? SheetOutputs.Pdf : SheetOutputs.None);
}
