namespace LureSim.Workbench.Bench;

/// <summary>What the knobs were set to, where that is not what the file has: values as a scenario writes them, by knob. Compared and written in the order of the names.</summary>
internal sealed class BenchSettings
{
    // The page is the only writer; anything longer is none of it.
    private const int MostKnobs = 40;
    private const int LongestValue = 80;

    // Notes stand together in one value.
    private const int MostNotes = 20;
    private const string Between = "; ";

    private readonly SortedDictionary<string, string> values;

    private BenchSettings(SortedDictionary<string, string> values) => this.values = values;

    /// <summary>Nothing changed.</summary>
    public static BenchSettings None { get; } = new(new SortedDictionary<string, string>(StringComparer.Ordinal));

    /// <summary>The value of a knob; null where it stands as in the file.</summary>
    /// <param name="id">The knob.</param>
    public string? this[string id] => values.GetValueOrDefault(id);

    /// <summary>The values by knob.</summary>
    public IReadOnlyDictionary<string, string> Values => values;

    /// <summary>Settings from the page.</summary>
    /// <param name="values">Values by knob; what is too long or too many is left out.</param>
    public static BenchSettings Of(IEnumerable<KeyValuePair<string, string>>? values)
    {
        var taken = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach ((string id, string value) in values ?? [])
        {
            if (taken.Count < MostKnobs && id.Length <= LongestValue && value is not null && value.Length <= (id == KnobIds.Seen ? MostNotes * LongestValue : LongestValue)) taken[id] = value;
        }

        return new BenchSettings(taken);
    }

    /// <summary>Settings written as in the address of a page.</summary>
    /// <param name="text">"cur=0.8%20kn&amp;dep=16%20ft".</param>
    public static BenchSettings Parse(string text) => Of(text.Split('&', StringSplitOptions.RemoveEmptyEntries)
        .Select(part => part.Split('=', 2)).Where(pair => pair.Length == 2)
        .Select(pair => KeyValuePair.Create(Uri.UnescapeDataString(pair[0]), Uri.UnescapeDataString(pair[1]))));

    /// <summary>With one more value.</summary>
    public BenchSettings With(string id, string value) => new(new SortedDictionary<string, string>(values, StringComparer.Ordinal) { [id] = value });

    /// <summary>What was noted on the page, the oldest first; the newest are kept where there are too many.</summary>
    public IReadOnlyList<string> Notes => this[KnobIds.Seen] is { } all ? [.. all.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).TakeLast(MostNotes)] : [];

    /// <summary>With one more note.</summary>
    public BenchSettings Noting(string note) => With(KnobIds.Seen, string.Join(Between, Notes.Append(note).TakeLast(MostNotes)));

    /// <summary>With the values of others, which go first.</summary>
    public BenchSettings With(BenchSettings others)
    {
        var all = new SortedDictionary<string, string>(values, StringComparer.Ordinal);
        foreach ((string id, string value) in others.values) all[id] = value;
        return new BenchSettings(all);
    }

    /// <summary>Some of the knobs alone.</summary>
    public BenchSettings Only(params string[] ids) => Of(values.Where(pair => ids.Contains(pair.Key)));

    /// <summary>All but some of the knobs.</summary>
    public BenchSettings Without(params string[] ids) => Of(values.Where(pair => !ids.Contains(pair.Key)));

    /// <summary>As in the address of a page.</summary>
    public override string ToString() => string.Join('&', values.Select(pair => $"{Uri.EscapeDataString(pair.Key)}={Uri.EscapeDataString(pair.Value)}"));
}
