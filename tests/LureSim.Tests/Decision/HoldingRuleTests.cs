using LureSim.Decision.Holding;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision;

/// <summary>Where fish are taken to hold where nobody says.</summary>
public class HoldingRuleTests
{
    private static readonly Spot Channel = new()
    {
        Depth = 4,
        Salinity = 25,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.8),
        StrikeZone = new StrikeZone(0, 4),
        TargetFish = "red drum",
    };

    public static TheoryData<string, string, double, double, double, string> Cases => new()
    {
        { "summer flounder", "", 20, 45, 4, "flounder-bottom" },
        { "red drum", "", 20, 45, 4, "red-drum" },
        { "red drum", "grass", 20, 45, 2, "over-grass" },
        { "red drum", "edge", 20, 45, 4, "red-drum-edge" },
        { "red drum", "", 31, 45, 4, "heat-deep" },
        { "red drum", "grass", 31, 45, 2, "heat-over-grass" },
        { "spotted seatrout", "", 20, 3, 4, "low-light-up" },
        { "spotted seatrout", "", 20, 45, 4, "seatrout" },
        { "common snook", "overhang", 24, 60, 3, "sun-shade" },
        { "striped bass", "", 8, 45, 4, "cold-deep" },
        { "red drum", "winter mud", 15, 40, 1, "winter-sun-mud" },
        { "weakfish", "clump", 20, 45, 3, "clump-bottom" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_loudest_rule_that_holds_speaks(string fish, string beside, double temperature, double sun, double depth, string rule)
    {
        Spot spot = Channel with
        {
            TargetFish = fish,
            TemperatureCelsius = temperature,
            Sky = new SkyByElevation(sun * Math.PI / 180),
            Depth = depth,
            StrikeZone = new StrikeZone(0, depth),
            GrassHeight = beside == "grass" ? 0.4 : 0,
            Bottom = beside == "winter mud" ? BottomKind.Mud : BottomKind.Sand,
            Profile = beside == "edge" ? new BottomProfile { Points = [new(0, 1), new(10, 1.2), new(14, depth)] } : null,
            Structures = beside switch { "overhang" => [new SpotStructure(StructureKind.Overhang, 5, 9)], "clump" => [new SpotStructure(StructureKind.OysterClump, 5, 9)], _ => [] },
        };
        HoldingRule found = HoldingRule.Of(spot, beside == "winter mud" ? Season.Winter : null);
        Assert.Equal(rule, found.Id);
        StrikeZone zone = found.Zone(spot);
        Assert.InRange(zone.Top, 0, zone.Bottom - 0.1);
        Assert.InRange(zone.Bottom, 0.1, depth);
        Assert.Equal(rule, zone.AssumedBy);
        if (beside == "grass") Assert.Equal(depth - 0.4, zone.Bottom, 1e-12);
    }

    [Fact]
    public void Every_rule_has_a_source_a_sentence_and_a_zone_and_one_holds_for_every_fish()
    {
        string references = File.ReadAllText(Repository.File("docs", "REFERENCES.bib"));
        Assert.Equal(HoldingRule.All.Count, HoldingRule.All.Select(rule => rule.Id).Distinct().Count());
        Assert.All(HoldingRule.All, rule =>
        {
            Assert.True(rule.IsPractice || references.Contains($"{{{rule.Source},", StringComparison.Ordinal), rule.Id);
            Assert.True(rule.Says.Length > 10 && rule.Upper < rule.Lower && rule.Spread is >= 0 and <= 0.5 && rule.Weight > 0, rule.Id);
            Assert.All(rule.Fish, fish => Assert.Contains(fish, LureSim.Scenarios.TargetFishNames.All));
        });
        Assert.Contains(HoldingRule.All, rule => rule.Fish.Count == 0 && rule.Seasons.Count == 0 && rule.Beside.Length == 0 && rule.LowLight is null && rule.LeastTemperature is null && rule.MostTemperature is null);
    }

    [Fact]
    public void A_scenario_without_a_zone_gets_one_and_the_tries_move_it()
    {
        Scenario scenario = TestScenario.Read(TestScenario.Text.Replace("  strike_zone:\n    above_bottom: [1 ft, 4 ft]\n", "", StringComparison.Ordinal).Replace("  grass_height: 1 ft\n", "", StringComparison.Ordinal));
        Assert.Equal("red-drum", scenario.Spot.StrikeZone.AssumedBy);
        IReadOnlyList<UncertainDraw> draws = UncertainDraw.Draw(scenario with { Uncertainty = scenario.Uncertainty with { Depth = Spread.Exact } }, scenario.Presentations[0], 24);
        double[] bottoms = [.. draws.Select(draw => draw.Scenario.Spot.StrikeZone.Bottom)];
        Assert.True(bottoms.Max() - bottoms.Min() > 0.05 * scenario.Spot.Depth);
        Assert.All(draws, draw => Assert.InRange(draw.Scenario.Spot.StrikeZone.Bottom, draw.Scenario.Spot.StrikeZone.Top + 0.1, draw.Scenario.Spot.Depth));

        // A zone that was given stays where it is, and the other inputs are drawn as ever.
        Scenario given = TestScenario.Read(TestScenario.Text);
        IReadOnlyList<UncertainDraw> same = UncertainDraw.Draw(given with { Uncertainty = given.Uncertainty with { Depth = Spread.Exact } }, given.Presentations[0], 24);
        Assert.Single(same.Select(draw => draw.Scenario.Spot.StrikeZone).Distinct());
        Assert.Equal(draws.Select(draw => draw.Values[0]), same.Select(draw => draw.Values[0]));
    }
}
