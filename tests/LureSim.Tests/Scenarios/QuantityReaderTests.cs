using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

public class QuantityReaderTests
{
    // Exact definitions: international foot 0.3048 m, avoirdupois pound 0.45359237 kg, nautical mile 1852 m,
    // standard gravity 9.80665 m/s2 (BIPM SI brochure 2019; NIST SP 811, 2008, appendix B).
    private const double Ounce = 0.45359237 / 16.0;

    public static TheoryData<QuantityKind, string, double> Good => new()
    {
        { QuantityKind.Mass, "1/4 oz", Ounce / 4.0 },
        { QuantityKind.Mass, "1 1/4 oz", Ounce * 1.25 },
        { QuantityKind.Mass, "3/16 oz", Ounce * 3.0 / 16.0 },
        { QuantityKind.Mass, "5/4 oz", Ounce * 1.25 },
        { QuantityKind.Mass, "1/4oz", Ounce / 4.0 },
        { QuantityKind.Mass, "7 g", 0.007 },
        { QuantityKind.Mass, "7g", 0.007 },
        { QuantityKind.Mass, "0.1 kg", 0.1 },
        { QuantityKind.Mass, "1 lb 4 oz", Ounce * 20.0 },
        { QuantityKind.Length, "8 ft", 2.4384 },
        { QuantityKind.Length, "10 ft 6 in", 3.2004 },
        { QuantityKind.Length, "10ft 6in", 3.2004 },
        { QuantityKind.Length, "1 ft 3 1/2 in", 0.3048 * 15.5 / 12.0 },
        { QuantityKind.Length, "2.4 m", 2.4 },
        { QuantityKind.Length, "28 mm", 0.028 },
        { QuantityKind.Length, "45 cm", 0.45 },
        { QuantityKind.Length, "3.5 in", 0.0889 },
        { QuantityKind.Length, "20 yd", 18.288 },
        { QuantityKind.Length, "0.28 mm", 0.00028 },
        { QuantityKind.Length, "-2 m", -2.0 },
        { QuantityKind.Speed, "1.2 kn", 1.2 * 1852.0 / 3600.0 },
        { QuantityKind.Speed, "0.5 m/s", 0.5 },
        { QuantityKind.Speed, "50 cm/s", 0.5 },
        { QuantityKind.Speed, "1.5 ft/s", 0.4572 },
        { QuantityKind.Speed, "10 in/s", 0.254 },
        { QuantityKind.Speed, "3.6 km/h", 1.0 },
        { QuantityKind.Speed, "1 mph", 0.44704 },
        { QuantityKind.LineStrength, "10 lb", 10.0 * 0.45359237 * 9.80665 },
        { QuantityKind.LineStrength, "10 lbf", 10.0 * 0.45359237 * 9.80665 },
        { QuantityKind.LineStrength, "5 kg", 5.0 * 9.80665 },
        { QuantityKind.LineStrength, "5 kgf", 5.0 * 9.80665 },
        { QuantityKind.LineStrength, "44.5 N", 44.5 },
        { QuantityKind.Temperature, "68 degF", 20.0 },
        { QuantityKind.Temperature, "20 degC", 20.0 },
        { QuantityKind.Temperature, "68 \u00b0F", 20.0 },
        { QuantityKind.Temperature, "-1.5 \u00b0C", -1.5 },
        { QuantityKind.Angle, "40 deg", 40.0 * Math.PI / 180.0 },
        { QuantityKind.Angle, "40\u00b0", 40.0 * Math.PI / 180.0 },
        { QuantityKind.Salinity, "35 ppt", 35.0 },
        { QuantityKind.Salinity, "35 psu", 35.0 },
        { QuantityKind.Percentage, "30 %", 0.3 },
        { QuantityKind.Percentage, "30%", 0.3 },
        { QuantityKind.Duration, "2 s", 2.0 },
        { QuantityKind.Duration, "1 min 30 s", 90.0 },
        { QuantityKind.Duration, "1/2 min", 30.0 },
        { QuantityKind.Density, "1.05 g/cm3", 1050.0 },
        { QuantityKind.Density, "1050 kg/m3", 1050.0 },
        { QuantityKind.TurnRate, "1.5 turns/s", 1.5 },
        { QuantityKind.TurnRate, "90 turns/min", 1.5 },
        { QuantityKind.Length, "  8   ft  ", 2.4384 },
        { QuantityKind.Concentration, "5 mg/m3", 5e-6 },
        { QuantityKind.Concentration, "5 ug/L", 5e-6 },
        { QuantityKind.Concentration, "3 g/m3", 3e-3 },
        { QuantityKind.Concentration, "3 mg/L", 3e-3 },
        { QuantityKind.AbsorptionCoefficient, "0.8 1/m", 0.8 },
        { QuantityKind.AbsorptionCoefficient, "1 1/m", 1.0 },
        { QuantityKind.AbsorptionCoefficient, "1 1/2 1/m", 1.5 },
        { QuantityKind.UtcOffset, "-4 h", -14400.0 },
        { QuantityKind.UtcOffset, "5.75 h", 20700.0 },
        { QuantityKind.UtcOffset, "-4 hours", -14400.0 },
        { QuantityKind.Length, "8 feet", 2.4384 },
        { QuantityKind.Length, "1 foot", 0.3048 },
        { QuantityKind.Length, "4 inches", 0.1016 },
        { QuantityKind.Length, "10 feet 6 inches", 3.2004 },
        { QuantityKind.Length, "2.4 metres", 2.4 },
        { QuantityKind.Length, "2.4 meters", 2.4 },
        { QuantityKind.Mass, "1/4 ounce", Ounce / 4.0 },
        { QuantityKind.Speed, "1.2 knots", 1.2 * 1852.0 / 3600.0 },
        { QuantityKind.Speed, "1 knot", 1852.0 / 3600.0 },
        { QuantityKind.Speed, "1 kt", 1852.0 / 3600.0 },
        { QuantityKind.LineStrength, "10 lbs", 10.0 * 0.45359237 * 9.80665 },
        { QuantityKind.Temperature, "68 F", 20.0 },
        { QuantityKind.Temperature, "20 C", 20.0 },
        { QuantityKind.TurnRate, "90 rpm", 1.5 },
    };

