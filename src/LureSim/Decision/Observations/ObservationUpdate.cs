using System.Diagnostics;
using LureSim.Decision.Trials;
using LureSim.Model;
using MathNet.Numerics.LinearAlgebra;

namespace LureSim.Decision.Observations;

/// <summary>What observations change of what is known of water and tackle (Bayes' rule).</summary>
/// <param name="Scenario">The scenario as it was given.</param>
/// <param name="Calibrated">The scenario with what was learned: its middle values, and the states that its tries are drawn from.</param>
/// <param name="Inputs">The inputs before and after.</param>
/// <param name="Fits">The observations beside their predictions, in the order of the scenario.</param>
/// <param name="Effective">What the states before are worth by their weights, of <paramref name="States"/> (Kong 1992, kong1992note).</param>
/// <param name="States">States that were weighed.</param>
/// <param name="Steps">Steps in which the likelihood came in because the weights collapsed; 0 where they sufficed.</param>
/// <param name="Runs">Casts simulated.</param>
public sealed record ObservationUpdate(
    Scenario Scenario, Scenario Calibrated, IReadOnlyList<LearnedInput> Inputs, IReadOnlyList<ObservationFit> Fits, double Effective, int States, int Steps, int Runs)
{
    // Less likely than this is taken for a mistake (two-sided; prior predictive check: Box 1980, box1980sampling).
    private const double Unbelievable = 0.002;

    // The best try may be less likely than the best state by this much (logarithm): three standard deviations.
    private const double FarBehind = 4.5;

    // An observation so many standard deviations off in the mean is looked at for a conflict with the others.
    private const double FarOff = 2.2;

    /// <summary>Weights of the plan's own tries, in their order, and what they are worth; null where nothing is uncertain.</summary>
    internal IReadOnlyList<double>? TryWeights { get; init; }

    /// <summary>Inputs that were uncertain and are better known now.</summary>
    public IEnumerable<LearnedInput> Learned => Inputs.Where(input => input.Learned);

    /// <summary>Observations that cannot be true and were left out.</summary>
    public IEnumerable<ObservationFit> Conflicts => Fits.Where(fit => fit.Conflict is not null);

    /// <summary>Learns from the observations of a scenario; null where there are none.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads. Null for all threads.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ObservationUpdate? Of(Scenario scenario, ParallelOptions? parallel = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);

        // Pool timings of a bait with a drag of its own are in that number already.
        scenario = scenario with { Seen = [.. scenario.Seen.Where(seen => seen.Kind != ObservationKind.PoolFall || seen.Body?.Drag is null)] };
        if (scenario.Seen.Count == 0) return null;
        LureBody[] bodies = [.. scenario.Seen.Select(seen => seen.Body).OfType<LureBody>().Distinct()];
        var space = new InputSpace(scenario, bodies);
        var model = new ObservationModel(scenario, scenario.Seen, space, parallel ?? new ParallelOptions());
        int seed = scenario.Uncertainty.Seed, n = scenario.Seen.Count;
        double[][] before = TemperedSample.Before(space.Dimensions, seed);
        var conflicts = new ObservationConflict?[n];
        double[] chances = [.. Enumerable.Range(0, n).Select(o => TwoSided(model, o, before, scenario.Seen[o]))];
        for (int o = 0; o < n; o++)
        {
            if (chances[o] < Unbelievable) conflicts[o] = new ObservationConflict(ConflictKind.WithScenario, chances[o], Suspects(scenario.Seen[o], model.Slopes(o)));
        }

        bool[] leftOut = [.. conflicts.Select(conflict => conflict is not null)];
        TemperedSample sample = Draw();
        double effective = sample.Effective;
        if (sample.Steps > 0 && model.Runs > 0)
        {
            model.Refine(sample.Points);
            sample = Draw();
        }

        while (WorstOff(model, sample.Points, scenario.Seen, leftOut) is { } worst)
        {
            // What the others alone make of it.
            leftOut[worst] = true;
            TemperedSample without = Draw();
            double chance = TwoSided(model, worst, without.Points, scenario.Seen[worst]);
            if (chance >= Unbelievable)
            {
                leftOut[worst] = false;
                break;
            }

            conflicts[worst] = new ObservationConflict(ConflictKind.WithOthers, chance, Suspects(scenario.Seen[worst], model.Slopes(worst)));
            sample = without;
        }

        double[][] after = Ordered(sample.Points);
        LearnedInput[] inputs = [.. InputsOf(scenario, space, before, after)];
        ObservationFit[] fits = [.. Enumerable.Range(0, n).Select(o => new ObservationFit(scenario.Seen[o], Predicted(model, o, before), Predicted(model, o, after), conflicts[o]))];
        return new ObservationUpdate(scenario, CalibratedOf(scenario, space, after, inputs), inputs, fits, effective, TemperedSample.Size, sample.Steps, model.Runs)
        {
            TryWeights = scenario.Uncertainty.IsExactInMotion ? null : WeightsOfTries(scenario, space, model, leftOut, sample.Points),
        };

        TemperedSample Draw() => TemperedSample.Draw(space.Dimensions, numbers => model.Log(numbers, leftOut), seed);
    }

    // The plan's tries by the numbers that they were drawn with.
    private static double[]? WeightsOfTries(Scenario scenario, InputSpace space, ObservationModel model, bool[] leftOut, double[][] states)
    {
        int samples = Math.Max(1, scenario.Uncertainty.Samples);
        double[,] quantiles = LatinHypercube.Draw(samples, Uncertainty.UncertainInputs.All.Count, scenario.Uncertainty.Seed);
        double[] logs = new double[samples];
        for (int i = 0; i < samples; i++)
        {
            double[] numbers = new double[space.Dimensions];
            numbers[0] = Number(Uncertainty.UncertainInput.Current);
            numbers[1] = Number(Uncertainty.UncertainInput.Depth);
            numbers[2] = Number(Uncertainty.UncertainInput.LineDrag);
            numbers[3] = Number(Uncertainty.UncertainInput.LineLaw);
            for (int b = 0; b < space.Bodies.Count; b++) numbers[InputSpace.FirstBody + b] = Number(Uncertainty.UncertainInput.LureDrag);
            logs[i] = model.Log(numbers, leftOut);

            double Number(Uncertainty.UncertainInput input) => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, quantiles[i, (int)input]);
        }

        // Tries that all lie far from what is left are all as unlikely: their even weights are worth nothing.
        return logs.Max() < states.Max(numbers => model.Log(numbers, leftOut)) - FarBehind ? null : EffectiveSize.Weights(logs);
    }

    private static double TwoSided(ObservationModel model, int o, double[][] states, Observation seen)
    {
        double low = model.Chance(o, states);
        return seen.Happened ? 2 * Math.Min(low, 1 - low) : low;
    }

    // The observation that what is left agrees with least; null where all agree, or where one is left.
    private static int? WorstOff(ObservationModel model, double[][] states, IReadOnlyList<Observation> seen, bool[] leftOut)
    {
        if (leftOut.Count(left => !left) < 2) return null;
        int worst = -1;
        double most = FarOff;
        for (int o = 0; o < seen.Count; o++)
        {
            if (leftOut[o]) continue;
            double off = 0;
            foreach (double[] numbers in states)
            {
                (double value, double deviation) = model.Predict(o, numbers);
                double by = (Likelihood.Middle(seen[o]) - value) / deviation;
                off += seen[o].Happened ? by : Math.Max(0, by);
            }

            off = Math.Abs(off / states.Length);
            if (off > most) (worst, most) = (o, off);
        }

        return worst < 0 ? null : worst;
    }

    private static ConflictSuspect[] Suspects(Observation seen, double[] slopes)
    {
        if (slopes.Length == 0)
        {
            return seen.Kind switch
            {
                ObservationKind.FloatDrift => [ConflictSuspect.Length, ConflictSuspect.Current],
                ObservationKind.PoolFall => [ConflictSuspect.Length, ConflictSuspect.Weight, ConflictSuspect.Lure],
                ObservationKind.WhiteVanishes or ObservationKind.LureVanishes => [ConflictSuspect.Clarity],
                _ => throw new UnreachableException($"{seen.Kind} moves none of the inputs."),
            };
        }

        // Inputs by how strongly they move it, one standard deviation each; a weight moves all that a drag moves, and more.
        (ConflictSuspect Suspect, double By)[] by =
        [
            (ConflictSuspect.Current, Math.Abs(slopes[0])), (ConflictSuspect.Depth, Math.Abs(slopes[1])), (ConflictSuspect.Line, Math.Abs(slopes[2])),
            (ConflictSuspect.Weight, 1.001 * Math.Abs(slopes[3])), (ConflictSuspect.Cast, Math.Abs(slopes[5])),
        ];
        double most = by.Max(item => item.By);
        return [.. by.OrderByDescending(item => item.By).Where(item => item.By > 0.25 * most).Take(2).Select(item => item.Suspect)];
    }

    private static Interval Predicted(ObservationModel model, int o, double[][] states) => Interval.Of(states.Select(numbers => model.Predict(o, numbers).Value));

    private static IEnumerable<LearnedInput> InputsOf(Scenario scenario, InputSpace space, double[][] before, double[][] after)
    {
        InputState[] was = [.. before.Select(numbers => space.At(numbers))], now = [.. after.Select(numbers => space.At(numbers))];
        yield return Input(LearnedInputKind.Current, null, state => state.Current);
        yield return Input(LearnedInputKind.Depth, null, state => state.Depth);
        for (int b = 0; b < space.Bodies.Count; b++)
        {
            int at = b;
            yield return Input(LearnedInputKind.LureDrag, space.Bodies[b], state => state.LureDrags[at]);
        }

        yield return Input(LearnedInputKind.LineDrag, null, state => state.LineDrag);
        if (scenario.Spot.Clarity is SecchiClarity) yield return Input(LearnedInputKind.Clarity, null, state => state.Secchi);

        LearnedInput Input(LearnedInputKind kind, LureBody? body, Func<InputState, double> value)
        {
            double[] old = [.. was.Select(value)], present = [.. now.Select(value)];
            return new LearnedInput(kind, body, Interval.Of(old), Interval.Of(present), old, present);
        }
    }

    // Along the direction in which the states differ most, so that any few of them, evenly picked, span it.
    private static double[][] Ordered(double[][] states)
    {
        int d = states[0].Length;
        Matrix<double> matrix = Matrix<double>.Build.DenseOfRowArrays(states);
        Vector<double> mean = matrix.ColumnSums() / states.Length;
        for (int i = 0; i < states.Length; i++) matrix.SetRow(i, matrix.Row(i) - mean);
        Vector<double> leading = ((matrix.Transpose() * matrix) / states.Length).Evd(Symmetricity.Symmetric).EigenVectors.Column(d - 1);
        if (leading[leading.AbsoluteMaximumIndex()] < 0) leading = -leading;
        return [.. states.OrderBy(state => leading.DotProduct(Vector<double>.Build.DenseOfArray(state)))];
    }

    private static Scenario CalibratedOf(Scenario scenario, InputSpace space, double[][] after, IReadOnlyList<LearnedInput> inputs)
    {
        LearnedInput Of(LearnedInputKind kind, LureBody? body = null) => inputs.First(input => input.Kind == kind && input.Body == body);
        Spot spot = SpotChange.WithDepth(scenario.Spot, Middle(Of(LearnedInputKind.Depth), scenario.Spot.Depth)) with
        {
            CurrentSpeed = Middle(Of(LearnedInputKind.Current), scenario.Spot.CurrentSpeed),
        };
        ScenarioUncertainty uncertainty = scenario.Uncertainty;
        if (spot.Clarity is SecchiClarity secchi && Of(LearnedInputKind.Clarity) is { Learned: true } clarity)
        {
            spot = spot with { Clarity = secchi with { Depth = clarity.After.Median } };

            // Eight in ten lie within 1.28 standard deviations, nine in ten within 1.64.
            uncertainty = uncertainty with { Clarity = Spread.OfAmount(0.5 * (clarity.After.High - clarity.After.Low) * 1.6449 / 1.2816) };
        }

        if (!scenario.Uncertainty.IsExactInMotion)
        {
            uncertainty = uncertainty with
            {
                Learned = [.. after.Select(numbers => space.At(numbers)).Select(state => new LearnedTry(
                    state.Current, state.Depth, state.LineDrag, state.LineLaw, space.Bodies.Select((body, b) => (body.Label, Drag: state.LureDrags[b])).ToDictionary(pair => pair.Label, pair => pair.Drag)))],
            };
        }

        LureBody Known(LureBody body) => inputs.FirstOrDefault(input => input.Body == body) is not { Learned: true } own ? body : body with
        {
            Drag = (body.Drag ?? new MeasuredDrag(1, 0)) with
            {
                Factor = own.After.Median,
                Margin = Math.Clamp(0.5 * (own.After.High - own.After.Low) / own.After.Median * 1.6449 / 1.2816, 0, 1),
            },
        };
        return scenario with
        {
            Spot = spot,
            Uncertainty = uncertainty,
            Tackle = scenario.Tackle with { Bodies = [.. scenario.Tackle.Bodies.Select(Known)] },
            Compare = [.. scenario.Compare.Select(rig => rig with { Body = Known(rig.Body) })],
            Seen = [],
        };
    }

    private static double Middle(LearnedInput input, double own) => input.Learned ? input.After.Median : own;
}
