using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using LureSim.Cli;
using LureSim.Decision;
using LureSim.Decision.Inverse;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Stepping;
using Xunit.Abstractions;
using YamlDotNet.Serialization;

namespace LureSim.Tests.Scenarios;

/// <summary>
/// The least and the greatest value of every key: what the reader takes, the model computes. The scenarios that use every key, on a short cast, have one value
/// changed at a time.
/// </summary>
public class EndsOfRangesTests(ITestOutputHelper log)
{
    // The questions take many runs each: a seeded choice of the ends is asked about with the other tests, all where LURESIM_ALL_ENDS is 1.
    private const int Seed = 20260614;
    private const int ChosenQuestions = 3;

    private static readonly Lazy<IReadOnlyList<End>> AllEnds = new(() => [.. EveryKey.Texts.Select(EveryKey.WithoutSeen).SelectMany((text, i) => EndsOf(text, i)).DistinctBy(end => (end.Place, end.Key))]);

    // No other key can make room for these: grass is lower than the water is deep, and the greatest depth is that of the grammar.
    private static readonly string[] Never = ["spot.grass_height, most"];

    [Fact]
    public void The_reader_takes_both_ends_of_every_quantity()
    {
        Dictionary<string, string> refused = [];
        HashSet<string> taken = [];
        foreach (End end in AllEnds.Value)
        {
            ScenarioReading reading = ScenarioReader.ReadText(end.Text, "end.yaml");
            if (reading.IsValid)
                taken.Add(end.Key);
            else
                refused[end.Key] = $"{end.Name}: {reading.Problems[0]}";
        }

        IEnumerable<string> missing = QuantitiesOfGrammar().SelectMany(path => (string[])[$"{path}, least", $"{path}, most"]).Where(key => !taken.Contains(key)).Except(Never);
        Assert.True(!missing.Any(), string.Join("\n", missing.Select(key => refused.GetValueOrDefault(key, $"{key} is in no scenario"))));
    }

