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

    [Fact]
    public void A_topwater_walker_walks_on_a_loop()
    {
        var kind = new TopwaterWalker();
        LureBody body = kind.Body(0.1, "walker");
        ActionBody lure = ActionBodyBuilder.Of(JigHead.None(body), body, new Rigging());
        IReadOnlyList<ActionReport> walk = Walks(Knot.Loop()), held = Walks(Knot.Snug());
        ValidationLog.Between(CheckClass.CommonPractice, Area, "topwater walker on a loop, taps of 8 cm: share that goes to the other side than the one before, a dozen tries", Source, 0.8, 1, walk.Average(r => r.Alternation));
        ValidationLog.Between(CheckClass.CommonPractice, Area, "the same: nose to each side", Source, 15, 90, walk.Average(r => r.Darts.Average(d => Math.Abs(d.Heading))) * Degree, "deg");
        ValidationLog.Says(
            CheckClass.CommonPractice, Area, "the same on a snug knot", Source, "walks worse", FormattableString.Invariant($"nose {held.Average(r => r.Darts.Average(d => Math.Abs(d.Heading))) * Degree:F0} deg to a side"), held.Average(r => r.Alternation) < 0.5 * walk.Average(r => r.Alternation));

        ValidationLog.Between(CheckClass.CommonPractice, Area, "topwater walker of 100 mm left alone: rise (practice 0.1 to 0.6 m/s, stated discrepancy)", Source, 0.1, 0.65, -FreeFall.TerminalSpeed(kind.OnPath(JigHead.None(body), body), 1020, 1.1e-6), "m/s");

        IReadOnlyList<ActionReport> Walks(Knot knot) => ActionEnsemble.Assess(lure, knot, TowInput.Tapping(), new ActionOptions { Duration = 8 }).Members;
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
