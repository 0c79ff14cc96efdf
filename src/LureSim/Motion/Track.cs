using LureSim.Stepping;

namespace LureSim.Motion;

/// <summary>What the lure is doing at a sample of a <see cref="Track"/>; flags combine.</summary>
[Flags]
public enum TrackState
{
    /// <summary>Free in the water.</summary>
    None = 0,

    /// <summary>Touching the bottom.</summary>
    OnBottom = 1,

    /// <summary>Inside the grass canopy.</summary>
    InGrass = 2,

    /// <summary>Inside the strike zone.</summary>
    InZone = 4,

    /// <summary>Above the water surface.</summary>
    OutOfWater = 8,

    /// <summary>Falling after splash-down, before the reel first turns.</summary>
    Falling = 16,

    /// <summary>The reel is taking in line.</summary>
    Reeling = 32,
}

/// <summary>Kind of a located event.</summary>
public enum TrackEventKind
{
    /// <summary>The lure enters the strike zone.</summary>
    EntersZone,

    /// <summary>The lure leaves the strike zone.</summary>
    LeavesZone,

    /// <summary>The lure touches the bottom after being off it.</summary>
    BottomContact,

    /// <summary>The lure lifts off the bottom.</summary>
    LeavesBottom,

    /// <summary>The lure enters the grass canopy.</summary>
    EntersGrass,

    /// <summary>The lure leaves the grass canopy.</summary>
    LeavesGrass,

    /// <summary>The reel begins the retrieve.</summary>
    RetrieveStarts,

    /// <summary>The line left out has come down to the end length.</summary>
    LineIn,

    /// <summary>The lure breaks the surface.</summary>
    BreaksSurface,

    /// <summary>A lure that was left to the current hangs below the rod.</summary>
    SwingEnds,
}

/// <summary>An event, located on the dense output.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="Time">Seconds since splash-down.</param>
/// <param name="Depth">Depth of the lure (m).</param>
/// <param name="Distance">Horizontal distance of the lure from the rod tip (m).</param>
public sealed record TrackEvent(TrackEventKind Kind, double Time, double Depth, double Distance);

/// <summary>Why a run ended otherwise than planned, or what to doubt of it.</summary>
public enum SimulationEndReason
{
    /// <summary>The caller cancelled.</summary>
    Cancelled,

    /// <summary>The step size fell below its floor.</summary>
    StepTooSmall,

    /// <summary>The steps ran out: the line is snatched too often and too hard to follow.</summary>
    OutOfSteps,

    /// <summary>The line does not come in within the longest retrieve.</summary>
    LineNotIn,

    /// <summary>The run is complete, but its energy balance is open.</summary>
    EnergyOpen,
}

/// <summary>The end of a run with its numbers.</summary>
/// <param name="Reason">Why.</param>
/// <param name="Time">Simulated time (s).</param>
public sealed record SimulationEnd(SimulationEndReason Reason, double Time)
{
    /// <summary>The step that was too small (s); 0 for other reasons.</summary>
    public double Step { get; init; }

    /// <summary>The node that gave trouble, 0 for the lure, counted to the rod tip.</summary>
    public int Node { get; init; }

    /// <summary>Nodes of the line.</summary>
    public int Nodes { get; init; }

    /// <summary>Depth of that node (m).</summary>
    public double NodeDepth { get; init; }

    /// <summary>Steps after which it was given up; 0 for other reasons.</summary>
    public int Steps { get; init; }

    /// <summary>Part of the energy exchanged by which the balance is open, and the part that is allowed; 0 for other reasons.</summary>
    public (double Residual, double Limit) Energy { get; init; }
}

/// <summary>The shape of the line at one moment, from lure to rod tip.</summary>
/// <param name="Time">Seconds since splash-down.</param>
/// <param name="X">Coordinates along the cast (m).</param>
/// <param name="Y">Coordinates to the left (m).</param>
/// <param name="Z">Heights above the surface (m).</param>
public sealed record LineShape(double Time, double[] X, double[] Y, double[] Z);

/// <summary>
/// The computed path of one lure: equally long arrays sampled at fixed intervals of time, time 0 at splash-down.
/// Axes: x along the cast from below the rod tip at splash-down, y to the left, z up with the surface at 0. SI throughout.
/// </summary>
public sealed record Track
{
    /// <summary>How the run ended.</summary>
    public required SimulationStatus Status { get; init; }

    /// <summary>Why and when the run ended otherwise than planned, or what to doubt of it; null where there is nothing to say.</summary>
    public SimulationEnd? End { get; init; }

    /// <summary>Work and balance.</summary>
    public required SimulationStatistics Statistics { get; init; }

    /// <summary>Times (s).</summary>
    public required double[] Time { get; init; }

    /// <summary>Lure position along the cast (m).</summary>
    public required double[] X { get; init; }

    /// <summary>Lure position to the left (m).</summary>
    public required double[] Y { get; init; }

    /// <summary>Lure height above the surface (m); depth is its negative.</summary>
    public required double[] Z { get; init; }

    /// <summary>Lure velocity along x (m/s).</summary>
    public required double[] VelocityX { get; init; }

    /// <summary>Lure velocity along y (m/s).</summary>
    public required double[] VelocityY { get; init; }

    /// <summary>Lure velocity along z (m/s).</summary>
    public required double[] VelocityZ { get; init; }

    /// <summary>Speed of the lure through the water around it (m/s).</summary>
    public required double[] SpeedThroughWater { get; init; }

    /// <summary>Line tension at the rod tip (N).</summary>
    public required double[] RodTension { get; init; }

    /// <summary>Line tension at the lure (N).</summary>
    public required double[] LureTension { get; init; }

    /// <summary>Angle of the line below the horizontal at the rod tip (radians).</summary>
    public required double[] RodAngle { get; init; }

    /// <summary>Angle of the line above the horizontal at the lure (radians).</summary>
    public required double[] LureAngle { get; init; }

    /// <summary>Unstretched length of line out (m).</summary>
    public required double[] LineOut { get; init; }

    /// <summary>What the lure is doing.</summary>
    public required TrackState[] State { get; init; }

    /// <summary>Events in order of time.</summary>
    public required IReadOnlyList<TrackEvent> Events { get; init; }

    /// <summary>Line shapes at a few moments, for drawing.</summary>
    public required IReadOnlyList<LineShape> Shapes { get; init; }

    /// <summary>Number of samples.</summary>
    public int Count => Time.Length;

    /// <summary>Depth of the lure at a sample (m), positive down.</summary>
    public double Depth(int index) => -Z[index];
}
