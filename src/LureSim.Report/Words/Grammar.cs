namespace LureSim.Report.Words;

/// <summary>Small parts of sentences.</summary>
public static class Grammar
{
    /// <summary>A name, or a number in digits, with its article: "an ebb", "an 8-count", "a 12-count".</summary>
    public static string Article(string name) =>
        "aeiou8".Contains(name[0], StringComparison.OrdinalIgnoreCase) || name.StartsWith("11", StringComparison.Ordinal) || name.StartsWith("18", StringComparison.Ordinal) ? $"an {name}" : $"a {name}";

    /// <summary>A text with a capital; an empty one stays empty.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A list in a sentence: "a, b and c".</summary>
    public static string Join(IEnumerable<string> items, string last = "and")
    {
        string[] all = [.. items];
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + $" {last} " + all[^1];
    }

    /// <summary>A clause as a sentence: with a capital and a full stop.</summary>
    public static string Sentence(string clause) => clause.Length == 0 ? clause : Capital(clause).TrimEnd('.') + ".";

    /// <summary>The side of a signed value, positive to the left.</summary>
    public static string Side(double value) => value > 0 ? "left" : "right";
}
