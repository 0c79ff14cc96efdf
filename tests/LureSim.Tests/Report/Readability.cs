using System.Text.RegularExpressions;

namespace LureSim.Tests.Report;

/// <summary>
/// Reading grade of English text: 0.39 words per sentence + 11.8 syllables per word - 15.59 (Kincaid, Fishburne, Rogers and Chissom 1975,
/// Derivation of new readability formulas for Navy enlisted personnel, Research Branch Report 8-75).
/// </summary>
internal static partial class Readability
{
    public static double Grade(string text)
    {
        string[] words = [.. Word().Matches(text).Select(match => match.Value)];
        int sentences = Math.Max(1, SentenceEnd().Split(text).Count(part => Word().IsMatch(part)));
        return (0.39 * words.Length / sentences) + (11.8 * words.Sum(Syllables) / Math.Max(1, words.Length)) - 15.59;
    }

    // Groups of vowels, without a silent e at the end; a number counts as read at a glance, one.
    public static int Syllables(string word)
    {
        if (char.IsDigit(word[0])) return 1;
        string plain = SilentEnd().Replace(word.ToLowerInvariant(), "");
        return Math.Max(1, Vowels().Count(plain));
    }

    [GeneratedRegex("[A-Za-z0-9][A-Za-z0-9'/½¼¾-]*")]
    private static partial Regex Word();

    [GeneratedRegex(@"[.!?;:](?:\s|$)|\n")]
    private static partial Regex SentenceEnd();

    [GeneratedRegex("(?<=[a-z]{2})(?<!l)e$|(?<=[a-z]{2}[^dt])ed$|(?<=[^aeiou]{1}[^aeioucgszx])es$")]
    private static partial Regex SilentEnd();

    [GeneratedRegex("[aeiouy]+")]
    private static partial Regex Vowels();
}
