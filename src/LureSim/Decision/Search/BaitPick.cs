using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>The bait of a choice: expected scores, and the rules of season, forage and fish where these differ by no more than the model knows.</summary>
internal static class BaitPick
{
    /// <summary>Of each bait the rig to take (<see cref="Preference"/>); of these the one that the rules want, unless another leads it by more than the model knows.</summary>
    public static SearchedRig Of(IReadOnlyList<SearchedRig> rigs, BodyChoice bodies, ScoreWeights weights)
    {
        SearchedRig[] ofBaits =
        [
            .. rigs.GroupBy(rig => rig.Rig.Body).Select(group => Preference.Of([.. group], rig => rig.Rig, rig => rig.Mean, (other, rig) => rig.StandardErrorTo(other), weights)),
        ];
        SearchedRig wanted = Wanted(ofBaits, bodies), best = ofBaits.MaxBy(rig => rig.Value)!;
        return best.Value - wanted.Value > Known(best, wanted, weights) ? best : wanted;
    }

    /// <summary>Rules and runs together.</summary>
    public static BaitOutcome Outcome(SearchedRig first, IReadOnlyList<SearchedRig> finalists, Scenario scenario, BodyChoice bodies)
    {
        SearchedRig[] ofBaits = [.. finalists.GroupBy(rig => rig.Rig.Body).Select(group => group.MaxBy(rig => rig.Mean)!)];
        SearchedRig wanted = Wanted(ofBaits, bodies), best = ofBaits.MaxBy(rig => rig.Mean)!;
        BaitOutcomeKind kind = scenario.Tackle.Bodies.Count == 1 || ofBaits.Length == 1 ? BaitOutcomeKind.OneBait
            : bodies.Spoke is null ? BaitOutcomeKind.NoRule
            : first.Rig.Body != wanted.Rig.Body ? BaitOutcomeKind.RunsOverturn
            : best.Rig.Body == wanted.Rig.Body ? BaitOutcomeKind.Agree
            : BaitOutcomeKind.RulesStand;
        return new BaitOutcome(kind, first.Rig.Body, wanted.Rig.Body, wanted.Mean, best.Rig.Body, best.Mean);
    }

    /// <summary>The lead in value below which two rigs are no different: what drag and action leave open, and the standard error of the lead try by try.</summary>
    public static double Known(SearchedRig best, SearchedRig other, ScoreWeights weights) => Math.Max(weights.Tie(best.Value), other.ValueErrorTo(best));

    // The bodies stand best first, equal ones in the order of the box.
    private static SearchedRig Wanted(SearchedRig[] ofBaits, BodyChoice bodies) => ofBaits.MinBy(rig => bodies.Fits.TakeWhile(fit => fit.Body != rig.Rig.Body).Count())!;
}
