using LureSim.Decision.Colours;
using LureSim.Light;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;
using LureSim.Tests.Cli;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision;

public class ColourAdviceTests
{
    private static readonly ForageSighting ShrimpAttacked = new(ForageKind.Shrimp, null, ForageSeen.BeingAttacked);

    // An hour before midnight at new moon.
    private static readonly SkySetting Night = new SkyByClock(new DateTimeOffset(2026, 6, 14, 23, 0, 0, TimeSpan.FromHours(-4)), 0.52, -1.31);

    private static Scenario Water(double secchi, WaterKind kind, params string[] colours)
    {
        Scenario plain = TestScenario.Read(TestScenario.Text);
        return plain with
        {
            Spot = plain.Spot with { Depth = 2, GrassHeight = 0, StrikeZone = new StrikeZone(0.5, 1.5), Clarity = new SecchiClarity(secchi, kind) },
            Tackle = plain.Tackle with { Colours = colours },
            Forage = [],
            Uncertainty = ScenarioUncertainty.Assumed,
        };
    }

    private static ColourAdvice Advise(Scenario scenario)
    {
        Assert.True(FishEyes.TryFind(scenario.Spot.TargetFish, out FishEye? eye));
        LightField field = SpotColours.Field(scenario.Spot);
        return ColourAdvice.Of(scenario, scenario.Tackle.Bodies[0], HandMade.Track(), field, eye, SpotColours.Lures(scenario.Tackle));
    }

    [Fact]
    public void In_clear_water_the_likeness_of_the_forage_wins()
    {
        ColourAdvice advice = Advise(Water(15, WaterKind.ClearOcean, "chartreuse", "white", "shrimp brown", "black") with { Forage = [ShrimpAttacked] });
        Assert.Equal(ColourReason.Likeness, advice.Reason);
        Assert.Equal("shrimp brown", advice.Choice.Name);
        Assert.Equal(0, advice.Choice.DifferenceToForage, 1e-9);
        Assert.Equal(PracticeOutcome.Agrees, advice.Practice.Outcome);
    }

    [Fact]
    public void The_colour_of_the_forage_counts()
    {
        ColourAdvice advice = Advise(Water(15, WaterKind.ClearOcean, "chartreuse", "white", "shrimp brown", "black") with { Forage = [ShrimpAttacked with { Colour = "white" }] });
        Assert.Equal("white", advice.Choice.Name);
        Assert.Equal(ColourReason.Likeness, advice.Reason);
    }

    [Fact]
    public void A_forage_that_nobody_saw_decides_nothing()
    {
        ColourAdvice advice = Advise(Water(15, WaterKind.ClearOcean, "chartreuse", "white", "shrimp brown", "black"));
        Assert.False(advice.ForageSeen);
        Assert.Equal(ColourReason.CommonPractice, advice.Reason);
        Assert.Equal(ColourPractice.NaturalInClear, advice.Practice.Practice);
    }

    // Shrimp under attack in tea water: chartreuse stood 35 steps from brown against 37 and 40, and won as a match.
    [Fact]
    public void Nothing_stands_in_for_a_brown_shrimp()
    {
        string[] box = ["white", "chartreuse", "red", "dark purple", "black"];
        ColourAdvice advice = Advise(Water(0.9, WaterKind.TanninStained, box) with { Forage = [ShrimpAttacked] });
        Assert.All(advice.Colours, worth => Assert.False(worth.IsLikeness, $"{worth.Name} {worth.DifferenceToForage}"));
        Assert.NotEqual(ColourReason.Likeness, advice.Reason);

        ColourAdvice withBrown = Advise(Water(0.9, WaterKind.TanninStained, [.. box, "shrimp brown"]) with { Forage = [ShrimpAttacked] });
        Assert.Equal("shrimp brown", withBrown.Choice.Name);
        Assert.Equal(ColourReason.Likeness, withBrown.Reason);
        Assert.DoesNotContain(ColourWords.Sentences(advice, "red drum", UnitSystem.Us), sentence => sentence.Contains("hardly tell them apart", StringComparison.Ordinal));
    }

