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
    public void Every_lure_is_looked_at_with_every_presentation()
    {
        ChoiceSearch found = Find(Spot);
        int lures = Spot.Tackle.Bodies.Sum(body => body.NeedsHead ? Spot.Tackle.JigHeads.Count : 1);
        Assert.Equal(lures * Spot.Presentations.Count, found.FirstLook.Count);
        Assert.All(found.Finalists, rig => Assert.Equal(4, rig.Scores.Count));
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
