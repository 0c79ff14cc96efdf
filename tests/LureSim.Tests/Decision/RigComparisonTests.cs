using CsCheck;
using LureSim.Decision.Comparison;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision;

public class RigComparisonTests
{
    private const string Rigs = """

        compare:
          - name: mine
            jig_head: 1/8 oz
          - name: hers
            jig_head: 1/8 oz
        """;

    private static Scenario Read(string rigs = Rigs) => TestScenario.Read(TestScenario.Text + rigs);

    [Fact]
    public void Identical_rigs_differ_in_nothing()
    {
        var comparison = RigComparison.Compare(Read());
        Assert.Empty(comparison.Differences);
        Assert.All(comparison.Measures, item => Assert.Equal(item.First, item.Second));
        Assert.All(comparison.Measures, item => Assert.Null(item.Main));
        Assert.Contains("differ in nothing", Assert.Single(ComparisonWords.Sentences(comparison, UnitSystem.Us)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("            jig_head: 1/2 oz", "weight", 0)]
    [InlineData("            jig_head: 1/8 oz\n            retrieve: {speed: 1.5 m/s}", "speed", 0)]
    [InlineData("            jig_head: 1/8 oz\n            line: {kind: monofilament, strength: 30 lb}", "line", 0)]
    [InlineData("            jig_head: 1/8 oz\n            colour: dark purple", "colour", 1)]
    [InlineData("            jig_head: 1/8 oz\n            rigging: {exit_sideways: 5 mm}", "hook", 2)]
    public void A_single_difference_has_all_of_the_share(string other, string feature, int measure)
    {
        string rigs = Rigs[..Rigs.LastIndexOf("    jig_head", StringComparison.Ordinal)] + other.Replace("            ", "    ", StringComparison.Ordinal);
        var comparison = RigComparison.Compare(Read(rigs));
        Assert.Equal(feature, Assert.Single(comparison.Differences).Id);
        MeasureComparison item = comparison.Measures[measure];
        FeatureEffect effect = Assert.Single(item.Effects);
        Assert.NotEqual(item.First, item.Second);
        Assert.Equal(1, effect.Share);
        Assert.Equal(item.Second - item.First, effect.Effect, 1e-12);
        Assert.Equal(effect.Effect, effect.ChangedFirst, 1e-12);
        Assert.Equal(effect.Effect, effect.ChangedLast, 1e-12);
    }

    [Fact]
    public void A_knot_tells_on_the_twitch_and_has_all_of_the_share()
    {
        // A bait of its own swing tells less of its knot (a paddle tail on this hop: 0.178 rad on a loop, 0.176 snug).
        string rigs = Rigs.Replace("jig_head: 1/8 oz", "jig_head: unweighted\n    body: {profile: soft jerkbait, length: 5 in}\n    presentation: hop", StringComparison.Ordinal) + "\n    rigging: {knot: snug}";
        var comparison = RigComparison.Compare(Read(rigs));
        Assert.Equal("knot", Assert.Single(comparison.Differences).Id);
        MeasureComparison swing = comparison.Measures.Single(m => m.Measure.Id == "action_swing_rad");
        Assert.True(Math.Abs(swing.Second - swing.First) > 0.01, $"{swing.First} on a loop, {swing.Second} snug");
        Assert.Equal(1, Assert.Single(swing.Effects).Share);
        Assert.Contains(ComparisonWords.Sentences(comparison, UnitSystem.Us), s => s.Contains("What matters most is the knot", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_presentations_of_the_same_moves_are_the_same()
    {
        string text = TestScenario.Text.Replace("    retrieve: {handle_turns: 0.5 turns/s}\n    pause: {every: 3 s, for: 2 s}\n    twitch: {count: 2, height: 1 ft, period: 0.6 s}", "    style: stop and go", StringComparison.Ordinal);
        Assert.NotEqual(TestScenario.Text, text);
        Scenario styled = TestScenario.Read(text + "\n  - name: hop again\n    cast: 20 m\n    fall: tight line\n    count_down: 4 s\n    style: stop and go\n    line_left: 4 m" + Rigs
            .Replace("name: mine\n    jig_head: 1/8 oz", "name: mine\n    jig_head: 1/8 oz\n    presentation: hop", StringComparison.Ordinal) + "\n    presentation: hop again");
        Presentation a = styled.Compare[0].Presentation, b = styled.Compare[1].Presentation;
        Assert.NotEmpty(a.Moves);
        Assert.Equal(a, b with { Name = a.Name });
        Assert.Equal(a.GetHashCode(), (b with { Name = a.Name }).GetHashCode());
        Assert.NotEqual(a, a with { Moves = [.. a.Moves.Skip(1)] });
        Assert.DoesNotContain(RigFeature.All, feature => feature.Differs(styled.Compare[0], styled.Compare[1]));
    }

    [Fact]
    public void Colour_never_moves_the_lure()
    {
        var comparison = RigComparison.Compare(Read(Rigs[..Rigs.LastIndexOf("    jig_head", StringComparison.Ordinal)] + "    jig_head: 1/4 oz\n    colour: dark purple"));
        Assert.Equal(["weight", "colour"], comparison.Differences.Select(d => d.Id));
        FeatureEffect colour = comparison.Measures[0].Effects[1];
        Assert.Equal((0.0, 0.0), (colour.Effect, colour.Share));
        Assert.Equal(comparison.Measures[1].Second - comparison.Measures[1].First, comparison.Measures[1].Effects.Sum(e => e.Effect), 1e-9);
    }

    [Fact]
    public void Interacting_differences_share_alike()
    {
        // Worked by hand: neither does anything alone, both together give 1; by symmetry each has one half.
        MeasureComparison both = RigComparison.Explain(RigMeasure.All[0], [RigFeature.All[0], RigFeature.All[1]], [0, 0, 0, 1]);
        Assert.Equal([0.5, 0.5], both.Effects.Select(e => e.Effect));

        // The glove game (Shapley 1953): one left glove and two right ones, a pair is worth 1: 2/3, 1/6, 1/6.
        double[] gloves = [0, 0, 0, 1, 0, 1, 0, 1];
        MeasureComparison game = RigComparison.Explain(RigMeasure.All[0], [.. RigFeature.All.Take(3)], gloves);
        Assert.Equal(2.0 / 3, game.Effects[0].Effect, 1e-12);
        Assert.Equal(1.0 / 6, game.Effects[1].Effect, 1e-12);
        Assert.Equal(1.0 / 6, game.Effects[2].Effect, 1e-12);
    }

    [Fact]
    public void Effects_always_add_to_the_change()
    {
        Gen.Double[-1, 1].Array[16].HoldsFor(values =>
        {
            MeasureComparison item = RigComparison.Explain(RigMeasure.All[0], [.. RigFeature.All.Take(4)], values);
            double shares = item.Effects.Sum(e => e.Share);
            Assert.Equal(values[^1] - values[0], item.Effects.Sum(e => e.Effect), 1e-12);
            Assert.Equal(1, shares, 1e-12);
        });
    }

    [Fact]
    public void First_and_last_are_all_orders_where_no_three_act_together()
    {
        // Six differences, each with an effect of its own and one with every other: the mean of first and last is the Shapley value (worked in docs/decision.md).
        Gen.Double[-1, 1].Array[21].HoldsFor(parts =>
        {
            double[] all = [.. Enumerable.Range(0, 64).Select(set => 3 + Worth(set))];
            double[] ends = [all[0], .. Enumerable.Range(0, 6).Select(i => all[1 << i]), .. Enumerable.Range(0, 6).Select(i => all[63 ^ (1 << i)]), all[63]];
            RigFeature[] six = [.. RigFeature.All.Take(6)];
            MeasureComparison exact = RigComparison.Explain(RigMeasure.All[0], six, all), byEnds = RigComparison.ExplainByEnds(RigMeasure.All[0], six, ends);
            Assert.All(exact.Effects.Zip(byEnds.Effects), pair => Assert.Equal(pair.First.Effect, pair.Second.Effect, 1e-12));

            double Worth(int set)
            {
                double sum = 0;
                for (int i = 0, pair = 6; i < 6; i++)
                {
                    if ((set & (1 << i)) != 0) sum += parts[i];
                    for (int j = i + 1; j < 6; j++, pair++)
                    {
                        if ((set & (1 << i)) != 0 && (set & (1 << j)) != 0) sum += parts[pair];
                    }
                }

                return sum;
            }
        });
    }

    [Fact]
    public void What_three_do_together_is_theirs_alone()
    {
        // By hand: three give 1 only together, the fourth does nothing: a third each, as in every order (Shapley 1953).
        MeasureComparison item = RigComparison.ExplainByEnds(RigMeasure.All[0], [.. RigFeature.All.Take(4)], [0, 0, 0, 0, 0, 0, 0, 0, 1, 1]);
        Assert.All(item.Effects.Take(3), effect => Assert.Equal(1.0 / 3, effect.Effect, 1e-12));
        Assert.Equal(0, item.Effects[3].Effect);
    }

    [Fact]
    public void Many_differences_end_soon_and_add_to_the_change()
    {
        string rigs = Rigs[..Rigs.LastIndexOf("    jig_head", StringComparison.Ordinal)] + """
                jig_head: 1/2 oz
                body: {profile: soft jerkbait, length: 5 in}
                line: {kind: monofilament, strength: 12 lb}
                colour: dark purple
                presentation: hop
                cast: 18 m
                rigging: {knot: snug, shank_share: 60 %}
            """;
        int runs = 0;
        var comparison = RigComparison.Compare(Read(rigs), progress: new Counted(() => Interlocked.Increment(ref runs)));
        Assert.False(comparison.InEveryOrder);
        Assert.True(comparison.Differences.Count >= 8, string.Join(", ", comparison.Differences.Select(d => d.Id)));
        Assert.Equal((2 * comparison.Differences.Count) + 2, runs);
        Assert.All(comparison.Measures, item => Assert.Equal(item.Second - item.First, item.Effects.Sum(e => e.Effect), 1e-12));
        Assert.Equal(0, comparison.Measures[0].Effects.Single(e => e.Feature.Kind == RigFeatureKind.Colour).Effect, 1e-12);
    }

    private sealed class Counted(Action count) : IProgress<double>
    {
        public void Report(double value) => count();
    }

    [Fact]
    public void Mistakes_in_the_rigs_are_told_with_their_place()
    {
        IReadOnlyList<ScenarioProblem> problems = TestScenario.Problems(TestScenario.Text + """

            compare:
              - name: mine
                jig_head: 1/8 oz
                presentation: hopp
                rigging: {knot: snug, loop_length: 1 cm}
              - name: mine
                jig_head: 1/8 oz
                cast: 2.5 m
            """);
        Assert.Equal(["compare[0].presentation", "compare[0].rigging.loop_length", "compare[1].cast", "compare[1].name"], problems.Select(p => p.Key).Order());
        Assert.Contains(problems, p => p.Fix == "write \"hop\"");
    }

    [Fact]
    public void Every_part_of_a_rig_belongs_to_a_feature()
    {
        Scenario scenario = Read();
        ComparedRig first = scenario.Compare[0];
        ComparedRig second = new(
            "hers",
            scenario.Tackle.JigHeads[2],
            scenario.Tackle.Bodies[1],
            "black",
            first.Line with { Strength = 2 * first.Line.Strength },
            null,
            scenario.Presentations[1])
        {
            Rigging = new Rigging { Knot = KnotStyle.Snug, LoopLength = 0, ShankShare = 0.4, ExitSideways = 0.001, ExitAbove = 0.002, Bend = 0.1, PointLean = 0.1, HeadTurn = 0.1, PulledUp = 0.001 },
        };
        ComparedRig all = RigFeature.All.Aggregate(first, (rig, feature) => feature.Take(rig, second));
        Assert.Equal(second with { Name = "mine", Presentation = second.Presentation with { Name = first.Presentation.Name } }, all);
        Assert.All(RigFeature.All, feature => Assert.False(feature.Differs(all, second)));
    }
}
