using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace LureSim.Scenarios;

/// <summary>Outcome of reading a quick note: the item of <c>seen</c> that it stands for, or what to write.</summary>
/// <param name="Item">The item as a scenario writes it, on one line; empty where the note was not understood.</param>
/// <param name="Message">What is wrong; empty where the note was understood.</param>
public readonly record struct QuickReading(string Item, string Message)
{
    /// <summary>True if the note was understood.</summary>
    public bool IsValid => Item.Length > 0;
}

/// <summary>Reads what an angler jots down, such as "1/4 oz bottom at 9", as an item of <c>seen</c>, and puts it into a scenario.</summary>
public static partial class QuickObservation
{
    /// <summary>Longest note that is looked at.</summary>
    public const int MaximumLength = 200;

    private const string Number = @"(?<n>[0-9]{1,3}(?:\.[0-9]{1,2})?)";
    private const string Quantity = @"(?<q>[0-9]{1,4}(?:\.[0-9]{1,3})?\s*(?:ft|feet|foot|in|inch|inches|m|cm|yd|yards?|meters?|metres?))";
    private const string Seconds = @"(?<t>[0-9]{1,3}(?:\.[0-9]{1,2})?)\s*(?:s|sec|secs|seconds?)";

    private const RegexOptions Plain = RegexOptions.CultureInvariant | RegexOptions.IgnoreCase;

    [GeneratedRegex(@"^(?<w>unweighted|(?:[0-9]{1,2}\s+)?[0-9]{1,3}/[0-9]{1,3}\s*(?:oz|ounces?)|[0-9]{1,3}(?:\.[0-9]{1,3})?\s*(?:oz|ounces?|g|grams?))\s+(?<rest>.+)$", Plain)]
    private static partial Regex Weight();

    // In this order: what did not happen before what did, seconds before counts.
    [GeneratedRegex(@"^(?:no|not on|never|not)\s+(?:the\s+)?bottom\s+(?:by|in|after|at|within)?\s*" + Seconds + "$", Plain)]
    private static partial Regex NoBottomSeconds();

    [GeneratedRegex(@"^(?:no|not on|never|not)\s+(?:the\s+)?bottom\s+(?:by|in|after|at|within)?\s*(?:a\s+)?(?:count\s+(?:of\s+)?)?" + Number + @"(?:[- ]?counts?)?$", Plain)]
    private static partial Regex NoBottomCount();

    [GeneratedRegex(@"^(?:on\s+|hit\s+|hits\s+)?(?:the\s+)?bottom\s+(?:in|at|after)?\s*" + Seconds + "$", Plain)]
    private static partial Regex BottomSeconds();

    [GeneratedRegex(@"^(?:on\s+|hit\s+|hits\s+)?(?:the\s+)?bottom\s+(?:in|at|after)?\s*(?:an?\s+)?(?:count\s+(?:of\s+)?)?" + Number + @"(?:[- ]?counts?)?$", Plain)]
    private static partial Regex BottomCount();

    [GeneratedRegex(@"^(?:first\s+)?ticks?\s+(?:at|on)\s+(?:an?\s+)?(?:count\s+(?:of\s+)?)(?<n>[0-9]{1,3})$", Plain)]
    private static partial Regex FirstTick();

    [GeneratedRegex(@"^no\s+ticks?\s+(?:by|after|in)\s+(?:turn\s+)?" + Number + @"(?:\s*turns?)?$", Plain)]
    private static partial Regex NoTick();

    [GeneratedRegex(@"^(?:first\s+)?ticks?(?:ed)?\s+(?:at|after|on)\s+(?:turn\s+)?" + Number + @"(?:\s*turns?)?$", Plain)]
    private static partial Regex TurnsToTick();

    [GeneratedRegex(@"^(?:clear|stops?\s+ticking|off\s+(?:the\s+)?bottom)\s+(?:at|after)\s+(?:turn\s+)?" + Number + @"(?:\s*turns?)?$", Plain)]
    private static partial Regex TurnsToClear();

    [GeneratedRegex(@"^line\s+" + Number + @"\s*(?:deg|degrees?|\u00b0)\s+(?:to\s+the\s+)?(?<side>left|right)$", Plain)]
    private static partial Regex LineAngle();

    [GeneratedRegex(@"^(?:came|comes?)\s+out\s+" + Number + @"\s*(?:deg|degrees?|\u00b0)\s+(?:to\s+the\s+)?(?<side>left|right)$", Plain)]
    private static partial Regex CameOut();

    [GeneratedRegex(@"^line\s+out\s+" + Quantity + "$", Plain)]
    private static partial Regex LineOut();

    [GeneratedRegex(@"^(?:white\s+)?plate\s+gone\s+(?:at\s+)?" + Quantity + "$", Plain)]
    private static partial Regex PlateGone();

    [GeneratedRegex(@"^(?:bright\s+)?lure\s+gone\s+(?:at\s+)?" + Quantity + "$", Plain)]
    private static partial Regex LureGone();

    [GeneratedRegex("^float\\s+" + Quantity + @"\s+in\s+" + Seconds + "$", Plain)]
    private static partial Regex Float();

    [GeneratedRegex(@"^(?:pool|bucket|fell)\s+" + Quantity + @"\s+in\s+" + Seconds + "$", Plain)]
    private static partial Regex Pool();

