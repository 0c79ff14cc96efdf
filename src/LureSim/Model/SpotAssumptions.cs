namespace LureSim.Model;

/// <summary>What of a spot was not given but assumed.</summary>
[Flags]
public enum SpotAssumptions
{
    /// <summary>All was given.</summary>
    None = 0,

    /// <summary>The water temperature, as usual for the season.</summary>
    Temperature = 1,

    /// <summary>The salinity, as usual inshore.</summary>
    Salinity = 2,

    /// <summary>Latitude and longitude for the height of the sun, by the state or region.</summary>
    Place = 4,
}
