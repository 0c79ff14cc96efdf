using UnitsNet;

namespace LureSim.Scenarios;

/// <summary>A unit as scenarios spell it.</summary>
/// <param name="Symbol">Spelling, case-sensitive.</param>
/// <param name="ToSi">Conversion to the unit kept inside (SI; degrees Celsius for temperature).</param>
internal sealed record UnitOfMeasure(string Symbol, Func<double, double> ToSi)
{
    // Every unit is a multiple of the one kept inside, temperatures with an offset.
    private readonly double zero = ToSi(0);
    private readonly double one = ToSi(1) - ToSi(0);

    /// <summary>Conversion from the unit kept inside; <see cref="ToSi"/> turned round.</summary>
    public double FromSi(double value) => (value - zero) / one;
}

/// <summary>A pair of units that may be written one after the other, as in "10 ft 6 in".</summary>
/// <param name="Major">The larger unit, which takes a whole number.</param>
/// <param name="Minor">The smaller unit.</param>
/// <param name="MinorPerMajor">How many of the smaller make one of the larger.</param>
internal sealed record UnitPair(string Major, string Minor, int MinorPerMajor);

/// <summary>One kind of quantity: its units, their names that are read, and the spellings that are refused with a way out.</summary>
internal sealed record QuantityUnits(
    QuantityKind Kind,
    string Name,
    string Example,
    IReadOnlyList<UnitOfMeasure> Units,
    IReadOnlyList<UnitPair> Pairs,
    IReadOnlyDictionary<string, string> Names,
    IReadOnlyDictionary<string, string> Misspellings)
{
    /// <summary>The allowed unit symbols as a list for people.</summary>
    public string SymbolList { get; } = string.Join(", ", Units.Select(unit => unit.Symbol));

    /// <summary>The unit with this exact symbol, or null.</summary>
    public UnitOfMeasure? Find(string symbol) => Units.FirstOrDefault(unit => unit.Symbol == symbol);

    /// <summary>The unit with this exact symbol or name, such as feet for ft, or null.</summary>
    public UnitOfMeasure? Named(string text) => Find(text) ?? (Names.TryGetValue(text, out string? symbol) ? Find(symbol) : null);

    /// <summary>The symbol and the names of a unit.</summary>
    public IEnumerable<string> Spellings(string symbol) => Names.Where(pair => pair.Value == symbol).Select(pair => pair.Key).Prepend(symbol);
}

/// <summary>The units of every quantity. Numeric conversion is done by UnitsNet, spelling is decided here.</summary>
internal static class UnitTable
{
    private static readonly Dictionary<string, string> NoSpellings = [];

