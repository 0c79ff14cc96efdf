namespace LureSim.Model;

/// <summary>What an angler saw, felt or timed.</summary>
public enum ObservationKind
{
    /// <summary>Seconds from splash-down to the bottom.</summary>
    BottomTime,

    /// <summary>The least whole count after which the lure ticks bottom as the reel begins to turn.</summary>
    FirstTick,

    /// <summary>Turns of the handle until the lure first ticks bottom.</summary>
    TurnsToTick,

    /// <summary>Turns of the handle after which the lure no longer ticks bottom.</summary>
    TurnsToClear,

    /// <summary>Angle of the line at the end of the fall off the direction of the cast, positive to the left (radians).</summary>
    LineAngle,

    /// <summary>Angle off the direction of the cast at which the lure came out of the water, positive to the left (radians).</summary>
    ExitAngle,

    /// <summary>Depth at which a white plate went out of sight (m).</summary>
    WhiteVanishes,

    /// <summary>Depth at which a bright lure went out of sight (m).</summary>
    LureVanishes,

    /// <summary>Seconds that a float took from one mark to another.</summary>
    FloatDrift,

    /// <summary>Seconds that a lure free of its line fell in a pool or a bucket.</summary>
    PoolFall,

    /// <summary>Line out when the lure reached the bottom (m).</summary>
    LineOut,
}
