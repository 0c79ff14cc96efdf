using LureSim.Coupling;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Tests.Report;

namespace LureSim.Tests.Decision.Search;

public class RetrieveSearchTests
{
    private static readonly RetrieveSearchOptions Short = new() { RunsPerFamily = 18, Tries = 0, Simulation = new SimulationOptions { Segments = 12 } };

    private static readonly ActionReport Off = new() { Verdict = ActionVerdict.Muted, Findings = [] };
    private static readonly ActionReport On = new() { Verdict = ActionVerdict.Swims, Findings = [] };

    // Still water 3 m deep, cast far enough that the retrieve's own depth tells.
    private static Scenario Pond(double top, double bottom)
    {
        Scenario bridge = Samples.Bridge(["1/4"]);
        return bridge with
        {
            Spot = bridge.Spot with { Depth = 3, GrassHeight = 0, Bottom = BottomKind.Sand, CurrentSpeed = 0, WindSpeed = 0, StrikeZone = new StrikeZone(top, bottom) },
            Presentations = [new Presentation { Name = "own", CastLength = 18, CountDown = 3, RetrieveSpeed = 0.5 }],
        };
    }

    private static RetrieveSearch Find(Scenario scenario, RetrieveSearchOptions? options = null) =>
        RetrieveSearch.Search(scenario, scenario.Tackle.JigHeads[0], scenario.Tackle.Bodies[0], options ?? Short);

    private static ActionTable Table(Func<double, bool> on) => ActionTable.From(
        [.. ActionTable.Speeds.Select(speed => on(speed) ? On : Off)],
        [.. ActionTable.TwitchTravels.Select(travel => travel >= 0.3 ? On with { Verdict = ActionVerdict.Darts } : Off)],
        Off with { Verdict = ActionVerdict.Still });

    [Fact]
    public void Fish_near_the_surface_are_met_fast_and_fish_near_the_bottom_slowly()
    {
        Presentation shallow = Steady(Find(Pond(0, 0.5))), deep = Steady(Find(Pond(2, 3)));
        Assert.True(shallow.RetrieveSpeed > 1.5 * deep.RetrieveSpeed, $"{shallow.RetrieveSpeed} and {deep.RetrieveSpeed}");

        // A fast retrieve lifts the lure at once, so that the score hardly tells counts of 0 and 4 s apart: 4 s is what it finds.
        Assert.True(shallow.CountDown <= 4, $"{shallow.CountDown}");
        Assert.True(deep.CountDown is null or >= 2, $"{deep.CountDown}");

        static Presentation Steady(RetrieveSearch search) => search.Families.Single(f => f.Family.Name == "steady").Best.Presentation;
    }

    [Fact]
    public void The_winner_is_no_worse_than_anything_tried_and_the_front_holds_what_nothing_beats()
    {
        RetrieveSearch search = Find(Pond(1, 2));
        Assert.Equal(RetrieveFamily.All.Count, search.Families.Count);
        Assert.All(search.Families, family =>
        {
            Assert.InRange(family.Tried.Count, RetrieveSearchOptions.FewestRuns, Short.RunsPerFamily);

            // Rounding to what a hand can keep and the finer settings move a score a little.
            Assert.True(family.Best.Score >= family.Tried.Max(t => t.Score) - 0.06, $"{family.Family.Name}: {family.Best.Score} of {family.Tried.Max(t => t.Score)}");
            Assert.InRange(family.Best.LiveZoneShare, 0, Math.Min(family.Best.Coverage.ZoneShare, family.Best.ActionShare) + 1e-9);
        });
        Assert.Equal(search.Families.Select(f => f.Best.Score).OrderDescending(), search.Families.Select(f => f.Best.Score));
        foreach (RetrieveTrial trial in search.Families.SelectMany(f => f.Tried))
            Assert.Contains(search.Front, t => t.LiveZoneShare >= trial.LiveZoneShare && t.ClearShare >= trial.ClearShare);
        Assert.NotEmpty(SearchWords.Sentences(search, UnitSystem.Us));
    }

    [Fact]
    public void Winners_and_own_retrieves_are_judged_over_the_tries()
    {
        Scenario pond = Pond(1, 2);
        RetrieveSearch search = Find(pond with { Uncertainty = ScenarioUncertainty.Assumed with { Samples = 24 } }, Short with { RunsPerFamily = 12, Tries = 5 });
        RetrieveTrial[] judged = [.. search.Families.Select(f => f.Best), .. search.Own];
        Assert.All(judged, trial =>
        {
            Assert.Equal(5, trial.Numbers!.Tries);
            Assert.Equal(trial.Numbers.Score.Mean, trial.Score, 12);
            Assert.Equal(trial.Numbers.ZoneShare.Median, trial.Coverage.ZoneShare);
            Assert.InRange(trial.LiveZoneShare, 0, trial.Coverage.ZoneShare);
        });
        Assert.True(search.Runs >= search.Families.Sum(f => f.Tried.Count) + (5 * judged.Length));
        Assert.All(Find(pond with { Uncertainty = ScenarioUncertainty.None }, Short with { RunsPerFamily = 12, Tries = 5 }).Own, trial => Assert.Null(trial.Numbers));
    }

