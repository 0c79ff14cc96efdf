namespace LureSim.Model;

/// <summary>What a move of a retrieve is called; the figures of <see cref="Move"/> say what it does.</summary>
public enum MoveKind
{
    /// <summary>The reel turns.</summary>
    Reel,

    /// <summary>Nothing moves.</summary>
    Pause,

    /// <summary>The rod tip goes up and stays there.</summary>
    Lift,

    /// <summary>The rod tip goes down and stays there.</summary>
    Lower,

    /// <summary>The rod tip goes sideways, or to or from the angler, and stays there.</summary>
    Sweep,

    /// <summary>The rod tip goes back to where it was when the retrieve began.</summary>
    Return,

    /// <summary>The rod tip goes out and back, once or several times.</summary>
    Twitch,

    /// <summary>Line is let out.</summary>
    Feed,

    /// <summary>The lure is left to the current on a tight line until it hangs below the rod.</summary>
    Swing,
}

/// <summary>
/// One move of a retrieve: for how long, at what line speed, and where the rod tip goes meanwhile. A retrieve is a list of them; the reel and the rod tip take
/// any figures, so that a new retrieve is new data.
/// </summary>
public sealed record Move
{
    /// <summary>Its name in the trade, for words and for what ends it.</summary>
    public required MoveKind Kind { get; init; }

    /// <summary>Duration (s), 0 to 3600; infinite for reeling until the line is in. A swing ends by itself, at the latest after this time.</summary>
    public required double Duration { get; init; }

    /// <summary>Speed of the line coming in, as a multiple of <see cref="Presentation.RetrieveSpeed"/>, 0 to 1000: the whole retrieve is made faster or slower by that one figure.</summary>
    public double ReelShare { get; init; }

    /// <summary>Speed at which line is let out (m/s), 0 to 5.</summary>
    public double FeedSpeed { get; init; }

    /// <summary>Travel of the rod tip up (m), -5 to 5.</summary>
    public double Up { get; init; }

    /// <summary>Travel of the rod tip to the caster's left (m), -5 to 5.</summary>
    public double Left { get; init; }

    /// <summary>Travel of the rod tip away from the angler along the cast (m), -5 to 5.</summary>
    public double Out { get; init; }

    /// <summary>0 for a travel that lasts; otherwise the tip goes out and back so many times, evenly over the duration; 0 to 20.</summary>
    public int Beats { get; init; }

    /// <summary>True if the rod tip moves.</summary>
    public bool MovesTip => Up != 0 || Left != 0 || Out != 0;

    /// <summary>How far the rod tip goes (m).</summary>
    public double Travel => Math.Sqrt((Up * Up) + (Left * Left) + (Out * Out));

    /// <summary>Reeling until the line is in.</summary>
    public static Move ReelIn { get; } = new() { Kind = MoveKind.Reel, Duration = double.PositiveInfinity, ReelShare = 1 };
}
