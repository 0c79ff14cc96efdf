using CsCheck;
using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Tests.Sight;

public class SightPropertyTests
{
    private static readonly Gen<SightScene> AnyScene = Gen.Select(
            Gen.Select(Gen.Int[0, 3], Gen.Double[0.05, 60.0]),
            Gen.Double[-20.0, 90.0],
            Gen.Int[0, FishEyes.All.Count - 1],
            Gen.Int[0, 3],
            Gen.Double[0.0, 40.0],
            Gen.Double[0.005, 0.3])
        .Select((water, elevation, eye, direction, depth, size) => new SightScene(
            new LightField(OpticalWater.FromSecchi((WaterKind)water.Item1, water.Item2), Atmosphere.Illuminate(elevation)),
            FishEyes.All[eye],
            (ViewDirection)direction,
            depth,
            size));

    [Fact]
    public void Every_sighting_is_finite() =>
        AnyScene.HoldsFor(
            scene =>
            {
                foreach (var sighting in scene.Rank(LureColours.All))
                {
                    Assert.InRange(sighting.Distance, 0.0, scene.FarthestDistance + 1e-9);
                    Assert.True(double.IsFinite(sighting.ContrastAtTarget) && sighting.ContrastAtTarget >= -1.0);
                    Assert.True(double.IsFinite(sighting.ColourAtTarget) && sighting.ColourAtTarget >= 0.0);
                }
            },
            iterations: 60);

    [Fact]
    public void Radiance_is_never_negative_and_apparent_radiance_lies_between_target_and_water() =>
        Gen.Select(AnyScene, Gen.Int[0, 21], Gen.Double[0.0, 30.0]).HoldsFor(
            (scene, colour, distance) =>
            {
                double reach = Math.Min(distance, Appearance.FarthestDistance(scene.Field, scene.Direction, scene.TargetDepth));
                var seen = Appearance.Of(scene.Field, LureColours.All[colour], scene.Direction, scene.TargetDepth, reach);
                Assert.True(seen.Inherent.Minimum() >= 0.0 && seen.Apparent.Minimum() >= 0.0 && seen.Background.Minimum() >= 0.0);
                if (scene.Direction != ViewDirection.Level)
                    return;
                for (int i = 0; i < seen.Apparent.Grid.Count; i++)
                {
                    double low = Math.Min(seen.Inherent[i], seen.Background[i]), high = Math.Max(seen.Inherent[i], seen.Background[i]);
                    Assert.InRange(seen.Apparent[i], low - (1e-9 * high), high * (1.0 + 1e-9));
                }
            },
            iterations: 60);

    [Fact]
    public void A_bigger_target_is_made_out_at_least_as_far() =>
        Gen.Select(Gen.Double[0.005, 0.1], Gen.Int[0, 21], Gen.Int[0, 3]).HoldsFor(
            (size, colour, direction) =>
            {
                var small = new SightScene(Field, Eye, (ViewDirection)direction, 1.5, size).Sight(LureColours.All[colour]);
                var big = new SightScene(Field, Eye, (ViewDirection)direction, 1.5, 2.0 * size).Sight(LureColours.All[colour]);
                Assert.True(big.Distance >= small.Distance - 1e-6);
            },
            iterations: 60);

    [Fact]
    public void A_target_like_the_water_is_hidden()
    {
        foreach (var direction in Enum.GetValues<ViewDirection>())
        {
            var scene = new SightScene(Field, Eye, direction, 1.5);
            var sighting = scene.Sight("water", Field.Radiance(direction, 1.5));
            Assert.Equal(0.0, sighting.Distance);
            Assert.Equal(SightMode.MatchesBackground, sighting.Mode);
        }
    }

