using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using LureSim.Scenarios;
using NJsonSchema;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace LureSim.Tests.Scenarios;

public class ScenarioSchemaTests
{
    [Fact]
    public void The_schema_in_docs_is_the_one_the_code_writes() =>
        Assert.Equal(ScenarioSchema.ToJson(), File.ReadAllText(Repository.File("docs", "schema", ScenarioSchema.FileName)));

    [Fact]
    public void The_reference_in_docs_is_the_one_the_code_writes() =>
        Assert.Equal(ScenarioFormat.ToMarkdown(), File.ReadAllText(Repository.File("docs", ScenarioFormat.FileName)));

    [Fact]
    public void The_schema_is_draft_07() =>
        Assert.Equal("http://json-schema.org/draft-07/schema#", (string?)JsonNode.Parse(ScenarioSchema.ToJson())!["$schema"]);

    [Fact]
    public async Task Trips_have_a_schema_that_takes_and_refuses_what_the_reader_does()
    {
        string file = Repository.File("scenarios", "trips", "saturday.yaml"), text = await File.ReadAllTextAsync(file);
        Assert.Equal(ScenarioSchema.TripToJson(), await File.ReadAllTextAsync(Repository.File("docs", "schema", ScenarioSchema.TripFileName)));
        Assert.Contains($"$schema=../../docs/schema/{ScenarioSchema.TripFileName}", text, StringComparison.Ordinal);
        JsonSchema schema = await JsonSchema.FromJsonAsync(ScenarioSchema.TripToJson());
        Assert.Empty(schema.Validate(ToJson(text)));
        Assert.Empty(TripReader.Read(file).Problems);
        foreach ((string old, string bad) in ((string, string)[])[("from: \"06:00\"", "from: \"26:00\""), ("travel: 20 min", "travel: 20"), ("worth: 80 %", "worth: good"), ("most_stay", "longest"), ("title: Saturday", "titel: Saturday")])
        {
            string mistaken = text.Replace("../", Repository.File("scenarios") + "/", StringComparison.Ordinal).Replace(old, bad, StringComparison.Ordinal), wrong = Path.GetTempFileName();
            try
            {
                await File.WriteAllTextAsync(wrong, mistaken);
                Assert.Single(TripReader.Read(wrong).Problems);
                Assert.NotEmpty(schema.Validate(ToJson(mistaken)));
            }
            finally
            {
                File.Delete(wrong);
            }
        }
    }

    [Fact]
    public async Task The_schema_accepts_what_the_reader_accepts()
    {
        JsonSchema schema = await JsonSchema.FromJsonAsync(ScenarioSchema.ToJson());
        foreach (string text in ValidTexts())
            Assert.Empty(schema.Validate(ToJson(text)));
    }

    [Theory]
    [InlineData("depth: 12 ft", "depth: 12")]
    [InlineData("depth: 12 ft", "depth: 12 Feet")]
    [InlineData("depth: 12 ft", "deth: 12 ft")]
    [InlineData("  target: red drum\n", "")]
    [InlineData("target: red drum", "target: redfsh")]
    [InlineData("gear_ratio: 6.2", "gear_ratio: 62")]
    [InlineData("gear_ratio: 6.2", "gear_ratio: '6.2'")]
    [InlineData("count: 2", "count: 2.5")]
    [InlineData("- 1/8 oz", "- 1/8")]
    [InlineData("title: Test channel", "title: 2024")]
    [InlineData("  colours: [white, dark purple, \"#7FFF00\"]\n", "")]
    [InlineData("colours: [white, dark purple, \"#7FFF00\"]", "colours: [white]\n  colors: [white]")]
    [InlineData("\"#7FFF00\"", "\"#7FF\"")]
    [InlineData("above_bottom: [1 ft, 4 ft]", "above_bottom: [1 ft]")]
    [InlineData("above_bottom: [1 ft, 4 ft]", "above_bottom: [1 ft, 4 ft]\n    depth: [1 ft, 4 ft]")]
    [InlineData("above_bottom: [1 ft, 4 ft]", "{}")]
    [InlineData("direction: left", "direction: lefft")]
    [InlineData("reel: {gear_ratio: 6.2, spool_diameter: 45 mm}", "reel: fast")]
    [InlineData("{secchi: 6 ft, water: coastal green}", "{}")]
    [InlineData("{secchi: 6 ft, water: coastal green}", "{secchi: 6 ft}")]
    [InlineData("{secchi: 6 ft, water: coastal green}", "{secchi: 6 ft, water: coastal green, jerlov: 3C}")]
    [InlineData("{secchi: 6 ft, water: coastal green}", "{jerlov: 3C, mineral: 3 g/m3}")]
    [InlineData("{secchi: 6 ft, water: coastal green}", "{chlorophyll: 5 mg/m3, dissolved_440: 0.81/m, mineral: 3 g/m3}")]
    [InlineData("{sun_elevation: 40 deg, cloud: 30 %}", "{cloud: 30 %}")]
    [InlineData("{sun_elevation: 40 deg, cloud: 30 %}", "{sun_elevation: 40 deg, date: 2026-06-14}")]
    [InlineData("{sun_elevation: 40 deg, cloud: 30 %}", "{date: 2026-6-14, time: '06:20', utc_offset: -4 h, latitude: 27.5 deg, longitude: -82.6 deg}")]
    [InlineData("{sun_elevation: 40 deg, cloud: 30 %}", "{date: 2026-06-14, time: '25:20', utc_offset: -4 h, latitude: 27.5 deg, longitude: -82.6 deg}")]
    public async Task The_schema_refuses_mistakes_that_need_no_comparison(string old, string replacement)
    {
        JsonSchema schema = await JsonSchema.FromJsonAsync(ScenarioSchema.ToJson());
        string text = TestScenario.With(old, replacement);
        Assert.False(ScenarioReader.ReadText(text, "a").IsValid);
        Assert.NotEmpty(schema.Validate(ToJson(text)));
    }

