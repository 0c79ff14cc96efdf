using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

public class DemoScenarioTests
{
    public static TheoryData<string> Files => [.. Repository.Scenarios().Select(path => Path.GetFileName(path)!)];

    [Fact]
    public void All_demo_scenarios_are_there() =>
        Assert.Equal(
            ["bridge-channel.yaml", "creek-mouth.yaml", "dock-dusk.yaml", "dock-shade.yaml", "grass-flat.yaml", "inlet-cut.yaml", "marsh-ledge.yaml", "pass-edge.yaml", "rigging-lesson.yaml", "rock-jetty.yaml", "silty-marsh-edge.yaml", "two-rigs.yaml"],
            Repository.Scenarios().Select(Path.GetFileName));

    [Theory]
    [MemberData(nameof(Files))]
    public void A_demo_scenario_is_valid_and_in_range(string file)
    {
        ScenarioReading reading = ScenarioReader.Read(Repository.File("scenarios", file));
        Assert.True(reading.IsValid, string.Join('\n', reading.Problems));
        ScenarioRanges.Assert(reading.Scenario!);
        Assert.True(reading.Scenario!.Presentations.Count >= (file is "rigging-lesson.yaml" or "pass-edge.yaml" ? 1 : 3));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_demo_scenario_tells_editors_its_schema(string file)
    {
        string first = File.ReadLines(Repository.File("scenarios", file)).First();
        const string prefix = "# yaml-language-server: $schema=";
        Assert.StartsWith(prefix, first, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(Repository.File("scenarios"), first[prefix.Length..])));
    }

    [Fact]
    public void The_grass_flat_asks_about_the_water_just_above_the_grass()
    {
        Spot spot = ScenarioReader.Read(Repository.File("scenarios", "grass-flat.yaml")).Scenario!.Spot;
        Assert.Equal(spot.Depth - spot.GrassHeight, spot.StrikeZone.Bottom, 1e-9);
    }

    [Fact]
    public void The_bridge_channel_asks_about_the_bottom_three_feet()
    {
        Spot spot = ScenarioReader.Read(Repository.File("scenarios", "bridge-channel.yaml")).Scenario!.Spot;
        Assert.Equal(15 * 0.3048, spot.StrikeZone.Top, 1e-9);
        Assert.Equal(spot.Depth, spot.StrikeZone.Bottom, 1e-9);
    }
}