    private static readonly (Func<Regex> Form, Func<Match, string> Item)[] Forms =
    [
        (NoBottomSeconds, m => $"bottom: {m.Groups["t"].Value} s, happened: no"),
        (NoBottomCount, m => $"bottom_count: {m.Groups["n"].Value}, happened: no"),
        (BottomSeconds, m => $"bottom: {m.Groups["t"].Value} s"),
        (BottomCount, m => $"bottom_count: {m.Groups["n"].Value}"),
        (FirstTick, m => $"first_tick: {m.Groups["n"].Value}"),
        (NoTick, m => $"turns_to_tick: {m.Groups["n"].Value}, happened: no"),
        (TurnsToTick, m => $"turns_to_tick: {m.Groups["n"].Value}"),
        (TurnsToClear, m => $"turns_to_clear: {m.Groups["n"].Value}"),
        (LineAngle, m => $"line_angle: {m.Groups["n"].Value} deg, side: {m.Groups["side"].Value.ToLowerInvariant()}"),
        (CameOut, m => $"came_out: {m.Groups["n"].Value} deg, side: {m.Groups["side"].Value.ToLowerInvariant()}"),
        (LineOut, m => $"line_out: {m.Groups["q"].Value}"),
        (PlateGone, m => $"plate_gone: {m.Groups["q"].Value}"),
        (LureGone, m => $"lure_gone: {m.Groups["q"].Value}"),
        (Float, m => $"float: {{distance: {m.Groups["q"].Value}, time: {m.Groups["t"].Value} s}}"),
        (Pool, m => $"pool: {{depth: {m.Groups["q"].Value}, time: {m.Groups["t"].Value} s}}"),
    ];

    /// <summary>Notes that are understood, for help and errors.</summary>
    public static IReadOnlyList<string> Examples { get; } =
    [
        "1/4 oz bottom at 9", "1/4 oz bottom in 8.5 s", "1/8 oz no bottom by 25", "1/4 oz first tick at count 7", "3/8 oz tick at turn 12", "1/4 oz clear after turn 15", "1/4 oz line 30 deg left",
        "1/4 oz came out 20 deg right", "1/4 oz line out 70 ft", "plate gone at 4 ft", "lure gone at 3 ft", "float 30 ft in 18 s", "1/4 oz pool 6 ft in 3.5 s",
    ];

    /// <summary>Reads a note.</summary>
    /// <param name="note">The note; may be anything, including null.</param>
    /// <param name="date">Day on which it was seen; null to leave it out.</param>
    public static QuickReading Read(string? note, DateOnly? date = null)
    {
        string text = Spaces().Replace(note?.Trim() ?? "", " ");
        if (text.Length is 0 or > MaximumLength) return new("", $"write what you saw, such as \"{Examples[0]}\"");
        string head = "", rest = text;
        if (Weight().Match(text) is { Success: true } weight)
        {
            head = $"jig_head: {weight.Groups["w"].Value}, ";
            rest = weight.Groups["rest"].Value;
        }

        foreach ((Func<Regex> form, Func<Match, string> item) in Forms)
        {
            if (form().Match(rest) is not { Success: true } match) continue;
            string day = date is { } given ? string.Create(CultureInfo.InvariantCulture, $", date: {given:yyyy-MM-dd}") : "";
            return new($"{{{head}{item(match)}{day}}}", "");
        }

        return new("", $"\"{ScenarioProblem.Shorten(text)}\" is not understood; write for example {string.Join(", ", Examples.Select(example => $"\"{example}\""))}");
    }

    /// <summary>Adds an item to the list <c>seen</c> of a scenario; every other line stays as it is.</summary>
    /// <param name="scenario">The text of a valid scenario.</param>
    /// <param name="item">The item on one line.</param>
    /// <returns>The new text; null where the list is written on one line in brackets and cannot be added to.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string? Append(string scenario, string item)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(item);
        string end = scenario.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        List<string> lines = [.. scenario.Split('\n').Select(line => line.TrimEnd('\r'))];
        int at = lines.FindIndex(line => line.StartsWith("seen:", StringComparison.Ordinal));
        if (at < 0)
        {
            while (lines.Count > 0 && lines[^1].Length == 0) lines.RemoveAt(lines.Count - 1);
            return Together([.. lines, "seen:", "  - " + item, ""]);
        }

        string after = lines[at]["seen:".Length..].Trim();
        if (after.Length > 0 && !after.StartsWith('#')) return null;
        int indent = -1, last = at;
        for (int i = at + 1; i < lines.Count; i++)
        {
            string line = lines[i], bare = line.TrimStart();
            if (bare.Length == 0 || bare.StartsWith('#')) continue;
            int depth = line.Length - bare.Length;
            bool dash = bare.StartsWith("- ", StringComparison.Ordinal) || bare == "-";
            if (indent < 0 && dash) indent = depth;
            if (depth < indent || indent < 0 || (depth == indent && !dash)) break;
            last = i;
        }

        lines.Insert(last + 1, new string(' ', Math.Max(indent, 0)) + "- " + item);
        return Together(lines);

        string Together(IReadOnlyList<string> all) => new StringBuilder().AppendJoin(end, all).ToString();
    }

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();
}
