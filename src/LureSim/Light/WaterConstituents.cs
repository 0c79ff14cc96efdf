namespace LureSim.Light;

/// <summary>What is in the water besides water.</summary>
public sealed record WaterConstituents
{
    /// <summary>Mean slope of dissolved organic matter in European coastal waters (1/nm), 0.0176 (Babin et al. 2003, babin2003variations).</summary>
    public const double MeanDissolvedSlope = 0.0176;

    /// <summary>Share of the scattering by organic particles that goes backward in the open ocean, 0.010 +- 0.002 over many regions (Westberry et al. 2010, westberry2010bio).</summary>
    public const double OceanBackscatteringShare = 0.010;

    /// <summary>The same in bays and estuaries, 0.0128: mean of all particles in the Chesapeake (Tzortziou et al. 2005, tzortziou2005chesapeake); 0.014-0.029 on the northern Adriatic coast (Berthon et al. 2006, berthon2006adriatic).</summary>
    public const double CoastalBackscatteringShare = 0.0128;

    /// <summary>Makes a set of constituents.</summary>
    /// <param name="chlorophyllMilligramPerCubicMetre">Chlorophyll a (mg/m3), 0-300 (the absorption law is fitted for about 0.02-25).</param>
    /// <param name="dissolvedAbsorption440PerMetre">Absorption of coloured dissolved organic matter (CDOM) at 440 nm (1/m), 0-50.</param>
    /// <param name="mineralGramPerCubicMetre">Suspended mineral (g/m3), 0-2000.</param>
    /// <param name="dissolvedSlopePerNm">Exponential slope of the dissolved matter (1/nm), 0.005-0.03.</param>
    /// <param name="organicBackscatteringShare">Share of the scattering by organic particles that goes backward, 0.001-0.05.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public WaterConstituents(
        double chlorophyllMilligramPerCubicMetre,
        double dissolvedAbsorption440PerMetre,
        double mineralGramPerCubicMetre,
        double dissolvedSlopePerNm = MeanDissolvedSlope,
        double organicBackscatteringShare = OceanBackscatteringShare)
    {
        ChlorophyllMilligramPerCubicMetre = Guard.InRange(chlorophyllMilligramPerCubicMetre, 0.0, 300.0, nameof(chlorophyllMilligramPerCubicMetre), "mg m-3");
        DissolvedAbsorption440PerMetre = Guard.InRange(dissolvedAbsorption440PerMetre, 0.0, 50.0, nameof(dissolvedAbsorption440PerMetre), "m-1");
        MineralGramPerCubicMetre = Guard.InRange(mineralGramPerCubicMetre, 0.0, 2000.0, nameof(mineralGramPerCubicMetre), "g m-3");
        DissolvedSlopePerNm = Guard.InRange(dissolvedSlopePerNm, 0.005, 0.03, nameof(dissolvedSlopePerNm), "per nm");
        OrganicBackscatteringShare = Guard.InRange(organicBackscatteringShare, 0.001, 0.05, nameof(organicBackscatteringShare), "");
    }

    /// <summary>Chlorophyll a (mg/m3).</summary>
    public double ChlorophyllMilligramPerCubicMetre { get; }

    /// <summary>Absorption of coloured dissolved organic matter at 440 nm (1/m).</summary>
    public double DissolvedAbsorption440PerMetre { get; }

    /// <summary>Suspended mineral (g/m3).</summary>
    public double MineralGramPerCubicMetre { get; }

    /// <summary>Slope S of the dissolved matter (1/nm): a(lambda) = a(440) exp(-S (lambda - 440)).</summary>
    public double DissolvedSlopePerNm { get; }

    /// <summary>Share of the scattering by organic particles (those that go with chlorophyll) that goes backward, dimensionless.</summary>
    public double OrganicBackscatteringShare { get; }
}
