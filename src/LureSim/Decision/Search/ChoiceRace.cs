using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>The race for a choice: looks, hands, tries, and the heads to either side of the best.</summary>
internal sealed class ChoiceRace(Scenario scenario, ChoiceSearchOptions options, ParallelOptions parallel, IProgress<double>? progress)
{
    // The stages of the tries: rigs that go on at most, and the tries that they have run by then.
    private static readonly (int Rigs, int Tries)[] Stages = [(10, 6), (5, 12), (4, int.MaxValue)];

    // Hands in the order in which they are varied.
    private static readonly Hand[] Order = [Hand.ReelSpeed, Hand.CastAngle, Hand.SinkCount, Hand.Rest, Hand.Lift];

    // How low a lure runs hangs on its weight together with these: they are varied along with it.
    private static readonly Hand[] WithWeight = [Hand.ReelSpeed, Hand.CastAngle, Hand.SinkCount];

    // Ways of fishing a bait whose hands are sought, beside the best of every bait; and sweeps over all hands.
    private const int MostWays = 3;
    private const int MostSweeps = 3;
    private const int MostPaired = 2;
    private const int OfEachBait = 2;
    private const int OfEachRig = 2;

    // Heads are stepped by this in weight: a step of a finer box tells too little.
    private const double WeightStep = 1.3;

    // What scores less than this share of the best after a look at its speeds is not made the best by its other hands.
    private const double Hopeless = 0.35;

    // A rig whose cast in the scenario itself falls short of this share of the best is not tried in others.
    private const double WorthLooking = 0.5;

    // A variation whose first cast falls below this share of the present hand's is not tried further.
    private const double WorthTrying = 0.9;

    // Standard errors by which a rig may lie behind and still be the best.
    private const double Errors = 2;

    // The scenario's own figures stay unless another hand scores more by this (score), or by this share of a low score: figures are not changed for nothing.
    private const double WorthChanging = 0.01;
    private const double WorthChangingShare = 0.1;

    // A neighbour of the choice may be the better one; so often it is looked for.
    private const int MostMoves = 4;

    private static readonly int[] Itself = [-1];

    private readonly BodyChoice bodies = BodyChoice.Of(scenario);
    private readonly int samples = scenario.Uncertainty.IsExactInMotion ? 0 : options.Samples ?? scenario.Uncertainty.Samples;
    private RaceField field = null!;

    public ChoiceSearch Run()
    {
        field = new RaceField(scenario, bodies, options.Simulation, samples, parallel);
        List<RaceArm> all = FirstLook();
        options.FirstLook?.Report(Pick(all, Itself).Look!);
        progress?.Report(0.55);
        RaceArm first;
        List<RaceArm> final;
        if (options.Exhaustive)
        {
            final = Everything(all);
            field.Try(final, AllTries);
            first = Pick(final, AllTries);
        }
        else
        {
            Refine(all);
            progress?.Report(0.8);
            final = Halve();
            progress?.Report(0.97);
            Polish(final);
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
            field.Considered,
            field.Runs);
    }

    private int[] AllTries => samples == 0 ? Itself : [.. Enumerable.Range(0, samples)];

    private bool Full(RaceArm arm) => AllTries.All(arm.Has);

    private bool Free(Hand hand) => !scenario.Fixed.Contains(hand);

    // Every bait with every presentation. The bait that the rules want runs every second head of a small box, and fewer of a large one; from the best of these, and
    // for the other baits from there, the heads to either side are run as long as they are better.
    private List<RaceArm> FirstLook()
    {
        ChoiceLimits limits = options.Limits;
        LureBody[] baits = [.. bodies.Fits.Select(fit => fit.Body).Where(body => limits.Body is null || body == limits.Body)];
        Presentation[] ways = [.. scenario.Presentations.Where(way => limits.Presentation is null || way == limits.Presentation)];
        JigHead[] owned = [.. scenario.Tackle.JigHeads.Where(head => limits.Head is null ? scenario.Hands.Allows(head) : head == limits.Head || (head.IsNone && limits.Head.IsNone)).OrderBy(head => head.Mass)];
        Row[] rows =
        [
            .. baits.SelectMany(body => ways.Select(way => new Row(body, way, body.NeedsHead ? owned : limits.Head is { IsNone: false } ? [] : [JigHead.None(body)])))
                .Where(row => row.Heads.Length > 0),
        ];
        if (rows.Length == 0) throw new ArgumentException("Nothing in the scenario fits what the choice is held to.");
        LureBody lead = (rows.FirstOrDefault(row => row.Body.NeedsHead) ?? rows[0]).Body;
        Row[] leading = [.. rows.Where(row => row.Body == lead)];
        Climb(leading, row => Places(row.Heads.Length));
        Climb([.. rows.Except(leading)], row =>
            options.Exhaustive || row.Heads.Length < 2 ? Enumerable.Range(0, row.Heads.Length)
            : leading.First(other => other.Way == row.Way) is { Score: > 0 } led ? [led.Best]
            : Places(row.Heads.Length));
        return [.. rows.SelectMany(row => row.Arms.OfType<RaceArm>()).Distinct()];
    }

