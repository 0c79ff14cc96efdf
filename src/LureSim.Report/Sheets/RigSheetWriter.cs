using LureSim.Decision.RigChecks;
using LureSim.Report.Figures;
using LureSim.Report.Units;

namespace LureSim.Report.Sheets;

/// <summary>Draws the check of a rig. The same check gives the same bytes every time; nothing is written to disk here.</summary>
public static class RigSheetWriter
{
    /// <summary>The figures of a close look at a rig.</summary>
    /// <param name="focus">The rig.</param>
    /// <param name="units">Units of the figures.</param>
    /// <param name="width">Wide for pages and files, narrow for phones.</param>
    /// <returns>The figures.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="focus"/> is null.</exception>
    public static IReadOnlyList<Figure> Figures(RigFocus focus, UnitSystem units, FigureWidth width = FigureWidth.Wide)
    {
        ArgumentNullException.ThrowIfNull(focus);
        FigureOptions options = new(units, width);
        List<Figure> figures = [RigPicture.Create(focus, options), ActionStills.Create(focus, options), TwitchPath.Create(focus, options)];
        if (focus.Sweep is { Speeds.Count: > 1 })
            figures.Add(ActionBySpeed.Create(focus, options));
        if (focus.Spin is { Bends.Count: > 1, Speeds.Count: > 1 })
            figures.Add(SpinOnset.Create(focus, options));
        return figures;
    }

    /// <summary>The figures as files: each as PNG and SVG, and all in rig.pdf.</summary>
    /// <param name="sheet">The check.</param>
    /// <param name="units">Units of the figures.</param>
    /// <param name="outputs">What to make.</param>
    /// <returns>The files.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static IReadOnlyList<SheetFile> Files(RigSheet sheet, UnitSystem units, SheetOutputs outputs = SheetOutputs.Png | SheetOutputs.Svg)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        IReadOnlyList<Figure> figures = Figures(sheet.Focus, units);
        return
        [
            .. FigureFiles.Of(figures, outputs, ""),
            .. outputs.HasFlag(SheetOutputs.Pdf)
                ? [new("rig.pdf", SheetPdf.Write(sheet.Scenario.Title, [], "", [], figures, SheetWriter.AllCautions(sheet.Scenario, sheet.Focus.Action.Rig.Head, units)))]
                : Array.Empty<SheetFile>(),
        ];
    }
}
