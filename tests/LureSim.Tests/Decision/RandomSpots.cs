using System.Globalization;

namespace LureSim.Tests.Decision;

/// <summary>Scenarios drawn at random from what anglers meet: the same seed gives the same scenario.</summary>
internal static class RandomSpots
{
    private static readonly string[] Heads = ["unweighted", "1/16 oz", "1/8 oz", "3/16 oz", "1/4 oz", "3/8 oz", "1/2 oz", "3/4 oz", "1 oz"];

    private static readonly string[] Baits =
    [
        "{profile: paddle tail, length: 3.5 in}", "{profile: paddle tail, length: 5 in}", "{profile: soft jerkbait, length: 5 in}", "{profile: shrimp imitation, length: 3.5 in}",
        "{profile: curl-tail grub, length: 3 in}", "{profile: crab imitation, length: 2.5 in}", "{profile: spoon, length: 3 in}",
    ];

    private static readonly string[] Ways =
    [
        "{name: steady, cast: CAST, count_down: 3 s, retrieve: {speed: 1.5 ft/s}}",
        "{name: slow, cast: CAST, count_down: to bottom, retrieve: {speed: 0.8 ft/s}}",
        "{name: stop and go, cast: CAST, count_down: 2 s, style: stop and go}",
        "{name: twitches, cast: CAST, count_down: 2 s, style: \"twitch, twitch, pause\"}",
        "{name: lift and drop, cast: CAST, style: lift and drop, retrieve: {speed: 1.5 ft/s}}",
        "{name: swing, cast: CAST, style: swing}",
    ];

    /// <summary>The text of a scenario.</summary>
    /// <param name="seed">Seed.</param>
    public static string Text(int seed)
    {
        var random = new Random(seed);
        double depth = Math.Round(3 * Math.Pow(8, random.NextDouble()), 1);
        bool grass = random.Next(5) == 0, moving = random.Next(5) > 0;
        double low = grass ? 1 : random.Next(2) == 0 ? 0 : Math.Round(0.2 * depth, 1);
        double high = Math.Round(low + Math.Max(0.8, depth * (0.15 + (0.25 * random.NextDouble()))), 1);
        string current = moving ? string.Create(CultureInfo.InvariantCulture, $"\n  current: {{speed: {0.1 + (1.4 * random.NextDouble()):F2} kn, direction: {random.Next(0, 360)} deg}}") : "";
        string bait = random.Next(3) == 0 ? $"\nforage: [{{kind: {Of("small bait fish", "large bait fish", "shrimp", "crab")}, seen: {Of("present", "being attacked")}}}]" : "";
        string season = random.Next(2) == 0 ? $"\nseason: {Of("winter", "early spring", "summer", "late summer", "early autumn")}" : "";
        string hands = random.Next(6) == 0 ? $"\nfixed: [{Of("sink count", "reel speed", "all")}]" : "";
        string cast = $"{random.Next(35, 85)} ft";
        return string.Create(CultureInfo.InvariantCulture, $$"""
            title: Random spot {{seed}}
            spot:
              depth: {{depth}} ft
              bottom: {{Of("sand", "mud", "shell", "hard")}}{{(grass ? "\n  grass_height: 1 ft" : "")}}{{current}}
              salinity: {{random.Next(0, 36)}} ppt
              temperature: {{random.Next(50, 86)}} degF
              clarity: {secchi: {{random.Next(2, 9)}} ft, water: {{Of("coastal green", "tannin stained", "silty")}}}
              light: {sun_elevation: {{random.Next(-10, 70)}} deg, cloud: {{random.Next(0, 100)}} %}
              strike_zone: {above_bottom: [{{low}} ft, {{Math.Min(high, depth)}} ft]}
              target: {{Of("red drum", "spotted seatrout", "striped bass", "common snook", "weakfish")}}
            tackle:
              rod_tip_height: {{random.Next(3, 8)}} ft
              reel: {gear_ratio: 6.2, spool_diameter: 45 mm}
              line: {kind: {{Of("braid, strength: 10 lb", "braid, strength: 20 lb", "monofilament, strength: 12 lb")}}}
              leader: {kind: fluorocarbon, strength: 20 lb, length: 24 in}
              jig_heads: [{{string.Join(", ", Some(Heads, 3))}}]
              bodies: [{profile: paddle tail, length: 4 in}, {{string.Join(", ", Some(Baits, 1))}}]
              colours: [white, chartreuse, red, gold, black, shrimp brown]
            presentations:
              - {{string.Join("\n  - ", Some(Ways, 2)).Replace("CAST", cast, StringComparison.Ordinal)}}
            uncertainty: {samples: 6}{{bait}}{{season}}{{hands}}

            """);

        string Of(params string[] words) => words[random.Next(words.Length)];

        string[] Some(string[] words, int count)
        {
            string[] order = [.. words];
            random.Shuffle(order);
            return [.. order.Take(count).OrderBy(word => Array.IndexOf(words, word))];
        }
    }
}
