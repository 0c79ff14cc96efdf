using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Quickenshtein;

namespace LureSim.Scenarios;

/// <summary>A value that has passed the grammar, with its place.</summary>
internal sealed record ReadValue(string Path, int Line, int Column)
{
    /// <summary>The text as written; empty for lists and mappings.</summary>
    public string Text { get; init; } = "";

    /// <summary>A number in SI, or NaN where the value is none.</summary>
    public double Number { get; init; } = double.NaN;

    /// <summary>The word that stood in place of a value, or null.</summary>
    public GrammarWord? Word { get; init; }

    /// <summary>Items of a list; refused items are left out.</summary>
    public IReadOnlyList<ReadValue> Items { get; init; } = [];

    /// <summary>Entries of a mapping; refused and missing ones are left out.</summary>
    public IReadOnlyDictionary<string, ReadValue> Entries { get; init; } = new Dictionary<string, ReadValue>();

    /// <summary>True if nothing in it was refused or is missing, so that a record can be built from it.</summary>
    public bool IsWhole { get; init; } = true;

    /// <summary>The value at a key, or null where it was not given or was refused.</summary>
    public ReadValue? this[string key] => Entries.GetValueOrDefault(key);

    /// <summary>The value at a key that the grammar requires; for whole values alone.</summary>
    /// <exception cref="InvalidOperationException">It is not there: a record is built from what is not whole.</exception>
    public ReadValue At(string key) => this[key] ?? throw new InvalidOperationException($"A record is built from {Path}, which lacks {key}.");

    /// <summary>The number at a key that the grammar requires; for whole values alone.</summary>
    /// <exception cref="InvalidOperationException">It is not there: a record is built from what is not whole.</exception>
    public double NumberAt(string key) => At(key).Number;
}

/// <summary>Walks a YAML tree along the grammar; what does not fit becomes a problem and is left out of the result.</summary>
internal sealed partial class GrammarReader(ProblemList problems)
{
    // YAML readers take such plain texts for numbers, truth values or nothing; as texts they need quotes.
    [GeneratedRegex(@"^(?:~|null|Null|NULL|true|True|TRUE|false|False|FALSE|[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?|0o[0-7]+|0x[0-9a-fA-F]+|[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN))$", RegexOptions.CultureInvariant)]
    private static partial Regex NotText();

    [GeneratedRegex(@"^[0-9]{1,6}(?:\.[0-9]{1,6})?(?<ratio>:1)?$", RegexOptions.CultureInvariant)]
    private static partial Regex PlainNumber();

    [GeneratedRegex("^#[0-9a-fA-F]{6}$", RegexOptions.CultureInvariant)]
    private static partial Regex HexColour();

    [GeneratedRegex(DatePattern, RegexOptions.CultureInvariant)]
    private static partial Regex DateText();

    [GeneratedRegex(ClockPattern, RegexOptions.CultureInvariant)]
    private static partial Regex ClockText();

    private const string UnknownKeyMessage = "unknown key";

    private const string RemoveKey = "remove the key, or see docs/scenario-format.md";

    /// <summary>Texts of the form of a day, for the schema too.</summary>
    public const string DatePattern = "^\\s*[0-9]{4}-[0-9]{2}-[0-9]{2}\\s*$";

    /// <summary>Texts that are a time of the day, for the schema too.</summary>
    public const string ClockPattern = "^\\s*(?:[01][0-9]|2[0-3]):[0-5][0-9]\\s*$";

    /// <summary>Reads a node as a value of the grammar; null if it was refused.</summary>
    public ReadValue? Read(YamlNode node, GrammarValue grammar, string path)
    {
        if (node is YamlRefused)
            return null;
        return grammar switch
        {
            MapValue map => ReadMap(node, map, path),
            ListValue list => ReadList(node, list, path),
            ShortOrMapValue either => ReadShortOrMap(node, either, path),
            PairsOrMapValue either => ReadPairsOrMap(node, either, path),
            ListOrMapValue either => node is YamlMap ? ReadMap(node, either.Map, path) : ReadList(node, either.List, path),
            _ => ReadScalar(node, grammar, path),
        };
    }

