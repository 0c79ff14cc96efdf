using System.Text.Json.Serialization;
using LureSim.Cli.Hosting;
using LureSim.Decision;
using LureSim.Decision.Baits;
using LureSim.Decision.Colours;
using LureSim.Decision.Comparison;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;

namespace LureSim.Cli.Output;

/// <summary>The choice in JSON: the same in the document of every command.</summary>
internal sealed record ChoiceJson(
    string Weight,
    [property: JsonPropertyName("mass_kg")] double Mass,
    string Lure,
    string Presentation,
    string Color,
    [property: JsonPropertyName("sink_count_s")] double? SinkCount,
    [property: JsonPropertyName("reel_speed_m_s")] double ReelSpeed,
    [property: JsonPropertyName("cast_m")] double Cast,
    [property: JsonPropertyName("aim_rad")] double Aim,
    int Tries,
    int BestIn,
    int AsGoodIn,
    IntervalJson? ZoneShare,
    [property: JsonPropertyName("typical_depth_m")] IntervalJson? Depth,
    [property: JsonPropertyName("time_to_zone_s")] IntervalJson? TimeToZone,
    IntervalJson? BottomShare,
    IntervalJson? Score,
    double Margin,
    ChoiceJson.Other? RunnerUp,
    ChoiceJson.Outcome? Bait,
    IReadOnlyList<ChoiceJson.Setting> Hands,
    IReadOnlyList<ChoiceJson.Warned> Warnings,
    IReadOnlyList<ChoiceAssumption> Assumptions,
    IReadOnlyList<ChoiceJson.Flip> Flips,
    IReadOnlyList<ChoiceJson.Hangs> Sensitivity)
{
    public static ChoiceJson Of(ChosenRig chosen) => Of(chosen.Choice, chosen.Colours);

    public static ChoiceJson Of(Choice choice, ColourFinding colours)
    {
        Rig rig = choice.First.Rig;
        TryNumbers? numbers = choice.Numbers;
        return new(
            rig.Head.Label,
            rig.Head.Mass,
            rig.Body.Label,
            rig.Presentation.Name,
            colours.Advice.Choice.Name,
            rig.Presentation.CountDown,
            rig.Presentation.RetrieveSpeed,
            rig.Presentation.CastLength,
            rig.Presentation.Aim,
            numbers?.Tries ?? 1,
            choice.BestIn,
            choice.AsGoodIn,
            IntervalJson.Of(numbers?.ZoneShare),
            IntervalJson.Of(numbers?.MedianDepth),
            IntervalJson.Of(numbers?.TimeToZone),
            IntervalJson.Of(numbers?.BottomShare),
            IntervalJson.Of(numbers?.Score),
            choice.Margin,
            choice.RunnerUp is { } other ? new Other(other.Rig.Head.Label, other.Rig.Body.Label, other.Rig.Presentation.Name, other.Mean, other.Appeal) : null,
            choice.Bait is { } bait ? new Outcome(bait.Kind, bait.Wanted.Label, bait.WantedScore, bait.Best.Label, bait.BestScore) : null,
            [.. choice.Hands.Select(hand => new Setting(hand.Hand, hand.Own, hand.Chosen))],
            [.. choice.Warnings.Select(warning => new Warned(warning.Kind, warning.Value))],
            choice.Assumptions,
            [.. choice.Flips.Select(flip => new Flip(flip.Condition, flip.Over, flip.Value, flip.Rig.Head.Label, flip.Colour))],
            [.. choice.Sensitivity.Select(item => new Hangs(item.Weight.Name, item.Factor, item.Rig.Head.Label, item.Rig.Body.Label, item.Rig.Presentation.Name))]);
    }

    internal sealed record Other(string Weight, string Lure, string Presentation, double Mean, double Appeal);

    internal sealed record Outcome(BaitOutcomeKind Kind, string Wanted, double WantedScore, string Best, double BestScore);

    internal sealed record Setting(Hand Hand, double? Own, double? Chosen);

    internal sealed record Warned(ChoiceWarningKind Kind, double Value);

    internal sealed record Flip(FlipCondition Condition, bool Over, double Value, string Weight, string? Color);

    internal sealed record Hangs(string Name, double Factor, string Weight, string Lure, string Presentation);
}

/// <summary>What the tries made of a figure, in JSON.</summary>
internal sealed record IntervalJson(double Low, double Median, double High)
{
    public static IntervalJson? Of(LureSim.Decision.Trials.Interval? interval) => interval is null ? null : new(interval.Low, interval.Median, interval.High);
}

