using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Interpolation;
using MathNet.Numerics.Random;

namespace LureSim.Decision.Observations;

/// <summary>Predicts all observations of a scenario in any state of its uncertain inputs, from a few dozen runs each.</summary>
internal sealed class ObservationModel
{
    // Runs of the first look at an observation, and of the second, in the states that are left.
    private const int FirstRuns = 40;
    private const int SecondRuns = 24;

    // A run of the first look counts this much beside one of the second.
    private const double FarWeight = 0.1;

    // Inputs of second order: current, depth, drag of line and lure; the rest are the law, cast, speed and rod.
    private const int Second = 4;
    private const int Inputs = 8;
    private const int FirstNuisance = 5;

    // Numbers beyond the cut of a spread are as at it.
    private const double Cut = 3.3;

    // What coarse runs may be off, as a share (docs/decision.md), and a time that stands for never (s).
    private const double RunShare = 0.03;
    private const double Never = 300;

    private readonly Scenario scenario;
    private readonly Observation[] observations;
    private readonly InputSpace space;
    private readonly List<double[]>[] points;
    private readonly List<double>[] values;
    private readonly List<double>[] weights;
    private readonly ResponseSurface?[] surfaces;
    private readonly double[] deviations;
    private readonly ParallelOptions parallel;

    // The bait of each observation among those of the space; -1 for none.
    private readonly int[] bodyOf;

    // Seconds of a timed fall by the logarithm of the drag factor.
    private readonly LinearSpline?[] pools;

    // Drag factors of the table of a timed fall, evenly spaced by their logarithm: 2 % apart.
    private const int PoolPoints = 160;

    public ObservationModel(Scenario scenario, IReadOnlyList<Observation> observations, InputSpace space, ParallelOptions parallel)
    {
        this.scenario = scenario;
        this.observations = [.. observations];
        this.space = space;
        this.parallel = parallel;
        int n = this.observations.Length;
        points = [.. Enumerable.Range(0, n).Select(_ => new List<double[]>())];
        values = [.. Enumerable.Range(0, n).Select(_ => new List<double>())];
        weights = [.. Enumerable.Range(0, n).Select(_ => new List<double>())];
        surfaces = new ResponseSurface?[n];
        deviations = [.. this.observations.Select(ObservationErrors.Of)];
        bodyOf = [.. this.observations.Select(seen => seen.Body is null ? -1 : BodyOf(seen))];
        pools = [.. this.observations.Select(seen => seen.Kind == ObservationKind.PoolFall ? PoolOf(seen) : null)];
        double[,] quantiles = LatinHypercube.Draw(FirstRuns, space.Dimensions + Inputs - FirstNuisance, scenario.Uncertainty.Seed + 31);
        Train([.. Enumerable.Range(0, FirstRuns).Select(i => Enumerable.Range(0, quantiles.GetLength(1)).Select(d => Normal.InvCDF(0, 1, quantiles[i, d])).ToArray())], 1);
    }

    /// <summary>Casts simulated.</summary>
    public int Runs { get; private set; }

    /// <summary>Looks again, in the states that are left.</summary>
    public void Refine(double[][] states)
    {
        foreach (List<double> weight in weights)
        {
            for (int i = 0; i < weight.Count; i++) weight[i] = FarWeight;
        }

        var random = new MersenneTwister(unchecked((scenario.Uncertainty.Seed * 6271) + 5), threadSafe: false);
        Train([.. Enumerable.Range(0, SecondRuns).Select(i => states[(int)((i + 0.5) * states.Length / SecondRuns)].Concat(Enumerable.Range(0, Inputs - FirstNuisance).Select(_ => Normal.Sample(random, 0, 1))).ToArray())], 1);
    }

    /// <summary>Logarithm of the likelihood of a state, without the observations that are left out.</summary>
    public double Log(double[] numbers, bool[] leftOut)
    {
        double sum = 0;
        InputState state = space.At(numbers);
        for (int o = 0; o < observations.Length; o++)
        {
            if (leftOut[o]) continue;
            (double predicted, double deviation) = Predict(o, numbers, state);
            sum += Likelihood.Log(observations[o], predicted, deviation) - (observations[o].Happened ? Math.Log(deviation) : 0);
        }

        return sum;
    }

    /// <summary>Chance, over some states, of an observation as low as it is, or that it did not happen.</summary>
    public double Chance(int o, double[][] states)
    {
        double sum = 0;
        foreach (double[] numbers in states)
        {
            (double predicted, double deviation) = Predict(o, numbers, space.At(numbers));
            sum += Likelihood.Chance(observations[o], predicted, deviation);
        }

        return sum / states.Length;
    }

    /// <summary>What would be observed in a state, and the standard deviation of observer and prediction.</summary>
    public (double Value, double Deviation) Predict(int o, double[] numbers) => Predict(o, numbers, space.At(numbers));

    /// <summary>Slopes of an observation by its inputs: current, depth, drag of line and of lure, law, cast, speed, rod; empty for closed forms.</summary>
    public double[] Slopes(int o) => surfaces[o] is { } surface ? [.. Enumerable.Range(0, Inputs).Select(surface.Slope)] : [];

