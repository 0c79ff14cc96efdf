using System.Runtime.ExceptionServices;
using LureSim.Coupling;
using LureSim.Decision.Baits;
using LureSim.Decision.Colours;
using LureSim.Decision.Inverse;
using LureSim.Decision.Observations;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Search;
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

    /// <summary>Lengths in which the depth rows of the tables are round.</summary>
    public LengthScale Scale { get; init; } = LengthScale.Metres;

    /// <summary>Retrieve speeds of the coverage grid as multiples of the chosen presentation's speed.</summary>
    public IReadOnlyList<double> SpeedFactors { get; init; } = [0.5, 0.7, 0.85, 1, 1.2, 1.5, 2];

    /// <summary>Draws of the uncertain inputs for each jig head, 0 for none; null for what the scenario asks for.</summary>
    public int? Samples { get; init; }

    /// <summary>What the choice is held to.</summary>
    public ChoiceLimits Limits { get; init; } = new();

    /// <summary>Told the best rig of the first look, long before the plan is done; null for nobody.</summary>
    public IProgress<Candidate>? FirstLook { get; init; }

    /// <summary>Threads to use; the results do not depend on it.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;
}

/// <summary>What a plan is busy with.</summary>
public enum PlanStage
{
    /// <summary>Every rig is looked at, and the best go through the tries.</summary>
    Choosing,

    /// <summary>The conditions at which the choice flips, and the weights that it hangs on.</summary>
    Flips,

    /// <summary>The choice and the heads beside it, run at full settings.</summary>
    Candidates,

    /// <summary>Questions asked backwards, colours, how the lure swims, tables of falls and speeds.</summary>
    Answers,

    /// <summary>The sizes that the box lacks.</summary>
    Tables,

    /// <summary>All is worked out; what is left is to write it down.</summary>
    Done,
}

/// <summary>Progress of a plan.</summary>
/// <param name="Stage">What it is busy with.</param>
/// <param name="Share">Share of the work done, 0 to 1.</param>
public readonly record struct PlanProgress(PlanStage Stage, double Share);

/// <summary>A choice with its colours: what every command answers for.</summary>
/// <param name="Search">The search behind it.</param>
/// <param name="Choice">The choice.</param>
/// <param name="Colours">The colours where it runs.</param>
public sealed record ChosenRig(ChoiceSearch Search, Choice Choice, ColourFinding Colours)
{
    /// <summary>Name of the colour to put on: the one that was asked for, otherwise the advised one.</summary>
    public string Colour => Colours.Advice.Choice.Name;

    /// <summary>What observations did to the choice; null where there were none.</summary>
    public CalibratedChoice? Seen { get; init; }

    /// <summary>The rig.</summary>
    public Rig Rig => Choice.First.Rig;
}

/// <summary>Computes the answer to a scenario.</summary>
public static class Planner
{
    // Shares of the work at which the stages begin, about as they take time in a new process; and what the colours are of the stage in which they are worked out.
    private static readonly double[] Begin = [0, 0.62, 0.64, 0.67, 0.98, 0.99];
    private const double ColoursOfAnswers = 0.5;

