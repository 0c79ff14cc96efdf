using System.Collections.Concurrent;
using LureSim.Decision.Baits;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;

namespace LureSim.Decision.Observations;

/// <summary>What observations did to a choice.</summary>
/// <param name="Update">What was learned.</param>
/// <param name="Before">The choice without them.</param>
/// <param name="BestBefore">Tries in which it was as good as any other.</param>
/// <param name="After">The choice with them.</param>
/// <param name="Reused">True if the tries that were run already were worth enough by their weights; false if new ones were run in the states that are left.</param>
/// <param name="EffectiveTries">What the plan's tries were worth by their weights.</param>
/// <param name="Runs">Casts simulated for the choice.</param>
public sealed record CalibratedChoice(ObservationUpdate Update, ChoiceSearch Before, int BestBefore, ChoiceSearch After, bool Reused, double EffectiveTries, int Runs)
{
    // The plan's tries are weighed as long as they are worth half of their number.
    private const double Enough = 0.5;

    // Tries of the first look in the new states, and rigs that go on.
    private const int FirstTries = 8;
    private const int GoOn = 5;

    // Longest fall that is counted down (s).
    private const double LongestCount = 60;

    /// <summary>True if another head or another bait is the choice now.</summary>
    public bool Moved => Before.First.Rig.Head != After.First.Rig.Head || Before.First.Rig.Body.Label != After.First.Rig.Body.Label;

    /// <summary>Seeks the choice anew among the rigs that came far in the search, and the chosen one with every head of the box.</summary>
    /// <param name="before">The search without the observations.</param>
    /// <param name="update">What was learned.</param>
    /// <param name="simulation">Settings of single runs; those of the search are taken.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static CalibratedChoice Of(ChoiceSearch before, ObservationUpdate update, SimulationOptions simulation, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(update);
        ArgumentNullException.ThrowIfNull(simulation);
        ArgumentNullException.ThrowIfNull(parallel);
        int tries = before.First.Runs.Count;
        int best = AsGood(before);
        double effective = tries > 0 && update.TryWeights?.Count == tries ? EffectiveSize.Of(update.TryWeights) : 0;
        if (tries > 0 && effective >= Enough * tries)
        {
            int[] picked = EffectiveSize.Resample([.. update.TryWeights!], tries, 0.5);
            return new CalibratedChoice(update, before, best, Weighed(before, update, picked), true, effective, 0);
        }

