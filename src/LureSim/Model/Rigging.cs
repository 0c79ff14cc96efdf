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

/// <summary>
/// How the lure is tied on and how well it is put on its hook. Everything can be measured with a ruler; the values left out mean a clean job.
/// </summary>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record Rigging
{
    // The maps of rigging bend a body more than a scenario may: its hook then comes out farther from its place, at most by a third of the longest body (m).
    private static readonly ValueRange Exit = new(-0.1, 0.1);

    /// <summary>Knot.</summary>
    public KnotStyle Knot { get; init => field = Guard.Defined(value); } = KnotStyle.Loop;

    /// <summary>Inner length of the loop, clip or ring (m), 0.002 to 0.05; 0 for a snug knot.</summary>
    public double LoopLength { get; init => field = value == 0 ? 0 : Limits.LoopLength.Check(value); } = 0.01;

    /// <summary>Length of the hook's shank from the eye to the bend as a share of the body's length, 0.05 to 0.95; null for the common share of the profile.</summary>
    public double? ShankShare { get; init => field = Limits.ShankShare.Check(value); }

    /// <summary>How far the hook comes out beside the centre line of the back (m), to the left positive, -0.1 to 0.1; in a scenario up to 0.015.</summary>
    public double ExitSideways { get; init => field = Exit.Check(value); }

    /// <summary>How far the hook comes out above the line on which the body would lie straight (m), negative below, -0.1 to 0.1; in a scenario up to 0.015.</summary>
    public double ExitAbove { get; init => field = Exit.Check(value); }

    /// <summary>Sideways bend of the body between nose and tail (radians), tail to the left positive, up to 45 degrees.</summary>
    public double Bend { get; init => field = Limits.Lean.Check(value); }

    /// <summary>Lean of the hook's point from straight up (radians), to the left positive, up to 45 degrees.</summary>
    public double PointLean { get; init => field = Limits.Lean.Check(value); }

    /// <summary>Angle between the axis of the head and that of the body, seen from above (radians), head turned to the left positive, up to 30 degrees.</summary>
    public double HeadTurn { get; init => field = Limits.HeadTurn.Check(value); }

    /// <summary>How much too far the body of a weedless rig is pulled up towards the eye, so that it bunches (m), 0 to 0.015.</summary>
    public double PulledUp { get; init => field = Limits.PulledUp.Check(value); }

    /// <summary>Gape of the hook, from shank to point (m), 0.002 to 0.06; null for the common one of the body.</summary>
    public double? HookGape { get; init => field = Limits.HookGape.Check(value); }

    /// <summary>Where the metal of a weighted hook sits along the shank, 0 at the eye to 1 at the bend; null for the common place.</summary>
    public double? WeightStation { get; init => field = Limits.WeightStation.Check(value); }

    /// <summary>Share of the tail's length that is torn, bitten or cut off, 0 to 0.75.</summary>
    public double TailLost { get; init => field = Limits.TailLost.Check(value); }

    /// <summary>True if nothing is wrong with it.</summary>
    public bool IsClean => this == Straightened();

    /// <summary>The same knot and hook without a fault.</summary>
    public Rigging Straightened() => this with { ExitSideways = 0, ExitAbove = 0, Bend = 0, PointLean = 0, HeadTurn = 0, PulledUp = 0, TailLost = 0 };
}
