using LureSim.Coupling;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;
using LureSim.Tackle;
using LureSim.Water;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.Optimization;

namespace LureSim.Decision.Search;

/// <summary>Settings of a search.</summary>
public sealed record RetrieveSearchOptions
{
    /// <summary>Fewest runs of a family.</summary>
    public const int FewestRuns = 12;

    /// <summary>Most runs of a family.</summary>
    public const int MostRuns = 400;

    /// <summary>Simulated casts for each family, 12 to 400; a third of them look around, the rest are the optimiser's.</summary>
    public int RunsPerFamily { get; init; } = 48;

    /// <summary>Tries over which the best of each family and the scenario's own are judged; 0 for their single runs. A scenario that knows all exactly has none, one that asks for fewer has those.</summary>
    public int Tries { get; init; } = 12;

    /// <summary>Settings of the winners' runs; the search itself takes coarser ones (<see cref="Trial.Coarse"/>).</summary>
    public SimulationOptions Simulation { get; init; } = new();

    /// <summary>Threads to use; the results do not depend on it.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;
}

/// <summary>One retrieve that was tried.</summary>
/// <param name="Family">Its family; null for a presentation of the scenario.</param>
/// <param name="Presentation">The retrieve.</param>
/// <param name="Coverage">Where the lure spent its time; typical figures where it ran the tries.</param>
/// <param name="ActionShare">Share of the retrieve in which the action is on, 0 to 1.</param>
/// <param name="LiveZoneShare">Share of the retrieve in the strike zone with the action on, 0 to 1.</param>
/// <param name="Score">The score of <see cref="Ranking"/>; the mean where it ran the tries.</param>
public sealed record RetrieveTrial(RetrieveFamily? Family, Presentation Presentation, Coverage Coverage, double ActionShare, double LiveZoneShare, double Score)
{
    /// <summary>Its numbers over the tries; null for a single run.</summary>
    public TryNumbers? Numbers { get; init; }

    /// <summary>Share of the retrieve clear of bottom and grass, 0 to 1; where there is grass the bottom lies in it.</summary>
    public double ClearShare => 1 - Math.Max(Coverage.BottomShare, Coverage.GrassShare);

    /// <summary>Strokes of the rod a minute: twitches and lifts.</summary>
    public double StrokesPerMinute
    {
        get
        {
            double cycle = Presentation.Moves.Sum(move => move.Duration);
            double strokes = Presentation.Moves.Sum(move => move.Kind is MoveKind.Lift or MoveKind.Sweep ? 1 : move.Beats);
            return double.IsFinite(cycle) && cycle > 0 ? 60 * strokes / cycle : 0;
        }
    }
}

/// <summary>What came out for a family.</summary>
/// <param name="Family">The family.</param>
/// <param name="Best">Its best retrieve in figures that a hand can keep, judged over the tries.</param>
/// <param name="Candidate">A single run of it at full settings.</param>
/// <param name="Tried">All that was tried, at coarse settings, in order.</param>
public sealed record FamilyResult(RetrieveFamily Family, RetrieveTrial Best, Candidate Candidate, IReadOnlyList<RetrieveTrial> Tried);

