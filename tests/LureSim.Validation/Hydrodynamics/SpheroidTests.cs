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
            CheckClass.Measured, Area, "Spheroid, k1, published table", "Lamb 1918, ARC R&M 623, table read in a transcription", table.Pairs("aspect_ratio", "k1_published").Select(p => (p.Y, Axial(p.X))), 0.0023);
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

    // Spheroids 2:1 and 4:1 have the sphericities 0.928739 and 0.781907 (Beyer, CRC Standard Mathematical Tables: surface of a prolate spheroid).
    [Fact]
    public void Geometry_is_that_of_the_closed_forms()
    {
        foreach ((double aspect, double sphericity) in new[] { (2, 0.928739), (4, 0.781907) })
        {
            double volume = Math.PI / 6 / aspect / aspect;
            var shape = EllipsoidGeometry.Prolate(volume, 1);
            double ball = Math.Cbrt(6 * volume / Math.PI);
            ValidationLog.WorstRelative(
                CheckClass.SameEquations, Area, FormattableString.Invariant($"Sphericity of a prolate spheroid {aspect}:1"), "closed form, worked elsewhere", [(sphericity, Math.PI * ball * ball / RoundedBody.WettedArea(1, 1.0 / aspect))], 1e-5);
            Assert.Equal(Math.PI / 4 / aspect / aspect, shape.FrontalArea, 1e-12);
            Assert.Equal(Math.PI / 4 / aspect, shape.BroadsideArea, 1e-12);
            Assert.Equal(Transverse(aspect), shape.AddedMass(Math.PI / 2), 1e-12);
        }

        var flat = EllipsoidGeometry.Flat(Math.PI / 6 * 0.5, 1, 1, 0.5);
        double e = Math.Sqrt(0.75);

        // Lamb 1932, art. 114: an oblate spheroid moving along its short axis, k = alpha/(2 - alpha) with alpha = 2/e^2 (1 - sqrt(1 - e^2)/e asin e).
        double alpha = 2 / (e * e) * (1 - (Math.Sqrt(1 - (e * e)) / e * Math.Asin(e)));
        ValidationLog.WorstAbsolute(CheckClass.SameEquations, Area, "Oblate spheroid 1:1:1/2 along its short axis", "Lamb 1932, art. 114", [(alpha / (2 - alpha), flat.TransverseAddedMass)], 1e-9);
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