    private IEnumerable<int> Places(int heads)
    {
        int step = options.Exhaustive || heads <= Row.AllOf ? 1 : Math.Max(2, heads / Row.Looks);
        for (int i = step / 2; i < heads; i += step) yield return i;
    }

    private void Climb(IReadOnlyList<Row> rows, Func<Row, IEnumerable<int>> from)
    {
        var next = rows.ToDictionary(row => row, row => from(row).ToArray());
        while (next.Values.Any(places => places.Length > 0))
        {
            (Rig Rig, Presentation Way, SinkTarget Target, Row Row, int Place)[] wanted =
                [.. next.SelectMany(pair => pair.Value.Select(i => (new Rig(pair.Key.Heads[i], pair.Key.Body, pair.Key.Way), pair.Key.Way, Primary(pair.Key.Way), pair.Key, i)))];
            field.Fall(wanted.Select(item => (item.Rig, item.Way, item.Target)));
            foreach ((Rig rig, Presentation way, SinkTarget target, Row row, int place) in wanted) row.Arms[place] = field.ArmOf(rig, way, target);
            field.Try([.. wanted.Select(item => item.Row.Arms[item.Place]!)], Itself);
            next = rows.ToDictionary(row => row, row => row.Beside());
        }
    }

    // A stated count is followed to the zone where it may; to the bottom stays to the bottom, and a swing begins at once.
    private SinkTarget Primary(Presentation way) =>
        !Free(Hand.SinkCount) || way.CountDown is null || Naturalness.ClassOf(way) == RetrieveClass.Swing ? SinkTarget.Own : SinkTarget.ZoneMiddle;

    // The best of each bait, so that every bait is heard; then the best of all.
    private static List<RaceArm> Survivors(IReadOnlyCollection<RaceArm> arms, IReadOnlyList<int> tries, int count, int ofEachBait, double worth)
    {
        List<RaceArm> order = [.. arms.OrderByDescending(arm => arm.ValueOf(tries))];
        double least = worth * order[0].ValueOf(tries);
        HashSet<RaceArm> kept = [.. order.Take(count).Where(arm => arm.ValueOf(tries) >= least)];
        foreach (IGrouping<LureBody, RaceArm> bait in order.GroupBy(arm => arm.Rig.Body)) kept.UnionWith(bait.Take(ofEachBait));

        // Whatever the rules say of its bait: what scores most is told beside what they want.
        kept.Add(arms.MaxBy(arm => arm.MeanOf(tries))!);
        return [.. order.Where(kept.Contains)];
    }

    // The hands of every way that is worth it, by casts in the scenario itself: such a look orders rigs nearly as the mean of the tries does (docs/decision.md).
    private void Refine(List<RaceArm> all)
    {
        List<RaceArm> ways = [.. all.GroupBy(arm => (arm.Rig.Body, arm.Own)).Select(way => way.MaxBy(Merit)!)];
        if (Free(Hand.ReelSpeed)) ways = Improved(ways, Tilted);
        ways = Survivors(ways, Itself, MostWays, 1, Hopeless);
        ways = Swept(ways);

        // What pays only together: speed and angle, with the weight, for the best of them.
        if (!Free(Hand.ReelSpeed) || !Free(Hand.CastAngle)) return;
        List<RaceArm> best = [.. ways.OrderByDescending(arm => arm.ValueOf(Itself)).Take(MostPaired)];
        List<RaceArm> paired = Improved(best, arm => [.. field.Varied([arm, .. Stepped(arm)], Hand.ReelSpeed).SelectMany(pair => field.Varied([pair.To], Hand.CastAngle)).Select(pair => pair.To)]);
        Swept([.. paired.Except(best)]);
    }

