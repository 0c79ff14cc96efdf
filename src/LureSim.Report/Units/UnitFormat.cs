using System.Globalization;
using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Report.Units;

/// <summary>
/// Turns SI values into texts in one unit system: the only formatter of numbers, always in invariant culture. A <see cref="DisplayUnit"/> has the fixed digits of
/// a column; the texts have as few digits as a reader needs, and a dash for a value that is not finite.
/// </summary>
/// <param name="system">The unit system.</param>
public sealed class UnitFormat(UnitSystem system)
{
    private static readonly double FootInMetres = UnitsNet.Length.FromFeet(1).Meters;
    private static readonly double InchInMetres = UnitsNet.Length.FromInches(1).Meters;
    private static readonly double MileInMetres = UnitsNet.Length.FromMiles(1).Meters;
    private static readonly double PoundForceInNewtons = UnitsNet.Force.FromPoundsForce(1).Newtons;

    /// <summary>Text for a value that does not exist.</summary>
    public const string None = "–";

    /// <summary>The unit system.</summary>
    public UnitSystem System { get; } = system;

    private bool Us => System == UnitSystem.Us;

    /// <summary>Times: s in both systems.</summary>
    public static DisplayUnit Seconds { get; } = new("s", value => value, 1);

    /// <summary>Shares, 0 to 1, as %.</summary>
    public static DisplayUnit Share { get; } = new("%", value => 100.0 * value, 0);

    /// <summary>Angles (given in radians): deg.</summary>
    public static DisplayUnit Angle { get; } = new("deg", value => UnitsNet.Angle.FromRadians(value).Degrees, 0);

    /// <summary>Depths, heights and casts: ft or m.</summary>
    public DisplayUnit Length => Us
        ? new("ft", value => UnitsNet.Length.FromMeters(value).Feet, 1)
        : new("m", value => value, 2);

    /// <summary>Lures and line diameters: in or mm.</summary>
    public DisplayUnit SmallLength => Us
        ? new("in", value => UnitsNet.Length.FromMeters(value).Inches, 2)
        : new("mm", value => UnitsNet.Length.FromMeters(value).Millimeters, 1);

    /// <summary>Retrieve and fall speeds: ft/s or m/s.</summary>
    public DisplayUnit Speed => Us
        ? new("ft/s", value => UnitsNet.Speed.FromMetersPerSecond(value).FeetPerSecond, 2)
        : new("m/s", value => value, 2);

    /// <summary>Currents and wind: kn or m/s.</summary>
    public DisplayUnit FlowSpeed => Us
        ? new("kn", value => UnitsNet.Speed.FromMetersPerSecond(value).Knots, 1)
        : new("m/s", value => value, 2);

    /// <summary>Line tension and strength: lb or N.</summary>
    public DisplayUnit Force => Us
        ? new("lb", value => UnitsNet.Force.FromNewtons(value).PoundsForce, 2)
        : new("N", value => value, 2);

    /// <summary>Masses: oz or g.</summary>
    public DisplayUnit Mass => Us
        ? new("oz", value => UnitsNet.Mass.FromKilograms(value).Ounces, 2)
        : new("g", value => UnitsNet.Mass.FromKilograms(value).Grams, 1);

    /// <summary>Temperatures (given in degrees Celsius): degF or degC.</summary>
    public DisplayUnit Temperature => Us
        ? new("degF", value => UnitsNet.Temperature.FromDegreesCelsius(value).DegreesFahrenheit, 0)
        : new("degC", value => value, 1);

    /// <summary>Lengths that are round in these units, for the rows of tables.</summary>
    public LengthScale LengthScale => Us ? new LengthScale(FootInMetres, 0.1, 0.5, 3, [0, 3, 6, 10, 20, 30]) : LengthScale.Metres;

    /// <summary>Units in which the depths and currents of a tide's table are round.</summary>
    public TideScale TideScale => Us ? new TideScale(FootInMetres, PhysicalConstants.Knot) : TideScale.Metric;

    /// <summary>Symbol of the unit of lengths: ft or m.</summary>
    public string LengthUnit => Us ? "ft" : "m";

