using LureSim.Decision.Colours;
using LureSim.Light;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Sight;
using LureSim.Tests.Cli;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision;

public class ColourAdviceTests
{
    private static Scenario Water(double secchi, WaterKind kind, params string[] colours)
    {
        Scenario plain = TestScenario.Read(TestScenario.Text);
        return plain with
        {
            Spot = plain.Spot with { Depth = 2, GrassHeight = 0, StrikeZone = new StrikeZone(0.5, 1.5), Clarity = new SecchiClarity(secchi, kind) },
            Tackle = plain.Tackle with { Colours = colours },
        };
    }

    private static ColourAdvice Advise(Scenario scenario)
    {
        Assert.True(FishEyes.TryFind(scenario.Spot.TargetFish, out FishEye? eye));
        LightField field = SpotColours.Field(scenario.Spot);
        return ColourAdvice.Of(scenario, scenario.Tackle.Bodies[0], HandMade.Track(), field, eye, [.. scenario.Tackle.Colours.Select(SpotColours.Colour)]);
    }

    [Fact]
    public void In_clear_water_the_match_to_the_forage_wins()
    {
        Scenario scenario = Water(15, WaterKind.ClearOcean, "chartreuse", "white", "shrimp brown", "black") with
        {
            Forage = [new ForageSighting(ForageKind.Shrimp, null, ForageSeen.Present)],
        };
        ColourAdvice advice = Advise(scenario);
        Assert.Equal(ColourGround.NaturalMatch, advice.Ground);
        Assert.Equal("shrimp brown", advice.Colours[advice.Chosen].Name);
        Assert.Equal(0, advice.Colours[advice.Chosen].DifferenceToForage, 1e-9);
        Assert.True(advice.PracticeAgrees);
    }

    [Fact]
    public void The_colour_of_the_forage_counts()
    {
        Scenario scenario = Water(15, WaterKind.ClearOcean, "chartreuse", "white", "shrimp brown", "black") with
        {
            Forage = [new ForageSighting(ForageKind.Shrimp, null, ForageSeen.Present, "white")],
        };
        Assert.Equal("white", Advise(scenario).Colours[Advise(scenario).Chosen].Name);
    }

    [Fact]
    public void In_murky_water_the_choice_is_seen_nearly_as_far_as_the_best()
    {
        ColourAdvice advice = Advise(Water(0.4, WaterKind.Silty, "natural silver side", "natural green back", "white", "chartreuse", "black"));
        double best = advice.Colours.Max(c => c.Swath);
        Assert.Equal(best, advice.Colours[advice.Farthest].Swath);
        Assert.True(advice.Colours[advice.Chosen].Swath >= ColourAdvice.NearlyAsFar * best);
        Assert.All(advice.Colours.Where(c => c.Swath >= ColourAdvice.NearlyAsFar * best), c => Assert.True(c.DifferenceToForage >= advice.Colours[advice.Chosen].DifferenceToForage));
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
