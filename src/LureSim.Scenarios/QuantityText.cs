using System.Globalization;

namespace LureSim.Scenarios;

/// <summary>Values and bounds in the messages of the reader, in the units in which scenarios write them.</summary>
internal static class QuantityText
{
    // Lengths below this (m) are told in millimetres and inches, speeds above this (m/s) in knots.
    private const double SmallLength = 0.2;
    private const double FlowSpeed = 3.5;

    // Concentrations below this (kg/m3) are told in mg/m3.
    private const double SmallConcentration = 1e-3;

    /// <summary>A range in both systems, rounded inwards so that every number shown is allowed.</summary>
    public static string Range(QuantityKind kind, double minimum, double maximum)
    {
        double scale = Math.Max(Math.Abs(minimum), Math.Abs(maximum));
        string first = $"{Bound(kind, minimum, scale, false, up: true)} to {Bound(kind, maximum, scale, false, up: false)}";
        return HasTwoSystems(kind)
            ? $"{first} ({Bound(kind, minimum, scale, true, up: true)} to {Bound(kind, maximum, scale, true, up: false)})"
            : first;
    }

    /// <summary>A value as a scenario would write it, in metric units and three digits.</summary>
    public static string Plain(QuantityKind kind, double value) => Text(kind, value, us: false);

    /// <summary>A value in both systems.</summary>
    public static string Both(QuantityKind kind, double value) => $"{Text(kind, value, us: false)} ({Text(kind, value, us: true)})";

    /// <summary>A round value inside a range, as an example.</summary>
    public static double RoundInside(double minimum, double maximum)
    {
        double middle = minimum > 0.0 ? Math.Sqrt(minimum * maximum) : 0.5 * (minimum + maximum);
        if (middle == 0.0)
            return 0.0;
        double unit = Math.Pow(10.0, Math.Floor(Math.Log10(Math.Abs(middle))));
        double rounded = Math.Round(middle / unit) * unit;
        return rounded >= minimum && rounded <= maximum ? rounded : middle;
    }

    private static string Text(QuantityKind kind, double value, bool us)
    {
        UnitOfMeasure unit = UnitFor(kind, value, value, us);
        return $"{Significant(unit.FromSi(value), null)} {unit.Symbol}";
    }

    private static string Bound(QuantityKind kind, double value, double scale, bool us, bool up)
    {
        UnitOfMeasure unit = UnitFor(kind, value, scale, us);
        return $"{Significant(unit.FromSi(value), up)} {unit.Symbol}";
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

    private static bool HasTwoSystems(QuantityKind kind) =>
        kind is QuantityKind.Length or QuantityKind.Mass or QuantityKind.Speed or QuantityKind.LineStrength or QuantityKind.Temperature;

    private static UnitOfMeasure UnitFor(QuantityKind kind, double value, double scale, bool us)
    {
        double size = value == 0.0 ? scale : Math.Abs(value);
        string symbol = (kind, us) switch
        {
            (QuantityKind.Length, false) => size < SmallLength ? "mm" : "m",
            (QuantityKind.Length, true) => size < SmallLength ? "in" : "ft",
            (QuantityKind.Mass, false) => "g",
            (QuantityKind.Mass, true) => "oz",
            (QuantityKind.Speed, false) => "m/s",
            (QuantityKind.Speed, true) => size > FlowSpeed ? "kn" : "ft/s",
            (QuantityKind.LineStrength, false) => "N",
            (QuantityKind.LineStrength, true) => "lb",
            (QuantityKind.Temperature, false) => "degC",
            (QuantityKind.Temperature, true) => "degF",
            (QuantityKind.Angle, _) => "deg",
            (QuantityKind.Percentage, _) => "%",
            (QuantityKind.Salinity, _) => "ppt",
            (QuantityKind.Duration, _) => "s",
            (QuantityKind.Density, _) => "kg/m3",
            (QuantityKind.TurnRate, _) => "turns/s",
            (QuantityKind.Concentration, _) => size < SmallConcentration ? "mg/m3" : "g/m3",
            (QuantityKind.AbsorptionCoefficient, _) => "1/m",
            (QuantityKind.UtcOffset, _) => "h",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of quantity."),
        };
        return UnitTable.Of(kind).Find(symbol) ?? throw new InvalidOperationException($"The table of units has no {symbol}.");
    }
}
