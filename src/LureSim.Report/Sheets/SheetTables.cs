using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Stepping;

namespace LureSim.Report.Sheets;

/// <summary>The tables of a sheet.</summary>
internal static class SheetTables
{
    // Rows of a table that is kept on one page in print.
    private const int LongestUnbroken = 16;

    /// <summary>Seconds to depth, slack line first, tight line in brackets.</summary>
    public static TableView Fall(FallTable fall, StrikeZone zone, UnitFormat format)
    {
        List<RowView> rows =
        [
            new RowView("sinks at", [.. fall.Columns.Select(c => new CellView(format.SpeedText(c.TerminalSpeed)))]),
        ];
        for (int i = 0; i < fall.Depths.Count; i++)
        {
            double depth = fall.Depths[i];
            rows.Add(new RowView(
                format.LengthText(depth),
                [.. fall.Columns.Select(c => new CellView(UnitFormat.SecondsNumber(At(c.SlackLineSeconds, i)), $"({UnitFormat.SecondsNumber(At(c.TightLineSeconds, i))})"))],
                zone.Contains(depth) ? "zone" : ""));
        }

        return new TableView(
            "Count-down table",
            $"Seconds from the splash to each depth on slack line, and in brackets on a tight line. {UnitFormat.None} means never reached. Shaded rows are in the strike zone.",
            [new ColumnView("depth", IsText: true), .. fall.Columns.Select(c => new ColumnView(format.HeadText(c.Head)))],
            [new GroupView("", rows)],
            "stick",
            Short: rows.Count <= LongestUnbroken);
    }

    /// <summary>All candidates, best first.</summary>
    public static TableView Candidates(Sheet sheet, UnitFormat format)
    {
        bool grass = sheet.Scenario.Spot.GrassHeight > 0;
        bool bodies = sheet.Candidates.Select(c => c.Rig.Body).Distinct().Count() > 1;
        bool across = sheet.Candidates.Any(c => c.Coverage.DriftAcross > 0.5);
        List<ColumnView> columns = [new("head", IsText: true)];
        if (bodies)
            columns.Add(new("body", IsText: true));
        columns.AddRange([new("retrieve and what it does", IsText: true), new("in zone"), new("above"), new("below"), new("on bottom")]);
        if (grass)
            columns.Add(new("in grass"));
        columns.AddRange([new("to zone"), new("median depth")]);
        if (across)
            columns.Add(new("sideways"));
        columns.Add(new("score"));

        List<RowView> rows = [];
        foreach (Candidate c in sheet.Candidates.OrderByDescending(c => SideView.IsFirst(c, sheet.Choice.First)).ThenByDescending(c => c.Score))
        {
            Coverage v = c.Coverage;
            string verdict = TrackWords.Verdict(c) + (c.Track.Status == SimulationStatus.Completed ? "" : $" ({TrackWords.EndOrStatus(c.Track)})");
            List<CellView> cells = [];
            if (bodies)
                cells.Add(new(c.Rig.Body.Label, Class: "text"));
            cells.AddRange([new(c.Rig.Presentation.Name, verdict, "words"), new(UnitFormat.PercentText(v.ZoneShare)), new(UnitFormat.PercentText(v.AboveShare)), new(UnitFormat.PercentText(v.BelowShare)), new(UnitFormat.PercentText(v.BottomShare))]);
            if (grass)
                cells.Add(new(UnitFormat.PercentText(v.GrassShare)));
            cells.AddRange([new(UnitFormat.SecondsText(v.TimeToZone)), new(format.LengthText(v.MedianDepth))]);
            if (across)
                cells.Add(new(format.LengthText(v.DriftAcross)));
            cells.Add(new(UnitFormat.Number(100 * c.Score, 0)));
            rows.Add(new RowView(format.HeadText(c.Rig.Head), cells, SideView.IsFirst(c, sheet.Choice.First) ? "first" : ""));
        }

        return new TableView("All candidates", "Shares are of the retrieve, from the first turn of the handle to the rod. The score runs from 0 to 100; the first choice is starred.", columns, [new GroupView("", rows)], "stick", Short: rows.Count <= LongestUnbroken);
    }

    /// <summary>The heads owned, each at its best, with the common sizes that the box lacks.</summary>
    public static TableView Box(Sheet sheet, BoxAdvice box, UnitFormat format)
    {
        Candidate first = sheet.Choice.First;
        RowView Of(Candidate c, string note, string mark) => new(
            format.HeadText(c.Rig.Head),
            [new(c.Rig.Presentation.Name, note, "words"), new(UnitFormat.PercentText(c.Coverage.ZoneShare)), new(UnitFormat.SecondsText(c.Coverage.TimeToZone)), new(UnitFormat.Number(100 * c.Score, 0))],
            mark);
        List<GroupView> groups = [new("", [.. box.Heads.Select(rank => Of(rank.Best, "", rank.Best.Rig == first.Rig ? "first" : ""))])];
        if (box.Missing.Count > 0)
            groups.Add(new("", [.. box.Missing.Select(m => Of(m.Candidate, m == box.Gap ? "not in the box: worth having" : "not in the box", ""))]));
        return new TableView(
            "The box ranked",
            "Every jig head of the box at its best retrieve, best first; then common sizes that the box lacks, fished like the first choice.",
            [new("head", IsText: true), new("retrieve", IsText: true), new("in zone"), new("to zone"), new("score")],
            groups,
            "stick",
            Short: box.Heads.Count + box.Missing.Count <= LongestUnbroken);
    }

