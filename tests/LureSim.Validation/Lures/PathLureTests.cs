using LureSim.Lures;
using LureSim.Model;
using MathNet.Numerics.Integration;

namespace LureSim.Validation.Lures;

/// <summary>A lure on its path: the water that it carries.</summary>
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

    // Broadside an elliptic disc of half axes a and b carries 4/3 pi a b^2/E(k), k^2 = 1 - b^2/a^2 (Lamb 1932, art. 114; a disc 8/3 a^3); at 45 degrees half of it acts along the path.
    [Fact]
    public void A_spoon_carries_half_the_water_of_an_elliptic_disc()
    {
        var kind = new Spoon();
        LureBody body = kind.Body(0.07, "spoon");
        PathLure spoon = kind.OnPath(JigHead.None(body), body);
        double a = body.Length / 2, b = body.Width / 2;
        double e = GaussLegendreRule.Integrate(angle => Math.Sqrt(1 - ((1 - (b * b / (a * a))) * Math.Sin(angle) * Math.Sin(angle))), 0, Math.PI / 2, 64);
        ValidationLog.Relative(
            CheckClass.SameEquations, Area, "spoon of 7 cm at 45 degrees: volume of water carried", "elliptic disc, 4/3 pi a b^2/E(k) (Lamb 1932, art. 114)",
            0.5 * 4 / 3 * Math.PI * a * b * b / e, spoon.AddedMassCoefficient * spoon.Volume, 0.15, "m3");
    }
}
