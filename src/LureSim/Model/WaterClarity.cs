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

/// <summary>Jerlov's optical water types.</summary>
public enum JerlovType
{
    /// <summary>Oceanic I, the clearest.</summary>
    I,

    /// <summary>Oceanic IA.</summary>
    IA,

    /// <summary>Oceanic IB.</summary>
    IB,

    /// <summary>Oceanic II.</summary>
    II,

    /// <summary>Oceanic III.</summary>
    III,

    /// <summary>Coastal 1C.</summary>
    Coastal1,

    /// <summary>Coastal 3C.</summary>
    Coastal3,

    /// <summary>Coastal 5C.</summary>
    Coastal5,

    /// <summary>Coastal 7C.</summary>
    Coastal7,

    /// <summary>Coastal 9C, the murkiest.</summary>
    Coastal9,
}

/// <summary>How clear the water is, in one of the forms below; there are no others.</summary>
public abstract record WaterClarity
{
    private protected WaterClarity()
    {
    }
}

/// <summary>Clarity by a white disc and what colours the water.</summary>
/// <param name="Depth">Secchi depth (m), 0.05 to 45.</param>
/// <param name="Kind">Kind of water.</param>
public sealed record SecchiClarity(double Depth, WaterKind Kind) : WaterClarity;

/// <summary>Clarity by an optical water type.</summary>
/// <param name="Type">Jerlov's type.</param>
public sealed record JerlovClarity(JerlovType Type) : WaterClarity;

/// <summary>Clarity by what was measured in the water.</summary>
/// <param name="Chlorophyll">Chlorophyll a (kg/m3), 0 to 3e-4.</param>
/// <param name="Dissolved440">Absorption of the coloured dissolved matter at 440 nm (1/m), 0 to 50.</param>
/// <param name="Mineral">Suspended mineral (kg/m3), 0 to 2.</param>
public sealed record ConstituentClarity(double Chlorophyll, double Dissolved440, double Mineral) : WaterClarity;
