using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;
using YamlDotNet.Serialization;

namespace LureSim.Fuzz;

/// <summary>The scenarios that use every key, on a short cast, each with one value at an end of its range.</summary>
internal static class EndsOfRanges
{
    private static readonly Lazy<IReadOnlyList<End>> Found = new(() => [.. EveryKey.Texts.Select(EveryKey.WithoutSeen).SelectMany((text, i) => EndsOf(text, i, "")).DistinctBy(end => (end.Place, end.Key))]);

    // What computes, the quickest first, each with what makes it quick.
    private static readonly string[][] Commands =
    [
        ["cast"], ["fall", "--samples", "0"], ["colours", "--samples", "0"], ["path", "--samples", "0", "--csv"], ["action", "--samples", "0"], ["teach"], ["card", "--samples", "0"],
        ["retrieve", "--samples", "0", "--runs", "12"], ["ask", "--samples", "0", "--json"], ["plan", "--samples", "0"], ["tide", "--samples", "0"], ["trip", "--samples", "0"],
    ];

    // The ends of what was seen and of the rigs to compare, which the other ends do without, through the commands that are for them.
    private static readonly (string Part, string[][] Commands)[] Parts =
    [
        ("seen", [["fall", "--samples", "0"], ["path", "--samples", "0", "--csv"], ["plan", "--samples", "4"], ["card", "--samples", "4"]]),
        ("compare", [["compare", "--json"]]),
    ];

    private static readonly Lazy<IReadOnlyList<(End End, string[] Command)>> Paired = new(() =>
    [
        .. Commands.SelectMany(command => All.Where(IsRead).Select(end => (end, command))),
        .. Parts.SelectMany(part => part.Commands.SelectMany(command => Of(part.Part).Where(IsRead).Select(end => (end, command)))),
    ]);

    /// <summary>All of them but those of what was seen and of the rigs to compare.</summary>
    public static IReadOnlyList<End> All => Found.Value;

    /// <summary>Every end that the reader takes, with every command that computes: the quick commands first, and those of what was seen and compared last.</summary>
    public static IReadOnlyList<(End End, string[] Command)> Pairs => Paired.Value;

    // The first scenario has all of what was seen, on its own casts, which that must fit.
    private static List<End> Of(string part) => EndsOf(EveryKey.Texts[0], 0, part);

    private static bool IsRead(End end) => ScenarioReader.ReadText(end.Text, "end.yaml").IsValid;

