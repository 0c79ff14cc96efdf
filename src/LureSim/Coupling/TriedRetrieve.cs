namespace LureSim.Coupling;

/// <summary>Retrieves on which knots are compared, each the same for every lure.</summary>
public enum TriedRetrieve
{
    /// <summary>A steady pull.</summary>
    Steady,

    /// <summary>Pulls and pauses of about a second.</summary>
    StopAndGo,

    /// <summary>Two twitches and a pause, again and again.</summary>
    TwitchTwitchPause,

    /// <summary>A fall on a slack line.</summary>
    Fall,
}
