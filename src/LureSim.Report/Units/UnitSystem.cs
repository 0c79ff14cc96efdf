namespace LureSim.Report.Units;

/// <summary>Units to show results in.</summary>
public enum UnitSystem
{
    /// <summary>Feet, inches, ounces, knots, degrees Fahrenheit.</summary>
    Us,

    /// <summary>Metres, millimetres, grams, metres per second, degrees Celsius.</summary>
    Metric,
}
