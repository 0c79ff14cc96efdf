using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using LureSim.Fuzz;
using LureSim.Scenarios;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;
using Node = YamlDotNet.RepresentationModel.YamlNode;

namespace LureSim.Tests.Scenarios;

/// <summary>Every node of whole scenarios is broken in every way that a hand can: the reader says what and where, and never throws.</summary>
public partial class BrokenScenarioTests
{
    [GeneratedRegex(@"\[[0-9]+\]", RegexOptions.CultureInvariant)]
    private static partial Regex Index();

    private static readonly (string Name, Func<Node> Node)[] Replacements =
    [
        ("empty", () => new YamlScalarNode("") { Style = ScalarStyle.Plain }),
        ("quoted nothing", () => new YamlScalarNode("") { Style = ScalarStyle.DoubleQuoted }),
        ("null", () => new YamlScalarNode("~") { Style = ScalarStyle.Plain }),
        ("text", () => new YamlScalarNode("what is this")),
        ("number without unit", () => new YamlScalarNode("7") { Style = ScalarStyle.Plain }),
        ("not a number", () => new YamlScalarNode(".nan") { Style = ScalarStyle.Plain }),
        ("infinite", () => new YamlScalarNode("-.inf") { Style = ScalarStyle.Plain }),
        ("huge", () => new YamlScalarNode("1e999 m") { Style = ScalarStyle.Plain }),
        ("large", () => new YamlScalarNode("999999999 m") { Style = ScalarStyle.Plain }),
        ("nothing of it", () => new YamlScalarNode("0 m") { Style = ScalarStyle.Plain }),
        ("negative", () => new YamlScalarNode("-3 m") { Style = ScalarStyle.Plain }),
        ("long", () => new YamlScalarNode(new string('x', 5000))),
        ("control characters", () => new YamlScalarNode("a\u202eb\u200bc\u001b[2J") { Style = ScalarStyle.DoubleQuoted }),
        ("list", () => new YamlSequenceNode(new YamlScalarNode("1 m"), new YamlScalarNode("2 m"))),
        ("empty list", () => new YamlSequenceNode()),
        ("map", () => new YamlMappingNode(new YamlScalarNode("what"), new YamlScalarNode("this"))),
        ("empty map", () => new YamlMappingNode()),
    ];

    public static TheoryData<string> Texts => [.. Repository.Scenarios().Select(path => Path.GetFileName(path)!), "every key 0", "every key 1", "every key 2"];

    private static string Text(string name) => name.StartsWith("every key ", StringComparison.Ordinal)
        ? EveryKey.Texts[name[^1] - '0']
        : File.ReadAllText(Repository.File("scenarios", name));

