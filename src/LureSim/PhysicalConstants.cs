namespace LureSim;

/// <summary>Constants of physics that every part of the model shares.</summary>
public static class PhysicalConstants
{
    /// <summary>Standard acceleration of free fall g_n (m/s2), exact by definition (3rd CGPM 1901; BIPM SI brochure 2019).</summary>
    public const double StandardGravity = 9.80665;

    /// <summary>An avoirdupois ounce (kg), exact: the weights of the trade are fractions of it.</summary>
    internal const double Ounce = 0.028349523125;

    /// <summary>A knot (m/s), exact.</summary>
    internal const double Knot = 1852.0 / 3600.0;
}
