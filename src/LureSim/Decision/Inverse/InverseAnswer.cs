using LureSim.Model;
using LureSim.Motion;

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

/// <summary>Why there is no answer, or what to mind.</summary>
public enum InverseReason
{
    /// <summary>Nothing to say.</summary>
    None,

    /// <summary>This lure takes no jig head.</summary>
    TakesNoHead,

    /// <summary>No common weight touches the bottom in the retrieve.</summary>
    NeverTouchesBottom,

    /// <summary>Even the best common weight is on the bottom for too small a share of the retrieve; the figure is that share, 0 to 1.</summary>
    SeldomOnBottom,

    /// <summary>Even the lightest common head holds.</summary>
    LightestHolds,

    /// <summary>Some lighter heads hold too, while others between do not.</summary>
    SomeLighterHold,

    /// <summary>Other speeds give the depth too.</summary>
    OtherSpeedsToo,

    /// <summary>Even the slowest retrieve tried runs above the depth.</summary>
    SlowestRunsAbove,

    /// <summary>Even the fastest retrieve tried runs below the depth.</summary>
    FastestRunsBelow,

    /// <summary>No speed tried gives the depth.</summary>
    NoSpeedGivesIt,

    /// <summary>The fall could not be computed.</summary>
    FallNotComputed,

    /// <summary>On a tight line it sinks no deeper; the figure is the depth (m).</summary>
    SinksNoDeeperTight,

    /// <summary>In this current it sinks no deeper; the figure is the depth (m).</summary>
    SinksNoDeeperSlack,

    /// <summary>It gets into the upper part of the zone and no deeper.</summary>
    UpperPartOnly,

    /// <summary>The zone reaches down to the bottom: waiting longer does no harm.</summary>
    ZoneReachesBottom,
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
/// <param name="Reason">Why there is no answer, or what to mind.</param>
/// <param name="Figure">The figure that belongs to the reason; 0 for none.</param>
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
    InverseReason Reason,
    double Figure,
    int Runs)
{
    /// <summary>How the fall that the answer rests on failed; null where it did not.</summary>
    public SimulationEnd? Failure { get; init; }
}
