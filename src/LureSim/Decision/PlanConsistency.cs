using LureSim.Decision.Baits;
using LureSim.Decision.Inverse;
using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Decision;

/// <summary>Something that two findings of one plan say differently.</summary>
public enum Contradiction
{
    /// <summary>A finalist with the bait of the choice scores more by a real margin and more than its tries leave open.</summary>
    AnotherScoresMore,

    /// <summary>The bait of the choice is not the one that the outcome of rules and runs names, or the outcome does not follow from its own scores.</summary>
    BaitOutcome,

    /// <summary>A count of tries is not between none and all, or more tries are best than as good as the best.</summary>
    CountOfTries,

    /// <summary>The single run that is drawn lies outside of all its tries.</summary>
    RunOutsideTries,

    /// <summary>A condition lies on the other side of the scenario's own value, or turns to the choice's own head.</summary>
    Flip,

    /// <summary>A weight is said to change the choice and does not.</summary>
    Sensitivity,

    /// <summary>The lighter head is not lighter, the heavier one not heavier, or they are worked another way.</summary>
    Neighbours,

    /// <summary>A question is answered for another bait or another presentation than the choice's.</summary>
    AnswerForAnotherRig,

    /// <summary>The table of speeds, or the study of the tries, is of another way than the choice's.</summary>
    TableOfAnotherRig,

    /// <summary>The box is said to cover the spot, and none of its heads holds the bottom where the fish are.</summary>
    CoveredAndNoneHolds,

    /// <summary>A warning does not follow from the numbers that are shown, or is missing.</summary>
    Warning,

    /// <summary>A head that touches the bottom is said never to reach it.</summary>
    NeverOnBottom,

    /// <summary>The study takes another head for the best than the choice.</summary>
    StudyOfAnotherHead,

    /// <summary>The choice reaches the zone in no try, and another finalist does.</summary>
    NeverInZone,

    /// <summary>A fixed hand was changed, or a hand went beyond its bounds.</summary>
    Hands,
}

/// <summary>Looks for findings of one plan that contradict each other, before they become words.</summary>
public static class PlanConsistency
{
    // Single runs differ from those of the tries by their settings (share of the retrieve).
    private const double Settings = 0.03;

