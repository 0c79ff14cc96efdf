using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Decision;

/// <summary>Puts the choice of the body into words.</summary>
public static class BodyWording
{
    /// <summary>Which rule spoke, which were overruled, how well the body answers, and what would change the answer.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="choice"/> is null.</exception>
    public static IReadOnlyList<string> Sentences(BodyChoice choice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var show = new MeasureFormatter(units);
        var sentences = new List<string>();
        if (choice.Spoke is { } rule)
        {
            bool profile = rule.Profiles.Count == 0 || rule.Profiles.Contains(choice.First.Profile);
            sentences.Add(profile && choice.Fits[0].Suitability >= BodyChoice.PoorFit
                ? $"Body: {choice.First.Label}, because {rule.Says} ({Basis(rule)})."
                : $"Body: {choice.First.Label} comes nearest, but fits poorly: {rule.Says} ({Basis(rule)}), which asks for {Wish(choice, show)}.");
            foreach (ForageRule other in choice.Agreed)
                sentences.Add($"In agreement: {other.Says} ({Basis(other)}).");
            foreach (ForageRule other in choice.Overruled)
                sentences.Add($"Overruled: {other.Says} ({Basis(other)}).");
        }
        else
        {
            sentences.Add($"Body: {choice.First.Label}, the first of the box: {(choice.Season is null ? "neither season nor forage was given" : "no rule speaks in this season and water")}, and no rule tells the bodies apart.");
        }

        foreach (IGrouping<LureBody, string> group in choice.Changes.GroupBy(change => change.Body, change => change.Condition))
            sentences.Add($"The {group.Key.Label} would be the choice {Wording.Join(group, "or")}.");
        return sentences;
    }

    /// <summary>What the rule that spoke wishes for, such as "a shrimp imitation of 2.6 to 4.1 in".</summary>
    /// <param name="choice">The choice; with a rule that spoke.</param>
    /// <param name="show">Units.</param>
    internal static string Wish(BodyChoice choice, MeasureFormatter show)
    {
        IEnumerable<string> profiles = choice.Spoke!.Profiles.Select(Profile);
        string what = choice.Spoke.Profiles.Count == 0 ? "a body" : $"a {Wording.Join(profiles, "or")}";
        return (choice.Wanted.Least, choice.Wanted.Most) switch
        {
            ({ } least, { } most) => $"{what} of {show.SmallLength.Number(least)} to {show.SmallLength.Text(most)}",
            ({ } least, null) => $"{what} of {show.SmallLength.Text(least)} or more",
            (null, { } most) => $"{what} of up to {show.SmallLength.Text(most)}",
            _ => what,
        };
    }

    /// <summary>A profile as scenarios write it.</summary>
    /// <param name="profile">The profile.</param>
    internal static string Profile(BodyProfile profile) => LureKinds.Of(profile).Word;

    /// <summary>Why the run put the runner-up in place of the body that the rules took; nothing where it did not.</summary>
    /// <param name="choice">The choice of the rules.</param>
    /// <param name="first">The first choice of the plan.</param>
    /// <param name="best">The best candidate with the body of the rules.</param>
    internal static IEnumerable<string> Overturned(BodyChoice choice, Candidate first, Candidate? best)
    {
        if (best is not null && first.Rig.Body != choice.First)
        {
            yield return $"The run overturns that: the {first.Rig.Body.Label} is in the zone {Wording.Percent(first.Coverage.ZoneShare)} of the retrieve, the {choice.First.Label} at its best {Wording.Percent(best.Coverage.ZoneShare)}, "
                + "which weighs more than its better fit.";
        }
    }

    private static string Basis(ForageRule rule) => rule.Source == CommonPractice ? "common practice" : "published";

    private const string CommonPractice = "common practice";
}
