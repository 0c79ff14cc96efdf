using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>One mistake at a time, each with the place, the words and the way out that it must give.</summary>
public class BadScenarioTests
{
    // Text in the valid scenario, what replaces it, key of the problem, part of the message, part of the fix.
    public static TheoryData<string, string, string, string, string> Mistakes => new()
    {
        // Keys.
        { "title: Test channel", "titel: Test channel", "titel", "unknown key", "write \"title\"" },
        { "title: Test channel\n", "", "title", "missing", "add \"title:" },
        { "title: Test channel", "title: a\nweather: fine", "weather", "unknown key", "remove the key" },
        { "  bottom: shell", "  botom: shell", "spot.botom", "unknown key", "write \"bottom\"" },
        { "  grass_height: 1 ft", "  grass: 1 ft", "spot.grass", "unknown key", "write \"grass_height\"" },
        { "  temperature: 68 degF", "  temp: 68 degF", "spot.temp", "unknown key", "write \"temperature\"" },
        { "  salinity: 24 ppt", "  Salinity: 24 ppt", "spot.Salinity", "unknown key", "write \"salinity\"" },
        { "sun_elevation: 40 deg", "sun-elevation: 40 deg", "spot.light.sun-elevation", "unknown key", "write \"sun_elevation\"" },
        { "bottom: shell", "bottom: shell\n  bottom: mud", "spot.bottom", "given twice, first on line 7", "remove one" },
        { "title: Test channel", "title: Test channel\ntitle: Again", "title", "given twice", "remove one" },
        { "salinity: 24 ppt", "? [a, b]\n  : 1\n  salinity: 24 ppt", "spot", "plain word", "quotes" },
        { "  target: red drum\n", "", "spot.target", "missing", "add \"target:" },
        { "speed: 1 kn, ", "", "spot.current.speed", "missing", "add \"speed:" },
        { "above_bottom: [1 ft, 4 ft]", "{}", "spot.strike_zone", "one of the keys depth or above_bottom is missing", "add" },
        { "above_bottom: [1 ft, 4 ft]", "above_bottom: [1 ft, 4 ft]\n    depth: [1 ft, 4 ft]", "spot.strike_zone.depth", "above_bottom is given as well", "remove one" },
        { "retrieve: {speed: 0.4 m/s}", "retrieve: {speed: 0.4 m/s, handle_turns: 1 turns/s}", "presentations[0].retrieve.handle_turns", "speed is given as well", "remove one" },
        { "retrieve: {speed: 0.4 m/s}", "retrieve: {}", "presentations[0].retrieve", "is missing", "add" },

        // Kinds of node.
        { "light: {sun_elevation: 40 deg, cloud: 30 %}", "light: bright", "spot.light", "keys with values", "sun_elevation" },
        { "depth: 12 ft", "depth: [12 ft]", "spot.depth", "single value", "8 ft" },
        { "depth: 12 ft", "depth: {a: 12 ft}", "spot.depth", "single value", "8 ft" },
        { "above_bottom: [1 ft, 4 ft]", "above_bottom: 1 ft", "spot.strike_zone.above_bottom", "a list", "write \"[1 m, 2 m]\"" },
        { "colours: [white, dark purple, \"#7FFF00\"]", "colours: white", "tackle.colours", "a list", "- " },
        { "reel: {gear_ratio: 6.2, spool_diameter: 45 mm}", "reel: [6.2, 45 mm]", "tackle.reel", "keys with values", "gear_ratio" },
        { "depth: 12 ft", "depth:", "spot.depth", "the value is missing", "8 ft" },
        { "- unweighted", "- [1/4 oz]", "tackle.jig_heads[0]", "single value", "1/4 oz" },
        { "title: Test channel", "title: 2024", "title", "a text is expected", "\"2024\"" },
        { "title: Test channel", "title: true", "title", "a text is expected", "\"true\"" },
        { "title: Test channel", "title: ''", "title", "empty", "words" },
        { "name: hop", "name: \"a\\nb\"", "presentations[1].name", "line breaks", "remove" },
        { "name: hop", "name: abcdefghijabcdefghijabcdefghijabcdefghijabcdefghijabcdefghijabcdefghij", "presentations[1].name", "70 characters", "shorten" },

        { "- {weight: 1/4 oz, metal: tungsten, hook: 1.2 g}", "- {weight: 1/4, metal: tungsten}", "tackle.jig_heads[2].weight", "no unit", "oz" },

        // Quantities.
        { "depth: 12 ft", "depth: 12", "spot.depth", "no unit", "m, cm, mm, ft, in, yd" },
        { "depth: 12 ft", "depth: '12'", "spot.depth", "no unit", "m, cm, mm, ft, in, yd" },
        { "depth: 12 ft", "depth: .nan", "spot.depth", "finite", "8 ft" },
        { "depth: 12 ft", "depth: 1e999", "spot.depth", "exponent", "in full" },
        { "depth: 12 ft", "depth: -12 ft", "spot.depth", "too small", "0.2 m to 60 m" },
        { "depth: 12 ft", "depth: 0 ft", "spot.depth", "too small", "0.2 m to 60 m" },
        { "depth: 12 ft", "depth: 2000 ft", "spot.depth", "too large", "0.2 m to 60 m" },
        { "depth: 12 ft", "depth: 12 Feet", "spot.depth", "write ft for Feet", "write \"12 ft\"" },
        { "length: 3.5 in", "length: 4\"", "tackle.bodies[0].length", "write in for", "write \"4 in\"" },
        { "depth: 12 ft", "depth: 12 kn", "spot.depth", "unit of speed", "use one of" },
        { "depth: 12 ft", "depth: 3,6 m", "spot.depth", "comma", "write \"3.6 m\"" },
        { "speed: 1 kn", "speed: 12 kn", "spot.current.speed", "too large", "0 m/s to 3 m/s" },
        { "direction: left", "direction: lefft", "spot.current.direction", "not a number", "write \"left\"" },
        { "direction: left", "direction: outgoing", "spot.current.direction", "not a number", "say to your right, to your left, toward you or away" },
        { "direction: left", "direction: north", "spot.current.direction", "not a number", "say to your right" },
        { "direction: left", "direction: 400 deg", "spot.current.direction", "too large", "360 deg" },
        { "salinity: 24 ppt", "salinity: 24", "spot.salinity", "no unit", "ppt" },
        { "salinity: 24 ppt", "salinity: 50 ppt", "spot.salinity", "too large", "42 ppt" },
        { "temperature: 68 degF", "temperature: 68", "spot.temperature", "no unit", "degF" },
        { "temperature: 68 degF", "temperature: 212 degF", "spot.temperature", "too large", "40 degC" },
        { "cloud: 30 %", "cloud: 130 %", "spot.light.cloud", "too large", "100 %" },
        { "cloud: 30 %", "cloud: 0.3", "spot.light.cloud", "no unit", "30 %" },
        { "sun_elevation: 40 deg", "sun_elevation: -95 deg", "spot.light.sun_elevation", "too small", "-90 deg to 90 deg" },
        { "strength: 10 lb}", "strength: 10}", "tackle.line.strength", "no unit", "lb" },
        { "strength: 10 lb}", "strength: 0 lb}", "tackle.line.strength", "too small", "N" },
        { "density: 1.1 g/cm3", "density: 0 g/cm3", "tackle.bodies[1].density", "too small", "800 kg/m3" },
        { "- 1/8 oz", "- 1/8", "tackle.jig_heads[1]", "no unit", "oz" },
        { "- 1/8 oz", "- 12 oz", "tackle.jig_heads[1]", "too large", "200 g" },
        { "- 1/8 oz", "- 0 oz", "tackle.jig_heads[1]", "too small", "0.5 g" },
        { "- unweighted", "- unwieghted", "tackle.jig_heads[0]", "not a number", "write \"unweighted\"" },
        { "count_down: 4 s", "count_down: 4 h", "presentations[1].count_down", "a unit of clock offset", "use one of" },
        { "count_down: 4 s", "count_down: 4 d", "presentations[1].count_down", "not a unit", "use one of" },
        { "count_down: to bottom", "count_down: to botom", "presentations[0].count_down", "not a number", "write \"to bottom\"" },
        { "cast: 60 ft", "cast: 600 ft", "presentations[0].cast", "too large", "80 m" },

        // Words, numbers and lists.
        { "bottom: shell", "bottom: clay", "spot.bottom", "unknown word", "hard, sand, mud, shell" },
        { "bottom: shell", "bottom: oystr", "spot.bottom", "unknown word", "write \"shell\"" },
        { "bottom: shell", "bottom: grass", "spot.bottom", "unknown word", "grass_height" },
        { "water: coastal green", "water: costal green", "spot.clarity.water", "unknown word", "write \"coastal green\"" },
        { "water: coastal green", "water: coastal_green", "spot.clarity.water", "unknown word", "write \"coastal green\"" },
        { "target: red drum", "target: redfsh", "spot.target", "unknown word", "write \"red drum\"" },
        { "target: red drum", "target: whale", "spot.target", "unknown word", "write one of" },
        { "kind: fluorocarbon", "kind: fluroo", "tackle.leader.kind", "unknown word", "write \"fluorocarbon\"" },
        { "metal: tungsten", "metal: tungstein", "tackle.jig_heads[2].metal", "unknown word", "write \"tungsten\"" },
        { "fall: tight line", "fall: sideways", "presentations[1].fall", "unknown word", "write one of" },
        { "gear_ratio: 6.2", "gear_ratio: 62", "tackle.reel.gear_ratio", "too large", "2 to 12" },
        { "gear_ratio: 6.2", "gear_ratio: '6.2'", "tackle.reel.gear_ratio", "number without unit", "without quotes" },
        { "gear_ratio: 6.2", "gear_ratio: fast", "tackle.reel.gear_ratio", "number without unit", "6.2" },
        { "gear_ratio: 6.2", "gear_ratio: .inf", "tackle.reel.gear_ratio", "number without unit", "6.2" },
        { "count: 2", "count: 2.5", "presentations[1].twitch.count", "whole number", "1" },
        { "count: 2", "count: 7", "presentations[1].twitch.count", "too large", "1 to 6" },
        { "count: 2", "count: 99999999999", "presentations[1].twitch.count", "whole number", "1" },
        { "above_bottom: [1 ft, 4 ft]", "above_bottom: [1 ft]", "spot.strike_zone.above_bottom", "1 item", "add" },
        { "above_bottom: [1 ft, 4 ft]", "above_bottom: [1 ft, 2 ft, 4 ft]", "spot.strike_zone.above_bottom", "3 items", "remove" },
        { "colours: [white, dark purple, \"#7FFF00\"]", "colours: []", "tackle.colours", "0 items", "add" },
        { "dark purple,", "darkpurple,", "tackle.colours[1]", "unknown colour", "write \"dark purple\"" },
        { "dark purple,", "smoke grya,", "tackle.colours[1]", "unknown colour", "write \"smoke grey\"" },
        { "\"#7FFF00\"", "\"#7FF\"", "tackle.colours[2]", "unknown colour", "six hex digits" },
        { "colours: [white, dark purple, \"#7FFF00\"]", "colours:\n    - white\n    - #7fff00", "tackle.colours[1]", "missing", "quotes" },

        // Checks between keys.
        { "grass_height: 1 ft", "grass_height: 12 ft", "spot.grass_height", "as high as the water is deep", "lower" },
        { "above_bottom: [1 ft, 4 ft]", "above_bottom: [4 ft, 1 ft]", "spot.strike_zone.above_bottom[0]", "higher edge comes first", "lower edge first" },
        { "above_bottom: [1 ft, 4 ft]", "above_bottom: [1 ft, 1 ft]", "spot.strike_zone.above_bottom[1]", "no height", "widen" },
        { "above_bottom: [1 ft, 4 ft]", "above_bottom: [1 ft, 13 ft]", "spot.strike_zone.above_bottom[1]", "outside the water", "correct" },
        { "above_bottom: [1 ft, 4 ft]", "depth: [1 ft, 13 ft]", "spot.strike_zone.depth[1]", "outside the water", "correct" },
        { "above_bottom: [1 ft, 4 ft]", "depth: [3 ft, 1 ft]", "spot.strike_zone.depth[0]", "deeper edge comes first", "upper edge first" },
        { "above_bottom: [1 ft, 4 ft]", "depth: [-1 ft, 3 ft]", "spot.strike_zone.depth[0]", "too small", "0 m to 60 m" },
        { "temperature: 68 degF", "temperature: -1.9 degC", "spot.temperature", "ice", "correct" },
        { "secchi: 6 ft", "secchi: 110 ft", "spot.clarity.secchi", "not this clear", "correct" },
        { "secchi: 6 ft, water: coastal green", "secchi: 1 ft, water: clear ocean", "spot.clarity.secchi", "not this murky", "correct" },
        { "diameter: 0.4 mm", "diameter: 0.04 mm", "tackle.leader.diameter", "about 0.4 mm", "correct the diameter" },
        { "height: 16 mm", "height: 149 mm", "tackle.bodies[1].height", "more than the length", "correct the height" },
        { "- 1/8 oz", "- 1/4 oz\n    - 1/4 oz", "tackle.jig_heads[2]", "same jig head is on line", "remove" },
        { "dark purple,", "white,", "tackle.colours[1]", "same colour", "remove" },
        { "name: hop", "name: Slow and steady", "presentations[1].name", "same name", "remove" },
        { "line_left: 4 m", "line_left: 25 m", "presentations[1].line_left", "as long as the cast", "cast farther" },
        { "line_left: 4 m", "line_left: 1 m", "presentations[1].line_left", "hang in the air", "leave more line" },
        { "cast: 60 ft", "cast: 2.5 m", "presentations[0].cast", "no longer than the line left", "cast farther" },
        { "handle_turns: 0.5 turns/s", "handle_turns: 5 turns/s", "presentations[1].retrieve.handle_turns", "with this reel", "another rate" },
        { "    pause: {every: 3 s, for: 2 s}\n", "", "presentations[1].twitch", "no pause", "pause" },
        { "count: 2", "count: 4", "presentations[1].twitch.count", "longer than the pause", "pause longer" },
        { "height: 1 ft, period: 0.6 s", "height: 6 ft, period: 0.2 s", "presentations[1].twitch.height", "rod tip would move", "lift less" },

        // YAML itself.
        { "depth: 12 ft", "depth: &d 12 ft", "spot.depth", "anchors", "remove the anchor" },
        { "depth: 12 ft", "depth: !!str 12 ft", "spot.depth", "tags", "remove the tag" },
        { "  bottom: shell", "\tbottom: shell", "(file)", "a tab", "spaces" },
        { "reel: {gear_ratio: 6.2, spool_diameter: 45 mm}", "reel: {gear_ratio: 6.2, spool_diameter: 45 mm", "(file)", "not YAML", "check" },
        { "title: Test channel", "title: \"Test channel", "(file)", "not YAML", "check" },
        { "title: Test channel", "title: a: b", "(file)", "a colon in a value", "\"a: b\"" },
        { "name: hop", "name: hop: fast", "(file)", "a colon in a value", "\"hop: fast\"" },
        { "\"#7FFF00\"]", "#7FFF00]", "(file)", "an unquoted #", "\"#7FFF00\"" },
        { "    line_left: 4 m", "    line_left: 4 m\n---\ntitle: b", "(file)", "more than one document", "file of its own" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_is_reported_once_with_its_place_and_a_way_out(string old, string replacement, string key, string message, string fix)
    {
        string text = TestScenario.With(old, replacement);
        IReadOnlyList<ScenarioProblem> problems = TestScenario.Problems(text);
        Assert.True(problems.Count == 1, string.Join('\n', problems));
        ScenarioProblem problem = problems[0];
        Assert.Equal(key, problem.Key);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(fix, problem.Fix, StringComparison.Ordinal);
        Assert.InRange(problem.Line, 1, text.Count(character => character == '\n') + 1);
    }

    [Fact]
    public void There_are_at_least_sixty_mistakes() => Assert.True(Mistakes.Count >= 60);

    [Theory]
    [InlineData("", "empty")]
    [InlineData("# only a remark\n", "empty")]
    [InlineData("---\n...\n", "empty")]
    [InlineData("null", "empty")]
    [InlineData("just words", "keys with values")]
    [InlineData("[1, 2]", "keys with values")]
    [InlineData("a: *missing", "aliases")]
    [InlineData("a: &a [*a]", "anchors")]
    [InlineData("%YAML 9.9\n---\na: b", "")]
    [InlineData("\u0001", "control character 1")]
    [InlineData("title: \"\\ud800\"", "")]
    public void A_text_that_is_no_scenario_is_refused(string text, string message) =>
        Assert.Contains(TestScenario.Problems(text), problem => problem.Message.Contains(message, StringComparison.Ordinal));

    [Fact]
    public void Aliases_that_multiply_are_refused_at_once()
    {
        string text = "a: &a [x, x, x, x, x, x, x, x, x]\n" + string.Concat(Enumerable.Range(0, 9).Select(index => $"{(char)('b' + index)}: &{(char)('b' + index)} [{string.Join(", ", Enumerable.Repeat("*" + (char)('a' + index), 9))}]\n"));
        Assert.NotEmpty(TestScenario.Problems(text));
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    public void Deep_nesting_is_refused(string opening)
    {
        string text = string.Concat(Enumerable.Repeat(opening, 50_000));
        Assert.NotEmpty(TestScenario.Problems(text));
    }

    [Theory]
    [InlineData("2 lb", "8.9 N (2 lb)")]
    [InlineData("4 lb", "17.8 N (4 lb)")]
    public void A_lure_too_heavy_for_its_line_is_refused(string strength, string shown)
    {
        string text = TestScenario.With("strength: 10 lb", "strength: " + strength).Replace("- 1/8 oz", "- 7 oz", StringComparison.Ordinal);
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(text));
        Assert.Equal("tackle.jig_heads[1]", problem.Key);
        Assert.Contains("too heavy for the line of " + shown, problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{profile: spoon, length: 25 cm, width: 9 cm, thickness: 5 mm}", "4 lb", "spoon weighs 757 g")]
    [InlineData("{profile: spoon, length: 15 cm, width: 5 cm, thickness: 2 mm, metal: lead}", "2 lb", "spoon weighs 136 g")]
    [InlineData("{profile: hard twitchbait, length: 25 cm, height: 5 cm, width: 4 cm}", "4 lb", "hard twitchbait weighs 264 g")]
    public void A_hard_lure_too_heavy_for_its_line_is_refused(string lure, string strength, string weighs)
    {
        string text = TestScenario.With("strength: 10 lb", "strength: " + strength).Replace("{profile: paddle tail, length: 3.5 in}", lure, StringComparison.Ordinal);
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(text));
        Assert.Equal("tackle.bodies[0].length", problem.Key);
        Assert.StartsWith("the " + weighs, problem.Message, StringComparison.Ordinal);
        Assert.Contains("too heavy for the line of", problem.Message, StringComparison.Ordinal);
        Assert.Empty(ScenarioReader.ReadText(text.Replace("strength: " + strength, "strength: 40 lb", StringComparison.Ordinal), "test.yaml").Problems);
    }

    [Fact]
    public void The_line_of_a_compared_rig_is_held_to_its_own_lure()
    {
        const string Rigs = "\ncompare:\n  - {name: mine, jig_head: 3 oz, line: {kind: braid, strength: 2 lb}}\n  - {name: hers, jig_head: 1/8 oz, line: {kind: braid, strength: 2 lb}}\n";
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(TestScenario.Text + Rigs));
        Assert.StartsWith("compare[0].jig_head", problem.Key, StringComparison.Ordinal);
        Assert.Contains("too heavy for the line of", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_leader_can_be_the_weakest_part()
    {
        string text = TestScenario.With("strength: 20 lb", "strength: 2 lb").Replace("diameter: 0.4 mm", "diameter: 0.13 mm", StringComparison.Ordinal).Replace("- 1/8 oz", "- 7 oz", StringComparison.Ordinal);
        Assert.Contains("the leader of", Assert.Single(TestScenario.Problems(text)).Message, StringComparison.Ordinal);
    }
}