    // Sweeps over all hands until none pays, or the rig is left behind.
    private List<RaceArm> Swept(List<RaceArm> ways)
    {
        RaceArm[] now = [.. ways];
        List<int> moving = [.. Enumerable.Range(0, now.Length)];
        for (int sweep = 0; sweep < MostSweeps && moving.Count > 0; sweep++)
        {
            List<RaceArm> arms = [.. moving.Select(i => now[i])];
            foreach (Hand hand in Order.Where(Free)) arms = Improved(arms, arm => WithWeight.Contains(hand) ? [arm, .. Stepped(arm)] : [arm], hand);
            if (!WithWeight.Any(Free)) arms = Improved(arms, Stepped);
            double least = Hopeless * field.Looked.Max(arm => arm.ValueOf(Itself));
            List<int> still = [.. moving.Where((i, k) => arms[k] != now[i] && arms[k].ValueOf(Itself) >= least)];
            for (int k = 0; k < moving.Count; k++) now[moving[k]] = arms[k];
            moving = still;
        }

        return [.. now];
    }

    // What a look says of a rig: its score, and of those that never reach the zone the nearest to it.
    private double Merit(RaceArm arm)
    {
        Candidate look = arm.Look!;
        StrikeZone zone = scenario.Spot.StrikeZone;
        return look.Score > 0 ? look.Score : -Math.Abs(look.Coverage.MedianDepth - (0.5 * (zone.Top + zone.Bottom))) / scenario.Spot.Depth;
    }

    private static double Worth(double score) => Math.Min(WorthChanging, WorthChangingShare * Math.Max(0, score));

    // The best of what each rig may become, where it is better by what is worth a change.
    private List<RaceArm> Improved(List<RaceArm> arms, Func<RaceArm, IReadOnlyList<RaceArm>> become)
    {
        IReadOnlyList<RaceArm>[] near = [.. arms.Select(become)];
        field.Try([.. near.SelectMany(some => some)], Itself);
        return [.. arms.Select((arm, i) => near[i].Count > 0 && near[i].MaxBy(Merit) is { } best && Merit(best) > Merit(arm) + Worth(Merit(arm)) ? best : arm)];
    }

    private List<RaceArm> Improved(List<RaceArm> arms, Func<RaceArm, IReadOnlyList<RaceArm>> from, Hand hand) => Improved(arms, arm =>
    {
        IReadOnlyList<RaceArm> about = from(arm);
        return [.. about, .. field.Varied(about, hand).Select(pair => pair.To)];
    });

    // A heavier head reeled faster and a lighter one reeled slower run as deep; and the two speeds with the head that it is.
    private IReadOnlyList<RaceArm> Tilted(RaceArm arm)
    {
        RaceArm[] stepped = [.. Stepped(arm)];
        return
        [
            .. field.Varied([arm], Hand.ReelSpeed).Select(pair => pair.To),
            .. field.Varied(stepped, Hand.ReelSpeed)
                .Where(pair => (pair.To.Rig.Presentation.RetrieveSpeed > pair.From.Rig.Presentation.RetrieveSpeed) == (pair.To.Rig.Head.Mass > arm.Rig.Head.Mass))
                .Select(pair => pair.To),
        ];
    }

    // The next lighter and the next heavier head that make a difference, worked the same way.
    private IReadOnlyList<RaceArm> Stepped(RaceArm arm)
    {
        if (arm.Rig.Head.IsNone || options.Limits.Head is not null) return [];
        JigHead[] heads = [.. scenario.Tackle.JigHeads.Where(scenario.Hands.Allows).OrderBy(head => head.Mass)];
        JigHead[] beside =
        [
            .. heads.Where(head => head.Mass < arm.Rig.Head.Mass).OrderByDescending(head => head.Mass <= arm.Rig.Head.Mass / WeightStep).ThenByDescending(head => head.Mass).Take(1),
            .. heads.Where(head => head.Mass > arm.Rig.Head.Mass).OrderByDescending(head => head.Mass >= arm.Rig.Head.Mass * WeightStep).ThenBy(head => head.Mass).Take(1),
        ];
        return field.ArmsOf([.. beside.Select(head => (arm.Rig with { Head = head }, arm.Own, arm.Target))]);
    }

