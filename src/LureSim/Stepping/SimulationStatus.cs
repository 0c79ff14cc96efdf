namespace LureSim.Stepping;

/// <summary>How a simulation ended.</summary>
public enum SimulationStatus
{
    /// <summary>Ran to its natural end.</summary>
    Completed,

    /// <summary>Ran into the time limit, which is data and not an error (a lure that hangs in the grass, say).</summary>
    TimeLimit,

    /// <summary>The step size fell below its floor or a value was not finite; the message says where.</summary>
    Failed,

    /// <summary>The caller cancelled.</summary>
    Cancelled,

    /// <summary>Ran out of steps; what was computed until then is there.</summary>
    StepLimit,
}
