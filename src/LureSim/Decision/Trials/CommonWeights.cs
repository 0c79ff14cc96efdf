namespace LureSim.Decision.Trials;

/// <summary>Weights that jig heads are commonly cast in: common practice.</summary>
public static class CommonWeights
{
    private const double Ounce = PhysicalConstants.Ounce;

    /// <summary>The weights (kg), increasing: 1/32 to 4 oz.</summary>
    public static IReadOnlyList<double> All { get; } =
    [
        Ounce / 32, Ounce / 16, Ounce / 8, Ounce * 3 / 16, Ounce / 4, Ounce * 5 / 16, Ounce * 3 / 8, Ounce / 2,
        Ounce * 5 / 8, Ounce * 3 / 4, Ounce, Ounce * 1.5, Ounce * 2, Ounce * 3, Ounce * 4,
    ];
}
