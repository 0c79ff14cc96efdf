using LureSim.Light;
using LureSim.Model;

namespace LureSim.Tests.Light;

/// <summary>The light of a water is computed once and kept; what is kept is what would be computed.</summary>
public class KeptFieldTests
{
    private static readonly SurfaceLight Noon = Atmosphere.Illuminate(50, 0.2);

    private static LightField Field(double secchi = 2, SurfaceLight? surface = null, SeaBed? bed = null) => new(OpticalWater.FromSecchi(WaterKind.CoastalGreen, secchi), surface ?? Noon, bed);

    [Fact]
    public void The_same_water_under_the_same_light_has_one_field() => Assert.Same(Field().Angular, Field(surface: Atmosphere.Illuminate(50, 0.2)).Angular);

    [Fact]
    public void Another_water_light_or_bottom_has_another_field()
    {
        RadianceField[] fields =
        [
            Field().Angular, Field(secchi: 2.001).Angular, Field(surface: Atmosphere.Illuminate(50.01, 0.2)).Angular, Field(surface: Noon with { ZenithAngle = Noon.ZenithAngle + 1e-6 }).Angular,
            Field(bed: SeaBed.Of(SeaBedKind.Sand, 3)).Angular, Field(bed: SeaBed.Of(SeaBedKind.Sand, 3.001)).Angular, Field(bed: SeaBed.Of(SeaBedKind.Mud, 3)).Angular,
        ];
        Assert.Equal(fields.Length, fields.Distinct(ReferenceEqualityComparer.Instance).Count());
    }

    [Fact]
    public void A_kept_field_is_what_is_computed_anew()
    {
        SeaBed bed = SeaBed.Of(SeaBedKind.Grass, 2.5);
        LightField field = Field(1.3, bed: bed);
        RadianceField kept = Field(1.3, bed: bed).Angular, anew = new(field.Water.Optics, field.Surface, bed);
        foreach (double depth in (double[])[0, 0.7, 2.5])
        {
            foreach (ViewDirection direction in Enum.GetValues<ViewDirection>())
                Assert.Equal(anew.Radiance(direction, depth).ToArray(), kept.Radiance(direction, depth).ToArray());
            Assert.Equal(anew.Upwelling(depth).ToArray(), kept.Upwelling(depth).ToArray());
        }
    }

    [Fact]
    public void The_light_on_a_face_is_that_of_its_own_side_and_depth()
    {
        // Against the sums of the field itself, in an order in which an answer that is kept for the wrong side or depth would be taken.
        LightField field = Field(bed: SeaBed.Of(SeaBedKind.Sand, 3));
        foreach (double depth in (double[])[1, 2, 1, 0.5, 2])
        {
            Assert.Equal(field.Downwelling(depth).ToArray(), field.FaceIrradiance(ViewDirection.Down, depth).ToArray());
            double[] ratio = [.. field.Downwelling(depth).ToArray().Zip(field.Angular.Downwelling(depth).ToArray(), (own, other) => own / other)];
            Assert.Equal([.. field.Angular.Upwelling(depth).ToArray().Zip(ratio, (shape, level) => shape * level)], field.FaceIrradiance(ViewDirection.Up, depth).ToArray());
            Assert.Equal([.. field.Angular.Side(depth).ToArray().Zip(ratio, (shape, level) => shape * level)], field.FaceIrradiance(ViewDirection.Level, depth).ToArray());
        }
    }
}
