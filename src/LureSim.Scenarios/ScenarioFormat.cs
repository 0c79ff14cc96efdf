using System.Text;

namespace LureSim.Scenarios;

/// <summary>The reference of the scenario format in Markdown, written from the grammar that the reader follows.</summary>
public static class ScenarioFormat
{
    /// <summary>Name of the file in docs that holds the reference.</summary>
    public const string FileName = "scenario-format.md";

    /// <summary>The reference as text, the same on every machine.</summary>
    public static string ToMarkdown()
    {
        var text = new StringBuilder();
        text.Append(
            """
            # Scenario format

            <!-- Written by `luresim schema --reference`; change src/LureSim.Scenarios/ScenarioGrammar.cs instead of this file. -->

            A scenario is a YAML file of at most 1 MB that describes one spot, the tackle at hand and the presentations to
            compare. The files in `scenarios/` are commented examples. `luresim check FILE` reports every problem of a file at
            once, each with its line, its key, what is allowed and a way out; nothing else is run or written.

            An editor with a YAML language server completes keys and underlines mistakes if the file starts with

            ```yaml
            # yaml-language-server: $schema=../docs/schema/luresim-scenario.schema.json
            ```

            ## Values

            A value carries its unit: `8 ft`, `1/4 oz`, `0.5 m/s`. A number without a unit is refused, because it could mean
            anything. Numbers are written with a decimal point (`0.25`), as a fraction (`3/16`) or as a whole number and a
            fraction (`1 1/4`); commas and exponents are refused. Units are case-sensitive. The strength of a line in `lb` is
            the force that lifts so many pounds. The names of a unit are read like the unit: `1 knot` is `1 kn`.

            | quantity | units | names of units | may be combined | example |
            | --- | --- | --- | --- | --- |

            """);
        foreach (QuantityUnits units in UnitTable.All)
            Row(text, units.Name, string.Join(", ", units.Units.Select(unit => Code(unit.Symbol))), string.Join(", ", units.Names.Keys.Select(Code)), string.Join(", ", units.Pairs.Select(pair => Code($"{pair.Major} {pair.Minor}"))), Code(units.Example));
        text.Append(
            """

            Directions are seen from above, anticlockwise from straight out, and say where the water, the
            wind or the boat goes *to*: `away` (0 deg), `left` (90 deg), `towards` (180 deg), `right` (270 deg). Straight
            out is a cast without `aim`: who faces that way has `left` on the left. A presentation with `aim` is
            cast in another direction, `aim: left` square to the left, and the current, the wind and the drift stay where they
            are. With a current that flows `away`, for example, `aim: towards` casts against it and `aim: 60 deg` down and
            across. The moves of the rod tip alone (`sweep`, `twitch`) are counted from the cast.

            A day is written year-month-day (`2026-06-14`), a time of the day in hours and minutes of the 24-hour clock
            (`"06:20"`). `utc_offset` is what the local clock is ahead of universal time (UTC), summer time included:
            `-4 h` means four hours behind. Latitudes are positive to the north, longitudes to the east: `-75 deg` is
            west of Greenwich.

            Everyday names are read as the word they stand for, and `luresim check` says so ("redfish: taken as red drum"). They are listed
            with the words below. Keys with a US and a British spelling are read in both: `colors` and `colours`.

            `clarity` and `light` may be given in several forms; the keys of exactly one form are given, all of them.

            Texts that YAML would take for a number or a truth value need quotes, and so do hex colours (`"#7fff00"`), because an
            unquoted `#` starts a remark. Anchors, aliases, tags and further documents in the same file are refused.

            ## Keys

            """);
        WriteMap(text, ScenarioGrammar.Root, "");
        text.Append(
            """

            ## Checks between keys

            - `depth` or `bottom_profile` is given. The points of a profile lie one behind the other and everywhere in the water;
              stretches do not overlap and begin within the longest cast.
            - The grass is lower than the water is deep, and the strike zone lies inside the water with its edges in order.
            - The water is not ice: sea water freezes at about -1.9 degC at 35 ppt, fresh water at 0 degC.
            - The Secchi depth fits the kind of water.
            - `utc_offset` is a multiple of a quarter of an hour.
            - The weakest of line and leader holds ten times the weight of each jig head with its hook and the heaviest soft body,
              of each hard lure, and of each rig to compare with its own line: a cast loads the line at least that much.
            - A given line diameter is within a factor of three of the common one for its kind and strength.
            - A body is no higher or wider than it is long.
            - The cast is longer than the leader and than the line left at the end, and that is at least the height of the rod tip.
            - Handle turns and the reel together give a retrieve speed of 0.02 m/s to 3 m/s.
            - Twitches need pauses, fit into them, and move the rod tip no faster than 12 m/s.
            - `style` and `moves` exclude each other. `pause` and `twitch` beside a style replace figures that the style has;
              beside `moves` they have no place.
            - Moves that repeat bring the rod tip back to where it began, and take line in, or there is a `time_limit`. The rod
              tip stays above the water and within 4 m of where it was, and moves no faster than 12 m/s. Only the last move may
              reel without end.
            - The line that is out when the lure hits the water fits on the spool.
            - No name, jig head, body or colour is given twice.
            - The edges of a spread are in order; the times of a tide run on and span at most a day, and its depth changes leave
              at least 0.2 m of water.

            ## What is filled in

            Line diameters, proportions and densities of bodies, hook masses and the moves of a `style` that a scenario does not
            give come from the tables in `src/LureSim/Data/tackle`. They are common practice or invented, as each table says in its header; give your
            own values where they matter.

            """);
        return text.ToString();
    }

