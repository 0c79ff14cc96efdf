using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Decision.Search;

public class ChoiceSearchTests
{
    private static readonly Scenario Spot = ScenarioReader.ReadText(RandomSpots.Text(3), "random.yaml").Scenario!;

    private static ChoiceSearch Find(Scenario scenario, int threads = 2, ChoiceLimits? limits = null) =>
        ChoiceSearch.Find(scenario, new ChoiceSearchOptions { Samples = 4, Limits = limits ?? new() }, new ParallelOptions { MaxDegreeOfParallelism = threads });

    [Fact]
    public void The_choice_does_not_depend_on_the_number_of_threads()
    {
        ChoiceSearch one = Find(Spot, 1), four = Find(Spot, 4);
        Assert.Equal(one.First.Rig, four.First.Rig);
        Assert.Equal(one.First.Scores, four.First.Scores);
        Assert.Equal(one.Finalists.Select(rig => (rig.Rig, rig.Mean)), four.Finalists.Select(rig => (rig.Rig, rig.Mean)));
        Assert.Equal((one.Runs, one.Considered), (four.Runs, four.Considered));
    }

    [Fact]
    public void Every_bait_is_looked_at_with_every_presentation_and_the_heads_near_its_best()
    {
        ChoiceSearch found = Find(Spot);
        Assert.Equal(
            Spot.Tackle.Bodies.SelectMany(body => Spot.Presentations.Select(way => (body, way.Name))).ToHashSet(),
            found.FirstLook.Select(c => (c.Rig.Body, c.Rig.Presentation.Name)).ToHashSet());
        JigHead[] heads = [.. Spot.Tackle.JigHeads.OrderBy(head => head.Mass)];
        Assert.All(found.FirstLook.Where(c => c.Rig.Body.NeedsHead).GroupBy(c => (c.Rig.Body, c.Rig.Presentation.Name)), row =>
        {
            int best = Array.IndexOf(heads, row.MaxBy(c => c.Score)!.Rig.Head);
            Assert.All(heads[Math.Max(0, best - 1)..Math.Min(heads.Length, best + 2)], head => Assert.Contains(row, c => c.Rig.Head == head));
        });
        Assert.All(found.Finalists, rig => Assert.Equal(4, rig.Scores.Count));
    }

    [Fact]
    public void Stated_bounds_of_hands_and_weight_are_kept()
    {
        Presentation way = Spot.Presentations.First(item => item.RetrieveSpeed > 0);
        JigHead[] heads = [.. Spot.Tackle.JigHeads.OrderBy(head => head.Mass)];
        var ranges = new HandRanges
        {
            Weight = new ValueRange(heads[0].Mass, heads[1].Mass),
            ReelSpeed = new ValueRange(0.95 * way.RetrieveSpeed, 1.05 * way.RetrieveSpeed),
            SinkCount = new ValueRange(0, Spot.Presentations.Max(item => item.CountDown ?? 0)),
            CastAngle = new ValueRange(-0.05, 0.05),
        };
        ChoiceSearch found = Find(Spot with { Presentations = [way], Hands = ranges });
        Assert.All(found.Finalists, rig =>
        {
            Assert.Contains(rig.Rig.Head, heads[..2]);
            Assert.InRange(rig.Rig.Presentation.RetrieveSpeed, 0.95 * way.RetrieveSpeed, 1.05 * way.RetrieveSpeed);
            Assert.InRange(rig.Rig.Presentation.Aim - way.Aim, -0.05, 0.05);
            if (rig.Rig.Presentation.CountDown is { } count) Assert.True(count <= ranges.SinkCount.Value.Most, $"{count}");
        });
        Assert.Throws<ArgumentOutOfRangeException>(() => new HandRanges { Rest = new ValueRange(3, 2) });
    }

    [Fact]
    public void What_is_fixed_stays_and_what_is_asked_for_is_kept()
    {
        Scenario still = Spot with { Fixed = Enum.GetValues<Hand>() };
        ChoiceSearch found = Find(still);
        Assert.Contains(found.First.Rig.Presentation, still.Presentations);
        var limits = new ChoiceLimits(Spot.Tackle.JigHeads[1], Spot.Tackle.Bodies[0], Spot.Presentations[1]);
        Rig held = Find(Spot, limits: limits).First.Rig;
        Assert.Equal((limits.Head, limits.Body, limits.Presentation!.Name), (held.Head, held.Body, held.Presentation.Name));
    }

    [Fact]
    public void Exact_inputs_are_chosen_from_by_single_runs()
    {
        ChoiceSearch found = Find(Spot with { Uncertainty = ScenarioUncertainty.None });
        Assert.Equal(1, found.Tries);
        Assert.True(found.First.Mean >= 0);
    }
}