    [Fact]
    public void A_path_is_computed_for_what_the_reader_takes()
    {
        List<string> wrong = [];
        foreach (End end in AllEnds.Value.Where(end => end.IsOfRig))
        {
            if (ScenarioReader.ReadText(end.Text, "end.yaml").Scenario is not { } scenario)
                continue;
            long start = TimeProvider.System.GetTimestamp();
            try
            {
                Candidate candidate = Trial.Run(scenario, end.RigOf(scenario), new SimulationOptions());
                if (!candidate.Track.X.Concat(candidate.Track.Z).All(double.IsFinite))
                    wrong.Add($"{end.Name}: the track holds numbers that are none");
                if (candidate.Track.Status != SimulationStatus.Completed)
                    log.WriteLine($"  {TrackWords.EndOrStatus(candidate.Track)}");
            }
            catch (Exception exception)
            {
                wrong.Add($"{end.Name}: path: {exception.GetType().Name}: {exception.Message} {exception.StackTrace?.Split('\n')[0]}");
            }

            log.WriteLine($"{end.Name}: {TimeProvider.System.GetElapsedTime(start).TotalSeconds:0.00} s");
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    [Fact]
    public void The_count_down_and_the_questions_answer_what_the_reader_takes()
    {
        var random = new Random(Seed);
        End[] ends = [.. AllEnds.Value.Where(end => end.IsOfRig)];
        if (Environment.GetEnvironmentVariable("LURESIM_ALL_ENDS") != "1")
        {
            random.Shuffle(ends);
            ends = [.. ends.Take(ChosenQuestions)];
        }

        List<string> wrong = [];
        foreach (End end in ends)
        {
            if (ScenarioReader.ReadText(end.Text, "end.yaml").Scenario is not { } scenario)
                continue;
            long start = TimeProvider.System.GetTimestamp();
            JigHead[] one = [scenario.Tackle.JigHeads[1]];
            Scenario small = scenario with { Tackle = scenario.Tackle with { JigHeads = one } };
            try
            {
                FallTable table = new Pipeline().Fall(small, new Rig(one[0], small.Tackle.Bodies.First(body => body.NeedsHead), small.Presentations[end.Presentation]), UnitSystem.Us, CancellationToken.None);
                if (table.Columns.Any(column => !double.IsFinite(column.TerminalSpeed)))
                    wrong.Add($"{end.Name}: fall: a speed that is none");
                IReadOnlyList<InverseAnswer> answers = new Pipeline().Ask(small, new Rig(one[0], small.Tackle.Bodies.First(body => body.NeedsHead), small.Presentations[end.Presentation]), one, null, new Progress<double>(), CancellationToken.None);
                Assert.All(answers, answer => Assert.NotEmpty(InverseWords.Answer(answer, scenario.Tackle.Reel, new UnitFormat(UnitSystem.Us))));
            }
            catch (Exception exception)
            {
                wrong.Add($"{end.Name}: {exception.GetType().Name}: {exception.Message} {exception.StackTrace?.Split('\n')[0]}");
            }

            log.WriteLine($"{end.Name}: {TimeProvider.System.GetElapsedTime(start).TotalSeconds:0.00} s");
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    private static List<string> QuantitiesOfGrammar()
    {
        List<string> paths = [];
        Visit(ScenarioGrammar.Root, "");
        return [.. paths.Distinct()];

        void Visit(GrammarValue value, string path)
        {
            switch (value)
            {
                case MapValue map:
                    // The two rigs to compare have the keys of the tackle box; what was seen must fit box, cast and water, whose checks are narrower (ObservationInputTests).
                    foreach (GrammarKey key in map.Keys.Where(key => key.Name is not ("compare" or "seen")))
                        Visit(key.Value, path.Length == 0 ? key.Name : $"{path}.{key.Name}");
                    break;
                case ListValue list:
                    Visit(list.Item, path + "[]");
                    break;
                case ShortOrMapValue either:
                    Visit(either.Map, path);
                    break;
                case QuantityValue or NumberValue or IntegerValue or ShareOrAmountValue:
                    paths.Add(path);
                    break;
                default:
                    break;
            }
        }
    }

    private static List<End> EndsOf(string text, int form)
    {
        object root = new DeserializerBuilder().Build().Deserialize<object>(text)!;
        ShortCast((Dictionary<object, object>)root);
        MoreForms((Dictionary<object, object>)root, form);
        List<End> ends = [];
        Visit(ScenarioGrammar.Root, root, "", "", _ => { });
        return ends;

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
                case ShortOrMapValue either when node is Dictionary<object, object>:
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
        ["presentations[].cast, least"] = ShortLine,
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
    private sealed record End(string Name, string Path, string Place, string Key, string Text)
    {
        /// <summary>True if a single run goes by this key.</summary>
        public bool IsOfRig => Path.StartsWith("spot.", StringComparison.Ordinal) && !Path.StartsWith("spot.light", StringComparison.Ordinal) && !Path.StartsWith("spot.clarity", StringComparison.Ordinal)
            || Path.StartsWith("tackle.", StringComparison.Ordinal)
            || Path.StartsWith("presentations[]", StringComparison.Ordinal);

        /// <summary>The presentation that holds the value; the first for a key of another part.</summary>
        public int Presentation => Index("presentations[") ?? 0;

        /// <summary>The rig that uses the value.</summary>
        public Rig RigOf(Scenario scenario)
        {
            LureBody body = scenario.Tackle.Bodies[Index("tackle.bodies[") ?? 0];
            return new Rig(body.NeedsHead ? scenario.Tackle.JigHeads[Index("tackle.jig_heads[") ?? 1] : JigHead.None(body), body, scenario.Presentations[Presentation]);
        }

        private int? Index(string list) => Place.StartsWith(list, StringComparison.Ordinal) ? int.Parse(Place[list.Length..Place.IndexOf(']', list.Length)], CultureInfo.InvariantCulture) : null;
    }
}
