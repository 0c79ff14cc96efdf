using System.Globalization;

namespace LureSim.Scenarios;

/// <summary>Values and bounds in the messages of the reader, in the units in which scenarios write them.</summary>
internal static class QuantityText
{
    // Lengths below these (m) are told in millimetres and in inches, speeds above this (m/s) in knots.
    private const double SmallLength = 0.2;
    private const double HandLength = 0.35;
    private const double FlowSpeed = 3.5;

    // Concentrations below this (kg/m3) are told in mg/m3.
    private const double SmallConcentration = 1e-3;

    // The other system is told in as few digits as come this near: "about 8 in to 200 ft".
    private const double About = 0.03;

    /// <summary>A range: in SI, or in US units if they go first, rounded inwards, so that every number shown is allowed; then in the other units as a hand would round them.</summary>
    public static string Range(QuantityKind kind, double minimum, double maximum, bool us = false)
    {
        double scale = Math.Max(Math.Abs(minimum), Math.Abs(maximum));
        string first = $"{Bound(kind, minimum, scale, up: true, us)} to {Bound(kind, maximum, scale, up: false, us)}";
        return HasTwoSystems(kind) ? $"{first} (about {Rounded(kind, minimum, scale, !us)} to {Rounded(kind, maximum, scale, !us)})" : first;
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

    private static string Bound(QuantityKind kind, double value, double scale, bool up, bool us)
    {
        UnitOfMeasure unit = UnitFor(kind, value, scale, us);
        return $"{Significant(unit.FromSi(value), up)} {unit.Symbol}";
    }

    private static string Rounded(QuantityKind kind, double value, double scale, bool us)
    {
        UnitOfMeasure unit = UnitFor(kind, value, scale, us);
        double exact = unit.FromSi(value);
        if (exact == 0.0)
            return $"0 {unit.Symbol}";
        double size = Math.Pow(10.0, Math.Floor(Math.Log10(Math.Abs(exact))));
        double rounded = ((double[])[1.0, 0.1, 0.01]).Select(step => Math.Round(exact / (size * step)) * size * step).First(near => Math.Abs(near - exact) <= About * Math.Abs(exact));
        return $"{Significant(rounded, null)} {unit.Symbol}";
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
            (QuantityKind.Length, true) => size < HandLength ? "in" : "ft",
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
