using LureSim.Coupling;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Tackle;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision;

public class RigCheckerTests
{
    private const string Rigged = """
          rigging: {knot: snug, exit_sideways: 4 mm, bend: -15 deg, shank_share: 80 %}
          colours: [white, dark purple, "#7FFF00"]
        """;

    private static Scenario Plain { get; } = TestScenario.Read(TestScenario.Text);

    private static Scenario Crooked { get; } = TestScenario.Read(TestScenario.With("  colours: [white, dark purple, \"#7FFF00\"]", Rigged));

    private static Rig First(Scenario scenario, int presentation = 0) => new(scenario.Tackle.JigHeads[1], scenario.Tackle.Bodies[0], scenario.Presentations[presentation]);

    [Fact]
    public void Every_lure_is_tried_with_every_presentation_and_the_figures_are_finite()
    {
        RigSheet sheet = RigChecker.Check(Plain, null);
        Assert.Equal(Plain.Tackle.Lures.Count * Plain.Presentations.Count, sheet.Rows.Count);
        Assert.All(sheet.Rows, row =>
        {
            Assert.Equal(SimulationStatus.Completed, row.Retrieve.Trace.Status);
            Assert.InRange(row.ExtraDrag, 0.5, 10);
            Assert.Equal(row.Rig.Presentation.Moves.Any(move => move.Kind == MoveKind.Twitch), row.Twitch is not null);
        });
        Assert.Equal(sheet.Rows[0].Rig, sheet.Focus.Action.Rig);
        Assert.Empty(sheet.Focus.Fixes);
        Assert.Equal(Enum.GetValues<TriedRetrieve>().Length, sheet.Focus.Knots.Count);
        Assert.Empty(sheet.Focus.Faults);
        Assert.NotNull(sheet.Focus.Spin);
        Assert.Null(sheet.Focus.Sweep!.Clean);
    }

    [Fact]
    public void The_same_check_gives_the_same_figures()
    {
        RigAction one = RigChecker.OnRetrieve(Crooked, First(Crooked, 1), null), other = RigChecker.OnRetrieve(Crooked, First(Crooked, 1), null);
        Assert.Equal(one.Retrieve.Trace.Position, other.Retrieve.Trace.Position);
        Assert.Equal(one.Twitch!.Report.DartAngle, other.Twitch!.Report.DartAngle);
        Assert.Equal(one.ExtraDrag, other.ExtraDrag);
    }

    [Fact]
    public void Too_long_a_shank_is_named_as_what_mutes_the_tail()
    {
        Scenario longShank = Plain with { Tackle = Plain.Tackle with { Rigging = new Rigging { ShankShare = 0.85 } } };
        var heavy = new Rig(longShank.Tackle.JigHeads[2], longShank.Tackle.Bodies[0], longShank.Presentations[0]);
        RigFocus focus = RigChecker.Focus(longShank, RigChecker.OnRetrieve(longShank, heavy, null), full: false);
        RigFix fix = Assert.Single(focus.Fixes);
        Assert.Equal(RigFault.Shank, fix.Fault);
        Assert.True(fix.Before.Report.IsFault);
        Assert.Equal(ActionVerdict.Swims, fix.After.Verdict);
        Assert.Null(focus.Sweep);
    }

    [Fact]
    public void A_fault_adds_drag_and_the_drag_reaches_the_path()
    {
        (double[] clean, _) = SwimmingDrag.Of(Plain.Tackle, Plain.Spot, First(Plain).Head, Plain.Tackle.Bodies[1], [0.4, 0.8]);
        (double[] crooked, _) = SwimmingDrag.Of(Crooked.Tackle, Crooked.Spot, First(Crooked).Head, Crooked.Tackle.Bodies[1], [0.4, 0.8]);
        Assert.All(clean, factor => Assert.Equal(1, factor));
        Assert.True(crooked[1] > 1.05, $"{crooked[1]}");
        LureProperties still = TackleBuilder.Lure(First(Crooked).Head, Crooked.Tackle.Bodies[1]);
        LureProperties acting = ActingLures.Of(Crooked.Tackle, Crooked.Spot, First(Crooked).Head, Crooked.Tackle.Bodies[1]);
        Assert.True(acting.DragAreaTimesSpeed(0.8, 1e-6, out _) > 1.05 * still.DragAreaTimesSpeed(0.8, 1e-6, out _));

        Assert.Same(acting, ActingLures.Of(Crooked.Tackle, Crooked.Spot, First(Crooked).Head, Crooked.Tackle.Bodies[1]));
    }

