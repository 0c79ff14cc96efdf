using System.Text;
using LureSim.Report.Figures;

namespace LureSim.Report.Sheets;

/// <summary>Figures as files and as parts of a page, the same for every sheet.</summary>
internal static class FigureFiles
{
    /// <summary>Each figure as PNG and SVG, as far as they are asked for.</summary>
    /// <param name="figures">The figures.</param>
    /// <param name="outputs">What to make.</param>
    /// <param name="folder">What goes before the names of PNG and SVG: a folder with its slash, or nothing.</param>
    public static IEnumerable<SheetFile> Of(IReadOnlyList<Figure> figures, SheetOutputs outputs, string folder)
    {
        foreach (Figure figure in figures)
        {
            if (outputs.HasFlag(SheetOutputs.Png))
                yield return new($"{folder}{figure.Name}.png", FigureWriter.Png(figure));
            if (outputs.HasFlag(SheetOutputs.Svg))
                yield return new($"{folder}{figure.Name}.svg", FigureWriter.Svg(figure));
        }
    }

    /// <summary>A page with its figures: name.html, the figures as PNG and SVG in their folder, and name.pdf when asked for.</summary>
    /// <param name="name">Name of page and PDF.</param>
    /// <param name="html">The page.</param>
    /// <param name="figures">Its figures.</param>
    /// <param name="pdf">The PDF to print; null for none.</param>
    public static IReadOnlyList<SheetFile> Page(string name, string html, IReadOnlyList<Figure> figures, byte[]? pdf) =>
        [new(name + ".html", Encoding.UTF8.GetBytes(html)), .. Of(figures, SheetOutputs.Png | SheetOutputs.Svg, "figures/"), .. pdf is null ? Array.Empty<SheetFile>() : [new(name + ".pdf", pdf)]];
}