    /// <summary>What the grammar allows at a place, in one phrase.</summary>
    public static string Allowed(GrammarValue grammar) => grammar switch
    {
        QuantityValue quantity => $"{AllowedWords(quantity.Words)}{QuantityReader.Article(UnitTable.Of(quantity.Kind).Name)} {UnitTable.Of(quantity.Kind).Name} with a unit ({UnitTable.Of(quantity.Kind).SymbolList}), {QuantityText.Range(quantity.Kind, quantity.Minimum, quantity.Maximum)}",
        ShareOrAmountValue either => $"{Allowed(either.Share)}, or {Allowed(either.Amount)}",
        NumberValue number => string.Create(CultureInfo.InvariantCulture, $"a number without unit, {number.Minimum:0.###} to {number.Maximum:0.###}"),
        IntegerValue integer => string.Create(CultureInfo.InvariantCulture, $"a whole number, {integer.Minimum} to {integer.Maximum}"),
        TextValue text => string.Create(CultureInfo.InvariantCulture, $"a text of 1 to {text.MaximumLength} characters"),
        DateValue date => string.Create(CultureInfo.InvariantCulture, $"a day as year-month-day, {date.Minimum:yyyy-MM-dd} to {date.Maximum:yyyy-MM-dd}"),
        ClockValue { Words: { } words } => $"{Allowed(words)}, or a time of the 24-hour clock, 00:00 to 23:59",
        ClockValue => "a time of the 24-hour clock, 00:00 to 23:59",
        WordValue word => string.Join(", ", word.Words.Select(entry => entry.Text)),
        ColourValue colour => $"{string.Join(", ", colour.Names)}, or a hex colour such as \"#7fff00\"{(colour.OrMeasured ? ", or the name of a measured colour" : "")}",
        ListValue list => list.Minimum == list.Maximum
            ? string.Create(CultureInfo.InvariantCulture, $"a list of {list.Minimum}")
            : string.Create(CultureInfo.InvariantCulture, $"a list of {list.Minimum} to {list.Maximum}"),
        ListOrMapValue either => $"{Allowed(either.List)}, or {Allowed(either.Map)}",
        MapValue map => $"the keys {string.Join(", ", map.Keys.Select(key => key.Name))}",
        PairsOrMapValue either => $"a list of {either.Pairs.Minimum} to {either.Pairs.Maximum} pairs {either.Pairs.FirstName}: {either.Pairs.SecondName} such as {either.Pairs.Example}, or {Allowed(either.Map)}",
        ShortOrMapValue { ShortIsEnough: false, Phrase: { } phrase } either => $"a line such as \"{phrase.Example}\", or the keys {string.Join(", ", either.Map.Keys.Select(key => key.Name))}",
        ShortOrMapValue either => $"{Allowed(either.Short)}, {(either.Phrase is { } phrase ? $"a line such as \"{phrase.Example}\", " : "")}or the keys {string.Join(", ", either.Map.Keys.Select(key => key.Name))}",
        _ => throw new UnreachableException($"{grammar.GetType().Name} is not described."),
    };

    /// <summary>An example of what may be written, for fixes.</summary>
    public static string Example(GrammarValue grammar) => grammar switch
    {
        QuantityValue quantity => ExampleOf(quantity),
        ShareOrAmountValue either => Example(either.Share),
        NumberValue number => number.Example,
        IntegerValue integer => integer.Minimum.ToString(CultureInfo.InvariantCulture),
        TextValue => "some words",
        DateValue date => date.Example,
        ClockValue clock => clock.Example,
        WordValue word => word.Words[0].Text,
        ColourValue colour => colour.Names[0],
        PairsOrMapValue either => either.Pairs.Example,
        ShortOrMapValue { Phrase: { } phrase } => phrase.Example,
        ShortOrMapValue either => Example(either.Short),
        ListValue { Item: QuantityValue item } => $"[1 {UnitTable.Of(item.Kind).Units[0].Symbol}, 2 {UnitTable.Of(item.Kind).Units[0].Symbol}]",
        ListValue list => $"[{Example(list.Item)}]",
        MapValue map => $"{{{string.Join(", ", Needed(map).Select(key => $"{key.Name}: {Example(key.Value)}"))}}}",
        _ => throw new UnreachableException($"{grammar.GetType().Name} has no example."),
    };

    // The keys that a mapping cannot do without, the first of each choice; the first of all where it needs none.
    private static IEnumerable<GrammarKey> Needed(MapValue map)
    {
        GrammarKey[] needed = [.. map.Keys.Where(key => key.Required).Concat(map.Keys.Where(key => key.OneOf is not null).DistinctBy(key => key.OneOf))];
        return needed.Length > 0 ? needed : map.Keys.Take(1);
    }

    /// <summary>The nearest of some names to a mistyped one, or null when none is near.</summary>
    public static string? Nearest(string text, IEnumerable<string> names)
    {
        // Very long texts are no typing mistakes, and the distance costs their product.
        if (text.Length is 0 or > 40)
            return null;
        string lower = text.ToLowerInvariant().Replace('-', ' ').Replace('_', ' ');
        (string Name, int Distance)[] ranked = [.. names
            .Select(name => (Name: name, Distance: Levenshtein.GetDistance(lower, name.ToLowerInvariant().Replace('_', ' '))))
            .OrderBy(pair => pair.Distance)];
        if (ranked.Length > 0 && ranked[0].Distance <= Math.Max(2, lower.Length / 3) && ranked[0].Distance < lower.Length)
            return ranked[0].Name;

        // "mono" for "monofilament", "temp" for "temperature", "height" for "grass_height".
        if (lower.Length >= 3)
            return Array.Find(ranked, pair => Contains(pair.Name, lower)).Name;
        return null;

        static bool Contains(string name, string part) =>
            name.ToLowerInvariant().Replace('_', ' ').Contains(part, StringComparison.Ordinal);
    }

    /// <summary>The word nearest to a mistyped one, be it near to the word or to a name for it; null when none is near.</summary>
    public static string? Nearest(string text, IReadOnlyList<GrammarWord> words, EverydayNames names)
    {
        string? nearest = Nearest(text, words.Select(word => word.Text).Concat(names.All));
        return nearest is null ? null : GrammarWord.Find(words, names, nearest)?.Text;
    }

    private ReadValue? ReadMap(YamlNode node, MapValue map, string path)
    {
        if (node is not YamlMap yaml)
        {
            Refuse(node, path, map, "keys with values are expected here", $"write the keys on indented lines below, such as \"{map.Keys[0].Name}: {Example(map.Keys[0].Value)}\"");
            return null;
        }

        int before = problems.Total;
        var entries = new Dictionary<string, ReadValue>();

        // What the YAML itself refused has its problem already and adds none here.
        bool whole = true;
        var seen = new Dictionary<string, YamlText>();
        var meant = new HashSet<string>();

        // A key that is already there cannot be the one that was meant by an unknown one.
        HashSet<string> present = [.. yaml.Entries.Select(entry => map.Keys.FirstOrDefault(key => key.Alias == entry.Key.Value)?.Name ?? entry.Key.Value)];
        string[] free = [.. map.Keys.Select(key => key.Name).Where(name => !present.Contains(name))];
        int unknown = 0;
        foreach ((YamlText key, YamlNode value) in yaml.Entries)
        {
            string name = key.Value;
            string keyPath = YamlTreeBuilder.Join(path, name);
            GrammarKey? known = map.Keys.FirstOrDefault(candidate => candidate.Name == name || candidate.Alias == name);
            if (known is null)
            {
                // Beyond what the list of problems shows there is nothing to look for.
                if (++unknown > ProblemList.MostAlike)
                    problems.Add(key.Line, key.Column, keyPath, "", UnknownKeyMessage, "", RemoveKey);
                else if (UnknownKey(key, keyPath, map, free) is { } nearest)
                    meant.Add(nearest);
                continue;
            }

            if (known.Name != name)
            {
                // The other spelling, US or British, of the same key.
                name = known.Name;
                keyPath = YamlTreeBuilder.Join(path, name);
            }

            if (!seen.TryAdd(name, key))
            {
                problems.Add(key.Line, key.Column, keyPath, "", string.Create(CultureInfo.InvariantCulture, $"the key is given twice, first on line {seen[name].Line}"), "each key once", "remove one of the two");
                continue;
            }

            ReadValue? read = Read(value, known.Value, keyPath);
            whole &= read is { IsWhole: true };
            if (read is not null)
                entries[name] = read;
        }

        foreach (GrammarKey key in map.Keys)
        {
            // A mistyped key is one mistake, not an unknown and a missing key.
            if (key.Required && key.Form is null && !seen.ContainsKey(key.Name) && !meant.Contains(key.Name))
                problems.Add(yaml.Line, yaml.Column, YamlTreeBuilder.Join(path, key.Name), "", "the key is missing", Allowed(key.Value), AddKey(key));
        }

        foreach (IGrouping<string, GrammarKey> group in map.Groups)
        {
            string names = string.Join(" or ", group.Select(key => key.Name));
            YamlText[] given = [.. seen.Values.Where(text => group.Any(key => key.Name == text.Value)).OrderBy(text => (text.Line, text.Column))];
            if (given.Length == 0 && !group.Any(key => meant.Contains(key.Name)))
                problems.Add(yaml.Line, yaml.Column, PathOf(path), "", $"one of the keys {names} is missing", $"exactly one of {names}", AddKey(group.First()));
            if (given.Length > 1)
                problems.Add(given[1].Line, given[1].Column, YamlTreeBuilder.Join(path, given[1].Value), "", $"{given[0].Value} is given as well", $"exactly one of {names}", "remove one of the two");
        }

        CheckForms(map, path, yaml, seen, meant);
        return new ReadValue(path, yaml.Line, yaml.Column) { Entries = entries, IsWhole = whole && problems.Total == before };
    }

    // Keys of two forms are one mistake, and so is a form that lacks a key.
    private void CheckForms(MapValue map, string path, YamlMap yaml, Dictionary<string, YamlText> seen, HashSet<string> meant)
    {
        if (map.Forms.Count == 0)
            return;
        IGrouping<string, GrammarKey>[] given = [.. map.Forms.Where(form => form.Any(key => seen.ContainsKey(key.Name) || meant.Contains(key.Name)))];
        if (given.Length == 0)
        {
            problems.Add(yaml.Line, yaml.Column, PathOf(path), "", $"the keys of one form are missing", $"exactly one form of {map.FormList}", AddKey(map.Forms[0].First()));
            return;
        }

        if (given.Length == 1)
        {
            foreach (GrammarKey key in given[0].Where(key => !seen.ContainsKey(key.Name) && !meant.Contains(key.Name)))
                problems.Add(yaml.Line, yaml.Column, YamlTreeBuilder.Join(path, key.Name), "", "the key is missing", Allowed(key.Value), AddKey(key));
            return;
        }

        YamlText[] keys = [.. seen.Values.Where(text => map.Keys.Any(key => key.Name == text.Value && key.Form is not null)).OrderBy(text => (text.Line, text.Column))];
        string? first = keys.Length > 0 ? map.Keys.First(key => key.Name == keys[0].Value).Form : null;
        if (Array.Find(keys, text => map.Keys.First(key => key.Name == text.Value).Form != first) is { } other)
            problems.Add(other.Line, other.Column, YamlTreeBuilder.Join(path, other.Value), "", $"{keys[0].Value} is given as well, and the two belong to different forms", $"exactly one form of {map.FormList}", "keep the keys of one form and remove the others");
    }

    private string? UnknownKey(YamlText key, string keyPath, MapValue map, string[] free)
    {
        string? nearest = Nearest(key.Value, free);
        string fix = nearest is null ? RemoveKey : $"write \"{nearest}\"";
        problems.Add(key.Line, key.Column, keyPath, "", UnknownKeyMessage, Allowed(map), fix);
        return nearest;
    }

    private ReadValue? ReadList(YamlNode node, ListValue list, string path)
    {
        if (node is not YamlList yaml)
        {
            string fix = list.Item is QuantityValue ? $"write \"{Example(list)}\"" : "write each item on an indented line that starts with \"- \"";
            Refuse(node, path, list, "a list is expected here", fix);
            return null;
        }

        int before = problems.Total;
        int count = yaml.Items.Count;
        if (count < list.Minimum || count > list.Maximum)
        {
            string fix = count < list.Minimum ? "add items" : "remove items";
            problems.Add(yaml.Line, yaml.Column, PathOf(path), "", string.Create(CultureInfo.InvariantCulture, $"the list has {count} {(count == 1 ? "item" : "items")}"), Allowed(list), fix);
        }

        // What is too much is reported once, not item by item.
        var items = new List<ReadValue>();
        bool whole = true;
        for (int index = 0; index < Math.Min(count, list.Maximum); index++)
        {
            ReadValue? item = Read(yaml.Items[index], list.Item, $"{path}[{index}]");
            whole &= item is { IsWhole: true };
            if (item is not null)
                items.Add(item);
        }

        return new ReadValue(path, yaml.Line, yaml.Column) { Items = items, IsWhole = whole && problems.Total == before };
    }

    private ReadValue? ReadShortOrMap(YamlNode node, ShortOrMapValue either, string path)
    {
        if (node is YamlMap)
            return ReadMap(node, either.Map, path);
        if (either.Phrase is { } phrase && node is YamlText said && phrase.Split(said.Value.Trim()) is { } parts)
            return ReadPhrase(said, either, parts, path);
        if (node is YamlList && either.Short is WordValue)
            return ReadMap(node, either.Map, path);
        int before = problems.Total;
        ReadValue? value = ReadScalar(node, either.Short, path);
        if (value is null)
            return null;
        CheckRequired(either, (YamlText)node, path, [either.Key]);
        return new ReadValue(path, value.Line, value.Column) { Entries = new Dictionary<string, ReadValue> { [either.Key] = value }, IsWhole = problems.Total == before };
    }

    // A line that stands for a mapping lacks a key that must be given and is not on it.
    private void CheckRequired(ShortOrMapValue either, YamlText said, string path, IReadOnlyCollection<string> given)
    {
        string fix = either.Phrase is { } phrase ? $"write the line whole, such as \"{phrase.Example}\", or as keys on indented lines" : "write it as keys on indented lines";
        foreach (GrammarKey key in either.Map.Keys)
        {
            if (key.Required && key.Form is null && !given.Contains(key.Name))
                problems.Add(said.Line, said.Column, YamlTreeBuilder.Join(path, key.Name), said.Value, $"the {key.Name} is missing", Allowed(key.Value), fix);
        }
    }

    // A mapping whose first key is a number is the pairs without their brackets.
    private ReadValue? ReadPairsOrMap(YamlNode node, PairsOrMapValue either, string path)
    {
        if (node is YamlMap { Entries: [(var key, _), ..] } && !char.IsAsciiDigit(key.Value.AsSpan().TrimStart() is { Length: > 0 } text ? text[0] : ' '))
            return ReadMap(node, either.Map, path);
        PairsValue pairs = either.Pairs;
        (YamlText Key, YamlNode Value, string Path)[]? entries = node switch
        {
            YamlMap map => [.. map.Entries.Select((entry, i) => (entry.Key, entry.Value, $"{path}[{i}]"))],
            YamlList list when list.Items.All(item => item is YamlMap { Entries.Count: 1 }) => [.. list.Items.Select((item, i) => (((YamlMap)item).Entries[0].Key, ((YamlMap)item).Entries[0].Value, $"{path}[{i}]"))],
            _ => null,
        };
        if (entries is null)
        {
            Refuse(node, path, either, $"pairs {pairs.FirstName}: {pairs.SecondName} are expected here", $"write for example \"{pairs.Example}\"");
            return null;
        }

        int before = problems.Total;
        if (entries.Length < pairs.Minimum || entries.Length > pairs.Maximum)
            problems.Add(node.Line, node.Column, PathOf(path), "", string.Create(CultureInfo.InvariantCulture, $"there are {entries.Length} pairs"), Allowed(either), entries.Length < pairs.Minimum ? "add pairs" : "remove pairs");
        var items = new List<ReadValue>();
        foreach ((YamlText first, YamlNode second, string at) in entries.Take(pairs.Maximum))
        {
            int found = problems.Total;
            ReadValue? one = Read(first, pairs.First, at), two = Read(second, pairs.Second, at);
            if (one is not null && two is not null)
                items.Add(new ReadValue(at, first.Line, first.Column) { Text = $"{one.Text}: {two.Text}", IsWhole = problems.Total == found, Entries = new Dictionary<string, ReadValue> { [pairs.FirstName] = one, [pairs.SecondName] = two } });
        }

        return new ReadValue(path, node.Line, node.Column) { Items = items, IsWhole = problems.Total == before };
    }

    // Each part is read like the value of its key; what the line leaves out must not be required.
    private ReadValue? ReadPhrase(YamlText said, ShortOrMapValue either, IReadOnlyList<(string Key, string Text)> parts, string path)
    {
        int before = problems.Total;
        var entries = new Dictionary<string, ReadValue>();
        foreach ((string name, string text) in parts)
        {
            GrammarKey key = either.Map.Keys.First(candidate => candidate.Name == name);
            if (ReadScalar(said with { Value = text }, key.Value is ShortOrMapValue inner ? inner.Short : key.Value, YamlTreeBuilder.Join(path, name)) is { } read)
                entries[name] = read;
        }

        CheckRequired(either, said, path, [.. parts.Select(part => part.Key)]);
        return new ReadValue(path, said.Line, said.Column) { Text = said.Value.Trim(), Entries = entries, IsWhole = problems.Total == before };
    }

    private ReadValue? ReadScalar(YamlNode node, GrammarValue grammar, string path)
    {
        if (node is not YamlText text)
        {
            string found = node is YamlList ? "a list" : "a mapping";
            Refuse(node, path, grammar, $"a single value is expected here, not {found}", $"write for example \"{Example(grammar)}\"");
            return null;
        }

        if (text.IsPlain && text.Value.Length == 0)
        {
            string fix = grammar is ColourValue
                ? "put hex colours in quotes, an unquoted # starts a remark; or write a colour name"
                : $"write for example \"{Example(grammar)}\", or remove the key";
            Refuse(node, path, grammar, "the value is missing", fix);
            return null;
        }

        var value = new ReadValue(path, text.Line, text.Column) { Text = text.Value };
        return grammar switch
        {
            QuantityValue quantity => ReadQuantity(text, quantity, value),
            ShareOrAmountValue either => ReadQuantity(text, either.For(text.Value), value),
            NumberValue number => ReadNumber(text, number, value),
            IntegerValue integer => ReadInteger(text, integer, value),
            TextValue free => ReadText(text, free, value),
            DateValue date => ReadDate(text, date, value),
            ClockValue clock => ReadClock(text, clock, value),
            WordValue word => ReadWord(text, word, value),
            ColourValue colour => ReadColour(text, colour, value),
            _ => throw new InvalidOperationException($"The grammar has no reader for {grammar.GetType().Name}."),
        };
    }

    private ReadValue? ReadQuantity(YamlText text, QuantityValue quantity, ReadValue value)
    {
        string trimmed = text.Value.Trim();
        if (quantity.Find(trimmed) is { } found)
        {
            Taken(text, value.Path, found.Text);
            return value with { Text = found.Text, Word = found, Number = found.Meaning is double number ? number : double.NaN };
        }

        QuantityReading reading = QuantityReader.Read(quantity.Kind, text.Value);
        if (!reading.IsValid)
        {
            bool word = quantity.Words.Count > 0 && !trimmed.Any(char.IsAsciiDigit);
            string? nearest = word ? Nearest(trimmed, quantity.Words, quantity.Names) : null;
            Refuse(text, value.Path, quantity, reading.Message, nearest is not null ? $"write \"{nearest}\"" : word && quantity.Advice is { } advice ? advice : reading.Fix);
            return null;
        }

        // A value at the very edge of the range may land outside it by the rounding of the unit conversion.
        double slack = 1e-9 * Math.Max(Math.Abs(quantity.Minimum), Math.Abs(quantity.Maximum));
        if (reading.Value < quantity.Minimum - slack || reading.Value > quantity.Maximum + slack)
        {
            string side = reading.Value < quantity.Minimum ? "too small" : "too large";
            Refuse(text, value.Path, quantity, $"the value is {side}", $"write a value of {QuantityText.Range(quantity.Kind, quantity.Minimum, quantity.Maximum)}");
            return null;
        }

        return value with { Text = reading.Text, Number = Math.Clamp(reading.Value, quantity.Minimum, quantity.Maximum) };
    }

    private ReadValue? ReadNumber(YamlText text, NumberValue grammar, ReadValue value)
    {
        string trimmed = text.Value.Trim();
        Match match = PlainNumber().Match(trimmed);
        bool ratio = match.Groups["ratio"].Success;
        if (!match.Success || (ratio && !grammar.AllowRatio) || (!text.IsPlain && !ratio))
        {
            string fix = match.Success ? $"write {trimmed.Replace(":1", "", StringComparison.Ordinal)} without quotes" : $"write for example {grammar.Example}";
            Refuse(text, value.Path, grammar, "a number without unit is expected here", fix);
            return null;
        }

        double number = double.Parse(ratio ? trimmed[..^2] : trimmed, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return InRange(text, grammar, number, grammar.Minimum, grammar.Maximum, value);
    }

    private ReadValue? ReadInteger(YamlText text, IntegerValue grammar, ReadValue value)
    {
        // No leading zeros: YAML readers differ on whether 010 is ten or eight.
        string trimmed = text.Value.Trim();
        if (!text.IsPlain || !int.TryParse(trimmed, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || (trimmed.Length > 1 && trimmed[0] == '0'))
        {
            Refuse(text, value.Path, grammar, "a whole number is expected here", string.Create(CultureInfo.InvariantCulture, $"write for example {grammar.Minimum}"));
            return null;
        }

        return InRange(text, grammar, number, grammar.Minimum, grammar.Maximum, value);
    }

    private ReadValue? InRange(YamlText text, GrammarValue grammar, double number, double minimum, double maximum, ReadValue value)
    {
        if (number >= minimum && number <= maximum)
            return value with { Number = number };
        Refuse(text, value.Path, grammar, number < minimum ? "the value is too small" : "the value is too large", string.Create(CultureInfo.InvariantCulture, $"write a value of {minimum:0.###} to {maximum:0.###}"));
        return null;
    }

    private ReadValue? ReadText(YamlText text, TextValue grammar, ReadValue value)
    {
        string trimmed = text.Value.Trim();
        if (text.IsPlain && NotText().IsMatch(text.Value))
        {
            Refuse(text, value.Path, grammar, "a text is expected here", $"put it in quotes: \"{trimmed}\"");
            return null;
        }

        if (trimmed.Length == 0)
        {
            Refuse(text, value.Path, grammar, "the text is empty", "write a few words");
            return null;
        }

        if (text.Value.Length > grammar.MaximumLength)
        {
            Refuse(text, value.Path, grammar, string.Create(CultureInfo.InvariantCulture, $"the text is {text.Value.Length} characters long"), "shorten it");
            return null;
        }

        // Control characters could steer a terminal and mean nothing on a sheet.
        if (trimmed.Any(character => char.IsControl(character) && !(grammar.AllowLines && character == '\n')))
        {
            Refuse(text, value.Path, grammar, grammar.AllowLines ? "the text holds control characters" : "the text holds line breaks or control characters", "remove them");
            return null;
        }

        return value with { Text = trimmed };
    }

    private ReadValue? ReadDate(YamlText text, DateValue grammar, ReadValue value)
    {
        string trimmed = text.Value.Trim();
        if (!DateText().IsMatch(trimmed))
        {
            Refuse(text, value.Path, grammar, "a day is expected here, year first", $"write for example \"{grammar.Example}\"");
            return null;
        }

        if (!DateOnly.TryParseExact(trimmed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date))
        {
            Refuse(text, value.Path, grammar, "there is no such day in the calendar", "correct the month or the day; the order is year-month-day");
            return null;
        }

        if (date < grammar.Minimum || date > grammar.Maximum)
        {
            Refuse(text, value.Path, grammar, date < grammar.Minimum ? "the day is too early" : "the day is too late", $"write {Allowed(grammar)}");
            return null;
        }

        return value with { Text = trimmed, Number = date.DayNumber };
    }

    private ReadValue? ReadClock(YamlText text, ClockValue grammar, ReadValue value)
    {
        string trimmed = text.Value.Trim();
        if (grammar.Words?.Find(trimmed) is { } found)
        {
            Taken(text, value.Path, found.Text);
            return value with { Text = found.Text, Word = found };
        }

        if (!ClockText().IsMatch(trimmed))
        {
            string padded = "0" + trimmed;
            Refuse(text, value.Path, grammar, "a time of the day is expected here", ClockText().IsMatch(padded) ? $"write \"{padded}\"" : $"write hours and minutes of the 24-hour clock, for example \"{grammar.Example}\"");
            return null;
        }

        return value with { Text = trimmed, Number = TimeOnly.ParseExact(trimmed, "HH:mm", CultureInfo.InvariantCulture).ToTimeSpan().TotalSeconds };
    }

    private ReadValue? ReadWord(YamlText text, WordValue grammar, ReadValue value)
    {
        string trimmed = text.Value.Trim();
        if (grammar.Find(trimmed) is { } found)
        {
            Taken(text, value.Path, found.Text);
            return value with { Text = found.Text, Word = found };
        }

        string? nearest = Nearest(trimmed, grammar.Words, grammar.Names);
        Refuse(text, value.Path, grammar, "unknown word", grammar.Names.Instead(trimmed) ?? (nearest is null ? $"write one of {Allowed(grammar)}" : $"write \"{nearest}\""));
        return null;
    }

    private ReadValue? ReadColour(YamlText text, ColourValue grammar, ReadValue value)
    {
        string trimmed = text.Value.Trim();
        if (HexColour().IsMatch(trimmed))
            return value with { Text = trimmed.ToLowerInvariant() };
        if (grammar.Names.Contains(trimmed))
            return value with { Text = trimmed };
        if (EverydayNames.Colour.Word(trimmed) is { } meant && grammar.Names.Contains(meant))
        {
            Taken(text, value.Path, meant);
            return value with { Text = meant };
        }

        // Measured colours stand elsewhere in the file: the builder looks the name up there.
        if (grammar.OrMeasured && !trimmed.StartsWith('#'))
            return value with { Text = trimmed };
        string? nearest = Nearest(trimmed, grammar.Names.Concat(EverydayNames.Colour.All));
        nearest = nearest is null ? null : EverydayNames.Colour.Word(nearest) ?? nearest;
        string fix = trimmed.StartsWith('#') ? "write six hex digits after the #, such as \"#7fff00\"" : nearest is null ? "write one of the names, or a hex colour in quotes" : $"write \"{nearest}\"";
        Refuse(text, value.Path, grammar, "unknown colour", fix);
        return null;
    }

    private void Taken(YamlText text, string path, string meaning)
    {
        if (text.Value.Trim() != meaning)
            problems.AddTaken(text.Line, text.Column, PathOf(path), text.Value.Trim(), meaning);
    }

    private void Refuse(YamlNode node, string path, GrammarValue grammar, string message, string fix) =>
        problems.Add(node.Line, node.Column, PathOf(path), node is YamlText text ? text.Value : "", message, Allowed(grammar), fix);

    private static string PathOf(string path) => path.Length == 0 ? ScenarioProblem.WholeFile : path;

    private static string AddKey(GrammarKey key) => key.Value is MapValue or ListOrMapValue or ListValue { Item: not QuantityValue }
        ? $"add \"{key.Name}:\" with its items on indented lines below"
        : $"add \"{key.Name}: {Example(key.Value)}\"";

    private static string AllowedWords(IReadOnlyList<GrammarWord> words) =>
        words.Count == 0 ? "" : string.Join(", ", words.Select(word => word.Text)) + ", or ";

    // The general example of a kind may lie outside this key's range.
    private static string ExampleOf(QuantityValue quantity)
    {
        string general = quantity.Example ?? UnitTable.Of(quantity.Kind).Example;
        double value = QuantityReader.Read(quantity.Kind, general).Value;
        return value >= quantity.Minimum && value <= quantity.Maximum
            ? general
            : QuantityText.Plain(quantity.Kind, QuantityText.RoundInside(quantity.Minimum, quantity.Maximum));
    }
}