    private static readonly Dictionary<QuantityKind, QuantityUnits> Table = new QuantityUnits[]
    {
        new(QuantityKind.Length, "length", "8 ft",
            [
                new("m", value => Length.FromMeters(value).Meters),
                new("cm", value => Length.FromCentimeters(value).Meters),
                new("mm", value => Length.FromMillimeters(value).Meters),
                new("ft", value => Length.FromFeet(value).Meters),
                new("in", value => Length.FromInches(value).Meters),
                new("yd", value => Length.FromYards(value).Meters),
            ],
            [new("ft", "in", 12)],
            Spellings("ft", "feet foot", "in", "inch inches", "m", "meter meters metre metres", "cm", "centimeter centimeters centimetre centimetres", "mm", "millimeter millimeters millimetre millimetres", "yd", "yard yards yds"),
            Spellings("ft", "'", "in", "\"")),
        new(QuantityKind.Mass, "mass", "1/4 oz",
            [
                new("oz", value => Mass.FromOunces(value).Kilograms),
                new("g", value => Mass.FromGrams(value).Kilograms),
                new("kg", value => value),
                new("lb", value => Mass.FromPounds(value).Kilograms),
            ],
            [new("lb", "oz", 16)],
            Spellings("oz", "ounce ounces ozs", "g", "gram grams", "kg", "kilo kilos kilogram kilograms", "lb", "lbs pound pounds"),
            Spellings("g", "gm gms gr")),
        new(QuantityKind.Speed, "speed", "1.2 kn",
            [
                new("m/s", value => value),
                new("cm/s", value => Speed.FromCentimetersPerSecond(value).MetersPerSecond),
                new("km/h", value => Speed.FromKilometersPerHour(value).MetersPerSecond),
                new("ft/s", value => Speed.FromFeetPerSecond(value).MetersPerSecond),
                new("in/s", value => Speed.FromInchesPerSecond(value).MetersPerSecond),
                new("kn", value => Speed.FromKnots(value).MetersPerSecond),
                new("mph", value => Speed.FromMilesPerHour(value).MetersPerSecond),
            ],
            [],
            Spellings("kn", "knot knots kt kts", "m/s", "mps", "ft/s", "fps", "km/h", "kph kmh", "in/s", "ips"),
            NoSpellings),
        new(QuantityKind.LineStrength, "line strength", "10 lb",
            [
                new("lb", value => Force.FromPoundsForce(value).Newtons),
                new("lbf", value => Force.FromPoundsForce(value).Newtons),
                new("kg", value => Force.FromKilogramsForce(value).Newtons),
                new("kgf", value => Force.FromKilogramsForce(value).Newtons),
                new("N", value => value),
            ],
            [],
            Spellings("lb", "lbs pound pounds", "kg", "kilo kilos", "N", "newton newtons"),
            Spellings("lb", "#")),
        new(QuantityKind.Temperature, "temperature", "68 degF",
            [
                new("degC", value => value),
                new("degF", value => Temperature.FromDegreesFahrenheit(value).DegreesCelsius),
                new("\u00b0C", value => value),
                new("\u00b0F", value => Temperature.FromDegreesFahrenheit(value).DegreesCelsius),
            ],
            [],
            Spellings("degC", "C celsius Celsius", "degF", "F fahrenheit Fahrenheit"),
            NoSpellings),
        new(QuantityKind.Angle, "angle", "40 deg",
            [
                new("deg", value => Angle.FromDegrees(value).Radians),
                new("\u00b0", value => Angle.FromDegrees(value).Radians),
            ],
            [],
            Spellings("deg", "degree degrees degs"),
            NoSpellings),
        new(QuantityKind.Salinity, "salinity", "28 ppt",
            [
                new("ppt", value => value),
                new("psu", value => value),
                new("g/kg", value => value),
            ],
            [],
            Spellings("psu", "PSU", "ppt", "PPT"),
            NoSpellings),
        new(QuantityKind.Percentage, "percentage", "30 %",
            [new("%", value => Ratio.FromPercent(value).DecimalFractions)],
            [],
            Spellings("%", "percent pct"),
            NoSpellings),
        new(QuantityKind.Duration, "time", "4 s",
            [
                new("s", value => value),
                new("min", value => Duration.FromMinutes(value).Seconds),
            ],
            [new("min", "s", 60)],
            Spellings("s", "sec secs second seconds", "min", "mins minute minutes"),
            NoSpellings),
        new(QuantityKind.Density, "density", "1.05 g/cm3",
            [
                new("kg/m3", value => value),
                new("g/cm3", value => Density.FromGramsPerCubicCentimeter(value).KilogramsPerCubicMeter),
            ],
            [],
            Spellings("g/cm3", "g/cc g/ml g/mL g/cm^3", "kg/m3", "kg/m^3"),
            NoSpellings),
        new(QuantityKind.TurnRate, "handle turns", "1.5 turns/s",
            [
                new("turns/s", value => RotationalSpeed.FromRevolutionsPerSecond(value).RevolutionsPerSecond),
                new("turns/min", value => RotationalSpeed.FromRevolutionsPerMinute(value).RevolutionsPerSecond),
            ],
            [],
            Spellings("turns/s", "rps turn/s", "turns/min", "rpm turn/min"),
            Spellings("turns/s", "turns")),
        new(QuantityKind.Concentration, "concentration", "5 mg/m3",
            [
                new("mg/m3", value => MassConcentration.FromMilligramsPerCubicMeter(value).KilogramsPerCubicMeter),
                new("ug/L", value => MassConcentration.FromMicrogramsPerLiter(value).KilogramsPerCubicMeter),
                new("g/m3", value => MassConcentration.FromGramsPerCubicMeter(value).KilogramsPerCubicMeter),
                new("mg/L", value => MassConcentration.FromMilligramsPerLiter(value).KilogramsPerCubicMeter),
            ],
            [],
            Spellings("mg/m3", "mg/m^3", "ug/L", "\u00b5g/L ug/l", "g/m3", "g/m^3", "mg/L", "mg/l"),
            Spellings("mg/L", "ppm")),
        new(QuantityKind.AbsorptionCoefficient, "absorption", "0.8 1/m",
            [new("1/m", value => value)],
            [],
            NoSpellings,
            Spellings("1/m", "m-1 m^-1")),
        new(QuantityKind.UtcOffset, "clock offset", "-4 h",
            [
                new("h", value => Duration.FromHours(value).Seconds),
            ],
            [],
            Spellings("h", "hr hrs hour hours"),
            NoSpellings),
    }.ToDictionary(units => units.Kind);

    /// <summary>The units of a kind of quantity.</summary>
    public static QuantityUnits Of(QuantityKind kind) => Table[kind];

    /// <summary>All kinds, in the order of <see cref="QuantityKind"/>.</summary>
    public static IEnumerable<QuantityUnits> All => Table.Values;

    // Pairs of (symbol, spellings separated by spaces).
    private static Dictionary<string, string> Spellings(params string[] pairs)
    {
        var result = new Dictionary<string, string>(StringComparer.Ordinal);
        for (int i = 0; i < pairs.Length; i += 2)
            foreach (string spelling in pairs[i + 1].Split(' '))
                result[spelling] = pairs[i];
        return result;
    }
}
