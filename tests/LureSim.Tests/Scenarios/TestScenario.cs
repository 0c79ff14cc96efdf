using LureSim.Fuzz;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>A valid scenario that uses every key, for tests to change.</summary>
internal static class TestScenario
{
    public const string Text = """
        title: Test channel
        notes: |
          Two lines
          of notes.
        spot:
          depth: 12 ft
          bottom: shell
          grass_height: 1 ft
          current: {speed: 1 kn, direction: left, profile: log}
          wind: {speed: 8 kn, direction: 225 deg}
          salinity: 24 ppt
          temperature: 68 degF
          clarity: {secchi: 6 ft, water: coastal green}
          light: {sun_elevation: 40 deg, cloud: 30 %}
          strike_zone:
            above_bottom: [1 ft, 4 ft]
          target: red drum
        tackle:
          rod_tip_height: 4 ft
          reel: {gear_ratio: 6.2, spool_diameter: 45 mm}
          line: {kind: braid, strength: 10 lb}
          leader: {kind: fluorocarbon, strength: 20 lb, length: 30 in, diameter: 0.4 mm}
          jig_heads:
            - unweighted
            - 1/8 oz
            - {weight: 1/4 oz, metal: tungsten, hook: 1.2 g}
          bodies:
            - {profile: paddle tail, length: 3.5 in}
            - {profile: soft jerkbait, length: 5 in, height: 16 mm, width: 13 mm, density: 1.1 g/cm3, name: plain stick}
          colours: [white, dark purple, "#7FFF00"]
        presentations:
          - name: slow and steady
            cast: 60 ft
            count_down: to bottom
            retrieve: {speed: 0.4 m/s}
          - name: hop
            cast: 20 m
            fall: tight line
            count_down: 4 s
            retrieve: {handle_turns: 0.5 turns/s}
            pause: {every: 3 s, for: 2 s}
            twitch: {count: 2, height: 1 ft, period: 0.6 s}
            line_left: 4 m
        """;

    /// <summary>The scenario with a text replaced, which must be there exactly once.</summary>
    public static string With(string old, string replacement) => Text.With(old, replacement);

    public static Scenario Read(string text)
    {
        ScenarioReading reading = ScenarioReader.ReadText(text, "test.yaml");
        Assert.True(reading.IsValid, string.Join('\n', reading.Problems));
        return reading.Scenario!;
    }

    public static IReadOnlyList<ScenarioProblem> Problems(string text)
    {
        ScenarioReading reading = ScenarioReader.ReadText(text, "test.yaml");
        Assert.False(reading.IsValid);
        return reading.Problems;
    }
}
