namespace LureSim.Scenarios;

/// <summary>What a value with a unit measures; each kind has its own list of allowed units.</summary>
public enum QuantityKind
{
    /// <summary>Length, SI unit m.</summary>
    Length,

    /// <summary>Mass, SI unit kg.</summary>
    Mass,

    /// <summary>Speed, SI unit m/s.</summary>
    Speed,

    /// <summary>Strength of a line: a force, SI unit N. The trade writes it in pounds, which are pounds-force here.</summary>
    LineStrength,

    /// <summary>Temperature, kept in degrees Celsius.</summary>
    Temperature,

    /// <summary>Angle, SI unit rad.</summary>
    Angle,

    /// <summary>Practical salinity, dimensionless; parts per thousand are taken as equal to it.</summary>
    Salinity,

    /// <summary>Share, 0 to 1, written as a percentage.</summary>
    Percentage,

    /// <summary>Duration, SI unit s.</summary>
    Duration,

    /// <summary>Density, SI unit kg/m3.</summary>
    Density,

    /// <summary>Turns of the reel handle per second (1/s).</summary>
    TurnRate,

    /// <summary>Mass of matter in a volume of water, SI unit kg/m3.</summary>
    Concentration,

    /// <summary>Share of the light absorbed a metre of path, SI unit 1/m.</summary>
    AbsorptionCoefficient,

    /// <summary>Difference of a local clock from universal time, SI unit s.</summary>
    UtcOffset,
}
