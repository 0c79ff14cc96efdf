using LureSim.Casting;
using LureSim.Decision.Baits;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;

namespace LureSim.Decision;

/// <summary>Something that may go wrong with a choice.</summary>
public enum ChoiceWarningKind
{
    /// <summary>Even this rig is seldom in the zone, and a heavier head, a slower retrieve or a longer count-down would keep it down.</summary>
    SeldomInZoneTooHigh,

    /// <summary>Even this rig is seldom in the zone, for other reasons.</summary>
    SeldomInZone,

    /// <summary>It touches shell.</summary>
    TouchesShell,

    /// <summary>It is in the grass.</summary>
    InGrass,

    /// <summary>The current carries it across the cast.</summary>
    SweptAcross,

    /// <summary>The second choice scores about as well.</summary>
    NearTie,

    /// <summary>The sun is near or below the horizon.</summary>
    LowSun,

    /// <summary>The rod does not throw it as far as the presentation wants it.</summary>
    FallsShort,
}

/// <summary>A warning with its figure.</summary>
/// <param name="Kind">What may go wrong.</param>
/// <param name="Value">Share of the retrieve (0 to 1), way across or length of the cast (m), or elevation of the sun (degrees), by the kind; 0 where there is no figure.</param>
public sealed record ChoiceWarning(ChoiceWarningKind Kind, double Value);

/// <summary>What a choice takes for granted.</summary>
public enum ChoiceAssumption
{
    /// <summary>Neither season nor date was given.</summary>
    SeasonNotKnown,

    /// <summary>No forage was named.</summary>
    NoForageSeen,

    /// <summary>How well the inputs are known was not said.</summary>
    SpreadAssumed,

    /// <summary>The hands are free within bounds that are assumed.</summary>
    HandsFree,
}

/// <summary>A hand that differs from the scenario's own figure.</summary>
/// <param name="Hand">The hand.</param>
/// <param name="Own">The scenario's figure (s, m/s, m, s or radians); null to the bottom.</param>
/// <param name="Chosen">The choice's figure; null to the bottom.</param>
public sealed record HandSetting(Hand Hand, double? Own, double? Chosen);

