using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Decision.Search;

/// <summary>
/// Finds where a choice flips, by a scan and bisection on single runs of the choice and of the heads to either side; sink counts follow. Between the last two places
/// of the bisection the lead of the head that takes over is taken as a straight line.
/// </summary>
public static class ChoiceFlips
{
    // Places of the scan, as multiples of the scenario's own value.
    private static readonly Dictionary<FlipCondition, (double[] Down, double[] Up)> Scan = new()
    {
        [FlipCondition.Current] = ([0.65, 0.3], [1.35, 1.8]),
        [FlipCondition.Depth] = ([0.8, 0.6], [1.25, 1.6]),
        [FlipCondition.ReelSpeed] = ([0.7], [1.4, 1.8]),
    };

    private const int Halvings = 2;

    /// <summary>Finds the conditions.</summary>
    /// <param name="search">The search behind the choice.</param>
    /// <param name="simulation">Settings of single runs; coarser ones are taken.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static IReadOnlyList<ChoiceFlip> Of(ChoiceSearch search, SimulationOptions simulation, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(simulation);
        ArgumentNullException.ThrowIfNull(parallel);
        Rig rig = search.First.Rig;
        Scenario scenario = search.Scenario;
        if (rig.Head.IsNone || !(search.First.Mean > 0)) return [];
        JigHead[] heads = [.. scenario.Tackle.JigHeads.Where(scenario.Hands.Allows).OrderBy(head => head.Mass)];
        int at = Array.IndexOf(heads, rig.Head);
        JigHead[] beside = heads[Math.Max(0, at - 1)..Math.Min(heads.Length, Math.Max(0, at) + 2)];
        if (at < 0 || beside.Length < 2) return [];
        (FlipCondition Condition, bool Over)[] sides =
        [
            .. Scan.Keys.Where(condition => Own(condition) > 0).SelectMany(condition => (bool[])[true, false], (condition, over) => (condition, over)),
        ];
        var found = new ChoiceFlip?[sides.Length];
        SimulationOptions settings = Trial.ForSearch(simulation);

        // Single runs must agree with the tries about the scenario itself, otherwise there is nothing to flip from.
        Candidate[] own = Runs(FlipCondition.ReelSpeed, 1, beside);
        if (Best(own) != rig.Head) return [];
        Parallel.For(0, sides.Length, parallel, i => found[i] = Side(sides[i].Condition, sides[i].Over));
        return [.. found.OfType<ChoiceFlip>()];

        double Own(FlipCondition condition) => condition switch
        {
            FlipCondition.Current => scenario.Spot.CurrentSpeed,
            FlipCondition.Depth => scenario.Spot.Depth,
            FlipCondition.ReelSpeed => rig.Presentation.RetrieveSpeed,
            _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, "Moves no lure."),
        };

        ChoiceFlip? Side(FlipCondition condition, bool over)
        {
            (double[] down, double[] up) = Scan[condition];
            double inside = 1, outside = double.NaN;
            Candidate[] within = own, beyond = own;
            JigHead? taking = null;
            foreach (double factor in over ? up : down)
            {
                beyond = Runs(condition, factor, beside);
                JigHead here = Best(beyond);
                if (here != rig.Head)
                {
                    (outside, taking) = (factor, here);
                    break;
                }

                (inside, within) = (factor, beyond);
            }

            if (taking is null) return null;
            double leadWithin = Lead(within, taking), leadBeyond = Lead(beyond, taking);
            Rig then = beyond.First(run => run.Rig.Head == taking).Rig;
            for (int k = 0; k < Halvings; k++)
            {
                double middle = 0.5 * (inside + outside);
                Candidate[] here = Runs(condition, middle, [rig.Head, taking]);
                double lead = Lead(here, taking);
                if (lead > 0) (outside, leadBeyond, then) = (middle, lead, here[1].Rig);
                else (inside, leadWithin) = (middle, lead);
            }

            // A third head may have stood between the two at the start: then the middle is as good as can be said.
            double place = leadWithin <= 0 && leadBeyond > leadWithin ? leadWithin / (leadWithin - leadBeyond) : 0.5;
            return new ChoiceFlip(condition, over, Own(condition) * (inside + (place * (outside - inside))), then);
        }

        static JigHead Best(Candidate[] runs) => Preference.Of(runs, run => run.Rig, run => run.Score).Rig.Head;

        // Above 0 where the head takes over: a heavier one must lead by a real margin, a lighter one lie no further behind.
        double Lead(Candidate[] runs, JigHead taking)
        {
            double now = runs.First(run => run.Rig.Head == rig.Head).Score, other = runs.First(run => run.Rig.Head == taking).Score;
            double tie = ScoreWeights.Default.Tie(Math.Max(now, other));
            return other - now + (taking.Mass > rig.Head.Mass ? -tie : tie);
        }

        Candidate[] Runs(FlipCondition condition, double factor, JigHead[] heads)
        {
            Scenario here = condition switch
            {
                FlipCondition.Current => scenario with { Spot = scenario.Spot with { CurrentSpeed = Math.Min(3, scenario.Spot.CurrentSpeed * factor) } },
                FlipCondition.Depth => scenario with { Spot = SpotChange.WithDepth(scenario.Spot, scenario.Spot.Depth * factor) },
                FlipCondition.ReelSpeed => scenario,
                _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, "Moves no lure."),
            };
            return
            [
                .. heads.Select(head =>
                {
                    Rig one = rig with { Head = head };
                    if (condition == FlipCondition.ReelSpeed)
                        one = one with { Presentation = one.Presentation with { RetrieveSpeed = Math.Clamp(one.Presentation.RetrieveSpeed * factor, 0.02, one.Presentation.FastestSpeed) } };
                    return Trial.Run(here, Followed(here, one), settings, parallel.CancellationToken);
                }),
            ];
        }

        // A count that followed the zone follows it here too.
        Rig Followed(Scenario here, Rig one)
        {
            if (search.First.Target is not (SinkTarget.ZoneTop or SinkTarget.ZoneMiddle)) return one;
            Track fall = Trial.Simulate(here, one with { Presentation = one.Presentation with { CountDown = null } }, settings with { FallOnly = true, FallLimit = ChoiceSearch.LongestCount }, parallel.CancellationToken);
            double? seconds = Trial.TimeToDepth(fall, Hands.Depth(search.First.Target, here.Spot.StrikeZone));
            return one with { Presentation = one.Presentation with { CountDown = seconds is { } s ? Hands.Rounded(s) : one.Presentation.CountDown } };
        }
    }
}