    // More tries for fewer rigs; a rig that the tries leave no hope is not tried on.
    private List<RaceArm> Halve()
    {
        // Of one head worked one way only the best few: others that are as good differ by a hand alone.
        RaceArm[] looked =
        [
            .. field.Looked.OrderByDescending(arm => arm.ValueOf(Itself)).GroupBy(arm => (arm.Rig.Body, arm.Rig.Head, arm.Own)).SelectMany(rig => rig.Take(OfEachRig)),
        ];
        List<RaceArm> arms = Survivors(looked, Itself, Stages[0].Rigs, OfEachBait, WorthLooking);
        if (samples == 0) return arms;
        field.Try(arms, [.. Enumerable.Range(0, Math.Min(Stages[0].Tries, samples))]);
        foreach ((int count, int until) in Stages[1..])
        {
            int[] before = [.. AllTries.Where(t => arms.All(arm => arm.Has(t)))];
            arms = Contenders(Survivors(arms, before, count, 1, Hopeless), before);
            field.Try(arms, [.. Enumerable.Range(0, Math.Min(until, samples))]);
        }

        return arms;
    }

    // What is best in one cast need not be best in the tries: the hands of the choice once more, one at a time, by tries.
    private void Polish(List<RaceArm> final)
    {
        int[] few = samples == 0 ? Itself : [.. Enumerable.Range(0, Math.Min(Stages[0].Tries, samples))];
        for (int move = 0; move < MostMoves; move++)
        {
            RaceArm first = Pick([.. final.Where(Full)], AllTries);
            RaceArm[] near = [.. Order.Where(Free).SelectMany(hand => field.Varied([first], hand).Select(pair => pair.To)).Distinct().Where(arm => !final.Contains(arm))];
            field.Try(near, Itself);
            near = [.. near.Where(arm => arm.ScoreOf(-1) > WorthTrying * first.ScoreOf(-1))];
            field.Try(near, few);
            double least = first.MeanOf(few) + Worth(first.MeanOf(few));
            near = [.. near.Where(arm => arm.MeanOf(few) > least).OrderByDescending(arm => arm.MeanOf(few)).Take(OfEachRig)];
            if (near.Length == 0) return;
            field.Try(near, AllTries);
            final.AddRange(near);
        }
    }

    // Those that may still be the choice, the best of the bait that the rules want, and what scores most.
    private List<RaceArm> Contenders(List<RaceArm> arms, int[] tries)
    {
        RaceArm best = arms[0], most = arms.MaxBy(arm => arm.MeanOf(tries))!;
        LureBody wanted = bodies.Fits.Select(fit => fit.Body).First(body => arms.Any(arm => arm.Rig.Body == body));
        RaceArm rules = arms.First(arm => arm.Rig.Body == wanted);
        double tie = ScoreWeights.Default.Tie(best.ValueOf(tries));
        double[] ahead = best.ScoresOf(tries);
        return
        [
            .. arms.Where(arm => arm == most || arm == rules
                || arm.ValueOf(tries) + tie + (Errors * SearchedRig.StandardError(ahead, best.Appeal, arm.ScoresOf(tries), arm.Appeal)) >= best.ValueOf(tries)),
        ];
    }

    // The head to either side, fished the same way, may be the better one, or as good and lighter.
    private RaceArm Settle(List<RaceArm> final)
    {
        int[] tries = AllTries;
        RaceArm first = Pick([.. final.Where(Full)], tries);
        for (int move = 0; move < MostMoves; move++)
        {
            RaceArm[] beside = [.. Beside(first).Where(arm => !final.Contains(arm))];
            if (beside.Length == 0) break;
            field.Try(beside, tries);
            final.AddRange(beside);
            RaceArm next = Pick([.. final.Where(Full)], tries);
            if (next == first) break;
            first = next;
        }

        return first;
    }

