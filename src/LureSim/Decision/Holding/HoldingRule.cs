using LureSim.Data;
using LureSim.Light;
using LureSim.Model;

namespace LureSim.Decision.Holding;

/// <summary>A rule for where fish hold where nobody says, from Data/rules/holding_rules.csv.</summary>
public sealed record HoldingRule
{
    // Sun at or below which the light counts as low (degrees).
    private const double LowSun = 6;

    // Slope of a bottom that counts as an edge.
    private const double EdgeSlope = 0.3;

    // Sun and cloud of a bright day, for what needs the sun.
    private const double CloudOfSun = 0.5;

    // Least height of a zone (m), where the water has room for it.
    private const double LeastHeight = 0.3;

    private const string CommonPractice = "common practice";

    private static readonly Lazy<IReadOnlyList<HoldingRule>> Table = new(() => [.. ReferenceTable.Rules("holding_rules").Rows.Select(Read)]);

    /// <summary>Short name.</summary>
    public required string Id { get; init; }

    /// <summary>Fish, empty for all.</summary>
    public required IReadOnlyList<string> Fish { get; init; }

    /// <summary>Seasons, empty for all.</summary>
    public required IReadOnlyList<Season> Seasons { get; init; }

    /// <summary>Least water temperature (degrees Celsius), or null.</summary>
    public double? LeastTemperature { get; init; }

    /// <summary>Greatest water temperature (degrees Celsius), or null.</summary>
    public double? MostTemperature { get; init; }

    /// <summary>Greatest depth (m), or null.</summary>
    public double? MostDepth { get; init; }

    /// <summary>True for low light alone, false for day alone, null for both.</summary>
    public bool? LowLight { get; init; }

    /// <summary>What must be there: grass, overhang, posts, clump, edge or mud; empty for nothing.</summary>
    public required string Beside { get; init; }

    /// <summary>How loud it speaks.</summary>
    public required double Weight { get; init; }

    /// <summary>Upper edge as a share of the depth.</summary>
    public required double Upper { get; init; }

    /// <summary>Lower edge as a share of the depth.</summary>
    public required double Lower { get; init; }

    /// <summary>True if the lower edge lies on the tips of the grass.</summary>
    public required bool FromGrass { get; init; }

    /// <summary>How much higher or lower the zone may lie in nine tries of ten, as a share of the depth.</summary>
    public required double Spread { get; init; }

    /// <summary>Key of docs/REFERENCES.bib, or "common practice".</summary>
    public required string Source { get; init; }

    /// <summary>The rule in words, without units.</summary>
    public required string Says { get; init; }

    /// <summary>True if it is common practice rather than published.</summary>
    public bool IsPractice => Source == CommonPractice;

    /// <summary>All rules, in the order of the table.</summary>
    public static IReadOnlyList<HoldingRule> All => Table.Value;

    /// <summary>The loudest rule that holds at a spot.</summary>
    /// <param name="spot">The spot; its own strike zone does not count.</param>
    /// <param name="season">The season, or null where it is not known.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    public static HoldingRule Of(Spot spot, Season? season)
    {
        ArgumentNullException.ThrowIfNull(spot);
        return All.Where(rule => rule.Holds(spot, season)).MaxBy(rule => rule.Weight) ?? throw new InvalidOperationException("No rule holds for every fish.");
    }

    /// <summary>The rule of a name; null for none.</summary>
    /// <param name="id">Its name.</param>
    public static HoldingRule? Named(string? id) => All.FirstOrDefault(rule => rule.Id == id);

    /// <summary>Whether the rule holds.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="season">The season, or null where it is not known.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    public bool Holds(Spot spot, Season? season)
    {
        ArgumentNullException.ThrowIfNull(spot);
        bool low = SpotLight.SunElevationDegrees(spot) <= LowSun;
        return (Fish.Count == 0 || Fish.Contains(spot.TargetFish, StringComparer.OrdinalIgnoreCase))
            && (Seasons.Count == 0 || (season is { } known && Seasons.Contains(known)))
            && !(spot.TemperatureCelsius < LeastTemperature)
            && !(spot.TemperatureCelsius > MostTemperature)
            && !(spot.Depth > MostDepth)
            && (LowLight is null || LowLight == low)
            && Has(spot);
    }

    /// <summary>The zone of this rule at a spot.</summary>
    /// <param name="spot">The spot.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    public StrikeZone Zone(Spot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        double depth = spot.Depth, lower = FromGrass ? depth - Math.Min(Grass(spot), 0.8 * depth) : Lower * depth;
        double upper = Math.Max(0, Math.Min(Upper * depth, lower - Math.Min(LeastHeight, 0.5 * lower)));
        return new StrikeZone(upper, lower) { MovesWithBottom = FromGrass || Lower >= 1, AssumedBy = Id, Spread = Spread };
    }

    private static double Grass(Spot spot) => (spot.Profile?.Stretches ?? []).Select(stretch => stretch.GrassHeight ?? 0).Append(spot.GrassHeight).Max();

    private bool Has(Spot spot) => Beside switch
    {
        "" => true,
        "grass" => Grass(spot) > 0,
        "overhang" => spot.CloudCover <= CloudOfSun && spot.Structures.Any(structure => structure.Kind == StructureKind.Overhang),
        "posts" => spot.Structures.Any(structure => structure.Kind == StructureKind.Posts),
        "clump" => spot.Structures.Any(structure => structure.Kind == StructureKind.OysterClump),
        "edge" => spot.Profile is { } profile && profile.Points.Zip(profile.Points.Skip(1)).Any(pair => Math.Abs(pair.Second.Depth - pair.First.Depth) >= EdgeSlope * (pair.Second.Distance - pair.First.Distance)),
        "mud" => spot.CloudCover <= CloudOfSun && (spot.Bottom == BottomKind.Mud || (spot.Profile?.Stretches ?? []).Any(stretch => stretch.Bottom == BottomKind.Mud)),
        _ => throw new InvalidOperationException($"Rule {Id}: {Beside} is nothing that a spot has."),
    };

    private static HoldingRule Read(ReferenceRow row)
    {
        return new HoldingRule
        {
            Id = row.Text("id"),
            Fish = Split("fish"),
            Seasons = [.. Split("seasons").Select(ReferenceWords.Parse<Season>)],
            LeastTemperature = Number("temperature_min_C"),
            MostTemperature = Number("temperature_max_C"),
            MostDepth = Number("depth_max_m"),
            LowLight = row.Text("light") switch
            {
                "" => null,
                "low" => true,
                "day" => false,
                var word => throw new InvalidOperationException($"Rule {row.Text("id")}: {word} is no light."),
            },
            Beside = row.Text("beside"),
            Weight = row.Number("weight"),
            Upper = row.Number("upper"),
            Lower = row.Number("lower"),
            FromGrass = row.Text("from") == "grass",
            Spread = row.Number("spread"),
            Source = row.Text("source"),
            Says = row.Text("says"),
        };

        string[] Split(string column) => row.Text(column).Split('|', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

        double? Number(string column) => row.Number(column) is var value && double.IsNaN(value) ? null : value;
    }
}
