using LureSim.Decision.Baits;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Puts the choice of the lure into words.</summary>
public static class BodyWords
{
    /// <summary>Why this lure, in one sentence: the deciding rule, and what the runs made of it.</summary>
    /// <param name="choice">The choice of the rules.</param>
    /// <param name="outcome">Rules and runs together; null for the rules alone.</param>
    /// <param name="units">Units of the sentence.</param>
    /// <exception cref="ArgumentNullException"><paramref name="choice"/> is null.</exception>
    public static string Why(BodyChoice choice, BaitOutcome? outcome, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var format = new UnitFormat(units);
        string lure = format.LureText(outcome?.Chosen ?? choice.First), says = choice.Spoke is { } rule ? rule.Says + Basis(rule) : "";
        return outcome?.Kind switch
        {
            BaitOutcomeKind.OneBait => $"Lure: {lure}, the one in your box.",
            BaitOutcomeKind.NoRule => units.Say($"Lure: {lure}: {(choice.Season is null ? "you gave no season and no bait" : "no rule fits this season and water")}, so how it runs here decides."),
            BaitOutcomeKind.RunsOverturn => $"Lure: {lure}. {(says.Length > 0 ? Grammar.Capital(says) + ": that" : "That")} asks for the {format.LureText(outcome.Wanted)}, but here the {lure} does clearly better.",
            BaitOutcomeKind.RulesStand => $"Lure: {lure}, because {says}; the {format.LureText(outcome.Best)} runs better here, but not by enough to switch.",
            BaitOutcomeKind.Agree or null when says.Length > 0 => Fits(choice) ? $"Lure: {lure}, because {says}." : $"Lure: {lure} is the closest in your box, but no good match: {says}, which calls for {Wish(choice, format)}.",
            BaitOutcomeKind.Agree or null => units.Say($"Lure: {lure}, the first in your box: nothing favors another."),
            _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome.Kind, "Not an outcome."),
        };
    }

    /// <summary>Rules for and against, and what would change the answer.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="choice"/> is null.</exception>
    public static IReadOnlyList<string> More(BodyChoice choice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var format = new UnitFormat(units);
        return
        [
            .. choice.Agreed.Select(other => $"Also for it: {other.Says}{Basis(other)}."),
            .. choice.Overruled.Select(other => $"Against it, on weaker evidence: {other.Says}{Basis(other)}."),
            .. choice.Changes.GroupBy(change => change.Body).Select(group => $"Switch to the {format.LureText(group.Key)} {Conditions(group)}."),
        ];
    }

    /// <summary>What would have to be so for another lure, such as "if fish are busting shrimp, or in spring".</summary>
    /// <param name="changes">The changes; at least one.</param>
    /// <exception cref="ArgumentNullException"><paramref name="changes"/> is null.</exception>
    public static string Conditions(IEnumerable<BodyChange> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        BodyChange[] all = [.. changes];
        List<string> parts = [];
        string[] eaten = [.. all.Where(change => change.Kind == BodyConditionKind.ForageAttacked).Select(change => Forage(change.Forage!.Value))];
        string[] seasons = [.. all.Where(change => change.Kind == BodyConditionKind.OtherSeason).SelectMany(change => change.Seasons).Select(SeasonName)];
        if (eaten.Length > 0)
            parts.Add($"if fish are busting {Grammar.Join(eaten, "or")}");
        if (all.Any(change => change.Kind == BodyConditionKind.NoForage))
            parts.Add("if you see no bait");
        if (seasons.Length > 0)
            parts.Add($"in {Grammar.Join(seasons, "or")}");
        return string.Join(", or ", parts);
    }

    /// <summary>What the deciding rule wishes for, such as "a shrimp of 2½ to 4 in".</summary>
    /// <param name="choice">The choice; with a rule that decided.</param>
    /// <param name="format">Units.</param>
    internal static string Wish(BodyChoice choice, UnitFormat format)
    {
        IEnumerable<string> profiles = choice.Spoke!.Profiles.Select(profile => LureKinds.Of(profile).Word);
        string what = choice.Spoke.Profiles.Count == 0 ? "a lure" : Grammar.Article(Grammar.Join(profiles, "or"));
        return (choice.Wanted.Least, choice.Wanted.Most) switch
        {
            ({ } least, { } most) => $"{what} of {format.SizeNumber(least)} to {format.SizeText(most)}",
            ({ } least, null) => $"{what} of {format.SizeText(least)} or more",
            (null, { } most) => $"{what} of up to {format.SizeText(most)}",
            _ => what,
        };
    }

    private static string Forage(ForageKind kind) => kind switch
    {
        ForageKind.SmallBaitFish => "small baitfish",
        ForageKind.LargeBaitFish => "large baitfish",
        ForageKind.Shrimp => "shrimp",
        ForageKind.Crab => "crabs",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of forage."),
    };

    private static string SeasonName(Season season) => season switch
    {
        Season.Winter => "winter",
        Season.EarlySpring => "early spring",
        Season.LateSpring => "late spring",
        Season.Summer => "summer",
        Season.LateSummer => "late summer",
        Season.EarlyAutumn => "early fall",
        Season.LateAutumn => "late fall",
        _ => throw new ArgumentOutOfRangeException(nameof(season), season, "Not a season."),
    };

    private static bool Fits(BodyChoice choice) =>
        (choice.Spoke!.Profiles.Count == 0 || choice.Spoke.Profiles.Contains(choice.First.Profile)) && choice.Fits[0].Suitability >= BodyChoice.PoorFit;

    // A published rule names its study in its own words.
    private static string Basis(ForageRule rule) => rule.IsPractice ? " (common practice)" : "";
}
