using LureSim.Sight;

namespace LureSim.Validation.Sight;

/// <summary>The size of the cones of the eye that looks.</summary>
public class ConeTests
{
    // Shiobara, Akiyama & Arimoto 1998 (abstract): adult red sea bream have 200 to 400 cones on 0.01 mm2 where they stand closest. In a square mosaic they are 1/sqrt(density) apart, 5.0 to 7.1 um,
    // 5.8 um at the mean. Light-adapted cones nearly touch, so that their diameter is that distance less a little: 0.7 to 1 of it (assumed).
    [Fact]
    public void Cones_fill_the_mosaic_of_a_sea_bream()
    {
        const double LeastDensity = 200 / 1e-8, GreatestDensity = 400 / 1e-8;
        double apart = 1 / Math.Sqrt(0.5 * (LeastDensity + GreatestDensity));
        ValidationLog.Between(
            CheckClass.Measured, "Sight", "diameter of a cone against the distance of cones in a red sea bream", "0.7 to 1 of 5.8 um, 200 to 400 cones on 0.01 mm2 (Shiobara et al. 1998)",
            0.7 * apart * 1e6, apart * 1e6, SightScene.ConeDiameter * 1e6, "um");
    }

    // The same abstract: an eye of 504 mm of fish parts 1/0.28 minutes of arc; its lens, in proportion, has 11.8 x 504/609 mm, its focal length 2.5 radii (Matthiessen), two cones to a line pair.
    [Fact]
    public void The_same_distance_comes_from_its_acuity()
    {
        double resolved = 1 / 0.28 / 60 * Math.PI / 180, focus = 2.5 * 0.5 * 11.8e-3 * 504 / 609;
        ValidationLog.Between(
            CheckClass.Measured, "Sight", "diameter of a cone against the acuity of a red sea bream", "0.7 to 1 of half a line pair at 1/0.28 minutes of arc (Shiobara et al. 1998)",
            0.7 * 0.5e6 * resolved * focus, 0.5e6 * resolved * focus, SightScene.ConeDiameter * 1e6, "um");
    }
}