    private static List<End> EndsOf(string text, int form, string part)
    {
        object root = new DeserializerBuilder().Build().Deserialize<object>(text)!;
        if (part != "seen")
            ShortCast((Dictionary<object, object>)root);
        if (part == "compare")
            ((Dictionary<object, object>)root).Remove("seen");
        if (part.Length == 0)
            MoreForms((Dictionary<object, object>)root, form);
        List<End> ends = [];
        Visit(ScenarioGrammar.Root, root, "", "", _ => { });
        return [.. ends.Where(end => end.Path.StartsWith(part, StringComparison.Ordinal))];

        void Visit(GrammarValue grammar, object node, string path, string place, Action<object> set)
        {
            switch (grammar)
            {
                case MapValue map when node is Dictionary<object, object> keys:
                    foreach (GrammarKey key in map.Keys.Where(key => keys.ContainsKey(key.Name)))
                        Visit(key.Value, keys[key.Name], Join(path, key.Name), Join(place, key.Name), value => keys[key.Name] = value);
                    break;
                case ListValue list when node is List<object> items:
                    for (int i = 0; i < items.Count; i++)
                    {
                        int at = i;
                        Visit(list.Item, items[at], path + "[]", $"{place}[{at}]", value => items[at] = value);
                    }

                    break;
                case ListOrMapValue either:
                    Visit(node is Dictionary<object, object> ? either.Map : either.List, node, path, place, set);
                    break;
                case ShortOrMapValue either when node is Dictionary<object, object>:
                    Visit(either.Map, node, path, place, set);
                    break;
                case PairsOrMapValue either when node is Dictionary<object, object>:
                    Visit(either.Map, node, path, place, set);
                    break;
                case ShortOrMapValue either:
                    Visit(either.Short, node, Join(path, either.Key), Join(place, either.Key), set);
                    break;
                case ShareOrAmountValue either:
                    Visit(either.For((string)node), node, path, place, set);
                    break;
                case QuantityValue quantity:
                    Both(Text(quantity, quantity.Minimum), Text(quantity, quantity.Maximum));
                    break;
                case NumberValue number:
                    Both(number.Minimum.ToString("R", CultureInfo.InvariantCulture), number.Maximum.ToString("R", CultureInfo.InvariantCulture));
                    break;
                case IntegerValue whole:
                    Both(whole.Minimum.ToString(CultureInfo.InvariantCulture), whole.Maximum.ToString(CultureInfo.InvariantCulture));
                    break;
                default:
                    break;
            }

            void Both(string least, string most)
            {
                foreach ((string value, string which) in ((string, string)[])[(least, "least"), (most, "most")])
                {
                    set(value);
                    string key = $"{path}, {which}";
                    var own = (Dictionary<object, object>)Copy(root);
                    // The stated bounds of the hands hold for every presentation.
                    if (path.StartsWith("presentations[]", StringComparison.Ordinal)) own.Remove("hands");
                    foreach ((string at, string? other) in Companions.Where(c => c.Key == key || c.Key == path).SelectMany(c => c.Value))
                        Put(own, at, other);
                    ends.Add(new End($"{(form == 0 ? "" : form + ": ")}{place} = {value}", path, place, key, Yaml(own)));
                }

                set(node);
            }
        }

        static string Join(string path, string key) => path.Length == 0 ? key : $"{path}.{key}";
    }

    // Casts that are computed in a fraction of a second.
    private static void ShortCast(Dictionary<object, object> root)
    {
        foreach (Dictionary<object, object> presentation in ((List<object>)root["presentations"]).Cast<Dictionary<object, object>>())
        {
            presentation["cast"] = "6 m";
            presentation["time_limit"] = "20 s";
            presentation["line_left"] = "2 m";
        }

        ((Dictionary<object, object>)((List<object>)root["presentations"])[0])["cast"] = Copy("{length: 6 m, with: 1/4 oz}", true);
    }

    // The forms of the spreads that the scenarios leave out, a part of them in each.
    private static void MoreForms(Dictionary<object, object> root, int form)
    {
        root.Remove("compare");
        if (form == 0)
            return;
        bool first = form == 1;
        root["uncertainty"] = Copy(
            $$"""
            {
              current: { {{(first ? "between: [0.2 m/s, 0.6 m/s]" : "triangular: [0.2 m/s, 0.4 m/s, 0.6 m/s]")}} },
              cast: { {{(first ? "triangular: [5 m, 6 m, 7 m]" : "between: [5 m, 7 m]")}} },
              retrieve_speed: { {{(first ? "triangular: [0.2 m/s, 0.4 m/s, 0.6 m/s]" : "plus_or_minus: 20 %")}} },
              depth: { {{(first ? "plus_or_minus: 10 %" : "between: [11 ft, 13 ft]")}} },
              clarity: { {{(first ? "between: [5 ft, 7 ft]" : "triangular: [5 ft, 6 ft, 7 ft]")}} },
              rod_tip_height: { {{(first ? "between: [3 ft, 5 ft]" : "triangular: [3 ft, 4 ft, 5 ft]")}} }
            }
            """,
            true);
    }

    private static object Copy(object node, bool isText = false) => new DeserializerBuilder().Build().Deserialize<object>(isText ? (string)node : Yaml(node))!;

