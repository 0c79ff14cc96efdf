using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Scenarios;
using LureSim.Stepping;

namespace LureSim.Validation.Decision;

/// <summary>
/// Facts of the trade (common practice, no source) on the demo scenarios, by computed tracks. Where practice and computation part, docs/validation.md says so
/// with the figures that these tests hold.
/// </summary>
public class TradeFactsTests
{
    private const string Area = "Decision: facts of the trade";
    private const string Source = "common practice, no source";

    // Share of a retrieve in the grass from which a lure counts as dragging.
    private const double Dragging = 0.05;

    private static Scenario Demo(string name) => ScenarioReader.Read(Repository.File("scenarios", name + ".yaml")).Scenario!;

    private static Coverage Of(Scenario scenario, string weight, string presentation, Func<Presentation, Presentation>? change = null)
    {
        JigHead head = scenario.Tackle.JigHeads.Single(h => h.Label == weight);
        Presentation way = scenario.Presentations.Single(p => p.Name == presentation);
        Candidate candidate = Trial.Run(scenario, new Rig(head, scenario.Tackle.Bodies[0], change is null ? way : change(way)), new SimulationOptions());
        Assert.Equal(SimulationStatus.Completed, candidate.Track.Status);
        return candidate.Coverage;
    }

    [Fact]
    public void Over_the_grass_three_sixteenths_rides_clear_where_a_quarter_drags()
    {
        // Speeds from which on each head rides clear; between the two the lighter one does and the heavier one drags.
        Scenario flat = Demo("grass-flat");
        ValidationLog.Absolute(CheckClass.CommonPractice, Area, "Grass flat, a turn a second: 3/16 oz in the grass (share of the retrieve)", Source, 0, Of(flat, "3/16 oz", "steady, a turn a second").GrassShare, 0.01);
        double lighter = ClearFrom(flat, "3/16 oz"), heavier = ClearFrom(flat, "1/4 oz");
        ValidationLog.Says(
            CheckClass.CommonPractice, Area, "Grass flat: speeds at which 1/4 oz drags and 3/16 oz rides clear", Source, "there are some", FormattableString.Invariant($"{lighter:F2} to {heavier:F2} m/s"), heavier > lighter + 0.01);
        double between = 0.5 * (lighter + heavier);
        Assert.True(Of(flat, "3/16 oz", "steady, a turn a second", p => p with { RetrieveSpeed = between }).GrassShare < Dragging);
        Assert.True(Of(flat, "1/4 oz", "steady, a turn a second", p => p with { RetrieveSpeed = between }).GrassShare > Dragging);
    }

    private static double ClearFrom(Scenario flat, string weight)
    {
        double slow = 0.3, fast = 1.0;
        while (fast - slow > 0.005)
        {
            double middle = 0.5 * (slow + fast);
            if (Of(flat, weight, "steady, a turn a second", p => p with { RetrieveSpeed = middle }).GrassShare > Dragging) slow = middle;
            else fast = middle;
        }

        return fast;
    }

    [Fact]
    public void A_slow_retrieve_over_the_grass_drags_from_an_eighth_up()
    {
        // Practice says that 3/16 oz rides clear at a slow retrieve. Computed at 1.6 ft/s it does not: see docs/validation.md.
        Scenario flat = Demo("grass-flat");
        Assert.True(Of(flat, "1/4 oz", "steady and slow").GrassShare > 0.5);
        Assert.True(Of(flat, "3/16 oz", "steady and slow").GrassShare > 0.5);
        Assert.Equal(0, Of(flat, "unweighted", "steady and slow").GrassShare, 0.01);
    }

    [Fact]
    public void Under_the_bridge_light_heads_never_reach_the_bottom()
    {
        Scenario bridge = Demo("bridge-channel");
        Coverage[] counted = [.. new[] { "1/8 oz", "1/4 oz", "3/8 oz", "1/2 oz", "3/4 oz" }.Select(w => Of(bridge, w, "counted down, steady"))];
        for (int i = 1; i < counted.Length; i++) Assert.True(counted[i].ZoneShare >= counted[i - 1].ZoneShare);
        string shares = string.Join(", ", counted.Select(c => FormattableString.Invariant($"{100 * c.ZoneShare:F0} %{(c.TimeToBottom is null ? "" : " and bottom")}")));
        ValidationLog.Says(
            CheckClass.CommonPractice, Area, "Bridge, counted down for 8 s: 1/8, 1/4, 3/8, 1/2, 3/4 oz in the strike zone", Source, "light heads never reach the bottom, heavy ones do", shares,
            counted[0].TimeToBottom is null && counted[1].TimeToBottom is null && counted[4].TimeToBottom is not null);
    }

