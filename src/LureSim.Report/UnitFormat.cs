using System.Globalization;
using LureSim.Model;
using LureSim.Units;

namespace LureSim.Report;

/// <summary>
/// Turns SI values into the texts of figures and sheets in one unit system: as few digits as a reader needs, a
/// dash for a value that is not finite. <see cref="MeasureFormatter"/> has the fixed digits of tables and data.
/// </summary>
/// <param name="system">The unit system.</param>
public sealed class UnitFormat(UnitSystem system)
{
    private static readonly double FootInMetres = UnitsNet.Length.FromFeet(1).Meters;
    private static readonly double InchInMetres = UnitsNet.Length.FromInches(1).Meters;
    private static readonly double KnotInMetresPerSecond = UnitsNet.Speed.FromKnots(1).MetersPerSecond;
    private static readonly double MileInMetres = UnitsNet.Length.FromMiles(1).Meters;
    private static readonly double PoundForceInNewtons = UnitsNet.Force.FromPoundsForce(1).Newtons;
    private static readonly double StandardGravity = UnitsNet.Force.FromKilogramsForce(1).Newtons;

    /// <summary>Text for a value that does not exist.</summary>
    public const string None = "–";

    /// <summary>The unit system.</summary>
    public UnitSystem System { get; } = system;

    private readonly MeasureFormatter measures = new(system);

    private bool Us => System == UnitSystem.Us;

    /// <summary>Symbol of the unit of <see cref="Length"/>: ft or m.</summary>
    public string LengthUnit => Us ? "ft" : "m";

    /// <summary>Symbol of the unit of <see cref="Speed"/>: ft/s or m/s.</summary>
    public string SpeedUnit => Us ? "ft/s" : "m/s";

    /// <summary>A length or depth (m) as a number of ft or m.</summary>
    public double Length(double metres) => Us ? metres / FootInMetres : metres;

    /// <summary>A speed (m/s) as a number of ft/s or m/s.</summary>
    public double Speed(double metresPerSecond) => Us ? metresPerSecond / FootInMetres : metresPerSecond;

    /// <summary>A length or depth (m) as text, "6.5 ft" or "2.0 m".</summary>
    public string LengthText(double metres) => With(LengthNumber(metres), LengthUnit);

    /// <summary>A length or depth (m) as text without its unit.</summary>
    public string LengthNumber(double metres)
    {
        double value = Length(metres);
        double size = Math.Abs(value);
        int decimals = Us ? (size >= 20 ? 0 : 1) : (size >= 20 ? 0 : size >= 2 ? 1 : 2);
        return Number(value, decimals);
    }

    /// <summary>A band of depth (m) as text, "4 to 6 ft".</summary>
    public string BandText(double from, double to) => $"{LengthNumber(from)} to {LengthText(to)}";

    /// <summary>A speed (m/s) as text, "1.5 ft/s" or "0.46 m/s".</summary>
    public string SpeedText(double metresPerSecond) => With(SpeedNumber(metresPerSecond), SpeedUnit);

    /// <summary>A speed (m/s) as text without its unit.</summary>
    public string SpeedNumber(double metresPerSecond) => Number(Speed(metresPerSecond), Us ? 1 : 2);

    /// <summary>A current (m/s) as text, "1.2 kn (2 ft/s)" or "0.6 m/s".</summary>
    public string CurrentText(double metresPerSecond) => Us
        ? $"{Number(metresPerSecond / KnotInMetresPerSecond, 1)} kn ({SpeedText(metresPerSecond)})"
        : SpeedText(metresPerSecond);

    /// <summary>A wind speed (m/s) as text, "12 mph" or "5 m/s".</summary>
    public string WindText(double metresPerSecond) => Us
        ? With(Number(metresPerSecond * 3600 / MileInMetres, 0), "mph")
        : With(Number(metresPerSecond, 1), "m/s");

    /// <summary>A size of a lure or a rod (m) as text, "3.5 in" or "89 mm".</summary>
    public string SizeText(double metres) => Us
        ? With(Number(metres / InchInMetres, 1), "in")
        : With(Number(metres * 1000, 0), "mm");

    /// <summary>A diameter of a line (m) as text, "0.011 in" or "0.28 mm".</summary>
    public string DiameterText(double metres) => Us
        ? With(Number(metres / InchInMetres, 4), "in")
        : With(Number(metres * 1000, 3), "mm");

    /// <summary>A nominal breaking force (N) as anglers name it: pounds, or kilograms of load.</summary>
    public string StrengthText(double newtons) => Us
        ? With(Number(newtons / PoundForceInNewtons, 0), "lb")
        : With(Number(newtons / StandardGravity, 1), "kg");

    /// <summary>A temperature (degrees Celsius) as text.</summary>
    public string TemperatureText(double celsius) => Us
        ? With(Number((celsius * 9 / 5) + 32, 0), "°F")
        : With(Number(celsius, 0), "°C");

    /// <summary>A jig head as its owner wrote it, or its weight in the chosen units if the owner wrote it in others.</summary>
    public string HeadText(JigHead head) => measures.HeadLabel(head);

    /// <summary>A time (s) as text, "12 s"; a dash for none.</summary>
    public static string SecondsText(double? seconds) => seconds is { } value ? With(SecondsNumber(value), "s") : None;

    /// <summary>A time (s) as text without its unit: halves below 10 s, whole seconds above.</summary>
    public static string SecondsNumber(double? seconds) => seconds is { } value && double.IsFinite(value) ? MeasureFormatter.Counted(value) : None;

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

    private static string With(string number, string unit) => number == None ? None : $"{number} {unit}";
}