    [Fact]
    public void The_same_question_gets_the_same_answer_on_any_number_of_threads()
    {
        Scenario pond = Pond(1, 2);
        RetrieveSearchOptions few = Short with { RunsPerFamily = 12 };
        RetrieveSearch a = Find(pond, few with { Threads = 1 }), b = Find(pond, few with { Threads = 3 });
        Assert.Equal(a.Families.Select(f => f.Family.Name), b.Families.Select(f => f.Family.Name));
        Assert.Equal(a.Families.SelectMany(f => f.Tried).Select(t => t.Score), b.Families.SelectMany(f => f.Tried).Select(t => t.Score));
        Assert.Equal(a.Families.Select(f => f.Best.LiveZoneShare), b.Families.Select(f => f.Best.LiveZoneShare));
    }

    [Fact]
    public void A_search_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        Scenario pond = Pond(1, 2);
        var progress = new Stopper(stop);
        Assert.ThrowsAny<OperationCanceledException>(() => RetrieveSearch.Search(pond, pond.Tackle.JigHeads[0], pond.Tackle.Bodies[0], Short, progress, stop.Token));
        Assert.InRange(progress.Last, 0, 0.9);
    }

    [Fact]
    public void Action_on_a_track_is_counted_by_its_speed()
    {
        // Half of the retrieve at 0.2 m/s, half at 0.6; the action is on from 0.4 on. In the zone is every second sample.
        Track track = Hand([0.2, 0.2, 0.2, 0.2, 0.6, 0.6, 0.6, 0.6], [1, 2, 1, 2, 1, 2, 1, 2]);
        var steady = new Presentation { Name = "steady", CastLength = 20, RetrieveSpeed = 0.5 };
        Assert.Equal((0.5, 0.25), Table(speed => speed >= 0.4).Shares(track, steady, new StrikeZone(1.5, 3)));
        Assert.Equal((0.0, 0.0), Table(speed => speed >= 1).Shares(track, steady, new StrikeZone(1.5, 3)));
        Assert.Equal((1.0, 0.5), Table(_ => true).Shares(track, steady, new StrikeZone(1.5, 3)));
    }

    [Fact]
    public void A_twitch_counts_while_it_lasts_and_for_its_glide()
    {
        // Samples a second apart. Reeled for 2 s, twitched for 1 s, rested for 5 s: the dart is felt at 2 s and at 3 s.
        Track track = Hand([0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1], [1, 1, 1, 1, 1, 1, 1, 1]);
        Presentation Twitching(double travel) => new()
        {
            Name = "twitched",
            CastLength = 20,
            RetrieveSpeed = 0.5,
            Moves =
            [
                new Move { Kind = MoveKind.Reel, Duration = 2, ReelShare = 1 },
                new Move { Kind = MoveKind.Twitch, Duration = 1, Beats = 2, Up = travel },
                new Move { Kind = MoveKind.Pause, Duration = 5 },
            ],
        };
        Assert.Equal((0.25, 0.25), Table(_ => false).Shares(track, Twitching(0.3), new StrikeZone(0, 3)));
        Assert.Equal((0.0, 0.0), Table(_ => false).Shares(track, Twitching(0.1), new StrikeZone(0, 3)));
    }

    [Fact]
    public void Faults_are_off_and_a_beating_tail_is_on()
    {
        Assert.True(ActionTable.IsOn(On));
        Assert.True(ActionTable.IsOn(On with { Verdict = ActionVerdict.Flutters }));
        Assert.True(ActionTable.IsOn(On with { Verdict = ActionVerdict.Still, TailAmplitude = 0.3 }));
        foreach (ActionVerdict verdict in (ActionVerdict[])[ActionVerdict.Muted, ActionVerdict.Spins, ActionVerdict.Tumbles, ActionVerdict.Still, ActionVerdict.Unknown])
            Assert.False(ActionTable.IsOn(On with { Verdict = verdict }));
    }

    [Fact]
    public void Families_stay_in_their_ranges()
    {
        var like = new Presentation { Name = "own", CastLength = 20, RetrieveSpeed = 0.5 };
        var fall = new FallTime(10, true);
        foreach (RetrieveFamily family in RetrieveFamily.All)
        {
            foreach (double place in (double[])[0, 0.3, 1])
            {
                Presentation built = family.Build(like, [.. family.Parameters.Select(p => p.Rounded(p.At(place)))], fall);
                Assert.InRange(built.RetrieveSpeed, 0.02, built.FastestSpeed);
                Assert.True(built.CountDown is null or >= 0 and <= 10);

                // The rod tip ends where it began, or the moves never repeat.
                double left = built.Moves.Where(m => m.Beats == 0).Sum(m => m.Up);
                Assert.Equal(0, left, 1e-12);
                Assert.All(built.Moves, move => Assert.True(move.Duration > 0));
            }
        }
    }

    private static Track Hand(double[] speeds, double[] depths) => new()
    {
        Status = SimulationStatus.Completed,
        Statistics = new SimulationStatistics(1, 0, 1, 1, 0),
        Time = [.. speeds.Select((_, i) => (double)i)],
        X = new double[speeds.Length],
        Y = new double[speeds.Length],
        Z = [.. depths.Select(d => -d)],
        VelocityX = [.. speeds.Select(s => -s)],
        VelocityY = new double[speeds.Length],
        VelocityZ = new double[speeds.Length],
        SpeedThroughWater = speeds,
        RodTension = new double[speeds.Length],
        LureTension = new double[speeds.Length],
        RodAngle = new double[speeds.Length],
        LureAngle = new double[speeds.Length],
        LineOut = new double[speeds.Length],
        State = [.. speeds.Select(_ => TrackState.Reeling)],
        Events = [],
        Shapes = [],
    };

    private sealed class Stopper(CancellationTokenSource stop) : IProgress<double>
    {
        public double Last { get; private set; }

        public void Report(double value)
        {
            Last = value;
            stop.Cancel();
        }
    }
}
