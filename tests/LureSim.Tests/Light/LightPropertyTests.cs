using CsCheck;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Tests.Light;

public class LightPropertyTests
{
    private static readonly Gen<OpticalWater> AnyWater = Gen.Select(Gen.Int[0, 3], Gen.Double[0.02, 100.0])
        .Select((kind, secchi) => OpticalWater.FromSecchi((WaterKind)kind, secchi));

    private static readonly Gen<LightField> AnyField = Gen.Select(AnyWater, Gen.Double[-90.0, 90.0], Gen.Double[0.0, 1.0])
        .Select((water, elevation, cloud) => new LightField(water, Atmosphere.Illuminate(elevation, cloud)));

    [Fact]
    public void Fitted_water_has_the_secchi_depth_asked_for_or_says_why_not() =>
        Gen.Select(Gen.Int[0, 3], Gen.Double[0.02, 100.0]).HoldsFor(
            (kind, secchi) =>
            {
                var water = OpticalWater.FromSecchi((WaterKind)kind, secchi);
                switch (water.Status)
                {
                    case WaterFitStatus.Matched:
                        Assert.Equal(secchi, water.SecchiDepth, 1e-6 * secchi);
                        Assert.Empty(LightWords.Fit(water, new UnitFormat(UnitSystem.Us)));
                        break;
                    case WaterFitStatus.ClearestOfKind:
                        Assert.True(water.SecchiDepth < secchi);
                        Assert.NotEmpty(LightWords.Fit(water, new UnitFormat(UnitSystem.Us)));
                        break;
                    default:
                        Assert.True(water.SecchiDepth > secchi);
                        Assert.NotEmpty(LightWords.Fit(water, new UnitFormat(UnitSystem.Us)));
                        break;
                }
            },
            iterations: 300);

    [Fact]
    public void Light_is_never_negative_and_darkens_with_depth() =>
        Gen.Select(AnyField, Gen.Double[0.0, 200.0], Gen.Double[0.0, 50.0]).HoldsFor(
            (field, depth, more) =>
            {
                Spectrum upper = field.Downwelling(depth), lower = field.Downwelling(depth + more);
                for (int i = 0; i < upper.Grid.Count; i++)
                {
                    Assert.True(upper[i] >= 0.0);
                    Assert.True(lower[i] <= upper[i]);
                }
            },
            iterations: 300);

    [Fact]
    public void Cells_of_a_chart_are_finite_at_any_accepted_input() =>
        Gen.Select(AnyField, Gen.Double[0.0, 1000.0]).HoldsFor(
            (field, depth) =>
            {
                var chart = ColourChart.Of(field, LureColours.All, [depth]);
                for (int c = 0; c < chart.Colours.Count; c++)
                {
                    var cell = chart[0, c];
                    Assert.True(double.IsFinite(cell.Adapted.L) && double.IsFinite(cell.Adapted.A) && double.IsFinite(cell.Adapted.B));
                    Assert.True(double.IsFinite(cell.Unadapted.L) && double.IsFinite(cell.Unadapted.A) && double.IsFinite(cell.Unadapted.B));
                    Assert.True(cell.RelativeLuminance >= 0.0 && double.IsFinite(cell.RelativeLuminance));
                }
            },
            iterations: 300);

