using LureSim.Light;

namespace LureSim.Sight;

/// <summary>
/// How near prey has to be for a fish to turn to it, from tanks: nearer than where it can be made out. The smaller of this and the
/// sighting distance is the reach of a lure.
/// </summary>
/// <remarks>
/// R = R_full max(0.35, min(1, (E/25 lx)^0.25)) exp(-0.15 (T - 1.65 NTU)) with the last factor for T above 1.65 NTU, fitted in the
/// logarithm to 194 plotted points of Chinook salmon and cutthroat trout (Hansen, Beauchamp and Schoen 2013, hansen2013visual: full
/// distance from 24.9 lx up and to 1.65 NTU; measured to 7.4 NTU, beyond which the distance goes as 1/T: rainbow trout at 15 and 30 NTU still
/// reacted at 0.36 and 0.21 m, Barrett, Grossman and Rosenfeld 1992) and lake trout (Vogel and Beauchamp 1999, vogel1999effects; Mazur and Beauchamp 2003,
/// mazur2003comparison), each by its own full distance: 1.19, 1.87 and 0.94 m. R_full is their geometric mean. No inshore sport fish was
/// measured, and the tanks were short: a lower bound of what such fish do in clear water.
/// </remarks>
public static class ReactionDistance
{
    /// <summary>Distance in clear water and full light (m), 1.28.</summary>
    public const double Full = 1.28;

    /// <summary>Illuminance (lx) from which the distance is full.</summary>
    public const double FullLight = 25.0;

    /// <summary>Turbidity (NTU) to which the distance is full.</summary>
    public const double FullClarity = 1.65;

    /// <summary>Factor, either way, between kinds of fish, 1.4: one standard deviation of the logarithm over the three.</summary>
    public const double Spread = 1.4;

    /// <summary>Factor, either way, of a kind of fish's own points about the law, 1.23.</summary>
    public const double Scatter = 1.23;

    private const double DarkShare = 0.35;
    private const double LightExponent = 0.25;
    private const double TurbidityRate = 0.15;   // per NTU
    private const double MostTurbid = 7.4;       // NTU, the murkiest water of the tests
    private const double FullPreyLength = 0.05;  // m, length of the prey in the tests

    // Scattering by particles at 550 nm of one NTU (1/m): order of magnitude from memory, natural waters 0.5-2.
    private const double ScatteringOfNtu = 1.0;

    /// <summary>Reaction distance (m).</summary>
    /// <param name="illuminance">Illuminance at the prey (lx), 0 or more.</param>
    /// <param name="turbidity">Turbidity (NTU), 0 or more; measured to 7.4, beyond as 1/T.</param>
    /// <param name="length">Length of the prey (m), above 0; below 5 cm the distance goes as the length (assumed: it is shorter there).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double At(double illuminance, double turbidity, double length)
    {
        _ = Guard.InRange(illuminance, 0.0, 1e6, nameof(illuminance), "lx");
        _ = Guard.InRange(turbidity, 0.0, 1e5, nameof(turbidity), "NTU");
        _ = Guard.InRange(length, 1e-3, 2.0, nameof(length), "m");
        return Full * ShareByLight(illuminance) * ShareByTurbidity(turbidity) * Math.Min(1.0, length / FullPreyLength);
    }

    /// <summary>Reaction distance in a light field (m).</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="depth">Depth of the prey (m), 0-1000.</param>
    /// <param name="length">Length of the prey (m), above 0; 5 cm or longer unless stated.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double In(LightField field, double depth, double length = FullPreyLength)
    {
        ArgumentNullException.ThrowIfNull(field);
        return At(field.Illuminance(depth), Turbidity(field.Water), length);
    }

    /// <summary>Share of the full distance that is left at an illuminance, 0.35-1.</summary>
    /// <param name="illuminance">Illuminance (lx), 0 or more.</param>
    public static double ShareByLight(double illuminance) =>
        Math.Max(DarkShare, Math.Min(1.0, Math.Pow(illuminance / FullLight, LightExponent)));

    /// <summary>Share of the full distance that is left at a turbidity, 0-1.</summary>
    /// <param name="turbidity">Turbidity (NTU), 0 or more.</param>
    public static double ShareByTurbidity(double turbidity) =>
        Math.Exp(-TurbidityRate * Math.Max(0.0, Math.Min(turbidity, MostTurbid) - FullClarity)) * Math.Min(1.0, MostTurbid / Math.Max(turbidity, MostTurbid));

    /// <summary>Turbidity of a water (NTU) from the scattering of its particles at 550 nm, 1 per m a NTU (from memory, a factor of 2 either way).</summary>
    /// <param name="water">The water.</param>
    public static double Turbidity(OpticalWater water)
    {
        ArgumentNullException.ThrowIfNull(water);
        double particles = water.Optics.Scattering.At(550.0) - (2.0 * water.Optics.WaterBackscattering.At(550.0));
        return Math.Max(0.0, particles) / ScatteringOfNtu;
    }
}