    /// <summary>The words of the colour chart.</summary>
    public static TableView Colours(ColourPlate plate, UnitFormat format) => new(
        "Colours in words",
        "How strong each colour still is to an adapted human eye, with its lightness L* from 0 to 100.",
        [new ColumnView("depth", IsText: true), .. plate.Colours.Select(c => new ColumnView(c))],
        [new GroupView("", [.. plate.Depths.Select((d, i) => new RowView(d <= 0 ? "surface" : format.LengthText(d), [.. plate.Cells[i].Select(c => new CellView(c.Word, $"({UnitFormat.Number(c.Lightness, 0)})"))]))])],
        "stick",
        Summary: "The colours as a table of words");

    /// <summary>What went in.</summary>
    public static TableView Inputs(Scenario scenario, UnitFormat format)
    {
        Spot spot = scenario.Spot;
        TackleBox tackle = scenario.Tackle;
        List<RowView> water =
        [
            Row("depth", format.LengthText(spot.Depth)),
            Row("bottom", SpotWords.Bottom(spot.Bottom)),
            Row("grass", spot.GrassHeight > 0 ? $"{format.LengthText(spot.GrassHeight)} high" : "none"),
            Row("strike zone", format.BandText(spot.StrikeZone.Top, spot.StrikeZone.Bottom) + " deep"),
            Row("current at the surface", spot.CurrentSpeed > 0 ? $"{format.CurrentText(spot.CurrentSpeed)}, flowing {SpotWords.Direction(spot.CurrentDirection)}, {ProfileName(spot.CurrentProfile)}" : "none"),
            Row("wind", spot.WindSpeed > 0 ? $"{format.WindText(spot.WindSpeed)}, blowing {SpotWords.Direction(spot.WindDirection)}" : "none"),
            Row("water", SpotWords.Water(spot.Clarity, format)),
            .. SpotWords.Clearness(spot, format).Select(found => Row(found.Label, found.Text)),
            Row("salinity", $"{UnitFormat.Number(spot.Salinity, 1)} (practical salinity)"),
            Row("temperature", format.TemperatureText(spot.TemperatureCelsius)),
            Row("sky", $"{SpotWords.Sky(spot.Sky)}, {UnitFormat.PercentText(spot.CloudCover)} cloud"),
            .. SpotWords.Found(spot).Select(found => Row(found.Label, found.Text)),
            Row("target fish", spot.TargetFish),
        ];
        List<RowView> gear =
        [
            Row("rod tip above the water", format.LengthText(tackle.RodTipHeight)),
            Row("reel", $"{UnitFormat.Number(tackle.Reel.GearRatio, 2)} to 1, {format.SizeText(tackle.Reel.LinePerTurn)} of line a turn"),
            Row("line", $"{LineName(tackle.Line.Kind)}, {format.StrengthText(tackle.Line.Strength)}, {format.DiameterText(tackle.Line.Diameter)} thick"),
            Row("leader", tackle.Leader is { } l ? $"{LineName(l.Kind)}, {format.StrengthText(l.Strength)}, {format.DiameterText(l.Diameter)} thick, {format.SizeText(l.Length)} long" : "none"),
            Row("jig heads", tackle.JigHeads.Count == 0 ? "none" : string.Join(", ", tackle.JigHeads.Select(h => h.Mass > 0 ? $"{format.HeadText(h)} {h.Metal.ToString().ToLowerInvariant()}" : h.Label))),
            Row("bodies", string.Join("; ", tackle.Bodies.Select(b => $"{b.Label} ({format.SizeText(b.Length)} long)"))),
            Row("rigging", RigWords.Of(tackle.Rigging, format)),
            Row("colours", string.Join(", ", tackle.Colours)),
        ];
        List<RowView> retrieves = [.. scenario.Presentations.Select(p => Row(
            p.Name,
            $"{RetrieveWords.Cast(p, format)}. {Count(p)} {RetrieveWords.Retrieve(p, tackle.Reel, format)}"))];
        return new TableView("Inputs", "Everything the computation was told, and what it made of the water and the sky.", [], [new GroupView("Spot", water), new GroupView("Tackle", gear), new GroupView("Retrieves", retrieves)], "wrap");
    }

    private static string Count(Presentation p) => p.CountDown is { } count
        ? $"Count {UnitFormat.SecondsNumber(count)}{(p.Fall == FallMode.TightLine ? " on a tight line" : "")}."
        : $"Let it fall to the bottom{(p.Fall == FallMode.TightLine ? " on a tight line" : "")}.";

    private static RowView Row(string head, string text) => new(head, [new CellView(text)]);

    private static double? At(IReadOnlyList<double?> values, int index) => index < values.Count ? values[index] : null;

    private static string ProfileName(CurrentProfileKind kind) => kind switch
    {
        CurrentProfileKind.Uniform => "the same at every depth",
        CurrentProfileKind.Logarithmic => "slower towards the bottom by the log law",
        _ => "slower towards the bottom by the 1/7 power law",
    };

    internal static string LineName(LineKind kind) => kind switch
    {
        LineKind.Braid => "braid",
        LineKind.Monofilament => "monofilament",
        _ => "fluorocarbon",
    };
}
