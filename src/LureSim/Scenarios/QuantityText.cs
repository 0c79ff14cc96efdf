using System.Globalization;

namespace LureSim.Scenarios;

/// <summary>Quantities in messages about a scenario: in both systems of units, rounded so that every number shown is allowed.</summary>
internal static class QuantityText
{
    /// <summary>A range in both systems, rounded inwards so that every number shown is allowed.</summary>
    internal static string Range(QuantityKind kind, double minimum, double maximum)
    {
        double scale = Math.Max(Math.Abs(minimum), Math.Abs(maximum));
        string first = $"{Bound(kind, minimum, scale, false, up: true)} to {Bound(kind, maximum, scale, false, up: false)}";
        return kind is QuantityKind.Length or QuantityKind.Mass or QuantityKind.Speed or QuantityKind.LineStrength or QuantityKind.Temperature
            ? $"{first} ({Bound(kind, minimum, scale, true, up: true)} to {Bound(kind, maximum, scale, true, up: false)})"
            : first;
    }

    /// <summary>A value as a scenario would write it, in metric units and three digits.</summary>
    internal static string Plain(QuantityKind kind, double value)
    {
        (string symbol, Func<double, double> fromSi) = UnitFor(kind, value, value, us: false);
        return Invariant($"{Significant(fromSi(value), null)} {symbol}");
    }

    /// <summary>A value in both systems, for messages.</summary>
    internal static string Both(QuantityKind kind, double value)
    {
        (string symbol, Func<double, double> fromSi) = UnitFor(kind, value, value, us: true);
        return Invariant($"{Plain(kind, value)} ({Significant(fromSi(value), null)} {symbol})");
    }

    /// <summary>A round value inside a range, as an example.</summary>
    internal static double RoundInside(double minimum, double maximum)
    {
        double middle = minimum > 0.0 ? Math.Sqrt(minimum * maximum) : 0.5 * (minimum + maximum);
        if (middle == 0.0)
            return 0.0;
        double unit = Math.Pow(10.0, Math.Floor(Math.Log10(Math.Abs(middle))));
        double rounded = Math.Round(middle / unit) * unit;
        return rounded >= minimum && rounded <= maximum ? rounded : middle;
    }

    private static string Bound(QuantityKind kind, double value, double scale, bool us, bool up)
    {
        (string symbol, Func<double, double> fromSi) = UnitFor(kind, value, scale, us);
        return Invariant($"{Significant(fromSi(value), up)} {symbol}");
    }

    // Three significant digits without an exponent; rounded up, down, or (null) to nearest.
    private static string Significant(double value, bool? up)
    {
        if (value == 0.0)
            return "0";
        int exponent = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        double step = Math.Pow(10.0, exponent - 2);
        double steps = value / step;

        // The conversion may leave a whole number of steps a rounding error away.
        double nearest = Math.Round(steps);
        double whole = Math.Abs(steps - nearest) < 1e-6 || up is null ? nearest : up.Value ? Math.Ceiling(steps) : Math.Floor(steps);
        int decimals = Math.Max(0, 2 - exponent);
        return (whole * step).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
    }

    private static (string Symbol, Func<double, double> FromSi) UnitFor(QuantityKind kind, double value, double scale, bool us)
    {
        double size = value == 0.0 ? scale : Math.Abs(value);
        return (kind, us) switch
        {
            (QuantityKind.Length, false) => size < 0.2 ? ("mm", value => value * 1000.0) : ("m", value => value),
            (QuantityKind.Length, true) => size < 0.2 ? ("in", value => UnitsNet.Length.FromMeters(value).Inches) : ("ft", value => UnitsNet.Length.FromMeters(value).Feet),
            (QuantityKind.Mass, false) => ("g", value => value * 1000.0),
            (QuantityKind.Mass, true) => ("oz", value => UnitsNet.Mass.FromKilograms(value).Ounces),
            (QuantityKind.Speed, false) => ("m/s", value => value),
            (QuantityKind.Speed, true) => size > 3.5 ? ("kn", value => UnitsNet.Speed.FromMetersPerSecond(value).Knots) : ("ft/s", value => UnitsNet.Speed.FromMetersPerSecond(value).FeetPerSecond),
            (QuantityKind.LineStrength, false) => ("N", value => value),
            (QuantityKind.LineStrength, true) => ("lb", value => UnitsNet.Force.FromNewtons(value).PoundsForce),
            (QuantityKind.Temperature, false) => ("degC", value => value),
            (QuantityKind.Temperature, true) => ("degF", value => UnitsNet.Temperature.FromDegreesCelsius(value).DegreesFahrenheit),
            (QuantityKind.Angle, _) => ("deg", value => UnitsNet.Angle.FromRadians(value).Degrees),
            (QuantityKind.Percentage, _) => ("%", value => 100.0 * value),
            (QuantityKind.Salinity, _) => ("ppt", value => value),
            (QuantityKind.Duration, _) => ("s", value => value),
            (QuantityKind.Density, _) => ("kg/m3", value => value),
            (QuantityKind.TurnRate, _) => ("turns/s", value => value),
            (QuantityKind.Concentration, _) => size < 1e-3 ? ("mg/m3", value => value * 1e6) : ("g/m3", value => value * 1e3),
            (QuantityKind.AbsorptionCoefficient, _) => ("1/m", value => value),
            (QuantityKind.UtcOffset, _) => ("h", value => value / 3600.0),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of quantity."),
        };
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
