using System.Globalization;
using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Scenarios;
using Xunit.Abstractions;

namespace LureSim.Tests.Decision;

/// <summary>No plan says two things; LURESIM_ALL_PLANS=1 looks at 500 random spots in place of a few, LURESIM_ALL_PLANS=120-180 at those from 120 up to 180.</summary>
public class PlanConsistencyTests(ITestOutputHelper log)
{
    private const int Few = 4;
    private const int All = 500;

    // Once found to hold a contradiction. 59: it was the checker's, which took a tie as a share of each score and not of the best. 326: a head was said never to reach the bottom by its run
    // of the first look, which has another count.
    private static readonly int[] Found = [59, 326];

    private static readonly Lazy<Plan> Sound = new(() => Planner.Plan(ScenarioReader.ReadText(RandomSpots.Text(0), "random.yaml").Scenario!));

    [Fact]
    public void Plans_of_random_spots_hold_no_contradiction()
    {
        int[] range = Environment.GetEnvironmentVariable("LURESIM_ALL_PLANS") switch
        {
            "1" => [0, All],
            { } asked when asked.Contains('-', StringComparison.Ordinal) => [.. asked.Split('-').Select(text => int.Parse(text, CultureInfo.InvariantCulture))],
            _ => [0, Few],
        };
        List<string> wrong = [];
        foreach (int seed in Enumerable.Range(range[0], range[1] - range[0]).Union(Found))
        {
            ScenarioReading reading = ScenarioReader.ReadText(RandomSpots.Text(seed), "random.yaml");
            Assert.True(reading.Scenario is not null, $"{seed}: {string.Join("; ", reading.Problems)}");
            Plan plan = seed == 0 ? Sound.Value : Planner.Plan(reading.Scenario!);
            IReadOnlyList<Contradiction> found = PlanConsistency.Check(plan);
            log.WriteLine($"{seed}: {plan.Choice.First.Rig.Head.Label}, {plan.Choice.First.Rig.Body.Label}, {plan.Choice.First.Rig.Presentation.Name}: {string.Join(", ", found)}");
            if (found.Count > 0) wrong.Add($"{seed}: {string.Join(", ", found)}");
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    [Fact]
    public void The_table_of_a_plan_begins_with_the_choice_and_ranks_by_the_tries()
    {
        Plan plan = Sound.Value;
        Assert.Equal(plan.Choice.First.Rig, plan.Compared[0].Rig);
        TriedRig[] judged = [.. plan.Compared.TakeWhile(row => row.IsJudged)];
        Assert.Equal(plan.Choice.Finalists.Select(finalist => As(finalist.Rig)).Distinct().Count(), judged.Length);
        Assert.All(judged, row => Assert.Equal(plan.Choice.Numbers!.Tries, row.Numbers.Tries));
        Assert.Equal(judged.Skip(1).Select(row => row.Numbers.Score.Mean).OrderDescending(), judged.Skip(1).Select(row => row.Numbers.Score.Mean));
        Assert.All(plan.Compared.Skip(judged.Length), row => Assert.False(row.IsJudged));

        // No two rows read the same: of those that differ in count, speed or angle alone the best is told.
        Assert.Equal(plan.Compared.Count, plan.Compared.Select(row => As(row.Rig)).Distinct().Count());
        Assert.All(judged, row => Assert.True(row.Rig == plan.Choice.First.Rig || plan.Choice.Finalists.Where(finalist => As(finalist.Rig) == As(row.Rig)).All(finalist => finalist.Mean <= row.Numbers.Score.Mean)));

        static (JigHead, LureBody, string) As(Rig rig) => (rig.Head, rig.Body, rig.Presentation.Name);
    }

    public static TheoryData<Contradiction> Broken => new(
        Contradiction.AnswerForAnotherRig, Contradiction.CountOfTries, Contradiction.TableOfAnotherRig, Contradiction.CoveredAndNoneHolds, Contradiction.StudyOfAnotherHead);

    [Theory]
    [MemberData(nameof(Broken))]
    public void A_plan_that_is_broken_by_hand_is_found_out(Contradiction kind)
    {
        Plan plan = Sound.Value;
        LureBody other = plan.Choice.First.Rig.Body with { Label = "another" };
        Plan broken = kind switch
        {
            Contradiction.AnswerForAnotherRig => plan with { Answers = [.. plan.Answers.Select(answer => answer with { Presentation = answer.Presentation with { Name = "another" } })] },
            Contradiction.CountOfTries => plan with { Choice = plan.Choice with { BestIn = plan.Choice.AsGoodIn + 1 } },
            Contradiction.TableOfAnotherRig => plan with { Grid = plan.Grid with { PresentationName = "another" } },
            Contradiction.StudyOfAnotherHead => plan with { Uncertainty = plan.Uncertainty! with { Body = other } },
            Contradiction.CoveredAndNoneHolds => plan with
            {
                Scenario = plan.Scenario with { Spot = plan.Scenario.Spot with { StrikeZone = new StrikeZone(0, plan.Scenario.Spot.Depth) } },
                Answers = [.. plan.Answers.Select(answer => answer.Question == LureSim.Decision.Inverse.InverseQuestion.HeadForBottom ? answer with { Status = LureSim.Decision.Inverse.InverseStatus.Found, Owned = null } : answer)],
                Box = plan.Box! with { Gap = null, NoneHolds = false },
            },
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not broken here."),
        };
        Assert.Contains(kind, PlanConsistency.Check(broken));
    }
}
