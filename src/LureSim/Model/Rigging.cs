namespace LureSim.Model;

/// <summary>How the lure is tied on.</summary>
public enum KnotStyle
{
    /// <summary>Loop knot: the eye swings freely in an open loop.</summary>
    Loop,

    /// <summary>Knot drawn tight on the eye: the leader holds the lure's nose like a spring.</summary>
    Snug,

    /// <summary>Clip: a free pivot of steel wire.</summary>
    Clip,

    /// <summary>Split ring: a free pivot of steel wire.</summary>
    SplitRing,
}

/// <summary>Where the metal of a weighted hook sits.</summary>
public enum WeightPlace
{
    /// <summary>A head at the nose.</summary>
    Nose,

    /// <summary>On the shank of the hook, under the middle of the body.</summary>
    Shank,
}

/// <summary>Whether a hard bait floats.</summary>
public enum HardFloat
{
    /// <summary>Rises when it is left alone.</summary>
    Floating,

    /// <summary>Hangs where it is left.</summary>
    Suspending,

    /// <summary>Sinks when it is left alone.</summary>
    Sinking,
}

/// <summary>The diving lip of a hard bait: a plate under the nose.</summary>
/// <param name="Length">Length along the lip (m), 0.002 to 0.08.</param>
/// <param name="Width">Width (m), 0.002 to 0.08.</param>
/// <param name="Angle">Angle between the lip and the body's axis (radians): 0 points straight ahead, pi/2 straight down.</param>
public sealed record LipShape(double Length, double Width, double Angle);

/// <summary>
/// How the lure is tied on and how well it is put on its hook. Everything can be measured with a ruler; the values left out mean a clean job.
/// </summary>
public sealed record Rigging
{
    /// <summary>Knot.</summary>
    public KnotStyle Knot { get; init; } = KnotStyle.Loop;

    /// <summary>Inner length of the loop, clip or ring (m), 0 for a snug knot.</summary>
    public double LoopLength { get; init; } = 0.01;

    /// <summary>Length of the hook's shank from the eye to the bend as a share of the body's length, 0.05 to 0.95; null for the common share of the profile.</summary>
    public double? ShankShare { get; init; }

    /// <summary>How far the hook comes out beside the centre line of the back (m), to the left positive.</summary>
    public double ExitSideways { get; init; }

    /// <summary>How far the hook comes out above the line on which the body would lie straight (m), negative below.</summary>
    public double ExitAbove { get; init; }

    /// <summary>Sideways bend of the body between nose and tail (radians), tail to the left positive.</summary>
    public double Bend { get; init; }

    /// <summary>Lean of the hook's point from straight up (radians), to the left positive.</summary>
    public double PointLean { get; init; }

    /// <summary>Angle between the axis of the head and that of the body, seen from above (radians), head turned to the left positive.</summary>
    public double HeadTurn { get; init; }

    /// <summary>How much too far the body of a weedless rig is pulled up towards the eye, so that it bunches (m).</summary>
    public double PulledUp { get; init; }

    /// <summary>True if nothing is wrong with it.</summary>
    public bool IsClean => ExitSideways == 0 && ExitAbove == 0 && Bend == 0 && PointLean == 0 && HeadTurn == 0 && PulledUp == 0;

    /// <summary>The same knot and hook without a fault.</summary>
    public Rigging Straightened => this with { ExitSideways = 0, ExitAbove = 0, Bend = 0, PointLean = 0, HeadTurn = 0, PulledUp = 0 };
}
