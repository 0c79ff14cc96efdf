using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Tests.Sight;

public class LureSightTests
{
    private static readonly LightField Green = new(OpticalWater.FromSecchi(WaterKind.CoastalGreen, 4), Atmosphere.Illuminate(55));
    private static readonly FishEye Eye = FishEyes.FindOrStandIn("red drum");

    private static SightScene Scene(ViewDirection direction = ViewDirection.Level, LightField? field = null) => new(field ?? Green, Eye, direction, 1.5, 0.04);

    private static Spectrum Side(LureColour colour) => Appearance.Inherent(Green, colour, ViewDirection.Level, 1.5);

    [Fact]
    public void A_lure_of_one_colour_is_seen_as_the_colour()
    {
        foreach (LureColour colour in LureColours.All)
        {
            LureSight sight = LureSights.Of(Scene(), LurePattern.Plain(colour));
            Assert.Equal(Scene().Sight(colour).Distance, sight.Distance, 9);
            Assert.Null(sight.Part);
            Assert.Null(sight.PartsApart);
        }
    }

    [Fact]
    public void Parts_never_make_a_lure_harder_to_see_and_a_dark_back_carries_a_lure_that_hides()
    {
        var hiding = new LurePattern("silver with a black back", LureColours.Black, LureColours.NaturalSilverSide, LureColours.NaturalSilverSide);
        foreach (LurePattern pattern in (LurePattern[])[.. LurePatterns.All, hiding])
            Assert.True(LureSights.Of(Scene(), pattern).Distance >= Scene().Sight(pattern).Distance);
        LureSight sight = LureSights.Of(Scene(), hiding);
        Assert.Equal(PatternPart.Back, sight.Part);
        Assert.True(sight.Distance > 1.5 * LureSights.Of(Scene(), LurePattern.Plain(LureColours.NaturalSilverSide)).Distance);

        // A black lure of the size of that back is seen as far, by the area of the back: a fifth.
        Assert.Equal(Scene().Sight("back", Side(LureColours.Black), 0.04 * Math.Sqrt(0.2)).Distance, sight.Distance, 6);
    }

    [Fact]
    public void From_below_the_belly_alone_counts()
    {
        var pattern = new LurePattern("black belly", LureColours.White, LureColours.White, LureColours.Black);
        Assert.Equal(Scene(ViewDirection.Up).Sight(LureColours.Black).Distance, LureSights.Of(Scene(ViewDirection.Up), pattern).Distance, 9);
        Assert.Null(LureSights.Of(Scene(ViewDirection.Up), pattern).PartsApart);
    }

    [Fact]
    public void Parts_run_together_sooner_in_dirtier_water()
    {
        double last = double.PositiveInfinity;
        foreach (double secchi in (double[])[12, 4, 1.5, 0.7])
        {
            var field = new LightField(OpticalWater.FromSecchi(WaterKind.CoastalGreen, secchi), Atmosphere.Illuminate(55));
            double apart = LureSights.Of(Scene(field: field), LurePatterns.WhiteWithRedHead).PartsApart!.Value;
            Assert.InRange(apart, 0.01, last);
            last = apart;
        }
    }

    [Fact]
    public void Differences_are_none_to_oneself_the_same_both_ways_and_less_through_water()
    {
        SightScene scene = Scene();
        foreach (LureColour a in LureColours.All)
        {
            Assert.Equal(0, scene.DifferenceCloseUp(Side(a), Side(a)), 9);
            foreach (LureColour b in LureColours.All)
            {
                Assert.Equal(scene.DifferenceCloseUp(Side(a), Side(b)), scene.DifferenceCloseUp(Side(b), Side(a)), 9);
                Assert.True(scene.Difference(Side(a), Side(b), 0.04, 1) <= scene.DifferenceCloseUp(Side(a), Side(b)) + 1e-9);
                Assert.True(scene.Difference(Side(a), Side(b), 0.04, 2) <= scene.Difference(Side(a), Side(b), 0.04, 1) + 1e-9);
            }
        }
    }

    [Fact]
    public void The_difference_close_up_is_that_of_the_receptor_noise_model()
    {
        // In full light shot noise is nothing beside the Weber fraction: colour by the published distance, brightness by ln(q/q')/e of the commonest cone.
        Spectrum white = Side(LureColours.White), yellow = Side(LureColours.Yellow);
        double[] a = [.. Eye.Cones.Select(cone => cone.Catch(white))], b = [.. Eye.Cones.Select(cone => cone.Catch(yellow))];
        double colour = ReceptorNoise.Chromatic(a, b, [.. Eye.ConeNoise]), brightness = ReceptorNoise.Achromatic(a[^1], b[^1], FishEye.WeberFraction);
        Assert.Equal(Math.Sqrt((colour * colour) + (brightness * brightness)), Scene().DifferenceCloseUp(white, yellow), 0.02 * brightness);
    }

    [Fact]
    public void A_likeness_is_judged_part_by_part_where_parts_can_be_told_apart()
    {
        // The same colours at other places have the same mean and are still no likeness close up; from far off they are.
        var bait = new LurePattern("bait", LureColours.Black, LureColours.NaturalSilverSide, LureColours.White);
        var upside = new LurePattern("upside down", LureColours.White, LureColours.NaturalSilverSide, LureColours.Black);
        Assert.Equal(0, LureSights.Difference(Scene(), bait, bait, 0.17), 9);
        Assert.True(LureSights.Difference(Scene(), bait, upside, 0.17) > LureSights.LikenessSteps);
        Assert.True(LureSights.Difference(Scene(), bait, upside, 50) < LureSights.LikenessSteps);
        Assert.Equal(LureSights.Difference(Scene(), bait, upside, 0.17), LureSights.Difference(Scene(), upside, bait, 0.17), 9);
    }
}
