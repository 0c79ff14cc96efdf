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

    /// <summary>Which of the two published drag laws: 0 Choo &amp; Casarella, 1 Churchill &amp; Bernstein along.</summary>
    LineLaw,
}

/// <summary>Names of inputs.</summary>
public static class UncertainInputs
{
    /// <summary>All inputs, in the order of the columns of the draws.</summary>
    public static IReadOnlyList<UncertainInput> All { get; } = Enum.GetValues<UncertainInput>();

    /// <summary>Plain name, for sentences and axes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is no input.</exception>
    public static string Name(UncertainInput input) => input switch
    {
        UncertainInput.Current => "current",
        UncertainInput.Cast => "length of the cast",
        UncertainInput.RetrieveSpeed => "retrieve speed",
        UncertainInput.Depth => "depth of the water",
        UncertainInput.RodHeight => "height of the rod tip",
        UncertainInput.LineDrag => "drag of the line",
        UncertainInput.LineLaw => "drag law of the line",
        _ => throw new ArgumentOutOfRangeException(nameof(input), input, "Not an input."),
    };
}
