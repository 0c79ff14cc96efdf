using LureSim.Decision;
using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Tests.Cli;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision;

public class BoxAdviceTests
{
    private static readonly Scenario Plain = TestScenario.Read(TestScenario.Text);

    private static Rig Rig(string weight) => new(Plain.Tackle.JigHeads.Single(h => h.Label == weight), Plain.Tackle.Bodies[0], Plain.Presentations[0]);

    [Fact]
    public void Missing_sizes_are_the_nearest_that_are_not_owned()
    {
        // Owned: unweighted, 1/8 and 1/4 oz. A line of 10 lb casts 44.5 N / (10 x 9.81 m/s2) = 0.45 kg: no limit here.
        Assert.Equal(["1/16 oz", "3/16 oz", "3/8 oz", "1/2 oz"], BoxAdvice.MissingSizes(Plain, Rig("1/8 oz")).Select(h => h.Label).Where(l => l is not "5/8 oz" and not "3/4 oz").Order(Comparer<string>.Create((a, b) => Ounces(a).CompareTo(Ounces(b)))));

        // A size weighs what its label says.
        Assert.All(BoxAdvice.MissingSizes(Plain, Rig("1/8 oz")), head => Assert.Equal(Ounces(head.Label), head.Mass, 1e-12));

        static double Ounces(string label) => QuantityReader.Read(QuantityKind.Mass, label).Value;
    }

    [Theory]
    [InlineData(0.2, "1/16 oz, 1/8 oz, 3/16 oz, 1/4 oz, 3/8 oz, 1/2 oz")]
    [InlineData(1.2, "5/8 oz, 3/4 oz, 1 oz, 1 1/2 oz, 2 oz, 3 oz")]
    public void Every_size_weighs_what_its_label_says(double ounces, string sizes)
    {
        var own = new JigHead(ounces * 0.028349523125, HeadMetal.Lead, 1e-3, "own");
        Scenario box = Plain with { Tackle = Plain.Tackle with { JigHeads = [own], Line = Plain.Tackle.Line with { Strength = 200 }, Leader = null } };
        IReadOnlyList<JigHead> missing = BoxAdvice.MissingSizes(box, Rig("1/8 oz") with { Head = own });
        Assert.Equal(sizes.Split(", "), missing.Select(h => h.Label));
        Assert.All(missing, head => Assert.Equal(QuantityReader.Read(QuantityKind.Mass, head.Label).Value, head.Mass, 1e-12));
    }

    [Fact]
    public void A_thin_line_bounds_the_weights_tried()
    {
        // 1 lb: 4.448 N / (10 x 9.80665 m/s2) = 45 g with body and hook.
        Scenario thin = Plain with { Tackle = Plain.Tackle with { Line = Plain.Tackle.Line with { Strength = 4.448 } } };
        Assert.All(BoxAdvice.MissingSizes(thin, Rig("1/8 oz")), head => Assert.True(head.Mass < 0.0454));
    }

    [Theory]
    [InlineData(0.60, 0.95, true)]
    [InlineData(0.60, 0.65, false)]
    [InlineData(0.60, 0.20, false)]
    public void A_gap_is_named_only_for_a_real_margin(double owned, double missing, bool gap)
    {
        Candidate first = HandMade.Candidate(Rig("1/8 oz")) with { Score = owned };
        Candidate tried = HandMade.Candidate(first.Rig with { Head = first.Rig.Head with { Mass = 0.021, Label = "3/4 oz" } }) with { Score = missing };
        tried = tried with { Coverage = tried.Coverage with { ZoneShare = 0.9 } };
        var bodies = BodyChoice.Of(Plain);
        var advice = BoxAdvice.Of(Plain, first, [first], bodies, [tried]);
        Assert.Equal(gap, advice.Gap is not null);
        string text = BoxWords.Sentences(advice, first, bodies, UnitSystem.Us)[0];
        if (gap)
            Assert.Equal("Worth adding: a 3/4 oz head (90% in the zone instead of 75%).", text);
        else
            Assert.StartsWith("Your weights cover this spot", text, StringComparison.Ordinal);
    }
}
