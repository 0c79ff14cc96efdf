using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Benchmarks;

/// <summary>Spots on which the search for a choice is measured.</summary>
internal static class ChoiceSpots
{
    private const string SmallBox = "[1/8 oz, 3/16 oz, 1/4 oz, 3/8 oz]";

    // The spot of the tests of advice with fewer heads, baits, presentations and tries.
    private static readonly string Bar = Less(
        Text(),
        ("[1/16 oz, 1/8 oz, 3/16 oz, 1/4 oz, 3/8 oz, 1/2 oz]", SmallBox),
        ("    - {profile: soft jerkbait, length: 5 in}\n", ""),
        ("  - {name: lift and drop, cast: 60 ft, style: lift and drop, retrieve: {speed: 1.5 ft/s}}\n", ""),
        ("[white, chartreuse, gold, red, dark purple, black, shrimp brown]", "[white]"),
        ("uncertainty: {samples: 12}", "uncertainty: {samples: 6}\nfixed: [lift, rest]"));

    /// <summary>Three spots that are small enough for every rig with every count, speed and angle to be run over all tries.</summary>
    public static IReadOnlyList<(string Name, Scenario Scenario)> Small { get; } =
    [
        ("oyster bar", Read(Bar)),
        ("mud, half the current, fish 1 to 4 ft up", Read(Bar.Replace("shell", "mud").Replace("0.8 kn", "0.4 kn").Replace("[0 ft, 3 ft]", "[1 ft, 4 ft]"))),
        ("14 ft, 85 ft cast, current at 150 deg", Read(Bar.Replace("depth: 8 ft", "depth: 14 ft").Replace("60 ft", "85 ft").Replace("direction: left", "direction: 150 deg"))),
    ];

    /// <summary>A box of 24 heads on the first of them, with lift and drop besides.</summary>
    public static Scenario LargeBox { get; } = Read(Bar
        .Replace(SmallBox, $"[{string.Join(", ", Enumerable.Range(1, 24).Select(i => $"{i}/32 oz"))}]")
        .Replace("fixed: [lift, rest]", "")
        .Replace("uncertainty: {samples: 6}", "  - {name: lift and drop, cast: 60 ft, style: lift and drop, retrieve: {speed: 1.5 ft/s}}\nuncertainty: {samples: 24}"));

    private static string Text()
    {
        using Stream stream = typeof(ChoiceSpots).Assembly.GetManifestResourceStream("oyster-bar.yaml") ?? throw new InvalidOperationException("The spot is missing.");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    private static string Less(string text, params (string From, string To)[] changes) => changes.Aggregate(
        text,
        (now, change) => now.Contains(change.From, StringComparison.Ordinal) ? now.Replace(change.From, change.To, StringComparison.Ordinal) : throw new InvalidOperationException(change.From));

    private static Scenario Read(string text) => ScenarioReader.ReadText(text, "spot.yaml") is { Scenario: { } scenario } ? scenario : throw new InvalidOperationException("The spot of a benchmark was refused.");
}
