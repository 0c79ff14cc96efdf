using LureSim.Decision.Inverse;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
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
