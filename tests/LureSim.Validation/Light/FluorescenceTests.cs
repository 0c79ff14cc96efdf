using LureSim.Light;
using LureSim.Model;

namespace LureSim.Validation.Light;

/// <summary>Fluorescent colours against the colour limits of a high-visibility standard and against energy.</summary>
public class FluorescenceTests
{
    // EN ISO 20471 table 2, background materials: corners of the allowed chromaticities under D65 and the least luminance
    // factor (figures read in a summary of the standard). Real fluorescent yellow dyes lie inside; so must the chartreuse of the model.
    private static readonly (double X, double Y)[] FluorescentYellow = [(0.387, 0.610), (0.356, 0.494), (0.398, 0.452), (0.460, 0.540)];

    [Fact]
    public void Chartreuse_has_the_colour_of_a_fluorescent_yellow_and_is_bright_enough()
    {
        var exitance = LureColours.Chartreuse.Exitance(Colorimetry.D65);
        var colour = ((1.0 / Colorimetry.D65.Dot(Colorimetry.YBar)) * Colorimetry.Integrate(exitance)).ToXyY();
        ValidationLog.Between(CheckClass.Measured, "Light: colour", "luminance factor of chartreuse", "EN ISO 20471, table 2, read in a summary of the standard: 0.70 or more for fluorescent yellow", 0.70, 1.15, colour.Luminance);
        Assert.True(Inside(FluorescentYellow, colour.ChromaticityX, colour.ChromaticityY), $"x {colour.ChromaticityX:0.000} y {colour.ChromaticityY:0.000}");
    }

    [Fact]
    public void Energy_out_is_energy_in_times_yield_times_the_ratio_of_wavelengths()
    {
        // One photon in gives Q photons out: with all light at 430 nm and emission far to the red nothing is cut off, so
        // the energy given back is Q x times the mean of 430/lambda over the emission (Stokes).
        var emission = Spectrum.FromFunction(WavelengthGrid.Visible, nm => Math.Exp(-0.5 * Math.Pow((nm - 600.0) / 15.0, 2)));
        var dye = new Fluorophore(Spectrum.Constant(WavelengthGrid.Visible, 0.8), emission, 0.7);
        var body = new LureColour("dye", Spectrum.Constant(WavelengthGrid.Visible, 0.0), ColourBasis.StandIn, dye);
        double[] light = new double[81];
        light[10] = 2.0; // 430 nm
        var exitance = body.Exitance(new Spectrum(WavelengthGrid.Visible, light));
        double weight = Enumerable.Range(0, 81).Sum(i => emission[i]);
        double ratio = Enumerable.Range(0, 81).Sum(i => emission[i] / weight * 430.0 / WavelengthGrid.Visible.WavelengthsNm[i]);
        ValidationLog.Absolute(CheckClass.Identity, "Light: colour", "fluorescence: energy out", "photon balance", 2.0 * 0.8 * 0.7 * ratio, exitance.Values.ToArray().Sum(), 1e-6);
    }

    [Fact]
    public void Chartreuse_gains_on_white_with_depth_in_blue_water_and_a_plain_yellow_green_does_not()
    {
        // Why fluorescent colours stay bright: blue light that is left excites green. Beside white in blue water at 20 m.
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.ClearOcean, 30.0), Atmosphere.Illuminate(60.0));
        var chart = ColourChart.Of(field, [LureColours.Chartreuse, LureColours.YellowGreen], [0.0, 20.0]);
        Assert.True(chart[1, 0].RelativeLuminance > 1.1 * chart[0, 0].RelativeLuminance);
        Assert.True(chart[1, 1].RelativeLuminance < 1.02 * chart[0, 1].RelativeLuminance);
    }

    private static bool Inside((double X, double Y)[] corners, double x, double y)
    {
        bool inside = false;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            if ((corners[i].Y > y) != (corners[j].Y > y)
                && x < ((corners[j].X - corners[i].X) * (y - corners[i].Y) / (corners[j].Y - corners[i].Y)) + corners[i].X)
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
