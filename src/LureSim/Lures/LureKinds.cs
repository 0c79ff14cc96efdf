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
}
