using System.Globalization;
using System.Text.RegularExpressions;
using LureSim.Model;

namespace LureSim.Scenarios.Interview;

/// <summary>A word that answers a question.</summary>
/// <param name="Word">The word, in lower case.</param>
/// <param name="Meaning">What it means, in a few words; may be empty.</param>
/// <param name="Yaml">How the scenario says it; empty where the answer is not written as it stands.</param>
/// <param name="Number">The value that it stands for (SI), NaN for none.</param>
internal sealed record Choice(string Word, string Meaning, string Yaml = "", double Number = double.NaN)
{
    /// <summary>Other words for it, in lower case.</summary>
    public IReadOnlyList<string> Names { get; init; } = [];

    /// <summary>True if a text, in lower case, is the word or a name for it.</summary>
    public bool Is(string text) => text == Word || Names.Contains(text, StringComparer.Ordinal);
}

/// <summary>A part of an answer as it was understood.</summary>
/// <param name="Shown">In words, which can be read again.</param>
/// <param name="Yaml">As the scenario says it.</param>
/// <param name="Number">The value (SI), NaN for none.</param>
internal sealed record Piece(string Shown, string Yaml, double Number);

/// <summary>What a form makes of a few words: a piece, a problem, or neither where they are not of this form.</summary>
/// <param name="Piece">What was understood.</param>
/// <param name="Problem">Why it cannot be taken.</param>
internal readonly record struct FormReading(Piece? Piece, string? Problem = null);

/// <summary>A kind of answer.</summary>
internal abstract record AnswerForm
{
    /// <summary>Most pieces that it takes.</summary>
    public int Most { get; init; } = 1;

    /// <summary>What may be answered, in one phrase.</summary>
    public abstract string Allowed { get; }

    /// <summary>Words that can be answered, to look for the nearest.</summary>
    public abstract IEnumerable<string> Words { get; }

    /// <summary>Reads a few words.</summary>
    /// <param name="text">The words, spaces once, in lower case but for units.</param>
    public abstract FormReading Read(string text);
}

/// <summary>Any text.</summary>
/// <param name="Longest">Most characters.</param>
internal sealed record TextForm(int Longest) : AnswerForm
{
    /// <inheritdoc/>
    public override string Allowed => "any words";

    /// <inheritdoc/>
    public override IEnumerable<string> Words => [];

    /// <inheritdoc/>
    public override FormReading Read(string text) =>
        text.Length > Longest ? new(null, string.Create(CultureInfo.InvariantCulture, $"keep it under {Longest} characters"))
        : text.Any(char.IsControl) ? new(null, "letters and digits only, please")
        : new(new Piece(text, text, double.NaN));
}

/// <summary>One or several of a list of words.</summary>
/// <param name="Choices">The words.</param>
internal sealed record ChoiceForm(IReadOnlyList<Choice> Choices) : AnswerForm
{
    /// <inheritdoc/>
    public override string Allowed => string.Join(", ", Choices.Select(choice => choice.Word)) + (Most > 1 ? "; more than one is fine" : "");

    /// <inheritdoc/>
    public override IEnumerable<string> Words => Choices.SelectMany(choice => choice.Names.Prepend(choice.Word));

    /// <inheritdoc/>
    public override FormReading Read(string text) =>
        Choices.FirstOrDefault(choice => choice.Is(Plain(text))) is { } found ? new(new Piece(found.Word, found.Yaml, found.Number)) : default;

    /// <summary>A text as words are compared.</summary>
    internal static string Plain(string text) => text.ToLowerInvariant().Replace('_', ' ').Trim('.', '!');
}

/// <summary>A number with a unit, or a word that stands for one.</summary>
/// <param name="Kind">What it measures.</param>
/// <param name="Least">Least value (SI).</param>
/// <param name="Largest">Greatest value (SI).</param>
/// <param name="Unit">The unit of a number without one.</param>
/// <param name="Example">An example.</param>
internal sealed partial record MeasureForm(QuantityKind Kind, double Least, double Largest, string Unit, string Example) : AnswerForm
{
    private static readonly string[] Numbers = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>Words that stand for values.</summary>
    public IReadOnlyList<Choice> Choices { get; init; } = [];

