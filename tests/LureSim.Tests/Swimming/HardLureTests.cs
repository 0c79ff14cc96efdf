using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Tests.Swimming;

/// <summary>Parts of hard lures: the lip as a plate, hooks on rings, the surface.</summary>
public class HardLureTests
{
    private const double Rho = 1020;

    [Fact]
    public void A_lip_resists_a_roll_and_takes_no_force_in_its_plane()
    {
        ActionBody body = Bait();
        var lip = new Lip(body, body.Lip!, TowInput.Steady(1), null);
        Wrench still = At(lip, default), rolling = At(lip, new(10, 0, 0)), other = At(lip, new(-10, 0, 0));
        Assert.Equal(0, still.Moment.X, 1e-12);
        Assert.True(rolling.Moment.X < -1e-6 && other.Moment.X > 1e-6);
        Assert.Equal(0, Vector3d.Dot(rolling.Force, body.Lip!.Axes.Along), 1e-12);
        Assert.Equal(0, Vector3d.Dot(rolling.Force, body.Lip.Axes.Across), 1e-12);
    }

    [Fact]
    public void The_force_stands_before_the_middle_and_nearer_to_it_the_more_the_plate_stands_across()
    {
        Assert.Equal(0.25, LipPlate.CentreOfPressure(0, 1), 1e-3);
        Assert.Equal(0, LipPlate.CentreOfPressure(1, 1), 1e-9);
        for (double a = 0.05; a < 1.5; a += 0.05)
            Assert.True(LipPlate.CentreOfPressure(Math.Sin(a), 1) > LipPlate.CentreOfPressure(Math.Sin(a + 0.05), 1) - 0.03);
    }

    [Fact]
    public void Water_of_the_lip_stands_in_the_matrix_at_its_place()
    {
        ActionBody body = Bait();
        double with = AddedMass.OfLipAbout(body.Lip!, Rho)[4, 4], carried = AddedMass.OfLip(body.Lip!, Rho);
        Vector3d lever = Vector3d.Cross(body.Lip!.Position, body.Lip.Axes.Normal);
        Assert.True(with > carried * lever.Y * lever.Y);
        Assert.True(with < 1.2 * carried * lever.Y * lever.Y);
    }

    [Fact]
    public void Hooks_on_rings_do_not_follow_a_roll()
    {
        LureBody bait = new HardTwitchbait().Body(0.08, "bait");
        LureAssembly held = LureAssembly.Of(JigHead.None(bait), bait, new Rigging()), free = held.Swung;
        Assert.Equal(held.Mass, free.Mass);
        Assert.True(free.InertiaAboutMassCentre.Roll < 0.7 * held.InertiaAboutMassCentre.Roll);
        Assert.True(free.MassCentre.Up > held.MassCentre.Up);
    }

    [Fact]
    public void A_slice_at_the_surface_is_half_wet()
    {
        BodyMotion motion = new() { Up = new(0, 0, 1), Velocity = default, TurnRate = default, SurfaceAbove = 0 };
        Assert.Equal(0.5, motion.Wet(default, 0.01), 1e-12);
        Assert.Equal(1, motion.Wet(new(0, 0, -0.02), 0.01), 1e-12);
        Assert.Equal(0, motion.Wet(new(0, 0, 0.02), 0.01), 1e-12);
        Assert.Equal(1, (motion with { SurfaceAbove = null }).Wet(new(0, 0, 5), 0.01));
    }

    [Fact]
    public void A_walker_at_rest_stays_at_rest()
    {
        LureBody body = new TopwaterWalker().Body(0.1, "walker");
        ActionBody lure = ActionBodyBuilder.Of(JigHead.None(body), body, new Rigging());
        FloatingRest rest = FloatingRest.Of(lure, TowInput.Tapping())!.Value;
        Assert.True(rest.Pitch > 0.3, "it does not hang by its tail");
        ActionTrace trace = Towing.Simulate(lure, Knot.Loop(), TowInput.Tapping() with { Strokes = [] }, new ActionOptions { Duration = 1, InitialYaw = 0, InitialRoll = 0 });
        Assert.All(trace.Position, p => Assert.True(p.Length < 1e-3));
    }

    [Fact]
    public void A_line_that_hangs_slack_is_taken_up()
    {
        ActionBody body = Bait();
        TowInput slack = new() { InitialSlack = 0.3, TakeUp = 0.6, SlackLeft = 0.1 };
        ActionTrace taken = Towing.Simulate(body, Knot.Loop(), slack, new ActionOptions { Duration = 1 }), left = Towing.Simulate(body, Knot.Loop(), slack with { TakeUp = 0 }, new ActionOptions { Duration = 1 });
        Assert.InRange(taken.LineEnd[^1].X - left.LineEnd[^1].X, 0.15, 0.25);
    }

    [Theory]
    [InlineData(null, "swims from 3.3 ft/s up to 6.6 ft/s and more")]
    [InlineData(ActionVerdict.Spins, "swims from 3.3 ft/s to 6.6 ft/s; above that it rolls over")]
    [InlineData(ActionVerdict.Muted, "swims from 3.3 ft/s to 6.6 ft/s; above that it hardly moves")]
    public void The_range_of_speeds_is_said(ActionVerdict? above, string text)
    {
        Assert.Equal(text, SwimmingWords.Range(new SwimRange([0.5, 1, 2], [], 1, 2, above), UnitSystem.Us));
    }

    [Fact]
    public void The_widest_stretch_is_taken()
    {
        SwimRange range = SwimRange.Of(Bait(), Knot.Loop(), TowInput.Steady(1), [0.6, 1, 1.5], 1);
        Assert.Equal(3, range.Verdicts.Count);
        Assert.Equal(range.Verdicts.Contains(ActionVerdict.Swims), range.To > 0);
    }

    private static ActionBody Bait()
    {
        LureBody body = new HardTwitchbait().Body(0.08, "bait") with { Density = 940, Buoyancy = HardFloat.Floating, Lip = new LipShape(0.012, 0.016, 0.87) };
        return ActionBodyBuilder.Of(JigHead.None(body), body, new Rigging());
    }

    private static Wrench At(IForce force, Vector3d turn)
    {
        Wrench sum = default;
        force.AddTo(new BodyMotion { Up = new(0, 0, 1), Velocity = new(1, 0, 0), TurnRate = turn }, ref sum);
        return sum;
    }
}