    private List<Rig> AllHeads(RaceArm arm)
    {
        if (arm.Rig.Head.IsNone) return [arm.Rig];
        (Rig, Presentation, SinkTarget)[] wanted = [.. scenario.Tackle.JigHeads.Select(head => (arm.Rig with { Head = head }, arm.Own, arm.Target))];
        field.Fall(wanted);
        return [.. wanted.Select(item => item.Item1 == arm.Rig ? arm.Rig : item.Item1 with { Presentation = field.Sunk(item.Item1, item.Item2, item.Item3) })];
    }

    private List<RaceArm> Beside(RaceArm arm)
    {
        if (arm.Rig.Head.IsNone || options.Limits.Head is not null) return [];
        JigHead[] heads = [.. scenario.Tackle.JigHeads.Where(scenario.Hands.Allows).OrderBy(head => head.Mass)];
        int at = Array.IndexOf(heads, arm.Rig.Head);
        List<(Rig, Presentation, SinkTarget)> wanted = [];
        if (at > 0) wanted.Add((arm.Rig with { Head = heads[at - 1] }, arm.Own, arm.Target));
        if (at + 1 < heads.Length) wanted.Add((arm.Rig with { Head = heads[at + 1] }, arm.Own, arm.Target));
        field.Fall(wanted);
        return [.. wanted.Select(item => field.ArmOf(item.Item1, item.Item2, item.Item3))];
    }

    private RaceArm Pick(List<RaceArm> arms, IReadOnlyList<int> tries)
    {
        // Of one head worked one way the one with fewer changed hands stays, unless changes are worth it.
        RaceArm[] worth =
        [
            .. arms.Where(arm => !arms.Any(other => other.Changed < arm.Changed && other.Rig.Head == arm.Rig.Head && other.Rig.Body == arm.Rig.Body && other.Own == arm.Own
                && other.MeanOf(tries) + Worth(other.MeanOf(tries)) >= arm.MeanOf(tries))),
        ];
        SearchedRig[] rigs = [.. worth.Select(arm => new SearchedRig(arm.Rig, arm.Own, [], arm.ScoresOf(tries), arm.Appeal))];
        return worth[Array.IndexOf(rigs, BaitPick.Of(rigs, bodies, ScoreWeights.Default))];
    }

    // Every rig with every count and every look to either side of every hand.
    private List<RaceArm> Everything(List<RaceArm> all)
    {
        List<RaceArm> arms = [.. all];
        foreach (Hand hand in Order)
        {
            if (Free(hand)) arms = [.. arms.Union(field.Varied(arms, hand).Select(pair => pair.To))];
        }

        return arms;
    }

    // One bait worked one way, with the heads of the box from light to heavy.
    private sealed class Row(LureBody body, Presentation way, JigHead[] heads)
    {
        // Boxes of no more heads are looked at whole; of larger ones about so many heads first.
        public const int AllOf = 3;
        public const int Looks = 5;

        public LureBody Body { get; } = body;

        public Presentation Way { get; } = way;

        public JigHead[] Heads { get; } = heads;

        public RaceArm?[] Arms { get; } = new RaceArm?[heads.Length];

        public int Best => Enumerable.Range(0, Heads.Length).Where(i => Arms[i] is not null).MaxBy(i => Arms[i]!.Look!.Score);

        public double Score => Arms[Best]!.Look!.Score;

        // The heads halfway to what was looked at to either side of the best; all where nothing scores.
        public int[] Beside()
        {
            int best = Best;
            if (!(Score > 0)) return [.. Enumerable.Range(0, Heads.Length).Where(i => Arms[i] is null)];
            int below = Array.FindLastIndex(Arms, Math.Max(0, best - 1), best, arm => arm is not null), above = best + 1 < Heads.Length ? Array.FindIndex(Arms, best + 1, arm => arm is not null) : Heads.Length;
            if (above < 0) above = Heads.Length;
            List<int> next = [];
            if (best - below > 1) next.Add(Halfway(below, best));
            if (above - best > 1) next.Add(above == Heads.Length ? best + 1 : (best + above) / 2);
            return [.. next];

            static int Halfway(int low, int high) => low < 0 ? high - 1 : (low + high) / 2;
        }
    }
}