    /// <inheritdoc/>
    public override string Allowed => string.Join("; ", ((string[])[$"a number like {Example}", string.Join(", ", Choices.Select(Told))]).Where(text => text.Length > 0)) + (Most > 1 ? "; more than one is fine" : "");

    /// <inheritdoc/>
    public override IEnumerable<string> Words => Choices.SelectMany(choice => choice.Names.Prepend(choice.Word));

    [GeneratedRegex(@"^(?<low>[0-9.]+)\s*(?:-|to)\s*(?<high>[0-9.]+)(?<unit>[^0-9]*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Between();

    [GeneratedRegex(@"^(?<far>.+?) (?:in|per|every) (?<long>.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Timed();

    [GeneratedRegex(@"^[0-9]+(?:\.[0-9]+)?$|^(?:[0-9]+ )?[0-9]+/[0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex Bare();

    /// <inheritdoc/>
    public override FormReading Read(string text)
    {
        string plain = ChoiceForm.Plain(text);
        if (Choices.FirstOrDefault(choice => choice.Is(plain)) is { } found)
            return new(new Piece(found.Word, found.Yaml, found.Number));
        if (Kind == QuantityKind.Speed && Timed().Match(text) is { Success: true } timed)
            return Float(timed);
        string number = Spelled(text);
        if (Most == 1 && Between().Match(number) is { Success: true } range
            && double.TryParse(range.Groups["low"].Value, CultureInfo.InvariantCulture, out double low)
            && double.TryParse(range.Groups["high"].Value, CultureInfo.InvariantCulture, out double high))
            number = string.Create(CultureInfo.InvariantCulture, $"{0.5 * (low + high):0.###}{range.Groups["unit"].Value}");
        if (Bare().IsMatch(number))
            number = $"{number} {Unit}";
        foreach (string spelling in (string[])[number, number.ToLowerInvariant(), number.ToUpperInvariant(), number.ToLowerInvariant().Replace(" f", " F", StringComparison.Ordinal).Replace(" c", " C", StringComparison.Ordinal)])
        {
            if (QuantityReader.Read(Kind, spelling) is { IsValid: true } reading)
                return Checked(reading.Text, reading.Value);
        }

        return default;
    }

    private static string Told(Choice choice) => choice.Meaning.Length == 0 ? choice.Word : $"{choice.Word} ({choice.Meaning})";

    private FormReading Float(Match timed)
    {
        QuantityReading far = QuantityReader.Read(QuantityKind.Length, Spelled(timed.Groups["far"].Value)), taken = QuantityReader.Read(QuantityKind.Duration, Spelled(timed.Groups["long"].Value));
        if (!far.IsValid || !taken.IsValid || taken.Value <= 0.0)
            return default;
        double speed = far.Value / taken.Value;
        return Checked(string.Create(CultureInfo.InvariantCulture, $"{speed / 0.3048:0.##} ft/s"), speed);
    }

    private FormReading Checked(string text, double value)
    {
        // A value at the very edge may land outside by the rounding of the unit.
        double slack = 1e-9 * Math.Max(Math.Abs(Least), Math.Abs(Largest));
        return value < Least - slack || value > Largest + slack
            ? new(null, $"{text} is {(value < Least ? "too little" : "too much")}: {QuantityText.Range(Kind, Least, Largest, us: true)}")
            : new(new Piece(text, text, value));
    }

    // 4' 6", a half, six, 1-1/2: as people write numbers.
    private static string Spelled(string text)
    {
        string number = text.Replace("\u00bd", " 1/2", StringComparison.Ordinal).Replace("\u00bc", " 1/4", StringComparison.Ordinal).Replace("\u00be", " 3/4", StringComparison.Ordinal)
            .Replace("'", " ft ", StringComparison.Ordinal).Replace("\"", " in ", StringComparison.Ordinal);
        string[] words = number.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < words.Length; i++)
        {
            string lower = words[i].ToLowerInvariant();
            int named = Array.IndexOf(Numbers, lower);
            int dash = lower.IndexOf('-', StringComparison.Ordinal);
            words[i] = named >= 0 ? named.ToString(CultureInfo.InvariantCulture)
                : lower == "half" ? "1/2"
                : lower is "a" or "an" ? (i > 0 ? "" : "1")
                : dash > 0 && lower.Contains('/', StringComparison.Ordinal) && lower[..dash].All(char.IsAsciiDigit) ? $"{words[i][..dash]} {words[i][(dash + 1)..]}"
                : words[i].StartsWith('.') ? "0" + words[i]
                : words[i];
        }

        return string.Join(' ', words.Where(word => word.Length > 0));
    }
}

/// <summary>A count without unit, or a word.</summary>
/// <param name="Least">Least count.</param>
/// <param name="Largest">Greatest count.</param>
internal sealed record CountForm(double Least, double Largest) : AnswerForm
{
    /// <summary>Words in its place.</summary>
    public IReadOnlyList<Choice> Choices { get; init; } = [];

    /// <inheritdoc/>
    public override string Allowed => string.Create(CultureInfo.InvariantCulture, $"a number, {Least:0} to {Largest:0}; ") + string.Join(", ", Choices.Select(choice => choice.Word));

    /// <inheritdoc/>
    public override IEnumerable<string> Words => Choices.SelectMany(choice => choice.Names.Prepend(choice.Word));

    /// <inheritdoc/>
    public override FormReading Read(string text)
    {
        if (Choices.FirstOrDefault(choice => choice.Is(ChoiceForm.Plain(text))) is { } found)
            return new(new Piece(found.Word, found.Yaml, found.Number));
        string number = text.Split(' ')[0];
        if (!(text == number || text.EndsWith("turns", StringComparison.OrdinalIgnoreCase)) || !double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double count))
            return default;
        return count >= Least && count <= Largest
            ? new(new Piece(number, number, count))
            : new(null, string.Create(CultureInfo.InvariantCulture, $"{number} is out of what a hand does: {Least:0} to {Largest:0}"));
    }
}

/// <summary>Baits with their lengths, such as "4 in paddle tail".</summary>
internal sealed record BaitForm : AnswerForm
{
    private static readonly MeasureForm Length = new(QuantityKind.Length, 1.5 * 0.0254, 7.0 * 0.0254, "in", "4 in");

    // Common lengths of each, assumed.
    private static readonly Dictionary<BodyProfile, string> Usual = new()
    {
        [BodyProfile.SoftJerkbait] = "5 in",
        [BodyProfile.ShrimpImitation] = "3 in",
        [BodyProfile.CrabImitation] = "2 in",
        [BodyProfile.Spoon] = "3 in",
    };

    private static IEnumerable<GrammarWord> Profiles => ScenarioGrammar.ProfileWord.Words;

    /// <inheritdoc/>
    public override string Allowed => $"a length and a kind, such as 4 in paddle tail: {string.Join(", ", Profiles.Select(word => word.Text))}; more than one is fine";

    /// <inheritdoc/>
    public override IEnumerable<string> Words => Profiles.SelectMany(Spellings);

    /// <inheritdoc/>
    public override FormReading Read(string text)
    {
        string plain = ChoiceForm.Plain(text);
        foreach ((GrammarWord word, string name) in Profiles.SelectMany(word => Spellings(word).Select(name => (word, name))).OrderByDescending(pair => pair.name.Length))
        {
            string? rest = plain == name || plain == name + "s" ? ""
                : plain.EndsWith(" " + name, StringComparison.Ordinal) ? plain[..^(name.Length + 1)]
                : plain.EndsWith(" " + name + "s", StringComparison.Ordinal) ? plain[..^(name.Length + 2)]
                : plain.StartsWith(name + " ", StringComparison.Ordinal) ? plain[(name.Length + 1)..]
                : null;
            if (rest is null)
                continue;
            FormReading length = rest.Length == 0 ? new(new Piece("", Usual.GetValueOrDefault((BodyProfile)word.Meaning!, "4 in"), 0.0)) : Length.Read(rest);
            return length.Piece is { } size ? new(new Piece($"{size.Yaml} {word.Text}", $"{{profile: {word.Text}, length: {size.Yaml}}}", double.NaN)) : length;
        }

        return default;
    }

    private static IEnumerable<string> Spellings(GrammarWord word) => ScenarioGrammar.ProfileWord.Names.Of(word.Text).Prepend(word.Text);
}
