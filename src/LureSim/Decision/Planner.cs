using LureSim.Coupling;
using LureSim.Decision.Baits;
using LureSim.Decision.Colours;
using LureSim.Decision.Inverse;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Decision;

/// <summary>Settings of a plan.</summary>
public sealed record PlanOptions
{
    /// <summary>Settings of the simulations.</summary>
    public SimulationOptions Simulation { get; init; } = new();

    /// <summary>Settings of the runs that no choice is made from (coverage grid, missing sizes); null for those of the other simulations.</summary>
    public SimulationOptions? Aside { get; init; }

    /// <summary>Lengths in which the depth rows of the tables are round.</summary>
    public LengthScale Scale { get; init; } = LengthScale.Metres;

    /// <summary>Retrieve speeds of the coverage grid as multiples of the chosen presentation's speed.</summary>
    public IReadOnlyList<double> SpeedFactors { get; init; } = [0.5, 0.7, 0.85, 1, 1.2, 1.5, 2];

    /// <summary>Draws of the uncertain inputs for each jig head, 0 for none; null for what the scenario asks for.</summary>
    public int? Samples { get; init; }

    /// <summary>Threads to use; the results do not depend on it.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;
}

/// <summary>Progress of a plan.</summary>
/// <param name="Done">Simulations done.</param>
/// <param name="Total">Simulations in all.</param>
public readonly record struct PlanProgress(int Done, int Total);

/// <summary>Computes the answer to a scenario.</summary>
public static class Planner
{
    // Weight of the inverse questions in the progress: about their number of runs.
    private const int InverseParts = 40;

