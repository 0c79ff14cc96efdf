using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Benchmarks;

/// <summary>Spots on which the search for a choice is measured.</summary>
internal static class ChoiceSpots
{
    private const string Bar = """
        title: Oyster bar in a tannin creek
        spot:
          depth: 8 ft
          bottom: shell
          current: {speed: 0.8 kn, direction: left}
          salinity: 18 ppt
          temperature: 70 degF
          clarity: {secchi: 3 ft, water: tannin stained}
          light: {sun_elevation: 45 deg, cloud: 30 %}
          strike_zone: {above_bottom: [0 ft, 3 ft]}
          target: red drum
        tackle:
          rod_tip_height: 5 ft
          reel: {gear_ratio: 6.2, spool_diameter: 45 mm}
          line: {kind: braid, strength: 10 lb}
          leader: {kind: fluorocarbon, strength: 20 lb, length: 24 in}
          jig_heads: [1/8 oz, 3/16 oz, 1/4 oz, 3/8 oz]
          bodies:
            - {profile: paddle tail, length: 3.5 in}
            - {profile: shrimp imitation, length: 3.5 in}
          colours: [white]
        presentations:
          - {name: steady, cast: 60 ft, count_down: 4 s, retrieve: {speed: 1.5 ft/s}}
          - {name: stop and go, cast: 60 ft, count_down: 4 s, style: stop and go}
        uncertainty: {samples: 6}
        fixed: [lift, rest]
        """;

    /// <summary>Three spots that are small enough for every rig with every count, speed and angle to be run over all tries.</summary>
    public static IReadOnlyList<(string Name, Scenario Scenario)> Small { get; } =
    [
        ("oyster bar", Read(Bar)),
        ("mud, half the current, fish 1 to 4 ft up", Read(Bar.Replace("shell", "mud").Replace("0.8 kn", "0.4 kn").Replace("[0 ft, 3 ft]", "[1 ft, 4 ft]"))),
        ("14 ft, 85 ft cast, current at 150 deg", Read(Bar.Replace("depth: 8 ft", "depth: 14 ft").Replace("60 ft", "85 ft").Replace("direction: left", "direction: 150 deg"))),
    ];

    /// <summary>A box of 24 heads on the first of them, with lift and drop besides.</summary>
    public static Scenario LargeBox { get; } = Read(Bar
        .Replace("[1/8 oz, 3/16 oz, 1/4 oz, 3/8 oz]", $"[{string.Join(", ", Enumerable.Range(1, 24).Select(i => $"{i}/32 oz"))}]")
        .Replace("fixed: [lift, rest]", "")
        .Replace("uncertainty: {samples: 6}", "  - {name: lift and drop, cast: 60 ft, style: lift and drop, retrieve: {speed: 1.5 ft/s}}\nuncertainty: {samples: 24}"));

    private static Scenario Read(string text) => ScenarioReader.ReadText(text, "spot.yaml") is { Scenario: { } scenario } ? scenario : throw new InvalidOperationException("The spot of a benchmark was refused.");
}