    // What else must change for a value to make sense; null to leave a key out.
    private static readonly Dictionary<string, (string Place, string? Value)[]> Companions = new()
    {
        ["spot.depth, least"] = [("spot.grass_height", null), ("spot.strike_zone", "{depth: [0 m, 0.2 m]}"), ("tide", null), ("uncertainty", null)],
        ["spot.depth, most"] = [("tide", null), ("uncertainty", null)],
        ["spot.temperature, least"] = [("spot.salinity", "42 ppt")],
        ["spot.clarity.secchi, least"] = [("spot.clarity.water", "silty"), ("uncertainty", null)],
        ["spot.clarity.secchi, most"] = [("spot.clarity.water", "clear ocean"), ("uncertainty", null)],
        ["spot.bottom_profile.width, most"] = [("spot.bottom_profile.at", "0 m")],
        ["spot.bottom_profile.near_depth, most"] = [("spot.bottom_profile.shape", "hump"), ("spot.bottom_profile.middle_depth", "1 m"), ("tide", null), ("uncertainty", null)],
        ["spot.bottom_profile.far_depth, most"] = [("spot.bottom_profile.shape", "hump"), ("spot.bottom_profile.middle_depth", "1 m"), ("tide", null), ("uncertainty", null)],
        ["spot.bottom_profile.middle_depth, most"] = [("tide", null), ("uncertainty", null)],
        ["spot.structure[].to, least"] = [("spot.structure[0].from", "0 m")],
        ["spot.strike_zone.depth[], most"] = [("spot.depth", "60 m"), ("tide", null), ("uncertainty", null)],
        ["spot.strike_zone.above_bottom[], most"] = [("spot.depth", "60 m"), ("tide", null), ("uncertainty", null)],
        ["tackle.rod_tip_height, most"] = LongLine,
        ["tackle.line.strength"] = [("tackle.line.diameter", null)],
        ["tackle.line.diameter, least"] = [("tackle.line.strength", "1 lb")],
        ["tackle.line.diameter, most"] = [("tackle.line.kind", "monofilament"), ("tackle.line.strength", "100 lb")],
        ["tackle.leader.strength"] = [("tackle.leader.diameter", null)],
        ["tackle.leader.diameter, least"] = [("tackle.leader.kind", "braid"), ("tackle.leader.strength", "1 lb")],
        ["tackle.leader.diameter, most"] = [("tackle.leader.kind", "monofilament"), ("tackle.leader.strength", "100 lb")],
        ["tackle.bodies[].length, least"] = [("tackle.rigging", null), ("tackle.bodies[0].height", "10 mm"), ("tackle.bodies[1].lip", null)],
        ["tackle.bodies[].height, most"] = [("tackle.bodies[0].length", "0.3 m"), ("tackle.rigging", null)],
        ["tackle.bodies[].width, most"] = [("tackle.bodies[0].length", "0.3 m"), ("tackle.rigging", null)],
        ["tackle.bodies[].width, least"] = [("tackle.rigging", null)],
        ["tackle.rigging.shank, least"] = [("tackle.bodies[0].length", "70 mm")],
        ["tackle.rigging.shank, most"] = [("tackle.bodies[0].length", "0.3 m")],
        ["tackle.rigging.exit_sideways"] = ThickBody,
        ["tackle.rigging.exit_above"] = ThickBody,
        ["presentations[].cast.length, least"] = ShortLine,
        ["presentations[].line_left, least"] = [("tackle.rod_tip_height", "0.1 m"), .. NoSpread],
        ["presentations[].line_left, most"] = [.. Each("cast", "80 m"), .. NoSpread],
        ["presentations[].retrieve.handle_turns, least"] = [("tackle.reel.gear_ratio", "12"), ("tackle.reel.spool_diameter", "0.15 m"), ("presentations[2].moves[1].reel.handle_turns", "0.5 turns/s")],
        ["presentations[].retrieve.handle_turns, most"] = [("tackle.reel.gear_ratio", "2"), ("tackle.reel.spool_diameter", "0.015 m")],
        ["presentations[].moves[].reel.handle_turns, least"] = [("tackle.reel.gear_ratio", "12"), ("tackle.reel.spool_diameter", "0.15 m")],
        ["presentations[].moves[].reel.handle_turns, most"] = [("tackle.reel.gear_ratio", "2"), ("tackle.reel.spool_diameter", "0.015 m")],
        ["presentations[].pause.for, least"] = [("presentations[0].twitch", null)],
        ["presentations[].twitch.count, most"] = [("presentations[0].pause.for", "60 s")],
        ["presentations[].twitch.period, most"] = [("presentations[0].pause.for", "60 s")],
        ["presentations[].moves[].lower.height, most"] = [("tackle.rod_tip_height", "6 m"), .. LongLine],
        ["tide.constituents[].amplitude"] = [("spot.depth", "40 m"), ("uncertainty", null)],
        ["tide.level"] = [("spot.depth", "40 m"), ("uncertainty", null)],
        ["tide[].depth_change"] = [("spot.depth", "40 m"), ("uncertainty", null)],
    };

