using LureSim.Decision.Colours;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Units;

namespace LureSim.Report.Sheets;

/// <summary>Draws a lesson in light and sight. The same lesson gives the same bytes every time; nothing is written to disk here.</summary>
public static class LessonWriter
{
    /// <summary>The plates of a lesson: why red turns black, sighting distance, silhouette, and the two swatch charts.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="units">Units of the plates.</param>
    /// <param name="width">Wide for pages and projectors, narrow for phones.</param>
    /// <returns>The plates.</returns>
    public static IReadOnlyList<Figure> Figures(Lesson lesson, UnitSystem units, FigureWidth width = FigureWidth.Wide)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        FigureOptions options = new(units, width);
        ColourPlate plate = Plates.Colours(lesson.Colours.Chart);
        StrikeZone zone = lesson.Scenario.Spot.StrikeZone;
        return
        [
            RedTeachingPlate.Create([lesson.Clear, lesson.Stained], options),
            SightingDistance.Create(lesson.Sight, options),
            SilhouetteFigure.Create(lesson.Sight.Strips, options),
            ColourSwatches.Create(plate, zone, SwatchView.Adapted, options),
            ColourSwatches.Create(plate, zone, SwatchView.Unadapted, options),
        ];
    }

    /// <summary>The plates as files: each as PNG and SVG, and all in plates.pdf.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="units">Units of the plates.</param>
    /// <param name="outputs">What to make.</param>
    /// <returns>The files.</returns>
    public static IReadOnlyList<SheetFile> Files(Lesson lesson, UnitSystem units, SheetOutputs outputs = SheetOutputs.Png | SheetOutputs.Svg)
    {
        IReadOnlyList<Figure> figures = Figures(lesson, units);
        return [.. FigureFiles.Of(figures, outputs, "", "plates.pdf", lesson.Scenario.Title)];
    }
}
