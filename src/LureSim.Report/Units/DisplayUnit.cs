namespace LureSim.Report.Units;

/// <summary>A unit to show a column of numbers in: every number of the column has the same digits.</summary>
/// <param name="Symbol">Symbol for the heading.</param>
/// <param name="FromSi">Conversion from SI (degrees Celsius for temperature).</param>
/// <param name="Decimals">Digits after the point that make sense for the quantity.</param>
public sealed record DisplayUnit(string Symbol, Func<double, double> FromSi, int Decimals)
{
    /// <summary>Text of a column for a number that does not exist.</summary>
    public const string None = "-";

    /// <summary>The number alone, invariant culture, with the unit's digits; a dash where there is none.</summary>
    /// <param name="value">Value in SI; may be NaN or infinite.</param>
    public string Number(double value)
    {
        if (!double.IsFinite(value))
            return None;
        string text = UnitFormat.Fixed(FromSi(value), Decimals);

        // A negative value that rounds to nothing would read as minus zero.
        return text[0] == '-' && text.AsSpan(1).IndexOfAnyExcept('0', '.') < 0 ? text[1..] : text;
    }

    /// <summary>The number with its unit; a dash where there is none.</summary>
    /// <param name="value">Value in SI; may be NaN or infinite.</param>
    public string Text(double value) => double.IsFinite(value) ? $"{Number(value)}{(Symbol is "%" or "°" ? "" : " ")}{Symbol}" : None;
}
