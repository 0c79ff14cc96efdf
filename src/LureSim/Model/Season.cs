namespace LureSim.Model;

/// <summary>Part of the year as anglers name it.</summary>
public enum Season
{
    /// <summary>December to February in the north.</summary>
    Winter,

    /// <summary>March and April.</summary>
    EarlySpring,

    /// <summary>May.</summary>
    LateSpring,

    /// <summary>June and July.</summary>
    Summer,

    /// <summary>August.</summary>
    LateSummer,

    /// <summary>September and October.</summary>
    EarlyAutumn,

    /// <summary>November.</summary>
    LateAutumn,
}
