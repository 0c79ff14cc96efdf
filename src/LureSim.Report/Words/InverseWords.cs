using LureSim.Decision.Inverse;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Quick answers: how heavy, how fast, how long a count.</summary>
public static class InverseWords
{
    /// <summary>Heading of the answers.</summary>
    public const string Heading = "Quick answers: how heavy, how fast, how long a count";

    /// <summary>The question.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Question(InverseAnswer answer, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(format);
        return answer.Question switch
        {
            InverseQuestion.HeadForBottom => "Lightest head that holds bottom here",
            InverseQuestion.SpeedForDepth => $"To hold {format.HeadText(answer.Head!)} at {format.HandText(answer.Target ?? 0)}",
            InverseQuestion.CountDownForZone => $"Count to the strike zone with {format.HeadText(answer.Head!)}",
            _ => throw new ArgumentOutOfRangeException(nameof(answer), answer.Question, "Not a question."),
        };
    }

    /// <summary>The answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="reel">The reel, for turns of the handle.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Answer(InverseAnswer answer, Reel reel, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(reel);
        ArgumentNullException.ThrowIfNull(format);
        if (answer.Status == InverseStatus.NotReachable)
            return answer.Head is { } head ? $"can't be done with {format.HeadText(head)}" : "can't be done";
        return answer.Question switch
        {
            InverseQuestion.HeadForBottom => Head(answer, format),
            InverseQuestion.SpeedForDepth => RetrieveWords.Pace(answer.Value!.Value, reel, format),
            InverseQuestion.CountDownForZone => answer.Value!.Value < 0.5 ? "no count: start as it hits the water" : $"about {RetrieveWords.Count(answer.Value!.Value)}",
            _ => throw new ArgumentOutOfRangeException(nameof(answer), answer.Question, "Not a question."),
        };
    }

    /// <summary>What also does, and what to watch.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Remark(InverseAnswer answer, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(format);
        string band = (answer.Question, answer.From, answer.To) switch
        {
            (InverseQuestion.SpeedForDepth, { } from, { } to) when to > from => $"In the strike zone from {format.SpeedNumber(from)} to {format.SpeedText(to)}.",
            (InverseQuestion.SpeedForDepth, null, { } to) => $"In the strike zone up to {format.SpeedText(to)}.",
            (InverseQuestion.CountDownForZone, { } from, { } to) when UnitFormat.Number(from, 0) != UnitFormat.Number(to, 0) => $"In the zone on a count of {UnitFormat.Number(from, 0)} to {UnitFormat.Number(to, 0)}.",
            (InverseQuestion.CountDownForZone, { } from, null) => $"In the zone from a count of {UnitFormat.Number(from, 0)} on.",
            _ => "",
        };
        string because = Grammar.Sentence(Because(answer, format));
        return string.Join(' ', ((string[])[band, because]).Where(text => text.Length > 0));
    }

    /// <summary>Why there is no answer, or what to watch, as a clause or a sentence; may be empty.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Because(InverseAnswer answer, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(format);
        string longest = UnitFormat.Number(InverseQuestions.LongestCount, 0), heaviest = format.Weight(CommonWeights.All[^1]);
        return answer.Reason switch
        {
            InverseReason.None => "",
            InverseReason.TakesNoHead => "this lure takes no jig head",
            InverseReason.NeverTouchesBottom => $"no weight up to {heaviest} touches bottom on the retrieve",
            InverseReason.SeldomOnBottom => $"even the best weight up to {heaviest} is on bottom only {UnitFormat.PercentText(answer.Figure)} of the retrieve; holding means {UnitFormat.PercentText(InverseQuestions.HoldingShare)}",
            InverseReason.LightestHolds => "even the lightest common head holds",
            InverseReason.SomeLighterHold => "some lighter heads hold too, others between do not",
            InverseReason.OtherSpeedsToo => "other speeds give this depth too",
            InverseReason.SlowestRunsAbove => "even the slowest retrieve runs above it: go heavier or count longer",
            InverseReason.FastestRunsBelow => "even the fastest retrieve runs below it: go lighter",
            InverseReason.NoSpeedGivesIt => "no speed tried gives it",
            InverseReason.FallNotComputed => "the sink could not be computed: " + TrackWords.End(answer.Failure),
            InverseReason.SinksNoDeeperTight => $"on a tight line it sinks no deeper than {format.HandText(answer.Figure)} in {longest} seconds",
            InverseReason.SinksNoDeeperSlack => $"in this current it sinks no deeper than {format.HandText(answer.Figure)} in {longest} seconds",
            InverseReason.UpperPartOnly => "it gets into the upper part of the zone and no deeper",
            InverseReason.ZoneReachesBottom => "the zone reaches bottom: a longer count does no harm",
            _ => throw new ArgumentOutOfRangeException(nameof(answer), answer.Reason, "Not a reason."),
        };
    }

    private static string Head(InverseAnswer answer, UnitFormat format)
    {
        string common = format.Weight(answer.Common!.Value);
        if (answer.Owned is not { } own)
            return $"{common}; your box has none heavy enough";
        string owned = format.HeadText(own);
        return owned == common ? $"{owned} from your box" : $"{owned} from your box ({common} would do)";
    }
}
