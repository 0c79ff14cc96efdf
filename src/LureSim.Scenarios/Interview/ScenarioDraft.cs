using System.Text;

namespace LureSim.Scenarios.Interview;

/// <summary>A scenario in the making: values by their paths, written in the order of the grammar with a remark a line.</summary>
/// <param name="sheet">The answers.</param>
internal sealed class ScenarioDraft(AnswerSheet sheet)
{
    // Where remarks begin, if the line is shorter.
    private const int RemarkColumn = 38;

    private const int LongestQuote = 32;

    private readonly List<(string Path, string Yaml, string Remark)> values = [];

    private readonly List<string> presentations = [];

    /// <summary>The answers.</summary>
    public AnswerSheet Sheet => sheet;

    /// <summary>Sets a value.</summary>
    /// <param name="path">Path of the key, with points.</param>
    /// <param name="yaml">The value in YAML.</param>
    /// <param name="given">The answer that it comes from, for the remark; null for none.</param>
    /// <param name="note">What it is, or how it was taken; may be empty.</param>
    public void Set(string path, string yaml, Given? given = null, string note = "")
    {
        string said = given?.Source switch
        {
            GivenSource.Assumed => "assumed",
            GivenSource.NotSure => "assumed: you were not sure",
            GivenSource.Said when given.Written.Length > 0 && given.Written != yaml => $"you said \"{VisibleText.Shown(given.Written, LongestQuote)}\"",
            _ => "",
        };
        values.Add((path, yaml, string.Join("; ", ((string[])[note, said]).Where(text => text.Length > 0))));
    }

    /// <summary>Adds a presentation: its keys and values.</summary>
    public void Present(params (string Key, string Yaml, string Remark)[] keys)
    {
        bool first = true;
        foreach ((string key, string yaml, string remark) in keys.Where(item => item.Yaml.Length > 0))
        {
            presentations.Add(Line($"{(first ? "  - " : "    ")}{key}: {yaml}", remark));
            first = false;
        }
    }

    /// <summary>The scenario.</summary>
    /// <param name="file">Name of the file, for the commands in its remarks.</param>
    public string ToYaml(string file)
    {
        var text = new StringBuilder();
        text.Append("# Written from your answers. Lines marked \"assumed\" are the usual value: correct\n# them when you know better. Then:\n#   luresim check ").Append(file).Append("\n#   luresim plan ").Append(file).Append('\n');
        Write(text, ScenarioGrammar.Root, "", 0);
        return text.ToString();
    }

    /// <summary>A text in double quotes.</summary>
    public static string Quoted(string text) => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    private void Write(StringBuilder text, MapValue map, string path, int depth)
    {
        foreach (GrammarKey key in map.Keys)
        {
            string inner = path.Length == 0 ? key.Name : $"{path}.{key.Name}";
            string start = new string(' ', 2 * depth) + (key.Alias ?? key.Name) + ":";
            if (inner == "presentations")
            {
                text.Append("\npresentations:\n").AppendJoin('\n', presentations).Append('\n');
                continue;
            }

            int at = values.FindLastIndex(value => value.Path == inner);
            if (at >= 0)
                text.Append(Line($"{start} {values[at].Yaml}", values[at].Remark)).Append('\n');
            else if (values.Exists(value => value.Path.StartsWith(inner + ".", StringComparison.Ordinal)))
            {
                MapValue child = key.Value switch
                {
                    MapValue nested => nested,
                    ShortOrMapValue either => either.Map,
                    _ => throw new InvalidOperationException($"{inner} is no mapping."),
                };
                text.Append(depth == 0 ? "\n" : "").Append(start).Append('\n');
                Write(text, child, inner, depth + 1);
            }
        }
    }

    private static string Line(string content, string remark) => remark.Length == 0 ? content : $"{content.PadRight(RemarkColumn)}  # {remark}";
}
