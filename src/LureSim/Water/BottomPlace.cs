namespace LureSim.Water;

/// <summary>The bottom below a place of a sloping spot.</summary>
/// <param name="Depth">Depth of the water (m).</param>
/// <param name="Slope">Its slope along the profile (m/m), positive where it gets deeper away from the rod.</param>
/// <param name="AxisX">Direction of the profile, along the cast.</param>
/// <param name="AxisY">Direction of the profile, to the left.</param>
/// <param name="Friction">Coulomb friction.</param>
/// <param name="Stiffness">Contact stiffness (N/m).</param>
/// <param name="Grass">Height of the grass (m).</param>
/// <param name="GrassSlope">Its slope along the profile (m/m).</param>
internal readonly record struct BottomPlace(double Depth, double Slope, double AxisX, double AxisY, double Friction, double Stiffness, double Grass, double GrassSlope)
{
    /// <summary>Upward part of the unit normal of the bottom.</summary>
    public double NormalZ => 1 / Math.Sqrt(1 + (Slope * Slope));

    /// <summary>Distance of a height (m) from the bottom along its normal, exact on an even slope.</summary>
    public double Clearance(double z) => (z + Depth) * NormalZ;
}
