using System.Text;

namespace LureSim.Data;

/// <summary>The words that stand for the members of an enum in reference tables and scenarios: the member's name in lower case, its parts apart.</summary>
internal static class ReferenceWords
{
    /// <summary>The word of a member, such as "early spring" for EarlySpring.</summary>
    /// <typeparam name="T">Enum.</typeparam>
    /// <param name="member">A named member.</param>
    /// <exception cref="ArgumentOutOfRangeException">The enum has no such member.</exception>
    public static string Of<T>(T member)
        where T : struct, Enum => Table<T>.Words.TryGetValue(member, out string? word)
            ? word
            : throw new ArgumentOutOfRangeException(nameof(member), member, $"{typeof(T).Name} has no such member.");

    /// <summary>The member of a word.</summary>
    /// <typeparam name="T">Enum.</typeparam>
    /// <param name="word">The word, as <see cref="Of"/> gives it.</param>
    /// <exception cref="FormatException">The word stands for no member: the table is wrong.</exception>
    public static T Parse<T>(string word)
        where T : struct, Enum => Table<T>.Members.TryGetValue(word, out T member)
            ? member
            : throw new FormatException($"A reference table has an unknown word, {word}; it must be one of {string.Join(", ", Table<T>.Members.Keys)}.");

    private static string Split(string name)
    {
        var word = new StringBuilder(name.Length + 4);
        foreach (char letter in name)
        {
            if (char.IsUpper(letter) && word.Length > 0) word.Append(' ');
            word.Append(char.ToLowerInvariant(letter));
        }

        return word.ToString();
    }

    private static class Table<T>
        where T : struct, Enum
    {
        public static readonly Dictionary<T, string> Words = Enum.GetValues<T>().ToDictionary(member => member, member => Split(member.ToString()));

        public static readonly Dictionary<string, T> Members = Words.ToDictionary(pair => pair.Value, pair => pair.Key, StringComparer.Ordinal);
    }
}
