using LureSim.Scenarios;

namespace LureSim.Fuzz;

/// <summary>Scenarios that together use every key of the grammar; a test holds them to that.</summary>
internal static class EveryKey
{
    private const string Start = """
        title: Every key
        notes: said once
        spot:
          depth: 12 ft
          bottom: shell
          grass_height: 1 ft
          current: {speed: 1 kn, direction: left, tide: outgoing, profile: log}
          wind: {speed: 8 kn, direction: 225 deg}
          salinity: 24 ppt
          temperature: 68 degF
          target: red drum
          target_length: 24 in

        """;

    // A table that lies beside the program: a file of a scenario is looked for from its own place, and these have none.
    private static readonly string Reflectance = Path.Combine(AppContext.BaseDirectory, "Scenarios", "reflectance.csv");
    private static readonly string Box = Path.Combine(AppContext.BaseDirectory, "Boxes", "my-box.yaml");

    private const string Points = """
        tide:
          - {time: "06:00", current: 0.5 m/s, depth_change: 1 ft}
          - {time: "09:00", current: 0.1 m/s}
          - {time: "12:00", current: -0.4 m/s, depth_change: -1 ft}
        """;

    private const string Harmonic = """
        tide:
          constituents:
            - {name: M2, amplitude: 0.5 m, phase: 181 deg}
            - K1 0.2 m 219 deg
          date: 2026-06-14
          utc_offset: -4 h
          from: "06:00"
          to: "14:00"
          level: 0.1 m
          strongest_current: 0.6 m/s
          slack_after: 40 min
          runs: outgoing
        """;

    private static readonly string Rest = """
        tackle:
          include: BOX
          rod_tip_height: 4 ft
          rod: {length: 7 ft, power: medium, lures: [1/8 oz, 1 oz]}
          reel: {size: 3000, gear_ratio: 6.2, spool_diameter: 45 mm, line_capacity: 200 m}
          line: {kind: braid, strength: 10 lb, diameter: 0.2 mm}
          leader: {kind: fluorocarbon, strength: 20 lb, length: 30 in, diameter: 0.4 mm}
          jig_heads:
            - unweighted
            - 1/8 oz
            - {weight: 1/4 oz, metal: tungsten, hook: 1.2 g, place: shank}
          bodies:
            - {profile: paddle tail, length: 3.5 in, height: 18 mm, width: 13 mm, density: 1.1 g/cm3, name: plain tail}
            - profile: hard twitchbait
              length: 4 in
              float: floating
              lip: {length: 15 mm, width: 12 mm, angle: 40 deg}
            - {profile: spoon, length: 3 in, thickness: 2 mm, metal: steel}
          rigging:
            knot: clip
            loop_length: 12 mm
            shank: 40 mm
            exit_sideways: 2 mm
            exit_above: -1 mm
            bend: 5 deg
            point_lean: 6 deg
            head_turn: 4 deg
            pulled_up: 2 mm
            gape: 15 mm
            weight_at: 40 %
            tail_lost: 20 %
          colours: [white, "#7FFF00"]
          measured_colours:
            - {name: my lure, reflectance: REFLECTANCE}
          patterns:
            - {name: shiner, back: natural green back, side: my lure, belly: white, eye: "#FFD700"}
        presentations:
          - name: by keys
            cast: {length: 20 m, with: 1/4 oz}
            aim: 20 deg
            fall: tight line
            count_down: 4 s
            retrieve: {handle_turns: 0.5 turns/s}
            pause: {every: 3 s, for: 2 s}
            twitch: {count: 2, height: 1 ft, period: 0.6 s}
            drift: {speed: 0.3 m/s, direction: away}
            time_limit: 90 s
            line_left: 4 m
          - name: by style
            cast: 20 m
            count_down: 2 s
            style: stop and go
            retrieve: {speed: 0.5 m/s}
          - name: by moves
            cast: 20 m
            count_down: to bottom
            retrieve: {speed: 0.5 m/s}
            moves:
              - reel: {for: 2 s, speed: 0.6 m/s}
              - reel: {for: 2 s, handle_turns: 1 turns/s}
              - pause: 1 s
              - lift: {height: 0.5 m, time: 1 s, reel: 0.1 m/s}
              - lower: {height: 0.5 m, time: 1 s, reel: 0.1 m/s}
              - sweep: {to: right, distance: 0.4 m, time: 1 s, reel: 0.1 m/s}
              - return: {time: 1 s, reel: 0.1 m/s}
              - twitch: {count: 2, height: 0.2 m, period: 0.5 s, to: left, reel: 0.1 m/s}
              - feed: {speed: 0.2 m/s, for: 1 s}
              - swing: 60 s
        uncertainty:
          current: 30 %
          cast: {plus_or_minus: 2 m}
          retrieve_speed: {between: [0.3 m/s, 0.5 m/s]}
          depth: {triangular: [11 ft, 12 ft, 14 ft]}
          clarity: {plus_or_minus: 20 %}
          rod_tip_height: {plus_or_minus: 10 %}
          line_drag: {law: either, factor: 10 %}
          lure_drag: 30 %
          sight: drawn
          others: exact
          samples: 8
          seed: 3
        TIDE
        season: early autumn
        fixed: [lift, cast angle]
        hands: {weight: [unweighted, 1 oz], sink_count: [0 s, 30 s], reel_speed: [0.2 ft/s, 6 ft/s], lift: [1 in, 6 ft], rest: [0.2 s, 20 s], cast_angle: [-30 deg, 30 deg]}
        forage:
          - {kind: shrimp, seen: being attacked, length: 3 in, colour: shrimp brown}
        seen:
          - {jig_head: 1/8 oz, bait: plain tail, bottom: 6 s, plus_or_minus: 20 %, date: 2026-06-14, spot: Every key, note: by a watch}
          - {jig_head: 1/8 oz, bottom_count: 9, happened: no, fall: slack line, cast: 18 m}
          - {jig_head: 1/8 oz, first_tick: 7, presentation: by keys}
          - {jig_head: 1/8 oz, turns_to_tick: 12, count_down: 3 s}
          - {jig_head: 1/8 oz, turns_to_clear: 15}
          - {jig_head: 1/8 oz, line_angle: 20 deg, side: left, after: 5 s}
          - {jig_head: 1/8 oz, came_out: 15 deg, side: right}
          - {jig_head: 1/8 oz, line_out: 22 m}
          - {float: {distance: 30 ft, time: 20 s}}
          - {jig_head: unweighted, pool: {depth: 6 ft, time: 9 s, temperature: 75 degF, salinity: 0 ppt}}
        SECCHI
        compare:
          - name: mine
            jig_head: 1/4 oz
          - name: yours
            jig_head: {weight: 3/8 oz, metal: lead}
            body: {profile: soft jerkbait, length: 5 in}
            colour: black
            line: {kind: monofilament, strength: 12 lb}
            leader: {kind: fluorocarbon, strength: 25 lb, length: 1 m}
            presentation: by style
            cast: 18 m
            count_down: 3 s
            retrieve: {speed: 0.4 m/s}
            rigging: {knot: snug, shank_share: 40 %}
        """.With("REFLECTANCE", Reflectance).With("TIDE", Points).With("BOX", Box);

