using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Validation.Lures;

/// <summary>A lure on its path: the water that its head carries.</summary>
public class PathLureTests
{
    private const string Area = "Lures on their path";

    // A ball carries half of what it displaces (Lamb 1932, art. 92): two heads on one body differ by that of their metal.
    [Fact]
    public void A_heavier_head_carries_half_of_what_it_displaces_more()
    {
        var kind = new PaddleTail();
        LureBody body = kind.Body(0.08, "body");
        PathLure light = kind.OnPath(new JigHead(0.02, HeadMetal.Lead, 1e-3, "light"), body), heavy = kind.OnPath(new JigHead(0.05, HeadMetal.Lead, 1e-3, "heavy"), body);
        Assert.Equal((0.0, 0.0), (light.FallIncidence, heavy.FallIncidence));
        ValidationLog.Relative(
            CheckClass.SameEquations, Area, "head of 50 g for one of 20 g: volume of water carried more", "sphere, half of what it displaces (Lamb 1932, art. 92)",
            0.5 * 0.03 / 11340, (heavy.AddedMassCoefficient * heavy.Volume) - (light.AddedMassCoefficient * light.Volume), 1e-9, "m3");
    }
}
