namespace LureSim.Light;

/// <summary>What is in the water besides water.</summary>
public sealed record WaterConstituents
{
    /// <summary>Mean slope of dissolved organic matter in European coastal waters (1/nm), 0.0176 (Babin et al. 2003, babin2003variations).</summary>
    public const double MeanDissolvedSlope = 0.0176;

    /// <summary>Makes a set of constituents.</summary>
    /// <param name="chlorophyllMilligramPerCubicMetre">Chlorophyll a (mg/m3), 0-300 (the absorption law is fitted for about 0.02-25).</param>
    /// <param name="dissolvedAbsorption440PerMetre">Absorption of coloured dissolved organic matter (CDOM) at 440 nm (1/m), 0-50.</param>
    /// <param name="mineralGramPerCubicMetre">Suspended mineral (g/m3), 0-2000.</param>
    /// <param name="dissolvedSlopePerNm">Exponential slope of the dissolved matter (1/nm), 0.005-0.03.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public WaterConstituents(
        double chlorophyllMilligramPerCubicMetre,
        double dissolvedAbsorption440PerMetre,
        double mineralGramPerCubicMetre,
        double dissolvedSlopePerNm = MeanDissolvedSlope)
    {
        ChlorophyllMilligramPerCubicMetre = Guard.InRange(chlorophyllMilligramPerCubicMetre, 0.0, 300.0, nameof(chlorophyllMilligramPerCubicMetre), "mg m-3");
        DissolvedAbsorption440PerMetre = Guard.InRange(dissolvedAbsorption440PerMetre, 0.0, 50.0, nameof(dissolvedAbsorption440PerMetre), "m-1");
        MineralGramPerCubicMetre = Guard.InRange(mineralGramPerCubicMetre, 0.0, 2000.0, nameof(mineralGramPerCubicMetre), "g m-3");
        DissolvedSlopePerNm = Guard.InRange(dissolvedSlopePerNm, 0.005, 0.03, nameof(dissolvedSlopePerNm), "per nm");
    }

    /// <summary>Chlorophyll a (mg/m3).</summary>
    public double ChlorophyllMilligramPerCubicMetre { get; }

    /// <summary>Absorption of coloured dissolved organic matter at 440 nm (1/m).</summary>
    public double DissolvedAbsorption440PerMetre { get; }

    /// <summary>Suspended mineral (g/m3).</summary>
    public double MineralGramPerCubicMetre { get; }

    /// <summary>Slope S of the dissolved matter (1/nm): a(lambda) = a(440) exp(-S (lambda - 440)).</summary>
    public double DissolvedSlopePerNm { get; }
}
