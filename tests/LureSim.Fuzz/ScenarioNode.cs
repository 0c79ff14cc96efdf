using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace LureSim.Fuzz;

/// <summary>A scenario as a tree that can be changed and written.</summary>
internal abstract partial class ScenarioNode
{
    private static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    [GeneratedRegex("^[A-Za-z0-9#][A-Za-z0-9 ./%]*$", RegexOptions.CultureInvariant)]
    private static partial Regex PlainText();

    /// <summary>A copy that shares nothing.</summary>
    public abstract ScenarioNode Copy();

    /// <summary>The tree as YAML, one value a line.</summary>
    public string Yaml()
    {
        var text = new StringBuilder();
        Write(text, 0, afterDash: false);
        return text.ToString();
    }

    /// <summary>Writes the node from where the text stands.</summary>
    protected abstract void Write(StringBuilder text, int indent, bool afterDash);

    /// <summary>Keys with values.</summary>
    public sealed class Map : ScenarioNode
    {
        /// <summary>The entries in the order in which they are written.</summary>
        public List<KeyValuePair<string, ScenarioNode>> Entries { get; } = [];

        /// <summary>The value of a key; null for none.</summary>
        public ScenarioNode? this[string key]
        {
            get => Entries.Find(entry => entry.Key == key).Value;
            set
            {
                int at = Entries.FindIndex(entry => entry.Key == key);
                if (value is null)
                    Entries.RemoveAll(entry => entry.Key == key);
                else if (at < 0)
                    Entries.Add(new(key, value));
                else
                    Entries[at] = new(key, value);
            }
        }

        /// <inheritdoc/>
        public override ScenarioNode Copy()
        {
            var copy = new Map();
            copy.Entries.AddRange(Entries.Select(entry => KeyValuePair.Create(entry.Key, entry.Value.Copy())));
            return copy;
        }

        /// <inheritdoc/>
        protected override void Write(StringBuilder text, int indent, bool afterDash)
        {
            if (Entries.Count == 0)
                text.Append(' ', afterDash ? 0 : indent).Append("{}\n");
            foreach ((string key, ScenarioNode value) in Entries)
            {
                text.Append(' ', afterDash ? 0 : indent).Append(Scalar(key, quoted: false)).Append(value is Leaf ? ": " : ":\n");
                value.Write(text, indent + 2, afterDash: false);
                afterDash = false;
            }
        }
    }

    /// <summary>A list.</summary>
    public sealed class Sequence : ScenarioNode
    {
        /// <summary>The items.</summary>
        public List<ScenarioNode> Items { get; } = [];

        /// <inheritdoc/>
        public override ScenarioNode Copy()
        {
            var copy = new Sequence();
            copy.Items.AddRange(Items.Select(item => item.Copy()));
            return copy;
        }

        /// <inheritdoc/>
        protected override void Write(StringBuilder text, int indent, bool afterDash)
        {
            if (Items.Count == 0)
                text.Append(' ', afterDash ? 0 : indent).Append("[]\n");
            foreach (ScenarioNode item in Items)
            {
                text.Append(' ', afterDash ? 0 : indent).Append("- ");
                item.Write(text, indent + 2, afterDash: true);
                afterDash = false;
            }
        }
    }

    /// <summary>A value.</summary>
    /// <param name="text">The value.</param>
    /// <param name="quoted">True to write it in quotes whatever it is.</param>
    public sealed class Leaf(string text, bool quoted = false) : ScenarioNode
    {
        /// <summary>The value.</summary>
        public string Text => text;

        /// <inheritdoc/>
        public override ScenarioNode Copy() => new Leaf(text, quoted);

        /// <inheritdoc/>
        protected override void Write(StringBuilder target, int indent, bool afterDash) => target.Append(Scalar(text, quoted)).Append('\n');
    }

    private static string Scalar(string text, bool quoted) => !quoted && PlainText().IsMatch(text) && text[^1] != ' ' ? text : JsonSerializer.Serialize(text, Relaxed);
}
