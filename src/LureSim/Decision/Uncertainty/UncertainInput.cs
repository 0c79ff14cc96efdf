namespace LureSim.Decision.Uncertainty;

/// <summary>An input of the motion that is drawn.</summary>
public enum UncertainInput
{
    /// <summary>Current at the surface.</summary>
    Current,

    /// <summary>Length of the cast.</summary>
    Cast,

    /// <summary>Speed of the retrieve.</summary>
    RetrieveSpeed,

    /// <summary>Depth of the water.</summary>
    Depth,

    /// <summary>Height of the rod tip.</summary>
    RodHeight,

    /// <summary>Factor on the drag of the line.</summary>
    LineDrag,

    /// <summary>Which of the two laws of the line's drag: 0 the measured cylinder (or the one law that was asked for), 1 Choo &amp; Casarella across with Churchill &amp; Bernstein along.</summary>
    LineLaw,

    /// <summary>Factor on the drag of the lure.</summary>
    LureDrag,
}

/// <summary>The inputs.</summary>
public static class UncertainInputs
{
    /// <summary>All inputs, in the order of the columns of the draws.</summary>
    public static IReadOnlyList<UncertainInput> All { get; } = Enum.GetValues<UncertainInput>();
}
