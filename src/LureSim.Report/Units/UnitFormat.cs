using System.Globalization;
using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Report.Units;

/// <summary>
/// Turns SI values into texts in one unit system: the only formatter of numbers, always in invariant culture. A <see cref="DisplayUnit"/> has the fixed digits of
/// a column; the texts have as few digits as a reader needs, and a dash for a value that is not finite.
/// </summary>
/// <param name="system">The unit system.</param>
public sealed class UnitFormat(UnitSystem system)
{
    // Parts into which a ruler divides an inch.
    private const int RulerParts = 32;

    private static readonly double FootInMetres = UnitsNet.Length.FromFeet(1).Meters;
    private static readonly double InchInMetres = UnitsNet.Length.FromInches(1).Meters;
    private static readonly double MileInMetres = UnitsNet.Length.FromMiles(1).Meters;
    private static readonly double PoundForceInNewtons = UnitsNet.Force.FromPoundsForce(1).Newtons;

    // Units of a size in a name (m).
    private static readonly Dictionary<string, double> Rulers = new(StringComparer.Ordinal) { ["mm"] = 0.001, ["cm"] = 0.01, ["in"] = InchInMetres };

    // Kinds of lure whose word in a scenario is not what anglers call them.
    private static readonly Dictionary<string, string> TradeNames = new(StringComparer.Ordinal)
    {
        ["shrimp imitation"] = "shrimp",
        ["crab imitation"] = "crab",
        ["hard twitchbait"] = "hard jerkbait",
    };

    private const int FinestOunce = 64;
    private const double OunceTolerance = 0.02;

    /// <summary>Text for a value that does not exist.</summary>
    public const string None = "–";

    /// <summary>The unit system.</summary>
    public UnitSystem System { get; } = system;

    private bool Us => System == UnitSystem.Us;

    /// <summary>Times: s in both systems.</summary>
    public static DisplayUnit Seconds { get; } = new("s", value => value, 1);

    /// <summary>Shares, 0 to 1, as %.</summary>
    public static DisplayUnit Share { get; } = new("%", value => 100.0 * value, 0);

    /// <summary>Angles (given in radians): degrees.</summary>
    public static DisplayUnit Angle { get; } = new("°", value => UnitsNet.Angle.FromRadians(value).Degrees, 0);

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

    /// <summary>A length or depth (m) as text, "6½ ft" or "2 m".</summary>
    public string LengthText(double metres) => With(LengthNumber(metres), LengthUnit);

    /// <summary>A length or depth (m) as text without its unit.</summary>
    public string LengthNumber(double metres)
    {
        double value = LengthValue(metres);
        double size = Math.Abs(value);
        int decimals = Us ? (size >= 20 ? 0 : 1) : (size >= 20 ? 0 : size >= 2 ? 1 : 2);
        return Us ? WithHalf(Number(value, decimals)) : Number(value, decimals);
    }

    /// <summary>A length or depth (m) that a hand or an eye measures, as text without its unit: half feet below 20 ft, whole feet above; tenths of a metre below 2 m, halves below 20 m.</summary>
    public string HandNumber(double metres)
    {
        double value = LengthValue(metres);
        if (!double.IsFinite(value))
            return None;
        double size = Math.Abs(value);
        double step = Us ? (size >= 20 ? 1 : 0.5) : (size >= 20 ? 1 : size >= 2 ? 0.5 : 0.1);
        string number = Number(Math.Round(value / step, MidpointRounding.AwayFromZero) * step, 1);
        return Us ? WithHalf(number) : number;
    }

    /// <summary>A length or depth (m) that a hand or an eye measures, "17½ ft" or "5.5 m"; what is shorter than a foot in inches or centimetres.</summary>
    public string HandText(double metres) => Math.Abs(metres) < FootInMetres * 0.95 ? TravelText(metres) : With(HandNumber(metres), LengthUnit);

    /// <summary>A distance at which something is seen (m): tenths of a foot below 3 ft, half feet above; tenths of a metre; inches or centimetres where it is less than a foot.</summary>
    public string SeenText(double metres) => Math.Abs(metres) < FootInMetres * 0.95 ? TravelText(metres)
        : Us && metres < 3 * FootInMetres || !Us && metres < 2 ? With(Number(LengthValue(metres), 1), LengthUnit)
        : HandText(metres);

    /// <summary>A band of depth (m) as a hand measures it, "17 to 18 ft".</summary>
    public string HandBand(double from, double to) => HandNumber(from) == HandNumber(to) ? HandText(to) : $"{HandNumber(from)} to {With(HandNumber(to), LengthUnit)}";

