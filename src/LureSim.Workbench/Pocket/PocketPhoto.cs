using LureSim.Report.Rendering;
using LureSim.Report.Units;
using LureSim.Report.Words;
using SkiaSharp;

namespace LureSim.Workbench.Pocket;

/// <summary>The card of the pocket page as one tall picture for the photo roll: it opens on every phone.</summary>
internal static class PocketPhoto
{
    private const int Width = 1080;
    private const int Margin = 56;
    private const float Body = 34;
    private const float Small = 28;

    private static readonly SKColor Ink = new(0x11, 0x11, 0x11);
    private static readonly SKColor Soft = new(0x33, 0x3F, 0x48);
    private static readonly SKColor Line = new(0xC5, 0xD0, 0xD8);
    private static readonly SKColor Tint = new(0xF1, 0xF5, 0xF8);

    /// <summary>Draws it.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="format">Units.</param>
    public static byte[] Png(PocketSpot spot, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(spot);

        // Once to see how tall it gets, once to keep.
        using SKBitmap trial = new(Width, 16);
        using SKCanvas measure = new(trial);
        int height = (int)Math.Ceiling(Draw(measure, spot, format)) + Margin;
        using SKBitmap bitmap = new(Width, height);
        using SKCanvas canvas = new(bitmap);
        canvas.Clear(SKColors.White);
        Draw(canvas, spot, format);
        using SKImage image = SKImage.FromBitmap(bitmap);
        using SKData data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    private static float Draw(SKCanvas canvas, PocketSpot spot, UnitFormat format)
    {
        float y = Margin;
        y = Text(canvas, spot.Scenario.Title, Margin, y, Width - (2 * Margin), 46, true, Ink) + 18;
        foreach (CardRow row in PocketWriter.Card(spot, format).Rows)
        {
            const float Column = 220;
            Text(canvas, row.Label, Margin, y, Column, Small, false, Soft);
            bool large = row.Label == "TIE ON";
            y = Text(canvas, row.Text, Margin + Column, y, Width - (2 * Margin) - Column, large ? 52 : Body, true, Ink) + 12;
            Rule(canvas, y);
            y += 12;
        }

        y = Table(canvas, y, "If the current is…", [.. spot.Steps.Where(step => Math.Abs(step.Depth - spot.Scenario.Spot.Depth) < 1e-9).Select(step => Row(PocketWriter.Flow(step.Current, format), step.Run, format))]);
        if (spot.Hours.Count > 0) y = Table(canvas, y, "By the hour", [.. spot.Hours.Select(hour => Row($"{PocketWriter.Clock(hour.Hours)}  {PocketWriter.Flow(hour.Current, format)}", hour.Run, format))]);
        return Text(canvas, "A model, not a promise; no navigation aid. Even bottom, steady current, no waves.", Margin, y + 10, Width - (2 * Margin), 24, false, Soft);
    }

    private static string[] Row(string label, Decision.Trials.Candidate? run, UnitFormat format) =>
        [label, run is null ? "none gets there" : PocketWriter.Name(run.Rig, format), run?.Coverage.TimeToZone is { } wait ? UnitFormat.SecondsText(wait) : "", run is null ? "" : UnitFormat.PercentText(run.Coverage.ZoneShare)];

    private static float Table(SKCanvas canvas, float y, string title, IReadOnlyList<string[]> rows)
    {
        float[] columns = [Margin, Margin + 300, Margin + 690, Margin + 840];
        y = Text(canvas, title, Margin, y + 20, Width - (2 * Margin), Body, true, Ink) + 8;
        string[] heads = ["", "tie on", "there after", "in the zone"];
        for (int c = 1; c < heads.Length; c++) Text(canvas, heads[c], columns[c], y, 240, 22, false, Soft);
        y += 36;
        for (int r = 0; r < rows.Count; r++)
        {
            if (r % 2 == 0)
            {
                using SKPaint tint = new() { Color = Tint };
                canvas.DrawRect(Margin - 8, y - 4, Width - (2 * Margin) + 16, 48, tint);
            }

            for (int c = 0; c < rows[r].Length; c++) Text(canvas, rows[r][c], columns[c], y, 380, 30, c == 1, Ink);
            y += 48;
        }

        return y;
    }

    private static void Rule(SKCanvas canvas, float y)
    {
        using SKPaint paint = new() { Color = Line, StrokeWidth = 2 };
        canvas.DrawLine(Margin, y, Width - Margin, y, paint);
    }

    private static float Text(SKCanvas canvas, string text, float x, float y, float width, float size, bool bold, SKColor color)
    {
        const double Heavy = 700, Plain = 400;
        double weight = bold ? Heavy : Plain;
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
