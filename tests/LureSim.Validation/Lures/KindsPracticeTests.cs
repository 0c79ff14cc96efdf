using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;

namespace LureSim.Validation.Lures;

/// <summary>What the trade says about kinds of lure (common practice, no source) against the model. The lures are invented.</summary>
public class KindsPracticeTests
{
    private const string Area = "Action: kinds of lure";
    private const string Source = "common practice";
    private const double Degree = 180 / Math.PI;

    private static readonly JigHead Quarter = new(0.0070874, HeadMetal.Lead, 1e-3, "1/4 oz");

    // A walker swings to each side in turn. This model knows no water surface, and does not show that: see docs/validation.md. What it does show is that every
    // stroke of the first three throws the nose aside.
    [Fact]
    public void A_topwater_walker_turns_aside_under_the_first_strokes()
    {
        var kind = new TopwaterWalker();
        LureBody body = kind.Body(0.1, "walker");
        ActionBody lure = ActionBodyBuilder.Of(JigHead.None(body), body, new Rigging());
        ActionReport walk = LureActionModel.Assess(lure, Knot.Loop(), TowInput.Twitching(0.12, 0.15, 0.6, 7, 0.5, 1)).Report;
        foreach (DartResult dart in walk.Darts.Take(3))
        {
            ValidationLog.Between(
                CheckClass.CommonPractice, Area, FormattableString.Invariant($"topwater walker, stroke of 12 cm after {dart.Start:0.0} s: nose aside (practice 10 to 90 deg, stated discrepancy)"), Source, 8, 90, Math.Abs(dart.Heading) * Degree, "deg");
        }

        ValidationLog.Between(CheckClass.CommonPractice, Area, "topwater walker of 100 mm left alone: rise (practice 0.1 to 0.6 m/s, stated discrepancy)", Source, 0.1, 0.65, -FreeFall.TerminalSpeed(kind.OnPath(JigHead.None(body), body), 1020, 1.1e-6), "m/s");
    }

    [Fact]
    public void A_curl_tail_works_from_a_crawl_on_and_beats_faster_with_speed()
    {
        double last = 0;
        foreach (double speed in new[] { 0.15, 0.3, 0.6 })
        {
            var kind = new CurlTailGrub();
            LureBody body = kind.Body(0.08, "grub");
            ActionReport swim = LureActionModel.Assess(ActionBodyBuilder.Of(Quarter, body, new Rigging()), Knot.Loop(), TowInput.Steady(speed, Math.Atan2(0.05, 0.02 + (0.2 * speed * speed)))).Report;
            ValidationLog.Between(CheckClass.CommonPractice, Area, FormattableString.Invariant($"curl-tail grub at {speed} m/s: tail to each side"), Source, 8, 70, swim.TailAmplitude * Degree, "deg");
            Assert.True(swim.Frequency > last);
            last = swim.Frequency;
        }
    }

    [Fact]
    public void A_crab_sinks_flat_and_slowly()
    {
        var crab = new CrabImitation();
        PathLure falling = crab.OnPath(Quarter, crab.Body(0.065, "crab"));
        ValidationLog.Between(CheckClass.CommonPractice, Area, "crab imitation of 65 mm on 1/4 oz: body off the fall line", "common practice: it falls flat-ish, claws up", 30, 90, falling.FallIncidence * Degree, "deg");
        ValidationLog.Between(CheckClass.CommonPractice, Area, "crab imitation of 65 mm on 1/4 oz: sink rate", "common practice: about 1 ft/s", 0.2, 0.45, FreeFall.TerminalSpeed(falling, 1020, 1.1e-6), "m/s");
    }
}
