using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Densities of the metals of heads, hooks and spoons.</summary>
public static class Metals
{
    /// <summary>Steel of hooks (kg/m3), handbook value.</summary>
    public const double Steel = 7850;

    /// <summary>Density of a metal (kg/m3); handbook values of the pure metals, tungsten as a nickel-iron heavy alloy (17,000-18,500).</summary>
    /// <param name="metal">Metal.</param>
    /// <exception cref="ArgumentOutOfRangeException">The metal is unknown.</exception>
    public static double Density(HeadMetal metal) => metal switch
    {
        HeadMetal.Lead => 11340,
        HeadMetal.Tungsten => 17000,
        HeadMetal.Tin => 7290,
        HeadMetal.Zinc => 7140,
        HeadMetal.Bismuth => 9780,
        HeadMetal.Steel => Steel,
        HeadMetal.Brass => 8500,
        _ => throw new ArgumentOutOfRangeException(nameof(metal), metal, "The metal is unknown."),
    };
}
