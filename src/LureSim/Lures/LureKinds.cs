using LureSim.Model;

namespace LureSim.Lures;

/// <summary>All kinds of lure.</summary>
public static class LureKinds
{
    /// <summary>The kinds, in the order in which scenarios list them.</summary>
    public static IReadOnlyList<LureKind> All { get; } =
    [
        new PaddleTail(),
        new SoftJerkbait(),
        new ShrimpImitation(),
        new HardTwitchbait(),
        new Spoon(),
        new CurlTailGrub(),
        new CrabImitation(),
        new TopwaterWalker(),
    ];

    /// <summary>The kind of a profile.</summary>
    /// <param name="profile">Profile.</param>
    /// <exception cref="ArgumentOutOfRangeException">No kind has the profile.</exception>
    public static LureKind Of(BodyProfile profile)
    {
        foreach (LureKind kind in All)
        {
            if (kind.Profile == profile) return kind;
        }

        throw new ArgumentOutOfRangeException(nameof(profile), profile, "No kind of lure has this profile.");
    }

    /// <summary>The kind of a word in a table.</summary>
    /// <param name="word">Its word, as <see cref="LureKind.Word"/> gives it.</param>
    /// <exception cref="FormatException">No kind has the word: the table is wrong.</exception>
    public static LureKind Named(string word) =>
        All.FirstOrDefault(kind => kind.Word == word) ?? throw new FormatException($"A reference table has an unknown word, {word}; it must be one of {string.Join(", ", All.Select(kind => kind.Word))}.");
}
