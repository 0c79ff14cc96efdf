using CsCheck;
using LureSim.Decision.Colours;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision;

public class SightSpreadTests
{
    private static readonly Spot Flat = new()
    {
        Depth = 1.5,
        Salinity = 25,
        TemperatureCelsius = 22,
        Clarity = new SecchiClarity(1.2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.8),
        StrikeZone = new StrikeZone(0.5, 1.2),
        TargetFish = "red drum",
    };

    private static readonly LureColour[] Box = [LureColours.White, LureColours.Chartreuse, LureColours.Black, LureColours.Red, LureColours.NaturalSilverSide, LureColours.ShrimpBrown];

    private static SightSpread Of(ScenarioUncertainty known, params SightLook[] looks) =>
        SightSpread.Of(TestScenario.Read(TestScenario.Text) with { Spot = Flat, Uncertainty = known }, FishEyes.FindOrStandIn("red drum"), [.. Box.Select(LurePattern.Plain)], 0.04, 0.09, looks.Length > 0 ? looks : [new SightLook(ViewDirection.Level, 0.8, 1)]);

    [Fact]
    public void With_everything_known_it_is_the_scene_itself()
    {
        SightSpread spread = Of(ScenarioUncertainty.None);
        var scene = new SightScene(new LightField(SpotLight.Water(Flat), SpotLight.Surface(Flat), SeaBed.Of(SeaBedKind.Sand, 1.5)), FishEyes.FindOrStandIn("red drum"), ViewDirection.Level, 0.8, 0.04);
        Assert.Equal(1, spread.Samples);
        for (int c = 0; c < Box.Length; c++)
        {
            double single = scene.Sight(Box[c]).Distance;
            Assert.InRange(spread.Distance[c].Median, 0.99 * single, 1.01 * single);
            Assert.Equal(spread.Distance[c].Low, spread.Distance[c].High);
        }
    }

    [Fact]
    public void What_is_not_known_spreads_the_distance_about_the_single_one()
    {
        SightSpread known = Of(ScenarioUncertainty.None), drawn = Of(ScenarioUncertainty.Assumed);
        Assert.Equal(SightSpread.DefaultSamples, drawn.Samples);
        for (int c = 0; c < Box.Length; c++)
        {
            double single = known.Distance[c].Median;
            Assert.InRange(single, drawn.Distance[c].Low, drawn.Distance[c].High);

            // The smallest angle alone is uncertain by a factor of 1.65, one standard deviation.
            Assert.True(drawn.Distance[c].High > 1.2 * single && drawn.Distance[c].Low < 0.85 * single, $"{Box[c].Name}: {drawn.Distance[c].Low} {single} {drawn.Distance[c].High}");
        }
    }

    [Fact]
    public void Each_unknown_has_its_own_part()
    {
        SightSpread all = Of(ScenarioUncertainty.Assumed);
        SightSpread water = Of(ScenarioUncertainty.Assumed with { SightIsKnown = true });
        SightSpread eye = Of(ScenarioUncertainty.Assumed with { Clarity = Spread.Exact });
        double Width(SightSpread spread) => Math.Log(spread.Distance[0].High / spread.Distance[0].Low);
        Assert.True(Width(water) > 0.1 && Width(eye) > 0.3, $"{Width(water)} {Width(eye)}");
        Assert.True(Width(all) > Math.Max(Width(water), Width(eye)) * 0.95, $"{Width(all)}");
    }

    [Fact]
    public void All_colours_meet_the_same_draws()
    {
        // Black and red are all but the same seen level in green water: their distances go together, far closer than either goes with itself from draw to draw.
        SightSpread spread = Of(ScenarioUncertainty.Assumed);
        double ratio = Enumerable.Range(0, spread.Samples).Max(i => Math.Abs(Math.Log(spread.DistancesIn(i)[2] / spread.DistancesIn(i)[3])));
        Assert.True(ratio < 0.3 * Math.Log(spread.Distance[2].High / spread.Distance[2].Low), $"{ratio}");
        Assert.Equal(0, spread.ShareFarther(2, 2));
        Assert.InRange(spread.ShareFarther(2, 4) + spread.ShareFarther(4, 2), 0.5, 1.0);
        Assert.True(spread.ShareFarther(2, 4, 0.5) <= spread.ShareFarther(2, 4));
    }

