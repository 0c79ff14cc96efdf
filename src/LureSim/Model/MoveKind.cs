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
