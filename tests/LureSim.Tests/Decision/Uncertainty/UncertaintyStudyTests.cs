using CsCheck;
using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision.Uncertainty;

public class UncertaintyStudyTests
{
    private static readonly SimulationOptions Quick = Trial.Coarse(new SimulationOptions());

    // A short cast over shallow water: a run takes a few milliseconds.
    private static Scenario Flat(ScenarioUncertainty uncertainty, params string[] heads)
    {
        Scenario flat = ScenarioReader.Read(Repository.File("scenarios", "grass-flat.yaml")).Scenario!;
        return flat with
        {
            Uncertainty = uncertainty,
            Presentations = [flat.Presentations.Single(p => p.Name == "steady, a turn a second")],
            Tackle = flat.Tackle with { JigHeads = [.. flat.Tackle.JigHeads.Where(h => heads.Contains(h.Label))] },
        };
    }

    private static UncertaintyStudy Study(Scenario scenario, int samples, int threads = 2) => UncertaintyStudy.Run(
        scenario, scenario.Tackle.Bodies[0], scenario.Presentations[0], [], samples, new SimulationOptions(), new ParallelOptions { MaxDegreeOfParallelism = threads });

    [Fact]
    public void Without_uncertainty_the_plan_is_that_of_the_single_runs()
    {
        Scenario exact = Flat(ScenarioUncertainty.None, "1/8 oz", "3/16 oz", "1/4 oz");
        var options = new PlanOptions { Simulation = Quick, SpeedFactors = [1] };
        Plan with = Planner.Plan(exact, options), without = Planner.Plan(exact, options with { Samples = 0 });
        Assert.Null(without.Uncertainty);
        Assert.Equal(without.Choice.First.Rig, with.Choice.First.Rig);
        Assert.Equal(ChoiceWords.Why(without, UnitSystem.Us), ChoiceWords.Why(with, UnitSystem.Us));
        UncertaintyStudy study = with.Uncertainty!;
        Assert.True(study.IsExact);
        foreach (HeadUncertainty head in study.Heads)
        {
            Candidate single = with.Candidates.Single(c => c.Rig == new Rig(head.Head, study.Body, study.Presentation));
            Assert.Equal(single.Coverage, Assert.Single(head.Outcomes));
            Assert.Equal(single.Score, head.Score.Mean);
            Assert.Equal(single.Coverage.ZoneShare, head.ZoneShare.Low);
            Assert.Equal(single.Coverage.ZoneShare, head.ZoneShare.High);
        }

        Assert.Equal(1, study.Best.ChanceBest);
    }

    [Fact]
    public void The_same_seed_gives_the_same_study_whatever_the_threads()
    {
        Scenario scenario = Flat(ScenarioUncertainty.Assumed, "1/8 oz", "1/4 oz");
        UncertaintyStudy one = Study(scenario, 5, 1), four = Study(scenario, 5, 4);
        for (int h = 0; h < 2; h++)
        {
            Assert.Equal(one.Heads[h].Outcomes, four.Heads[h].Outcomes);
            Assert.Equal(one.Heads[h].Map.Share, four.Heads[h].Map.Share);
            Assert.Equal(one.Heads[h].Drivers.Drivers, four.Heads[h].Drivers.Drivers);
        }

        Assert.NotEqual(one.Heads[0].Outcomes, Study(scenario with { Uncertainty = scenario.Uncertainty with { Seed = 2 } }, 5).Heads[0].Outcomes);
    }

    [Fact]
    public void In_every_draw_a_heavier_head_runs_deeper_and_is_there_sooner()
    {
        UncertaintyStudy study = Study(Flat(ScenarioUncertainty.Assumed, "1/16 oz", "1/8 oz", "1/4 oz"), 6);
        for (int d = 0; d < 6; d++)
        {
            for (int h = 1; h < study.Heads.Count; h++)
            {
                Coverage lighter = study.Heads[h - 1].Outcomes[d], heavier = study.Heads[h].Outcomes[d];
                Assert.True(heavier.MedianDepth >= lighter.MedianDepth - 0.005);
                Assert.True((heavier.TimeToZone ?? double.PositiveInfinity) <= (lighter.TimeToZone ?? double.PositiveInfinity) + 0.05);
            }
        }

        Assert.Equal(1, study.Heads.Sum(h => h.ChanceBest) + study.NoneBest, 1e-9);
        Assert.All(study.Heads, h => Assert.Equal(1, h.Map.Share.Cast<double>().Sum(), 1e-9));
    }

    [Fact]
    public void Where_the_zone_is_the_whole_water_every_head_is_in_it_and_the_heavier_touches_bottom_for_longer()
    {
        // No current, no grass: only the time on the bottom can part the heads.
        Scenario flat = Flat(ScenarioUncertainty.Assumed, "1/16 oz", "3/8 oz");
        Scenario open = flat with
        {
            Spot = flat.Spot with { CurrentSpeed = 0, WindSpeed = 0, GrassHeight = 0, StrikeZone = new StrikeZone(0, flat.Spot.Depth) { MovesWithBottom = true } },
            Presentations = [flat.Presentations[0] with { CountDown = null, RetrieveSpeed = 0.3 }],
        };
        UncertaintyStudy study = Study(open, 4);
        Assert.All(study.Heads, h => Assert.True(h.ZoneShare.Low > 0.98, $"{h.Head.Label}: {h.ZoneShare.Low}"));
        Assert.True(study.Heads[1].BottomShare.Low > study.Heads[0].BottomShare.High);
    }

