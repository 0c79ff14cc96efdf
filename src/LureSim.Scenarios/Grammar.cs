using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>What may stand at a place in a scenario. One description drives the reader, the schema and the reference.</summary>
internal abstract record GrammarValue
{
    /// <summary>This value and what lies in it, each with its path: keys by dots, the items of a list by []; where a value has two forms, both under its path.</summary>
    /// <param name="path">The path of this value; empty for the whole.</param>
    public IEnumerable<(string Path, GrammarValue Value)> WithParts(string path = "")
    {
        IEnumerable<(string Path, GrammarValue Value)> parts = this switch
        {
            MapValue map => map.Keys.SelectMany(key => key.Value.WithParts(path.Length == 0 ? key.Name : $"{path}.{key.Name}")),
            ListValue list => list.Item.WithParts(path + "[]"),
            ListOrMapValue either => either.List.WithParts(path).Concat(either.Map.WithParts(path)),
            ShortOrMapValue either => either.Map.WithParts(path),
            PairsOrMapValue either => either.Map.WithParts(path),
            _ => [],
        };
        return parts.Prepend((path, this));
    }
}

/// <summary>A word with the meaning it carries.</summary>
/// <param name="Text">The word as written.</param>
/// <param name="Meaning">Enum value or number (in SI) that it stands for; null where the word itself is the meaning.</param>
/// <param name="Doc">What it means, for the reference.</param>
internal sealed record GrammarWord(string Text, object? Meaning, string Doc)
{
    /// <summary>The word of a list with this text, or the one that this everyday name stands for; null for none.</summary>
    public static GrammarWord? Find(IReadOnlyList<GrammarWord> words, EverydayNames names, string text) =>
        words.FirstOrDefault(word => word.Text == text) ?? (names.Word(text) is { } meant ? words.FirstOrDefault(word => word.Text == meant) : null);
}

/// <summary>A number with a unit, in a closed range (SI).</summary>
internal sealed record QuantityValue(QuantityKind Kind, double Minimum, double Maximum) : GrammarValue
{
    /// <summary>A number with a unit, in a range of the model.</summary>
    public QuantityValue(QuantityKind kind, ValueRange range)
        : this(kind, range.Least, range.Most)
    {
    }

    /// <summary>Words that may stand in its place.</summary>
    public IReadOnlyList<GrammarWord> Words { get; init; } = [];

    /// <summary>Names that are read as one of the words.</summary>
    public EverydayNames Names { get; init; } = EverydayNames.None;

    /// <summary>What to say to who writes another word; null for the general advice.</summary>
    public string? Advice { get; init; }

    /// <summary>The word of a text or of a name for it; null for none.</summary>
    public GrammarWord? Find(string text) => GrammarWord.Find(Words, Names, text);

    /// <summary>An example inside the range that suits the key better than the kind's own; null for that.</summary>
    public string? Example { get; init; }
}

/// <summary>A percentage, or a quantity.</summary>
/// <param name="Share">What a percentage must be.</param>
/// <param name="Amount">What a value with another unit must be.</param>
internal sealed record ShareOrAmountValue(QuantityValue Share, QuantityValue Amount) : GrammarValue
{
    /// <summary>Which of the two a text is meant to be.</summary>
    public QuantityValue For(string text) => text.AsSpan().TrimEnd().EndsWith("%", StringComparison.Ordinal) ? Share : Amount;
}

/// <summary>A pure number in a closed range; <paramref name="AllowRatio"/> also reads "6.2:1".</summary>
internal sealed record NumberValue(double Minimum, double Maximum, bool AllowRatio, string Example) : GrammarValue;

/// <summary>A whole number in a closed range.</summary>
internal sealed record IntegerValue(int Minimum, int Maximum) : GrammarValue;

/// <summary>Free text of at most so many characters.</summary>
internal sealed record TextValue(int MaximumLength, bool AllowLines) : GrammarValue;

/// <summary>A calendar day, year first, in a closed range.</summary>
internal sealed record DateValue(DateOnly Minimum, DateOnly Maximum, string Example) : GrammarValue;

/// <summary>A time of the 24-hour clock in hours and minutes.</summary>
internal sealed record ClockValue(string Example) : GrammarValue
{
    /// <summary>Words that may stand in its place.</summary>
    public WordValue? Words { get; init; }
}

/// <summary>One of a list of words.</summary>
internal sealed record WordValue(IReadOnlyList<GrammarWord> Words) : GrammarValue
{
    /// <summary>Names that are read as one of the words.</summary>
    public EverydayNames Names { get; init; } = EverydayNames.None;

