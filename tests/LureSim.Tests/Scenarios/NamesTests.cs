using LureSim.Light;
using LureSim.Scenarios;
using LureSim.Sight;

namespace LureSim.Tests.Scenarios;

/// <summary>What the reader lets through, the model must know.</summary>
public class NamesTests
{
    [Fact]
    public void Every_colour_name_is_a_ready_made_colour() =>
        Assert.All(ColourNames.All, name => Assert.True(LureColours.TryFind(name, out _), name));

    [Fact]
    public void Every_target_fish_has_eyes() =>
        Assert.All(TargetFishNames.All, name => Assert.True(FishEyes.TryFind(name, out _), name));
}