    [Fact]
    public void The_same_seed_gives_the_same_draws_and_looks_are_a_mean()
    {
        SightLook level = new(ViewDirection.Level, 0.8, 1), up = new(ViewDirection.Up, 0.8, 1);
        SightSpread one = Of(ScenarioUncertainty.Assumed, level), other = Of(ScenarioUncertainty.Assumed, up);
        SightSpread both = Of(ScenarioUncertainty.Assumed, level with { Weight = 0.25 }, up with { Weight = 0.75 });
        for (int i = 0; i < one.Samples; i++)
            Assert.Equal((0.25 * one.DistancesIn(i)[0]) + (0.75 * other.DistancesIn(i)[0]), both.DistancesIn(i)[0], 9);
    }

    [Fact]
    public void A_swath_ends_at_the_reaction_distance()
    {
        SightSpread spread = Of(ScenarioUncertainty.Assumed with { Clarity = Spread.Exact });
        for (int i = 0; i < spread.Samples; i++)
            Assert.All(spread.SwathsIn(i).Zip(spread.DistancesIn(i)), pair => Assert.True(pair.First <= pair.Second));
        Assert.True(spread.Swath[2].High < 3 * ReactionDistance.Full);
    }

    [Fact]
    public void The_quick_distance_is_the_distance() =>
        Gen.Select(Gen.Int[0, 3], Gen.Double[0.3, 20.0], Gen.Int[0, 3], Gen.Double[0.2, 4.0], Gen.Int[0, LureColours.All.Count - 1]).HoldsFor(
            drawn =>
            {
                (int kind, double secchi, int direction, double depth, int colour) = drawn;
                var field = new LightField(OpticalWater.FromSecchi((WaterKind)kind, secchi), Atmosphere.Illuminate(50));
                var scene = new SightScene(field, FishEyes.All[0], (ViewDirection)direction, depth);
                Spectrum inherent = Appearance.Inherent(field, LureColours.All[colour], (ViewDirection)direction, depth);
                double full = scene.Sight("", inherent).Distance;
                Assert.InRange(scene.QuickDistance(inherent), 0.99 * full, (1.01 * full) + 1e-9);
            },
            iterations: 40);

    [Fact]
    public void Factors_do_what_they_say()
    {
        var scene = new SightScene(new LightField(SpotLight.Water(Flat), SpotLight.Surface(Flat)), FishEyes.FindOrStandIn("red drum"), ViewDirection.Level, 0.8, 0.04);
        double own = scene.Sight(LureColours.Black).Distance;
        Assert.Equal(own, scene.With(SightFactors.Own).Sight(LureColours.Black).Distance, 12);
        Assert.True(scene.With(SightFactors.Own with { BeamAttenuation = 1.4 }).Sight(LureColours.Black).Distance < 0.9 * own);
        Assert.True(scene.With(SightFactors.Own with { SmallestAngle = 1.65 }).Sight(LureColours.Black).Distance < 0.95 * own);
        Assert.True(scene.With(SightFactors.Own with { LargeContrast = 0.5 }).Sight(LureColours.Black).Distance > own);
        Assert.Throws<ArgumentOutOfRangeException>(() => scene.With(SightFactors.Own with { BeamAttenuation = 0 }));
    }

    [Theory]
    [InlineData(1.0, 1.0)]
    [InlineData(0.5, 1.0)]
    [InlineData(2.0, 1.65)]
    public void Contrast_and_angle_are_varied_apart(double contrast, double smallest)
    {
        // The angle at which full contrast is just enough, found from the curve itself.
        double summation = TargetThreshold.SummationAngleOf(contrast, smallest);
        double needed = 1.0 / (contrast * FishEye.WeberFraction);
        Assert.Equal(needed, TargetThreshold.Factor(smallest * TargetThreshold.SmallestAngle(1.0), summation), 6);
    }

    [Theory]
    [InlineData(2.6, 6.5, 1.0, 0.5)]
    [InlineData(0.8, 2.0, 0.3048, 0.5)]
    [InlineData(10.0, 30.0, 1.0, 5.0)]
    [InlineData(1.00, 1.04, 1.0, 0.01)]
    [InlineData(2.0, 2.0, 1.0, 0.0)]
    [InlineData(2.0, double.PositiveInfinity, 1.0, 0.0)]
    public void A_figure_is_rounded_to_what_is_known(double low, double high, double unit, double step) =>
        Assert.Equal(step, new Interval(low, 0.5 * (low + high), high, 0.5 * (low + high)).RoundingStep(unit), 9);
}