    private static (string Place, string? Value)[] NoSpread => [("uncertainty", null), ("tide", null)];

    private static (string Place, string? Value)[] LongLine => [.. Each("cast", "12 m"), .. Each("line_left", "7 m"), .. NoSpread];

    private static (string Place, string? Value)[] ShortLine => [.. Each("line_left", "1.5 m"), ("tackle.rod_tip_height", "1 m"), .. NoSpread];

    private static (string Place, string? Value)[] ThickBody => [("tackle.bodies[0].length", "100 mm"), ("tackle.bodies[0].height", "40 mm"), ("tackle.bodies[0].width", "40 mm")];

    private static IEnumerable<(string Place, string? Value)> Each(string key, string value) => Enumerable.Range(0, 3).Select(i => ($"presentations[{i}].{key}", (string?)value));

    private static void Put(Dictionary<object, object> root, string place, string? value)
    {
        object node = root;
        string[] parts = place.Replace("[", ".[", StringComparison.Ordinal).Split('.');
        foreach (string part in parts[..^1])
            node = part[0] == '[' ? ((List<object>)node)[int.Parse(part[1..^1], CultureInfo.InvariantCulture)] : ((Dictionary<object, object>)node)[part];
        var map = (Dictionary<object, object>)node;
        if (value is null)
            map.Remove(parts[^1]);
        else
            map[parts[^1]] = Copy(value, true);
    }

    // The value in the unit in which it takes the fewest digits, inside its range as written.
    private static string Text(QuantityValue quantity, double value)
    {
        for (int decimals = 0; decimals <= 9; decimals++)
        {
            foreach (UnitOfMeasure unit in UnitTable.Of(quantity.Kind).Units)
            {
                string text = unit.FromSi(value).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
                double back = unit.ToSi(double.Parse(text, CultureInfo.InvariantCulture));
                if (back >= quantity.Minimum && back <= quantity.Maximum && Math.Abs(back - value) <= 1e-6 * Math.Abs(value))
                    return $"{text} {unit.Symbol}";
            }
        }

        throw new InvalidOperationException($"No unit gives {value} of {quantity.Kind} inside its range.");
    }

    // Flow style with every value in quotes where YAML could read it otherwise.
    private static string Yaml(object node) => node switch
    {
        Dictionary<object, object> map => "{" + string.Join(", ", map.Select(pair => $"{pair.Key}: {Yaml(pair.Value)}")) + "}",
        List<object> list => "[" + string.Join(", ", list.Select(Yaml)) + "]",
        string plain when plain.Length > 0 && plain.All(c => char.IsAsciiLetterOrDigit(c) || c is ' ' or '.' or '/' or '-' or '%') && !plain.StartsWith('-') => plain,
        _ => JsonSerializer.Serialize(node, Relaxed),
    };