    private static void WriteMap(StringBuilder text, MapValue map, string path)
    {
        text.Append("\n### ").Append(path.Length == 0 ? "The file" : Code(path)).Append("\n\n").Append(map.Doc).Append("\n\n| key | value | default | meaning |\n| --- | --- | --- | --- |\n");
        foreach (GrammarKey key in map.Keys)
        {
            string missing = key.OneOf is not null ? "exactly one of " + string.Join(", ", map.Keys.Where(other => other.OneOf == key.OneOf).Select(other => Code(other.Name)))
                : key.Form is not null ? $"in the form {string.Join(" + ", map.Forms.First(form => form.Key == key.Form).Select(other => Code(other.Name)))}"
                : key.Required ? "required" : key.Default!;
            Row(text, Code(key.Name) + (key.Alias is null ? "" : $" or {Code(key.Alias)}"), Describe(key.Value), missing, key.Doc);
        }

        foreach (GrammarKey key in map.Keys)
        {
            if (key.Value is WordValue { Words: var words } && words[0].Doc.Length > 0)
                WriteWords(text, key.Name, words);
        }

        foreach (GrammarKey key in map.Keys)
        {
            (IReadOnlyList<GrammarWord> known, EverydayNames names) = key.Value switch
            {
                WordValue word => (word.Words, word.Names),
                QuantityValue quantity => (quantity.Words, quantity.Names),
                ColourValue colour => ([.. colour.Names.Select(name => new GrammarWord(name, name, ""))], EverydayNames.Colour),
                ListValue { Item: ColourValue colour } => ([.. colour.Names.Select(name => new GrammarWord(name, name, ""))], EverydayNames.Colour),
                _ => ([], EverydayNames.None),
            };
            string[] rows = [.. known.Where(word => names.Of(word.Text).Any()).Select(word => $"{Code(word.Text)} ({string.Join(", ", names.Of(word.Text))})")];
            if (rows.Length > 0)
                text.Append("\nEveryday names of ").Append(Code(key.Name)).Append(": ").AppendJoin("; ", rows).Append(".\n");
        }

        foreach (GrammarKey key in map.Keys)
        {
            string inner = path.Length == 0 ? key.Name : $"{path}.{key.Name}";
            switch (key.Value)
            {
                case MapValue child:
                    WriteMap(text, child, inner);
                    break;
                case ShortOrMapValue either:
                    WriteMap(text, either.Map, inner);
                    break;
                case PairsOrMapValue either:
                    WriteMap(text, either.Map, inner);
                    break;
                case ListOrMapValue either:
                    WriteMap(text, (MapValue)either.List.Item, inner + "[]");
                    WriteMap(text, either.Map, inner);
                    break;
                case ListValue { Item: MapValue child }:
                    WriteMap(text, child, inner + "[]");
                    break;
                case ListValue { Item: ShortOrMapValue either }:
                    WriteMap(text, either.Map, inner + "[]");
                    break;
                default:
                    break;
            }
        }
    }

    private static void WriteWords(StringBuilder text, string key, IReadOnlyList<GrammarWord> words)
    {
        text.Append("\nWords of ").Append(Code(key)).Append(":\n\n");
        foreach (GrammarWord word in words)
            text.Append("- ").Append(Code(word.Text)).Append(": ").Append(word.Doc).Append('\n');
    }

    private static string Describe(GrammarValue value) => value switch
    {
        QuantityValue quantity => string.Join("", quantity.Words.Select(word => $"{Code(word.Text)}, ")) + (quantity.Words.Count > 0 ? "or " : "") + $"{UnitTable.Of(quantity.Kind).Name}, {QuantityText.Range(quantity.Kind, quantity.Minimum, quantity.Maximum)}",
        ShareOrAmountValue either => $"{Describe(either.Share)}, or {Describe(either.Amount)}",
        ShortOrMapValue { ShortIsEnough: false, Phrase: { } phrase } => $"a line such as {Code(phrase.Example)}, or keys, below",
        ShortOrMapValue { Short: var simple, Phrase: { } phrase } => $"{Describe(simple)}, or a line such as {Code(phrase.Example)}, or keys, below",
        ShortOrMapValue { Short: var simple } => $"{Describe(simple)}, or keys, below",
        WordValue word => string.Join(", ", word.Words.Select(entry => Code(entry.Text))),
        ColourValue colour => string.Join(", ", colour.Names.Select(Code)) + ", or a hex colour in quotes" + (colour.OrMeasured ? ", or the name of a measured colour" : ""),
        ListValue { Item: MapValue } list => $"{GrammarReader.Allowed(list)} groups of keys, below",
        ListValue { Item: ShortOrMapValue { ShortIsEnough: true, Short: var simple } } list => $"{GrammarReader.Allowed(list)}: {Describe(simple)}, or a group of keys, below",
        ListValue list => $"{GrammarReader.Allowed(list)}: {Describe(list.Item)}",
        ListOrMapValue either => $"{Describe(either.List)}, or keys, below",
        MapValue => "keys, below",
        PairsOrMapValue { Pairs: var pairs } => $"{pairs.Minimum} to {pairs.Maximum} pairs {pairs.FirstName}: {pairs.SecondName} such as {Code(pairs.Example)}, or keys, below",
        _ => GrammarReader.Allowed(value),
    };

    private static void Row(StringBuilder text, params string[] cells) =>
        text.Append("| ").AppendJoin(" | ", cells).Append(" |\n");

    private static string Code(string text) => $"`{text}`";
}
