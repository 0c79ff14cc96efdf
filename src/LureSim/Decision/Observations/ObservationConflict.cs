namespace LureSim.Decision.Observations;

/// <summary>What an observation cannot be true with.</summary>
public enum ConflictKind
{
    /// <summary>With what the scenario says of water and tackle.</summary>
    WithScenario,

    /// <summary>With the other observations.</summary>
    WithOthers,
}

/// <summary>Something that may be wrong where an observation cannot be true.</summary>
public enum ConflictSuspect
{
    /// <summary>The depth of the water.</summary>
    Depth,

    /// <summary>The current.</summary>
    Current,

    /// <summary>The weight of the head.</summary>
    Weight,

    /// <summary>The bait or its drag.</summary>
    Lure,

    /// <summary>The cast.</summary>
    Cast,

    /// <summary>The line.</summary>
    Line,

    /// <summary>The clarity that was given.</summary>
    Clarity,

    /// <summary>The distance between the marks or the depth of the pool.</summary>
    Length,
}

/// <summary>An observation that is too unlikely to be true: it is left out.</summary>
/// <param name="Kind">What it cannot be true with.</param>
/// <param name="Chance">Chance of something as far off.</param>
/// <param name="Suspects">What to check, the likeliest first.</param>
public sealed record ObservationConflict(ConflictKind Kind, double Chance, IReadOnlyList<ConflictSuspect> Suspects);