    [Fact]
    public void The_handmade_scenarios_are_valid_and_use_every_key()
    {
        var used = new HashSet<string>(StringComparer.Ordinal);
        foreach (string text in EveryKey.Texts)
        {
            ScenarioRanges.Assert(TestScenario.Read(text));
            used.UnionWith(Places(Load(text)).Select(place => Index().Replace(place.Path, "[]")));
        }

        // Lists of plain values end in [], which no key does; a list of the same map as another need not hold every key of it again.
        string[] missing = [.. EveryKey.OfGrammar().Except(used).Where(path => !path.StartsWith("compare[].", StringComparison.Ordinal) || path.Count(c => c == '.') == 1)];
        missing = [.. missing.Where(path => !Regex.IsMatch(path, @"^uncertainty\.\w+\.(plus_or_minus|between|triangular)$", RegexOptions.CultureInvariant))];
        Assert.Empty(missing);
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void Anything_broken_is_reported_with_its_place_and_a_way_out(string name)
    {
        string text = Text(name);
        int places = Places(Load(text)).Count, reads = 0, refused = 0;
        for (int place = 0; place < places; place++)
        {
            // One value takes the place of the one before it; what is deleted cannot be replaced and comes last.
            YamlMappingNode root = Load(text);
            Place at = Places(root)[place];
            foreach ((string how, Func<Node>? node) in ((string, Func<Node>?)[])[.. Replacements, ("deleted", null)])
            {
                at.Put(node?.Invoke());
                string broken = Save(root);
                ScenarioReading reading;
                try
                {
                    reading = ScenarioReader.ReadText(broken, "broken.yaml");
                }
                catch (Exception exception)
                {
                    Assert.Fail($"{at.Path} {how}: {exception}");
                    throw;
                }

                reads++;
                refused += reading.IsValid ? 0 : 1;
                Check(reading, broken, at.Path, how);
            }
        }

        Assert.True(refused > reads / 2, $"{refused} of {reads} were refused.");
    }

    // Where a value was replaced, a problem is at it, in it or at what holds it.
    private static void Check(ScenarioReading reading, string text, string path, string how)
    {
        if (reading.Scenario is { } scenario)
        {
            Assert.Empty(reading.Problems);
            ScenarioRanges.Assert(scenario);
            return;
        }

        Assert.NotEmpty(reading.Problems);
        int lines = text.Split('\n').Length;
        foreach (ScenarioProblem problem in reading.Problems)
        {
            string said = $"{path} {how}: {problem}";
            Assert.True(problem.File == "broken.yaml" && problem.Line >= 1 && problem.Line <= lines && problem.Column >= 1, said);
            Assert.True(problem.Key.Length > 0 && problem.Message.Length > 0 && problem.Allowed.Length > 0 && problem.Fix.Length > 0, said);
            Assert.DoesNotContain("does not fit together", problem.Message, StringComparison.Ordinal);
            Assert.DoesNotContain(problem.ToString(), character => char.IsControl(character) || character is '\u202e' or '\u200b');
        }

        // Other values refer to a name, and what was seen to the title of its spot.
        if (!path.EndsWith(".name", StringComparison.Ordinal) && path != "title" && how is not ("deleted" or "nothing of it" or "text" or "number without unit" or "long"))
            Assert.True(reading.Problems.Any(problem => problem.Key == ScenarioProblem.WholeFile || Near(problem.Key, path)), $"{path} {how}: {string.Join(" | ", reading.Problems)}");

        static bool Near(string key, string path) => key.StartsWith(path, StringComparison.Ordinal) || path.StartsWith(key, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(40_000)]
    [InlineData(1_000)]
    public void Unknown_keys_are_counted_not_listed_and_cost_no_more_than_reading_them(int count)
    {
        var text = new StringBuilder(TestScenario.Text).Append('\n');
        for (int i = 0; i < count; i++)
            text.Append(CultureInfo.InvariantCulture, $"depht{i}: 1 m\n");
        var clock = Stopwatch.StartNew();
        IReadOnlyList<ScenarioProblem> problems = TestScenario.Problems(text.ToString());
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(20), clock.Elapsed.ToString());
        Assert.Equal(ProblemList.MostAlike + 1, problems.Count);
        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"unknown key, and {count - ProblemList.MostAlike - 1:N0} more from here on"), problems[^1].Message);
        Assert.Equal(TestScenario.Text.Split('\n').Length + 1 + ProblemList.MostAlike, problems[^1].Line);
    }

    [Fact]
    public void A_file_that_is_wrong_throughout_gives_a_few_pages_of_problems()
    {
        var text = new StringBuilder(TestScenario.Text).Append("\nforage:\n");
        for (int i = 0; i < 5_000; i++)
            text.Append(CultureInfo.InvariantCulture, $"  - {{kind: shrmp{i}, length: {i}, seen: &a{i} x}}\n");
        Assert.InRange(TestScenario.Problems(text.ToString()).Count, 2, ProblemList.Most + 20);
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_tab_in_the_indentation_is_reported_at_its_own_line(string name)
    {
        string[] lines = Text(name).Split('\n');
        int tried = 0;
        for (int i = 0; i < lines.Length; i++)
        {
            int indent = lines[i].Length - lines[i].TrimStart(' ').Length;
            if (indent == 0 || lines[i].Trim().Length == 0 || lines[i].TrimStart().StartsWith('#') || IsNote(lines, i)) continue;
            tried++;
            foreach (string tabbed in (string[])["\t" + lines[i].TrimStart(), lines[i][..^(lines[i].Length - indent)] + "\t" + lines[i].TrimStart(), new string('\t', indent / 2) + lines[i].TrimStart()])
            {
                ScenarioReading reading = ScenarioReader.ReadText(string.Join('\n', (string[])[.. lines[..i], tabbed, .. lines[(i + 1)..]]), "tab.yaml");
                if (reading.IsValid) continue;
                Assert.True(reading.Problems.Any(problem => problem.Line == i + 1 && problem.Message.Contains("a tab", StringComparison.Ordinal)), $"line {i + 1}: {string.Join(" | ", reading.Problems.Take(5))}");
                Assert.DoesNotContain(reading.Problems, problem => problem.Line != i + 1 && problem.Message.Contains("a tab", StringComparison.Ordinal));
            }
        }

        Assert.True(tried > 20);
    }

    [Fact]
    public void A_tab_in_a_block_of_text_is_text()
    {
        Assert.DoesNotContain(ScenarioReader.ReadText(TestScenario.With("  Two lines", "  \tTwo lines"), "a").Problems, problem => problem.Message.Contains("a tab", StringComparison.Ordinal));
        Assert.DoesNotContain(TestScenario.Problems(TestScenario.With("  Two lines", "  Two\tlines\n  \tand a tab").Replace("depth: 12 ft", "depth: 12", StringComparison.Ordinal)), problem => problem.Message.Contains("indentation", StringComparison.Ordinal));
    }

    // Lines of a block of text may begin as they like.
    private static bool IsNote(string[] lines, int index)
    {
        for (int i = index - 1; i >= 0; i--)
        {
            if (lines[i].StartsWith("notes:", StringComparison.Ordinal)) return true;
            if (lines[i].Length > 0 && lines[i][0] != ' ') return false;
        }

        return false;
    }

    private sealed record Place(string Path, Action<Node?> Put);

    private static List<Place> Places(YamlMappingNode root)
    {
        var places = new List<Place>();
        Visit(root, "");
        return places;

        void Visit(Node node, string path)
        {
            switch (node)
            {
                case YamlMappingNode map:
                    foreach (Node key in map.Children.Keys.ToArray())
                    {
                        string inner = (path.Length == 0 ? "" : path + ".") + ((YamlScalarNode)key).Value;
                        places.Add(new Place(inner, with =>
                        {
                            if (with is null) map.Children.Remove(key);
                            else map.Children[key] = with;
                        }));
                        Visit(map.Children[key], inner);
                    }

                    break;
                case YamlSequenceNode list:
                    for (int i = 0; i < list.Children.Count; i++)
                    {
                        int index = i;
                        string inner = $"{path}[{i}]";
                        places.Add(new Place(inner, with =>
                        {
                            if (with is null) list.Children.RemoveAt(index);
                            else list.Children[index] = with;
                        }));
                        Visit(list.Children[i], inner);
                    }

                    break;
                default:
                    break;
            }
        }
    }

    private static YamlMappingNode Load(string text)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(text));
        return (YamlMappingNode)stream.Documents[0].RootNode;
    }

    private static string Save(YamlMappingNode root)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        new YamlStream(new YamlDocument(root)).Save(writer, assignAnchors: false);
        return writer.ToString();
    }
}
