using LureSim.Report.Figures;

namespace LureSim.Report.Sheets;

/// <summary>The figures of a page, handed out by section, wide and narrow; one that no section takes is an error of the page.</summary>
/// <param name="wide">The figures.</param>
/// <param name="narrow">The same, narrow.</param>
internal sealed class FigurePages(IReadOnlyList<Figure> wide, IReadOnlyList<Figure> narrow)
{
    private readonly HashSet<FigureSection> taken = [];

    /// <summary>All figures, for a page of one section.</summary>
    public IReadOnlyList<FigureView> All => [.. wide.Select(View)];

    /// <summary>The figures of a section, in its order.</summary>
    /// <param name="section">The section.</param>
    public IReadOnlyList<FigureView> Take(FigureSection section)
    {
        taken.Add(section);
        return [.. wide.Where(figure => figure.Section == section).OrderBy(figure => figure.Order).Select(View)];
    }

    /// <summary>Fails if a figure would be left off the page.</summary>
    /// <exception cref="InvalidOperationException">No section took a figure.</exception>
    public void RequireAllTaken()
    {
        if (wide.FirstOrDefault(figure => !taken.Contains(figure.Section)) is { } left)
            throw new InvalidOperationException($"The page has no section {left.Section} for the figure {left.Name}.");
    }

    private FigureView View(Figure figure) => new(
        figure.Name,
        FigureWriter.SvgElement(figure, figure.Name + "-wide"),
        FigureWriter.SvgElement(narrow.Single(phone => phone.Name == figure.Name), figure.Name + "-narrow"),
        figure.Caption)
    {
        IsPlot = figure.Section is not (FigureSection.Colours or FigureSection.Lesson),
    };
}
