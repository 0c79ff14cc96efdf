using System.Collections.Concurrent;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Decision.Observations;

/// <summary>Something to look at on the water, and what it would be worth.</summary>
/// <param name="Observation">What to observe; its figure is the middle of what is expected.</param>
/// <param name="Expected">What is expected, over the tries.</param>
/// <param name="WrongNow">Chance that the choice is wrong by a real margin, as things stand, over the tries.</param>
/// <param name="WrongThen">The same after the observation, by expected value over what it may show.</param>
/// <param name="Between">The two heads that it decides between most often; one where it never changes the choice.</param>
public sealed record NextLook(Observation Observation, Interval Expected, double WrongNow, double WrongThen, IReadOnlyList<JigHead> Between)
{
    // Rigs whose fall is a candidate: the best by value.
    private const int MostFalls = 4;

    // Points of the observer's error at which what it shows is tried: three of Gauss and Hermite.
    private static readonly (double At, double Weight)[] Errors = [(-1.7320508075688772, 1.0 / 6), (0, 2.0 / 3), (1.7320508075688772, 1.0 / 6)];

    /// <summary>Less than this is not worth a look (chance).</summary>
    public const double Worth = 0.01;

    /// <summary>Chance of a wrong choice that it takes away.</summary>
    public double Gain => WrongNow - WrongThen;

    /// <summary>
    /// What to look at, the most telling first: of each observation the expected reduction of the chance of a wrong choice, by the tries (expected value of sample
    /// information: Raiffa and Schlaifer 1961, raiffa1961applied). Each try in turn is taken for the truth, the others are weighed by what it would show.
    /// </summary>
    /// <param name="search">The choice with its tries.</param>
    /// <param name="simulation">Settings of single runs; those of the search are taken.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static IReadOnlyList<NextLook> Of(ChoiceSearch search, SimulationOptions simulation, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(simulation);
        ArgumentNullException.ThrowIfNull(parallel);
        int tries = search.First.Draws.Count;
        if (tries < 3 || search.Finalists.Count < 2) return [];
        SearchedRig[] rigs = [.. search.Finalists.Where(rig => rig.Scores.Count == tries)];
        double[][] values = [.. rigs.Select(rig => rig.Scores.Select(score => score * rig.Appeal).ToArray())];
        double now = Wrong(values, rigs, null, 0, out _);
        if (!(now > 0)) return [];
        (Observation Observation, double[] Predicted)[] looks = Candidates(search, rigs, Trial.ForSearch(simulation), parallel);
        var found = new List<NextLook>();
        foreach ((Observation observation, double[] predicted) in looks)
        {
            double deviation = ObservationErrors.Of(observation);
            double then = Wrong(values, rigs, predicted, deviation, out JigHead[] between);
            found.Add(new NextLook(observation, Interval.Of(predicted), now, then, between));
        }

