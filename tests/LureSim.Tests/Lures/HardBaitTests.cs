using CsCheck;
using LureSim.Coupling;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Tackle;

namespace LureSim.Tests.Lures;

public class HardBaitTests
{
    private const double Viscosity = 1.1e-6;

    private static Gen<LureProperties> Lures { get; } = Gen.Select(Gen.Double[0.04, 0.12], Gen.Double[0.0008, 0.002], Gen.Enum<HardFloat>(), Gen.Bool)
        .Select((length, thickness, kind, spoon) => spoon
            ? TackleBuilder.Lure(new JigHead(0, HeadMetal.Steel, 0, ""), new LureBody(BodyProfile.Spoon, length, thickness, 0.36 * length, 8500, "spoon") { Metal = HeadMetal.Brass })
            : TackleBuilder.Lure(new JigHead(0, HeadMetal.Steel, 0, ""), new LureBody(BodyProfile.HardTwitchbait, length, 0.2 * length, 0.13 * length, 1015, "hard")
            {
                Buoyancy = kind,
                Lip = kind == HardFloat.Floating ? new LipShape(0.2 * length, 0.15 * length, 0.8) : null,
            }));

    [Fact]
    public void Slope_of_the_drag_is_its_derivative() => Gen.Select(Lures, Gen.Double[0.02, 3]).HoldsFor((lure, speed) =>
    {
        foreach (LureProperties l in (LureProperties[])[lure, ActingLure.Of(lure, [0.1, 0.5, 1, 2], [1.1, 1.6, 1.4, 1.3])])
        {
            const double Step = 1e-6;
            double below = l.DragAreaTimesSpeed(speed - Step, Viscosity, out _), above = l.DragAreaTimesSpeed(speed + Step, Viscosity, out _);
            l.DragAreaTimesSpeed(speed, Viscosity, out double slope);
            Assert.Equal((above - below) / (2 * Step), slope, 1e-4 * Math.Abs(slope) + 1e-9);
        }
    });

    // Casting spoons of 10 to 20 g sink at about 0.3 to 0.6 m/s (common practice); a suspending bait hangs.
    [Fact]
    public void Fall_rates_are_those_of_practice()
    {
        var spoon = new LureBody(BodyProfile.Spoon, 0.06, 0.0015, 0.022, 8500, "spoon") { Metal = HeadMetal.Brass };
        Assert.InRange(FreeFall.TerminalSpeed(TackleBuilder.Lure(JigHead.None(spoon), spoon), 1020, Viscosity), 0.3, 0.7);
        var hard = new LureBody(BodyProfile.HardTwitchbait, 0.09, 0.018, 0.012, 1015, "hard") { Buoyancy = HardFloat.Suspending };
        Assert.InRange(FreeFall.TerminalSpeed(TackleBuilder.Lure(JigHead.None(hard), hard), 1015, Viscosity), -1e-6, 1e-6);
        Assert.InRange(FreeFall.TerminalSpeed(TackleBuilder.Lure(JigHead.None(hard), hard with { Density = 940 }), 1015, Viscosity), -0.6, -0.05);
    }

    [Fact]
    public void A_factor_of_one_changes_nothing_and_others_scale_the_drag()
    {
        LureProperties still = SphereLure.Of(0.007, 2000);
        var same = ActingLure.Of(still, [0.2, 0.5, 1], [1, 1, 1]);
        var acting = ActingLure.Of(still, [0.2, 0.6, 1], [1.5, 1.25, 1.1], [1e-4, 3e-4, 2e-4]);
        foreach (double speed in (double[])[0.05, 0.2, 0.5, 1, 2])
            Assert.Equal(still.DragAreaTimesSpeed(speed, Viscosity, out _), same.DragAreaTimesSpeed(speed, Viscosity, out _), 1e-12);
        Assert.Equal(1.5, acting.Factor(0.01));
        Assert.Equal(1.25, acting.Factor(0.6), 1e-12);
        Assert.Equal(1.1, acting.Factor(5), 1e-12);
        Assert.Equal(1e-4, acting.LiftAreaAt(0, out double slope));
        Assert.Equal(0, slope);
        Assert.Equal(3e-4, acting.LiftAreaAt(0.6, out _), 1e-12);
        Assert.Equal(2e-4, acting.LiftAreaAt(5, out _), 1e-12);
        Assert.Equal(0, same.LiftAreaAt(0.5, out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => ActingLure.Of(still, [0.2, 0.5, 1], [1, 1, 1], [0, 0, 1]));
        Assert.Throws<ArgumentException>(() => ActingLure.Of(still, [0.2, 0.5, 1], [1, 1, 1], [0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ActingLure.Of(still, [0.2, 0.5, 1], [1, 1, double.NaN]));
        Assert.Throws<ArgumentException>(() => ActingLure.Of(still, [0.2, 1], [1, 1]));
    }

    // E I of 0.4 mm fluorocarbon at 2 GPa: 2e9 pi/64 x 0.4^4 mm4 = 2.513e-6 N m2; braid of the same strength bends about eighty times more easily.
    [Fact]
    public void Leader_bends_as_a_round_rod_and_braid_as_fibres()
    {
        TackleBox box = Scenarios.TestScenario.Read(Scenarios.TestScenario.Text).Tackle;
        Assert.Equal(2.513e-6, TackleBuilder.BendingStiffness(box), 1e-9);
        Assert.True(TackleBuilder.BendingStiffness(box with { Leader = null }) < 0.02 * TackleBuilder.BendingStiffness(box));
    }

    // A thin plate that slopes forward and down: its points lie at (s cos a, 0, -s sin a), so the product of inertia is + m l^2/12 sin a cos a.
    [Fact]
    public void A_lip_slopes_forward_and_down()
    {
        const double Slope = 0.6, Long = 0.02;
        LureBody body = new TopwaterWalker().Body(0.09, "hard") with { Profile = BodyProfile.HardTwitchbait, Lip = new LipShape(Long, 0.015, Slope) };
        LurePart lip = LureAssembly.Of(JigHead.None(body), body, new Rigging()).Parts.Single(part => part.Role == PartRole.Lip);
        Assert.Equal(lip.Mass * Long * Long / 12 * Math.Sin(Slope) * Math.Cos(Slope), lip.Own.ForwardUp, 1e-15);
        Assert.Equal(-Long / 2 * Math.Cos(Slope), lip.Centre.Aft, 1e-15);
    }
}
