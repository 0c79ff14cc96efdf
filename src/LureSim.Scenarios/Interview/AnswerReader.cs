using System.Text.RegularExpressions;

namespace LureSim.Scenarios.Interview;

/// <summary>What was understood of what somebody typed.</summary>
/// <param name="Pieces">By part; a part that was not answered is not in it.</param>
/// <param name="Problem">Why nothing was taken, with a way out; null if something was.</param>
internal sealed record AnswerOutcome(IReadOnlyDictionary<Part, IReadOnlyList<Piece>> Pieces, string? Problem);

/// <summary>Reads answers as people write them: "about 6 feet", "1 knot to the right", "10 lb braid, 20 lb fluoro".</summary>
internal static partial class AnswerReader
{
    // More words than that are no value.
    private const int LongestRun = 7;

    private const int LongestAnswer = 400;

    // Words around a value that say nothing.
    private static readonly HashSet<string> Fillers = new(
        ("about around roughly maybe approx approximately ~ a an the of some is it its it's i im i'm use with to flowing going moving running water deep down visibility in on my from at or so bit they "
        + "there are lot mostly see can you we get feels like guess probably say just ca circa line lure bait baits wide long heads head jig jigs colored coloured for and by mainly usually about: pretty kind sort tall high").Split(' '),
        StringComparer.OrdinalIgnoreCase);

    // "four and a half feet", "a foot and a half": "and" would part the number from its half.
    [GeneratedRegex(
        @"(?<![/0-9.])\b(?<number>[0-9]+|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\s+(?:(?<unit>foot|feet|ft|inch|inches|in|knots?|kn|met(?:er|re)s?|m|pounds?|lbs?|ounces?|oz|seconds?)\s+)?and\s+(?:a\s+)?half\b",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex AndHalf();

    private static readonly string[] Unsure = ["not sure", "unsure", "don't know", "dont know", "do not know", "dunno", "no idea", "?", "idk"];

    /// <summary>True if somebody says that he does not know.</summary>
    public static bool IsUnsure(string text) => Unsure.Contains(text.Trim().TrimEnd('.').ToLowerInvariant());

    /// <summary>Reads an answer to a part, with what it says on others.</summary>
    /// <param name="part">The part that was asked.</param>
    /// <param name="others">Parts that may be answered in the same breath.</param>
    /// <param name="text">What was typed.</param>
    public static AnswerOutcome Read(Part part, IReadOnlyList<Part> others, string text)
    {
        var found = new Dictionary<Part, IReadOnlyList<Piece>>();
        string trimmed = text.Trim();
        if (trimmed.Length > LongestAnswer)
            return Wrong("that is a long answer; say it in a few words");
        if (part.Form is TextForm form)
        {
            FormReading whole = form.Read(trimmed);
            if (whole.Piece is not { } said)
                return Wrong(whole.Problem ?? "say it in a few words");
            found[part] = [said];
            return new(found, null);
        }

        foreach (string run in trimmed.Split([',', ';', '+'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            string[] words = AndHalf().Replace(run, "${number} 1/2 ${unit}").Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries);
            for (int at = 0; at < words.Length;)
            {
                (int length, string? problem) = Take(words, at, [part, .. others], found);
                if (problem is not null)
                    return Wrong(problem);
                if (length == 0 && !Fillers.Contains(words[at].Trim('.', '!', '~')))
                    return Unknown(part, words[at], run);
                at += Math.Max(length, 1);
            }
        }

        return found.Count > 0 ? new(found, null) : Unknown(part, trimmed, trimmed);
    }

    // The longest run of words that some part understands.
    private static (int Length, string? Problem) Take(string[] words, int at, IReadOnlyList<Part> parts, Dictionary<Part, IReadOnlyList<Piece>> found)
    {
        for (int length = Math.Min(LongestRun, words.Length - at); length > 0; length--)
        {
            string run = string.Join(' ', words.Skip(at).Take(length)).Trim('~');
            string? problem = null;
            foreach (Part part in parts)
            {
                IReadOnlyList<Piece> before = found.GetValueOrDefault(part, []);
                FormReading reading = part.Form is TextForm ? default : part.Form.Read(run);
                problem ??= reading.Problem;
                if (reading.Piece is not { } piece || (before.Count > 0 && part.Form.Most == 1))
                    continue;
                if (before.Any(known => known.Yaml == piece.Yaml && known.Shown == piece.Shown))
                    return (length, null);
                if (before.Count >= part.Form.Most)
                    return (0, FormattableString.Invariant($"that is more than {part.Form.Most}; name the ones that matter most"));
                found[part] = [.. before, piece];
                return (length, null);
            }

            if (problem is not null)
                return (0, problem);
        }

        return (0, null);
    }

    private static AnswerOutcome Unknown(Part part, string word, string run)
    {
        string? nearest = GrammarReader.Nearest(run, part.Form.Words) ?? GrammarReader.Nearest(word, part.Form.Words);
        string shown = ScenarioProblem.Shorten(word);
        return Wrong(nearest is null ? $"\"{shown}\" is not clear here; say {part.Form.Allowed}" : $"\"{shown}\": did you mean {nearest}? Say {part.Form.Allowed}");
    }

    private static AnswerOutcome Wrong(string problem) => new(new Dictionary<Part, IReadOnlyList<Piece>>(), problem);
}
