using LureSim.Decision;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Stepping;

namespace LureSim.Report.Words;

/// <summary>Puts a plan's choice into words: why, what may go wrong, and where the inputs end.</summary>
public static class ChoiceWords
{
    /// <summary>Why the first choice is the first choice: where it runs, a size lighter and heavier, and the lure.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static IReadOnlyList<string> Why(Plan plan, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var format = new UnitFormat(units);
        Choice choice = plan.Choice;
        List<string> why = [Reach(plan.Scenario.Spot.StrikeZone, choice, format)];
        if (Neighbors(choice, format) is { Length: > 0 } neighbors)
            why.Add(neighbors);
        if (plan.Body is { } body)
            why.Add(BodyWords.Why(body, choice.Bait, units));
        return why;
    }

    /// <summary>What else speaks about the weight: heads that never get down, and the backup.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="choice"/> is null.</exception>
    public static IReadOnlyList<string> MoreOnWeight(Choice choice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var format = new UnitFormat(units);
        List<string> more = [];
        if (choice.TooLight.Count > 0)
            more.Add($"Too light to reach {format.HandText(choice.First.Rig.Presentation.CastLength)} with this rod: {Grammar.Join(choice.TooLight.Select(item => $"{(item.Head.Mass > 0 ? format.HeadText(item.Head) : "an unweighted hook")} ({format.HandText(item.Length)})"))}.");
        if (choice.NeverOnBottom.Count > 0)
            more.Add($"In this current {Grammar.Join(choice.NeverOnBottom.Select(head => head.Mass > 0 ? format.HeadText(head) : "an unweighted hook"), "or")} never reaches the bottom.");
        if (choice.Fallback is { } fallback && fallback != choice.Lighter && fallback != choice.Heavier)
            more.Add($"Backup, {Name(fallback, format)}: {Verdict(choice, fallback)}.");
        return more;
    }

    /// <summary>The choice in one line, the same for every command: rig, color, hands and its numbers over the tries.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="colour">Name of its color.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="choice"/> is null.</exception>
    public static string Line(Choice choice, string colour, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var format = new UnitFormat(units);
        Presentation way = choice.First.Rig.Presentation;
        string count = way.CountDown is { } seconds ? seconds > 0 ? $"{UnitFormat.SecondsNumber(seconds)}-count" : "no count" : "let it sink to the bottom";
        string numbers = choice.Numbers is { Tries: > 1 } tries ? $"; in the zone {UnitFormat.PercentText(tries.ZoneShare.Median)} ({UnitFormat.PercentText(tries.ZoneShare.Low)} to {UnitFormat.PercentText(tries.ZoneShare.High)}, 8 times in 10)" : "";
        return $"Choice: {Name(choice.First, format)}, {colour}, {count}{numbers}.";
    }

    /// <summary>What may go wrong with the first choice, and where the model is weak here.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static IReadOnlyList<string> Warnings(Plan plan, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var format = new UnitFormat(units);
        return [.. plan.Choice.Warnings.Select(warning => Warning(plan, warning, format))];
    }

    /// <summary>Limits of the inputs: a clarity outside the kind of water, light that is hardly known, runs that were cut short.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static IReadOnlyList<string> Notes(Plan plan, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var format = new UnitFormat(units);
        var notes = new List<string>();
        LightField field = plan.Colours.Chart.Field;
        if (field.Water.Status != WaterFitStatus.Matched) notes.Add(LightWords.Fit(field.Water, format));
        if (field.Surface.Regime != LightRegime.Day) notes.Add($"{LightWords.Regime(field.Surface.Regime)}. {LightWords.Note(field.Surface, units)}");
        notes.AddRange(StructureWords.Notes(plan, format));
        foreach (Candidate c in plan.Candidates.Where(c => c.Track.End is not null))
            notes.Add($"{format.HeadText(c.Rig.Head)}, {c.Rig.Presentation.Name}: {TrackWords.End(c.Track.End)}");
        return notes;
    }

    /// <summary>A first choice whose run did not end as it should, said where the eye falls; empty where it did.</summary>
    /// <param name="first">The first choice.</param>
    /// <exception cref="ArgumentNullException"><paramref name="first"/> is null.</exception>
    public static IReadOnlyList<string> Unfinished(Candidate first)
    {
        ArgumentNullException.ThrowIfNull(first);
        return first.Track.Status == SimulationStatus.Completed ? [] : [$"This run did not come to its end: {TrackWords.EndOrStatus(first.Track)}"];
    }

    /// <summary>A rig on one line: weight, lure, retrieve.</summary>
    /// <param name="candidate">The rig.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Name(Candidate candidate, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        ArgumentNullException.ThrowIfNull(format);
        return $"{Lure(candidate.Rig, format)}, {candidate.Rig.Presentation.Name}";
    }

    /// <summary>Weight and lure: "3/4 oz with the 3½ in shrimp".</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Lure(Rig rig, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(format);
        return Lure(rig.Head, rig.Body, format);
    }

    /// <summary>What a plan is busy with: "lures, weights and retrieves".</summary>
    /// <param name="stage">The stage.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a stage.</exception>
    public static string Stage(PlanStage stage) => stage switch
    {
        PlanStage.Choosing => "lures, weights and retrieves",
        PlanStage.Flips => "what would change the choice",
        PlanStage.Candidates => "the choice and the weights beside it",
        PlanStage.Answers => "what the fish sees, and tables",
        PlanStage.Tables => "weights that the box lacks",
        PlanStage.Done => "pages",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "Not a stage."),
    };

    /// <summary>What one coarse look at all lures, weights and retrieves says, before any figure of it is tried otherwise.</summary>
    /// <param name="rig">The best of them.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string FirstLook(Rig rig, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(format);
        return $"First look: {Lure(rig, format)}, {rig.Presentation.Name}";
    }

    /// <summary>The same for a head and a lure without a retrieve.</summary>
    internal static string Lure(JigHead head, LureBody body, UnitFormat format) =>
        head.IsNone ? format.LureText(body) : $"{format.HeadText(head)} with the {format.LureText(body)}";

    /// <summary>Conditions at which another head is the choice: "over 1.3 kn: 3/8 oz"; the nearest for each.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="reel">The reel, for turns of the handle.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Flips(Choice choice, Reel reel, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(reel);
        ArgumentNullException.ThrowIfNull(format);
        return [.. choice.Flips.Where(flip => flip.Condition != FlipCondition.Clarity).OrderBy(flip => flip.Condition).Select(flip => $"{(flip.Over ? "over" : "under")} {At(flip)}: {format.HeadText(flip.Rig.Head)}")];

        string At(ChoiceFlip flip) => flip.Condition switch
        {
            FlipCondition.Current => format.FlowText(flip.Value),
            FlipCondition.Depth => format.HandText(flip.Value) + " deep",
            FlipCondition.ReelSpeed => RetrieveWords.Pace(flip.Value, reel, format),
            _ => throw new ArgumentOutOfRangeException(nameof(choice), flip.Condition, "Not a condition."),
        };
    }

    /// <summary>Clarities at which another color is the choice: "if the white plate is gone before 2 ft: black"; none for a choice whose color was asked for.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> ColourFlips(Choice choice, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(format);
        return [.. choice.Flips.Where(flip => flip.Colour is not null).Select(flip => $"if the white plate is {(flip.Over ? "still seen at" : "gone before")} {format.SeenText(flip.Value)}: {flip.Colour}")];
    }

    /// <summary>How often the choice came out best or as good, for the card; empty where all is known.</summary>
    /// <param name="choice">The choice.</param>
    /// <exception cref="ArgumentNullException"><paramref name="choice"/> is null.</exception>
    public static string HowSure(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return choice.Numbers is { Tries: > 1 } numbers ? $"best or as good in {choice.AsGoodIn} of {numbers.Tries} tries" : "";
    }

    // The numbers are those of the tries where there are any.
    private static string Reach(StrikeZone zone, Choice choice, UnitFormat format)
    {
        Candidate first = choice.First;
        TryNumbers? tries = choice.Numbers is { Tries: > 1 } numbers ? numbers : null;
        double? time = tries is null ? first.Coverage.TimeToZone : double.IsFinite(tries.TimeToZone.Median) ? tries.TimeToZone.Median : null;
        double share = tries?.ZoneShare.Median ?? first.Coverage.ZoneShare, depth = tries?.MedianDepth.Median ?? first.Coverage.MedianDepth;
        string band = format.BandText(zone.Top, zone.Bottom), lure = Grammar.Capital(first.Rig.Head.IsNone ? $"the {format.LureText(first.Rig.Body)}" : format.HeadText(first.Rig.Head));
        string range = tries is { ZoneShare: { } spread } && UnitFormat.PercentText(spread.Low) != UnitFormat.PercentText(spread.High)
            ? $" ({UnitFormat.PercentText(spread.Low)} to {UnitFormat.PercentText(spread.High)}, 8 times in 10)" : "";
        return time is { } seconds
            ? $"{lure} gets to the strike zone ({band} down) {About(seconds)} after it hits the water. It stays there {UnitFormat.PercentText(share)} of the retrieve{range}; typical depth, {format.HandText(depth)}."
            : $"Nothing in your box reaches the strike zone ({band} down). {lure} comes closest; typical depth, {format.HandText(depth)}.";
    }

    // Between whole seconds: "6 to 7 seconds".
    private static string About(double seconds)
    {
        double low = Math.Floor(seconds + 0.1), high = Math.Ceiling(seconds - 0.1);
        return low < high && seconds < 20 ? $"{UnitFormat.Number(low, 0)} to {UnitFormat.Number(high, 0)} seconds" : UnitFormat.HoldText(Math.Round(seconds));
    }

    // What ran the tries is told by them, as in the table.
    private static string Verdict(Choice choice, Candidate run) => choice.Finalists.FirstOrDefault(rig => rig.Rig == run.Rig) is { Scores.Count: > 1 } tried
        ? TrackWords.Verdict(TryNumbers.Of(tried), run)
        : TrackWords.Verdict(run);

    private static string Neighbors(Choice choice, UnitFormat format)
    {
        List<string> sizes = [];
        if (choice.Lighter is { } lighter)
            sizes.Add($"One size lighter ({format.HeadText(lighter.Rig.Head)}): {Verdict(choice, lighter)}.");
        if (choice.Heavier is { } heavier)
            sizes.Add($"One size heavier ({format.HeadText(heavier.Rig.Head)}): {Verdict(choice, heavier)}.");
        return string.Join(' ', sizes);
    }

    private static string Warning(Plan plan, ChoiceWarning warning, UnitFormat format)
    {
        string share = UnitFormat.PercentText(warning.Value);
        return warning.Kind switch
        {
            ChoiceWarningKind.SeldomInZoneTooHigh => $"Even this rig is in the zone only {share} of the retrieve: go heavier, reel slower or count longer.",
            ChoiceWarningKind.SeldomInZone => $"Even this rig is in the zone only {share} of the retrieve: trust the ranking less.",
            ChoiceWarningKind.TouchesShell => $"It is on shell {share} of the retrieve: expect snags, and check the leader often.",
            ChoiceWarningKind.InGrass => $"It is in grass {share} of the retrieve: rig it weedless.",
            ChoiceWarningKind.SweptAcross => $"The current sweeps it up to {format.HandText(warning.Value)} sideways. Cast upcurrent of your target. The bow in the line will make bites hard to feel.",
            ChoiceWarningKind.FallsShort => $"This rod throws it only {format.HandText(warning.Value)}, not the {format.HandText(plan.Choice.First.Rig.Presentation.CastLength)} you want: get closer, or go heavier.",
            ChoiceWarningKind.NearTie => $"No real difference to {format.HeadText(plan.Choice.Fallback!.Rig.Head)} ({plan.Choice.Fallback.Rig.Presentation.Name}): the model can't tell the two apart.",
            ChoiceWarningKind.LowSun => format.Say($"The light is going: colors are for this {(plan.Scenario.Spot.Sky is SkyByClock ? "minute" : "height of the sun")} only."),
            _ => throw new ArgumentOutOfRangeException(nameof(warning), warning.Kind, "Not a warning."),
        };
    }
}