    private static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A scenario with one value at an end of its range.</summary>
    /// <param name="Name">Place and value.</param>
    /// <param name="Path">Path in the grammar, lists as [].</param>
    /// <param name="Place">Path in the scenario.</param>
    /// <param name="Key">Path in the grammar and which end.</param>
    /// <param name="Text">The scenario.</param>
    internal sealed record End(string Name, string Path, string Place, string Key, string Text)
    {
        /// <summary>True if a single run goes by this key.</summary>
        public bool IsOfRig => Path.StartsWith("spot.", StringComparison.Ordinal) && !Path.StartsWith("spot.light", StringComparison.Ordinal) && !Path.StartsWith("spot.clarity", StringComparison.Ordinal)
            || Path.StartsWith("tackle.", StringComparison.Ordinal)
            || Path.StartsWith("presentations[]", StringComparison.Ordinal);

        /// <summary>The presentation that holds the value; the first for a key of another part.</summary>
        public int Presentation => Index("presentations[") ?? 0;

        /// <summary>
        /// The scenario with the one presentation, the heads and the baits that the value needs, without the parts that have nothing to do with it, and with the bait whose
        /// action is the quickest to compute: a fraction of a second a command. The whole where it holds no longer without the rest.
        /// </summary>
        /// <param name="command">The command that it is for.</param>
        public string Small(string command)
        {
            var root = (Dictionary<object, object>)Copy(Text, true);
            Keep(root, "presentations", [Presentation]);
            if (root["tackle"] is Dictionary<object, object> tackle)
            {
                Keep(tackle, "jig_heads", [Index("tackle.jig_heads[") ?? 1]);

                // Where the value is none of the lure's, a spoon does for what computes the action many times over.
                bool spoon = command is "action" or "retrieve" or "trip" && !((string[])["tackle.jig_heads", "tackle.bodies", "tackle.rigging"]).Any(part => Path.StartsWith(part, StringComparison.Ordinal));
                Keep(tackle, "bodies", spoon ? [2] : [.. new[] { 0, Index("tackle.bodies[") ?? 0 }.Distinct()]);
                if (!spoon && Path != "tackle.bodies[].length" && tackle.GetValueOrDefault("bodies") is List<object> and [Dictionary<object, object> bait, ..])
                    bait["profile"] = "soft jerkbait";
                foreach (string part in (string[])["include", "measured_colours", "patterns"])
                    tackle.Remove(part);
            }

            if (command is not ("tide" or "trip") && !Path.StartsWith("tide", StringComparison.Ordinal))
                root.Remove("tide");
            if (!Path.StartsWith("hands", StringComparison.Ordinal))
            {
                root.Remove("hands");
                root["fixed"] = new List<object> { "all" };
            }

            foreach (string part in (string[])["forage", "uncertainty"])
            {
                if (!Path.StartsWith(part, StringComparison.Ordinal))
                    root.Remove(part);
            }

            string small = Yaml(root);
            return ScenarioReader.ReadText(small, "small.yaml").IsValid ? small : Text;

            static void Keep(Dictionary<object, object> map, string list, int[] items)
            {
                if (map.GetValueOrDefault(list) is List<object> all)
                    map[list] = items.Where(item => item < all.Count).Select(item => all[item]).ToList();
            }
        }

        /// <summary>The rig that uses the value.</summary>
        public Rig RigOf(Scenario scenario)
        {
            LureBody body = scenario.Tackle.Bodies[Index("tackle.bodies[") ?? 0];
            return new Rig(body.NeedsHead ? scenario.Tackle.JigHeads[Index("tackle.jig_heads[") ?? 1] : JigHead.None(body), body, scenario.Presentations[Presentation]);
        }

        private int? Index(string list) => Place.StartsWith(list, StringComparison.Ordinal) ? int.Parse(Place[list.Length..Place.IndexOf(']', list.Length)], CultureInfo.InvariantCulture) : null;
    }
}
