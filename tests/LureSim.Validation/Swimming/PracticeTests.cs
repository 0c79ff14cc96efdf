using LureSim.Swimming;
using LureSim.Swimming.Bodies;

namespace LureSim.Validation.Swimming;

/// <summary>What the trade says about rigging (common practice, no source) against the model. The lures are invented.</summary>
public class PracticeTests
{
    private const string Area = "Action: practice";
    private const string Source = "common practice";
    private const double Degree = 180 / Math.PI;

    [Fact]
    public void A_paddle_tail_swims_from_slow_to_fast()
    {
        foreach (double speed in new[] { 0.3, 0.6, 1.2 })
        {
            ActionReport r = Paddle(0.4, speed);
            ValidationLog.Says(
                CheckClass.CommonPractice, Area, FormattableString.Invariant($"paddle tail at {speed} m/s"), Source, "swims", FormattableString.Invariant($"{r.Verdict}, tail {r.TailAmplitude * Degree:F0} deg to each side").ToLowerInvariant(), r.Verdict == ActionVerdict.Swims);
        }
    }

    // Practice and model part at a crawl: with vortices no stronger than those of a round cylinder (C_L0 0.3) the tail swings at 0.15 m/s, but by less than the 8 degrees that count as swimming.
    [Fact]
    public void A_paddle_tail_beats_at_a_crawl()
    {
        ActionReport r = Paddle(0.4, 0.15);
        ValidationLog.Says(
            CheckClass.CommonPractice, Area, "paddle tail at 0.15 m/s", Source, "swims; the model finds a small beat", FormattableString.Invariant($"{r.Verdict}, tail {r.TailAmplitude * Degree:F0} deg to each side").ToLowerInvariant(), r.TailAmplitude > 2 * ActionReport.Noticeable);
    }

    [Fact]
    public void Too_long_a_shank_mutes_a_paddle_tail()
    {
        ActionReport right = Paddle(0.5, 0.4), wrong = Paddle(0.85, 0.4);
        ValidationLog.Says(
            CheckClass.CommonPractice, Area, "shank 85 % of the length against 50 %", Source, "muted", FormattableString.Invariant($"{wrong.Verdict}, tail {wrong.TailAmplitude * Degree:F1} against {right.TailAmplitude * Degree:F0} deg").ToLowerInvariant(), wrong.Verdict == ActionVerdict.Muted && right.Verdict == ActionVerdict.Swims);
    }