    [Fact]
    public void From_dusk_to_night_rods_take_over_and_the_sighting_shrinks()
    {
        Sighting At(double elevation) =>
            new SightScene(new LightField(Field.Water, Atmosphere.Illuminate(elevation)), Eye, ViewDirection.Level, 1.5).Sight(LureColours.Black);
        Assert.Equal(SightChannel.ConeBrightness, At(0.0).Channel);
        Sighting dusk = At(-8.0), night = At(-15.0), deepNight = At(-18.0);
        Assert.Equal(SightChannel.RodBrightness, dusk.Channel);
        Assert.Equal(SightChannel.RodBrightness, deepNight.Channel);
        Assert.True(deepNight.Distance < 0.9 * night.Distance && night.Distance < 0.9 * dusk.Distance);
    }

    [Fact]
    public void No_light_at_all_shows_nothing()
    {
        var none = Spectrum.Constant(WavelengthGrid.Visible, 0.0);
        var dark = new LightField(Field.Water, new SurfaceLight(none, none, 0.3, LightRegime.Night, false));
        foreach (var sighting in new SightScene(dark, Eye, ViewDirection.Level, 1.0).Rank(LureColours.All))
            Assert.Equal(0.0, sighting.Distance);
    }

    [Fact]
    public void Parts_of_a_pattern_add_to_the_whole()
    {
        foreach (var pattern in LurePatterns.All)
        {
            foreach (var direction in Enum.GetValues<ViewDirection>())
                Assert.Equal(1.0, pattern.Face(direction).Sum(p => p.Share), 12);
        }

        var plain = LurePattern.Plain(LureColours.Red);
        var whole = plain.Inherent(Field, ViewDirection.Level, 1.0);
        var part = Appearance.Inherent(Field, LureColours.Red, ViewDirection.Level, 1.0);
        Assert.True((whole - part).Map(Math.Abs).Maximum() <= 1e-12 * part.Maximum());
    }

    [Fact]
    public void A_foil_flashes_brighter_than_it_shines_at_rest()
    {
        double rest = Appearance.Inherent(Field, LureColours.Gold, ViewDirection.Level, 1.0).Dot(Colorimetry.YBar);
        double flash = Appearance.Flash(Field, LureColours.Gold, 1.0).Dot(Colorimetry.YBar);
        Assert.True(flash > 5.0 * rest);
    }

    [Fact]
    public void A_plate_multiplies_light_by_colour()
    {
        var plate = SpectralPlate.Of(Field, LureColours.Red, [0.0, 1.0, 3.0]);
        foreach (var row in plate.Rows)
            Assert.True((row.Left - (row.Illuminant * LureColours.Red.Reflectance)).Map(Math.Abs).Maximum() < 1e-12);
        Assert.True(plate.Rows[2].LightLeft < plate.Rows[1].LightLeft);
    }

    [Fact]
    public void A_pale_bottom_lights_the_belly_and_weakens_the_shape_against_the_sky()
    {
        var water = OpticalWater.FromSecchi(WaterKind.CoastalGreen, 6.0);
        LightField deep = new(water, Atmosphere.Illuminate(60.0)), sand = new(water, Atmosphere.Illuminate(60.0), SeaBed.Of(SeaBedKind.Sand, 1.2));
        double Belly(LightField field) => field.FaceIrradiance(ViewDirection.Up, 0.6).Dot(Colorimetry.YBar);
        Assert.True(Belly(sand) > 3.0 * Belly(deep));
        double White(LightField field) => new SightScene(field, Eye, ViewDirection.Up, 0.6).Sight(LureColours.White).ContrastAtTarget;
        Assert.True(White(sand) > White(deep) && White(sand) < 0.0);

        // A dark back over sand is a dark shape from above; over the deep it is not darker than the water.
        double FromAbove(LightField field) => new SightScene(field, Eye, ViewDirection.Down, 0.6).Sight(LureColours.ShrimpBrown).ContrastAtTarget;
        Assert.True(FromAbove(sand) < 0.0 && FromAbove(deep) > 0.0);
    }

    private static LightField Field { get; } = new(OpticalWater.FromSecchi(WaterKind.CoastalGreen, 3.0), Atmosphere.Illuminate(40.0));

    private static FishEye Eye { get; } = FishEyes.All.Single(e => e.CommonName == "spotted seatrout");
}
