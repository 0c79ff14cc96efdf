namespace LureSim.Report;

/// <summary>Units of everything that people read.</summary>
public enum UnitSystem
{
    /// <summary>Feet, inches, feet a second, pounds, degrees Fahrenheit.</summary>
    Us,

    /// <summary>Metres, millimetres, metres a second, kilograms, degrees Celsius.</summary>
    Metric,
}
