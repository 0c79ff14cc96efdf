using LureSim.Decision.Inverse;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision.Inverse;

public class InverseQuestionsTests
{
    private static readonly SimulationOptions Quick = Trial.Coarse(new SimulationOptions());
    private static readonly ParallelOptions Parallel = new();
    private static readonly Scenario Bridge = ScenarioReader.Read(Repository.File("scenarios", "bridge-channel.yaml")).Scenario!;
    private static readonly Presentation Slow = Bridge.Presentations.Single(p => p.Name == "slow along the bottom");

    private static InverseAnswer Head(double current) =>
        InverseQuestions.HeadForBottom(Bridge with { Spot = Bridge.Spot with { CurrentSpeed = current } }, Bridge.Tackle.Bodies[0], Slow, Quick, Parallel);

    private static double Share(double mass) => InverseQuestions.BottomShare(Bridge, InverseQuestions.HeadOf(Bridge, mass), Bridge.Tackle.Bodies[0], Slow, Quick);

    [Fact]
    public void The_lightest_holding_head_holds_and_a_lighter_one_does_not()
    {
        InverseAnswer answer = Head(Bridge.Spot.CurrentSpeed);
        Assert.Equal(InverseStatus.Found, answer.Status);
        double mass = answer.Value!.Value;
        Assert.True(Share(1.04 * mass) >= InverseQuestions.HoldingShare);
        Assert.True(Share(0.96 * mass) < InverseQuestions.HoldingShare);

        // The nearest common size and the head of the box follow from it.
        Assert.Equal(CommonWeights.All.First(w => w >= mass), answer.Common);
        Assert.Equal(Bridge.Tackle.JigHeads.Where(h => h.Mass >= mass).MinBy(h => h.Mass), answer.Owned);
    }

    [Fact]
    public void More_current_needs_more_weight()
    {
        double[] weights = [.. new[] { 0.1, 0.3, 0.6 }.Select(c => Head(c).Value!.Value)];
        Assert.True(weights[1] > 1.1 * weights[0] && weights[2] > 1.1 * weights[1], string.Join(", ", weights));
    }

    [Fact]
    public void Time_on_the_bottom_does_not_fall_with_weight()
    {
        // The table of weights finds its answer by halving, which needs this.
        double[] shares = [.. CommonWeights.All.Select(Share)];
        for (int i = 1; i < shares.Length; i++) Assert.True(shares[i] >= shares[i - 1] - 0.01, $"{shares[i - 1]} then {shares[i]}");
    }

    [Fact]
    public void What_cannot_be_is_an_answer_with_a_reason()
    {
        // No common head gets down 40 m in a strong current before the line is out.
        Scenario race = Bridge with { Spot = Bridge.Spot with { Depth = 40, CurrentSpeed = 3, StrikeZone = new StrikeZone(39, 40) } };
        InverseAnswer head = InverseQuestions.HeadForBottom(race, race.Tackle.Bodies[0], Slow, Quick, Parallel);
        Assert.Equal(InverseStatus.NotReachable, head.Status);
        Assert.Null(head.Value);
        Assert.NotEqual(InverseReason.None, head.Reason);
        var rig = new Rig(race.Tackle.JigHeads[1], race.Tackle.Bodies[0], Slow);
        InverseAnswer count = InverseQuestions.CountDownForZone(race, rig, Quick);
        Assert.Equal(InverseStatus.NotReachable, count.Status);
        Assert.Equal(InverseReason.SinksNoDeeperSlack, count.Reason);
        InverseAnswer speed = InverseQuestions.SpeedForDepth(race, rig, null, Quick, Parallel);
        Assert.Equal(InverseStatus.NotReachable, speed.Status);
        Assert.Equal(InverseReason.SlowestRunsAbove, speed.Reason);
    }

    [Fact]
    public void At_the_speed_found_the_lure_runs_at_the_depth_asked_for()
    {
        var rig = new Rig(Bridge.Tackle.JigHeads.Single(h => h.Label == "1/2 oz"), Bridge.Tackle.Bodies[0], Slow);
        InverseAnswer answer = InverseQuestions.SpeedForDepth(Bridge, rig, 4.5, Quick, Parallel);
        Assert.Equal(InverseStatus.Found, answer.Status);
        Coverage there = Trial.Run(Bridge, rig with { Presentation = Slow with { RetrieveSpeed = answer.Value!.Value } }, Quick).Coverage;
        Assert.Equal(4.5, there.MedianDepth, 0.05);
        Assert.Throws<ArgumentOutOfRangeException>(() => InverseQuestions.SpeedForDepth(Bridge, rig, 99, Quick, Parallel));
    }

    [Fact]
    public void After_the_count_found_the_lure_is_in_the_middle_of_the_zone()
    {
        Scenario midwater = Bridge with { Spot = Bridge.Spot with { StrikeZone = new StrikeZone(2, 3) } };
        var rig = new Rig(Bridge.Tackle.JigHeads.Single(h => h.Label == "1/4 oz"), Bridge.Tackle.Bodies[0], Slow);
        InverseAnswer answer = InverseQuestions.CountDownForZone(midwater, rig, Quick);
        Assert.Equal(InverseStatus.Found, answer.Status);
        Assert.True(answer.From < answer.Value && answer.Value < answer.To);
        Track track = Trial.Run(midwater, rig with { Presentation = Slow with { CountDown = answer.Value } }, Quick).Track;
        int sample = (int)Math.Round(answer.Value!.Value / (track.Time[1] - track.Time[0]));
        Assert.Equal(2.5, track.Depth(sample), 0.1);
    }

    [Fact]
    public void In_still_shallow_water_any_head_holds()
    {
        Scenario pond = Bridge with { Spot = Bridge.Spot with { Depth = 1, CurrentSpeed = 0, StrikeZone = new StrikeZone(0.5, 1) } };
        InverseAnswer answer = InverseQuestions.HeadForBottom(pond, pond.Tackle.Bodies[0], Slow, Quick, Parallel);
        Assert.Equal(InverseStatus.AnyWillDo, answer.Status);
        Assert.Equal(CommonWeights.All[0], answer.Common);
    }
}
