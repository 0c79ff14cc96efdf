using LureSim.Model;

namespace LureSim.Decision.Inverse;

/// <summary>A question asked backwards.</summary>
public enum InverseQuestion
{
    /// <summary>The lightest head that holds the bottom (kg).</summary>
    HeadForBottom,

    /// <summary>The reel speed that keeps the lure at a depth (m/s).</summary>
    SpeedForDepth,

    /// <summary>The count-down that brings the lure to the strike zone (s).</summary>
    CountDownForZone,
}

/// <summary>How an answer came out.</summary>
public enum InverseStatus
{
    /// <summary>There is an answer.</summary>
    Found,

    /// <summary>Anything does: the answer is the least value that was tried.</summary>
    AnyWillDo,

    /// <summary>There is none; the reason is said.</summary>
    NotReachable,
}

/// <summary>An answer; one that does not exist is data too.</summary>
/// <param name="Question">The question.</param>
/// <param name="Status">How it came out.</param>
/// <param name="Head">Head that it was asked for; null for the question about the head.</param>
/// <param name="Presentation">The presentation.</param>
/// <param name="Value">The answer (kg, m/s or s); null if not reachable.</param>
/// <param name="From">Lower end of what also does (m/s or s); null if not known.</param>
/// <param name="To">Upper end of what also does (m/s or s); null if not known or without limit.</param>
/// <param name="Owned">Lightest head of the box that does; null if none, or for other questions.</param>
/// <param name="Common">Lightest common weight that does (kg); null if none, or for other questions.</param>
/// <param name="Target">Depth asked for (m); null where there is none.</param>
/// <param name="Because">Why there is no answer, or what to mind; may be empty.</param>
/// <param name="Runs">Simulations it took.</param>
public sealed record InverseAnswer(
    InverseQuestion Question,
    InverseStatus Status,
    JigHead? Head,
    Presentation Presentation,
    double? Value,
    double? From,
    double? To,
    JigHead? Owned,
    double? Common,
    double? Target,
    string Because,
    int Runs);