    [Fact]
    public void A_crooked_soft_jerkbait_spins_and_a_straight_one_does_not()
    {
        foreach ((double speed, double bend) in new[] { (0.6, 20.0), (0.9, 10.0) })
        {
            ActionReport straight = Jerkbait(0, speed), crooked = Jerkbait(bend, speed);
            ValidationLog.Says(
                CheckClass.CommonPractice, Area, FormattableString.Invariant($"straight soft jerkbait at {speed} m/s"), Source, "does not spin", FormattableString.Invariant($"{straight.Verdict}, {straight.LineTwistsPerMetre:F3} twists a metre").ToLowerInvariant(), straight.Verdict != ActionVerdict.Spins);
            ValidationLog.Says(
                CheckClass.CommonPractice, Area, FormattableString.Invariant($"soft jerkbait bent by {bend:0} degrees at {speed} m/s"), Source, "spins", FormattableString.Invariant($"{crooked.Verdict}, {crooked.LineTwistsPerMetre:F1} twists a metre").ToLowerInvariant(), crooked.Verdict == ActionVerdict.Spins);
        }

        // A heavier hook below holds it up longer.
        Assert.True(Onset(20, 3e-3) > Onset(20, 1.2e-3), FormattableString.Invariant($"{Onset(20, 3e-3)} against {Onset(20, 1.2e-3)} m/s"));
    }

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(20)]
    public void A_crooked_soft_jerkbait_spins_from_a_speed_on(double bend)
    {
        // The one place that this figure comes from: the docs point to this row. Towed at speeds 0.1 m/s apart.
        double onset = Onset(bend, 1.2e-3);
        ValidationLog.Says(
            CheckClass.CommonPractice, Area, FormattableString.Invariant($"soft jerkbait bent by {bend:0} degrees: speed at which it first spins (steps of 0.1 m/s)"), Source, "at some speed of a retrieve", FormattableString.Invariant($"{onset:F1} m/s"), !double.IsNaN(onset));
    }

    [Fact]
    public void A_loop_knot_gives_a_twitched_bait_more_action_than_a_snug_one()
    {
        TowInput twitches = TowInput.Twitching(stroke: 0.2, repeats: 3);
        var options = new ActionOptions { Duration = twitches.Strokes[^1].End + 1, Tolerance = 1e-3, OutputInterval = 0.01 };
        EnsembleAssessment loop = ActionEnsemble.Assess(Twitchbait(), Knot.Loop(), twitches, options);
        double free = loop.Of(Heading).Median;
        Assert.Equal(ActionVerdict.Darts, loop.Verdict);
        foreach (double diameter in new[] { 0.4e-3, 0.6e-3, 0.8e-3 })
        {
            // Medians of a dozen tries: a single twitch hangs on its start.
            double held = ActionEnsemble.Assess(Twitchbait(), Knot.Snug(diameter), twitches, options).Of(Heading).Median;
            ValidationLog.Says(
                CheckClass.CommonPractice, Area, FormattableString.Invariant($"twitched hard bait, snug knot on {1000 * diameter:0.0} mm leader"), Source, "turns less than on a loop", FormattableString.Invariant($"{held * Degree:F0} against {free * Degree:F0} deg, medians of a dozen tries"), held < free);
        }
    }

    [Fact]
    public void A_loop_knot_gives_more_action_on_the_fall()
    {
        ActionReport loop = LureActionModel.Assess(ActionBodies.PaddleTail(), Knot.Loop(), TowInput.SlackFall()).Report;
        ActionReport snug = LureActionModel.Assess(ActionBodies.PaddleTail(), Knot.Snug(0.6e-3), TowInput.SlackFall()).Report;
        ValidationLog.Says(
            CheckClass.CommonPractice, Area, "falling paddle tail, snug knot on 0.6 mm leader", Source, "rocks less than on a loop", FormattableString.Invariant($"{snug.YawAmplitude * Degree:F0} against {loop.YawAmplitude * Degree:F0} deg, tail {snug.TailAmplitude * Degree:F0} against {loop.TailAmplitude * Degree:F0}"), snug.YawAmplitude < 0.6 * loop.YawAmplitude);
    }

    private static double Onset(double bend, double hookMass) =>
        Enumerable.Range(2, 14).Select(i => i / 10.0).FirstOrDefault(speed => Jerkbait(bend, speed, hookMass).Verdict == ActionVerdict.Spins, double.NaN);

    private static double Heading(ActionReport r) => r.Darts.Average(d => Math.Abs(d.Heading));

    private static ActionReport Paddle(double shank, double speed) =>
        LureActionModel.Assess(ActionBodies.PaddleTail(shank), Knot.Loop(), TowInput.Steady(speed, Math.Atan2(0.05, 0.02 + (0.2 * speed * speed)))).Report;

    private static ActionReport Jerkbait(double bend, double speed, double hookMass = 1.2e-3) =>
        LureActionModel.Assess(
            ActionBodies.Soft(length: 0.125, height: 0.0155, width: 0.0145, headMass: 0, density: 1040, hookMass: hookMass, tailFin: 0.006, ballastDrop: 0.006)
                with
            { Bend = new(bend / Degree, 0.6, 0) },
            Knot.Loop(),
            TowInput.Steady(speed),
            new() { Duration = 8, SettlingTime = 3 }).Report;

    private static ActionBody Twitchbait() =>
        ActionBodies.Soft(length: 0.10, height: 0.02, width: 0.012, headMass: 0, density: 980, hookMass: 2e-3, tailFin: 0.012, ballastDrop: 0.007);
}