        var work = new Again(before, update, Trial.ForSearch(simulation), parallel);
        ChoiceSearch after = work.Run(Math.Max(1, tries));
        return new CalibratedChoice(update, before, best, after, false, effective, work.Runs);
    }

    /// <summary>Tries in which the choice of a search is as good as any other lure that ran them all.</summary>
    internal static int AsGood(ChoiceSearch search)
    {
        SearchedRig[] others = [.. search.Finalists.Where(rig => rig.Rig.Head != search.First.Rig.Head || rig.Rig.Body != search.First.Rig.Body)];
        return Enumerable.Range(0, search.Tries).Count(t =>
        {
            double own = search.First.Scores[t] * search.First.Appeal, most = others.Select(rig => rig.Scores[t] * rig.Appeal).DefaultIfEmpty(0).Max();
            return own > 0 && own >= most - ScoreWeights.Default.Tie(most);
        });
    }

    private static LureBody Known(LureBody body, ObservationUpdate update) => update.Calibrated.Tackle.Bodies.FirstOrDefault(other => other.Label == body.Label) ?? body;

    // The same runs, each as often as its weight says.
    private static ChoiceSearch Weighed(ChoiceSearch before, ObservationUpdate update, int[] picked)
    {
        SearchedRig[] rigs =
        [
            .. before.Finalists.Select(rig => rig with
            {
                Rig = rig.Rig with { Body = Known(rig.Rig.Body, update) },
                Outcomes = [.. picked.Select(t => rig.Outcomes[t])],
                Scores = [.. picked.Select(t => rig.Scores[t])],
                Runs = [.. picked.Select(t => rig.Runs[t])],
                Draws = [.. picked.Select(t => rig.Draws[t])],
            }),
        ];
        return Put(before, update, rigs, before.Runs);
    }

    private static ChoiceSearch Put(ChoiceSearch before, ObservationUpdate update, IReadOnlyList<SearchedRig> rigs, int runs)
    {
        var bodies = BodyChoice.Of(update.Calibrated);
        SearchedRig first = BaitPick.Of(rigs, bodies, ScoreWeights.Default);
        return before with
        {
            Scenario = update.Calibrated,
            Bodies = bodies,
            First = first,
            Finalists = [first, .. rigs.Where(rig => rig != first).OrderByDescending(rig => rig.Value)],
            Heads = HeadsOf(first, rigs, before, update),
            FirstLook = [.. before.FirstLook.Select(look => look with { Rig = look.Rig with { Body = Known(look.Rig.Body, update) } })],
            Draws = first.Draws,
            Runs = runs,
        };
    }

    // The choice with every head, each as it was worked where it came far.
    private static IReadOnlyList<Rig> HeadsOf(SearchedRig first, IReadOnlyList<SearchedRig> rigs, ChoiceSearch before, ObservationUpdate update)
    {
        if (first.Rig.Head.IsNone) return [first.Rig];
        return
        [
            .. before.Scenario.Tackle.JigHeads.Select(head => head == first.Rig.Head ? first.Rig
                : rigs.FirstOrDefault(rig => rig.Rig.Head == head && Rig.SameWay(rig.Rig, first.Rig))?.Rig
                ?? first.Rig with { Head = head, Presentation = first.Rig.Presentation with { CountDown = before.Heads.FirstOrDefault(rig => rig.Head == head)?.Presentation.CountDown ?? first.Rig.Presentation.CountDown } }),
        ];
    }

    // New tries in the states that are left.
    private sealed class Again(ChoiceSearch before, ObservationUpdate update, SimulationOptions settings, ParallelOptions parallel)
    {
        public int Runs { get; private set; }

        public ChoiceSearch Run(int tries)
        {
            Scenario scenario = update.Calibrated;
            List<SearchedRig> wanted = [.. before.Finalists];
            wanted.AddRange(before.Heads.Where(head => !before.Finalists.Any(rig => rig.Rig.Head == head.Head && Rig.SameWay(rig.Rig, head))).Select(head => before.First with { Rig = head }));
            SearchedRig[] rigs = new SearchedRig[wanted.Count];
            Each(rigs.Length, i =>
            {
                SearchedRig rig = wanted[i];
                Rig now = rig.Rig with { Body = Known(rig.Rig.Body, update) };
                rigs[i] = rig with { Rig = now with { Presentation = now.Presentation with { CountDown = Count(scenario, now, rig.Target) } } };
            });
            rigs = [.. rigs.DistinctBy(rig => rig.Rig)];
            if (scenario.Uncertainty.IsExactInMotion || tries <= 1)
            {
                Each(rigs.Length, i =>
                {
                    Candidate look = Trial.Run(scenario, rigs[i].Rig, settings, parallel.CancellationToken);
                    rigs[i] = rigs[i] with { Outcomes = [look.Coverage], Scores = [look.Score], Runs = [], Draws = [] };
                });
                Runs += rigs.Length;
                return Put(before, update, rigs, before.Runs + Runs);
            }

            var runs = new UncertaintyStudy.DrawRun?[rigs.Length, tries];
            IReadOnlyList<UncertainDraw>[] draws = [.. rigs.Select(rig => UncertainDraw.Draw(scenario, rig.Rig.Presentation, tries))];
            int few = Math.Min(FirstTries, tries);
            int[] early = [.. Enumerable.Range(0, few).Select(i => (int)((i + 0.5) * tries / few))], all = [.. Enumerable.Range(0, tries)];
            int[] every = [.. Enumerable.Range(0, rigs.Length)];
            Try(rigs, draws, runs, every, early);
            double Mean(int r) => early.Average(t => runs[r, t]!.Score) * rigs[r].Appeal;
            int stays = Array.FindIndex(rigs, rig => rig.Rig.Head == before.First.Rig.Head && rig.Rig.Body.Label == before.First.Rig.Body.Label);
            int[] on = [.. every.OrderByDescending(Mean).Take(GoOn).Append(Math.Max(0, stays)).Distinct().Order()];

            // A neighbour by weight of the best may be as good and lighter.
            on = [.. on.Union(Beside(rigs, on.MaxBy(Mean)))];
            Try(rigs, draws, runs, on, all);
            return Put(
                before,
                update,
                [
                    .. on.Select(r => rigs[r] with
                    {
                        Outcomes = [.. all.Select(t => runs[r, t]!.Coverage)],
                        Scores = [.. all.Select(t => runs[r, t]!.Score)],
                        Runs = [.. all.Select(t => runs[r, t]!)],
                        Draws = draws[r],
                    }),
                ],
                before.Runs + Runs);
        }

        private static IEnumerable<int> Beside(SearchedRig[] rigs, int best)
        {
            int[] same = [.. Enumerable.Range(0, rigs.Length).Where(r => Rig.SameWay(rigs[r].Rig, rigs[best].Rig)).OrderBy(r => rigs[r].Rig.Head.Mass)];
            int at = Array.IndexOf(same, best);
            if (at > 0) yield return same[at - 1];
            if (at + 1 < same.Length) yield return same[at + 1];
        }

        private void Try(SearchedRig[] rigs, IReadOnlyList<UncertainDraw>[] draws, UncertaintyStudy.DrawRun?[,] runs, int[] which, int[] tries)
        {
            (int Rig, int Try)[] work = [.. which.SelectMany(r => tries.Where(t => runs[r, t] is null), (r, t) => (r, t))];
            Runs += work.Length;
            double[] reach = [.. draws.Select(UncertaintyStudy.Reach)];
            Each(work.Length, i =>
            {
                (int r, int t) = work[i];
                UncertainDraw draw = draws[r][t];
                Rig rig = rigs[r].Rig;
                Candidate run = Trial.Run(
                    draw.Scenario, rig with { Presentation = draw.Presentation }, settings with { LineDrag = draw.LineDrag, LureDragFactor = draw.LureDragOf(rig.Body) }, parallel.CancellationToken);
                runs[r, t] = new(run.Coverage, run.Score, run.Track.Status == SimulationStatus.Failed, WaterMap.Of(run.Track, draw.Scenario.Spot, update.Calibrated.Spot, draw.Presentation, reach[r]));
            });
        }

        // A count that aims at the zone follows what was learned.
        private double? Count(Scenario scenario, Rig rig, SinkTarget target)
        {
            if (target is not (SinkTarget.ZoneTop or SinkTarget.ZoneMiddle)) return rig.Presentation.CountDown;
            Track fall = Trial.Simulate(scenario, rig with { Presentation = rig.Presentation with { CountDown = null } }, settings with { FallOnly = true, FallLimit = LongestCount }, parallel.CancellationToken);
            return Trial.TimeToDepth(fall, Hands.Depth(target, scenario.Spot.StrikeZone)) is { } seconds ? Hands.Rounded(seconds) : rig.Presentation.CountDown;
        }

        private void Each(int count, Action<int> body) =>
            Parallel.ForEach(Partitioner.Create(Enumerable.Range(0, count), EnumerablePartitionerOptions.NoBuffering), parallel, body);
    }
}
