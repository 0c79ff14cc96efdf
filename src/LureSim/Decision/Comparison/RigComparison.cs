using System.Collections.Concurrent;
using System.Numerics;
using LureSim.Decision.Colours;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Sight;
using LureSim.Swimming;

namespace LureSim.Decision.Comparison;

/// <summary>Things in which two rigs can differ.</summary>
public enum RigFeatureKind
{
    /// <summary>Weight and metal of the head.</summary>
    Weight,

    /// <summary>Shape and size of the body, and the hook that goes with it.</summary>
    Body,

    /// <summary>Colour.</summary>
    Colour,

    /// <summary>Line and leader.</summary>
    Line,

    /// <summary>Knot.</summary>
    Knot,

    /// <summary>How the hook sits in the body.</summary>
    Hook,

    /// <summary>Length of the cast.</summary>
    Cast,

    /// <summary>Count-down and fall.</summary>
    Depth,

    /// <summary>Speed of the retrieve.</summary>
    Speed,

    /// <summary>Pauses and rod work.</summary>
    Rhythm,
}

/// <summary>
/// Something in which two rigs can differ. To compare rigs by something new, give <see cref="ComparedRig"/> a member for it and add
/// a feature to <see cref="All"/>; where it changes more than motion and sight, add a <see cref="RigMeasure"/> too.
/// </summary>
/// <param name="Kind">What it is.</param>
/// <param name="Differs">Whether two rigs differ in it.</param>
/// <param name="Take">The first rig with this feature of the second.</param>
public sealed record RigFeature(RigFeatureKind Kind, Func<ComparedRig, ComparedRig, bool> Differs, Func<ComparedRig, ComparedRig, ComparedRig> Take)
{
    /// <summary>Short name for files.</summary>
    public string Id => Kind.ToString().ToLowerInvariant();

    /// <summary>All features, in the order of the tables.</summary>
    public static IReadOnlyList<RigFeature> All { get; } =
    [
        // The hook goes with the body: its usual size follows the body's.
        new(RigFeatureKind.Weight, (a, b) => (a.Head.Mass, a.Head.Metal) != (b.Head.Mass, b.Head.Metal), (into, other) => into with { Head = other.Head with { HookMass = into.Head.HookMass } }),
        new(RigFeatureKind.Body, (a, b) => a.Body with { Label = "" } != b.Body with { Label = "" } || a.Head.HookMass != b.Head.HookMass, (into, other) => into with { Body = other.Body, Head = into.Head with { HookMass = other.Head.HookMass } }),
        new(RigFeatureKind.Colour, (a, b) => a.Colour != b.Colour, (into, other) => into with { Colour = other.Colour }),
        new(RigFeatureKind.Line, (a, b) => a.Line != b.Line || a.Leader != b.Leader, (into, other) => into with { Line = other.Line, Leader = other.Leader }),
        new(RigFeatureKind.Knot, (a, b) => (a.Rigging.Knot, a.Rigging.LoopLength) != (b.Rigging.Knot, b.Rigging.LoopLength), (into, other) => into with { Rigging = into.Rigging with { Knot = other.Rigging.Knot, LoopLength = other.Rigging.LoopLength } }),

        // Everything else of the rigging.
        new(RigFeatureKind.Hook, (a, b) => OnHook(a, b) != a.Rigging, (into, other) => into with { Rigging = OnHook(into, other) }),
        Presented(RigFeatureKind.Cast, (into, other) => into with { CastLength = other.CastLength, CastWith = other.CastWith, FullCast = other.FullCast }),
        Presented(RigFeatureKind.Depth, (into, other) => into with { CountDown = other.CountDown, Fall = other.Fall }),
        Presented(RigFeatureKind.Speed, (into, other) => into with { RetrieveSpeed = other.RetrieveSpeed }),

        // Everything else of the presentation, so that nothing it holds now or later is left out.
        Presented(RigFeatureKind.Rhythm, (into, other) => other with
        {
            Name = into.Name,
            CastLength = into.CastLength,
            CastWith = into.CastWith,
            FullCast = into.FullCast,
            CountDown = into.CountDown,
            Fall = into.Fall,
            RetrieveSpeed = into.RetrieveSpeed,
        }),
    ];

    private static RigFeature Presented(RigFeatureKind kind, Func<Presentation, Presentation, Presentation> take) => new(
        kind,
        (a, b) => take(a.Presentation, b.Presentation) != a.Presentation,
        (into, other) => into with { Presentation = take(into.Presentation, other.Presentation) });

    private static Rigging OnHook(ComparedRig into, ComparedRig other) => other.Rigging with { Knot = into.Rigging.Knot, LoopLength = into.Rigging.LoopLength };
}

