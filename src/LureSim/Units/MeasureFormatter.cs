using System.Globalization;
using LureSim.Model;

namespace LureSim.Units;

/// <summary>Units to show results in.</summary>
public enum UnitSystem
{
    /// <summary>Feet, inches, ounces, knots, degrees Fahrenheit.</summary>
    Us,

    /// <summary>Metres, millimetres, grams, metres per second, degrees Celsius.</summary>
    Metric,
}

/// <summary>A unit to show a column of numbers in.</summary>
/// <param name="Symbol">Symbol for the heading.</param>
/// <param name="FromSi">Conversion from SI (degrees Celsius for temperature).</param>
/// <param name="Decimals">Digits after the point that make sense for the quantity.</param>
public sealed record DisplayUnit(string Symbol, Func<double, double> FromSi, int Decimals)
{
    /// <summary>The number alone, invariant culture, with the unit's digits; a dash where there is none.</summary>
    /// <param name="value">Value in SI; may be NaN or infinite.</param>
    public string Number(double value)
    {
        if (!double.IsFinite(value))
            return "-";
        string text = FromSi(value).ToString("F" + Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

        // A negative value that rounds to nothing would read as minus zero.
        return text[0] == '-' && text.AsSpan(1).IndexOfAnyExcept('0', '.') < 0 ? text[1..] : text;
    }

    /// <summary>The number with its unit; a dash where there is none.</summary>
    /// <param name="value">Value in SI; may be NaN or infinite.</param>
    public string Text(double value) => double.IsFinite(value) ? $"{Number(value)} {Symbol}" : "-";
}

/// <summary>Formats SI values for people, in US or metric units, always in invariant culture.</summary>
/// <param name="System">Units to use.</param>
public sealed record MeasureFormatter(UnitSystem System)
{
    private const double KilogramsPerOunce = 0.028349523125;

    private bool Us => System == UnitSystem.Us;

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

    /// <summary>Times: s in both.</summary>
    public DisplayUnit Seconds { get; } = new("s", value => value, 1);

    /// <summary>A time (s) as a person counts it: halves below 10 s, whole seconds above, without its unit.</summary>
    /// <param name="seconds">Time (s), finite.</param>
    public static string Counted(double seconds) => seconds < 9.75
        ? (Math.Round(seconds * 2) / 2).ToString("0.#", CultureInfo.InvariantCulture)
        : seconds.ToString("0", CultureInfo.InvariantCulture);

    /// <summary>Shares, 0 to 1, as %.</summary>
    public DisplayUnit Share { get; } = new("%", value => 100.0 * value, 0);

    /// <summary>Angles (given in radians): deg.</summary>
    public DisplayUnit Degrees { get; } = new("deg", value => UnitsNet.Angle.FromRadians(value).Degrees, 0);

    /// <summary>
    /// A lure weight as tackle boxes print it: in US units the nearest fraction of an ounce (down to 1/32) if it
    /// hits within 1 %, otherwise two decimals; in metric units grams.
    /// </summary>
    /// <param name="kilograms">Mass (kg).</param>
    public string Weight(double kilograms)
    {
        if (!Us || !double.IsFinite(kilograms))
            return Mass.Text(kilograms);
        double ounces = kilograms / KilogramsPerOunce;
        for (int under = 1; under <= 32; under *= 2)
        {
            double over = Math.Round(ounces * under);
            if (over > 0 && over <= 1000 && Math.Abs((over / under) - ounces) <= 0.01 * ounces)
            {
                int whole = (int)over / under;
                int rest = (int)over % under;
                return (whole, rest) switch
                {
                    (_, 0) => Invariant($"{whole} oz"),
                    (0, _) => Invariant($"{rest}/{under} oz"),
                    _ => Invariant($"{whole} {rest}/{under} oz"),
                };
            }
        }

        return Mass.Text(kilograms);
    }

    /// <summary>The label of a jig head in these units: the user's own text, or the converted weight when the units differ from it.</summary>
    /// <param name="head">Jig head.</param>
    public string HeadLabel(JigHead head)
    {
        ArgumentNullException.ThrowIfNull(head);
        if (head.Mass == 0.0)
            return head.Label;
        int length = LabelWeightLength(head.Label);
        string unit = head.Label[..length].TrimEnd().Split(' ', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9')[^1];
        return (unit is "oz" or "lb") == Us ? head.Label : Weight(head.Mass) + head.Label[length..];
    }

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

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
