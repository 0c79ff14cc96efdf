using LureSim.Model;

namespace LureSim.Decision.Baits;

/// <summary>How the rules of season, forage and fish and the simulated casts came out together.</summary>
public enum BaitOutcomeKind
{
    /// <summary>There is one bait only.</summary>
    OneBait,

    /// <summary>No rule tells the baits apart: the runs choose, and the first of the box where they do not differ by more than the model knows.</summary>
    NoRule,

    /// <summary>Rules and runs want the same bait.</summary>
    Agree,

    /// <summary>The runs would rather have another bait, but not by enough to overturn the rules.</summary>
    RulesStand,

    /// <summary>The runs overturn the rules.</summary>
    RunsOverturn,
}

/// <summary>What the rules wanted, what the runs say, and the outcome: one finding.</summary>
/// <param name="Kind">The outcome.</param>
/// <param name="Chosen">The bait of the choice.</param>
/// <param name="Wanted">The bait that the rules want.</param>
/// <param name="WantedScore">Mean score of its best rig.</param>
/// <param name="Best">The bait of the highest mean score, whatever the rules say.</param>
/// <param name="BestScore">Mean score of its best rig.</param>
public sealed record BaitOutcome(BaitOutcomeKind Kind, LureBody Chosen, LureBody Wanted, double WantedScore, LureBody Best, double BestScore);
