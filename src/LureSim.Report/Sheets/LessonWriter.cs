using LureSim.Decision.Colours;
using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Report.Sheets;

/// <summary>Draws a lesson in light and sight. The same lesson gives the same bytes every time; nothing is written to disk here.</summary>
public static class LessonWriter
{
    /// <summary>The plates of a lesson, all of the spot's own water: red going down, four ways to be black, grey card, sighting distance, silhouette, and the two swatch charts.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="units">Units of the plates.</param>
    /// <param name="width">Wide for pages and projectors, narrow for phones.</param>
    /// <returns>The plates.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="lesson"/> is null.</exception>
    public static IReadOnlyList<LessonPlate> Plates(Lesson lesson, UnitSystem units, FigureWidth width = FigureWidth.Wide)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        FigureOptions options = new(units, width);
        UnitFormat format = new(units);
        ColourFinding colours = lesson.Colours;
        ColourPlate plate = Sheets.Plates.Colours(colours.Chart);
        string water = SpotWords.Water(lesson.Scenario.Spot.Clarity, format), fish = Grammar.Article(FishWords.Everyday(colours.Eye.CommonName));
        string bottom = format.HandText(colours.Chart.Depths.Max());
        return
        [
            new(RedTeachingPlate.Create(lesson.Spot, water, options), "Which goes dark first here: red, white or chartreuse?", LessonWords.RedAnswer(lesson.Spot, format)),
            new(FourWaysToBlack.Create(lesson.Spot, colours.Eye, water, options), "How deep is a red lure \u201cblack\u201d here?",
            [
                "It depends on what you mean by black.",
                .. lesson.Spot.Ways.Select(way => $"{LessonWords.Way(way.Dark.Criterion, FishWords.Everyday(colours.Eye.CommonName))}. {LessonWords.WayDepth(way.Dark, colours.Chart.Depths.Max(), format)}"),
            ]),
            new(WhiteBalancePlate.Create(lesson.Spot.Balance, water, options), format.Say($"Is a gray card gray in this water?"), LessonWords.BalanceAnswer(lesson.Spot.Balance, format)),
            new(SightingDistance.Create(lesson.Sight, options), format.Say($"Which color does {fish} see from farthest here?"), LessonWords.SightAnswer(colours.Advice, format)),
            new(SilhouetteFigure.Create(lesson.Sight.Strips, options), $"What is left of a {colours.Advice.Choice.Name} lure a little way off?", LessonWords.SilhouetteAnswer(lesson.Sight.Strips, format)),
            new(ColourSwatches.Create(plate, lesson.Scenario.Spot.StrikeZone, SwatchView.Eye, options), format.Say($"Which of these colors could you still name at {bottom}?"), LessonWords.WordsAnswer(colours.Chart, format)),
            new(ColourSwatches.Create(plate, lesson.Scenario.Spot.StrikeZone, SwatchView.Camera, options), format.Say($"Why does a photo from down there look dark and all one color?"),
            [
                format.Say($"A camera set for the surface keeps both the darkness and the color of the light: {UnitFormat.PercentText(lesson.Spot.Plate.Rows[^1].LightLeft)} of the light is left at {bottom}."),
                "Your eye opens up and gets used to part of the tint; the camera does not.",
            ]),
        ];
    }

    /// <summary>The pictures of a lesson.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="units">Units of the plates.</param>
    /// <param name="width">Wide for pages and projectors, narrow for phones.</param>
    /// <returns>The pictures.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="lesson"/> is null.</exception>
    public static IReadOnlyList<Figure> Figures(Lesson lesson, UnitSystem units, FigureWidth width = FigureWidth.Wide) => [.. Plates(lesson, units, width).Select(plate => plate.Figure)];

    /// <summary>The plates as files: each as PNG and SVG, and all in plates.pdf, each question with its answer overleaf.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="units">Units of the plates.</param>
    /// <param name="outputs">What to make.</param>
    /// <returns>The files.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="lesson"/> is null.</exception>
    public static IReadOnlyList<SheetFile> Files(Lesson lesson, UnitSystem units, SheetOutputs outputs = SheetOutputs.Png | SheetOutputs.Svg)
    {
        IReadOnlyList<LessonPlate> plates = Plates(lesson, units);
        return
        [
            .. FigureFiles.Of([.. plates.Select(plate => plate.Figure)], outputs, ""),
            .. outputs.HasFlag(SheetOutputs.Pdf) ? [new SheetFile("plates.pdf", Pdf(plates, lesson.Scenario.Title, SheetWriter.AllCautions(lesson.Scenario, null, units)))] : Array.Empty<SheetFile>(),
        ];
    }

    // Two pages a plate, to be printed on both sides: question and picture in front, the answer behind.
    private static byte[] Pdf(IReadOnlyList<LessonPlate> plates, string title, IReadOnlyList<string> cautions)
    {
        using PdfBook book = new(title);
        for (int i = 0; i < plates.Count; i++)
        {
            LessonPlate plate = plates[i];
            string number = $"Plate {i + 1} of {plates.Count}";
            PdfPage.Add(book, page =>
            {
                page.Text($"{number}: {title}", 11, Palette.SoftInk);
                page.Text(plate.Question, 26, PdfPage.Accent, bold: true);
                page.Skip(12);
                page.Draw(plate.Figure, page.Left - 30);
                page.MoveTo(PdfPage.Height - PdfPage.Margin - 18);
                page.Text("The answer is on the back.", 11, Palette.SoftInk);
            });
            PdfPage.Add(book, page =>
            {
                page.Text($"{number}, answer", 11, Palette.SoftInk);
                page.Text(plate.Question, 17, Palette.SoftInk, bold: true);
                page.Rule(PdfPage.Accent, 2);
                page.Skip(10);
                foreach (string paragraph in plate.Answer)
                {
                    page.Text(paragraph, 18, Palette.Ink);
                    page.Skip(8);
                }

                page.Skip(14);
                page.Rule(Palette.Line, 1);
                page.Text("How to read the picture", 12, Palette.SoftInk, bold: true);
                page.Text(plate.Figure.Caption, 12, Palette.SoftInk);
                if (plate == plates[^1])
                {
                    page.Skip(14);
                    page.Text("Watch out: " + string.Join(' ', cautions), 11, Palette.SoftInk);
                }
            });
        }

        return book.Close();
    }
}
