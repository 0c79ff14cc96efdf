using System.Text.RegularExpressions;

namespace LureSim.Scenarios;

/// <summary>Lines in which people say several keys at once. A text that is no such line is read as the key's short form and refused there.</summary>
internal static partial class PhraseBook
{
    private const string Amount = "[0-9][0-9 ./]*\\s*[A-Za-z/%\\u00b0]+(?:\\s+[0-9][0-9./]*\\s*(?:in|inch|inches))?";

    [GeneratedRegex("^(?<length>[^,]+?)\\s+with\\s+(?:an?\\s+)?(?<with>\\S.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex CastLine();

    [GeneratedRegex("^(?<length>" + Amount + ")\\s*,?\\s+(?<power>[A-Za-z][A-Za-z -]*?)(?:\\s+(?:power|rod))?$", RegexOptions.CultureInvariant)]
    private static partial Regex RodLine();

    [GeneratedRegex("^(?<tide>[A-Za-z][A-Za-z ]*?)?\\s*,?\\s*(?<speed>" + Amount + ")\\s*(?:,\\s*|\\s+)(?:flowing\\s+)?(?<direction>\\S.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex CurrentLine();

    [GeneratedRegex("^(?<name>[A-Za-z0-9]{2,8})\\s*[:,]?\\s+(?<amplitude>" + Amount + ")\\s*,?\\s+(?<phase>[0-9]" + "[0-9.]*\\s*[A-Za-z\\u00b0]+)$", RegexOptions.CultureInvariant)]
    private static partial Regex ConstituentLine();

    /// <summary>"M2 1.6 ft 181 deg".</summary>
    public static GrammarPhrase Constituent { get; } = new("M2 1.6 ft 181 deg", "^\\s*[A-Za-z0-9]+\\s.*[0-9].*$", text => Parts(ConstituentLine(), text));

    /// <summary>"60 ft with 1/4 oz".</summary>
    public static GrammarPhrase Cast { get; } = new("60 ft with 1/4 oz", "^.*\\S\\s+with\\s+\\S.*$", text => Parts(CastLine(), text));

    /// <summary>"7 ft medium".</summary>
    public static GrammarPhrase Rod { get; } = new("7 ft medium", "^\\s*[0-9].*[A-Za-z]\\s*$", text => Parts(RodLine(), text));

    /// <summary>"outgoing 0.8 kn, to my right".</summary>
    public static GrammarPhrase Current { get; } = new("outgoing 0.8 kn, to my right", "^.*[0-9].*[A-Za-z]\\s*$", text => Parts(CurrentLine(), text));

    private static List<(string Key, string Text)>? Parts(Regex line, string text)
    {
        Match match = line.Match(text);
        return match.Success ? [.. match.Groups.Values.Skip(1).Where(group => group.Success && group.Length > 0).Select(group => (group.Name, group.Value.Trim()))] : null;
    }
}
