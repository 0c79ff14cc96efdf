using CsCheck;
using LureSim.Light;
using LureSim.Scenarios;

namespace LureSim.Tests.Light;

public class LightPropertyTests
{
    private static readonly Gen<OpticalWater> AnyWater = Gen.Select(Gen.Int[0, 3], Gen.Double[0.02, 100.0])
        .Select((kind, secchi) => OpticalWater.FromSecchi((WaterKind)kind, secchi));

    private static readonly Gen<LightField> AnyField = Gen.Select(AnyWater, Gen.Double[-90.0, 90.0], Gen.Double[0.0, 1.0])
        .Select((water, elevation, cloud) => new LightField(water, Atmosphere.Illuminate(elevation, cloud)));

    [Fact]
    public void Fitted_water_has_the_secchi_depth_asked_for_or_says_why_not() =>
        Gen.Select(Gen.Int[0, 3], Gen.Double[0.02, 100.0]).Sample(
            (kind, secchi) =>
            {
                var water = OpticalWater.FromSecchi((WaterKind)kind, secchi);
                switch (water.Status)
                {
                    case WaterFitStatus.Matched:
                        Assert.Equal(secchi, water.SecchiDepth, 1e-6 * secchi);
                        Assert.Empty(water.Message);
                        break;
                    case WaterFitStatus.ClearestOfKind:
                        Assert.True(water.SecchiDepth < secchi);
                        Assert.NotEmpty(water.Message);
                        break;
                    default:
                        Assert.True(water.SecchiDepth > secchi);
                        Assert.NotEmpty(water.Message);
                        break;
                }
            },
            iter: 300);

    [Fact]
    public void Light_is_never_negative_and_darkens_with_depth() =>
        Gen.Select(AnyField, Gen.Double[0.0, 200.0], Gen.Double[0.0, 50.0]).Sample(
            (field, depth, more) =>
            {
                Spectrum upper = field.Downwelling(depth), lower = field.Downwelling(depth + more);
                for (var i = 0; i < upper.Grid.Count; i++)
                {
                    Assert.True(upper[i] >= 0.0);
                    Assert.True(lower[i] <= upper[i]);
                }
            },
            iter: 300);

    [Fact]
    public void Cells_of_a_chart_are_finite_at_any_accepted_input() =>
        Gen.Select(AnyField, Gen.Double[0.0, 1000.0]).Sample(
            (field, depth) =>
            {
                var chart = ColourChart.Of(field, LureColours.All, [depth]);
                for (var c = 0; c < chart.Colours.Count; c++)
                {
                    var cell = chart[0, c];
                    Assert.True(double.IsFinite(cell.Adapted.L) && double.IsFinite(cell.Adapted.A) && double.IsFinite(cell.Adapted.B));
                    Assert.True(double.IsFinite(cell.Unadapted.L) && double.IsFinite(cell.Unadapted.A) && double.IsFinite(cell.Unadapted.B));
                    Assert.True(cell.RelativeLuminance >= 0.0 && double.IsFinite(cell.RelativeLuminance));
                }
            },
            iter: 300);

    [Fact]
    public void Any_screen_colour_is_met_by_a_reflectance_between_0_and_1() =>
        Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte).Sample(
            (r, g, b) =>
            {
                var reflectance = ReflectanceReconstruction.FromSrgb(new Srgb(r, g, b));
                Assert.InRange(reflectance.Minimum(), 0.0, 1.0);
                Assert.InRange(reflectance.Maximum(), 0.0, 1.0);
                var back = Srgb.FromXyz(Colorimetry.OfReflectance(reflectance, Colorimetry.D65));

                // The inset at the gamut's edge is 1e-4 of linear light: one 8-bit step near black, none elsewhere.
                Assert.True(Math.Abs(back.Red - r) <= 1 && Math.Abs(back.Green - g) <= 1 && Math.Abs(back.Blue - b) <= 1, $"{r} {g} {b} -> {back}");
            },
            iter: 200);

    [Fact]
    public void Gamut_mapping_keeps_luminance() =>
        Gen.Select(Gen.Double[0.0, 1.2], Gen.Double[0.0, 1.0], Gen.Double[0.0, 1.2]).Sample(
            (x, y, z) =>
            {
                var shown = Srgb.FromXyz(new Xyz(x, y, z)).ToXyz();
                // Half an 8-bit step of the green channel at the bright end is 0.0032 in luminance; all three add up to 0.005.
                Assert.Equal(y, shown.Y, 0.005);
            });

    [Fact]
    public void Fluorescence_never_gives_back_more_energy_than_it_takes() =>
        Gen.Select(Gen.Int[0, 80], Gen.Int[0, 21]).Sample(
            (line, colour) =>
            {
                var light = new double[81];
                light[line] = 1.0;
                var exitance = LureColours.All[colour].Exitance(new Spectrum(WavelengthGrid.Visible, light));
                Assert.InRange(exitance.Values.ToArray().Sum(), 0.0, 1.0);
            });

    [Fact]
    public void No_sun_and_no_moon_gives_a_finite_near_dark_chart()
    {
        var dark = new SurfaceLight(
            Spectrum.Constant(WavelengthGrid.Visible, 0.0), Spectrum.Constant(WavelengthGrid.Visible, 0.0), 0.5, LightRegime.Night, "");
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.Silty, 0.5), dark);
        var chart = ColourChart.Of(field, LureColours.All, [0.0, 5.0]);
        Assert.Equal(default, chart[0, 0]);
        Assert.Equal(0.0, field.PhotosyntheticallyAvailableShare(3.0));
    }
}
