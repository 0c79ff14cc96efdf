namespace LureSim.Tackle;

/// <summary>One material of a line.</summary>
/// <param name="Diameter">Diameter (m), 2e-5 to 0.5 (thick cables occur in reference cases).</param>
/// <param name="MassPerLength">Mass per unstretched length (kg/m).</param>
/// <param name="AxialStiffness">EA (N): force for unit strain.</param>
/// <param name="Area">Displaced volume per length (m2), at most the full circle: a braid displaces less.</param>
public sealed record LineMaterial(double Diameter, double MassPerLength, double AxialStiffness, double Area)
{
    /// <summary>A solid round line.</summary>
    /// <param name="diameter">Diameter (m).</param>
    /// <param name="massPerLength">Mass per unstretched length (kg/m).</param>
    /// <param name="axialStiffness">EA (N).</param>
    public static LineMaterial Round(double diameter, double massPerLength, double axialStiffness) =>
        new(diameter, massPerLength, axialStiffness, Math.PI * diameter * diameter / 4);
}

/// <summary>A line as the engine sees it: leader at the lure, then main line to the rod.</summary>
/// <param name="Main">Main line.</param>
/// <param name="Leader">Leader; the same as <paramref name="Main"/> where there is none.</param>
/// <param name="LeaderLength">Unstretched leader length (m), 0 or more.</param>
public sealed record LineProperties(LineMaterial Main, LineMaterial Leader, double LeaderLength)
{
    /// <summary>A line of one material.</summary>
    public static LineProperties Uniform(LineMaterial material) => new(material, material, 0);
}
