namespace LureSim.Fuzz;

/// <summary>Changes of a text that must hold what is replaced.</summary>
internal static class OneText
{
    /// <summary>The text with a part replaced, which must be there exactly once.</summary>
    /// <param name="text">The text.</param>
    /// <param name="old">The part.</param>
    /// <param name="replacement">What comes in its place.</param>
    /// <exception cref="ArgumentException">The part is not there, or more than once.</exception>
    public static string With(this string text, string old, string replacement)
    {
        int at = text.IndexOf(old, StringComparison.Ordinal);
        if (at < 0) throw new ArgumentException($"The text does not hold \"{old}\".", nameof(old));
        if (text.IndexOf(old, at + 1, StringComparison.Ordinal) >= 0) throw new ArgumentException($"The text holds \"{old}\" more than once.", nameof(old));
        return text.Replace(old, replacement, StringComparison.Ordinal);
    }
}
