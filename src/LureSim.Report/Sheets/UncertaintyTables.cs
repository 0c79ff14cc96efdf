using LureSim.Decision.Inverse;
using LureSim.Decision.Uncertainty;
using LureSim.Units;

namespace LureSim.Report.Sheets;

/// <summary>Tables of how sure the choice is, and of the questions asked backwards.</summary>
internal static class UncertaintyTables
{
    /// <summary>Every head over all draws: median, and in brackets the middle eight tenths.</summary>
    public static TableView Heads(UncertaintyStudy study, UnitFormat format)
    {
        bool grass = study.Heads.Any(h => h.GrassShare.High > 0);
        List<ColumnView> columns = [new("head", IsText: true), new("best in"), new("in zone"), new("to zone"), new("gets there"), new("on bottom")];
        if (grass)
            columns.Add(new("in grass"));
        columns.AddRange([new("sideways"), new("mean score")]);
        return new TableView(
            "Jig heads over many draws",
            "The median, and in brackets what eight draws of ten lie between.",
            columns,
            [new GroupView("", [.. study.Heads.Select(h => Row(h))])],
            "stick",
            Short: true);

        RowView Row(HeadUncertainty h)
        {
            List<CellView> cells =
            [
                new(UnitFormat.PercentText(h.ChanceBest)),
                Share(h.ZoneShare),
                new(Seconds(h.TimeToZone.Median), h.ReachesZone > 0 ? $"({Number(h.TimeToZone.Low)} to {Number(h.TimeToZone.High)})" : ""),
                new(UnitFormat.PercentText(h.ReachesZone)),
                Share(h.BottomShare),
            ];
            if (grass)
                cells.Add(Share(h.GrassShare));
            cells.AddRange(
            [
                new(format.LengthText(h.Swing.Median), $"({format.LengthNumber(h.Swing.Low)} to {format.LengthNumber(h.Swing.High)})"),
                new(UnitFormat.Number(100 * h.Score.Mean, 0)),
            ]);
            return new RowView(format.HeadText(h.Head), cells, h == study.Best ? "first" : "");
        }

        static CellView Share(Interval i) => new(UnitFormat.PercentText(i.Median), $"({UnitFormat.PercentNumber(i.Low)} to {UnitFormat.PercentNumber(i.High)})");
        static string Seconds(double s) => double.IsFinite(s) ? UnitFormat.SecondsText(s) : "never";
        static string Number(double s) => double.IsFinite(s) ? UnitFormat.SecondsNumber(s) : "never";
    }

    /// <summary>Questions asked backwards.</summary>
    public static TableView Answers(IReadOnlyList<InverseAnswer> answers, UnitFormat format) => new(
        "Asked the other way round",
        "Found by searching on the model of the whole cast.",
        [new ColumnView("question", IsText: true), new ColumnView("answer", IsText: true)],
        [new GroupView("", [.. answers.Select(a => new RowView(InverseWords.Question(a, format), [new CellView(InverseWords.Answer(a, format), InverseWords.Remark(a, format), "words")]))])],
        "wrap");
}

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
            _ => $"Count-down to the strike zone for {format.HeadText(answer.Head!)}",
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
        var measures = new MeasureFormatter(format.System);
        if (answer.Status == InverseStatus.NotReachable)
            return "Not reachable";
        return answer.Question switch
        {
            InverseQuestion.HeadForBottom => $"{measures.Mass.Text(answer.Value!.Value)}; of the common sizes {measures.Weight(answer.Common!.Value)}; of this box {(answer.Owned is { } own ? format.HeadText(own) : "none")}",
            InverseQuestion.SpeedForDepth => measures.Speed.Text(answer.Value!.Value),
            _ => $"count {UnitFormat.SecondsNumber(answer.Value)}",
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
        var measures = new MeasureFormatter(format.System);
        string band = (answer.Question, answer.From, answer.To) switch
        {
            (InverseQuestion.SpeedForDepth, { } from, { } to) when to > from => $"In the strike zone from {measures.Speed.Number(from)} to {measures.Speed.Text(to)}.",
            (InverseQuestion.SpeedForDepth, null, { } to) => $"In the strike zone up to {measures.Speed.Text(to)}.",
            (InverseQuestion.CountDownForZone, { } from, { } to) => $"In the zone from {UnitFormat.SecondsNumber(from)} to {UnitFormat.SecondsText(to)}.",
            (InverseQuestion.CountDownForZone, { } from, null) => $"In the zone from {UnitFormat.SecondsText(from)} on.",
            _ => "",
        };
        string because = answer.Because.Length == 0 ? "" : char.ToUpperInvariant(answer.Because[0]) + answer.Because[1..].TrimEnd('.') + ".";
        return string.Join(' ', ((string[])[band, because]).Where(text => text.Length > 0));
    }
}