    /// <summary>Simulates every jig head with every presentation, ranks them, and computes the tables and colours that explain the choice.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="progress">Told after each simulation; may be called from several threads.</param>
    /// <param name="cancellation">Honoured between and within simulations.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="ArgumentException">The target fish is not in the table of fish eyes or a colour is unknown, which the scenario reader would have refused.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    /// <example><code>
    /// using LureSim.Decision;
    /// using LureSim.Model;
    /// var spot = new Spot { Depth = 4, Salinity = 30, TemperatureCelsius = 20, Clarity = new SecchiClarity(2, WaterKind.CoastalGreen), Sky = new SkyByElevation(0.8), StrikeZone = new StrikeZone(2, 4), TargetFish = "red drum" };
    /// var scenario = new Scenario
    /// {
    ///     Title = "a flat", Spot = spot,
    ///     Tackle = new TackleBox
    ///     {
    ///         RodTipHeight = 1.5, Reel = new Reel(6.2, 0.045), Line = new LineSpecification(LineKind.Braid, 44.5, 0.00021), Colours = ["white"],
    ///         JigHeads = [new JigHead(0.00709, HeadMetal.Lead, 0.0011, "1/4 oz")], Bodies = [new LureBody(BodyProfile.PaddleTail, 0.1, 0.019, 0.0164, 1050, "paddle tail")],
    ///     },
    ///     Presentations = [new Presentation { Name = "steady", CastLength = 15, RetrieveSpeed = 0.5 }],
    /// };
    /// Plan plan = Planner.Plan(scenario, new PlanOptions { Samples = 0 });
    /// Console.WriteLine(plan.Choice.First.Coverage.ZoneShare);
    /// </code></example>
    public static Plan Plan(Scenario scenario, PlanOptions? options = null, IProgress<PlanProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        options ??= new PlanOptions();
        IReadOnlyList<Presentation> presentations = scenario.Presentations;
        int samples = options.Samples ?? scenario.Uncertainty.Samples;
        BodyChoice bodies = BodyChoice.Of(scenario);
        IReadOnlyList<(JigHead Head, LureBody Body)> heads = scenario.Tackle.LuresWith(bodies.Soft);
        int runnersUp = bodies.SoftRunnerUp is null ? 0 : scenario.Tackle.JigHeads.Count;

        // The chosen presentation is not known yet, and clamped speeds may coincide: count the most, and report what falls away as done.
        int total = (heads.Count * presentations.Count) + runnersUp + (heads.Count * options.SpeedFactors.Count) + (2 * heads.Count)
            + UncertaintyStudy.RunsOf(scenario, samples) + InverseParts + BoxAdvice.MostTried;
        var counter = new ProgressCounter(progress, total);
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, options.Threads), CancellationToken = cancellation };

        var candidates = new Candidate[heads.Count * presentations.Count];
        Parallel.For(0, candidates.Length, parallel, i =>
        {
            candidates[i] = Trial.Run(scenario, new Rig(heads[i / presentations.Count].Head, heads[i / presentations.Count].Body, presentations[i % presentations.Count]), options.Simulation, cancellation);
            counter.Add();
        });

        Candidate first = candidates.MaxBy(c => c.Score)!;
        candidates = [.. candidates, .. WithBody(scenario, first, bodies.SoftRunnerUp, options, counter, parallel, cancellation)];

        // The rules choose the body unless the runner-up's run is better by more than its fit is worse.
        first = candidates.MaxBy(c => c.Score * Suitability(bodies, c.Rig.Body))!;
        UncertaintyStudy? study = null;
        if (samples > 0)
        {
            // Over the draws another head may do better on the whole; body and presentation stay.
            Rig chosen = first.Rig;
            Candidate[] alike = [.. candidates.Where(c => c.Rig.Body == chosen.Body && c.Rig.Presentation == chosen.Presentation)];
            study = UncertaintyStudy.Run(scenario, chosen.Body, chosen.Presentation, alike, samples, options.Simulation, parallel, () => counter.Add());
            first = alike.First(c => c.Rig.Head == study.Best.Head);
        }

        IReadOnlyList<InverseAnswer> answers = InverseQuestions.All(scenario, first.Rig, null, Trial.Coarse(options.Simulation), parallel);
        counter.Add(InverseParts);
        Candidate? fallback = candidates.Where(c => c.Rig.Head != first.Rig.Head && c.Rig.Body == first.Rig.Body).MaxBy(c => c.Score);
        LureBody? soft = first.Rig.Body.NeedsHead ? first.Rig.Body : bodies.Soft;
        FallTable fall = Falls(scenario, soft, options, counter, parallel, cancellation);
        CoverageGrid grid = Grid(scenario, first, soft, candidates, options, counter, parallel, cancellation);
        ColourFinding colours = Colours(scenario, first, options.Scale);
        ClaritySpread? clarity = samples > 0 ? ClaritySpread.Of(scenario, colours) : null;
        BoxAdvice box = Box(scenario, first, candidates, bodies, options, counter, parallel, cancellation);
        RigFocus rigCheck = RigChecker.Focus(scenario, RigChecker.OnRetrieve(scenario, first.Rig, first.Track, cancellation), full: false, cancellation);
        return new Plan(scenario, candidates, Choice.Of(scenario, first, fallback, candidates), fall, grid, colours) { Body = bodies, Box = box, Uncertainty = study, Clarity = clarity, Answers = answers, RigCheck = rigCheck };
    }

    private static double Suitability(BodyChoice bodies, LureBody body) => bodies.Fits.First(fit => fit.Body == body).Suitability;

    private static Candidate[] WithBody(Scenario scenario, Candidate best, LureBody? body, PlanOptions options, ProgressCounter counter, ParallelOptions parallel, CancellationToken cancellation)
    {
        if (body is null)
            return [];
        var result = new Candidate[scenario.Tackle.JigHeads.Count];
        Parallel.For(0, result.Length, parallel, i =>
        {
            result[i] = Trial.Run(scenario, new Rig(scenario.Tackle.JigHeads[i], body, best.Rig.Presentation), options.Simulation, cancellation);
            counter.Add();
        });
        return result;
    }

    private static BoxAdvice Box(Scenario scenario, Candidate first, IReadOnlyList<Candidate> candidates, BodyChoice bodies, PlanOptions options, ProgressCounter counter, ParallelOptions parallel, CancellationToken cancellation)
    {
        IReadOnlyList<JigHead> missing = BoxAdvice.MissingSizes(scenario, first.Rig);
        var tried = new Candidate[missing.Count];
        counter.Add(BoxAdvice.MostTried - missing.Count);
        Parallel.For(0, tried.Length, parallel, i =>
        {
            tried[i] = Trial.Run(scenario, first.Rig with { Head = missing[i] }, options.Aside ?? options.Simulation, cancellation);
            counter.Add();
        });
        return BoxAdvice.Of(scenario, first, candidates, bodies, tried);
    }

    /// <summary>Count-down table of all jig heads with the body of the rules (<see cref="BodyChoice"/>), from the first presentation's cast.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="progress">Told after each simulation.</param>
    /// <param name="cancellation">Honoured between and within simulations.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static FallTable FallTable(Scenario scenario, PlanOptions? options = null, IProgress<PlanProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        options ??= new PlanOptions();
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, options.Threads), CancellationToken = cancellation };
        return Falls(scenario, BodyChoice.Of(scenario).Soft, options, new ProgressCounter(progress, 2 * scenario.Tackle.Lures.Count), parallel, cancellation);
    }

    private static ColourFinding Colours(Scenario scenario, Candidate first, LengthScale scale) => SpotColours.At(
        scenario, first.Rig.Body, ColourAdvice.Running(first.Track, scenario.Spot), Math.Clamp(first.Coverage.MedianDepth, 0, scenario.Spot.Depth), scale);

    private static FallTable Falls(Scenario scenario, LureBody? soft, PlanOptions options, ProgressCounter counter, ParallelOptions parallel, CancellationToken cancellation)
    {
        IReadOnlyList<(JigHead Head, LureBody Body)> heads = scenario.Tackle.LuresWith(soft);
        IReadOnlyList<double> depths = options.Scale.Depths(scenario.Spot.Depth);
        Presentation first = scenario.Presentations[0];
        var water = WaterColumn.Of(scenario.Spot);
        double?[][] times = new double?[2 * heads.Count][];
        Parallel.For(0, times.Length, parallel, i =>
        {
            FallMode mode = i % 2 == 0 ? FallMode.SlackLine : FallMode.TightLine;
            var rig = new Rig(heads[i / 2].Head, heads[i / 2].Body, first with { Fall = mode, CountDown = null });
            // A lure that falls in another attitude than it is drawn in has the drag of that attitude; a tail beats on the fall too.
            Track track = Trial.Simulate(scenario, rig, options.Simulation with { FallOnly = true, FallLimit = 90, SampleInterval = 0.05 }, cancellation);
            double resting = water.Depth - TackleBuilder.Lure(rig.Head, rig.Body).ContactRadius;

            // A fast lure bounces: its touch may lie between two samples.
            double touch = resting - 0.005;
            double? landed = track.Events.FirstOrDefault(e => e.Kind == TrackEventKind.BottomContact)?.Time;
            times[i] = [.. depths.Select(d => Trial.TimeToDepth(track, Math.Min(d, touch)) ?? (d >= touch ? landed : null))];
            counter.Add();
        });
        var columns = new FallColumn[heads.Count];
        for (int h = 0; h < heads.Count; h++)
        {
            double free = FreeFall.TerminalSpeed(ActingLures.Of(scenario.Tackle, scenario.Spot, heads[h].Head, heads[h].Body), water.Density, water.KinematicViscosity);
            columns[h] = new FallColumn(heads[h].Head, free, times[2 * h], times[(2 * h) + 1]);
        }

        return new FallTable(depths, columns);
    }

    private static CoverageGrid Grid(
        Scenario scenario,
        Candidate first,
        LureBody? soft,
        IReadOnlyList<Candidate> candidates,
        PlanOptions options,
        ProgressCounter counter,
        ParallelOptions parallel,
        CancellationToken cancellation)
    {
        IReadOnlyList<(JigHead Head, LureBody Body)> heads = scenario.Tackle.LuresWith(soft);
        Presentation chosen = first.Rig.Presentation;

        // The one speed that all reeling of the retrieve goes by; no move of it reels faster than 3 m/s.
        double fastest = chosen.FastestSpeed;
        double[] speeds = chosen.RetrieveSpeed > 0
            ? [.. options.SpeedFactors.Select(f => Math.Clamp(chosen.RetrieveSpeed * f, Math.Min(0.02, fastest), fastest)).Distinct().Order()]
            : UnreeledSpeeds(chosen);
        int rows = heads.Count, columns = speeds.Length;
        counter.Add(rows * (options.SpeedFactors.Count - columns));
        double[,] zone = new double[rows, columns], bottom = new double[rows, columns], grass = new double[rows, columns], median = new double[rows, columns];
        Parallel.For(0, rows * columns, parallel, i =>
        {
            int h = i / columns, s = i % columns;
            Presentation presentation = chosen with { RetrieveSpeed = speeds[s] };
            Coverage coverage = (candidates.FirstOrDefault(c => c.Rig.Head == heads[h].Head && c.Rig.Body == heads[h].Body && c.Rig.Presentation == presentation)
                ?? Trial.Run(scenario, new Rig(heads[h].Head, heads[h].Body, presentation), options.Aside ?? options.Simulation, cancellation)).Coverage;
            zone[h, s] = coverage.ZoneShare;
            bottom[h, s] = coverage.BottomShare;
            grass[h, s] = coverage.GrassShare;
            median[h, s] = coverage.MedianDepth;
            counter.Add();
        });
        return new CoverageGrid(chosen.Name, [.. heads.Select(h => h.Head)], speeds, zone, bottom, grass, median);
    }

    // A swing without the reel is compared with reeling slowly meanwhile; where nothing can be reeled there is one speed.
    private static double[] UnreeledSpeeds(Presentation presentation) =>
        presentation.Moves.Any(move => move.ReelShare > 0) ? [0, 0.05, 0.1, 0.2, 0.4] : [0];

    private sealed class ProgressCounter(IProgress<PlanProgress>? progress, int total)
    {
        private int done;

        public void Add(int count = 1) => progress?.Report(new PlanProgress(Interlocked.Add(ref done, count), total));
    }
}
