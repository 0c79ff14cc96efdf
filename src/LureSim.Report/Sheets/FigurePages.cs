using LureSim.Report.Figures;

namespace LureSim.Report.Sheets;

/// <summary>The figures of a page, handed out by section, wide and narrow; one that no section takes is an error of the page.</summary>
internal sealed class FigurePages
{
    private readonly IReadOnlyList<Figure> wide;
    private readonly FigureView[] views;
    private readonly HashSet<FigureSection> taken = [];

    /// <summary>Draws the figures, as many at a time as there are cores.</summary>
    /// <param name="wide">The figures.</param>
    /// <param name="narrow">The same, narrow.</param>
    public FigurePages(IReadOnlyList<Figure> wide, IReadOnlyList<Figure> narrow)
    {
        this.wide = wide;
        string[] drawn = new string[2 * wide.Count];
        Parallel.For(0, drawn.Length, i =>
        {
            string name = wide[i / 2].Name;
            drawn[i] = i % 2 == 0 ? FigureWriter.SvgElement(wide[i / 2], name + "-wide") : FigureWriter.SvgElement(narrow.Single(phone => phone.Name == name), name + "-narrow");
        });
        views = [.. wide.Select((figure, i) => new FigureView(figure.Name, drawn[2 * i], drawn[(2 * i) + 1], figure.Caption)
        {
            IsPlot = figure.Section is not (FigureSection.Colours or FigureSection.Lesson),
        })];
    }

    /// <summary>All figures, for a page of one section.</summary>
    public IReadOnlyList<FigureView> All => views;

    /// <summary>The figures of a section, in its order.</summary>
    /// <param name="section">The section.</param>
    public IReadOnlyList<FigureView> Take(FigureSection section)
    {
        taken.Add(section);
        return [.. wide.Zip(views).Where(pair => pair.First.Section == section).OrderBy(pair => pair.First.Order).Select(pair => pair.Second)];
    }

    /// <summary>Fails if a figure would be left off the page.</summary>
    /// <exception cref="InvalidOperationException">No section took a figure.</exception>
    public void RequireAllTaken()
    {
        if (wide.FirstOrDefault(figure => !taken.Contains(figure.Section)) is { } left)
            throw new InvalidOperationException($"The page has no section {left.Section} for the figure {left.Name}.");
    }
}