    /// <summary>The word of a text or of a name for it; null for none.</summary>
    public GrammarWord? Find(string text) => GrammarWord.Find(Words, Names, text);
}

/// <summary>A colour: a preset's name or a hex colour.</summary>
internal sealed record ColourValue(IReadOnlyList<string> Names) : GrammarValue
{
    /// <summary>True if the name of a measured colour of the tackle box will do; the builder knows them.</summary>
    public bool OrMeasured { get; init; }
}

/// <summary>A list with a closed range of length.</summary>
internal sealed record ListValue(GrammarValue Item, int Minimum, int Maximum) : GrammarValue;

/// <summary>A list, or a mapping from which the list is made.</summary>
internal sealed record ListOrMapValue(ListValue List, MapValue Map) : GrammarValue;

/// <summary>A mapping.</summary>
internal sealed record MapValue(string Name, string Doc, IReadOnlyList<GrammarKey> Keys) : GrammarValue
{
    /// <summary>The groups of which exactly one key must be given.</summary>
    public IEnumerable<IGrouping<string, GrammarKey>> Groups => Keys.Where(key => key.OneOf is not null).GroupBy(key => key.OneOf!);

    /// <summary>The forms of which exactly one must be given, each with all its keys; none where the mapping has no forms.</summary>
    public IReadOnlyList<IGrouping<string, GrammarKey>> Forms { get; } = [.. Keys.Where(key => key.Form is not null).GroupBy(key => key.Form!)];

    /// <summary>The forms by their keys, for people.</summary>
    public string FormList => string.Join(", or ", Forms.Select(form => string.Join(" + ", form.Select(key => key.Name))));
}

/// <summary>A short form (a quantity) that stands for a mapping with only that key.</summary>
/// <param name="Key">The key of <paramref name="Map"/> that the short form gives.</param>
/// <param name="Map">The long form.</param>
internal sealed record ShortOrMapValue(string Key, MapValue Map) : GrammarValue
{
    /// <summary>How people say several of its keys in one line; null where they do not.</summary>
    public GrammarPhrase? Phrase { get; init; }

    /// <summary>What the short form must be.</summary>
    public GrammarValue Short => Map.Keys.First(key => key.Name == Key).Value;

    /// <summary>False where other keys are required as well, so that the short form alone says too little.</summary>
    public bool ShortIsEnough => !Map.Keys.Any(key => key.Required && key.Form is null && key.Name != Key);
}

/// <summary>A list of pairs of quantities, each written "first: second".</summary>
/// <param name="First">What stands before the colon.</param>
/// <param name="Second">What stands behind it.</param>
/// <param name="FirstName">Name of the first in the values that are read.</param>
/// <param name="SecondName">Name of the second.</param>
/// <param name="Minimum">Fewest pairs.</param>
/// <param name="Maximum">Most pairs.</param>
/// <param name="Example">An example of the whole list.</param>
internal sealed record PairsValue(QuantityValue First, QuantityValue Second, string FirstName, string SecondName, int Minimum, int Maximum, string Example) : GrammarValue;

/// <summary>A list of pairs, or a mapping in its place.</summary>
internal sealed record PairsOrMapValue(PairsValue Pairs, MapValue Map) : GrammarValue;

/// <summary>A key of a mapping.</summary>
/// <param name="Name">Spelling.</param>
/// <param name="Value">What it holds.</param>
/// <param name="Doc">What it is, for the reference and for editors.</param>
internal sealed record GrammarKey(string Name, GrammarValue Value, string Doc)
{
    /// <summary>Another spelling of the key; null for none.</summary>
    public string? Alias { get; init; }

    /// <summary>True if the key must be given.</summary>
    public bool Required { get; init; }

    /// <summary>What holds when it is not given, in words; null for a required key.</summary>
    public string? Default { get; init; }

    /// <summary>Exactly one key of all with this group name must be given; null for none.</summary>
    public string? OneOf { get; init; }

    /// <summary>The key belongs to the form of this name, and is required in it; null for a key of every form.</summary>
    public string? Form { get; init; }
}

/// <summary>Several keys of a mapping said in one line, such as "60 ft with 1/4 oz".</summary>
/// <param name="Example">An example.</param>
/// <param name="Pattern">Texts that may be such a line, for the schema.</param>
/// <param name="Split">The keys with their texts, in the order of the line; null for a text that is none.</param>
internal sealed record GrammarPhrase(string Example, string Pattern, Func<string, IReadOnlyList<(string Key, string Text)>?> Split);
