namespace LureSim.Model;

/// <summary>Power of a rod, the trade's word for the lures that it is made to cast; the usual weights of each are in Data/tackle/rod_powers.csv.</summary>
public enum RodPower
{
    /// <summary>Ultralight.</summary>
    Ultralight,

    /// <summary>Light.</summary>
    Light,

    /// <summary>Medium light.</summary>
    MediumLight,

    /// <summary>Medium.</summary>
    Medium,

    /// <summary>Medium heavy.</summary>
    MediumHeavy,

    /// <summary>Heavy.</summary>
    Heavy,
}