        return [.. found.Where(look => look.Gain > Worth).OrderByDescending(look => look.Gain)];
    }

    // Each try as the truth, the choice made by the others: without and with what the truth would show.
    private static double Wrong(double[][] values, SearchedRig[] rigs, double[]? predicted, double deviation, out JigHead[] between)
    {
        int tries = values[0].Length;
        double wrong = 0;
        var chosen = new Dictionary<JigHead, double>();
        for (int truth = 0; truth < tries; truth++)
        {
            foreach ((double at, double weight) in predicted is null ? [(0.0, 1.0)] : Errors)
            {
                double seen = predicted is null ? 0 : predicted[truth] + (at * deviation);
                double[] logs = [.. Enumerable.Range(0, tries).Select(t => t == truth ? double.NegativeInfinity : predicted is null ? 0 : Log(seen, predicted[t], deviation))];
                double[] weights = EffectiveSize.Weights(logs);
                int pick = Enumerable.Range(0, rigs.Length).MaxBy(r => weights.Zip(values[r], (w, v) => w * v).Sum());
                double best = values.Max(own => own[truth]);
                if (values[pick][truth] < best - ScoreWeights.Default.Tie(best)) wrong += weight / tries;
                chosen[rigs[pick].Rig.Head] = chosen.GetValueOrDefault(rigs[pick].Rig.Head) + weight;
            }
        }

        between = [.. chosen.OrderByDescending(pair => pair.Value).Take(2).Select(pair => pair.Key).OrderBy(head => head.Mass)];
        return wrong;
    }

    private static double Log(double seen, double predicted, double deviation)
    {
        if (double.IsInfinity(seen) || double.IsInfinity(predicted)) return double.IsInfinity(seen) && double.IsInfinity(predicted) ? 0 : -32;
        double off = Math.Clamp((seen - predicted) / deviation, -8, 8);
        return -0.5 * off * off;
    }

    private static (Observation, double[])[] Candidates(ChoiceSearch search, SearchedRig[] rigs, SimulationOptions settings, ParallelOptions parallel)
    {
        Scenario scenario = search.Scenario;
        List<(Observation Observation, SearchedRig Rig)> casts = [];
        foreach (SearchedRig rig in rigs.DistinctBy(rig => (rig.Rig.Head, rig.Rig.Body)).Take(MostFalls))
        {
            Presentation way = Falling(rig.Own);
            casts.Add((new Observation { Kind = ObservationKind.BottomTime, Value = 0, Counted = true, Head = rig.Rig.Head, Body = rig.Rig.Body, Way = way }, rig));
            if (scenario.Spot.CurrentSpeed > 0) casts.Add((new Observation { Kind = ObservationKind.LineAngle, Value = 0, Head = rig.Rig.Head, Body = rig.Rig.Body, Way = way }, rig));
        }

        int tries = rigs[0].Draws.Count;
        double[] found = new double[casts.Count * tries];
        Parallel.ForEach(Partitioner.Create(Enumerable.Range(0, found.Length), EnumerablePartitionerOptions.NoBuffering), parallel, i =>
        {
            (Observation observation, SearchedRig rig) = casts[i / tries];
            UncertainDraw draw = rig.Draws[i % tries];
            found[i] = ObservedRun.Predict(
                draw.Scenario,
                observation,
                observation.Way! with { CastLength = draw.Presentation.CastLength },
                settings with { LineDrag = draw.LineDrag, LureDragFactor = draw.LureDragOf(rig.Rig.Body) },
                parallel.CancellationToken);
        });
        List<(Observation, double[])> all = [];
        for (int c = 0; c < casts.Count; c++)
        {
            double[] predicted = found[(c * tries)..((c + 1) * tries)];

            // What never happens in most tries is no count that can be told.
            if (predicted.Count(double.IsFinite) < tries / 2) continue;
            all.Add((casts[c].Observation with { Value = Math.Clamp(Interval.Of(predicted).Median, Limits.Observed.Least, Limits.Observed.Most) }, predicted));
        }

        if (scenario.Spot.CurrentSpeed > 0)
        {
            // A float over as many metres as take half a minute.
            double length = Math.Clamp(Math.Round(30 * scenario.Spot.CurrentSpeed), 3, 30);
            double[] predicted = [.. rigs[0].Draws.Select(draw => draw.Scenario.Spot.CurrentSpeed > 0 ? length / draw.Scenario.Spot.CurrentSpeed : double.PositiveInfinity)];
            all.Add((new Observation { Kind = ObservationKind.FloatDrift, Value = Math.Clamp(Interval.Of(predicted).Median, 0, Limits.Observed.Most), Length = length }, predicted));
        }

        return [.. all];
    }

    /// <summary>A cast with an open bail to the bottom.</summary>
    private static Presentation Falling(Presentation way) => new() { Name = way.Name, CastLength = way.CastLength, RetrieveSpeed = 0.5, Aim = way.Aim, DriftSpeed = way.DriftSpeed, DriftDirection = way.DriftDirection, LineLeftAtEnd = way.LineLeftAtEnd };
}