/// <summary>What one rig does.</summary>
/// <param name="Candidate">Its run.</param>
/// <param name="Seen">How the fish sees it where it runs, by the measure of the choice of colour.</param>
/// <param name="Depth">Depth at which it is looked at (m).</param>
/// <param name="Action">How it swims.</param>
public sealed record RigOutcome(Candidate Candidate, SeenLure Seen, double Depth, RigAction Action)
{
    /// <summary>
    /// Swing of its action (radians): under twitches how far the nose turns off the pull on the average, otherwise the amplitude of the tail, or of nose or roll where there is no soft tail; 0 for
    /// what spins, rolls, tumbles or could not be computed.
    /// </summary>
    public double Swing
    {
        get
        {
            EnsembleAssessment run = Action.Twitch ?? Action.Retrieve;
            ActionReport report = run.Report;
            return report.Verdict is ActionVerdict.Spins or ActionVerdict.Rolls or ActionVerdict.Tumbles or ActionVerdict.Unknown ? 0
                : report.Darts.Count > 0 ? report.Darts.Average(dart => Math.Abs(dart.Heading))
                : run.Trace.Body.Tail is not null ? report.TailAmplitude : Math.Max(report.YawAmplitude, report.RollAmplitude);
        }
    }
}

/// <summary>Measures by which rigs are compared.</summary>
public enum RigMeasureKind
{
    /// <summary>Share of the retrieve in the strike zone, 0 to 1.</summary>
    ZoneShare,

    /// <summary>Sighting distance (m).</summary>
    SightingDistance,

    /// <summary>Swing of tail or nose (radians).</summary>
    ActionSwing,
}

/// <summary>A measure by which rigs are compared.</summary>
/// <param name="Kind">What it measures.</param>
/// <param name="Id">Short name for files, with its unit.</param>
/// <param name="Of">Its value, SI.</param>
public sealed record RigMeasure(RigMeasureKind Kind, string Id, Func<RigOutcome, double> Of)
{
    /// <summary>All measures.</summary>
    public static IReadOnlyList<RigMeasure> All { get; } =
    [
        new(RigMeasureKind.ZoneShare, "zone_share", outcome => outcome.Candidate.Coverage.ZoneShare),
        new(RigMeasureKind.SightingDistance, "seen_from_m", outcome => outcome.Seen.SeenFrom),
        new(RigMeasureKind.ActionSwing, "action_swing_rad", outcome => outcome.Swing),
    ];
}

/// <summary>What one difference does to one measure, from the first rig to the second.</summary>
/// <param name="Feature">The difference.</param>
/// <param name="Effect">Its part in the change: the mean over all orders of changing the differences one by one (Shapley 1953, shapley1953value), or of first and last (<see cref="RigComparison.InEveryOrder"/>).</param>
/// <param name="Share">Part of the sum of the sizes of all effects, 0 to 1; 0 where nothing changes.</param>
/// <param name="ChangedFirst">Change when it alone is changed in the first rig.</param>
/// <param name="ChangedLast">Change when it is the last to be changed, all others being those of the second rig.</param>
public sealed record FeatureEffect(RigFeature Feature, double Effect, double Share, double ChangedFirst, double ChangedLast);

/// <summary>One measure of both rigs and what makes the difference.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="First">Value of the first rig.</param>
/// <param name="Second">Value of the second rig.</param>
/// <param name="Effects">One entry a difference, in the order of <see cref="RigFeature.All"/>; their effects add to the change.</param>
public sealed record MeasureComparison(RigMeasure Measure, double First, double Second, IReadOnlyList<FeatureEffect> Effects)
{
    // Effects smaller than this part of the measure are within what the model can tell (assumed).
    private const double Negligible = 0.03;

    /// <summary>The difference with the greatest effect; null where none changes the measure by more than a thirtieth.</summary>
    public FeatureEffect? Main => Effects.MaxBy(e => Math.Abs(e.Effect)) is { } main && Math.Abs(main.Effect) > Negligible * Math.Max(Math.Abs(First), Math.Abs(Second)) ? main : null;
}

/// <summary>Settings of a comparison.</summary>
public sealed record RigComparisonOptions
{
    /// <summary>Settings of the simulations.</summary>
    public SimulationOptions Simulation { get; init; } = new();

    /// <summary>Threads to use; the results do not depend on it.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;
}

