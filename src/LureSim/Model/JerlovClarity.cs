namespace LureSim.Model;

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

/// <summary>Clarity by an optical water type.</summary>
/// <param name="Type">Jerlov's type.</param>
/// <exception cref="ArgumentOutOfRangeException">There is no such type.</exception>
public sealed record JerlovClarity(JerlovType Type) : WaterClarity
{
    /// <summary>Jerlov's type.</summary>
    public JerlovType Type { get; init => field = Guard.Defined(value); } = Guard.Defined(Type);
}
