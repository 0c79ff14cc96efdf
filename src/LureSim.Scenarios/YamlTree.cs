using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace LureSim.Scenarios;

/// <summary>A node of a YAML document with its place (from 1).</summary>
internal abstract record YamlNode(int Line, int Column);

/// <summary>A scalar; plain means without quotes.</summary>
internal sealed record YamlText(int Line, int Column, string Value, bool IsPlain) : YamlNode(Line, Column);

/// <summary>A sequence.</summary>
internal sealed record YamlList(int Line, int Column, IReadOnlyList<YamlNode> Items) : YamlNode(Line, Column);

/// <summary>A mapping with its entries in file order, duplicates included.</summary>
internal sealed record YamlMap(int Line, int Column, IReadOnlyList<(YamlText Key, YamlNode Value)> Entries) : YamlNode(Line, Column);

/// <summary>A node that has been reported already and must not be judged again.</summary>
internal sealed record YamlRefused(int Line, int Column) : YamlNode(Line, Column);

/// <summary>
/// Builds a tree from YamlDotNet's parser events. The library's own tree (YamlStream) stops at the first duplicate
/// key and resolves aliases; scenarios need every problem at once and have no use for aliases.
/// </summary>
internal sealed class YamlTreeBuilder
{
    // The grammar is five levels deep; anything much deeper is not a scenario.
    private const int MaximumDepth = 16;

    private readonly IParser parser;
    private readonly ProblemList problems;

    private YamlTreeBuilder(IParser parser, ProblemList problems)
    {
        this.parser = parser;
        this.problems = problems;
    }

    /// <summary>Reads the one document of a text; null if there is none or if it is not YAML, with a problem added.</summary>
    public static YamlNode? Read(string text, ProblemList problems)
    {
        try
        {
            var builder = new YamlTreeBuilder(new Parser(new Scanner(new StringReader(text), skipComments: true)), problems);
            return builder.ReadStream();
        }
        catch (YamlException exception)
        {
            AddSyntaxProblem(text, exception, problems);
            return null;
        }
    }

    private YamlNode? ReadStream()
    {
        YamlNode? root = null;
        int documents = 0;
        while (Advance())
        {
            switch (parser.Current)
            {
                case DocumentStart start when ++documents == 2:
                    problems.Add(Line(start), Column(start), ScenarioProblem.WholeFile, "---", "the file holds more than one document", "one scenario a file", "move the second document into a file of its own");
                    return root;
                case NodeEvent or AnchorAlias when documents == 1:
                    root = ReadNode("", 0);
                    if (root is null)
                        return null;
                    break;
                default:
                    break;
            }
        }

        if (root is null or YamlText { IsPlain: true, Value: "" or "~" or "null" })
        {
            if (problems.Count == 0)
                problems.Add(root?.Line ?? 1, root?.Column ?? 1, ScenarioProblem.WholeFile, "", "the file is empty", "a scenario with title, spot, tackle and presentations", "start from one of the files in the folder scenarios");
            return null;
        }

        return root;
    }

    // On entry the parser stands on the node's first event, on exit on its last. Null: too deep, stop reading.
    private YamlNode? ReadNode(string path, int depth)
    {
        ParsingEvent current = parser.Current!;
        int line = Line(current);
        int column = Column(current);
        if (depth > MaximumDepth)
        {
            problems.Add(line, column, Name(path), "", "the nesting is too deep to be a scenario", "", "close brackets and check the indentation above this line");
            return null;
        }

        if (current is AnchorAlias alias)
        {
            problems.Add(line, column, Name(path), "*" + alias.Value.Value, "aliases are not used in scenarios", "", "write the value out");
            return new YamlRefused(line, column);
        }

        // The parser lets some broken mappings through and ends them where a value should stand.
        if (current is not NodeEvent node)
            throw new YamlException(current.Start, current.End, "a value is missing here");
        if (!node.Anchor.IsEmpty)
            problems.Add(line, column, Name(path), "&" + node.Anchor.Value, "anchors are not used in scenarios", "", "remove the anchor and write values out where they are needed");
        if (!node.Tag.IsEmpty && !(node is Scalar { Tag.IsNonSpecific: true }))
            problems.Add(line, column, Name(path), node.Tag.IsNonSpecific ? "!" : node.Tag.Value, "tags are not used in scenarios", "", "remove the tag");

        switch (node)
        {
            case Scalar scalar:
                return new YamlText(line, column, scalar.Value, scalar.Style == ScalarStyle.Plain);
            case SequenceStart:
                var items = new List<YamlNode>();
                for (int index = 0; Next() is not SequenceEnd; index++)
                {
                    YamlNode? item = ReadNode($"{path}[{index}]", depth + 1);
                    if (item is null)
                        return null;
                    items.Add(item);
                }

                return new YamlList(line, column, items);
            default:
                var entries = new List<(YamlText, YamlNode)>();
                while (Next() is not MappingEnd)
                {
                    ParsingEvent keyEvent = parser.Current!;
                    YamlNode? key = ReadNode(path, depth + 1);
                    if (key is null)
                        return null;
                    if (key is not (YamlText or YamlRefused))
                        problems.Add(Line(keyEvent), Column(keyEvent), Name(path), "", "a key must be a plain word", "", "write \"key: value\"; put texts that contain braces or brackets in quotes");
                    Next();
                    string keyPath = key is YamlText named ? Join(path, named.Value) : path;
                    YamlNode? value = ReadNode(keyPath, depth + 1);
                    if (value is null)
                        return null;
                    if (key is YamlText name)
                        entries.Add((name, value));
                }

                return new YamlMap(line, column, entries);
        }
    }

    // On some broken texts the library's scanner trips over its own state instead of reporting the text.
    private bool Advance()
    {
        try
        {
            return parser.MoveNext();
        }
        catch (Exception exception) when (exception is InvalidOperationException or ArgumentException or IndexOutOfRangeException or NullReferenceException or KeyNotFoundException or FormatException or OverflowException)
        {
            Mark last = parser.Current?.End ?? Mark.Empty;
            throw new YamlException(last, last, "the text after this place cannot be understood", exception);
        }
    }

    private ParsingEvent Next()
    {
        Advance();
        return parser.Current ?? throw new YamlException("The document ends too early.");
    }

    /// <summary>Appends a key, shortened for display, to a path.</summary>
    public static string Join(string path, string key)
    {
        string shown = key.Length == 0 ? "''" : ScenarioProblem.Shorten(key);
        return path.Length == 0 ? shown : $"{path}.{shown}";
    }

    private static string Name(string path) => path.Length == 0 ? ScenarioProblem.WholeFile : path;

    private static int Line(ParsingEvent parsingEvent) => ToInt(parsingEvent.Start.Line);

    private static int Column(ParsingEvent parsingEvent) => ToInt(parsingEvent.Start.Column);

    private static int ToInt(long position) => (int)Math.Clamp(position, 1, int.MaxValue);

    private static void AddSyntaxProblem(string text, YamlException exception, ProblemList problems)
    {
        int line = ToInt(exception.Start.Line);
        int column = ToInt(exception.Start.Column);

        string[] lines = text.Split('\n');
        string message = exception.Message;
        string where = line <= lines.Length ? ScenarioProblem.Shorten(lines[line - 1].Trim()) : "";
        problems.Add(line, column, ScenarioProblem.WholeFile, where, $"this is not YAML: {ScenarioProblem.Shorten(message.TrimEnd('.'))}", "\"key: value\" lines, indented by spaces", "check the colon, the quotes and brackets and the indentation on this line and the one above");
    }
}
