using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;

namespace LureSim.Decision.Search;

/// <summary>What a choice is held to; what is null is free.</summary>
/// <param name="Head">The jig head.</param>
/// <param name="Body">The soft bait or the lure without a head.</param>
/// <param name="Presentation">The presentation of the scenario; its hands stay free.</param>
/// <param name="Colour">The colour.</param>
public sealed record ChoiceLimits(JigHead? Head = null, LureBody? Body = null, Presentation? Presentation = null, string? Colour = null);

/// <summary>Settings of a search for a choice.</summary>
public sealed record ChoiceSearchOptions
{
    /// <summary>Tries of the uncertain inputs, 0 for the scenario's single run; null for what the scenario asks for.</summary>
    public int? Samples { get; init; }

    /// <summary>What the choice is held to.</summary>
    public ChoiceLimits Limits { get; init; } = new();

    /// <summary>Settings of single runs; the search takes coarser ones (<see cref="Trial.ForSearch"/>).</summary>
    public SimulationOptions Simulation { get; init; } = new();

    /// <summary>True to run every rig with every variation of the hands over all tries: what the race is measured against.</summary>
    public bool Exhaustive { get; init; }

    /// <summary>Told the best rig of the first look, before the tries.</summary>
    public IProgress<Candidate>? FirstLook { get; init; }
}

/// <summary>A rig over the tries that it was given.</summary>
/// <param name="Rig">The rig.</param>
/// <param name="Own">The presentation of the scenario that its hands vary.</param>
/// <param name="Outcomes">Coverage in each try.</param>
/// <param name="Scores">Score in each try.</param>
/// <param name="Fit">How well the bait suits season, forage and fish, 0 to 1.</param>
public sealed record SearchedRig(Rig Rig, Presentation Own, IReadOnlyList<Coverage> Outcomes, IReadOnlyList<double> Scores, double Fit)
{
    /// <summary>The runs of the tries; empty where there was one run only.</summary>
    internal IReadOnlyList<UncertaintyStudy.DrawRun> Runs { get; init; } = [];

    /// <summary>The tries; empty where there was one run only.</summary>
    public IReadOnlyList<UncertainDraw> Draws { get; init; } = [];

    /// <summary>Where its count aims.</summary>
    internal SinkTarget Target { get; init; }

    /// <summary>The same runs under other weights.</summary>
    internal SearchedRig Weighed(Scenario scenario, ScoreWeights weights) => this with
    {
        Scores = [.. Outcomes.Select((coverage, t) => Draws.Count == 0
            ? Ranking.Score(coverage, scenario.Spot, Rig, weights)
            : Runs[t].Failed ? 0 : Ranking.Score(coverage, Draws[t].Scenario.Spot, Rig with { Presentation = Draws[t].Presentation }, weights))],
    };

    /// <summary>Mean score over the tries.</summary>
    public double Mean => Scores.Average();

    /// <summary>Mean score times the fit of the bait: what baits are weighed by.</summary>
    public double Value => Mean * Fit;

    /// <summary>Standard error of the mean by which another rig leads this one, try by try; 0 for a single try.</summary>
    /// <param name="other">A rig of the same tries.</param>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public double StandardErrorTo(SearchedRig other)
    {
        ArgumentNullException.ThrowIfNull(other);
        int n = Math.Min(Scores.Count, other.Scores.Count);
        if (n < 2) return 0;
        double[] lead = [.. Enumerable.Range(0, n).Select(i => other.Scores[i] - Scores[i])];
        double mean = lead.Average();
        return Math.Sqrt(lead.Sum(x => (x - mean) * (x - mean)) / (n - 1) / n);
    }
}

