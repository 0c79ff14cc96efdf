using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace LureSim.Scenarios;

/// <summary>A slip of the hand that YAML reads otherwise than it was meant.</summary>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Value">The text it is about.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="Fix">What to do about it.</param>
/// <param name="Mended">The line as it was meant; null for a tab, whose depth the lines above tell.</param>
/// <param name="IsCertain">True if it is wrong whatever else the text holds.</param>
internal sealed record YamlSlip(int Line, int Column, string Value, string Message, string Allowed, string Fix, string? Mended, bool IsCertain);

/// <summary>
/// Finds tabs in the indentation, values with a colon, unquoted # inside brackets and brackets or quotes that are not closed, each at its own
/// line: the parser would name them, if at all, somewhere below. Mends them, so that the rest of the file can be read.
/// </summary>
internal static partial class YamlSlips
{
    // More than that is no scenario with slips but another kind of file.
    private const int Most = 50;

    // A key or an item whose text follows on the lines below.
    [GeneratedRegex(@"(?:^|[:\-]\s)\s*[|>][-+0-9]*\s*(?:#.*)?$", RegexOptions.CultureInvariant)]
    private static partial Regex BlockText();

    // A key with a plain value on its line.
    [GeneratedRegex(@"^(?<start>\s*(?:- +)*[A-Za-z_][A-Za-z_0-9]*:\s+)(?<value>[^\s""'\[\]{}|>&*!#%@`].*?)(?<end>\s+#.*)?$", RegexOptions.CultureInvariant)]
    private static partial Regex PlainValue();

    [GeneratedRegex("^#[0-9a-fA-F]{3,8}(?![0-9a-zA-Z])", RegexOptions.CultureInvariant)]
    private static partial Regex HexColour();

    /// <summary>The slips of a text, by line.</summary>
    /// <param name="text">The text.</param>
    /// <param name="isYaml">True if it was read as YAML; then only tabs can be to blame for its problems.</param>
    public static IReadOnlyList<YamlSlip> Find(string text, bool isYaml)
    {
        var slips = new List<YamlSlip>();
        int block = int.MaxValue;
        string[] lines = text.Split('\n');
        for (int index = 0; index < lines.Length && slips.Count < Most; index++)
        {
            string line = lines[index].TrimEnd();
            if (line.Length == 0)
                continue;
            int indent = line.AsSpan().IndexOfAnyExcept(' ');

            // Text that begins with | or > may hold anything; it ends with the first line that is not indented further than its key.
            if (indent > block)
                continue;
            block = BlockText().IsMatch(line) ? indent : int.MaxValue;
            if (line[indent] == '\t')
                slips.Add(new(index + 1, indent + 1, line.Trim(), "a tab in the indentation", "spaces", "replace the tab by spaces", null, true));
            else if (!isYaml && line[indent] != '#' && (Hash(line, index) ?? Colon(line, index) ?? Open(line, index)) is { } slip)
                slips.Add(slip);
        }

        return slips;
    }

    /// <summary>The text without its slips, in each of the ways in which it may have been meant; every line stays where it is.</summary>
    public static IEnumerable<string> Mend(string text, IReadOnlyList<YamlSlip> slips)
    {
        bool tabs = slips.Any(slip => slip.Mended is null);
        yield return Mended(text, slips, byLineAbove: true);
        if (tabs)
            yield return Mended(text, slips, byLineAbove: false);
    }

    private static string Mended(string text, IReadOnlyList<YamlSlip> slips, bool byLineAbove)
    {
        string[] lines = text.Split('\n');
        foreach (YamlSlip slip in slips)
            lines[slip.Line - 1] = slip.Mended ?? Untabbed(lines, slip.Line - 1, byLineAbove);
        return string.Join('\n', lines);
    }

