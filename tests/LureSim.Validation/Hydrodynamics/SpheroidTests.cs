using LureSim.Hydrodynamics;

namespace LureSim.Validation.Hydrodynamics;

/// <summary>Added mass of prolate spheroids.</summary>
public class SpheroidTests
{
    private const string Area = "Added mass";

    [Fact]
    public void Coefficients_are_Lamb_s()
    {
        HydroTable table = HydroTable.Read("spheroid_added_mass");
        ValidationLog.WorstAbsolute(
            CheckClass.SameEquations, Area, "Spheroid, k1 along the axis, aspect 1 to 20", "Lamb 1932, art. 114-115, computed elsewhere to 7 figures", table.Pairs("aspect_ratio", "k1").Select(p => (p.Y, Axial(p.X))), 6e-8);
        ValidationLog.WorstAbsolute(
            CheckClass.SameEquations, Area, "Spheroid, k2 across, aspect 1 to 20", "Lamb 1932, art. 114-115, computed elsewhere to 7 figures", table.Pairs("aspect_ratio", "k2").Select(p => (p.Y, Transverse(p.X))), 6e-8);

        // The published table has three figures; its entries lie up to 0.0022 from the formula.
        ValidationLog.WorstAbsolute(
            CheckClass.FromMemory, Area, "Spheroid, k1, published table", "Lamb / Munk 1924 (NACA TR 184), from memory", table.Pairs("aspect_ratio", "k1_published").Select(p => (p.Y, Axial(p.X))), 0.0023);
        ValidationLog.WorstAbsolute(
            CheckClass.FromMemory, Area, "Spheroid, k2, published table", "Lamb / Munk 1924 (NACA TR 184), from memory", table.Pairs("aspect_ratio", "k2_published").Select(p => (p.Y, Transverse(p.X))), 0.0023);
    }

    [Fact]
    public void Limits_are_a_sphere_and_a_needle()
    {
        ValidationLog.WorstAbsolute(CheckClass.SameEquations, Area, "Sphere: k1 = k2 = 1/2", "Lamb 1932", [(0.5, Axial(1)), (0.5, Transverse(1)), (0.5, Axial(1 + 1e-6)), (0.5, Transverse(1 + 1e-6))], 1e-6);
        ValidationLog.WorstAbsolute(CheckClass.SameEquations, Area, "Needle: k1 = 0, k2 = 1", "Lamb 1932", [(0, Axial(1e5)), (1, Transverse(1e5))], 1e-8);

        // Series and closed form meet.
        double join = 1 / Math.Sqrt(1 - 1e-3);
        Assert.Equal(Axial(join * (1 - 1e-9)), Axial(join * (1 + 1e-9)), 1e-8);
        Assert.Equal(Transverse(join * (1 - 1e-9)), Transverse(join * (1 + 1e-9)), 1e-8);
    }

    private static double Axial(double aspect)
    {
        SpheroidAddedMass.Coefficients(aspect, out double axial, out _);
        return axial;
    }

    private static double Transverse(double aspect)
    {
        SpheroidAddedMass.Coefficients(aspect, out _, out double transverse);
        return transverse;
    }
}