    // A white plate corrects a Secchi depth, so it is for scenarios that give one.
    private static readonly string WithPlate = Rest.With("SECCHI", "  - {plate_gone: 5 ft}\n  - {lure_gone: 4 ft}");
    private static readonly string WithoutPlate = Rest.With("SECCHI\n", "");

    /// <summary>The scenarios: the same but for the forms of clarity, light and strike zone.</summary>
    public static IReadOnlyList<string> Texts { get; } =
    [
        Start + "  clarity: {secchi: 6 ft, water: coastal green}\n  light: {sun_elevation: 40 deg, cloud: 30 %}\n  strike_zone: {above_bottom: [1 ft, 4 ft]}\n" + WithPlate,
        Start + "  clarity: {jerlov: 5C}\n  light: {date: 2026-06-14, time: \"06:20\", state: Florida, utc_offset: -4 h, latitude: 27.5 deg, longitude: -82.6 deg}\n  strike_zone: {depth: [3 ft, 8 ft]}\n" + WithoutPlate.With("shank: 40 mm", "shank_share: 40 %").With("rod_tip_height: 4 ft", "stand: boat"),
        Start.With("depth: 12 ft", "bottom_profile: {shape: hole, at: 20 ft, width: 20 ft, near_depth: 6 ft, middle_depth: 12 ft, far_depth: 8 ft}") + "  bottom_stretches: [{from: 0 ft, to: 20 ft, bottom: mud, grass_height: 0 ft, name: by the bank}]\n  structure: [{kind: posts, from: 20 ft, to: 24 ft, left: 3 ft, width: 2 ft, pass: keep off, reach: 4 ft, shade: [20 ft, 26 ft]}, {kind: overhang, from: 30 ft, right: 3 ft, height: 2 ft}]\n  clarity: {chlorophyll: 5 mg/m3, dissolved_440: 0.8 1/m, mineral: 3 g/m3}\n  light: {sun_elevation: 40 deg}\n  strike_zone: {depth: [3 ft, 8 ft]}\n" + WithoutPlate.With(Points, Harmonic),
    ];

    /// <summary>A scenario without what was seen, which must fit the water that a test changes.</summary>
    public static string WithoutSeen(string text)
    {
        int from = text.IndexOf("\nseen:\n", StringComparison.Ordinal), to = text.IndexOf("\ncompare:\n", StringComparison.Ordinal);
        return text.Remove(from, to - from);
    }

    /// <summary>Every key of the grammar as a path, lists as [].</summary>
    public static IReadOnlySet<string> OfGrammar() =>
        ScenarioGrammar.Root.WithParts().Select(part => part.Path).Where(path => path.Length > 0 && !path.EndsWith("[]", StringComparison.Ordinal)).ToHashSet(StringComparer.Ordinal);
}
