using LureSim.Decision.Inverse;
using LureSim.Decision.Uncertainty;
using LureSim.Light;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Scenarios;
using LureSim.Sight;
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

    /// <summary>Units of the sentences.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Us;

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
    // Rows of the count-down table and of the colour chart aimed at.
    private const int TargetRows = 9;

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
            candidates[i] = Try(scenario, new Rig(heads[i / presentations.Count].Head, heads[i / presentations.Count].Body, presentations[i % presentations.Count]), options.Simulation, cancellation);
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
            study = UncertaintyStudy.Of(scenario, chosen.Body, chosen.Presentation, alike, samples, options.Simulation, parallel, () => counter.Add());
            first = alike.First(c => c.Rig.Head == study.Best.Head);
        }

        IReadOnlyList<InverseAnswer> answers = InverseQuestions.All(scenario, first.Rig, null, UncertaintyStudy.Coarse(options.Simulation), parallel);
        counter.Add(InverseParts);
        Candidate? fallback = candidates.Where(c => c.Rig.Head != first.Rig.Head && c.Rig.Body == first.Rig.Body).MaxBy(c => c.Score);
        LureBody? soft = first.Rig.Body.NeedsHead ? first.Rig.Body : bodies.Soft;
        FallTable fall = Falls(scenario, soft, options, counter, parallel, cancellation);
        CoverageGrid grid = Grid(scenario, first, soft, candidates, options, counter, parallel, cancellation);
        ColourFinding colours = Colours(scenario, first, options.Units);
        ClaritySpread? clarity = samples > 0 ? ClaritySpread.Of(scenario, colours) : null;
        BoxAdvice box = Box(scenario, first, candidates, bodies, options, counter, parallel, cancellation);
        var notes = new List<string>();
        OpticalWater water = colours.Chart.Field.Water;
        if (water.Status != WaterFitStatus.Matched) notes.Add(water.Message);
        SurfaceLight surface = colours.Chart.Field.Surface;
        if (surface.Regime != LightRegime.Day) notes.Add($"{Wording.Regime(surface.Regime)}. {surface.Note}");
        foreach (Candidate c in candidates.Where(c => c.Track.Message.Length > 0))
            notes.Add($"{c.Rig.Head.Label}, {c.Rig.Presentation.Name}: {c.Track.Message}");
        var choice = new Choice(
            first,
            fallback,
            [
                .. study is null ? [] : UncertaintyWording.Sentences(study, options.Units),
                .. Wording.Reasons(scenario, first, fallback, candidates, colours, options.Units),
                .. clarity is null ? Array.Empty<string>() : [clarity.Sentence(options.Units)],
                .. BodyWording.Sentences(bodies, options.Units),
                .. BodyWording.Overturned(bodies, first, candidates.Where(c => c.Rig.Body == bodies.First).MaxBy(c => c.Score)),
                .. BoxAdvice.Sentences(box, first, bodies, options.Units),
            ],
            Wording.Warnings(scenario, first, fallback, candidates, options.Units));
        RigFocus rigCheck = RigChecker.Focus(scenario, RigChecker.Of(scenario, first.Rig, first.Track, cancellation), options.Units, full: false, cancellation);
        return new Plan(scenario, candidates, choice, fall, grid, colours, notes) { Body = bodies, Box = box, Uncertainty = study, Clarity = clarity, Answers = answers, RigCheck = rigCheck };
    }

    private static double Suitability(BodyChoice bodies, LureBody body) => bodies.Fits.First(fit => fit.Body == body).Suitability;

    private static Candidate[] WithBody(Scenario scenario, Candidate best, LureBody? body, PlanOptions options, ProgressCounter counter, ParallelOptions parallel, CancellationToken cancellation)
    {
        if (body is null)
            return [];
        var result = new Candidate[scenario.Tackle.JigHeads.Count];
        Parallel.For(0, result.Length, parallel, i =>
        {
            result[i] = Try(scenario, new Rig(scenario.Tackle.JigHeads[i], body, best.Rig.Presentation), options.Simulation, cancellation);
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
            tried[i] = Try(scenario, first.Rig with { Head = missing[i] }, options.Aside ?? options.Simulation, cancellation);
            counter.Add();
        });
        return BoxAdvice.Of(scenario, first, candidates, bodies, tried);
    }

    /// <summary>Simulates and measures one rig.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="options">Settings.</param>
    /// <param name="cancellation">Honoured within the simulation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static Candidate Try(Scenario scenario, Rig rig, SimulationOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(options);
        Track track = Simulate(scenario, rig, ActingLures.Of(scenario.Tackle, scenario.Spot, rig.Head, rig.Body), options, cancellation);
        Coverage coverage = CoverageMeasure.Of(track, scenario.Spot.StrikeZone);
        double score = track.Status == SimulationStatus.Failed ? 0 : Ranking.Score(coverage, scenario.Spot, rig.Presentation.CastLength);
        return new Candidate(rig, track, coverage, score, Wording.Verdict(track, coverage));
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

    /// <summary>Colours of the tackle box against depth at the spot.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="runningDepth">Depth at which the lure runs (m), 0 to the depth of the spot.</param>
    /// <param name="units">Units in which the depth rows are round.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The depth is outside the water.</exception>
    /// <exception cref="ArgumentException">The target fish or a colour is unknown.</exception>
    public static ColourFinding Colours(Scenario scenario, double runningDepth, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return Colours(scenario, BodyChoice.Of(scenario).First, runningDepth, units);
    }

    private static ColourFinding Colours(Scenario scenario, LureBody body, double runningDepth, UnitSystem units)
    {
        Spot spot = scenario.Spot;
        Guard.InRange(runningDepth, 0, spot.Depth);
        if (!FishEyes.TryFind(spot.TargetFish, out FishEye? eye))
            throw new ArgumentException($"There is no eye for the target fish '{spot.TargetFish}'.", nameof(scenario));

        ColourChart chart = Chart(scenario, units);
        LightField field = chart.Field;
        IReadOnlyList<LureColour> colours = chart.Colours;
        ColourChart here = ColourChart.Of(field, colours, [runningDepth]);
        int brightest = 0, darkest = 0;
        for (int i = 1; i < colours.Count; i++)
        {
            if (here[0, i].RelativeLuminance > here[0, brightest].RelativeLuminance) brightest = i;
            if (here[0, i].RelativeLuminance < here[0, darkest].RelativeLuminance) darkest = i;
        }

        double size = body.ApparentSize;
        IReadOnlyList<Sighting> level = new SightScene(field, eye, ViewDirection.Level, runningDepth, size).Rank(colours);
        IReadOnlyList<Sighting> below = new SightScene(field, eye, ViewDirection.Up, runningDepth, size).Rank(colours);
        int chosen = colours.ToList().FindIndex(c => c.Name == level[0].Name);
        return new ColourFinding(chart, runningDepth, here, Darkening.Of(field, LureColours.Red, eye), brightest, darkest, level, below, chosen, eye);
    }

    /// <summary>Colours of the tackle box against depth at the spot, from the surface to the bottom, without what a fish makes of them.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="units">Units in which the depth rows are round.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="ArgumentException">A colour is unknown.</exception>
    public static ColourChart Chart(Scenario scenario, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        Spot spot = scenario.Spot;
        return ColourChart.Of(Field(spot), Colours(scenario.Tackle), [0, .. RoundDepths(spot.Depth, units)]);
    }

    /// <summary>Light in the water of a spot.</summary>
    /// <param name="spot">The spot.</param>
    internal static LightField Field(Spot spot) => new(SpotLight.Water(spot), SpotLight.Surface(spot), SeaBed.Of(Bed(spot), spot.Depth));

    private static SeaBedKind Bed(Spot spot) => spot switch
    {
        { GrassHeight: > 0 } => SeaBedKind.Grass,
        { Bottom: BottomKind.Mud } => SeaBedKind.Mud,
        { Bottom: BottomKind.Shell or BottomKind.Hard } => SeaBedKind.Shell,
        _ => SeaBedKind.Sand,
    };

    /// <summary>Round depths from the first step to the bottom (m), the bottom itself last.</summary>
    /// <param name="depth">Water depth (m), above 0.</param>
    /// <param name="units">Units in which the steps are round.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth is not above 0.</exception>
    public static IReadOnlyList<double> RoundDepths(double depth, UnitSystem units)
    {
        Guard.Positive(depth);
        double unit = units == UnitSystem.Us ? UnitsNet.Length.FromFeet(1).Meters : 1;
        double ideal = depth / unit / TargetRows;
        double[] steps = [0.1, 0.25, 0.5, 1, 2, 3, 5, 10, 20, 50];
        double step = steps.FirstOrDefault(s => s >= ideal * 0.75, steps[^1]) * unit;
        var rows = new List<double>();
        for (int i = 1; i * step < depth - (0.3 * step); i++) rows.Add(i * step);
        rows.Add(depth);
        return rows;
    }

    /// <summary>The colours of a box: by name or screen colour, then the measured ones.</summary>
    /// <param name="tackle">The box.</param>
    internal static IReadOnlyList<LureColour> Colours(TackleBox tackle) =>
        [.. tackle.Colours.Select(Colour), .. tackle.MeasuredColours.Select(measured => LureColour.FromTable(measured.Name, measured.WavelengthsNm, measured.Reflectances))];

    /// <summary>The depths at which the parts of the lures of several colours can no longer be told apart at the spot.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="field">Light in the water.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">A colour or the fish is unknown.</exception>
    public static IReadOnlyList<PatternParts> Patterns(Scenario scenario, LightField field)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(field);
        if (!FishEyes.TryFind(scenario.Spot.TargetFish, out FishEye? eye))
            throw new ArgumentException($"There is no eye for the target fish '{scenario.Spot.TargetFish}'.", nameof(scenario));
        IReadOnlyList<LureColour> own = Colours(scenario.Tackle);
        LureColour Find(string name) => own.FirstOrDefault(colour => colour.Name == name) ?? Colour(name);
        return [.. scenario.Tackle.Patterns.Select(p => PatternParts.Of(
            field, new LurePattern(p.Name, Find(p.Back), Find(p.Side), Find(p.Belly), Eye: p.Eye is null ? null : Find(p.Eye)), eye, scenario.Spot.Depth))];
    }

    /// <summary>The colour of a name of the tackle box.</summary>
    /// <param name="name">Preset name or hex colour.</param>
    /// <exception cref="ArgumentException">There is no such colour.</exception>
    internal static LureColour Colour(string name)
    {
        if (LureColours.TryFind(name, out LureColour? colour)) return colour;
        if (name.StartsWith('#')) return LureColour.FromHex(name, name);
        throw new ArgumentException($"There is no colour '{name}'.", nameof(name));
    }

    private static ColourFinding Colours(Scenario scenario, Candidate first, UnitSystem units)
    {
        ColourFinding at = Colours(scenario, first.Rig.Body, Math.Clamp(first.Coverage.MedianDepth, 0, scenario.Spot.Depth), units);
        ColourAdvice advice = ColourAdvice.Of(scenario, first.Rig.Body, first.Track, at.Chart.Field, at.Eye, at.Chart.Colours);
        return at with { Advice = advice, Chosen = advice.Chosen };
    }

    private static Track Simulate(Scenario scenario, Rig rig, LureProperties lure, SimulationOptions options, CancellationToken cancellation)
    {
        Track track = Retrieve.Simulate(
            WaterColumn.Of(scenario.Spot.SeenAlong(rig.Presentation.Aim)),
            lure,
            TackleBuilder.Line(scenario.Tackle),
            scenario.Tackle.RodTipHeight,
            rig.Presentation,
            scenario.Spot.StrikeZone,
            options with { LineCapacity = Math.Min(options.LineCapacity, scenario.Tackle.Reel.LineCapacity) },
            cancellation);
        if (track.Status == SimulationStatus.Cancelled) throw new OperationCanceledException(cancellation);
        return track;
    }

    private static FallTable Falls(Scenario scenario, LureBody? soft, PlanOptions options, ProgressCounter counter, ParallelOptions parallel, CancellationToken cancellation)
    {
        IReadOnlyList<(JigHead Head, LureBody Body)> heads = scenario.Tackle.LuresWith(soft);
        IReadOnlyList<double> depths = RoundDepths(scenario.Spot.Depth, options.Units);
        Presentation first = scenario.Presentations[0];
        var water = WaterColumn.Of(scenario.Spot);
        var times = new double?[2 * heads.Count][];
        Parallel.For(0, times.Length, parallel, i =>
        {
            FallMode mode = i % 2 == 0 ? FallMode.SlackLine : FallMode.TightLine;
            var rig = new Rig(heads[i / 2].Head, heads[i / 2].Body, first with { Fall = mode, CountDown = null });
            // On the fall the lure does not swim as on the retrieve: its still drag holds.
            Track track = Simulate(scenario, rig, ActingLures.Of(scenario.Tackle, scenario.Spot, rig.Head, rig.Body), options.Simulation with { FallOnly = true, FallLimit = 90, SampleInterval = 0.05 }, cancellation);
            double resting = water.Depth - TackleBuilder.Lure(rig.Head, rig.Body).ContactRadius;
            times[i] = [.. depths.Select(d => TimeToDepth(track, Math.Min(d, resting - 0.005)))];
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

    /// <summary>Time at which a track first reaches a depth (m), in s; null if it does not.</summary>
    internal static double? TimeToDepth(Track track, double depth)
    {
        for (int i = 1; i < track.Count; i++)
        {
            double before = track.Depth(i - 1), after = track.Depth(i);
            if (after < depth) continue;
            double f = after > before ? Math.Clamp((depth - before) / (after - before), 0, 1) : 1;
            return track.Time[i - 1] + (f * (track.Time[i] - track.Time[i - 1]));
        }

        return null;
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
                ?? Try(scenario, new Rig(heads[h].Head, heads[h].Body, presentation), options.Aside ?? options.Simulation, cancellation)).Coverage;
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