    /// <summary>The contradictions in a plan; none in a sound one.</summary>
    /// <param name="plan">A plan.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static IReadOnlyList<Contradiction> Check(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. All(plan).Distinct()];
    }

    private static IEnumerable<Contradiction> All(Plan plan)
    {
        Choice choice = plan.Choice;
        Rig rig = choice.First.Rig;
        Scenario scenario = plan.Scenario;
        ScoreWeights weights = ScoreWeights.Default;
        if (choice.Finalists.Count > 0)
        {
            Search.SearchedRig first = choice.Finalists[0];
            if (first.Rig != rig) yield return Contradiction.TableOfAnotherRig;

            // A tie is a share of the best score, as in Preference.
            Search.SearchedRig[] ofBait = [.. choice.Finalists.Where(other => other.Rig.Body == rig.Body)];
            double tie = weights.Tie(ofBait.Select(other => other.Mean).DefaultIfEmpty().Max());
            if (ofBait.Any(other => other.Mean > first.Mean + Math.Max(tie, first.StandardErrorTo(other)) + 1e-9))
                yield return Contradiction.AnotherScoresMore;
            bool reached = first.Outcomes.Any(c => c.TimeToZone is not null);
            if (!reached && choice.Finalists.Any(other => other.Rig.Body == rig.Body && other.Mean > 0)) yield return Contradiction.NeverInZone;
            if (choice.Bait is { } bait && Wrong(bait, rig.Body)) yield return Contradiction.BaitOutcome;
            if (OverHands(choice, scenario)) yield return Contradiction.Hands;
        }

        if (choice.Numbers is { } numbers)
        {
            if (choice.BestIn < 0 || choice.BestIn > choice.AsGoodIn || choice.AsGoodIn > numbers.Tries) yield return Contradiction.CountOfTries;
            IReadOnlyList<Coverage> outcomes = choice.Finalists.Count > 0 ? choice.Finalists[0].Outcomes : [];
            double shown = choice.First.Coverage.ZoneShare;
            if (outcomes.Count > 8 && (shown < outcomes.Min(c => c.ZoneShare) - Settings || shown > outcomes.Max(c => c.ZoneShare) + Settings)) yield return Contradiction.RunOutsideTries;
            bool seldom = choice.Warnings.Any(w => w.Kind is ChoiceWarningKind.SeldomInZone or ChoiceWarningKind.SeldomInZoneTooHigh);
            if (choice.Warnings.Any(w => w.Kind == ChoiceWarningKind.TouchesShell && scenario.Spot.Bottom != BottomKind.Shell)
                || (seldom && numbers.ZoneShare.Median > 0.5)
                || (!seldom && numbers.ZoneShare.Median < 0.2))
            {
                yield return Contradiction.Warning;
            }
        }

        foreach (Search.ChoiceFlip flip in choice.Flips)
        {
            double own = flip.Condition switch
            {
                Search.FlipCondition.Current => scenario.Spot.CurrentSpeed,
                Search.FlipCondition.Depth => scenario.Spot.Depth,
                Search.FlipCondition.ReelSpeed => rig.Presentation.RetrieveSpeed,
                Search.FlipCondition.Clarity => (scenario.Spot.Clarity as SecchiClarity)?.Depth ?? double.NaN,
                _ => throw new ArgumentOutOfRangeException(nameof(plan), flip.Condition, "Not a condition."),
            };
            bool flips = flip.Condition == Search.FlipCondition.Clarity ? flip.Colour is { } colour && colour != plan.Colours.Advice.Choice.Name : flip.Rig.Head != rig.Head;
            if (double.IsNaN(own) || flip.Over != flip.Value > own || !flips) yield return Contradiction.Flip;
        }

        if (choice.Sensitivity.Any(item => item.Rig == rig)) yield return Contradiction.Sensitivity;
        if ((choice.Lighter is { } lighter && (lighter.Rig.Head.Mass > rig.Head.Mass || !Choice.SameWay(lighter.Rig, rig)))
            || (choice.Heavier is { } heavier && (heavier.Rig.Head.Mass < rig.Head.Mass || !Choice.SameWay(heavier.Rig, rig))))
        {
            yield return Contradiction.Neighbours;
        }

        if (plan.Answers.Any(answer => answer.Presentation != rig.Presentation || (answer.Question != InverseQuestion.HeadForBottom && answer.Head is { } head && head != rig.Head)))
            yield return Contradiction.AnswerForAnotherRig;
        if (plan.Grid.PresentationName != rig.Presentation.Name || !plan.Grid.Heads.Contains(rig.Head)) yield return Contradiction.TableOfAnotherRig;
        if (plan.Uncertainty is { } study && (study.Body != rig.Body || study.Best.Head != rig.Head)) yield return Contradiction.StudyOfAnotherHead;
        if (plan.Box is { Covers: true } && NoneHolds(plan)) yield return Contradiction.CoveredAndNoneHolds;
        if (choice.NeverOnBottom.Any(head => plan.OfChosenPresentation.Any(c => c.Rig.Head == head && c.Coverage.TimeToBottom is not null))) yield return Contradiction.NeverOnBottom;
    }

    /// <summary>Whether the fish are on the bottom and no head of the box holds it where one on sale would.</summary>
    /// <param name="plan">A plan.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    internal static bool NoneHolds(Plan plan) => Ranking.ZoneIsOnBottom(plan.Scenario.Spot)
        && plan.Answers.Any(answer => answer is { Question: InverseQuestion.HeadForBottom, Status: InverseStatus.Found, Owned: null });

    private static bool Wrong(BaitOutcome bait, LureBody chosen) => bait.Chosen != chosen || bait.Kind switch
    {
        BaitOutcomeKind.OneBait => false,
        BaitOutcomeKind.NoRule => false,
        BaitOutcomeKind.Agree => bait.Wanted != bait.Best || bait.Wanted != chosen,
        BaitOutcomeKind.RulesStand => bait.Wanted != chosen || bait.Best == chosen || bait.BestScore < bait.WantedScore,
        BaitOutcomeKind.RunsOverturn => bait.Wanted == chosen,
        _ => throw new ArgumentOutOfRangeException(nameof(bait), bait.Kind, "Not an outcome."),
    };

    private static bool OverHands(Choice choice, Scenario scenario) => choice.Hands.Any(setting => scenario.Fixed.Contains(setting.Hand));
}