    private (double Value, double Deviation) Predict(int o, double[] numbers, InputState state)
    {
        Observation seen = observations[o];
        double own = deviations[o];
        if (surfaces[o] is not { } surface) return (ClosedForm(o, state), own);
        Span<double> features = stackalloc double[Inputs];
        Features(o, numbers, features);
        double at = surface.At(features), scatter = surface.Scatter * surface.Scatter;
        for (int i = FirstNuisance; i < Inputs; i++) scatter += surface.Slope(i) * surface.Slope(i);
        scatter = Math.Sqrt(scatter);
        if (IsRate(seen.Kind))
        {
            double time = 1 / Math.Max(at, 1 / Never);
            return (time, Together(own, Math.Min(time, time * time * scatter), RunShare * time));
        }

        double share = seen.Kind is ObservationKind.LineAngle or ObservationKind.ExitAngle ? 0 : RunShare;
        return (at, Together(own, scatter, share * at));
    }

    private LinearSpline PoolOf(Observation seen)
    {
        double[] logs = [.. Enumerable.Range(0, PoolPoints).Select(i => Math.Log(0.2) + (Math.Log(25) * i / (PoolPoints - 1)))];
        return LinearSpline.InterpolateSorted(logs, [.. logs.Select(log => Math.Min(PoolFall.Seconds(scenario.Tackle, seen, Math.Exp(log)), Never))]);
    }

    private double ClosedForm(int o, InputState state) => observations[o] switch
    {
        { Kind: ObservationKind.WhiteVanishes } => state.Secchi,
        { Kind: ObservationKind.LureVanishes } => ObservationErrors.LureOfPlate * state.Secchi,
        { Kind: ObservationKind.FloatDrift } seen => state.Current > 0 ? seen.Length!.Value / state.Current : Never * 10,
        { Kind: ObservationKind.PoolFall } seen => pools[o]!.Interpolate(Math.Log(state.LureDrags[BodyOf(seen)])),
        _ => throw new InvalidOperationException("This observation needs a cast."),
    };

    private int BodyOf(Observation seen)
    {
        int at = 0;
        while (space.Bodies[at] != seen.Body) at++;
        return at;
    }

    private void Train(double[][] states, double weight)
    {
        int[] casts = [.. Enumerable.Range(0, observations.Length).Where(o => ObservedRun.NeedsCast(observations[o].Kind))];
        double[] found = new double[casts.Length * states.Length];
        SimulationOptions settings = Trial.ForSearch(new SimulationOptions());
        Parallel.For(0, found.Length, parallel, i => found[i] = Run(observations[casts[i / states.Length]], states[i % states.Length], settings));
        Runs += found.Length;
        for (int c = 0; c < casts.Length; c++)
        {
            int o = casts[c];
            for (int s = 0; s < states.Length; s++)
            {
                double[] features = new double[Inputs];
                Features(o, states[s], features);
                int nuisance = space.Dimensions;
                for (int i = FirstNuisance; i < Inputs; i++) features[i] = Math.Clamp(states[s][nuisance + i - FirstNuisance], -Cut, Cut);
                points[o].Add(features);
                values[o].Add(found[(c * states.Length) + s]);
                weights[o].Add(weight);
            }

            surfaces[o] = ResponseSurface.Fit(points[o], values[o], weights[o], Second);
        }
    }

    private double Run(Observation seen, double[] numbers, SimulationOptions settings)
    {
        InputState state = space.At(numbers);
        int n = space.Dimensions;
        ScenarioUncertainty u = scenario.Uncertainty;
        Presentation way = seen.Way!;
        double cast = Math.Clamp(u.Cast.At(InputSpace.Quantile(numbers[n]), way.CastLength), Math.Max(Limits.CastLength.Least, way.LineLeftAtEnd + 0.5), Limits.CastLength.Most);
        double speed = way.RetrieveSpeed > 0 ? Math.Clamp(u.RetrieveSpeed.At(InputSpace.Quantile(numbers[n + 1]), way.RetrieveSpeed), Math.Min(0.02, way.FastestSpeed), way.FastestSpeed) : 0;
        double height = scenario.Tackle.RodTipHeight;
        bool lowered = way.Moves.Any(move => move.Up < 0);
        double rod = Math.Clamp(u.RodHeight.At(InputSpace.Quantile(numbers[n + 2]), height), lowered ? height : 0.1, Math.Max(height, Math.Min(6, way.LineLeftAtEnd)));
        Scenario tried = scenario with { Spot = space.Water(state), Tackle = scenario.Tackle with { RodTipHeight = rod } };
        double found = ObservedRun.Predict(
            tried, seen, way with { CastLength = cast, RetrieveSpeed = speed }, settings with { LineDrag = space.Law(state), LureDragFactor = space.RelativeDrag(state, seen.Body!) }, parallel.CancellationToken);
        if (IsRate(seen.Kind)) return double.IsFinite(found) ? 1 / Math.Max(found, 0.05) : 0;
        return double.IsFinite(found) ? found : (2.5 * seen.Value) + 5;
    }

    private void Features(int o, double[] numbers, Span<double> features)
    {
        int body = bodyOf[o];
        features.Clear();
        features[0] = Math.Clamp(numbers[0], -Cut, Cut);
        features[1] = Math.Clamp(numbers[1], -Cut, Cut);
        features[2] = Math.Clamp(numbers[2], -Cut, Cut);
        features[3] = Math.Clamp(numbers[InputSpace.FirstBody + body], -Cut, Cut);
        features[4] = numbers[3] >= 0 ? 1 : -1;
    }

    private static bool IsRate(ObservationKind kind) => kind is ObservationKind.BottomTime or ObservationKind.FirstTick;

    private static double Together(double a, double b, double c) => Math.Sqrt((a * a) + (b * b) + (c * c));
}
