namespace LureSim.Hydrodynamics;

/// <summary>Drag of wire and of other slender round parts across the flow.</summary>
public static class WireDrag
{
    // Speed (m/s) and viscosity (m2/s) at which the coefficient is taken; between 0.2 and 1 m/s that of wire of 1 mm changes by a tenth.
    private const double Speed = 0.5;
    private const double Viscosity = 1.1e-6;

    /// <summary>Drag area of a piece of wire across the flow (m2): the measured cylinder with its finite length, <see cref="CylinderAcross"/>, at 0.5 m/s.</summary>
    /// <param name="diameter">d (m), 0 or more.</param>
    /// <param name="slenderness">n, length of the wire over its diameter, above 0.</param>
    public static double Area(double diameter, double slenderness) =>
        diameter == 0 ? 0 : new CylinderAcross("wire", slenderness * diameter, diameter).AreaTimesSpeed(Speed, Viscosity, out _) / Speed;
}
