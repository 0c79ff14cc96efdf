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
    public static IReadOnlyList<SheetFile> Of(IReadOnlyList<Figure> figures, SheetOutputs outputs, string folder)
    {
        // Each figure is laid out by one thread; which of them is done first does not matter.
        var files = new List<SheetFile>[figures.Count];
        Parallel.For(0, figures.Count, i =>
        {
            Figure figure = figures[i];
            List<SheetFile> own = files[i] = [];
            if (outputs.HasFlag(SheetOutputs.Png))
                own.Add(new($"{folder}{figure.Name}.png", FigureWriter.Png(figure)));
            if (outputs.HasFlag(SheetOutputs.Svg))
                own.Add(new($"{folder}{figure.Name}.svg", FigureWriter.Svg(figure)));
        });
        return [.. files.SelectMany(own => own)];
    }

    /// <summary>A page with its figures: name.html, the figures as PNG and SVG in their folder, and name.pdf when asked for.</summary>
    /// <param name="name">Name of page and PDF.</param>
    /// <param name="html">The page.</param>
    /// <param name="figures">Its figures.</param>
    /// <param name="pdf">The PDF to print; null for none.</param>
    public static IReadOnlyList<SheetFile> Page(string name, string html, IReadOnlyList<Figure> figures, byte[]? pdf) =>
        [new(name + ".html", Encoding.UTF8.GetBytes(html)), .. Of(figures, SheetOutputs.Png | SheetOutputs.Svg, "figures/"), .. pdf is null ? Array.Empty<SheetFile>() : [new(name + ".pdf", pdf)]];
}