    [Fact]
    public void The_line_holds_up_in_fresh_water_what_it_holds_down_in_the_sea()
    {
        // Neutral at 1010 kg/m3: 10 cm3, drag area 1 cm2. By hand at 0.5 m/s in fresh water (1000 kg/m3): weight 1e-4 kg g, drag 0.0125 N.
        var lure = new ConstantDragLure { Mass = 0.0101, Volume = 1e-5, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = 1e-4 };
        Assert.Equal(Math.Atan(1e-4 * 9.80665 / 0.0125), RigWindow.HeldElevation(lure, 1000, 1e-6, 0.5), 1e-9);
        Assert.Equal(0, RigWindow.HeldElevation(lure, 1010, 1e-6, 0.5), 1e-9);
        Assert.InRange(RigWindow.HeldElevation(lure, 1025, 1e-6, 0.5), -0.12, -0.11);
    }

    [Fact]
    public void Action_is_that_of_the_spot_s_own_water()
    {
        LureBody suspending = TestScenario.Read(TestScenario.With("{profile: paddle tail, length: 3.5 in}", "{profile: hard twitchbait, length: 4 in}")).Tackle.Bodies[0];
        Spot fresh = Plain.Spot with { Salinity = 0 }, sea = Plain.Spot with { Salinity = 35 };
        JigHead none = JigHead.None(suspending);
        (_, double[] inFresh) = SwimmingDrag.Of(Plain.Tackle, fresh, none, suspending, [0.2]);
        (_, double[] inSea) = SwimmingDrag.Of(Plain.Tackle, sea, none, suspending, [0.2]);
        Assert.NotEqual(inFresh[0], inSea[0], 1e-6);
        Assert.NotSame(ActingLures.Of(Plain.Tackle, fresh, none, suspending), ActingLures.Of(Plain.Tackle, sea, none, suspending));
        Assert.Same(ActingLures.Of(Plain.Tackle, sea, none, suspending), ActingLures.Of(Plain.Tackle, sea with { Depth = 30 }, none, suspending));
    }

    [Fact]
    public void Words_name_what_is_seen_and_no_more()
    {
        var spins = new ActionReport { Verdict = ActionVerdict.Spins, Findings = [], SpinRate = -1.26, LineTwistsPerMetre = 2.04, Frequency = 3, RollAmplitude = 1 };
        Assert.Equal("spins: 1.3 turns a second, 2 twists in every metre of line", SwimmingWords.Line(spins, UnitSystem.Metric));
        Assert.Equal("spins: 1.3 turns a second, 6 twists in every 10 ft of line", SwimmingWords.Line(spins, UnitSystem.Us));
        DartResult dart = new(0, 0.4, 0.4, 0.3, 0.1, 0.2);
        Assert.StartsWith("darts: 23° off the line, ", SwimmingWords.Line(new ActionReport { Verdict = ActionVerdict.Darts, Findings = [], Darts = [dart], DartAngle = 0.4 }, UnitSystem.Us), StringComparison.Ordinal);
        Assert.StartsWith("glides: darts 23° off the line, ", SwimmingWords.Line(new ActionReport { Verdict = ActionVerdict.Glides, Findings = [], Darts = [dart], DartAngle = 0.4 }, UnitSystem.Us), StringComparison.Ordinal);
        Assert.Equal("tracks straight", SwimmingWords.Line(new ActionReport { Verdict = ActionVerdict.Still, Findings = [], Frequency = 4 }, UnitSystem.Us));
        Assert.True(spins.IsFault);
        Assert.All(Enum.GetValues<ActionVerdict>(), verdict => Assert.NotEmpty(SwimmingWords.Word(verdict)));
    }
}