    /// <summary>Symbol of the unit of speeds: ft/s or m/s.</summary>
    public string SpeedUnit => Us ? "ft/s" : "m/s";

    /// <summary>A length or depth (m) as a number of ft or m.</summary>
    public double LengthValue(double metres) => Us ? metres / FootInMetres : metres;

    /// <summary>A speed (m/s) as a number of ft/s or m/s.</summary>
    public double SpeedValue(double metresPerSecond) => Us ? metresPerSecond / FootInMetres : metresPerSecond;

    /// <summary>A length or depth (m) as text, "6.5 ft" or "2.0 m".</summary>
    public string LengthText(double metres) => With(LengthNumber(metres), LengthUnit);

    /// <summary>A length or depth (m) as text without its unit.</summary>
    public string LengthNumber(double metres)
    {
        double value = LengthValue(metres);
        double size = Math.Abs(value);
        int decimals = Us ? (size >= 20 ? 0 : 1) : (size >= 20 ? 0 : size >= 2 ? 1 : 2);
        return Number(value, decimals);
    }

    /// <summary>A band of depth (m) as text, "4 to 6 ft".</summary>
    public string BandText(double from, double to) => $"{LengthNumber(from)} to {LengthText(to)}";

    /// <summary>A speed (m/s) as text, "1.5 ft/s" or "0.46 m/s".</summary>
    public string SpeedText(double metresPerSecond) => With(SpeedNumber(metresPerSecond), SpeedUnit);

    /// <summary>A speed (m/s) as text without its unit.</summary>
    public string SpeedNumber(double metresPerSecond) => Number(SpeedValue(metresPerSecond), Us ? 1 : 2);

    /// <summary>A current (m/s) as text, "1.2 kn (2 ft/s)" or "0.6 m/s".</summary>
    public string CurrentText(double metresPerSecond) => Us
        ? $"{Number(metresPerSecond / PhysicalConstants.Knot, 1)} kn ({SpeedText(metresPerSecond)})"
        : SpeedText(metresPerSecond);

    /// <summary>A wind speed (m/s) as text, "12 mph" or "5 m/s".</summary>
    public string WindText(double metresPerSecond) => Us
        ? With(Number(metresPerSecond * 3600 / MileInMetres, 0), "mph")
        : With(Number(metresPerSecond, 1), "m/s");

    /// <summary>A size of a lure or a rod (m) as text, "3.5 in" or "89 mm".</summary>
    public string SizeText(double metres) => Us
        ? With(Number(metres / InchInMetres, 1), "in")
        : With(Number(metres * 1000, 0), "mm");

    /// <summary>A way that a lure makes under a twitch (m) as text, "8 in" or "20 cm".</summary>
    public string TravelText(double metres) => Us
        ? With(Number(metres / InchInMetres, 0), "in")
        : With(Number(metres * 100, 0), "cm");

    /// <summary>A diameter of a line (m) as text, "0.011 in" or "0.28 mm".</summary>
    public string DiameterText(double metres) => Us
        ? With(Number(metres / InchInMetres, 4), "in")
        : With(Number(metres * 1000, 3), "mm");

    /// <summary>A nominal breaking force (N) as anglers name it: pounds, or kilograms of load.</summary>
    public string StrengthText(double newtons) => Us
        ? With(Number(newtons / PoundForceInNewtons, 0), "lb")
        : With(Number(newtons / PhysicalConstants.StandardGravity, 1), "kg");

    /// <summary>A temperature (degrees Celsius) as text.</summary>
    public string TemperatureText(double celsius) => Us
        ? With(Number((celsius * 9 / 5) + 32, 0), "°F")
        : With(Number(celsius, 0), "°C");

    /// <summary>Twists of line per metre as text over a length that an angler can picture, "6 twists of line in 10 ft".</summary>
    public string TwistText(double perMetre) => Us
        ? $"{Number(perMetre * 10 * FootInMetres, 0)} twists of line in 10 ft"
        : $"{Number(perMetre, 1)} twists of line a metre";