    /// <summary>A band of depth (m) as text, "4 to 6 ft".</summary>
    public string BandText(double from, double to) => $"{LengthNumber(from)} to {LengthText(to)}";

    /// <summary>A speed (m/s) as text, "1.5 ft/s" or "0.46 m/s".</summary>
    public string SpeedText(double metresPerSecond) => With(SpeedNumber(metresPerSecond), SpeedUnit);

    /// <summary>A speed (m/s) as text without its unit.</summary>
    public string SpeedNumber(double metresPerSecond) => Number(SpeedValue(metresPerSecond), Us ? 1 : 2);

    /// <summary>A sink rate (m/s) as text; of a lure that floats, that it floats.</summary>
    public string SinkText(double metresPerSecond) => metresPerSecond <= 0 ? "floats" : SpeedText(metresPerSecond);

    /// <summary>A current (m/s) as text, "1.2 kn (2 ft/s)" or "0.6 m/s".</summary>
    public string CurrentText(double metresPerSecond) => Us
        ? $"{Number(metresPerSecond / PhysicalConstants.Knot, 1)} kn ({SpeedText(metresPerSecond)})"
        : SpeedText(metresPerSecond);

    /// <summary>A current (m/s) as text, "1.2 kn" or "0.6 m/s".</summary>
    public string FlowText(double metresPerSecond) => Us ? With(Number(metresPerSecond / PhysicalConstants.Knot, 1), "kn") : SpeedText(metresPerSecond);

    /// <summary>A wind speed (m/s) as text, "12 mph" or "5 m/s".</summary>
    public string WindText(double metresPerSecond) => Us
        ? With(Number(metresPerSecond * 3600 / MileInMetres, 0), "mph")
        : With(Number(metresPerSecond, 1), "m/s");

    /// <summary>A size of a lure or a rod (m) as text, "3½ in" or "89 mm".</summary>
    public string SizeText(double metres) => With(SizeNumber(metres), Us ? "in" : "mm");

    /// <summary>A size of a lure or a rod (m) as text without its unit.</summary>
    public string SizeNumber(double metres) => Us ? WithHalf(Number(metres / InchInMetres, 1)) : Number(metres * 1000, 0);

    /// <summary>A distance that a lure or a rod tip makes (m) as text, "8 in" or "20 cm"; above two feet or a metre as a hand measures it.</summary>
    public string TravelText(double metres) => Us
        ? Math.Abs(metres) < 1.95 * FootInMetres ? With(Number(metres / InchInMetres, 0), "in") : With(HandNumber(metres), "ft")
        : Math.Abs(metres) < 0.95 ? With(Number(metres * 100, 0), "cm") : With(HandNumber(metres), "m");

    /// <summary>A lure as a person names it: its own name, or size and kind in these units, "3½ in shrimp".</summary>
    /// <param name="body">The lure.</param>
    public string LureText(LureBody body)
    {
        ArgumentNullException.ThrowIfNull(body);
        string word = LureKinds.Of(body.Profile).Word;
        return IsSizeAndKind(body.Label, word) ? $"{SizeText(body.Length)} {TradeNames.GetValueOrDefault(word, word)}" : body.Label;
    }


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

    /// <summary>Twists of line per metre over a length that an angler can picture, "6 twists in every 10 ft of line".</summary>
    public string TwistText(double perMetre) => Us
        ? Twists(perMetre * 10 * FootInMetres, 0) + " in every 10 ft of line"
        : Twists(perMetre, 1) + " in every metre of line";

    /// <summary>A weight as tackle boxes print it: in US units a fraction of an ounce, the simplest down to 1/32 within 2 % or else the nearest 1/64; in metric units grams.</summary>
    /// <param name="kilograms">Mass (kg).</param>
    public string Weight(double kilograms)
    {
        if (!Us || !double.IsFinite(kilograms))
            return Mass.Text(kilograms);
        double ounces = kilograms / PhysicalConstants.Ounce;
        if (ounces <= 0)
            return "0 oz";
        int under = 1;
        while (under < FinestOunce && Math.Abs((Math.Round(ounces * under) / under) - ounces) > OunceTolerance * ounces)
            under *= 2;
        long over = Math.Max(1, (long)Math.Round(ounces * under));
        while (under > 1 && over % 2 == 0)
            (over, under) = (over / 2, under / 2);
        (long whole, long rest) = (over / under, over % under);
        return rest == 0 ? FormattableString.Invariant($"{whole} oz")
            : whole == 0 ? FormattableString.Invariant($"{rest}/{under} oz")
            : FormattableString.Invariant($"{whole} {rest}/{under} oz");
    }