    [Theory]
    [MemberData(nameof(Good))]
    public void Reads_by_the_exact_definition_of_the_unit(QuantityKind kind, string text, double expected)
    {
        QuantityReading reading = QuantityReader.Read(kind, text);
        Assert.True(reading.IsValid, reading.Message);
        // A few roundings of double in the conversion.
        Assert.Equal(expected, reading.Value, 1e-12 * Math.Max(1.0, Math.Abs(expected)));
    }

    // Kind, text, part of the message, part of the fix.
    public static TheoryData<QuantityKind, string?, string, string> Bad => new()
    {
        { QuantityKind.Length, null, "empty", "8 ft" },
        { QuantityKind.Length, "", "empty", "8 ft" },
        { QuantityKind.Length, "   ", "empty", "8 ft" },
        { QuantityKind.Length, "8", "no unit", "m, cm, mm, ft, in, yd" },
        { QuantityKind.Length, "8.5", "no unit", "ft" },
        { QuantityKind.Mass, "1/4", "no unit", "oz" },
        { QuantityKind.Length, "8 Ft", "write ft for Ft", "write \"8 ft\"" },
        { QuantityKind.Length, "5 M", "write m for M", "write \"5 m\"" },
        { QuantityKind.Length, "8'", "write ft for '", "write \"8 ft\"" },
        { QuantityKind.Length, "4\"", "write in for \"", "write \"4 in\"" },
        { QuantityKind.Length, "8 kn", "unit of speed, but a length", "use one of" },
        { QuantityKind.Length, "8 furlongs", "not a unit of length", "use one of" },
        { QuantityKind.Length, "0,5 m", "comma", "write \"0.5 m\"" },
        { QuantityKind.Mass, "0,25 oz", "comma", "write \"0.25 oz\"" },
        { QuantityKind.Length, "1,000 mm", "comma", "\"1000 mm\"" },
        { QuantityKind.Length, "1,000,000 mm", "comma", "write \"1000000 mm\"" },
        { QuantityKind.Length, "nan m", "finite", "8 ft" },
        { QuantityKind.Length, ".nan", "finite", "8 ft" },
        { QuantityKind.Length, "NaN", "finite", "8 ft" },
        { QuantityKind.Length, "-.inf", "finite", "8 ft" },
        { QuantityKind.Length, "inf m", "finite", "8 ft" },
        { QuantityKind.Length, "Infinity ft", "finite", "8 ft" },
        { QuantityKind.Length, "1e999 m", "exponent", "in full" },
        { QuantityKind.Length, "1e3 m", "exponent", "in full" },
        { QuantityKind.Length, "1E-3m", "exponent", "in full" },
        { QuantityKind.Mass, "1/0 oz", "zero below", "1/4 oz" },
        { QuantityKind.Mass, "1 5/4 oz", "less than one", "1/4 oz" },
        { QuantityKind.Mass, "1-1/4 oz", "hyphen", "write \"1 1/4 oz\"" },
        { QuantityKind.Mass, "1/4/2 oz", "cannot be read", "1/4 oz" },
        { QuantityKind.Mass, "\u00bc oz", "not a number", "1/4 oz" },
        { QuantityKind.Length, "+8 ft", "plus", "write \"8 ft\"" },
        { QuantityKind.Length, ".5 m", "point", "write \"0.5 m\"" },
        { QuantityKind.Length, "5. m", "cannot be read", "8 ft" },
        { QuantityKind.Length, "1.2.3 m", "cannot be read", "8 ft" },
        { QuantityKind.Length, "12345678901234567890 m", "cannot be read", "8 ft" },
        { QuantityKind.Length, "8 ft 14 in", "less than 12", "8 ft" },
        { QuantityKind.Length, "8.5 ft 2 in", "whole", "8 ft" },
        { QuantityKind.Length, "6 in 8 ft", "do not go together", "one number and one unit" },
        { QuantityKind.Length, "1 m 20 cm", "do not go together", "one number and one unit" },
        { QuantityKind.Length, "1 ft 2 in 3 in", "do not go together", "one number and one unit" },
        { QuantityKind.Length, "deep", "not a number with a unit", "8 ft" },
        { QuantityKind.Length, "ft 8", "cannot be read", "8 ft" },
        { QuantityKind.Length, "8 ft deep", "cannot be read", "8 ft" },
        { QuantityKind.Length, "8 ft; rm", "not a unit", "use one of" },
        { QuantityKind.Mass, "20 gr", "write g for gr", "write \"20 g\"" },
        { QuantityKind.LineStrength, "10 oz", "unit of mass", "use one of" },
        { QuantityKind.Temperature, "293 K", "not a unit", "use one of" },
        { QuantityKind.Speed, "1.2 Knots", "write kn for Knots", "write \"1.2 kn\"" },
        { QuantityKind.Angle, "3 ft", "unit of length, but an angle", "use one of" },
        { QuantityKind.Percentage, "0.3", "no unit", "30 %" },
        { QuantityKind.Angle, "1 rad", "not a unit", "use one of" },
        { QuantityKind.TurnRate, "1 turns", "write turns/s for turns", "write \"1 turns/s\"" },
        { QuantityKind.Length, "\u0668 ft", "not a number", "8 ft" },
        { QuantityKind.Concentration, "5 kg", "unit of mass", "mg/m3" },
        { QuantityKind.AbsorptionCoefficient, "0.8 m^-1", "write 1/m for m^-1", "write \"0.8 1/m\"" },
        { QuantityKind.AbsorptionCoefficient, "0.8/m", "cannot be read", "0.8 1/m" },
        { QuantityKind.AbsorptionCoefficient, "1/m", "cannot be read", "0.8 1/m" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Refuses_with_the_reason_and_a_way_out(QuantityKind kind, string? text, string message, string fix)
    {
        QuantityReading reading = QuantityReader.Read(kind, text);
        Assert.False(reading.IsValid);
        Assert.Contains(message, reading.Message, StringComparison.Ordinal);
        Assert.Contains(fix, reading.Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void A_quoted_fix_can_be_read()
    {
        foreach (object[] row in Bad)
        {
            QuantityReading reading = QuantityReader.Read((QuantityKind)row[0], (string?)row[1]);
            foreach (Match quoted in Regex.Matches(reading.Fix, "\"([^\"]+)\""))
                Assert.True(QuantityReader.Read((QuantityKind)row[0], quoted.Groups[1].Value).IsValid, reading.Fix);
        }
    }

    [Fact]
    public void A_text_longer_than_the_limit_is_refused() =>
        Assert.Contains("longer", QuantityReader.Read(QuantityKind.Length, new string('1', 1000) + " m").Message, StringComparison.Ordinal);

    [Fact]
    public void Every_example_of_the_unit_table_can_be_read()
    {
        foreach (QuantityUnits units in UnitTable.All)
        {
            Assert.True(QuantityReader.Read(units.Kind, units.Example).IsValid);
            Assert.All(units.Misspellings.Values, symbol => Assert.NotNull(units.Find(symbol)));
            Assert.All(units.Misspellings.Keys, spelling => Assert.Null(units.Named(spelling)));
            Assert.All(units.Names, pair => Assert.Equal(pair.Value, units.Named(pair.Key)?.Symbol));
            Assert.All(units.Names.Keys, name => Assert.Null(units.Find(name)));
        }
    }

    [Theory]
    [InlineData(QuantityKind.Mass, " 1/4 ounces ", "1/4 oz")]
    [InlineData(QuantityKind.Length, "10 feet  6 inches", "10 ft  6 in")]
    [InlineData(QuantityKind.Length, "8ft", "8ft")]
    public void A_text_is_kept_with_the_symbols_of_its_units(QuantityKind kind, string text, string kept) =>
        Assert.Equal(kept, QuantityReader.Read(kind, text).Text);

    [Fact]
    public void Every_kind_has_units() =>
        Assert.Equal(Enum.GetValues<QuantityKind>(), UnitTable.All.Select(units => units.Kind).Order());

    [Fact]
    public void Any_text_is_refused_or_gives_a_finite_number() =>
        Gen.Select(GenKind, GenText).HoldsFor((kind, text) =>
        {
            QuantityReading reading = QuantityReader.Read(kind, text);
            Assert.True(double.IsFinite(reading.Value));
            Assert.Equal(reading.IsValid, reading.Message.Length == 0);
            Assert.Equal(reading.IsValid, reading.Fix.Length == 0);
        }, iterations: 10_000);

    [Fact]
    public void The_pattern_for_editors_accepts_the_same_texts_unless_two_numbers_disagree() =>
        Gen.Select(GenKind, GenText).HoldsFor((kind, text) =>
        {
            QuantityReading reading = QuantityReader.Read(kind, text);
            // A pattern cannot compare numbers: 3/2 after a whole number, or 14 in after feet.
            if (!reading.Message.Contains("less than", StringComparison.Ordinal))
                Assert.Equal(reading.IsValid, Regex.IsMatch(text, QuantityReader.Pattern(kind, []), RegexOptions.CultureInvariant));
        }, iterations: 10_000);

    [Fact]
    public void Decimal_numbers_survive_with_every_unit() =>
        Gen.Select(GenKind, Gen.Int[0, 99_999], Gen.Int[0, 999]).HoldsFor((kind, whole, thousandths) =>
        {
            string number = string.Create(CultureInfo.InvariantCulture, $"{whole}.{thousandths:000}");
            foreach (UnitOfMeasure unit in UnitTable.Of(kind).Units)
                Assert.Equal(unit.ToSi(double.Parse(number, CultureInfo.InvariantCulture)), QuantityReader.Read(kind, $"{number} {unit.Symbol}").Value);
        }, iterations: 1_000);

    private static readonly Gen<QuantityKind> GenKind = Gen.Enum<QuantityKind>();

    // Texts made of pieces that matter to the reader are far likelier to hit its branches than letters at random.
    private static readonly Gen<string> GenText = Gen.Frequency(
        (1, Gen.String[0, 80]),
        (8, Gen.OneOf("1", "4", "0", "12", "1/4", "3/2", "1/0", " ", " ", " ", "-", "+", ".", ",", "e5", "ft", "feet", "inches", "knots", "F", "in", "oz", "lb", "g", "m", "s", "min", "%", "deg", "\u00b0", "kn", "m/s", "ppt", "turns/s", "kg/m3", "degF", "nan", "\t", "\n").Array[1, 8].Select(string.Concat)));
}
