using System.Text;

namespace LureSim;

/// <summary>
/// Texts of a scenario, of a file's name or of a message on their way to a screen or a page: characters that steer a
/// terminal, turn the direction of what follows them or take no room could make a text show as another.
/// </summary>
internal static class VisibleText
{
    private const string Replacement = "\ufffd";

    /// <summary>The text with a replacement character in the place of each that cannot be seen; for terminals and messages.</summary>
    /// <param name="text">The text.</param>
    /// <param name="limit">Most characters of it; what is cut off is told by an ellipsis.</param>
    public static string Shown(string text, int limit = int.MaxValue) => Clean(text, Replacement, limit, keepLines: false);

    /// <summary>The text without the characters that cannot be seen, line ends and tabs kept; for pages and figures.</summary>
    /// <param name="text">The text.</param>
    public static string Without(string text) => Clean(text, "", int.MaxValue, keepLines: true);

    private static string Clean(string text, string replacement, int limit, bool keepLines)
    {
        if (text.Length <= limit && !AnyHidden(text, keepLines))
            return text;
        var clean = new StringBuilder(Math.Min(limit, text.Length) + 2);
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (clean.Length >= limit)
                return clean.Append('\u2026').ToString();
            clean.Append(IsHidden(rune, keepLines) ? replacement : rune.ToString());
        }

        return clean.ToString();
    }

    private static bool AnyHidden(string text, bool keepLines)
    {
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (IsHidden(rune, keepLines))
                return true;
        }

        return false;
    }

    // Controls (C0, C1, escape), marks that reorder the text after them on screen, and marks without width, which hide.
    private static bool IsHidden(Rune rune, bool keepLines) =>
        Rune.IsControl(rune)
            ? !(keepLines && rune.Value is ('\n' or '\t'))
            : rune.Value is 0x00ad or 0x061c or 0x180e or (>= 0x200b and <= 0x200f) or (>= 0x2028 and <= 0x202e) or (>= 0x2060 and <= 0x206f) or 0xfeff or (>= 0xe0000 and <= 0xe007f);
}