    /// <summary>A jig head as its owner wrote it, or its weight in the chosen units if the owner wrote it in others.</summary>
    /// <param name="head">Jig head.</param>
    public string HeadText(JigHead head)
    {
        ArgumentNullException.ThrowIfNull(head);
        if (head.Mass == 0.0)
            return HardLure(head.Label);
        int length = LabelWeightLength(head.Label);
        string unit = head.Label[..length].TrimEnd().Split(' ', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9')[^1];
        return (unit is "oz" or "lb") == Us ? head.Label : Weight(head.Mass) + head.Label[length..];
    }

    /// <summary>A small length on a ruler (m), without its sign: in US units to the nearest 1/32 in, "5/32 in"; else "4 mm".</summary>
    /// <param name="metres">Length (m).</param>
    public string RulerText(double metres)
    {
        double size = Math.Abs(metres);
        if (!Us) return With(Number(size * 1000, 1), "mm");
        int parts = Math.Max(size > 0 ? 1 : 0, (int)Math.Round(RulerParts * size / InchInMetres)), whole = parts / RulerParts, over = parts % RulerParts, below = RulerParts;
        for (; over > 0 && over % 2 == 0; over /= 2) below /= 2;
        string fraction = over == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{over}/{below}");
        return With(whole == 0 && over > 0 ? fraction : string.Create(CultureInfo.InvariantCulture, $"{whole} {fraction}").Trim(), "in");
    }

    /// <summary>An angle (radians) in whole degrees as text, "12°".</summary>
    public static string DegreesText(double radians) => Number(radians * 180 / Math.PI, 0) is var number && number == None ? None : number + "°";

    /// <summary>An angle (radians) to a tenth of a degree as text, "12.5°"; without its sign.</summary>
    public static string AngleText(double radians) => $"{Number(Math.Abs(radians) * 180 / Math.PI, 1)}°";

    /// <summary>A time (s) as text, "12 s"; a dash for none.</summary>
    public static string SecondsText(double? seconds) => seconds is { } value ? With(SecondsNumber(value), "s") : None;

    /// <summary>A time (s) as text without its unit, as a person counts it: halves below 10 s, whole seconds above.</summary>
    public static string SecondsNumber(double? seconds) => seconds is { } value && double.IsFinite(value)
        ? value < 9.75 ? (Math.Round(value * 2) / 2).ToString("0.#", CultureInfo.InvariantCulture) : value.ToString("0", CultureInfo.InvariantCulture)
        : None;

    /// <summary>A share (0 to 1) as text, "62%". Values that are not quite none or all are not rounded to it.</summary>
    public static string PercentText(double share) => PercentNumber(share) is var number && number == None ? None : number + "%";

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

    /// <summary>A time (s) as hands keep it: "half a second", "3 seconds", "1½ minutes".</summary>
    public static string HoldText(double seconds)
    {
        if (!double.IsFinite(seconds))
            return None;
        if (seconds >= 100)
            return Counted(seconds / 60, "minute");
        return seconds < 0.75 ? "half a second" : Counted(seconds >= 9.75 ? Math.Round(seconds) : seconds, "second");
    }

    /// <summary>A number of things to the half, one of them in the singular: "1 turn", "2½ turns".</summary>
    /// <param name="number">How many.</param>
    /// <param name="thing">Name of one.</param>
    public static string Counted(double number, string thing)
    {
        double halves = Math.Round(number * 2, MidpointRounding.AwayFromZero) / 2;
        return $"{WithHalf(Number(halves, 1))} {thing}{(halves == 1 ? "" : "s")}";
    }

    // A lure without a head stands under its own name, size and kind as its owner wrote them.
    private string HardLure(string label)
    {
        foreach (string word in LureKinds.All.Select(kind => kind.Word).Where(word => IsSizeAndKind(label, word)))
        {
            string[] size = label[..^word.Length].Trim().Split(' ', 2);
            if (size.Length == 2 && double.TryParse(size[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && Rulers.TryGetValue(size[1], out double unit))
                return $"{SizeText(value * unit)} {TradeNames.GetValueOrDefault(word, word)}";
        }

        return label;
    }

    private static bool IsSizeAndKind(string label, string word) => label.EndsWith(" " + word, StringComparison.Ordinal) && char.IsDigit(label[0]);

    // Common fractions as a ruler has them.
    private static string WithHalf(string number) => number == "0.5" ? "½" : number.EndsWith(".5", StringComparison.Ordinal) ? number[..^2] + "½" : number;

    private static string Twists(double number, int decimals) => Number(number, decimals) is "1" ? "1 twist" : Number(number, decimals) + " twists";

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
