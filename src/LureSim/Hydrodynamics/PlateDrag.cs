namespace LureSim.Hydrodynamics;

/// <summary>Drag of thin plates.</summary>
public static class PlateDrag
{
    /// <summary>Cd of a disc or a square plate broadside to the flow, on its area (dimensionless): Hoerner 1965, ch. 3 (hoerner1965fluid).</summary>
    public const double Broadside = 1.17;

    /// <summary>Number a of the mean friction coefficient of one side of a laminar plate, Cf = a/sqrt(Re), Re by its length: Blasius 1908.</summary>
    public const double BlasiusFriction = 1.328;

    /// <summary>Drag area of a plate at an incidence by the flow across it (m2): 1.17 A sin^3 a, of which one sine is the part of the normal force along the flow.</summary>
    /// <param name="area">A, area of one face (m2).</param>
    /// <param name="sine">Sine of the angle a between plate and flow, 0 to 1.</param>
    public static double AreaAtIncidence(double area, double sine) => Broadside * area * sine * sine * sine;

    /// <summary>Friction term c1 (m3/2) of <see cref="ElongatedBodyDrag"/> for a laminar plate along the flow: 1.328 S/sqrt(l).</summary>
    /// <param name="wettedArea">S, area of all its wetted sides (m2).</param>
    /// <param name="length">l (m), above 0.</param>
    public static double FrictionTerm(double wettedArea, double length) => BlasiusFriction * wettedArea / Math.Sqrt(length);
}
