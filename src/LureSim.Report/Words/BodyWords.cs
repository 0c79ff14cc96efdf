using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Puts the choice of the lure into words.</summary>
public static class BodyWords
{
    /// <summary>Why this lure, in one sentence: the deciding rule, or what the rule wanted and what the runs made of it.</summary>
    /// <param name="choice">The choice of the rules.</param>
    /// <param name="first">The first choice of the plan, or null for the rules alone.</param>
    /// <param name="best">The best candidate with the lure of the rules, or null.</param>
    /// <param name="units">Units of the sentence.</param>
    /// <exception cref="ArgumentNullException"><paramref name="choice"/> is null.</exception>
    public static string Why(BodyChoice choice, Candidate? first, Candidate? best, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var format = new UnitFormat(units);
        string lure = format.LureText(choice.First);
        if (first is not null && best is not null && first.Rig.Body != choice.First)
        {
            string why = choice.Spoke is { } wanted ? $" ({wanted.Says})" : "";
            return $"Lure: {format.LureText(first.Rig.Body)}. By what fish eat it would be the {lure}{why}, but that one is in the strike zone {UnitFormat.PercentText(best.Coverage.ZoneShare)} of the retrieve at best, this one {UnitFormat.PercentText(first.Coverage.ZoneShare)}.";
        }

        if (choice.Spoke is not { } rule)
            return units.Say($"Lure: {lure}, the first in your box: {(choice.Season is null ? "you gave no season and no bait" : "no rule fits this season and water")}, so nothing favors another.");
        bool profile = rule.Profiles.Count == 0 || rule.Profiles.Contains(choice.First.Profile);
        return profile && choice.Fits[0].Suitability >= BodyChoice.PoorFit
            ? $"Lure: {lure}, because {rule.Says}{Basis(rule)}."
            : $"Lure: {lure} is the closest in your box, but no good match: {rule.Says}{Basis(rule)}, which calls for {Wish(choice, format)}.";
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

    // A published rule names its study in its own words.
    private static string Basis(ForageRule rule) => rule.IsPractice ? " (common practice)" : "";
}
