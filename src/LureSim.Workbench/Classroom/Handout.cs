using LureSim.Report.Rendering;
using LureSim.Workbench.Bench;
using SkiaSharp;

namespace LureSim.Workbench.Classroom;

/// <summary>A page to print for a class: the questions, with empty boxes for the bets and room for what was seen.</summary>
internal static class Handout
{
    // Letter and A4 both hold this (1/96 inch).
    private const double Width = 794;
    private const double Height = 1056;
    private const float Margin = 48;
    private const float Box = 13;

    private static readonly SKColor Ink = SKColors.Black;
    private static readonly SKColor Soft = new(0x44, 0x50, 0x5A);

    /// <summary>The page. A lesson that the engine does not bear out is not on it.</summary>
    /// <param name="book">The lessons.</param>
    /// <param name="yours">The scenario that is open.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static byte[] Pdf(LessonBook book, WorkBench yours, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(book);
        Lesson[] lessons = [.. book.Lessons.Where(lesson => book.Check(lesson, yours, cancellation).Holds)];
        using PdfBook pages = new("Predict, see, explain");
        pages.Page(Width, Height, canvas => Draw(canvas, lessons));
        return pages.Close();
    }

    private static void Draw(SKCanvas canvas, Lesson[] lessons)
    {
        float width = (float)Width - (2 * Margin);
        float y = Text(canvas, "Predict, see, explain", Margin, Margin, width, 24, true, Ink);
        y = Text(canvas, "Tick what you bet on before the picture is uncovered. Then write what you saw, and why.", Margin, y + 2, width, 12.5f, false, Soft) + 8;
        float room = ((float)Height - Margin - y) / Math.Max(1, lessons.Length);
        for (int i = 0; i < lessons.Length; i++)
        {
            float top = y + (i * room);
            using (SKPaint rule = new() { Color = new SKColor(0xB8, 0xC4, 0xCC), StrokeWidth = 1 }) canvas.DrawLine(Margin, top, Margin + width, top, rule);
            float at = Text(canvas, $"{i + 1}. {lessons[i].Title}", Margin, top + 6, width, 14, true, Ink);
            at = Text(canvas, lessons[i].Question, Margin, at, width, 12.5f, false, Ink) + 4;
            foreach (LessonAnswer answer in lessons[i].Answers)
            {
                using SKPaint edge = new() { Color = Ink, StrokeWidth = 1.2f, Style = SKPaintStyle.Stroke, IsAntialias = true };
                canvas.DrawRect(Margin, at + 3, Box, Box, edge);
                at = Text(canvas, answer.Says, Margin + Box + 8, at, width - Box - 8, 12.5f, false, Ink) + 3;
            }

            Text(canvas, "I saw:", Margin, at + 3, 80, 12, false, Soft);
            using SKPaint line = new() { Color = Soft, StrokeWidth = 0.8f };
            canvas.DrawLine(Margin + 48, at + 18, Margin + width, at + 18, line);
        }
    }

    private static float Text(SKCanvas canvas, string text, float x, float y, float width, float size, bool bold, SKColor color)
    {
        double weight = bold ? 700 : 400;
        using SKFont font = BundledFont.Create(size, weight);
        using SKPaint paint = new() { Color = color, IsAntialias = true };
        foreach (string line in BundledFont.Lines(BundledFont.Wrap(text, width, size, weight)))
        {
            y += (float)BundledFont.LineHeight(size);
            canvas.DrawText(line, x, y - (0.22f * size), font, paint);
        }

        return y;
    }
}