    [Fact]
    public void No_fish_in_no_water_takes_red_or_black_for_brown()
    {
        (WaterKind, double)[] waters = [(WaterKind.ClearOcean, 15), (WaterKind.CoastalGreen, 2.5), (WaterKind.TanninStained, 1), (WaterKind.Silty, 0.6)];
        LureBody body = TestScenario.Read(TestScenario.Text).Tackle.Bodies[0];
        LurePattern brown = LurePattern.Plain(LureColours.ShrimpBrown);
        foreach ((WaterKind kind, double secchi) in waters)
        {
            var field = new LightField(OpticalWater.FromSecchi(kind, secchi), Atmosphere.Illuminate(50), SeaBed.Of(SeaBedKind.Sand, 2));
            foreach (FishEye eye in FishEyes.All)
            {
                var measure = new SightMeasure(field, eye, body, [new SightLook(ViewDirection.Level, 1, 0.5), new SightLook(ViewDirection.Down, 1, 0.5)]);
                Assert.True(measure.TellsColours);

                // As in the choice, a likeness must hold at both ends of the peaks that a borrowed eye may have.
                SightMeasure[] eyes = [measure, .. eye.Ends.Select(measure.Through)];
                foreach (LureColour colour in (LureColour[])[LureColours.Red, LureColours.Black, LureColours.Chartreuse, LureColours.White])
                    Assert.True(eyes.Max(e => e.Difference(LurePattern.Plain(colour), brown, 0.17)) > LureSights.LikenessSteps, $"{eye.CommonName} {kind} {colour.Name}");
            }
        }
    }

    // At night the choice was gold, "made out far enough" at an inch.
    [Fact]
    public void At_an_inch_sight_decides_nothing()
    {
        Scenario scenario = Water(0.5, WaterKind.CoastalGreen, "gold", "white", "chartreuse", "dark purple", "black");
        scenario = scenario with { Spot = scenario.Spot with { Sky = Night } };
        ColourAdvice advice = Advise(scenario);
        Assert.True(advice.Colours[advice.Farthest].SeenFrom < ColourAdvice.StrikeLength);
        Assert.Equal(ColourReason.SightDecidesNothing, advice.Reason);
        Assert.Equal("black", advice.Choice.Name);
        string said = string.Join(" ", ColourWords.Sentences(advice, "red drum", UnitSystem.Us));
        Assert.Contains("sight decides nothing: a dark silhouette, with sound or scent", said, StringComparison.Ordinal);
        Assert.DoesNotContain("far enough", said, StringComparison.Ordinal);
    }

    [Fact]
    public void At_night_there_is_no_colour_to_liken()
    {
        Scenario scenario = Water(3, WaterKind.CoastalGreen, "natural silver side", "white", "dark purple", "black");
        scenario = scenario with { Spot = scenario.Spot with { Sky = Night }, Forage = [new ForageSighting(ForageKind.SmallBaitFish, null, ForageSeen.BeingAttacked)] };
        ColourAdvice advice = Advise(scenario);
        Assert.All(advice.Colours, worth => Assert.False(worth.IsLikeness));
        Assert.Contains(advice.Choice.Name, (string[])["dark purple", "black"]);
        Assert.Contains(advice.Reason, (ColourReason[])[ColourReason.CommonPractice, ColourReason.SightDecidesNothing]);
    }

