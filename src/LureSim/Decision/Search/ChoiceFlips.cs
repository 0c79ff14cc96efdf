using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Decision.Search;

/// <summary>What may change at a spot so that another head is the choice.</summary>
public enum FlipCondition
{
    /// <summary>The current at the surface (m/s).</summary>
    Current,

    /// <summary>The depth of the water (m).</summary>
    Depth,

    /// <summary>The reel speed of the hand (m/s).</summary>
    ReelSpeed,
}

/// <summary>A condition at which another head is the choice, the bait and the way of working it being the same.</summary>
/// <param name="Condition">What changes.</param>
/// <param name="Over">True where it flips above the value, false below it.</param>
/// <param name="Value">The value (SI).</param>
/// <param name="Rig">The rig from there on.</param>
public sealed record ChoiceFlip(FlipCondition Condition, bool Over, double Value, Rig Rig);

/// <summary>Finds where a choice flips, by a scan and bisection on single runs of the choice and of the heads to either side; sink counts follow.</summary>
public static class ChoiceFlips
{
    // Places of the scan, as multiples of the scenario's own value.
    private static readonly Dictionary<FlipCondition, (double[] Down, double[] Up)> Scan = new()
    {
        [FlipCondition.Current] = ([0.65, 0.3], [1.35, 1.8]),
        [FlipCondition.Depth] = ([0.8, 0.6], [1.25, 1.6]),
        [FlipCondition.ReelSpeed] = ([0.7], [1.4, 1.8]),
    };

    private const int Halvings = 4;

    // The longest fall that is counted down (s).
    private const double LongestCount = 60;

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
        JigHead[] heads = [.. scenario.Tackle.JigHeads.OrderBy(head => head.Mass)];
        int at = Array.IndexOf(heads, rig.Head);
        JigHead[] beside = heads[Math.Max(0, at - 1)..Math.Min(heads.Length, at + 2)];
        if (beside.Length < 2) return [];
        (FlipCondition Condition, bool Over)[] sides =
        [
            .. Enum.GetValues<FlipCondition>().Where(condition => Own(condition) > 0).SelectMany(condition => (bool[])[true, false], (condition, over) => (condition, over)),
        ];
        var found = new ChoiceFlip?[sides.Length];
        SimulationOptions settings = Trial.ForSearch(simulation);
        Parallel.For(0, sides.Length, parallel, i => found[i] = Side(sides[i].Condition, sides[i].Over));
        return [.. found.OfType<ChoiceFlip>()];

        double Own(FlipCondition condition) => condition switch
        {
            FlipCondition.Current => scenario.Spot.CurrentSpeed,
            FlipCondition.Depth => scenario.Spot.Depth,
            FlipCondition.ReelSpeed => rig.Presentation.RetrieveSpeed,
            _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, "Not a condition."),
        };

        ChoiceFlip? Side(FlipCondition condition, bool over)
        {
            // Single runs must agree with the tries about the scenario itself, otherwise there is nothing to flip from.
            if (Best(condition, 1).Head != rig.Head) return null;
            (double[] down, double[] up) = Scan[condition];
            double inside = 1, outside = double.NaN;
            Rig then = rig;
            foreach (double factor in over ? up : down)
            {
                then = Best(condition, factor);
                if (then.Head != rig.Head)
                {
                    outside = factor;
                    break;
                }

                inside = factor;
            }

            if (double.IsNaN(outside)) return null;
            for (int k = 0; k < Halvings; k++)
            {
                double middle = 0.5 * (inside + outside);
                Rig here = Best(condition, middle);
                if (here.Head != rig.Head) (outside, then) = (middle, here);
                else inside = middle;
            }

            return new ChoiceFlip(condition, over, Own(condition) * 0.5 * (inside + outside), then);
        }

        Rig Best(FlipCondition condition, double factor)
        {
            Scenario here = condition switch
            {
                FlipCondition.Current => scenario with { Spot = scenario.Spot with { CurrentSpeed = Math.Min(3, scenario.Spot.CurrentSpeed * factor) } },
                FlipCondition.Depth => scenario with { Spot = SpotChange.WithDepth(scenario.Spot, scenario.Spot.Depth * factor) },
                FlipCondition.ReelSpeed => scenario,
                _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, "Not a condition."),
            };
            Candidate[] runs =
            [
                .. beside.Select(head =>
                {
                    Rig one = rig with { Head = head };
                    if (condition == FlipCondition.ReelSpeed)
                        one = one with { Presentation = one.Presentation with { RetrieveSpeed = Math.Clamp(one.Presentation.RetrieveSpeed * factor, 0.02, one.Presentation.FastestSpeed) } };
                    return Trial.Run(here, Followed(here, one), settings, parallel.CancellationToken);
                }),
            ];
            return Preference.Of(runs, run => run.Rig, run => run.Score).Rig;
        }

        // A count that followed the zone follows it here too.
        Rig Followed(Scenario here, Rig one)
        {
            if (search.First.Target is not (SinkTarget.ZoneTop or SinkTarget.ZoneMiddle)) return one;
            Track fall = Trial.Simulate(here, one with { Presentation = one.Presentation with { CountDown = null } }, settings with { FallOnly = true, FallLimit = LongestCount }, parallel.CancellationToken);
            double? seconds = Trial.TimeToDepth(fall, Hands.Depth(search.First.Target, here.Spot.StrikeZone));
            return one with { Presentation = one.Presentation with { CountDown = seconds is { } s ? Hands.Rounded(s) : one.Presentation.CountDown } };
        }
    }
}