    /// <summary>Seeks the choice (<see cref="ChoiceSearch"/>), and computes the tables and colours that explain it.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="progress">Told what is being done; may be called from several threads.</param>
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
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, options.Threads), CancellationToken = cancellation };
        int samples = options.Samples ?? scenario.Uncertainty.Samples;
        SimulationOptions coarse = Trial.ForSearch(options.Simulation);
        ChoiceSearch search = Search(scenario, options, parallel, progress);
        CalibratedChoice? seen = Seen(ref search, options, parallel);
        scenario = search.Scenario;
        Tell(PlanStage.Flips);
        IReadOnlyList<ChoiceFlip> flips = ChoiceFlips.Of(search, options.Simulation, parallel);
        IReadOnlyList<WeightSensitivity> sensitivity = WeightSensitivity.Of(search);
        Tell(PlanStage.Candidates);
        Candidate[] candidates = Candidates(search, options.Simulation, parallel);
        Candidate first = candidates.First(c => c.Rig == search.First.Rig);
        Candidate? fallback = search.RunnerUp is { } second ? candidates.FirstOrDefault(c => c.Rig == second.Rig) : null;
        Choice choice = Choice.Of(search, first, fallback, candidates) with { Flips = flips, Sensitivity = sensitivity, ColourAsked = options.Limits.Colour };
        UncertaintyStudy? study = samples > 0 ? Study(search, candidates, samples, options, parallel) : null;

        // None of these hangs on another: what runs on one core alone runs beside the rest.
        Tell(PlanStage.Answers);
        IReadOnlyList<InverseAnswer> answers = null!;
        FallTable fall = null!;
        CoverageGrid grid = null!;
        ColourFinding colours = null!;
        IReadOnlyList<ChoiceFlip> clarityFlips = [];
        ClaritySpread? clarity = null;
        RigFocus rigCheck = null!;
        IReadOnlyList<NextLook> next = null!;
        double done = 0;
        var telling = new Lock();
        Together(
            parallel,
            () =>
            {
                colours = Colours(scenario, first, options.Scale, options.Limits.Colour, parallel);
                Done(ColoursOfAnswers / 2);
                Together(
                    parallel,
                    () =>
                    {
                        if (options.Limits.Colour is null) clarityFlips = ClarityFlips.Of(scenario, first.Rig, colours, parallel);
                    },
                    () => clarity = samples > 0 ? ClaritySpread.Of(scenario, colours, parallel) : null);
                Done(ColoursOfAnswers / 2);
            },
            Part(() => rigCheck = RigChecker.Focus(scenario, RigChecker.OnRetrieve(scenario, first.Rig, first.Track, cancellation), full: false, parallel)),
            Part(() => next = NextLook.Of(search, options.Simulation, parallel)),
            Part(() => answers = InverseQuestions.All(scenario, first.Rig, null, coarse, parallel)),
            Part(() => fall = Falls(scenario, first.Rig, options, parallel)),
            Part(() => grid = Grid(search, candidates, options, parallel)));
        choice = choice with { Flips = [.. choice.Flips, .. clarityFlips] };
        Tell(PlanStage.Tables);
        InverseAnswer? holds = answers.FirstOrDefault(answer => answer is { Question: InverseQuestion.HeadForBottom, Status: InverseStatus.Found });
        BoxAdvice box = Box(scenario, first, candidates, search.Bodies, coarse, parallel) with
        {
            NoneHolds = Ranking.ZoneIsOnBottom(scenario.Spot) && holds is { Owned: null },
            HoldingSize = holds?.Common,
        };
        progress?.Report(new PlanProgress(PlanStage.Done, 1));
        return new Plan(scenario, candidates, choice, fall, grid, colours) { Body = search.Bodies, Compared = TriedRig.Of(search, candidates), Box = box, Uncertainty = study, Clarity = clarity, Answers = answers, RigCheck = rigCheck, Seen = seen, LookNext = next };

        void Tell(PlanStage stage) => progress?.Report(new PlanProgress(stage, Begin[(int)stage]));

        // The other five parts of the stage take about as long as each other.
        Action Part(Action work) => () =>
        {
            work();
            Done((1 - ColoursOfAnswers) / 5);
        };

        void Done(double share)
        {
            lock (telling)
            {
                done += share;
                double from = Begin[(int)PlanStage.Answers];
                progress?.Report(new PlanProgress(PlanStage.Answers, from + (done * (Begin[(int)PlanStage.Tables] - from))));
            }
        }
    }

    /// <summary>The choice alone, with its numbers and its colour: what the commands answer for that are not about the whole plan. The same choice as the plan's.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="progress">Told what is being done; may be called from several threads.</param>
    /// <param name="cancellation">Honoured between and within simulations.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="ArgumentException">What the choice is held to is not in the scenario.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static ChosenRig Choose(Scenario scenario, PlanOptions? options = null, IProgress<PlanProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        options ??= new PlanOptions();
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, options.Threads), CancellationToken = cancellation };
        ChoiceSearch search = Search(scenario, options, parallel, progress);
        CalibratedChoice? seen = Seen(ref search, options, parallel);
        scenario = search.Scenario;
        Candidate first = Trial.Run(scenario, search.First.Rig, options.Simulation, cancellation);
        Choice choice = Choice.Of(search, first, null, [first]) with { ColourAsked = options.Limits.Colour };
        return new ChosenRig(search, choice, Colours(scenario, first, options.Scale, options.Limits.Colour, parallel)) { Seen = seen };
    }

    // Runs pieces of work that write nothing of each other; what one of them throws is thrown as it is.
    private static void Together(ParallelOptions parallel, params Action[] parts)
    {
        try
        {
            Parallel.Invoke(parallel, parts);
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.Flatten().InnerExceptions[0]);
        }
    }

    // What was observed changes what the tries are, and with them the choice; the search goes on in the calibrated scenario.
    private static CalibratedChoice? Seen(ref ChoiceSearch search, PlanOptions options, ParallelOptions parallel)
    {
        if (ObservationUpdate.Of(search.Scenario, parallel) is not { } update) return null;
        var calibrated = CalibratedChoice.Of(search, update, options.Simulation, parallel);
        search = calibrated.After;
        return calibrated;
    }

    private static ChoiceSearch Search(Scenario scenario, PlanOptions options, ParallelOptions parallel, IProgress<PlanProgress>? progress) => ChoiceSearch.Find(
        scenario,
        new ChoiceSearchOptions { Samples = options.Samples, Limits = options.Limits, Simulation = options.Simulation, FirstLook = options.FirstLook },
        parallel,
        progress is null ? null : new Scaled(share => progress.Report(new PlanProgress(PlanStage.Choosing, Begin[1] * share))));

    // The choice and its second at full settings, the other heads worked the same way, and the best of every bait with every presentation.
    private static Candidate[] Candidates(ChoiceSearch search, SimulationOptions simulation, ParallelOptions parallel)
    {
        SimulationOptions coarse = Trial.Coarse(simulation);
        Rig? second = search.RunnerUp?.Rig;
        Rig[] rigs = [.. search.Heads.Append(search.First.Rig).Concat(second is null ? [] : [second]).Distinct()];
        var runs = new Candidate[rigs.Length];
        Parallel.For(0, rigs.Length, parallel, i =>
            runs[i] = Trial.Run(search.Scenario, rigs[i], rigs[i] == search.First.Rig || rigs[i] == second ? simulation : coarse, parallel.CancellationToken));
        IEnumerable<Candidate> others = search.FirstLook.GroupBy(c => (c.Rig.Body, c.Rig.Presentation.Name)).Select(group => group.MaxBy(c => c.Score)!);
        return [.. runs, .. others.Where(c => !rigs.Contains(c.Rig))];
    }

    // The heads that ran all tries, worked like the choice.
    private static UncertaintyStudy Study(ChoiceSearch search, IReadOnlyList<Candidate> candidates, int samples, PlanOptions options, ParallelOptions parallel)
    {
        Rig first = search.First.Rig;
        if (search.First.Runs.Count == 0)
            return UncertaintyStudy.Run(search.Scenario, first.Body, first.Presentation, candidates, samples, options.Simulation, parallel) with { Chosen = first.Head };
        SearchedRig[] heads =
        [
            .. search.Finalists.Where(rig => Choice.SameWay(rig.Rig, first)).GroupBy(rig => rig.Rig.Head).Select(group => group.First())
                .OrderBy(rig => search.Scenario.Tackle.JigHeads.ToList().IndexOf(rig.Rig.Head)),
        ];
        return UncertaintyStudy.From(first.Presentation, first.Body, [.. heads.Select(rig => rig.Rig.Head)], search.Draws, [.. heads.SelectMany(rig => rig.Runs)], first.Head);
    }

    private static BoxAdvice Box(Scenario scenario, Candidate first, IReadOnlyList<Candidate> candidates, BodyChoice bodies, SimulationOptions coarse, ParallelOptions parallel)
    {
        IReadOnlyList<JigHead> missing = BoxAdvice.MissingSizes(scenario, first.Rig);
        var tried = new Candidate[missing.Count];
        Parallel.For(0, tried.Length, parallel, i => tried[i] = Trial.Run(scenario, first.Rig with { Head = missing[i] }, coarse, parallel.CancellationToken));
        return BoxAdvice.Of(scenario, first, candidates, bodies, tried);
    }

    /// <summary>Count-down table of all jig heads with the bait of a rig, cast and let fall as it is.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig; its head does not matter.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="cancellation">Honoured between and within simulations.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static FallTable FallTable(Scenario scenario, Rig rig, PlanOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(rig);
        options ??= new PlanOptions();
        return Falls(scenario, rig, options, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, options.Threads), CancellationToken = cancellation });
    }

    /// <summary>The colours where a rig runs.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="first">A single run of the rig.</param>
    /// <param name="scale">Lengths in which the depth rows are round.</param>
    /// <param name="asked">A colour of the box to take in place of the advised one; null for none.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads. Null for all threads.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="ArgumentException">The target fish or a colour is unknown.</exception>
    public static ColourFinding Colours(Scenario scenario, Candidate first, LengthScale scale, string? asked = null, ParallelOptions? parallel = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(first);

        // Where the lure runs in the shade more than out of it, the colours are those of the shade.
        if (StructurePass.MainShade(scenario.Spot, first) is { } shade) scenario = scenario with { Spot = scenario.Spot with { ShadedSky = shade.SkyShare } };
        ColourFinding found = SpotColours.At(
            scenario, first.Rig.Body, ColourAdvice.Running(first.Track, scenario.Spot), Math.Clamp(first.Coverage.MedianDepth, 0, scenario.Spot.Depth), scale, parallel);
        if (asked is null) return found;
        int given = found.Advice.Colours.ToList().FindIndex(colour => colour.Name == asked);
        return given >= 0 ? found with { Advice = found.Advice.Given(given) } : throw new ArgumentException($"The box has no colour '{asked}'.", nameof(asked));
    }

    private static FallTable Falls(Scenario scenario, Rig like, PlanOptions options, ParallelOptions parallel)
    {
        IReadOnlyList<(JigHead Head, LureBody Body)> heads = scenario.Tackle.LuresWith(like.Body.NeedsHead ? like.Body : BodyChoice.Of(scenario).Soft);
        IReadOnlyList<double> depths = options.Scale.Depths(scenario.Spot.Depth);
        Presentation first = like.Presentation;
        var water = WaterColumn.Of(scenario.Spot);
        double?[][] times = new double?[2 * heads.Count][];
        Parallel.For(0, times.Length, parallel, i =>
        {
            FallMode mode = i % 2 == 0 ? FallMode.SlackLine : FallMode.TightLine;
            var rig = new Rig(heads[i / 2].Head, heads[i / 2].Body, first with { Fall = mode, CountDown = null });
            // A lure that falls in another attitude than it is drawn in has the drag of that attitude; a tail beats on the fall too.
            Track track = Trial.Simulate(scenario, rig, options.Simulation with { FallOnly = true, FallLimit = 90, SampleInterval = 0.05 }, parallel.CancellationToken);
            double floor = scenario.Spot.Profile is { IsEven: false } && track.Count > 0 ? scenario.Spot.SeenAlong(first.Aim).DepthAt(track.X[^1], track.Y[^1]) : water.Depth;
            double resting = floor - TackleBuilder.Lure(rig.Head, rig.Body).ContactRadius;

            // A fast lure bounces: its touch may lie between two samples.
            double touch = resting - 0.005;
            double? landed = track.Events.FirstOrDefault(e => e.Kind == TrackEventKind.BottomContact)?.Time;
            times[i] = [.. depths.Select(d => Trial.TimeToDepth(track, Math.Min(d, touch)) ?? (d >= touch ? landed : null))];
        });
        var columns = new FallColumn[heads.Count];
        for (int h = 0; h < heads.Count; h++)
        {
            double free = FreeFall.TerminalSpeed(ActingLures.Of(scenario.Tackle, scenario.Spot, heads[h].Head, heads[h].Body), water.Density, water.KinematicViscosity);
            columns[h] = new FallColumn(heads[h].Head, free, times[2 * h], times[(2 * h) + 1]);
        }

        return new FallTable(depths, columns);
    }

    private static CoverageGrid Grid(ChoiceSearch search, IReadOnlyList<Candidate> candidates, PlanOptions options, ParallelOptions parallel)
    {
        Scenario scenario = search.Scenario;
        IReadOnlyList<Rig> rigs = search.Heads;
        Presentation chosen = search.First.Rig.Presentation;
        SimulationOptions coarse = Trial.ForSearch(options.Simulation);

        // The one speed that all reeling of the retrieve goes by; no move of it reels faster than 3 m/s.
        double fastest = chosen.FastestSpeed;
        double[] speeds = chosen.RetrieveSpeed > 0
            ? [.. options.SpeedFactors.Select(f => Math.Clamp(chosen.RetrieveSpeed * f, Math.Min(0.02, fastest), fastest)).Distinct().Order()]
            : UnreeledSpeeds(chosen);
        int rows = rigs.Count, columns = speeds.Length;
        double[,] zone = new double[rows, columns], bottom = new double[rows, columns], grass = new double[rows, columns], median = new double[rows, columns];
        Parallel.For(0, rows * columns, parallel, i =>
        {
            int h = i / columns, s = i % columns;
            Rig rig = rigs[h] with { Presentation = rigs[h].Presentation with { RetrieveSpeed = speeds[s] } };
            Coverage coverage = candidates.FirstOrDefault(c => c.Rig == rig)?.Coverage ?? Trial.RunPath(scenario, rig, coarse, parallel.CancellationToken).Coverage;
            zone[h, s] = coverage.ZoneShare;
            bottom[h, s] = coverage.BottomShare;
            grass[h, s] = coverage.GrassShare;
            median[h, s] = coverage.MedianDepth;
        });
        return new CoverageGrid(chosen.Name, [.. rigs.Select(rig => rig.Head)], speeds, zone, bottom, grass, median);
    }

    // A swing without the reel is compared with reeling slowly meanwhile; where nothing can be reeled there is one speed.
    private static double[] UnreeledSpeeds(Presentation presentation) =>
        presentation.Moves.Any(move => move.ReelShare > 0) ? [0, 0.05, 0.1, 0.2, 0.4] : [0];

    private sealed class Scaled(Action<double> report) : IProgress<double>
    {
        public void Report(double value) => report(value);
    }
}
