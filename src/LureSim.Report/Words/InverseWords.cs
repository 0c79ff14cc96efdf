using LureSim.Decision.Inverse;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Questions asked backwards, in words.</summary>
public static class InverseWords
{
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
            InverseQuestion.HeadForBottom => "Lightest head that holds the bottom here",
            InverseQuestion.SpeedForDepth => $"Reel speed that keeps {format.HeadText(answer.Head!)} at {format.LengthText(answer.Target ?? 0)}",
            InverseQuestion.CountDownForZone => $"Count-down to the strike zone for {format.HeadText(answer.Head!)}",
            _ => throw new ArgumentOutOfRangeException(nameof(answer), answer.Question, "Not a question."),
        };
    }

    /// <summary>The answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Answer(InverseAnswer answer, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(format);
        if (answer.Status == InverseStatus.NotReachable)
            return "Not reachable";
        return answer.Question switch
        {
            InverseQuestion.HeadForBottom => $"{format.Mass.Text(answer.Value!.Value)}; of the common sizes {format.Weight(answer.Common!.Value)}; of this box {(answer.Owned is { } own ? format.HeadText(own) : "none")}",
            InverseQuestion.SpeedForDepth => format.Speed.Text(answer.Value!.Value),
            InverseQuestion.CountDownForZone => $"count {UnitFormat.SecondsNumber(answer.Value)}",
            _ => throw new ArgumentOutOfRangeException(nameof(answer), answer.Question, "Not a question."),
        };
    }

    /// <summary>What also does, and what to mind.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Remark(InverseAnswer answer, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(format);
        string band = (answer.Question, answer.From, answer.To) switch
        {
            (InverseQuestion.SpeedForDepth, { } from, { } to) when to > from => $"In the strike zone from {format.Speed.Number(from)} to {format.Speed.Text(to)}.",
            (InverseQuestion.SpeedForDepth, null, { } to) => $"In the strike zone up to {format.Speed.Text(to)}.",
            (InverseQuestion.CountDownForZone, { } from, { } to) => $"In the zone from {UnitFormat.SecondsNumber(from)} to {UnitFormat.SecondsText(to)}.",
            (InverseQuestion.CountDownForZone, { } from, null) => $"In the zone from {UnitFormat.SecondsText(from)} on.",
            _ => "",
        };
        string because = Grammar.Sentence(Because(answer));
        return string.Join(' ', ((string[])[band, because]).Where(text => text.Length > 0));
    }

    /// <summary>Why there is no answer, or what to mind, as a clause or a sentence; may be empty.</summary>
    /// <param name="answer">The answer.</param>
    /// <exception cref="ArgumentNullException"><paramref name="answer"/> is null.</exception>
    public static string Because(InverseAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        string depth = UnitFormat.Fixed(answer.Figure, 2), longest = UnitFormat.Fixed(InverseQuestions.LongestCount, 0);
        return answer.Reason switch
        {
            InverseReason.None => "",
            InverseReason.TakesNoHead => "this lure takes no jig head",
            InverseReason.NeverTouchesBottom => "no weight up to 4 oz touches the bottom in the retrieve",
            InverseReason.SeldomOnBottom => $"even the best weight up to 4 oz is on the bottom only {UnitFormat.Share.Text(answer.Figure)} of the retrieve, and {UnitFormat.Share.Text(InverseQuestions.HoldingShare)} are asked for",
            InverseReason.LightestHolds => "even the lightest common head holds",
            InverseReason.SomeLighterHold => "Some lighter heads hold too, while others between do not.",
            InverseReason.OtherSpeedsToo => "Other speeds give this depth too: the depth does not fall evenly with speed here.",
            InverseReason.SlowestRunsAbove => "even the slowest retrieve tried runs above it: a heavier head or a longer count-down is needed",
            InverseReason.FastestRunsBelow => "even the fastest retrieve tried runs below it: a lighter head is needed",
            InverseReason.NoSpeedGivesIt => "no speed tried gives it",
            InverseReason.FallNotComputed => "the fall could not be computed: " + TrackWords.End(answer.Failure),
            InverseReason.SinksNoDeeperTight => $"it sinks no deeper than {depth} m within {longest} s on a tight line",
            InverseReason.SinksNoDeeperSlack => $"it sinks no deeper than {depth} m within {longest} s in this current",
            InverseReason.UpperPartOnly => "it gets into the upper part of the zone and no deeper",
            InverseReason.ZoneReachesBottom => "the zone reaches down to the bottom: waiting longer does no harm",
            _ => throw new ArgumentOutOfRangeException(nameof(answer), answer.Reason, "Not a reason."),
        };
    }
}
