using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Validation.Lures;

/// <summary>A lure on its path against figures that were worked elsewhere: the law of its body as the lure uses it, and the water that its head carries.</summary>
public class PathLureTests
{
    private const string Area = "Lures on their path";

    // Without hook and head nothing turns a body nose first: it falls broadside. Sized as the 4:1 spheroid of the worked figures (BodyDragTests).
    [Fact]
    public void A_bare_body_of_four_to_one_falls_broadside_with_the_drag_of_the_law()
    {
        var kind = new SoftJerkbait();
        const double Length = 0.1, Aspect = 4, Viscosity = 1.1e-6;
        double width = Length / Aspect / Math.Sqrt(1.5 * kind.Proportions.Fill);
        var body = new LureBody(kind.Profile, Length, width, width, 1100, "bare");
        PathLure lure = kind.OnPath(new JigHead(0, HeadMetal.Lead, 0, "none"), body);
        double equivalent = Math.Cbrt(Length * Length * Length / (Aspect * Aspect));
        Assert.Equal(Math.PI / 6 * Length * Length * Length / (Aspect * Aspect), lure.Volume, 1e-15);
        Assert.Equal(Math.PI / 2, lure.FallIncidence, 1e-12);
        (double Reynolds, double Cd)[] worked = [(1, 32.9830), (100, 1.84392), (1000, 1.34365), (10000, 1.24028)];
        ValidationLog.WorstRelative(
            CheckClass.SameEquations, Area, "bare soft body 4:1, broadside: drag coefficient, Re 1 to 1e4", "Hoelzer & Sommerfeld 2008, eq. 10, worked elsewhere",
            worked.Select(w => (w.Cd, Coefficient(w.Reynolds))), 2e-5);

        double Coefficient(double reynolds)
        {
            double speed = reynolds * Viscosity / equivalent;
            return lure.DragAreaTimesSpeed(speed, Viscosity, out _) / (speed * Math.PI / 4 * equivalent * equivalent);
        }
    }

    // A ball carries half of what it displaces (Lamb 1932, art. 92): two heads on one body differ by that of their metal.
    [Fact]
    public void A_heavier_head_carries_half_of_what_it_displaces_more()
    {
        var kind = new SoftJerkbait();
        LureBody body = kind.Body(0.08, "body");
        PathLure light = kind.OnPath(new JigHead(0.02, HeadMetal.Lead, 1e-3, "light"), body), heavy = kind.OnPath(new JigHead(0.05, HeadMetal.Lead, 1e-3, "heavy"), body);
        Assert.Equal((0.0, 0.0), (light.FallIncidence, heavy.FallIncidence));
        ValidationLog.Relative(
            CheckClass.SameEquations, Area, "head of 50 g for one of 20 g: volume of water carried more", "sphere, half of what it displaces (Lamb 1932, art. 92)",
            0.5 * 0.03 / 11340, (heavy.AddedMassCoefficient * heavy.Volume) - (light.AddedMassCoefficient * light.Volume), 1e-9, "m3");
    }
}
