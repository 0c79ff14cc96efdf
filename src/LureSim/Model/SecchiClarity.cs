namespace LureSim.Model;

/// <summary>The water's character, which with the Secchi depth fixes its constituents.</summary>
public enum WaterKind
{
    /// <summary>Blue water, little but phytoplankton.</summary>
    ClearOcean,

    /// <summary>Green coastal water, plankton with some dissolved organic matter.</summary>
    CoastalGreen,

    /// <summary>Brown, tea-coloured water, dissolved organic matter dominates.</summary>
    TanninStained,

    /// <summary>Grey-brown water, suspended mineral dominates.</summary>
    Silty,
}

/// <summary>Clarity by a white disc and what colours the water.</summary>
/// <param name="Depth">Secchi depth (m), 0.05 to 45.</param>
/// <param name="Kind">Kind of water.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record SecchiClarity(double Depth, WaterKind Kind) : WaterClarity
{
    /// <summary>Secchi depth (m), 0.05 to 45.</summary>
    public double Depth { get; init => field = Limits.SecchiDepth.Check(value); } = Limits.SecchiDepth.Check(Depth);

    /// <summary>Kind of water.</summary>
    public WaterKind Kind { get; init => field = Guard.Defined(value); } = Guard.Defined(Kind);
}