/// <summary>
/// The choice of a box: soft bait, head, presentation and what the hands are free to do in it, sought together. The objective is the mean score over the tries, with
/// the same random numbers for every rig. All rigs are looked at once; those that do best go on to more tries, half of them each time (successive halving: Jamieson
/// and Talwalkar 2016, jamieson2016nonstochastic; optimal allocation of a computing budget: Chen et al. 2000, chen2000simulation; bounds and rungs as in Li et al. 2018, li2018hyperband). Of scores that differ by less than
/// the model knows the lightest head and the simplest retrieve wins (<see cref="Preference"/>).
/// </summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Bodies">What the rules of season, forage and fish want.</param>
/// <param name="First">The choice.</param>
/// <param name="Finalists">The rigs that ran all tries, the choice first, then by falling value.</param>
/// <param name="Heads">The choice with every head of the box, worked the same way, in the order of the box; sink counts that aim at the zone follow the head.</param>
/// <param name="FirstLook">Every head and bait with every presentation, run once: a sink count that is free follows the strike zone.</param>
/// <param name="Draws">The tries of the choice.</param>
/// <param name="Considered">Rigs that were run, variations of the hands counted.</param>
/// <param name="Runs">Casts simulated.</param>
public sealed record ChoiceSearch(
    Scenario Scenario,
    BodyChoice Bodies,
    SearchedRig First,
    IReadOnlyList<SearchedRig> Finalists,
    IReadOnlyList<Rig> Heads,
    IReadOnlyList<Candidate> FirstLook,
    IReadOnlyList<UncertainDraw> Draws,
    int Considered,
    int Runs)
{
    // The stages of the race: rigs that go on, and the tries that they have run by then.
    private static readonly (int Rigs, int Tries)[] Stages = [(8, 6), (5, 12), (4, int.MaxValue)];

    // Rigs whose hands are varied, and how many go on after each hand.
    private static readonly (Hand Hand, int Rigs)[] Refinement = [(Hand.SinkCount, 8), (Hand.ReelSpeed, 6), (Hand.Rest, 4), (Hand.Lift, 4), (Hand.CastAngle, 3)];
    private const int FirstSurvivors = 8;
    private const int OfEachBait = 2;

    // The scenario's own figures stay unless another hand scores more by this (score): figures are not changed for nothing.
    private const double WorthChanging = 0.01;

    // A neighbour of the choice may be the better one; so often it is looked for.
    private const int MostMoves = 4;

    // Longest fall that is counted down (s).
    private const double LongestCount = 60;

    // Quantiles of the current whose tries stand for all while hands are varied.
    private const double LowPlace = 0.2;
    private const double HighPlace = 0.8;

    /// <summary>Tries behind the numbers; 1 where everything is known.</summary>
    public int Tries => First.Scores.Count;

    /// <summary>Searches.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads. Null for all threads.</param>
    /// <param name="progress">Told the share of the work done, from several threads.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="ArgumentException">What the choice is held to is not in the scenario.</exception>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public static ChoiceSearch Find(Scenario scenario, ChoiceSearchOptions? options = null, ParallelOptions? parallel = null, IProgress<double>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return new Race(scenario, options ?? new ChoiceSearchOptions(), parallel ?? new ParallelOptions(), progress).Run();
    }

    /// <summary>The best rig of another head or another bait; null where there is none.</summary>
    public SearchedRig? RunnerUp => Finalists.Where(rig => rig.Rig.Head != First.Rig.Head || rig.Rig.Body != First.Rig.Body).MaxBy(rig => rig.Value);

    /// <summary>Rules and runs together.</summary>
    public BaitOutcome Bait
    {
        get
        {
            SearchedRig[] ofBaits = [.. Finalists.GroupBy(rig => rig.Rig.Body).Select(group => group.MaxBy(rig => rig.Mean)!)];
            SearchedRig wanted = Wanted(ofBaits, Bodies), best = ofBaits.MaxBy(rig => rig.Mean)!;
            BaitOutcomeKind kind = Scenario.Tackle.Bodies.Count == 1 || ofBaits.Length == 1 ? BaitOutcomeKind.OneBait
                : Bodies.Spoke is null ? BaitOutcomeKind.NoRule
                : First.Rig.Body != wanted.Rig.Body ? BaitOutcomeKind.RunsOverturn
                : best.Rig.Body == wanted.Rig.Body ? BaitOutcomeKind.Agree
                : BaitOutcomeKind.RulesStand;
            return new BaitOutcome(kind, First.Rig.Body, wanted.Rig.Body, wanted.Mean, best.Rig.Body, best.Mean);
        }
    }

    /// <summary>Of each bait the rig to take (<see cref="Preference"/>); then the bait of the rules, unless the runs of another lead by more than the model knows.</summary>
    internal static SearchedRig Pick(IReadOnlyList<SearchedRig> rigs, BodyChoice bodies, ScoreWeights weights)
    {
        SearchedRig[] ofBaits = [.. rigs.GroupBy(rig => rig.Rig.Body).Select(group => Preference.Of([.. group], rig => rig.Rig, rig => rig.Mean, (best, rig) => rig.StandardErrorTo(best), weights))];
        SearchedRig wanted = Wanted(ofBaits, bodies), best = ofBaits.MaxBy(rig => rig.Value)!;
        return best.Value > wanted.Value * (1 + weights.BaitMargin) ? best : wanted;
    }

    private static SearchedRig Wanted(SearchedRig[] ofBaits, BodyChoice bodies) =>
        ofBaits.OrderByDescending(rig => rig.Fit).ThenBy(rig => bodies.Fits.ToList().FindIndex(fit => fit.Body == rig.Rig.Body)).First();

    // A rig in the race.
    private sealed class Arm(Rig rig, Presentation own, SinkTarget target, double fit)
    {
        public Rig Rig { get; } = rig;

        public Presentation Own { get; } = own;

        public SinkTarget Target { get; } = target;

        public double Fit { get; } = fit;

        public Candidate? Look { get; set; }

        public IReadOnlyList<UncertainDraw> Draws { get; set; } = [];

        public UncertaintyStudy.DrawRun?[] Outcomes { get; set; } = [];

        public double Reach { get; set; }

        public double MeanOf(IReadOnlyList<int> tries) => tries.Average(t => t < 0 ? Look!.Score : Outcomes[t]!.Score);

        public SearchedRig Searched() => Outcomes.Length == 0
            ? new SearchedRig(Rig, Own, [Look!.Coverage], [Look.Score], Fit) { Target = Target }
            : new SearchedRig(Rig, Own, [.. Outcomes.OfType<UncertaintyStudy.DrawRun>().Select(run => run.Coverage)], [.. Outcomes.OfType<UncertaintyStudy.DrawRun>().Select(run => run.Score)], Fit)
            {
                Runs = [.. Outcomes.OfType<UncertaintyStudy.DrawRun>()],
                Draws = Draws,
                Target = Target,
            };
    }

    private sealed class Race(Scenario scenario, ChoiceSearchOptions options, ParallelOptions parallel, IProgress<double>? progress)
    {
        private readonly SimulationOptions settings = Trial.ForSearch(options.Simulation);
        private readonly BodyChoice bodies = BodyChoice.Of(scenario);
        private readonly int samples = scenario.Uncertainty.IsExactInMotion ? 0 : options.Samples ?? scenario.Uncertainty.Samples;
        private readonly Dictionary<(Rig Rig, double Depth), double?> counts = [];
        private readonly Dictionary<Rig, Arm> known = [];
        private int runs;

        public ChoiceSearch Run()
        {
            List<Arm> all = FirstLook();
            Arm seen = Pick(all, [-1]);
            options.FirstLook?.Report(seen.Look!);
            Arm first;
            List<Arm> final;
            if (options.Exhaustive)
            {
                final = Everything(all);
                Try(final, AllTries);
                first = Pick(final, AllTries);
            }
            else
            {
                List<Arm> hands = Refine(all);
                progress?.Report(0.45);
                final = Halve(all, hands);
                progress?.Report(0.8);
                first = Settle(final);
            }

            progress?.Report(1);
            SearchedRig chosen = first.Searched();
            return new ChoiceSearch(
                scenario,
                bodies,
                chosen,
                [chosen, .. final.Where(arm => arm != first && Full(arm)).Select(arm => arm.Searched()).OrderByDescending(rig => rig.Value)],
                AllHeads(first),
                [.. all.Select(arm => arm.Look!)],
                first.Draws,
                known.Count,
                runs);
        }

        private int[] AllTries => samples == 0 ? [-1] : [.. Enumerable.Range(0, samples)];

        private bool Full(Arm arm) => samples == 0 || (arm.Outcomes.Length > 0 && arm.Outcomes.All(outcome => outcome is not null));

        private bool Free(Hand hand) => !scenario.Fixed.Contains(hand);

        // Every lure with every presentation, once.
        private List<Arm> FirstLook()
        {
            ChoiceLimits limits = options.Limits;
            LureBody[] baits = [.. scenario.Tackle.Bodies.Where(body => limits.Body is null || body == limits.Body)];
            Presentation[] ways = [.. scenario.Presentations.Where(way => limits.Presentation is null || way == limits.Presentation)];
            (JigHead Head, LureBody Body)[] lures =
            [
                .. baits.SelectMany(body => (body.NeedsHead ? scenario.Tackle.JigHeads : [JigHead.None(body)])
                    .Where(head => limits.Head is null || head == limits.Head || (head.IsNone && limits.Head.IsNone))
                    .Select(head => (head, body))),
            ];
            if (lures.Length == 0 || ways.Length == 0) throw new ArgumentException("Nothing in the scenario fits what the choice is held to.");
            List<(Rig, Presentation, SinkTarget)> wanted = [.. lures.SelectMany(lure => ways.Select(way => (new Rig(lure.Head, lure.Body, way), way, Primary(way))))];
            Fall(wanted);
            List<Arm> arms = [.. wanted.Select(item => ArmOf(item.Item1, item.Item2, item.Item3)).Distinct()];
            Try(arms, [-1]);
            return arms;
        }

        // A stated count is followed to the zone where it may; to the bottom stays to the bottom, and a swing begins at once.
        private SinkTarget Primary(Presentation way) =>
            !Free(Hand.SinkCount) || way.CountDown is null || Naturalness.ClassOf(way) == RetrieveClass.Swing ? SinkTarget.Own : SinkTarget.ZoneMiddle;

        private Arm ArmOf(Rig rig, Presentation own, SinkTarget target)
        {
            Rig sunk = rig with { Presentation = Sunk(rig, own, target) };
            if (known.TryGetValue(sunk, out Arm? arm)) return arm;
            arm = new Arm(sunk, own, target, bodies.Fits.First(fit => fit.Body == rig.Body).Suitability);
            known.Add(sunk, arm);
            return arm;
        }

        private Presentation Sunk(Rig rig, Presentation own, SinkTarget target)
        {
            if (target == SinkTarget.Own) return rig.Presentation with { CountDown = own.CountDown };
            if (target == SinkTarget.Bottom) return rig.Presentation with { CountDown = null };
            double? count = counts[(Falling(rig), Hands.Depth(target, scenario.Spot.StrikeZone))];
            return rig.Presentation with { CountDown = count is { } seconds ? Hands.Rounded(seconds) : own.CountDown };
        }

        // A fall depends on the lure and the cast, not on what comes after it.
        private static Rig Falling(Rig rig)
        {
            Presentation way = rig.Presentation;
            return rig with
            {
                Presentation = new Presentation { Name = "fall", CastLength = way.CastLength, CastWith = way.CastWith, FullCast = way.FullCast, RetrieveSpeed = 0.5, Fall = way.Fall, Aim = way.Aim, DriftSpeed = way.DriftSpeed, DriftDirection = way.DriftDirection },
            };
        }

        private void Fall(IEnumerable<(Rig Rig, Presentation Own, SinkTarget Target)> wanted)
        {
            double[] depths = [.. ((SinkTarget[])[SinkTarget.ZoneTop, SinkTarget.ZoneMiddle]).Select(target => Hands.Depth(target, scenario.Spot.StrikeZone))];
            Rig[] falls = [.. wanted.Where(item => item.Target is SinkTarget.ZoneTop or SinkTarget.ZoneMiddle).Select(item => Falling(item.Rig)).Distinct().Where(rig => !counts.ContainsKey((rig, depths[0])))];
            double?[][] found = new double?[falls.Length][];
            Each(falls.Length, i =>
            {
                Track track = Trial.Simulate(scenario, falls[i], settings with { FallOnly = true, FallLimit = LongestCount }, parallel.CancellationToken);
                found[i] = [.. depths.Select(depth => Trial.TimeToDepth(track, depth))];
            });
            for (int i = 0; i < falls.Length; i++)
            {
                for (int d = 0; d < depths.Length; d++) counts[(falls[i], depths[d])] = found[i][d];
            }
        }

        // Runs what has not been run yet; -1 stands for the scenario itself.
        private void Try(IReadOnlyList<Arm> arms, IReadOnlyList<int> tries)
        {
            List<(Arm Arm, int Try)> work = [];
            foreach (Arm arm in arms.Distinct())
            {
                if (samples > 0 && arm.Draws.Count == 0 && tries.Any(t => t >= 0))
                {
                    arm.Draws = UncertainDraw.Draw(scenario, arm.Rig.Presentation, samples);
                    arm.Outcomes = new UncertaintyStudy.DrawRun?[arm.Draws.Count];
                    arm.Reach = UncertaintyStudy.Reach(arm.Draws);
                }

                foreach (int t in tries)
                {
                    if (t < 0 ? arm.Look is null : arm.Outcomes[t] is null) work.Add((arm, t));
                }
            }

            runs += work.Count;
            Each(work.Count, i =>
            {
                (Arm arm, int t) = work[i];
                if (t < 0)
                {
                    arm.Look = Trial.Run(scenario, arm.Rig, settings, parallel.CancellationToken);
                    return;
                }

                UncertainDraw draw = arm.Draws[t];
                Candidate run = Trial.Run(draw.Scenario, arm.Rig with { Presentation = draw.Presentation }, settings with { LineDrag = draw.LineDrag, LureDragFactor = draw.LureDragFactor }, parallel.CancellationToken);
                arm.Outcomes[t] = new(run.Coverage, run.Score, run.Track.Status == SimulationStatus.Failed, WaterMap.Of(run.Track, draw.Scenario.Spot, scenario.Spot, draw.Presentation, arm.Reach));
            });
        }

        // Runs take very different times: each thread takes the next one.
        private void Each(int count, Action<int> body) =>
            Parallel.ForEach(System.Collections.Concurrent.Partitioner.Create(Enumerable.Range(0, count), System.Collections.Concurrent.EnumerablePartitionerOptions.NoBuffering), parallel, body);

        // The best of each bait, so that every bait is heard; then the best of all.
        private static List<Arm> Survivors(IReadOnlyList<Arm> arms, IReadOnlyList<int> tries, int count)
        {
            List<Arm> order = [.. arms.OrderByDescending(arm => arm.MeanOf(tries) * arm.Fit)];
            HashSet<Arm> kept = [.. order.Take(count)];
            foreach (IGrouping<LureBody, Arm> bait in order.GroupBy(arm => arm.Rig.Body))
                kept.UnionWith(bait.Take(count >= FirstSurvivors ? OfEachBait : 1));

            // Without the fit too: a bait that fits less well may fish so much better that it overturns the rules.
            kept.Add(arms.MaxBy(arm => arm.MeanOf(tries))!);
            return [.. order.Where(kept.Contains)];
        }

        private List<Arm> Refine(List<Arm> all)
        {
            int[] tries = Standing();
            List<Arm> arms = Survivors(all, [-1], FirstSurvivors);
            Try(arms, tries);
            foreach ((Hand hand, int count) in Refinement)
            {
                if (!Free(hand)) continue;
                arms = Survivors(arms, tries, count);
                List<(Arm From, Arm To)> varied = Varied(arms, hand);
                Try([.. varied.Select(pair => pair.To)], tries);
                arms =
                [
                    .. arms.Select(arm =>
                    {
                        Arm best = varied.Where(pair => pair.From == arm).Select(pair => pair.To).Append(arm).MaxBy(other => other.MeanOf(tries))!;
                        return best.MeanOf(tries) > arm.MeanOf(tries) + WorthChanging ? best : arm;
                    }).Distinct(),
                ];
            }

            return arms;
        }

        private List<(Arm From, Arm To)> Varied(IReadOnlyList<Arm> arms, Hand hand)
        {
            List<(Arm From, Rig Rig, SinkTarget Target)> wanted =
            [
                .. arms.SelectMany(arm => hand == Hand.SinkCount
                    ? ((SinkTarget[])[SinkTarget.Own, SinkTarget.ZoneTop, SinkTarget.ZoneMiddle, SinkTarget.Bottom])
                        .Where(target => target != arm.Target && (target != SinkTarget.Bottom || arm.Own.CountDown is not null)).Select(target => (arm, arm.Rig, target))
                    : Hands.Of(hand, arm.Own, arm.Rig.Presentation, scenario.Spot).Select(way => (arm, arm.Rig with { Presentation = way }, arm.Target))),
            ];
            Fall(wanted.Select(item => (item.Rig, item.From.Own, item.Target)));
            return [.. wanted.Select(item => (item.From, ArmOf(item.Rig, item.From.Own, item.Target))).Where(pair => pair.Item2 != pair.From).Distinct()];
        }

        // The scenario itself and two tries, of little and of much current, or of depth where there is no current.
        private int[] Standing()
        {
            if (samples == 0) return [-1];
            UncertainInput by = scenario.Spot.CurrentSpeed > 0 ? UncertainInput.Current : UncertainInput.Depth;
            IReadOnlyList<UncertainDraw> draws = UncertainDraw.Draw(scenario, scenario.Presentations[0], samples);
            int[] order = [.. Enumerable.Range(0, draws.Count).OrderBy(i => draws[i].Values[(int)by])];
            return [.. new[] { -1, order[(int)(LowPlace * (order.Length - 1))], order[(int)(HighPlace * (order.Length - 1))] }.Distinct()];
        }

        // More tries for fewer rigs.
        private List<Arm> Halve(List<Arm> all, List<Arm> hands)
        {
            if (samples == 0) return [.. hands.Union(Survivors(all, [-1], FirstSurvivors))];
            List<Arm> arms = hands;
            foreach ((int count, int until) in Stages)
            {
                int[] tries = [.. Enumerable.Range(0, Math.Min(until, samples))];
                int[] before = [.. tries.Where(t => arms.All(arm => arm.Outcomes.Length > 0 && arm.Outcomes[t] is not null))];
                if (before.Length > 0) arms = Survivors(arms, before, count);
                Try(arms, tries);
            }

            return arms;
        }

        // The head to either side, fished the same way, may be the better one, or as good and lighter.
        private Arm Settle(List<Arm> final)
        {
            int[] tries = AllTries;
            Arm first = Pick([.. final.Where(Full)], tries);
            for (int move = 0; move < MostMoves; move++)
            {
                Arm[] beside = [.. Beside(first).Where(arm => !final.Contains(arm))];
                if (beside.Length == 0) break;
                Try(beside, tries);
                final.AddRange(beside);
                Arm next = Pick([.. final.Where(Full)], tries);
                if (next == first) break;
                first = next;
            }

            return first;
        }

        private List<Rig> AllHeads(Arm arm)
        {
            if (arm.Rig.Head.IsNone) return [arm.Rig];
            (Rig, Presentation, SinkTarget)[] wanted = [.. scenario.Tackle.JigHeads.Select(head => (arm.Rig with { Head = head }, arm.Own, arm.Target))];
            Fall(wanted);
            return [.. wanted.Select(item => item.Item1 == arm.Rig ? arm.Rig : item.Item1 with { Presentation = Sunk(item.Item1, item.Item2, item.Item3) })];
        }

        private List<Arm> Beside(Arm arm)
        {
            if (arm.Rig.Head.IsNone || options.Limits.Head is not null) return [];
            JigHead[] heads = [.. scenario.Tackle.JigHeads.OrderBy(head => head.Mass)];
            int at = Array.IndexOf(heads, arm.Rig.Head);
            List<(Rig, Presentation, SinkTarget)> wanted = [];
            if (at > 0) wanted.Add((arm.Rig with { Head = heads[at - 1] }, arm.Own, arm.Target));
            if (at + 1 < heads.Length) wanted.Add((arm.Rig with { Head = heads[at + 1] }, arm.Own, arm.Target));
            Fall(wanted);
            return [.. wanted.Select(item => ArmOf(item.Item1, item.Item2, item.Item3))];
        }

        private Arm Pick(IReadOnlyList<Arm> arms, IReadOnlyList<int> tries)
        {
            SearchedRig[] rigs = [.. arms.Select(arm => new SearchedRig(arm.Rig, arm.Own, [], [.. tries.Select(t => t < 0 ? arm.Look!.Score : arm.Outcomes[t]!.Score)], arm.Fit))];
            return arms[Array.IndexOf(rigs, ChoiceSearch.Pick(rigs, bodies, ScoreWeights.Default))];
        }

        // Every rig with every count and every look to either side of every hand.
        private List<Arm> Everything(List<Arm> all)
        {
            List<Arm> arms = [.. all];
            foreach ((Hand hand, _) in Refinement)
            {
                if (Free(hand)) arms = [.. arms.Union(Varied(arms, hand).Select(pair => pair.To))];
            }

            return arms;
        }
    }
}
