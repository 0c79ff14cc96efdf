namespace LureSim.Model;

/// <summary>Which way the tide runs, in the angler's words.</summary>
public enum TideStage
{
    /// <summary>Falling: the water goes out.</summary>
    Outgoing,

    /// <summary>Rising: the water comes in.</summary>
    Incoming,

    /// <summary>Between the two.</summary>
    Slack,
}