    /// <summary>
    /// A lure weight as tackle boxes print it: in US units the nearest fraction of an ounce (down to 1/32) if it
    /// hits within 1 %, otherwise two decimals; in metric units grams.
    /// </summary>
    /// <param name="kilograms">Mass (kg).</param>
    public string Weight(double kilograms)
    {
        if (!Us || !double.IsFinite(kilograms))
            return Mass.Text(kilograms);
        double ounces = kilograms / PhysicalConstants.Ounce;
        for (int under = 1; under <= 32; under *= 2)
        {
            double over = Math.Round(ounces * under);
            if (over > 0 && over <= 1000 && Math.Abs((over / under) - ounces) <= 0.01 * ounces)
            {
                int whole = (int)over / under;
                int rest = (int)over % under;
                return (whole, rest) switch
                {
                    (_, 0) => FormattableString.Invariant($"{whole} oz"),
                    (0, _) => FormattableString.Invariant($"{rest}/{under} oz"),
                    _ => FormattableString.Invariant($"{whole} {rest}/{under} oz"),
                };
            }
        }

        return Mass.Text(kilograms);
    }

    /// <summary>A jig head as its owner wrote it, or its weight in the chosen units if the owner wrote it in others.</summary>
    /// <param name="head">Jig head.</param>
    public string HeadText(JigHead head)
    {
        ArgumentNullException.ThrowIfNull(head);
        if (head.Mass == 0.0)
            return head.Label;
        int length = LabelWeightLength(head.Label);
        string unit = head.Label[..length].TrimEnd().Split(' ', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9')[^1];
        return (unit is "oz" or "lb") == Us ? head.Label : Weight(head.Mass) + head.Label[length..];
    }

    /// <summary>A small length (m) in mm in either system, as it is measured with a ruler; without its sign.</summary>
    public static string MillimetresText(double metres) => With(Number(Math.Abs(metres) * 1000, 1), "mm");

    /// <summary>An angle (radians) in whole degrees as text, "12 deg".</summary>
    public static string DegreesText(double radians) => With(Number(radians * 180 / Math.PI, 0), "deg");

    /// <summary>An angle (radians) to a tenth of a degree as text, "12.5°"; without its sign.</summary>
    public static string AngleText(double radians) => $"{Number(Math.Abs(radians) * 180 / Math.PI, 1)}°";

    /// <summary>A time (s) as text, "12 s"; a dash for none.</summary>
    public static string SecondsText(double? seconds) => seconds is { } value ? With(SecondsNumber(value), "s") : None;

    /// <summary>A time (s) as text without its unit, as a person counts it: halves below 10 s, whole seconds above.</summary>
    public static string SecondsNumber(double? seconds) => seconds is { } value && double.IsFinite(value)
        ? value < 9.75 ? (Math.Round(value * 2) / 2).ToString("0.#", CultureInfo.InvariantCulture) : value.ToString("0", CultureInfo.InvariantCulture)
        : None;

    /// <summary>A share (0 to 1) as text, "62 %". Values that are not quite none or all are not rounded to it.</summary>
    public static string PercentText(double share) => With(PercentNumber(share), "%");

    /// <summary>A share (0 to 1) as a number of per cent without its sign.</summary>
    public static string PercentNumber(double share) => !double.IsFinite(share) ? None
        : share is > 0 and < 0.005 ? "<1"
        : share is > 0.995 and < 1 ? ">99"
        : Number(share * 100, 0);

    /// <summary>A number with at most so many decimals, without trailing zeros; a dash if it is not finite.</summary>
    public static string Number(double value, int decimals)
    {
        if (!double.IsFinite(value))
            return None;

        double rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        // Adding zero turns a negative zero into a plain one.
        return (rounded + 0).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
    }

    /// <summary>A number with exactly so many decimals.</summary>
    public static string Fixed(double value, int decimals) => value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string With(string number, string unit) => number == None ? None : $"{number} {unit}";

    // A label is the weight, possibly followed by the metal after a space: "1/4 oz tungsten".
    private static int LabelWeightLength(string label)
    {
        int lastDigit = label.LastIndexOfAny(['0', '1', '2', '3', '4', '5', '6', '7', '8', '9']);
        int unit = lastDigit + 1;
        while (unit < label.Length && label[unit] == ' ')
            unit++;
        int end = label.IndexOf(' ', unit);
        return end < 0 ? label.Length : end;
    }
}
