using LureSim.Data;
using LureSim.Model;

namespace LureSim.Decision.Trials;

/// <summary>A weight of the score, from Data/rules/score_weights.csv.</summary>
/// <param name="Name">Its name in the table.</param>
/// <param name="Value">Its value, in the unit.</param>
/// <param name="Unit">The unit; 1 for a share.</param>
/// <param name="IsPractice">True where anglers agree on the order of things; otherwise it is assumed.</param>
/// <param name="Says">What it stands for.</param>
public sealed record ScoreWeight(string Name, double Value, string Unit, bool IsPractice, string Says);

/// <summary>What touching one kind of bottom costs.</summary>
/// <param name="Rest">Share of the time lying on it that is lost, 0 to 1.</param>
/// <param name="Drag">Share of the time dragged along it that is lost, 0 to 1.</param>
/// <param name="Settled">Further share lost of the time on it beyond <see cref="ScoreWeights.SettleTime"/> without a break, 0 to 1.</param>
/// <param name="SnagTouch">Chance of a snag at each touch, 0 to 1.</param>
/// <param name="SnagMetre">Chance of a snag for each metre dragged (1/m).</param>
public readonly record struct BottomCost(double Rest, double Drag, double Settled, double SnagTouch, double SnagMetre);

/// <summary>The weights of the score: one set for all commands.</summary>
public sealed class ScoreWeights
{
    private static readonly Lazy<ScoreWeights> Table = new(() => new ScoreWeights(
    [
        .. ReferenceTable.Rules("score_weights").Rows.Select(row =>
            new ScoreWeight(row.Text("name"), row.Number("value"), row.Text("unit"), row.Text("basis") == "common practice", row.Text("says"))),
    ]));

    private readonly Dictionary<string, ScoreWeight> byName;
    private readonly BottomCost[] bottoms;

    private ScoreWeights(IReadOnlyList<ScoreWeight> all)
    {
        All = all;
        byName = all.ToDictionary(weight => weight.Name);
        WaitLimit = Value("wait_limit");
        Grass = Value("grass");
        Bow = Value("bow");
        Feel = Value("feel");
        FeelTension = Value("feel_tension");
        MudWeight = Value("mud_weight");
        HookLength = Value("hook_length");
        Crawl = Value("crawl");
        SettleTime = Value("settle_time");
        TieShare = Value("tie_share");
        TieScore = Value("tie_score");
        bottoms =
        [
            .. Enum.GetValues<BottomKind>().Select(kind => kind switch
            {
                BottomKind.Hard => new BottomCost(Value("rest_hard"), Value("drag_hard"), Value("settled_hard"), Value("snag_touch_hard"), Value("snag_metre_hard")),
                BottomKind.Sand => new BottomCost(Value("rest_sand"), Value("drag_sand"), Value("settled_sand"), 0, 0),
                BottomKind.Mud => new BottomCost(Value("rest_mud"), Value("drag_mud"), Value("settled_mud"), 0, 0),
                BottomKind.Shell => new BottomCost(Value("rest_shell"), Value("drag_shell"), Value("settled_shell"), Value("snag_touch_shell"), Value("snag_metre_shell")),
                _ => throw new InvalidOperationException($"{kind} has no weights."),
            }),
        ];
    }

    /// <summary>The weights of the table.</summary>
    public static ScoreWeights Default => Table.Value;

    /// <summary>All of them, in the order of the table.</summary>
    public IReadOnlyList<ScoreWeight> All { get; }

    /// <summary>Waiting time that would cost the whole score (s).</summary>
    public double WaitLimit { get; }

    /// <summary>Share of the time in the grass that is lost.</summary>
    public double Grass { get; }

    /// <summary>Share lost where the line is swept across by as much as the cast is long.</summary>
    public double Bow { get; }

    /// <summary>Share lost where no tap can be felt.</summary>
    public double Feel { get; }

    /// <summary>Pull at the rod tip from which a tap is felt fully (N).</summary>
    public double FeelTension { get; }

    /// <summary>Head that ploughs mud fully (kg).</summary>
    public double MudWeight { get; }

    /// <summary>Nearer to the bottom than this a lure touches it (m).</summary>
    public double HookLength { get; }

    /// <summary>Speed along the bottom from which a lure is dragged (m/s).</summary>
    public double Crawl { get; }

    /// <summary>A lure that stays on the bottom for longer without a break has settled (s).</summary>
    public double SettleTime { get; }

    /// <summary>Scores that differ by less than this share of the best are no real difference.</summary>
    public double TieShare { get; }

    /// <summary>Scores that differ by less than this are no real difference.</summary>
    public double TieScore { get; }

    /// <summary>What touching a kind of bottom costs.</summary>
    /// <param name="kind">The bottom.</param>
    public BottomCost Of(BottomKind kind) => bottoms[(int)kind];

    /// <summary>Difference below which a score is no worse than the best.</summary>
    /// <param name="best">The best score.</param>
    public double Tie(double best) => Math.Max(TieScore, TieShare * best);

    /// <summary>The same weights with one of them multiplied, for a look at what depends on it.</summary>
    /// <param name="name">Name of the weight.</param>
    /// <param name="factor">Factor, above 0.</param>
    /// <exception cref="ArgumentException">There is no weight of that name.</exception>
    public ScoreWeights Scaled(string name, double factor)
    {
        Guard.Positive(factor);
        if (!byName.ContainsKey(name)) throw new ArgumentException($"There is no weight '{name}'.", nameof(name));
        return new ScoreWeights([.. All.Select(weight => weight.Name == name ? weight with { Value = weight.Value * factor } : weight)]);
    }

    private double Value(string name) => byName.TryGetValue(name, out ScoreWeight? weight) ? weight.Value : throw new InvalidOperationException($"score_weights.csv has no {name}.");
}