    [Fact]
    public void Where_no_head_gets_down_none_is_best_and_the_words_say_so()
    {
        Scenario flat = Flat(ScenarioUncertainty.Assumed, "unweighted", "1/16 oz");
        Scenario deep = flat with { Spot = flat.Spot with { Depth = 12, GrassHeight = 0, StrikeZone = new StrikeZone(11, 12) { MovesWithBottom = true } } };
        UncertaintyStudy study = Study(deep, 4);
        Assert.Equal(1, study.NoneBest);
        Assert.All(study.Heads, h => Assert.Equal(0, h.ChanceBest + h.ReachesZone + h.Score.Mean));
        Assert.All(study.Heads, h => Assert.Equal(double.PositiveInfinity, h.TimeToZone.Low));
        Assert.StartsWith("No head in your box gets into the zone in any of 4 tries", UncertaintyWords.Sentences(study, UnitSystem.Us)[0], StringComparison.Ordinal);
    }

    [Fact]
    public void The_words_name_true_counts()
    {
        string[] words = [.. UncertaintyWords.Sentences(Tests.Report.Studies.Of(Tests.Report.Samples.Bridge(), 40), UnitSystem.Us)];
        Assert.Matches("came out best in \\d+ of 40 tries", words[0]);
        Assert.Matches("expect .* \\d+% to \\d+% of the retrieve \\(8 times in 10\\)", words[1]);
    }

    [Fact]
    public void Progress_ends_full_and_never_runs_over()
    {
        Scenario scenario = Flat(ScenarioUncertainty.Assumed, "1/8 oz");
        var progress = new Recorder();
        Planner.Plan(scenario, new PlanOptions { Simulation = Quick, Samples = 3, SpeedFactors = [1, 3, 10, 20], Threads = 1 }, progress);
        Assert.Equal(new PlanProgress(PlanStage.Done, 1), progress.Seen[^1]);
        Assert.Equal(progress.Seen.Select(p => p.Share).Order(), progress.Seen.Select(p => p.Share));
        Assert.Equal(Enum.GetValues<PlanStage>(), progress.Seen.Select(p => p.Stage).Distinct());
    }

    [Fact]
    public void A_cancelled_study_stops()
    {
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        Scenario scenario = Flat(ScenarioUncertainty.Assumed, "1/8 oz");
        Assert.ThrowsAny<OperationCanceledException>(() => UncertaintyStudy.Run(scenario, scenario.Tackle.Bodies[0], scenario.Presentations[0], [], 4, new SimulationOptions(), new ParallelOptions { CancellationToken = cancelled.Token }));
    }

    [Fact]
    public void Coarse_runs_are_close_to_single_runs()
    {
        Scenario scenario = Flat(ScenarioUncertainty.None, "1/8 oz", "1/4 oz");
        foreach (JigHead head in scenario.Tackle.JigHeads)
        {
            var rig = new Rig(head, scenario.Tackle.Bodies[0], scenario.Presentations[0]);
            Coverage fine = Trial.Run(scenario, rig, new SimulationOptions()).Coverage, coarse = Trial.Run(scenario, rig, Quick).Coverage;
            Assert.Equal(fine.ZoneShare, coarse.ZoneShare, 0.01);
            Assert.Equal(fine.MedianDepth, coarse.MedianDepth, 0.01);
        }
    }

    [Fact]
    public void Water_of_any_depth_leaves_a_spot_that_can_be_run() =>
        Gen.Select(Gen.Double[-5, 80], Gen.Bool, Gen.Double[0.3, 20], Gen.Double[0, 0.9]).HoldsFor((wanted, moves, depth, at) =>
        {
            var spot = new Spot
            {
                Depth = depth,
                GrassHeight = 0.5 * depth,
                Salinity = 30,
                TemperatureCelsius = 20,
                Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
                Sky = new SkyByElevation(0.7),
                StrikeZone = new StrikeZone(at * depth, depth * (at + 0.1)) { MovesWithBottom = moves },
                TargetFish = "red drum",
            };
            Spot changed = SpotChange.WithDepth(spot, wanted);
            Assert.InRange(changed.Depth, 0.2, 60);
            Assert.InRange(changed.GrassHeight, 0, changed.Depth);
            Assert.InRange(changed.StrikeZone.Top, 0, changed.StrikeZone.Bottom);
            Assert.True(changed.StrikeZone.Bottom > changed.StrikeZone.Top);
            Assert.True(changed.StrikeZone.Bottom <= changed.Depth + 1e-9);
            if (moves && wanted is > 1 and < 60 && wanted > depth)
                Assert.Equal(spot.Depth - spot.StrikeZone.Bottom, changed.Depth - changed.StrikeZone.Bottom, 1e-9);
        });

    private sealed class Recorder : IProgress<PlanProgress>
    {
        public List<PlanProgress> Seen { get; } = [];

        public void Report(PlanProgress value)
        {
            lock (Seen) Seen.Add(value);
        }
    }
}