    // In silt white was chosen by one measure and "not made out at all" by another.
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.3)]
    [InlineData(0.6)]
    [InlineData(1.0)]
    public void In_silt_the_choice_is_seen_as_far_as_any_or_sight_decides_nothing(double secchi)
    {
        ColourAdvice advice = Advise(Water(secchi, WaterKind.Silty, "white", "chartreuse", "gold", "natural silver side", "dark purple", "black"));
        double best = advice.Colours.Max(worth => worth.SeenFrom);
        Assert.Equal(best, advice.Colours[advice.Farthest].SeenFrom);
        if (best < ColourAdvice.StrikeLength)
        {
            Assert.Equal(ColourReason.SightDecidesNothing, advice.Reason);
            Assert.Equal("black", advice.Choice.Name);
        }
        else
        {
            Assert.True(advice.Choice.Tied);
            Assert.True(advice.Choice.SeenFrom > 0);
        }
    }

    [Fact]
    public void Looking_level_in_silt_white_is_not_tied_with_black()
    {
        // A zone no higher than the lure: every fish looks level, where white is lost in the lit silt.
        Scenario scenario = Water(0.6, WaterKind.Silty, "white", "black");
        scenario = scenario with { Spot = scenario.Spot with { StrikeZone = new StrikeZone(0.98, 1.02) } };
        ColourAdvice advice = Advise(scenario);
        Assert.Equal(ViewDirection.Level, Assert.Single(advice.Looks).Direction);
        Assert.Equal("black", advice.Choice.Name);
        Assert.False(advice.Colours[0].Tied);
    }

    [Fact]
    public void Every_distance_comes_from_the_one_measure()
    {
        Scenario scenario = Water(1.5, WaterKind.CoastalGreen, "white", "chartreuse", "black");
        ColourFinding finding = SpotColours.At(scenario, 1.0, LengthScaleOf(UnitSystem.Us));
        SightFinding sight = SightFinding.Of(scenario, finding, LengthScaleOf(UnitSystem.Us));
        var measure = new SightMeasure(
            finding.Chart.Field, finding.Eye, finding.Advice.Body, ColourAdvice.LooksAt(scenario.Spot.StrikeZone, finding.Advice.Depths, finding.Chart.Field, finding.Eye, finding.Advice.Body, sight.Lures));
        foreach (ColourWorth worth in finding.Advice.Colours)
        {
            Assert.Equal(measure.Of(worth.Lure).SeenFrom, worth.SeenFrom);
            Assert.InRange(worth.SeenFrom, 0, Math.Min(measure.Reach, worth.Seen.MadeOut) + 1e-12);
        }

        Assert.All(sight.Rows, row => Assert.All(row.Seen, seen => Assert.InRange(seen.SeenFrom, 0, row.Reach + 1e-9)));
    }

    private static LureSim.Decision.Trials.LengthScale LengthScaleOf(UnitSystem units) => new UnitFormat(units).LengthScale;

    [Fact]
    public void What_differs_by_less_than_is_known_is_tied()
    {
        Scenario scenario = Water(0.9, WaterKind.CoastalGreen, "white", "black", "dark purple");
        ColourAdvice drawn = Advise(scenario), exact = Advise(scenario with { Uncertainty = ScenarioUncertainty.None });
        Assert.True(drawn.Tied.Count >= exact.Tied.Count);
        foreach (ColourWorth worth in drawn.Colours)
        {
            if (worth.Range.Median >= drawn.Colours[drawn.Farthest].Range.Low)
                Assert.True(worth.Tied, worth.Name);
        }

        // With nothing uncertain a tenth still counts as nothing.
        Assert.All(exact.Colours, worth => Assert.Equal((1 + ColourAdvice.Lead) * worth.SeenFrom >= exact.Colours[exact.Farthest].SeenFrom, worth.Tied));
    }

    [Fact]
    public void Where_nobody_can_tell_the_box_decides()
    {
        ColourAdvice only = Advise(Water(5, WaterKind.CoastalGreen, "red"));
        Assert.Equal((ColourReason.OnlyColour, "red"), (only.Reason, only.Choice.Name));
        ColourAdvice unpractised = Advise(Water(5, WaterKind.CoastalGreen, "red", "blue"));
        Assert.Equal(PracticeOutcome.NotInBox, unpractised.Practice.Outcome);
        Assert.Equal(ColourReason.NoRealDifference, unpractised.Reason);
        Assert.Equal(unpractised.Farthest, unpractised.Chosen);
    }

    [Theory]
    [InlineData(WaterKind.TanninStained, 0.9, ColourPractice.MetalInStained)]
    [InlineData(WaterKind.Silty, 0.9, ColourPractice.BrightOrDarkInDirty)]
    [InlineData(WaterKind.CoastalGreen, 3, ColourPractice.NaturalInClear)]
    public void Practice_goes_by_water(WaterKind kind, double secchi, ColourPractice practice)
    {
        ColourAdvice advice = Advise(Water(secchi, kind, "white", "gold", "tan", "black"));
        Assert.Equal(practice, advice.Practice.Practice);
        Assert.Equal(kind == WaterKind.TanninStained ? ColourPractice.BrightOrDarkInDirty : practice, Advise(Water(secchi, kind, "white", "tan", "black")).Practice.Practice);
    }

    [Fact]
    public void The_strategies_are_compared_by_the_same_measure()
    {
        ColourAdvice advice = Advise(Water(1.2, WaterKind.TanninStained, "white", "chartreuse", "black", "dark purple", "shrimp brown") with { Forage = [ShrimpAttacked] });
        Assert.Equal(3, advice.Strategies.Count);
        foreach (StrategyWorth strategy in advice.Strategies)
        {
            ColourWorth best = advice.Colours[strategy.Best!.Value];
            if (strategy.Strategy == ColourStrategy.Natural)
                Assert.Equal("shrimp brown", best.Name);
            else
                Assert.All(advice.Colours.Where(w => (w.Seen.Mode == SightMode.Reflects) == (strategy.Strategy == ColourStrategy.Bright)), w => Assert.True(w.SeenFrom <= best.SeenFrom));
        }
    }

    [Fact]
    public void The_angler_may_choose_himself()
    {
        ColourAdvice advice = Advise(Water(1.2, WaterKind.TanninStained, "white", "red", "black"));
        ColourAdvice own = advice.Given(1);
        Assert.Equal(("red", ColourReason.Given), (own.Choice.Name, own.Reason));
        Assert.Equal(advice.Colours, own.Colours);
        Assert.Throws<ArgumentOutOfRangeException>(() => advice.Given(3));
    }

    [Fact]
    public void A_lure_of_several_colours_is_chosen_by_its_parts()
    {
        Scenario scenario = Water(6, WaterKind.CoastalGreen, "white", "chartreuse", "black");
        scenario = scenario with
        {
            Tackle = scenario.Tackle with { Patterns = [new PatternSpecification("mullet", "natural green back", "natural silver side", "white", null)] },
            Forage = [new ForageSighting(ForageKind.SmallBaitFish, null, ForageSeen.BeingAttacked)],
        };
        ColourAdvice advice = Advise(scenario);
        ColourWorth mullet = advice.Colours[^1];
        Assert.Equal("mullet", mullet.Name);
        Assert.True(mullet.IsLikeness);
        Assert.True(mullet.Seen.PartsApart > 0);
        Assert.Null(advice.Colours[0].Seen.PartsApart);

        // The whole mirrors the water; one of its parts carries farther.
        Assert.Contains(mullet.Seen.Part, (PatternPart?[])[PatternPart.Back, PatternPart.Belly]);
    }

    [Fact]
    public void Depths_are_those_of_the_time_in_the_zone()
    {
        // The hand-made lure runs at 1 m while it is reeled.
        Spot spot = Water(5, WaterKind.CoastalGreen, "white").Spot;
        Assert.All(ColourAdvice.Running(HandMade.Track(), spot), at => Assert.Equal(1, at.Depth));
        Track leaving = HandMade.Track() with { Z = [.. HandMade.Track().Z.Select((z, i) => i < 7 ? z : -1.8)] };
        Assert.All(ColourAdvice.Running(leaving, spot), at => Assert.Equal(1, at.Depth));
        Assert.Equal(1, ColourAdvice.Running(leaving, spot).Sum(at => at.Weight), 1e-12);
    }

    [Fact]
    public void Fish_below_look_up_and_fish_above_look_down()
    {
        var zone = new StrikeZone(4, 6);
        LookShare[] below = [.. ColourAdvice.Look(zone, [new RunningDepth(1, 1)], 0.3)];
        Assert.Equal(ViewDirection.Up, Assert.Single(below).Direction);
        LookShare[] above = [.. ColourAdvice.Look(zone, [new RunningDepth(9, 1)], 0.3)];
        Assert.Equal(ViewDirection.Down, Assert.Single(above).Direction);
        LookShare[] level = [.. ColourAdvice.Look(new StrikeZone(4.9, 5.1), [new RunningDepth(5, 1)], 2)];
        Assert.Equal(ViewDirection.Level, Assert.Single(level).Direction);

        // By hand: a lure in the middle of a zone of 2 m, fish 1 m off; level within 1 m x tan 22.5 = 0.414 m: 6 of 16 steps to a side of 0.125 m.
        IReadOnlyList<LookShare> spread = ColourAdvice.Look(zone, [new RunningDepth(5, 1)], 1);
        Assert.Equal(1, spread.Sum(look => look.Weight), 1e-12);
        Assert.Equal(0.375, spread.Single(look => look.Direction == ViewDirection.Level).Weight, 1e-12);
        Assert.Equal(spread.Single(look => look.Direction == ViewDirection.Down).Weight, spread.Single(look => look.Direction == ViewDirection.SlantUp).Weight, 1e-12);
    }
}
