using LureSim.Lures;
using LureSim.Model;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Validation.Swimming;

/// <summary>Hard lures against plates, a flume and practice. The lures are invented.</summary>
public class HardLureTests
{
    private const string Area = "Action: hard lures";
    private const string Practice = "common practice";
    private const double Degree = 180 / Math.PI;

    [Fact]
    public void The_water_of_a_lip_is_that_of_a_rectangular_plate()
    {
        // Coefficients on rho pi/4 a^2 b, a the shorter side (Meyerhoff 1970, as tabulated in DNV-RP-C205, appendix D; from memory).
        foreach ((double ratio, double published) in new[] { (1.0, 0.579), (1.59, 0.704), (2.0, 0.757), (3.17, 0.840) })
        {
            const double Short = 0.012;
            double carried = AddedMass.OfLip(new DivingLip(default, Short * Short * ratio, ratio, 0.8), 1000);
            ValidationLog.Relative(
                CheckClass.FromMemory, Area, FormattableString.Invariant($"water carried by a plate of sides 1 to {ratio}"), "Meyerhoff 1970 in DNV-RP-C205, from memory", published, carried / (1000 * Math.PI / 4 * Short * Short * Short * ratio), 0.08);
        }
    }

    [Fact]
    public void A_wider_lip_is_pressed_nearer_to_its_front()
    {
        // Nippon Suisan Gakkaishi 68:843 (2002), abstract: with the aspect ratio of the lip from 0.3 to 2 the centre of pressure moves to the front at the same attack angle.
        double sine = Math.Sin(0.2), last = 0;
        foreach (double aspect in new[] { 0.3, 0.5, 1, 1.5, 2 })
        {
            double place = LipPlate.CentreOfPressure(sine, aspect);
            ValidationLog.Says(
                CheckClass.Measured, Area, FormattableString.Invariant($"lip of aspect ratio {aspect}, 11 deg: force before the middle"), "flume, Nippon Suisan Gakkaishi 68:843 (2002), abstract", "farther forward than on the narrower", FormattableString.Invariant($"{place:F3} of its length"), place > last);
            last = place;
        }
    }

    [Fact]
    public void A_large_lip_wobbles_and_does_not_roll_over()
    {
        IReadOnlyList<ActionReport> tries = ActionEnsemble.Assess(Bait(0.08, 940, 0.020, 0.015, 45), Knot.Loop(), TowInput.Steady(1), new ActionOptions { Duration = 6, SettlingTime = 2.5 }).Members;
        ValidationLog.Between(CheckClass.CommonPractice, Area, "lip of 3 cm2 on an 80 mm bait at 1 m/s: roll to each side, greatest of a dozen tries", Practice, 5, 60, tries.Max(r => r.RollAmplitude) * Degree, "deg");
        ValidationLog.Between(CheckClass.CommonPractice, Area, "the same: twists of the line", Practice, 0, 0.1, tries.Max(r => Math.Abs(r.LineTwistsPerMetre)), "1/m");
    }

    [Fact]
    public void A_lipped_bait_wobbles_faster_with_speed()
    {
        double last = 0;
        foreach (double speed in new[] { 0.3, 0.6, 1, 1.5 })
        {
            ActionReport r = LureActionModel.Assess(Bait(0.08, 940, 0.012, 0.016, 50), Knot.Loop(), TowInput.Steady(speed)).Report;
            ValidationLog.Says(
                CheckClass.CommonPractice, Area, FormattableString.Invariant($"lip of 1.9 cm2 on an 80 mm bait at {speed} m/s"), Practice, "swims, faster than when slower", FormattableString.Invariant($"{r.Frequency:F1} a second, rolls {r.RollAmplitude * Degree:F0} deg"), r.Frequency > last && r.RollAmplitude > 4 / Degree);
            last = r.Frequency;
        }
    }

    // The share of twitches that go to the other side by 15 degrees or more. Goal of practice: 0.8.
    [Theory]
    [InlineData("sinking 80 mm, lip 8 x 10 mm", 0.08, 1100, 0.008, 0.010, 50, 0.75)]
    [InlineData("suspending 100 mm, lip 12 x 10 mm (goal 0.8)", 0.10, 1015, 0.012, 0.010, 60, 0.6)]
    public void A_twitched_bait_darts_to_each_side_in_turn(string lure, double length, double density, double lipLength, double lipWidth, double angle, double least)
    {
        TowInput twitches = TowInput.Twitching(0.2, 0.15, 0.7, 9, 0.5, 1);
        IReadOnlyList<ActionReport> tries = ActionEnsemble.Assess(Bait(length, density, lipLength, lipWidth, angle), Knot.Loop(), twitches, new ActionOptions { Duration = twitches.Strokes[^1].End + 0.6 }).Members;
        ValidationLog.Between(CheckClass.CommonPractice, Area, $"twitchbait {lure}, twitches of 20 cm on a loop: share that change side", Practice, least, 1, tries.Average(r => r.Alternation));
    }

    private static ActionBody Bait(double length, double density, double lipLength, double lipWidth, double angle)
    {
        LureBody body = new HardTwitchbait().Body(length, "bait") with { Density = density, Lip = new LipShape(lipLength, lipWidth, angle / Degree) };
        return ActionBodyBuilder.Of(JigHead.None(body), body, new Rigging());
    }
}
