using LureSim.Data;
using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Decision.Baits;

/// <summary>A wanted range of body length (m), either end open.</summary>
/// <param name="Least">Least length (m), or null.</param>
/// <param name="Most">Greatest length (m), or null.</param>
public readonly record struct LengthRange(double? Least, double? Most);

/// <summary>A rule for the profile and size of the lure, from Data/rules/forage_rules.csv.</summary>
public sealed record ForageRule
{
    // A body of another profile than the wanted ones still catches fish (assumed).
    private const double OtherProfile = 0.3;

    // Each step down the list of wanted profiles costs this much.
    private const double ProfileStep = 0.05;

    // How fast a wrong length loses: logarithmic widths. Too short loses faster than too long ("match or exceed").
    private const double ShortWidth = 0.18;
    private const double LongWidth = 0.35;

    private const string CommonPractice = "common practice";

    private static readonly Lazy<IReadOnlyList<ForageRule>> Table = new(Load);

    /// <summary>Short name.</summary>
    public required string Id { get; init; }

    /// <summary>Seasons in which it holds; empty for all.</summary>
    public required IReadOnlyList<Season> Seasons { get; init; }

    /// <summary>Least water temperature (degrees Celsius), or null.</summary>
    public double? LeastTemperature { get; init; }

    /// <summary>Greatest water temperature (degrees Celsius), or null.</summary>
    public double? MostTemperature { get; init; }

    /// <summary>Forage that must have been seen, or null.</summary>
    public ForageKind? Forage { get; init; }

    /// <summary>How it must have been seen.</summary>
    public ForageSeen? Seen { get; init; }

    /// <summary>Target fish, or null for all.</summary>
    public string? Fish { get; init; }

    /// <summary>Wanted profiles, best first; empty for any.</summary>
    public required IReadOnlyList<BodyProfile> Profiles { get; init; }

    /// <summary>Wanted length where no other measure is known.</summary>
    public LengthRange Length { get; init; }

    /// <summary>Wanted length over the length of the forage.</summary>
    public LengthRange ForageRatio { get; init; }

    /// <summary>Wanted length over the length of the target fish.</summary>
    public LengthRange FishRatio { get; init; }

    /// <summary>How loud it speaks, above 0.</summary>
    public required double Weight { get; init; }

    /// <summary>How sure it is that fish feed so here today, 0 to 1; 0 for a habit of the fish, which says nothing of today (assumed).</summary>
    public double Belief { get; init; }

    /// <summary>Key of docs/REFERENCES.bib, or "common practice".</summary>
    public required string Source { get; init; }

    /// <summary>The rule in words, without units.</summary>
    public required string Says { get; init; }

    /// <summary>True if it is common practice rather than published.</summary>
    public bool IsPractice => Source == CommonPractice;

    /// <summary>All rules, in the order of the table.</summary>
    public static IReadOnlyList<ForageRule> All => Table.Value;

    /// <summary>The forage in the scenario that makes the rule hold, longest first; null where the rule asks for none.</summary>
    private ForageSighting? Cause(Scenario scenario) => scenario.Forage
        .Where(item => item.Kind == Forage && (Seen is null || item.Seen == Seen))
        .OrderByDescending(item => item.Length ?? 0)
        .FirstOrDefault();

    /// <summary>Whether the rule holds here.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="season">The season, or null where it is not known.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    public bool Holds(Scenario scenario, Season? season)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        double temperature = scenario.Spot.TemperatureCelsius;
        return (Seasons.Count == 0 || (season is { } known && Seasons.Contains(known)))
            && !(temperature < LeastTemperature)
            && !(temperature > MostTemperature)
            && (Fish is null || string.Equals(Fish, scenario.Spot.TargetFish, StringComparison.OrdinalIgnoreCase))
            && (Forage is null || Cause(scenario) is not null)
            && (FishRatio == default || scenario.Spot.TargetLength is not null);
    }

    /// <summary>The length it wants here.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    public LengthRange Wanted(Scenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        if (Forage is not null && ForageRatio != default && Cause(scenario)?.Length is { } forage)
            return new LengthRange(ForageRatio.Least * forage, ForageRatio.Most * forage);
        return FishRatio != default && scenario.Spot.TargetLength is { } fish
            ? new LengthRange(FishRatio.Least * fish, FishRatio.Most * fish)
            : Length;
    }

    /// <summary>How well a body fits the rule, 0 to 1: profile times length.</summary>
    /// <param name="body">The body.</param>
    /// <param name="scenario">A validated scenario.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public double Fit(LureBody body, Scenario scenario)
    {
        ArgumentNullException.ThrowIfNull(body);
        int place = Enumerable.Range(0, Profiles.Count).FirstOrDefault(i => Profiles[i] == body.Profile, -1);
        double profile = Profiles.Count == 0 ? 1 : place < 0 ? OtherProfile : 1 - (ProfileStep * place);
        LengthRange wanted = Wanted(scenario);
        double off = body.Length < wanted.Least ? Math.Log(wanted.Least.Value / body.Length) / ShortWidth
            : body.Length > wanted.Most ? Math.Log(body.Length / wanted.Most.Value) / LongWidth
            : 0;
        return profile * Math.Exp(-0.5 * off * off);
    }

    private static List<ForageRule> Load() => [.. ReferenceTable.Rules("forage_rules").Rows.Select(Read)];

    private static ForageRule Read(ReferenceRow row)
    {
        return new ForageRule
        {
            Id = row.Text("id"),
            Seasons = [.. Split("seasons").Select(ReferenceWords.Parse<Season>)],
            LeastTemperature = Number("temperature_min_C"),
            MostTemperature = Number("temperature_max_C"),
            Forage = row.Text("forage") is { Length: > 0 } kind ? ReferenceWords.Parse<ForageKind>(kind) : null,
            Seen = row.Text("seen") is { Length: > 0 } seen ? ReferenceWords.Parse<ForageSeen>(seen) : null,
            Fish = row.Text("fish") is { Length: > 0 } fish ? fish : null,
            Profiles = [.. Split("profiles").Select(word => LureKinds.Named(word).Profile)],
            Length = new LengthRange(Number("length_min_mm") / 1000, Number("length_max_mm") / 1000),
            ForageRatio = new LengthRange(Number("forage_ratio_min"), Number("forage_ratio_max")),
            FishRatio = new LengthRange(Number("fish_ratio_min"), Number("fish_ratio_max")),
            Weight = Number("weight") ?? throw new InvalidOperationException($"Rule {row.Text("id")} has no weight."),
            Belief = row.Number("belief"),
            Source = row.Text("source"),
            Says = row.Text("says"),
        };

        string[] Split(string column) => row.Text(column).Split('|', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

        double? Number(string column) => row.Number(column) is var value && double.IsNaN(value) ? null : value;
    }
}