/// <summary>The retrieve of a lure that covers the strike zone best with its action on, sought over families of retrieves.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Head">Head.</param>
/// <param name="Body">Body.</param>
/// <param name="Action">When the action is on.</param>
/// <param name="Families">Families, best first.</param>
/// <param name="Own">The presentations of the scenario with the same lure, in their order, judged over the tries.</param>
public sealed record RetrieveSearch(
    Scenario Scenario,
    JigHead Head,
    LureBody Body,
    ActionTable Action,
    IReadOnlyList<FamilyResult> Families,
    IReadOnlyList<RetrieveTrial> Own)
{
    // Seeds of the first look around, one a family.
    private const int Seed = 20_011;

    // Longest fall that is counted down (s).
    private const double LongestCount = 60;

    // A guide down to the zone for retrieves that never reach it; too small to outweigh a hundredth of the score.
    private const double GuideWeight = 0.01;

    // Size of the first simplex (radians of the bounding sine), and the spread of values at which it is done.
    private const double FirstStep = 0.35;
    private const double Accuracy = 1e-3;

    // The optimiser counts its own rounds; those beyond the budget of runs cost nothing.
    private const int MostRounds = 1000;
    private const double Spent = 2;

    private const int Starts = 2;

    // Of each family so many go through the tries: what is best in the one run of the scenario may lie on a knife edge.
    private const int Finalists = 4;

    // Being better by less than this is no reason to change one's ways (score; assumed: what the coarse grid of a hand and the model's spread blur).
    private const double RealMargin = 0.05;
    private const double RealRatio = 1.15;

    /// <summary>The best of the families.</summary>
    public FamilyResult Best => Families[0];

    /// <summary>The best of the scenario's own.</summary>
    public RetrieveTrial BestOwn => Own.MaxBy(trial => trial.Score)!;

    /// <summary>Whether the search found something that is better than the scenario's own by a real margin.</summary>
    public bool BeatsOwn => Best.Best.Score > Math.Max(BestOwn.Score + RealMargin, RealRatio * BestOwn.Score);

    /// <summary>Casts simulated by the search.</summary>
    public int Runs { get; init; }

    /// <summary>Of all that was tried and of the winners, those that no other beats in both time in the zone with the action on and time clear of bottom and grass; by rising time in the zone.</summary>
    public IReadOnlyList<RetrieveTrial> Front
    {
        get
        {
            var front = new List<RetrieveTrial>();
            foreach (RetrieveTrial trial in Families.SelectMany(f => f.Tried.Append(f.Best)).Concat(Own).OrderByDescending(t => t.LiveZoneShare).ThenByDescending(t => t.ClearShare))
            {
                if (front.Count == 0 || trial.ClearShare > front[^1].ClearShare) front.Add(trial);
            }

            front.Reverse();
            return front;
        }
    }

    /// <summary>Searches.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="head">Head.</param>
    /// <param name="body">Body.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="progress">Told the share of the work done, from several threads.</param>
    /// <param name="cancellation">Honoured between and within simulations.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of runs is out of its range.</exception>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public static RetrieveSearch Search(
        Scenario scenario, JigHead head, LureBody body, RetrieveSearchOptions? options = null, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        options ??= new RetrieveSearchOptions();
        Guard.InRange(options.RunsPerFamily, RetrieveSearchOptions.FewestRuns, RetrieveSearchOptions.MostRuns);
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, options.Threads), CancellationToken = cancellation };
        IReadOnlyList<RetrieveFamily> families = RetrieveFamily.All;
        int tries = scenario.Uncertainty.IsExactInMotion ? 0 : Math.Min(options.Tries, scenario.Uncertainty.Samples);
        double total = (families.Count * (options.RunsPerFamily + 1 + (Finalists * tries))) + (scenario.Presentations.Count * Math.Max(1, tries));
        int done = 0, runs = 0;
        var table = ActionTable.Compute(scenario.Tackle, scenario.Spot, head, body, parallel);
        var study = new Study(scenario, head, body, table, options, tries, count => progress?.Report(Math.Min(1, Interlocked.Add(ref done, count) / total)), () => Interlocked.Increment(ref runs), cancellation);
        FallTime fall = FallOf(scenario, head, body, Trial.Coarse(options.Simulation), cancellation);
        var found = new FamilyResult[families.Count];
        var own = new RetrieveTrial[scenario.Presentations.Count];
        Parallel.For(0, families.Count + 1, parallel, i =>
        {
            if (i < families.Count)
            {
                found[i] = study.Search(families[i], fall, Seed + i);
                return;
            }

            for (int p = 0; p < own.Length; p++)
                own[p] = study.OverTries(null, scenario.Presentations[p]);
        });
        progress?.Report(1);
        return new RetrieveSearch(scenario, head, body, table, [.. found.OrderByDescending(f => f.Best.Score)], own) { Runs = runs };
    }

    /// <summary>The head of the box that does best with the scenario's own presentations, by coarse runs; the body itself where it needs no head.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="body">The body.</param>
    /// <param name="simulation">Settings.</param>
    /// <param name="parallel">Threads and cancellation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static JigHead BestHead(Scenario scenario, LureBody body, SimulationOptions simulation, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(parallel);
        if (!body.NeedsHead) return JigHead.None(body);
        IReadOnlyList<JigHead> heads = scenario.Tackle.JigHeads;
        int ways = scenario.Presentations.Count;
        double[] scores = new double[heads.Count * ways];
        SimulationOptions coarse = Trial.Coarse(simulation);
        Parallel.For(0, scores.Length, parallel, i =>
            scores[i] = Trial.Run(scenario, new Rig(heads[i / ways], body, scenario.Presentations[i % ways]), coarse, parallel.CancellationToken).Score);
        return heads[Array.IndexOf(scores, scores.Max()) / ways];
    }

    /// <summary>How long the lure falls to the bottom; as long as an angler waits where it does not get there.</summary>
    internal static FallTime FallOf(Scenario scenario, JigHead head, LureBody body, SimulationOptions settings, CancellationToken cancellation)
    {
        Presentation falls = scenario.Presentations[0] with { CountDown = null };
        Track track = Trial.Run(scenario, new Rig(head, body, falls), settings with { FallOnly = true, FallLimit = LongestCount }, cancellation).Track;
        double resting = WaterColumn.Of(scenario.Spot).Depth - TackleBuilder.Lure(head, body).ContactRadius - 0.005;
        return Trial.TimeToDepth(track, resting) is { } seconds ? new FallTime(seconds, true) : new FallTime(LongestCount, false);
    }

    /// <summary>What the search climbs: the score, with a guide to the zone where it is 0.</summary>
    internal static double Worth(RetrieveTrial trial, Spot spot)
    {
        StrikeZone zone = spot.StrikeZone;
        double depth = trial.Coverage.MedianDepth;
        double gap = Math.Max(0, Math.Max(zone.Top - depth, depth - zone.Bottom)) / spot.Depth;
        return trial.Score + (GuideWeight * ((1 - Math.Min(1, gap)) + trial.ActionShare) / 2);
    }

    // One lure in one water.
    private sealed class Study(
        Scenario scenario, JigHead head, LureBody body, ActionTable table, RetrieveSearchOptions options, int tries, System.Action<int> done, System.Action ran, CancellationToken cancellation)
    {
        private readonly SimulationOptions coarse = Trial.Coarse(options.Simulation);

        public RetrieveTrial Try(RetrieveFamily? family, Presentation presentation, SimulationOptions settings, out Candidate run)
        {
            cancellation.ThrowIfCancellationRequested();
            run = Trial.Run(scenario, new Rig(head, body, presentation), settings, cancellation);
            (double on, double live) = table.Shares(run.Track, presentation, scenario.Spot.StrikeZone);
            Coverage coverage = run.Coverage with { LiveZoneShare = live };
            double score = run.Track.Status == SimulationStatus.Failed ? 0 : Ranking.Score(coverage, scenario.Spot, run.Rig);
            done(1);
            ran();
            return new RetrieveTrial(family, presentation, coverage, on, live, score);
        }

        // The same over the tries; a single run at full settings where everything is known.
        public RetrieveTrial OverTries(RetrieveFamily? family, Presentation presentation)
        {
            if (tries == 0) return Try(family, presentation, options.Simulation, out _);
            IReadOnlyList<UncertainDraw> draws = UncertainDraw.Draw(scenario, presentation, tries);
            var coverages = new Coverage[draws.Count];
            double[] scores = new double[draws.Count], working = new double[draws.Count];
            SimulationOptions settings = Trial.ForSearch(options.Simulation);
            for (int t = 0; t < draws.Count; t++)
            {
                cancellation.ThrowIfCancellationRequested();
                UncertainDraw draw = draws[t];
                Candidate run = Trial.Run(draw.Scenario, new Rig(head, body, draw.Presentation), settings with { LineDrag = draw.LineDrag, LureDragFactor = draw.LureDragFactor }, cancellation);
                (working[t], double live) = table.Shares(run.Track, draw.Presentation, draw.Scenario.Spot.StrikeZone);
                coverages[t] = run.Coverage with { LiveZoneShare = live };
                scores[t] = run.Track.Status == SimulationStatus.Failed ? 0 : Ranking.Score(coverages[t], draw.Scenario.Spot, run.Rig);
                done(1);
                ran();
            }

            var typical = Coverage.Typical(coverages);
            return new RetrieveTrial(family, presentation, typical, Interval.Of(working).Median, typical.LiveZoneShare, scores.Average()) { Numbers = TryNumbers.Of(coverages, scores) };
        }

        public FamilyResult Search(RetrieveFamily family, FallTime fall, int seed)
        {
            int n = family.Parameters.Count, budget = options.RunsPerFamily;
            var tried = new List<RetrieveTrial>(budget);
            var places = new List<double[]>(budget);

            // A look around first: an optimiser that walks downhill finds only the nearest valley.
            int looks = Math.Max(n + 1, budget / 3);
            double[,] points = LatinHypercube.Draw(looks, n, seed);
            for (int i = 0; i < looks; i++)
                Look([.. Enumerable.Range(0, n).Select(d => points[i, d])]);
            int[] starts = [.. Enumerable.Range(0, looks).OrderByDescending(i => Worth(tried[i], scenario.Spot)).Take(Starts)];
            for (int s = 0; s < starts.Length; s++)
                Descend(places[starts[s]], s == starts.Length - 1 ? budget : tried.Count + ((budget - looks) / Starts));
            done(budget - tried.Count);

            // In figures that a hand can keep; then the tries decide.
            Presentation[] final =
            [
                .. Enumerable.Range(0, tried.Count).OrderByDescending(i => Worth(tried[i], scenario.Spot))
                    .Select(i => family.Build(scenario.Presentations[0], [.. family.Parameters.Select((p, d) => p.Rounded(p.At(places[i][d])))], fall))
                    .Distinct().Take(tries == 0 ? 1 : Finalists),
            ];
            RetrieveTrial alone = Try(family, final[0], options.Simulation, out Candidate run);
            if (tries == 0) return new FamilyResult(family, alone, run, tried);
            RetrieveTrial winner = final.Select(way => OverTries(family, way)).ToArray().MaxBy(trial => Worth(trial, scenario.Spot))!;
            if (winner.Presentation != final[0]) Try(family, winner.Presentation, options.Simulation, out run);
            done((Finalists - final.Length) * tries);
            return new FamilyResult(family, winner, run, tried);

            double Look(double[] place)
            {
                double[] values = [.. family.Parameters.Select((p, d) => p.At(place[d]))];
                RetrieveTrial trial = Try(family, family.Build(scenario.Presentations[0], values, fall), coarse, out _);
                tried.Add(trial);
                places.Add(place);
                return Worth(trial, scenario.Spot);
            }

            // Nelder and Mead 1965 (nelder1965simplex) in angles whose squared sines are the places: any step stays in the range, and its ends can be reached.
            void Descend(double[] from, int until)
            {
                IObjectiveFunction objective = ObjectiveFunction.Value(angles =>
                    tried.Count >= until ? Spent : -Look([.. angles.Select(angle => Math.Sin(angle) * Math.Sin(angle))]));
                Vector<double> start = DenseVector.OfEnumerable(from.Select(place => Math.Asin(Math.Sqrt(place))));

                // Towards the middle of the range.
                Vector<double> steps = DenseVector.OfEnumerable(from.Select(place => place < 0.5 ? FirstStep : -FirstStep));
                try
                {
                    NelderMeadSimplex.Minimum(objective, start, steps, Accuracy, MostRounds);
                }
                catch (MaximumIterationsException)
                {
                    // The budget ends a search more often than its accuracy does; what it has found is kept in the list.
                }
            }
        }
    }
}