    [Fact]
    public void Examples_in_the_schema_match_their_own_pattern()
    {
        int found = 0;
        Visit(JsonNode.Parse(ScenarioSchema.ToJson())!);
        Assert.True(found > 30);

        void Visit(JsonNode node)
        {
            if (node is JsonObject value)
            {
                if (value["examples"] is JsonArray examples)
                {
                    foreach (JsonNode? example in examples)
                    {
                        Assert.Matches(new Regex((string)value["pattern"]!), (string)example!);
                        found++;
                    }
                }

                foreach ((string _, JsonNode? child) in value)
                {
                    if (child is not null)
                        Visit(child);
                }
            }
            else if (node is JsonArray array)
            {
                foreach (JsonNode? child in array)
                    Visit(child!);
            }
        }
    }

    [Fact]
    public void Every_example_lies_inside_its_range()
    {
        foreach ((string path, GrammarValue value) in ScenarioGrammar.Root.WithParts())
        {
            QuantityValue[] quantities = value switch
            {
                QuantityValue quantity => [quantity],
                PairsOrMapValue either => [either.Pairs.First, either.Pairs.Second],
                _ => [],
            };
            Assert.All(quantities, quantity =>
            {
                QuantityReading reading = QuantityReader.Read(quantity.Kind, GrammarReader.Example(quantity));
                Assert.True(reading.IsValid && reading.Value >= quantity.Minimum * (1 - 1e-9) && reading.Value <= quantity.Maximum, $"{path}: {GrammarReader.Example(quantity)}");
            });
            if (value is not MapValue map) continue;

            // What is shown where something else stands than the keys: the first of them with its example.
            Assert.NotEmpty(GrammarReader.Example(map.Keys[0].Value));
            Assert.Equal(map.Keys.Count, map.Keys.Select(key => key.Name).Distinct().Count());
            foreach (GrammarKey key in map.Keys)
            {
                Assert.Matches("^[a-z][a-z_]*(?:_[0-9]+)?$", key.Name);
                Assert.DoesNotContain(map.Keys, other => other.Name == key.Alias);
                Assert.EndsWith(".", key.Doc, StringComparison.Ordinal);
                // Exactly one of: required, with a default, or one of a group.
                Assert.Equal(1, (key.Required ? 1 : 0) + (key.Default is null ? 0 : 1) + (key.OneOf is null ? 0 : 1));
            }
        }
    }

    private static IEnumerable<string> ValidTexts() =>
        Repository.Scenarios().Select(File.ReadAllText)
            .Append(TestScenario.Text)
            .Append(TestScenario.With("gear_ratio: 6.2", "gear_ratio: 6.2:1"))
            .Append(TestScenario.With("above_bottom: [1 ft, 4 ft]", "depth: [1 ft 6 in, 11 ft]"))
            .Append(SpotInputTests.WithClarity("{jerlov: 3C}"))
            .Append(SpotInputTests.WithClarity("{chlorophyll: 5 mg/m3, dissolved_440: 0.8 1/m, mineral: 3 g/m3}"))
            .Append(SpotInputTests.WithLight("{date: 2026-06-14, time: 06:20, utc_offset: 5.5 h, latitude: -27.5 deg, longitude: 82.6 deg}"))
            .Append(TestScenario.With("direction: left", "direction: 12.5\u00b0"))
            .Append(EverydayNamesTests.Everyday);

    /// <summary>The document as JSON, with scalars resolved as YAML 1.2 does in editors.</summary>
    internal static string ToJson(string text)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(text));
        return Convert(stream.Documents[0].RootNode)?.ToJsonString() ?? "null";

        static JsonNode? Convert(YamlDotNet.RepresentationModel.YamlNode node) => node switch
        {
            YamlMappingNode map => new JsonObject(map.Children.Select(pair => KeyValuePair.Create(((YamlScalarNode)pair.Key).Value!, Convert(pair.Value)))),
            YamlSequenceNode list => new JsonArray([.. list.Children.Select(Convert)]),
            YamlScalarNode { Style: ScalarStyle.Plain } scalar => Plain(scalar.Value!),
            YamlScalarNode scalar => scalar.Value!,
            _ => throw new InvalidOperationException(),
        };

        static JsonNode? Plain(string value) => value switch
        {
            "" or "~" or "null" => null,
            "true" => true,
            "false" => false,
            _ when Regex.IsMatch(value, @"^[-+]?[0-9]+$") => long.Parse(value, System.Globalization.CultureInfo.InvariantCulture),
            _ when Regex.IsMatch(value, @"^[-+]?[0-9]+\.[0-9]+$") => double.Parse(value, System.Globalization.CultureInfo.InvariantCulture),
            _ => value,
        };
    }
}