    [Fact]
    public void Under_the_bridge_a_quarter_ounce_reaches_bottom_on_an_open_bail_long_before_an_unweighted_bait()
    {
        // Practice says that the unweighted bait does not get there at all. With all the line it wants and half a minute it does: see docs/validation.md.
        Scenario bridge = Demo("bridge-channel");
        Coverage quarter = Of(bridge, "1/4 oz", "slow along the bottom"), bare = Of(bridge, "unweighted", "slow along the bottom");
        Assert.InRange(quarter.TimeToBottom!.Value, 8, 16);
        Assert.True(bare.TimeToBottom is null || bare.TimeToBottom > 2.5 * quarter.TimeToBottom);
        Coverage tight = Of(bridge, "unweighted", "counted down, steady", p => p with { Fall = FallMode.TightLine, CountDown = 60 });
        Assert.Null(tight.TimeToBottom);
    }

    // The trade's sink rates are those of a lure on its line. Bridge without current, mean to 10 ft; a closed bail is the slow end, an open one the fast end.
    [Theory]
    [InlineData(BodyProfile.PaddleTail, 0.0889)]
    [InlineData(BodyProfile.SoftJerkbait, 0.127)]
    [InlineData(BodyProfile.ShrimpImitation, 0.0889)]
    [InlineData(BodyProfile.CurlTailGrub, 0.0889)]
    public void On_a_line_soft_baits_sink_as_the_trade_says(BodyProfile profile, double length)
    {
        Scenario bridge = Demo("bridge-channel");
        LureKind kind = LureKinds.Of(profile);
        Scenario still = bridge with { Spot = bridge.Spot with { CurrentSpeed = 0 }, Tackle = bridge.Tackle with { Bodies = [kind.Body(length, kind.Word)] } };
        FallTable table = Planner.FallTable(still, new Rig(still.Tackle.JigHeads[0], still.Tackle.Bodies[0], still.Presentations[0]));
        int row = Enumerable.Range(0, table.Depths.Count).MinBy(i => Math.Abs(table.Depths[i] - 3.048));
        const double Foot = 0.3048;
        foreach ((string head, double slowest, double closed, double open, double fastest) in new[] { ("1/8 oz", 0.8, 1.3, 1.0, 1.6), ("1/4 oz", 1.4, 2.0, 1.5, 2.25) })
        {
            FallColumn column = table.Columns.Single(c => c.Head.Label == head);
            double tight = table.Depths[row] / column.TightLineSeconds[row]!.Value, slack = table.Depths[row] / column.SlackLineSeconds[row]!.Value;
            string name = FormattableString.Invariant($"{1000 * length:F0} mm {kind.Word} on {head}, still water, mean to 3 m: ");
            const string Trade = "common practice: about 1 ft/s on 1/8 oz, 1.5 to 2 ft/s on 1/4 oz";
            ValidationLog.Between(CheckClass.CommonPractice, Area, name + "closed bail", Trade, slowest * Foot, closed * Foot, tight, "m/s");
            ValidationLog.Between(CheckClass.CommonPractice, Area, name + "open bail", Trade, open * Foot, fastest * Foot, slack, "m/s");
        }
    }

    [Fact]
    public void Heavier_heads_fall_sooner_and_run_deeper()
    {
        Scenario bridge = Demo("bridge-channel");
        Coverage[] runs = [.. bridge.Tackle.JigHeads.Select(h => Of(bridge, h.Label, "counted down, steady"))];
        for (int i = 1; i < runs.Length; i++) Assert.True(runs[i].DeepestDepth >= runs[i - 1].DeepestDepth - 0.005);
        FallTable table = Planner.FallTable(bridge, new Rig(bridge.Tackle.JigHeads[0], bridge.Tackle.Bodies[0], bridge.Presentations[0]));
        for (int i = 1; i < table.Columns.Count; i++)
        {
            Assert.True(table.Columns[i].TerminalSpeed > table.Columns[i - 1].TerminalSpeed);
            Assert.All(table.Columns[i].SlackLineSeconds.Zip(table.Columns[i - 1].SlackLineSeconds), pair => Assert.True(pair.First is not null && (pair.Second is null || pair.First <= pair.Second)));
        }
    }

    [Fact]
    public void Energy_is_balanced_over_a_whole_cast()
    {
        // Work of rod and reel, weight, buoyancy, drag and bottom, added mass and sliding line against kinetic and elastic energy.
        Scenario bridge = Demo("bridge-channel");
        double worst = 0;
        foreach (Presentation way in bridge.Presentations)
        {
            Candidate candidate = Trial.Run(bridge, new Rig(bridge.Tackle.JigHeads.Single(h => h.Label == "3/8 oz"), bridge.Tackle.Bodies[0], way), new SimulationOptions());
            worst = Math.Max(worst, candidate.Track.Statistics.EnergyResidual);
        }

        ValidationLog.Absolute(CheckClass.Identity, "Motion: energy", "Residual of the energy balance over a cast, worst of the bridge's presentations (share of the energy exchanged)", "energy balance", 0, worst, 0.0015);
    }
}