/// <summary>The choice of the body in JSON.</summary>
internal sealed record BodyJson(
    string First,
    Season? Season,
    BodyJson.Rule? Spoke,
    IReadOnlyList<BodyJson.Rule> Agreed,
    IReadOnlyList<BodyJson.Rule> Overruled,
    [property: JsonPropertyName("wanted_length_min_m")] double? WantedLeast,
    [property: JsonPropertyName("wanted_length_max_m")] double? WantedMost,
    IReadOnlyList<BodyJson.Fit> Fits,
    IReadOnlyList<BodyJson.Change> Changes)
{
    public static BodyJson Of(BodyChoice choice) => new(
        choice.First.Label,
        choice.Season,
        choice.Spoke is { } rule ? Of(rule) : null,
        [.. choice.Agreed.Select(Of)],
        [.. choice.Overruled.Select(Of)],
        choice.Wanted.Least,
        choice.Wanted.Most,
        [.. choice.Fits.Select(fit => new Fit(fit.Body.Label, fit.Body.Profile, fit.Body.Length, fit.Suitability))],
        [.. choice.Changes.Select(change => new Change(BodyWords.Conditions([change]), change.Body.Label))]);

    private static Rule Of(ForageRule rule) => new(rule.Id, rule.Says, rule.Source, rule.Weight);

    internal sealed record Rule(string Id, string Says, string Source, double Weight);

    internal sealed record Fit(string Body, BodyProfile Profile, [property: JsonPropertyName("length_m")] double Length, double Suitability);

    internal sealed record Change(string Condition, string Body);
}

/// <summary>The choice of colour in JSON.</summary>
internal sealed record ColourAdviceJson(
    string First,
    ColourReason Reason,
    IReadOnlyList<string> Tied,
    string Forage,
    bool ForageSeen,
    IReadOnlyList<ColourAdviceJson.At> RunningDepths,
    IReadOnlyList<ColourAdviceJson.Look> Looks,
    IReadOnlyList<ColourAdviceJson.Worth> Colours,
    IReadOnlyList<ColourAdviceJson.Strategy> Strategies,
    ColourAdviceJson.Practised Practice,
    [property: JsonPropertyName("reach_m")] double Reach,
    [property: JsonPropertyName("strike_length_m")] double StrikeLength,
    [property: JsonPropertyName("likeness_limit_jnd")] double LikenessLimit)
{
    public static ColourAdviceJson Of(ColourAdvice advice) => new(
        advice.Choice.Name,
        advice.Reason,
        [.. advice.Tied.Select(i => advice.Colours[i].Name)],
        advice.Forage,
        advice.ForageSeen,
        [.. advice.Depths.Select(at => new At(at.Depth, at.Weight))],
        [.. advice.Looks.Select(look => new Look(look.Direction, look.Weight))],
        [.. advice.Colours.Select(worth => new Worth(worth.Name, worth.SeenFrom, worth.Range.Low, worth.Range.High, worth.DifferenceToForage, worth.IsLikeness, worth.Tied, worth.Seen.Mode, worth.Seen.Part, worth.Seen.PartsApart))],
        [.. advice.Strategies.Select(strategy => new Strategy(strategy.Strategy, strategy.Best is { } best ? advice.Colours[best].Name : null))],
        new Practised(advice.Practice.Practice, [.. advice.Practice.Colours.Select(i => advice.Colours[i].Name)], advice.Practice.Outcome),
        advice.Reach,
        ColourAdvice.StrikeLength,
        LureSights.LikenessSteps);

    internal sealed record At([property: JsonPropertyName("depth_m")] double Depth, double Weight);

    internal sealed record Look(ViewDirection Direction, double Weight);

    internal sealed record Worth(
        string Name,
        [property: JsonPropertyName("seen_from_m")] double SeenFrom,
        [property: JsonPropertyName("seen_from_low_m")] double Low,
        [property: JsonPropertyName("seen_from_high_m")] double High,
        [property: JsonPropertyName("difference_to_forage_jnd")] double Difference,
        bool LikeForage,
        bool Tied,
        SightMode Mode,
        PatternPart? Part,
        [property: JsonPropertyName("parts_apart_to_m")] double? PartsApart);

    internal sealed record Strategy(ColourStrategy Name, string? Best);

    internal sealed record Practised(ColourPractice Takes, IReadOnlyList<string> Colours, PracticeOutcome Outcome);
}

/// <summary>The ranked tackle box in JSON.</summary>
internal sealed record BoxJson(IReadOnlyList<CandidateJson> Heads, IReadOnlyList<BoxJson.Lacking> Missing, string? Gap)
{
    public static BoxJson Of(BoxAdvice box) => new(
        [.. box.Heads.Select(rank => CandidateJson.Of(rank.Best, withTrack: false))],
        [.. box.Missing.Select(m => new Lacking(CandidateJson.Of(m.Candidate, withTrack: false), m.Gain))],
        box.Gap?.Candidate.Rig.Head.Label);

