using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Validation.Sight;

/// <summary>What anglers say (common practice, no source) against what the optics give. Where practice does not hold, the test states what holds instead.</summary>
public class CommonPracticeTests
{
    private static readonly FishEye Drum = FishEyes.All.Single(e => e.CommonName == "red drum");

    private static readonly LureColour[] Known = [LureColours.White, LureColours.Chartreuse, LureColours.Yellow, LureColours.Green, LureColours.Red];

    private static string[] Order(WaterKind kind, double secchi, double depth, ViewDirection direction, params LureColour[] colours)
    {
        var field = new LightField(OpticalWater.FromSecchi(kind, secchi), Atmosphere.Illuminate(50.0));
        return [.. new SightScene(field, Drum, direction, depth).Rank(colours).Select(s => s.Name)];
    }

    [Fact]
    public void Stained_water_seen_level_white_then_chartreuse_then_yellow()
    {
        // Practice: white holds longest in dirty water, then chartreuse, then green and yellow. It holds for the light colours among
        // themselves; red comes between them as a dark shape.
        string[] order = Order(WaterKind.TanninStained, 1.0, 1.0, ViewDirection.Level, Known);
        Assert.Equal(["white", "chartreuse"], order.Take(2));
        Assert.Equal(["white", "chartreuse", "yellow", "green"], order.Where(name => name != "red"));
    }

    [Fact]
    public void Silty_water_seen_level_the_dark_lure_wins()
    {
        // Practice for dirty water holds in its other half: silt makes the water as bright as a white lure, which hides it,
        // and the darkest lure gives the strongest shape.
        Assert.Equal("black", Order(WaterKind.Silty, 0.5, 1.0, ViewDirection.Level, [.. Known, LureColours.Black])[0]);
    }

    [Theory]
    [InlineData(WaterKind.ClearOcean, 20.0, 3.0)]
    [InlineData(WaterKind.CoastalGreen, 3.0, 2.0)]
    [InlineData(WaterKind.TanninStained, 1.0, 1.0)]
    [InlineData(WaterKind.Silty, 0.5, 1.0)]
    public void Seen_from_below_the_darkest_lure_stands_out_most(WaterKind kind, double secchi, double depth) =>
        Assert.Equal("black", Order(kind, secchi, depth, ViewDirection.Up, [.. Known, LureColours.Black])[0]);

    [Fact]
    public void In_clear_water_black_stands_out_beside_a_natural_bait()
    {
        // Practice: in clear water a black lure stands out sharply beside natural bait. The silver side mirrors the water.
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.ClearOcean, 20.0), Atmosphere.Illuminate(50.0));
        var scene = new SightScene(field, Drum, ViewDirection.SlantUp, 3.0);
        Assert.True(scene.Sight(LureColours.Black).Distance > scene.Sight(LureColours.NaturalSilverSide).Distance);
    }

    [Fact]
    public void In_stained_water_red_loses_less_than_green_and_blue()
    {
        // Against practice ('red goes first'): dissolved matter takes blue and green, so beside white red gains by half there.
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.TanninStained, 1.0), Atmosphere.Illuminate(50.0));
        var chart = ColourChart.Of(field, [LureColours.Red, LureColours.Green, LureColours.Blue], [0.0, 2.0]);
        double Kept(int colour) => chart[1, colour].RelativeLuminance / chart[0, colour].RelativeLuminance;
        Assert.InRange(Kept(0), 1.4, 1.6);
        Assert.True(Kept(1) < 1.0);
        Assert.True(Kept(2) < 1.1);
    }
}