    // As deep as the line above, a step deeper under a key without value; or two spaces a tab.
    private static string Untabbed(string[] lines, int index, bool byLineAbove)
    {
        string line = lines[index], content = line.TrimStart(' ', '\t');
        if (!byLineAbove)
            return string.Concat(line[..^content.Length].Select(character => character == '\t' ? "  " : " ")) + content;
        string above = Enumerable.Range(1, index).Select(back => lines[index - back]).FirstOrDefault(other => other.Trim().Length > 0 && other.TrimStart()[0] != '#') ?? "";
        int depth = above.Length - above.TrimStart().Length + (above.TrimEnd().EndsWith(':') ? 2 : 0);
        return new string(' ', depth) + content;
    }

    // Inside brackets a # turns the closing bracket into a remark.
    private static YamlSlip? Hash(string line, int index)
    {
        int depth = 0;
        char quote = '\0';
        for (int at = 0; at < line.Length; at++)
        {
            char character = line[at];
            if (quote != '\0')
                quote = character == quote ? '\0' : quote;
            else if (character is '"' or '\'' && (at == 0 || line[at - 1] is ' ' or '[' or '{' or ','))
                quote = character;
            else if (character is '[' or '{')
                depth++;
            else if (character is ']' or '}')
                depth--;
            else if (character == '#' && at > 0 && line[at - 1] is ' ' or '\t' && depth > 0 && line.AsSpan(at).ContainsAny(']', '}'))
            {
                string hex = HexColour().Match(line[at..]).Value;
                string mended = hex.Length > 0
                    ? Quoted(line, at)
                    : line.Remove(at, 1).Insert(at, "No. ");
                string fix = hex.Length > 0 ? $"put hex colours in quotes: \"{hex}\"" : "put the text with the # in quotes, or leave the # out";
                return new(index + 1, at + 1, line[at..].TrimEnd(), "an unquoted # starts a remark, and the bracket is not closed before it", "texts with a # in quotes", fix, mended, false);
            }
        }

        return null;

        // All hex colours from here on.
        static string Quoted(string line, int from)
        {
            var text = new StringBuilder(line[..from]);
            for (int at = from; at < line.Length;)
            {
                string hex = HexColour().Match(line[at..]).Value;
                text.Append(hex.Length > 0 ? $"\"{hex}\"" : line[at].ToString(CultureInfo.InvariantCulture));
                at += Math.Max(hex.Length, 1);
            }

            return text.ToString();
        }
    }

    private static YamlSlip? Colon(string line, int index)
    {
        Match match = PlainValue().Match(line);
        Group value = match.Groups["value"];
        if (!match.Success || !(value.Value.Contains(": ", StringComparison.Ordinal) || value.Value.EndsWith(':')))
            return null;
        string quoted = $"\"{value.Value.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
        return new(index + 1, value.Index + 1, value.Value, "a colon in a value that is not in quotes", "texts with a colon in quotes", $"put the value in quotes: {quoted}", $"{match.Groups["start"].Value}{quoted}{match.Groups["end"].Value}", false);
    }

    // A bracket or a quote that the line opens and does not close.
    private static YamlSlip? Open(string line, int index)
    {
        var closing = new Stack<(char Close, int At)>();
        (char Mark, int At)? quote = null;
        for (int at = 0; at < line.Length; at++)
        {
            char character = line[at];
            if (quote is { } open)
                quote = character == open.Mark ? null : quote;
            else if (character is '"' or '\'' && (at == 0 || line[at - 1] is ' ' or '[' or '{' or ','))
                quote = (character, at);
            else if (character is '[' or '{')
                closing.Push((character == '[' ? ']' : '}', at));
            else if (character is ']' or '}' && closing.Count > 0)
                closing.Pop();
            else if (character == '#' && at > 0 && line[at - 1] == ' ')
                return null;
        }

        if (quote is null && closing.Count == 0)
            return null;
        int column = (quote?.At ?? closing.Peek().At) + 1;
        string end = string.Concat(closing.Select(item => item.Close));
        string mark = quote?.Mark.ToString(CultureInfo.InvariantCulture) ?? end[..1];
        return new(index + 1, column, line.Trim(), quote is null ? "this is not YAML: a bracket is not closed on this line" : "this is not YAML: a quote is not closed on this line", "as many closing as opening quotes and brackets", $"check the quotes and brackets, and add {mark} where it belongs", line.TrimEnd() + quote?.Mark + end, false);
    }
}