/// <summary>A recommendation with what speaks for and against it: computed once, told by every command.</summary>
/// <param name="First">The first choice.</param>
/// <param name="Fallback">The second choice: the best candidate with another jig head, or null when there is only one head.</param>
/// <param name="Lighter">The candidate with the next lighter head, otherwise the same; null if there is none.</param>
/// <param name="Heavier">The candidate with the next heavier head, otherwise the same; null if there is none.</param>
/// <param name="NeverOnBottom">Heads that never reach the bottom fished like the first choice, light to heavy; empty where that is nothing against them, or holds for all.</param>
/// <param name="Warnings">What may go wrong with it.</param>
public sealed record Choice(
    Candidate First, Candidate? Fallback, Candidate? Lighter, Candidate? Heavier, IReadOnlyList<JigHead> NeverOnBottom, IReadOnlyList<ChoiceWarning> Warnings)
{
    // Shares of the retrieve and of the cast that are worth a warning.
    private const double SeldomInZone = 0.35;
    private const double OftenBelow = 0.2;
    private const double OftenOnShell = 0.2;
    private const double FarAcross = 0.4;

    // Elevation of the sun below which light changes by the minute (degrees).
    private const double LowSunDegrees = 5;

    /// <summary>Heads of the box that the rod does not throw as far as the presentation of the first choice wants it, with the cast of each (m); empty where all get there.</summary>
    public IReadOnlyList<(JigHead Head, double Length)> TooLight { get; init; } = [];

    /// <summary>The numbers over the tries; null for a choice that was not sought.</summary>
    public TryNumbers? Numbers { get; init; }

    /// <summary>Tries in which no other lure that ran them all scores more.</summary>
    public int BestIn { get; init; }

    /// <summary>Tries in which no other lure that ran them all scores more by a real margin.</summary>
    public int AsGoodIn { get; init; }

    /// <summary>Mean score of the choice less that of the runner-up; below 0 where the choice is the lighter of two that are as good.</summary>
    public double Margin { get; init; }

    /// <summary>The best rig of another head or another bait, with its tries; null where there is none.</summary>
    public SearchedRig? RunnerUp { get; init; }

    /// <summary>Every rig that ran all tries, the choice first.</summary>
    public IReadOnlyList<SearchedRig> Finalists { get; init; } = [];

    /// <summary>Conditions at which another head is the choice.</summary>
    public IReadOnlyList<ChoiceFlip> Flips { get; init; } = [];

    /// <summary>Rules and runs, once; null for a choice that was not sought.</summary>
    public BaitOutcome? Bait { get; init; }

    /// <summary>Weights of the score that would change the choice, halved or doubled.</summary>
    public IReadOnlyList<WeightSensitivity> Sensitivity { get; init; } = [];

    /// <summary>Hands that differ from the scenario's own figures.</summary>
    public IReadOnlyList<HandSetting> Hands { get; init; } = [];

    /// <summary>What it takes for granted.</summary>
    public IReadOnlyList<ChoiceAssumption> Assumptions { get; init; } = [];

    /// <summary>The colour that was asked for in place of the advised one; null for none.</summary>
    public string? ColourAsked { get; init; }

    /// <summary>Puts a choice together.</summary>
    /// <param name="search">What was found.</param>
    /// <param name="first">A single run of the first choice.</param>
    /// <param name="fallback">A single run of the second choice, or null.</param>
    /// <param name="candidates">Single runs; those that are fished like the first choice with another head stand beside it.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    public static Choice Of(ChoiceSearch search, Candidate first, Candidate? fallback, IReadOnlyList<Candidate> candidates)
    {
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(candidates);
        Scenario scenario = search.Scenario;
        var numbers = TryNumbers.Of(search.First);

        // The neighbours by weight, worked the same way, show what a step lighter or heavier would cost. A head may have a run of the first look too, with a count of its own.
        Candidate[] same = [.. candidates.Where(x => SameWay(x.Rig, first.Rig) && !x.Rig.Head.IsNone).DistinctBy(x => x.Rig.Head).OrderBy(x => x.Rig.Head.Mass)];
        int index = Array.FindIndex(same, x => x.Rig.Head == first.Rig.Head);
        JigHead[] never = [.. same.Where(x => x.Coverage.TimeToBottom is null).Select(x => x.Rig.Head)];
        SearchedRig[] others = [.. search.Finalists.Where(rig => rig.Rig.Head != first.Rig.Head || rig.Rig.Body != first.Rig.Body)];
        SearchedRig? second = search.RunnerUp;
        (JigHead, double)[] tooLight = [.. same.Where(x => CastReach.Of(scenario.Spot, FishingRig.Of(scenario.Tackle, x.Rig.Head, x.Rig.Body), x.Rig.Presentation).FallsShort).Select(x => (x.Rig.Head, x.CastLength))];
        return new Choice(
            first,
            fallback,
            index > 0 ? same[index - 1] : null,
            index >= 0 && index + 1 < same.Length ? same[index + 1] : null,
            Ranking.ZoneIsOnBottom(scenario.Spot) && never.Length < same.Length ? never : [],
            [.. WarningsOf(search, numbers, candidates)])
        {
            TooLight = tooLight,
            Numbers = numbers,
            BestIn = Count(0),
            AsGoodIn = Count(1),
            Margin = second is null ? search.First.Mean : search.First.Mean - second.Mean,
            RunnerUp = second,
            Finalists = search.Finalists,
            Bait = search.Bait,
            Hands = HandsOf(search.First),
            Assumptions = [.. AssumptionsOf(scenario, search.Bodies)],
        };

        // Baits are weighed with their appeal, as in the choice itself.
        int Count(int margins) => Enumerable.Range(0, search.Tries).Count(t =>
        {
            double own = search.First.Scores[t] * search.First.Appeal;
            double best = others.Select(rig => rig.Scores[t] * rig.Appeal).DefaultIfEmpty(0).Max();
            return own > 0 && own >= best - (margins * ScoreWeights.Default.Tie(best));
        });
    }

    /// <summary>Whether two rigs are the same bait worked the same way; a sink count follows the head and does not count.</summary>
    /// <param name="a">A rig.</param>
    /// <param name="b">Another.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static bool SameWay(Rig a, Rig b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return Rig.SameWay(a, b);
    }

    private static IEnumerable<ChoiceWarning> WarningsOf(ChoiceSearch search, TryNumbers numbers, IReadOnlyList<Candidate> candidates)
    {
        Scenario scenario = search.Scenario;
        double zone = numbers.ZoneShare.Median;
        if (zone < SeldomInZone)
            yield return new(candidates.All(x => x.Coverage.BelowShare < OftenBelow) ? ChoiceWarningKind.SeldomInZoneTooHigh : ChoiceWarningKind.SeldomInZone, zone);
        if (numbers.BottomShare.Median > OftenOnShell && scenario.Spot.Bottom == BottomKind.Shell)
            yield return new(ChoiceWarningKind.TouchesShell, numbers.BottomShare.Median);
        if (numbers.GrassShare.Median > TrialVerdicts.Noticeable)
            yield return new(ChoiceWarningKind.InGrass, numbers.GrassShare.Median);
        if (numbers.DriftAcross.Median > FarAcross * (search.First.Outcomes[0].CastLength is > 0 and var length ? length : search.First.Rig.Presentation.CastLength))
            yield return new(ChoiceWarningKind.SweptAcross, numbers.DriftAcross.Median);
        if (search.RunnerUp is { } second && second.Rig.Head != search.First.Rig.Head && second.Rig.Body == search.First.Rig.Body && search.First.Mean > 0
            && Math.Abs(search.First.Mean - second.Mean) < ScoreWeights.Default.Tie(search.First.Mean))
        {
            yield return new(ChoiceWarningKind.NearTie, 0);
        }

        CastOfLure cast = CastReach.Of(scenario.Spot, FishingRig.Of(scenario.Tackle, search.First.Rig.Head, search.First.Rig.Body), search.First.Rig.Presentation);
        if (cast.FallsShort)
            yield return new(ChoiceWarningKind.FallsShort, cast.Length);
        double sun = SpotLight.SunElevationDegrees(scenario.Spot);
        if (sun < LowSunDegrees)
            yield return new(ChoiceWarningKind.LowSun, sun);
    }

    private static List<HandSetting> HandsOf(SearchedRig rig)
    {
        Presentation own = rig.Own, now = rig.Rig.Presentation;
        List<HandSetting> found = [];
        if (own.CountDown != now.CountDown) found.Add(new(Hand.SinkCount, own.CountDown, now.CountDown));
        if (own.RetrieveSpeed != now.RetrieveSpeed) found.Add(new(Hand.ReelSpeed, own.RetrieveSpeed, now.RetrieveSpeed));
        Add(Hand.Lift, move => move.Up > 0, move => move.Up);
        Add(Hand.Rest, move => move.Kind == MoveKind.Pause, move => move.Duration);
        if (own.Aim != now.Aim) found.Add(new(Hand.CastAngle, own.Aim, now.Aim));
        return found;

        void Add(Hand hand, Func<Move, bool> which, Func<Move, double> value)
        {
            if (own.Moves.FirstOrDefault(which) is { } before && now.Moves.FirstOrDefault(which) is { } after && value(before) != value(after))
                found.Add(new(hand, value(before), value(after)));
        }
    }

    private static IEnumerable<ChoiceAssumption> AssumptionsOf(Scenario scenario, BodyChoice bodies)
    {
        if (bodies.Season is null) yield return ChoiceAssumption.SeasonNotKnown;
        if (scenario.Forage.Count == 0) yield return ChoiceAssumption.NoForageSeen;
        if (scenario.Uncertainty == ScenarioUncertainty.Assumed) yield return ChoiceAssumption.SpreadAssumed;
        if (scenario.Fixed.Distinct().Count() < Enum.GetValues<Hand>().Length) yield return ChoiceAssumption.HandsFree;
    }
}