    [Fact]
    public void Where_light_has_lost_its_last_digits_every_colour_is_black()
    {
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.TanninStained, 1.0), Atmosphere.Illuminate(40.0, 0.0));
        var chart = ColourChart.Of(field, LureColours.All, [741.3]);
        for (int c = 0; c < chart.Colours.Count; c++)
        {
            Assert.Equal(0.0, chart[0, c].RelativeLuminance);
            Assert.Equal(0.0, chart[0, c].Adapted.L);
        }
    }

    [Fact]
    public void Any_screen_colour_is_met_by_a_reflectance_between_0_and_1() =>
        Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte).HoldsFor(
            (r, g, b) =>
            {
                var reflectance = ReflectanceReconstruction.FromSrgb(new Srgb(r, g, b));
                Assert.InRange(reflectance.Minimum(), 0.0, 1.0);
                Assert.InRange(reflectance.Maximum(), 0.0, 1.0);
                var back = Srgb.FromXyz(Colorimetry.OfReflectance(reflectance, Colorimetry.D65));

                // The inset at the gamut's edge is 1e-4 of linear light: one 8-bit step near black, none elsewhere.
                Assert.True(Math.Abs(back.Red - r) <= 1 && Math.Abs(back.Green - g) <= 1 && Math.Abs(back.Blue - b) <= 1, $"{r} {g} {b} -> {back}");
            },
            iterations: 200);

    [Fact]
    public void Gamut_mapping_keeps_luminance() =>
        Gen.Select(Gen.Double[0.0, 1.2], Gen.Double[0.0, 1.0], Gen.Double[0.0, 1.2]).HoldsFor(
            (x, y, z) =>
            {
                var shown = Srgb.FromXyz(new Xyz(x, y, z)).ToXyz();
                // Half an 8-bit step of the green channel at the bright end is 0.0032 in luminance; all three add up to 0.005.
                Assert.Equal(y, shown.Y, 0.005);
            });

    [Fact]
    public void Fluorescence_never_gives_back_more_energy_than_it_takes() =>
        Gen.Select(Gen.Int[0, 80], Gen.Int[0, 21]).HoldsFor(
            (line, colour) =>
            {
                double[] light = new double[81];
                light[line] = 1.0;
                var exitance = LureColours.All[colour].Exitance(new Spectrum(WavelengthGrid.Visible, light));
                Assert.InRange(exitance.Values.ToArray().Sum(), 0.0, 1.0);
            });

    [Fact]
    public void No_sun_and_no_moon_gives_a_finite_near_dark_chart()
    {
        var dark = new SurfaceLight(
            Spectrum.Constant(WavelengthGrid.Visible, 0.0), Spectrum.Constant(WavelengthGrid.Visible, 0.0), 0.5, LightRegime.Night, false);
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.Silty, 0.5), dark);
        var chart = ColourChart.Of(field, LureColours.All, [0.0, 5.0]);
        Assert.Equal(default, chart[0, 0]);
        Assert.Equal(0.0, field.PhotosyntheticallyAvailableShare(3.0));
    }

    [Fact]
    public void The_kernel_of_the_chart_allocates_nothing()
    {
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.CoastalGreen, 3.0), Atmosphere.Illuminate(45.0));
        var kernel = new ColourKernel(field, LureColours.All);
        double[] depths = [0.0, 1.0, 2.0, 5.0], illuminance = new double[4];
        var cells = new ColourCell[4 * LureColours.All.Count];
        kernel.Compute(depths, cells, illuminance);
        long before = GC.GetAllocatedBytesForCurrentThread();
        kernel.Compute(depths, cells, illuminance);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void A_colour_does_not_drift_at_the_surface_and_red_drifts_most_in_blue_water()
    {
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.ClearOcean, 20.0), Atmosphere.Illuminate(60.0));
        var chart = ColourChart.Of(field, [LureColours.Red, LureColours.White, LureColours.Green], [0.0, 6.0]);
        Assert.Equal(0.0, chart.Drift(0, 0));
        Assert.True(chart.Drift(1, 0) > 20.0);
        Assert.True(chart.Drift(1, 1) < 3.0);
        Assert.True(chart.Drift(1, 2) < chart.Drift(1, 0));
    }

    [Fact]
    public void Shares_of_a_surface_may_not_add_to_more_than_one()
    {
        var half = Spectrum.Constant(WavelengthGrid.Visible, 0.6);
        _ = Assert.Throws<ArgumentException>(() => new LureColour("too much", half, ColourBasis.StandIn, [], half, null, null));
        _ = Assert.Throws<ArgumentException>(() => new LureColour("negative", -1.0 * half, ColourBasis.StandIn));
        _ = Assert.Throws<FormatException>(() => LureColour.FromHex("bad", "#12"));
        _ = Assert.Throws<FormatException>(() => LureColour.FromCsv("bad", "wavelength_nm,reflectance\n400,1.2\n500,0.5"));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-1.0)]
    [InlineData(0.0)]
    public void Bad_input_is_refused_with_its_name_and_range(double bad)
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => OpticalWater.FromSecchi(WaterKind.Silty, bad));
        Assert.Equal("secchiDepth", e.ParamName);
        Assert.Contains("from 0.02 to 100 m", e.Message, StringComparison.Ordinal);
        if (bad != 0.0)
            _ = Assert.Throws<ArgumentOutOfRangeException>(() => new LightField(OpticalWater.FromSecchi(WaterKind.Silty, 1.0), Atmosphere.Illuminate(30.0)).Downwelling(bad));
    }

    [Fact]
    public void Measured_table_is_read_and_interpolated()
    {
        var colour = LureColour.FromCsv("two points", "# a comment\nwavelength_nm,reflectance\n400,0.1\n600,0.5\n");
        Assert.Equal(0.3, colour.Reflectance.At(500.0), 12);
        Assert.Equal(0.5, colour.Reflectance.At(700.0), 12);
        Assert.Equal(ColourBasis.Measured, colour.Basis);
    }
}
