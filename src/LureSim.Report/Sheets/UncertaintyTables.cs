using LureSim.Decision.Inverse;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;

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
        columns.AddRange([new("sideways"), new("average score")]);
        return new TableView(
            "Every head over the what-if tries",
            "Typical, and in brackets the range 8 times in 10.",
            columns,
            [new GroupView("", [.. study.Heads.Select(h => Row(h))])],
            "stick",
            Short: true);

        RowView Row(HeadUncertainty h)
        {
            List<CellView> cells =
            [
                new($"{UnitFormat.Number(h.ChanceBest * study.Draws.Count, 0)} of {study.Draws.Count}"),
                Share(h.ZoneShare),
                new(Seconds(h.TimeToZone.Median), h.ReachesZone > 0 ? $"({Number(h.TimeToZone.Low)} to {Number(h.TimeToZone.High)})" : ""),
                new(UnitFormat.PercentText(h.ReachesZone)),
                Share(h.BottomShare),
            ];
            if (grass)
                cells.Add(Share(h.GrassShare));
            cells.AddRange(
            [
                new(format.HandText(h.Swing.Median), $"({format.HandNumber(h.Swing.Low)} to {format.HandNumber(h.Swing.High)})"),
                new(UnitFormat.Number(100 * h.Score.Mean, 0)),
            ]);
            return new RowView(format.HeadText(h.Head), cells, h == study.Best ? "first" : "");
        }

        static CellView Share(Interval i) => new(UnitFormat.PercentText(i.Median), $"({UnitFormat.PercentNumber(i.Low)} to {UnitFormat.PercentNumber(i.High)})");
        static string Seconds(double s) => double.IsFinite(s) ? UnitFormat.SecondsText(s) : "never";
        static string Number(double s) => double.IsFinite(s) ? UnitFormat.SecondsNumber(s) : "never";
    }

    /// <summary>Quick answers.</summary>
    public static TableView Answers(IReadOnlyList<InverseAnswer> answers, Reel reel, UnitFormat format) => new(
        "Quick answers",
        "Searched on whole casts.",
        [new ColumnView("question", IsText: true), new ColumnView("answer", IsText: true)],
        [new GroupView("", [.. answers.Select(a => new RowView(InverseWords.Question(a, format), [new CellView(Grammar.Capital(InverseWords.Answer(a, reel, format)), InverseWords.Remark(a, format), "words")]))])],
        "wrap");
}
