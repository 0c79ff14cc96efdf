using LureSim.Sight;

namespace LureSim.Validation.Sight;

/// <summary>The pigment template against the published test values of the R package pavo.</summary>
public class VisualPigmentTests
{
    [Theory]
    [InlineData(569.0, 400.0, 0.00145984)]
    [InlineData(569.0, 450.0, 0.00101723)]
    [InlineData(569.0, 500.0, 0.00288215)]
    [InlineData(569.0, 550.0, 0.00616883)]
    [InlineData(569.0, 600.0, 0.00525105)]
    [InlineData(569.0, 650.0, 0.00115219)]
    [InlineData(477.0, 400.0, 0.00241264)]
    [InlineData(477.0, 450.0, 0.00676503)]
    [InlineData(477.0, 500.0, 0.00684125)]
    [InlineData(477.0, 550.0, 0.00098716)]
    [InlineData(477.0, 600.0, 0.00001666)]
    public void Template_matches_pavo(double peak, double nm, double expected)
    {
        // pavo divides each curve by its sum over 300-700 nm at 1 nm.
        double sum = Enumerable.Range(300, 401).Sum(w => VisualPigment.Absorbance(w, peak, Chromophore.A1));
        ValidationLog.Absolute(CheckClass.OtherProgram, "Sight: pigments", $"template, peak {peak} nm, at {nm} nm", "R package pavo", expected, VisualPigment.Absorbance(nm, peak, Chromophore.A1) / sum, 2e-8);
    }

    [Theory]
    [InlineData(Chromophore.A1, 450.0, 89.7)]
    [InlineData(Chromophore.A1, 500.0, 100.3)]
    [InlineData(Chromophore.A1, 550.0, 110.4)]
    [InlineData(Chromophore.A2, 500.0, 118.6)]
    [InlineData(Chromophore.A2, 542.0, 128.4)]
    [InlineData(Chromophore.A2, 605.0, 142.2)]
    public void Half_widths_of_the_alpha_band(Chromophore chromophore, double peak, double expected)
    {
        // Independently evaluated from the published template.
        double Alpha(double nm) => VisualPigment.Absorbance(nm, peak, chromophore, withBetaBand: false);
        double[] inside = Enumerable.Range(3000, 5000).Select(i => i * 0.1).Where(nm => Alpha(nm) >= 0.5 * Alpha(peak)).ToArray();
        ValidationLog.Absolute(CheckClass.SameEquations, "Sight: pigments", $"half width of the alpha band, {chromophore}, {peak} nm", "the published template worked apart", expected, inside[^1] - inside[0], 0.3, "nm");
    }
}
