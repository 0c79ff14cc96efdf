using LureSim.Data;
using LureSim.Light;

namespace LureSim.Validation.Light;

/// <summary>Colour against CIE 15:2004 and a standard 24-patch target.</summary>
public class ColorimetryTests
{
    [Fact]
    public void Sums_of_the_colour_matching_functions_are_those_of_the_CIE()
    {
        // CIE 15:2004 table 4 (5 nm): 21.3714, 21.3711, 21.3715 over 360-830 nm; 380-780 nm 21.3715, 21.3713, 21.3715.
        ValidationLog.Absolute(CheckClass.Measured, "Light: colour", "sum of x", "CIE 15:2004 table 4", 21.3715, Colorimetry.XBar.Values.ToArray().Sum(), 5e-5);
        ValidationLog.Absolute(CheckClass.Measured, "Light: colour", "sum of y", "CIE 15:2004 table 4", 21.3713, Colorimetry.YBar.Values.ToArray().Sum(), 5e-5);
        ValidationLog.Absolute(CheckClass.Measured, "Light: colour", "sum of z", "CIE 15:2004 table 4", 21.3715, Colorimetry.ZBar.Values.ToArray().Sum(), 5e-5);
    }

    [Fact]
    public void White_point_of_D65_is_that_of_the_CIE()
    {
        // CIE 15:2004: x 0.31272, y 0.32903 (table over 360-830 nm; the cut to 380-780 nm moves x by 1e-6).
        var white = Colorimetry.D65White.ToXyY();
        ValidationLog.Absolute(CheckClass.Measured, "Light: colour", "white of D65, x", "CIE 15:2004", 0.31272, white.ChromaticityX, 5e-6);
        ValidationLog.Absolute(CheckClass.Measured, "Light: colour", "white of D65, y", "CIE 15:2004", 0.32903, white.ChromaticityY, 5e-6);
    }

    [Fact]
    public void Patches_under_D65_agree_with_an_independent_integration()
    {
        var expected = ReferenceTable.Optics("colour_target_24_xyY_D65_computed");
        var reflectances = ReferenceTable.Optics("colour_target_24_reflectance");
        double[] x = expected.Numbers("x"), y = expected.Numbers("y"), lightness = expected.Numbers("L"), a = expected.Numbers("a"), b = expected.Numbers("b");
        List<(double, double)> chromaticities = [], labs = [];
        for (int patch = 0; patch < 24; patch++)
        {
            var reflectance = new Spectrum(WavelengthGrid.Visible, [.. reflectances.Columns.Skip(1).Select(c => reflectances.Numbers(c)[patch])]);
            var xyz = Colorimetry.OfReflectance(reflectance, Colorimetry.D65);
            var xyY = xyz.ToXyY();
            var lab = Colorimetry.ToLab(xyz, Colorimetry.D65White);
            chromaticities.AddRange([(x[patch], xyY.ChromaticityX), (y[patch], xyY.ChromaticityY)]);
            labs.AddRange([(lightness[patch], lab.L), (a[patch], lab.A), (b[patch], lab.B)]);
        }

        ValidationLog.WorstAbsolute(CheckClass.SameEquations, "Light: colour", "24 patches under D65, x and y", "integrated apart", chromaticities, 6e-6);
        ValidationLog.WorstAbsolute(CheckClass.SameEquations, "Light: colour", "24 patches under D65, L*, a*, b*", "integrated apart", labs, 0.002);
    }

    [Fact]
    public void Patches_adapted_to_D50_agree_with_the_published_Lab_of_another_batch()
    {
        // Manufacturer's ICC D50 Lab (before November 2014) against Ohta's reflectances: two batches of paint. The neutral
        // row differs most in lightness; the median shows the method, the worst the batch.
        var published = ReferenceTable.Optics("colour_target_24_lab_D50");
        var reflectances = ReferenceTable.Optics("colour_target_24_reflectance");
        double[] lightness = published.Numbers("L"), a = published.Numbers("a"), b = published.Numbers("b");
        var d50 = new Xyz(0.96422, 1.0, 0.82521); // ICC.1 profile connection space
        double[] differences = Enumerable.Range(0, 24).Select(patch =>
        {
            var reflectance = new Spectrum(WavelengthGrid.Visible, [.. reflectances.Columns.Skip(1).Select(c => reflectances.Numbers(c)[patch])]);
            var adapted = ChromaticAdaptation.Cat16(Colorimetry.OfReflectance(reflectance, Colorimetry.D65), Colorimetry.D65White, d50);
            return Colorimetry.ToLab(adapted, d50).Distance(new Lab(lightness[patch], a[patch], b[patch]));
        }).Order().ToArray();
        ValidationLog.AtMost(CheckClass.Measured, "Light: colour", "24 patches, D50: median colour difference to another batch", "published Lab of the target before November 2014", 2.3, differences[12]);
        ValidationLog.AtMost(CheckClass.Measured, "Light: colour", "24 patches, D50: worst colour difference to another batch", "published Lab of the target before November 2014", 4.2, differences[23]);
    }
}
