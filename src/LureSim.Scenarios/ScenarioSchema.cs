using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace LureSim.Scenarios;

/// <summary>
/// The JSON Schemas (draft-07) of scenarios and of trips, for completion and checks in editors. It is written from the same
/// description of the grammar that the reader follows. A schema cannot compare values, so it lets through what only
/// the reader refuses: ranges of values with units and checks between keys.
/// </summary>
public static class ScenarioSchema
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        // Patterns are full of characters that the default encoder would turn into \u escapes.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>File name that scenarios point their editors to.</summary>
    public static string FileName => ScenarioGrammar.SchemaFileName;

    /// <summary>File name that trips point their editors to.</summary>
    public static string TripFileName => TripGrammar.SchemaFileName;

    /// <summary>The schema of scenarios as text, the same on every machine.</summary>
    public static string ToJson() => Document(ScenarioGrammar.Root, "LureSim scenario");

    /// <summary>The schema of trips by the clock as text, the same on every machine.</summary>
    public static string TripToJson() => Document(TripGrammar.Root, "LureSim trip");

    private static string Document(GrammarValue grammar, string title)
    {
        JsonObject root = Of(grammar);
        var document = new JsonObject
        {
            ["$schema"] = "http://json-schema.org/draft-07/schema#",
            ["title"] = title,
        };
        foreach ((string name, JsonNode? node) in root.ToArray())
        {
            root.Remove(name);
            document[name] = node;
        }

        return document.ToJsonString(Options) + "\n";
    }

    private static JsonObject Of(GrammarValue grammar) => grammar switch
    {
        QuantityValue quantity => new()
        {
            ["type"] = "string",
            ["pattern"] = QuantityReader.Pattern(quantity.Kind, WithNames(quantity.Words, quantity.Names)),
            ["examples"] = Strings(quantity.Words.Select(word => word.Text).Append(GrammarReader.Example(quantity))),
        },
        ShareOrAmountValue either => new() { ["anyOf"] = new JsonArray(Of(either.Share), Of(either.Amount)) },
        NumberValue { AllowRatio: true } number => new()
        {
            ["anyOf"] = new JsonArray(
                Range("number", number.Minimum, number.Maximum),
                new JsonObject { ["type"] = "string", ["pattern"] = "^[0-9]{1,6}(?:\\.[0-9]{1,6})?:1$" }),
        },
        NumberValue number => Range("number", number.Minimum, number.Maximum),
        IntegerValue integer => Range("integer", integer.Minimum, integer.Maximum),
        TextValue text => new() { ["type"] = "string", ["minLength"] = 1, ["maxLength"] = text.MaximumLength, ["pattern"] = "\\S" },
        DateValue date => Text(GrammarReader.DatePattern, date.Example),
        ClockValue { Words: { } words } clock => new() { ["anyOf"] = new JsonArray(Text(GrammarReader.ClockPattern, clock.Example), Of(words)) },
        ClockValue clock => Text(GrammarReader.ClockPattern, clock.Example),
        WordValue word when word.Words.Any(entry => IsNumber(entry.Text)) => new()
        {
            // An editor takes a plain 3000 for a number.
            ["enum"] = new JsonArray([.. WithNames(word.Words, word.Names).Select(text => (JsonNode)text), .. word.Words.Where(entry => IsNumber(entry.Text)).Select(entry => (JsonNode)int.Parse(entry.Text, System.Globalization.CultureInfo.InvariantCulture))]),
        },
        WordValue word => new() { ["type"] = "string", ["enum"] = Strings(WithNames(word.Words, word.Names)) },
        ColourValue colour => new()
        {
            ["anyOf"] = new JsonArray(
                new JsonObject { ["type"] = "string", ["enum"] = Strings(colour.Names.Concat(EverydayNames.Colour.All)) },
                new JsonObject { ["type"] = "string", ["pattern"] = colour.OrMeasured ? "^(#[0-9a-fA-F]{6}|[^#].*)$" : "^#[0-9a-fA-F]{6}$" }),
        },
        ListValue list => new()
        {
            ["type"] = "array",
            ["minItems"] = list.Minimum,
            ["maxItems"] = list.Maximum,
            ["items"] = Of(list.Item),
        },
        ShortOrMapValue { ShortIsEnough: false, Phrase: { } phrase } either => new() { ["anyOf"] = new JsonArray(Text(phrase.Pattern, phrase.Example), Of(either.Map)) },
        ShortOrMapValue { Phrase: { } phrase } either => new() { ["anyOf"] = new JsonArray(Of(either.Short), Text(phrase.Pattern, phrase.Example), Of(either.Map)) },
        ShortOrMapValue either => new() { ["anyOf"] = new JsonArray(Of(either.Short), Of(either.Map)) },
        ListOrMapValue either => new() { ["anyOf"] = new JsonArray(Of(either.List), Of(either.Map)) },
        MapValue map => OfMap(map),
        PairsOrMapValue either => new()
        {
            ["anyOf"] = new JsonArray(
                new JsonObject
                {
                    ["type"] = "array",
                    ["minItems"] = either.Pairs.Minimum,
                    ["maxItems"] = either.Pairs.Maximum,
                    ["items"] = PairsOf(either.Pairs, 1, 1),
                },
                PairsOf(either.Pairs, either.Pairs.Minimum, either.Pairs.Maximum),
                Of(either.Map)),
        },
        _ => throw new InvalidOperationException($"The schema has no form for {grammar.GetType().Name}."),
    };

    private static JsonObject PairsOf(PairsValue pairs, int least, int most) => new()
    {
        ["type"] = "object",
        ["minProperties"] = least,
        ["maxProperties"] = most,
        ["propertyNames"] = new JsonObject { ["pattern"] = QuantityReader.Pattern(pairs.First.Kind, []) },
        ["additionalProperties"] = new JsonObject { ["type"] = "string", ["pattern"] = QuantityReader.Pattern(pairs.Second.Kind, []) },
    };

    private static JsonObject OfMap(MapValue map)
    {
        var properties = new JsonObject();
        foreach (GrammarKey key in map.Keys)
        {
            JsonObject property = Of(key.Value);
            string details = key.Value is MapValue or ListValue { Item: MapValue or ShortOrMapValue } ? "" : $" Allowed: {GrammarReader.Allowed(key.Value)}.";
            string missing = key.Default is null ? "" : $" Default: {key.Default}.";
            property.Remove("description");
            property.Insert(0, "description", key.Doc + details + missing);
            properties[key.Name] = property;
            if (key.Alias is not null)
            {
                JsonObject alias = property.DeepClone().AsObject();
                alias["description"] = $"Another spelling of {key.Name}.";
                properties[key.Alias] = alias;
            }
        }

        var result = new JsonObject
        {
            ["type"] = "object",
            ["description"] = map.Doc,
            ["additionalProperties"] = false,
            ["properties"] = properties,
        };
        string[] required = [.. map.Keys.Where(key => key.Required && key.Form is null && key.Alias is null).Select(key => key.Name)];
        if (required.Length > 0)
            result["required"] = Strings(required);
        JsonNode[] either = [.. map.Keys.Where(key => key.Required && key.Alias is not null).Select(key => (JsonNode)new JsonObject
        {
            ["oneOf"] = new JsonArray(new JsonObject { ["required"] = Strings([key.Name]) }, new JsonObject { ["required"] = Strings([key.Alias!]) }),
        })];
        if (either.Length > 0)
            result["allOf"] = new JsonArray(either);
        foreach (IGrouping<string, GrammarKey> group in map.Groups)
            result["oneOf"] = new JsonArray([.. group.Select(key => new JsonObject { ["required"] = Strings([key.Name]) })]);
        if (map.Forms.Count > 0)
            result["oneOf"] = new JsonArray([.. map.Forms.Select(form => OfForm(map, form))]);
        return result;
    }

    // All keys of the form and none of another.
    private static JsonObject OfForm(MapValue map, IGrouping<string, GrammarKey> form) => new()
    {
        ["required"] = Strings(form.Select(key => key.Name)),
        ["not"] = new JsonObject
        {
            ["anyOf"] = new JsonArray([.. map.Keys.Where(key => key.Form is not null && key.Form != form.Key)
                .Select(key => new JsonObject { ["required"] = Strings([key.Name]) })]),
        },
    };

    private static JsonObject Text(string pattern, string example) =>
        new() { ["type"] = "string", ["pattern"] = pattern, ["examples"] = Strings([example]) };

    private static JsonObject Range(string type, double minimum, double maximum) => new()
    {
        ["type"] = type,
        ["minimum"] = JsonValue.Create((decimal)minimum),
        ["maximum"] = JsonValue.Create((decimal)maximum),
    };

    private static IEnumerable<string> WithNames(IReadOnlyList<GrammarWord> words, EverydayNames names) =>
        words.SelectMany(word => names.Of(word.Text).Prepend(word.Text)).Distinct();

    private static bool IsNumber(string text) => text.All(char.IsAsciiDigit);

    private static JsonArray Strings(IEnumerable<string> texts) => [.. texts.Select(text => (JsonNode)text)];
}