    internal sealed record Lacking(CandidateJson Candidate, double Gain);
}

/// <summary>A trip in JSON: the cover, what to pack, and every spot's plan.</summary>
internal sealed record TripJson(
    string Title,
    IReadOnlyList<Report.Trips.TripLine> Order,
    IReadOnlyList<Report.Trips.PackingList> Pack,
    IReadOnlyList<PlanJson> Spots,
    IReadOnlyList<string> Files)
{
    /// <summary>The day by the clock; left out where there is none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Day? Clock { get; init; }

    public static TripJson Of(TripOutcome outcome) => new(
        outcome.Trip.Title,
        outcome.Trip.Lines,
        outcome.Trip.Pack,
        [.. outcome.Spots.Select(PlanJson.Of)],
        [.. outcome.Pages.Select(file => file.Name)])
    {
        Clock = outcome.Trip.Day is { } day
            ? new Day(
                TideWords.Clock(day.Clock.Start),
                TideWords.Clock(day.Clock.End),
                day.Value,
                [.. day.Stops.Select(stop => new Stop(stop.Spot + 1, TideWords.Clock(stop.Arrive), TideWords.Clock(stop.Leave), stop.Travel, stop.Value, [.. stop.Heads.Select(from => new Head(TideWords.Clock(from.Hours), from.Head.Label, from.Head.Mass))]))],
                [.. day.Swaps.Select(swap => new Swap(swap.First + 1, swap.Second + 1, swap.Cost))],
                [.. day.Skips.Select(skip => new Skip(skip.Spot + 1, skip.Cost))])
            : null,
    };

    internal sealed record Day(string From, string To, [property: JsonPropertyName("good_fishing_h")] double Value, IReadOnlyList<Stop> Stops, IReadOnlyList<Swap> Swaps, IReadOnlyList<Skip> Skips);

    internal sealed record Stop(int Spot, string Arrive, string Leave, [property: JsonPropertyName("travel_h")] double Travel, [property: JsonPropertyName("good_fishing_h")] double Value, IReadOnlyList<Head> Heads);

    internal sealed record Head(string From, string Label, [property: JsonPropertyName("mass_kg")] double Mass);

    internal sealed record Swap(int First, int Second, [property: JsonPropertyName("cost_h")] double? Cost);

    internal sealed record Skip(int Spot, [property: JsonPropertyName("cost_h")] double Cost);
}

/// <summary>A comparison in JSON.</summary>
internal sealed record CompareJson(
    string Title,
    CompareJson.Side First,
    CompareJson.Side Second,
    IReadOnlyList<string> Differences,
    IReadOnlyList<CompareJson.Measure> Measures,
    IReadOnlyList<string> Sentences,
    IReadOnlyList<string> Files)
{
    public static CompareJson Of(CompareOutcome outcome)
    {
        RigComparison comparison = outcome.Comparison;
        return new(
            comparison.Scenario.Title,
            Of(comparison.First, comparison.FirstOutcome),
            Of(comparison.Second, comparison.SecondOutcome),
            [.. comparison.Differences.Select(feature => feature.Id)],
            [.. comparison.Measures.Select(item => new Measure(
                item.Measure.Id,
                item.First,
                item.Second,
                item.Main?.Feature.Id,
                [.. item.Effects.Select(effect => new Effect(effect.Feature.Id, effect.Effect, effect.Share, effect.ChangedFirst, effect.ChangedLast))]))],
            ComparisonWords.Sentences(comparison, UnitSystem.Metric),
            [.. outcome.Pages.Select(file => file.Name)]);
    }

    private static Side Of(ComparedRig rig, RigOutcome outcome) =>
        new(rig.Name, rig.Colour, outcome.Seen.SeenFrom, outcome.Depth, outcome.Swing, (outcome.Action.Twitch ?? outcome.Action.Retrieve).Report.Verdict, CandidateJson.Of(outcome.Candidate, withTrack: false));

    internal sealed record Side(
        string Name,
        string Colour,
        [property: JsonPropertyName("seen_from_m")] double SeenFrom,
        [property: JsonPropertyName("seen_at_depth_m")] double Depth,
        [property: JsonPropertyName("action_swing_rad")] double Swing,
        LureSim.Swimming.ActionVerdict Action,
        CandidateJson Run);

    internal sealed record Measure(string Name, double First, double Second, string? Main, IReadOnlyList<Effect> Effects);

    internal sealed record Effect([property: JsonPropertyName("difference")] string Feature, [property: JsonPropertyName("effect")] double Value, double Share, double Alone, double AsTheLast);
}
