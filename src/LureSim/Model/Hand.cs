namespace LureSim.Model;

/// <summary>What the hands are free to do within a presentation.</summary>
public enum Hand
{
    /// <summary>How long the lure sinks before the retrieve begins, or to the bottom.</summary>
    SinkCount,

    /// <summary>How fast the reel turns.</summary>
    ReelSpeed,

    /// <summary>How far the rod tip goes in a twitch or a lift.</summary>
    Lift,

    /// <summary>How long each rest lasts.</summary>
    Rest,

    /// <summary>Where the cast goes, from the presentation's own direction.</summary>
    CastAngle,
}