/// <summary>Two rigs side by side.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="First">The first rig.</param>
/// <param name="Second">The second rig.</param>
/// <param name="FirstOutcome">What the first does.</param>
/// <param name="SecondOutcome">What the second does.</param>
/// <param name="Differences">In what they differ.</param>
/// <param name="Measures">What the differences do.</param>
public sealed record RigComparison(
    Scenario Scenario,
    ComparedRig First,
    ComparedRig Second,
    RigOutcome FirstOutcome,
    RigOutcome SecondOutcome,
    IReadOnlyList<RigFeature> Differences,
    IReadOnlyList<MeasureComparison> Measures)
{
    // With more differences that move the lure, every set of them would be a run each: two to the power of their number.
    private const int MostInEveryOrder = 4;

    /// <summary>
    /// True where the part of a difference is the mean over all orders of changing the differences; false where they are too many for that, and it is the mean of changing it
    /// first and last. The two are the same as long as no three differences act together; what three do is shared by how far first and last are apart.
    /// </summary>
    public bool InEveryOrder { get; init; } = true;

    /// <summary>Compares the two rigs of a scenario.</summary>
    /// <param name="scenario">A validated scenario with two rigs to compare.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="progress">Told the share of the work done, from several threads.</param>
    /// <param name="cancellation">Honoured between and within simulations.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="ArgumentException">The scenario has no two rigs to compare, or its fish is unknown.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static RigComparison Compare(Scenario scenario, RigComparisonOptions? options = null, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        if (scenario.Compare.Count != 2)
            throw new ArgumentException("The scenario has no two rigs to compare.", nameof(scenario));
        options ??= new RigComparisonOptions();
        ComparedRig first = scenario.Compare[0], second = scenario.Compare[1];
        RigFeature[] differences = [.. RigFeature.All.Where(feature => feature.Differs(first, second))];
        bool inEveryOrder = differences.Count(feature => feature.Kind != RigFeatureKind.Colour) <= MostInEveryOrder;
        int[] sets = inEveryOrder ? [.. Enumerable.Range(0, 1 << differences.Length)] : FirstAndLast(differences.Length);
        RigOutcome[] outcomes = Outcomes(scenario, first, second, differences, sets, options, progress, cancellation);
        MeasureComparison[] measures =
        [
            .. RigMeasure.All.Select(measure => (measure, values: outcomes.Select(measure.Of).ToArray()))
                .Select(item => inEveryOrder ? Explain(item.measure, differences, item.values) : ExplainByEnds(item.measure, differences, item.values)),
        ];
        return new RigComparison(scenario, first, second, outcomes[0], outcomes[^1], differences, measures) { InEveryOrder = inEveryOrder };
    }

    // No difference, each one alone, all but each one, all of them.
    private static int[] FirstAndLast(int count)
    {
        int all = (1 << count) - 1;
        IEnumerable<int> each = Enumerable.Range(0, count).Select(i => 1 << i);
        return [0, .. each, .. each.Select(one => all ^ one), all];
    }

    // One outcome for each set of differences taken from the second rig; bit i of a set stands for difference i.
    private static RigOutcome[] Outcomes(
        Scenario scenario, ComparedRig first, ComparedRig second, RigFeature[] differences, int[] sets, RigComparisonOptions options, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (!FishEyes.TryFind(scenario.Spot.TargetFish, out FishEye? eye))
            throw new ArgumentException($"There is no eye for the target fish '{scenario.Spot.TargetFish}'.", nameof(scenario));
        LightField field = SpotColours.Field(scenario.Spot);
        var runs = new ConcurrentDictionary<ComparedRig, Lazy<(Candidate Run, RigAction Action)>>();
        var sightings = new ConcurrentDictionary<(string Colour, double Depth, LureBody Body), Lazy<SeenLure>>();
        LurePattern[] lures = [.. new[] { first, second }.Select(rig => LurePattern.Plain(SpotColours.Colour(rig.Colour)))];
        var outcomes = new RigOutcome[sets.Length];
        int done = 0;
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, options.Threads), CancellationToken = cancellation };
        Parallel.For(0, outcomes.Length, parallel, place =>
        {
            ComparedRig rig = first;
            for (int i = 0; i < differences.Length; i++)
            {
                if ((sets[place] & (1 << i)) != 0) rig = differences[i].Take(rig, second);
            }

            // Neither names nor the colour move the lure: rigs that are equal but for them share a run.
            ComparedRig moving = rig with { Name = "", Colour = "", Presentation = rig.Presentation with { Name = "" }, Head = rig.Head with { Label = "" }, Body = rig.Body with { Label = "" } };
            (Candidate run, RigAction action) = runs.GetOrAdd(moving, _ => new Lazy<(Candidate, RigAction)>(() => Run(scenario, moving, options, cancellation))).Value;
            Candidate candidate = run with { Rig = new Rig(rig.Head, rig.Body, rig.Presentation) };
            double depth = Math.Clamp(candidate.Coverage.MedianDepth, 0, scenario.Spot.Depth);
            SeenLure seen = sightings.GetOrAdd((rig.Colour, depth, rig.Body with { Label = "" }), key => new Lazy<SeenLure>(() =>
            {
                IReadOnlyList<SightLook> looks = ColourAdvice.LooksAt(scenario.Spot.StrikeZone, [new RunningDepth(key.Depth, 1)], field, eye, key.Body, lures);
                return new SightMeasure(field, eye, key.Body, looks).Of(LurePattern.Plain(SpotColours.Colour(key.Colour)));
            })).Value;
            outcomes[place] = new RigOutcome(candidate, seen, depth, action);
            progress?.Report((double)Interlocked.Increment(ref done) / outcomes.Length);
        });
        return outcomes;
    }

    private static (Candidate Run, RigAction Action) Run(Scenario scenario, ComparedRig rig, RigComparisonOptions options, CancellationToken cancellation)
    {
        Scenario with = scenario with { Tackle = scenario.Tackle with { Line = rig.Line, Leader = rig.Leader, Rigging = rig.Rigging } };
        Candidate run = Trial.Run(with, new Rig(rig.Head, rig.Body, rig.Presentation), options.Simulation, cancellation);
        return (run, RigChecker.OnRetrieve(with, run.Rig, run.Track, cancellation));
    }

    /// <summary>Splits the change of a measure among the differences.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="differences">The differences, n of them.</param>
    /// <param name="values">Its value for every set of differences taken from the second rig, 2^n; bit i of the index stands for difference i.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There are not 2^n values.</exception>
    public static MeasureComparison Explain(RigMeasure measure, IReadOnlyList<RigFeature> differences, IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(measure);
        ArgumentNullException.ThrowIfNull(differences);
        ArgumentNullException.ThrowIfNull(values);
        int count = differences.Count;
        if (values.Count != 1 << count)
            throw new ArgumentException("There must be a value for every set of differences.", nameof(values));
        double[] effects = new double[count];
        for (int i = 0; i < count; i++)
        {
            for (int set = 0; set < values.Count; set++)
            {
                if ((set & (1 << i)) != 0) continue;
                int size = BitOperations.PopCount((uint)set);

                // Share of the orders in which exactly this set comes before i: s! (n - s - 1)! / n!.
                double orders = 1 / (count * MathNet.Numerics.SpecialFunctions.Binomial(count - 1, size));
                effects[i] += orders * (values[set | (1 << i)] - values[set]);
            }
        }

        return Shared(measure, differences, values[0], values[^1], effects, [.. differences.Select((_, i) => values[1 << i] - values[0])], [.. differences.Select((_, i) => values[^1] - values[(values.Count - 1) ^ (1 << i)])], values.Max(Math.Abs));
    }

    /// <summary>The same from each difference changed first and last alone: the mean of the two, and what is missing to the change by how far they are apart.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="differences">The differences, n of them.</param>
    /// <param name="values">Its value for no difference, for each one alone, for all but each one, and for all: 2 n + 2.</param>
    /// <exception cref="ArgumentException">There are not as many values.</exception>
    internal static MeasureComparison ExplainByEnds(RigMeasure measure, IReadOnlyList<RigFeature> differences, IReadOnlyList<double> values)
    {
        int count = differences.Count;
        if (values.Count != (2 * count) + 2)
            throw new ArgumentException("There must be a value for none, for each, for all but each, and for all.", nameof(values));
        double[] alone = [.. Enumerable.Range(1, count).Select(i => values[i] - values[0])], last = [.. Enumerable.Range(1 + count, count).Select(i => values[^1] - values[i])];
        double[] effects = [.. alone.Zip(last, (one, other) => 0.5 * (one + other))];
        double missing = values[^1] - values[0] - effects.Sum(), scale = values.Max(Math.Abs);
        double[] apart = [.. alone.Zip(last, (one, other) => Math.Abs(other - one))];

        // Where first and last agree for all of them, nothing says whose the rest is.
        if (!(apart.Sum() > 1e-9 * scale)) apart = [.. effects.Select(Math.Abs)];
        if (!(apart.Sum() > 1e-9 * scale)) apart = [.. effects.Select(_ => 1.0)];
        double sum = apart.Sum();
        for (int i = 0; i < count; i++) effects[i] += missing * apart[i] / sum;
        return Shared(measure, differences, values[0], values[^1], effects, alone, last, scale);
    }

    private static MeasureComparison Shared(RigMeasure measure, IReadOnlyList<RigFeature> differences, double first, double second, double[] effects, double[] alone, double[] last, double greatest)
    {
        // What is left of adding and subtracting equal numbers is no effect.
        double scale = 1e-12 * greatest;
        for (int i = 0; i < effects.Length; i++)
        {
            if (Math.Abs(effects[i]) <= scale) effects[i] = 0;
        }

        double total = effects.Sum(Math.Abs);
        return new MeasureComparison(measure, first, second, [.. differences.Select((feature, i) => new FeatureEffect(feature, effects[i], total > 0 ? Math.Abs(effects[i]) / total : 0, alone[i], last[i]))]);
    }
}
