namespace LureSim.Hydrodynamics;

/// <summary>Drag of wire and of other slender round parts across the flow.</summary>
public static class WireDrag
{
    /// <summary>Cd of a cylinder across the flow on d x length, subcritical Re of 300 to 1e5 (dimensionless): Wieselsberger 1921.</summary>
    public const double Coefficient = 1.1;

    /// <summary>Drag area of bent wire across the flow (m2): Cd d x n d.</summary>
    /// <param name="diameter">d (m).</param>
    /// <param name="slenderness">n, length of the wire over its diameter.</param>
    public static double Area(double diameter, double slenderness) => Coefficient * diameter * slenderness * diameter;
}
