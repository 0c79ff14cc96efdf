using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Puts the choice of the body into words.</summary>
public static class BodyWords
{
    /// <summary>Which rule spoke, which were overruled, how well the body answers, and what would change the answer.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="choice"/> is null.</exception>
    public static IReadOnlyList<string> Sentences(BodyChoice choice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var format = new UnitFormat(units);
        var sentences = new List<string>();
        if (choice.Spoke is { } rule)
        {
            bool profile = rule.Profiles.Count == 0 || rule.Profiles.Contains(choice.First.Profile);
            sentences.Add(profile && choice.Fits[0].Suitability >= BodyChoice.PoorFit
                ? $"Body: {choice.First.Label}, because {rule.Says} ({Basis(rule)})."
                : $"Body: {choice.First.Label} comes nearest, but fits poorly: {rule.Says} ({Basis(rule)}), which asks for {Wish(choice, format)}.");
            foreach (ForageRule other in choice.Agreed)
                sentences.Add($"In agreement: {other.Says} ({Basis(other)}).");
            foreach (ForageRule other in choice.Overruled)
                sentences.Add($"Overruled: {other.Says} ({Basis(other)}).");
        }
        else
        {
            sentences.Add($"Body: {choice.First.Label}, the first of the box: {(choice.Season is null ? "neither season nor forage was given" : "no rule speaks in this season and water")}, and no rule tells the bodies apart.");
        }

        foreach (IGrouping<LureBody, string> group in choice.Changes.GroupBy(change => change.Body, Condition))
            sentences.Add($"The {group.Key.Label} would be the choice {Grammar.Join(group, "or")}.");
        return sentences;
    }

    /// <summary>What would have to be so for another body, such as "if shrimp were being attacked".</summary>
    /// <param name="change">The change.</param>
    /// <exception cref="ArgumentNullException"><paramref name="change"/> is null.</exception>
    public static string Condition(BodyChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return change.Kind switch
        {
            BodyConditionKind.ForageAttacked => $"if {Forage(change.Forage!.Value)} were being attacked",
            BodyConditionKind.NoForage => "if no forage had been seen",
            BodyConditionKind.OtherSeason => $"in {Grammar.Join(change.Seasons.Select(SeasonName), "or")}",
            _ => throw new ArgumentOutOfRangeException(nameof(change), change.Kind, "Not a condition."),
        };
    }

    /// <summary>What the rule that spoke wishes for, such as "a shrimp imitation of 2.6 to 4.1 in".</summary>
    /// <param name="choice">The choice; with a rule that spoke.</param>
    /// <param name="format">Units.</param>
    internal static string Wish(BodyChoice choice, UnitFormat format)
    {
        IEnumerable<string> profiles = choice.Spoke!.Profiles.Select(profile => LureKinds.Of(profile).Word);
        string what = choice.Spoke.Profiles.Count == 0 ? "a body" : $"a {Grammar.Join(profiles, "or")}";
        return (choice.Wanted.Least, choice.Wanted.Most) switch
        {
            ({ } least, { } most) => $"{what} of {format.SmallLength.Number(least)} to {format.SmallLength.Text(most)}",
            ({ } least, null) => $"{what} of {format.SmallLength.Text(least)} or more",
            (null, { } most) => $"{what} of up to {format.SmallLength.Text(most)}",
            _ => what,
        };
    }

    /// <summary>Why the run put the runner-up in place of the body that the rules took; nothing where it did not.</summary>
    /// <param name="choice">The choice of the rules.</param>
    /// <param name="first">The first choice of the plan.</param>
    /// <param name="best">The best candidate with the body of the rules.</param>
    internal static IEnumerable<string> Overturned(BodyChoice choice, Candidate first, Candidate? best)
    {
        if (best is not null && first.Rig.Body != choice.First)
        {
            yield return $"The run overturns that: the {first.Rig.Body.Label} is in the zone {UnitFormat.Share.Text(first.Coverage.ZoneShare)} of the retrieve, the {choice.First.Label} at its best {UnitFormat.Share.Text(best.Coverage.ZoneShare)}, "
                + "which weighs more than its better fit.";
        }
    }

    private static string Forage(ForageKind kind) => kind switch
    {
        ForageKind.SmallBaitFish => "small bait fish",
        ForageKind.LargeBaitFish => "large bait fish",
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
        Season.EarlyAutumn => "early autumn",
        Season.LateAutumn => "late autumn",
        _ => throw new ArgumentOutOfRangeException(nameof(season), season, "Not a season."),
    };

    private static string Basis(ForageRule rule) => rule.IsPractice ? "common practice" : "published";
}
