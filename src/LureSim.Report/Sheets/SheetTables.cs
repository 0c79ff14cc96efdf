using LureSim.Decision;
using LureSim.Decision.Search;
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

    /// <summary>Seconds to each depth for some heads; with the bail open first, in brackets with it closed.</summary>
    public static TableView Fall(FallTable fall, IReadOnlyList<FallColumn> columns, StrikeZone zone, string label, UnitFormat format)
    {
        List<RowView> rows = [new RowView("sinks at", [.. columns.Select(c => new CellView(format.SinkText(fall.SinkRate(c))))])];
        for (int i = 0; i < fall.Depths.Count; i++)
        {
            double depth = fall.Depths[i];
            bool inZone = zone.Contains(depth);
            rows.Add(new RowView(
                format.LengthText(depth) + (inZone ? " zone" : ""),
                [.. columns.Select(c => new CellView(UnitFormat.SecondsNumber(At(c.SlackLineSeconds, i)), $"({UnitFormat.SecondsNumber(At(c.TightLineSeconds, i))})"))],
                inZone ? "zone" : ""));
        }

        return new TableView(
            label,
            $"Seconds after it hits the water, bail open (bail closed).{(rows.Skip(1).SelectMany(row => row.Cells).Any(cell => cell.Text == UnitFormat.None) ? $" {UnitFormat.None} never gets there." : "")}",
            [new ColumnView("depth", IsText: true), .. columns.Select(c => new ColumnView(format.HeadText(c.Head)))],
            [new GroupView("", rows)],
            "stick",
            Short: rows.Count <= LongestUnbroken);
    }

    /// <summary>The choice and one size to each side, at depths few enough for a glance; null where the table lacks the choice.</summary>
    public static TableView? SinkCounts(Sheet sheet, UnitFormat format)
    {
        const int most = 8;
        if (sheet.Fall is not { Columns.Count: > 0 } fall)
            return null;
        List<FallColumn> all = [.. fall.Columns.OrderBy(c => c.Head.Mass)];
        int at = all.FindIndex(c => c.Head == sheet.Choice.First.Rig.Head);
        if (at < 0)
            return null;
        int every = Math.Max(1, (int)Math.Ceiling(fall.Depths.Count / (double)most));

        // From the bottom up, so that the bottom is among them.
        int[] rows = [.. Enumerable.Range(0, fall.Depths.Count).Where(i => (fall.Depths.Count - 1 - i) % every == 0)];
        FallColumn[] columns = [.. all.Skip(Math.Max(0, at - 1)).Take(at == 0 ? 2 : 3).Select(c => c with
        {
            SlackLineSeconds = [.. rows.Select(i => At(c.SlackLineSeconds, i))],
            TightLineSeconds = [.. rows.Select(i => At(c.TightLineSeconds, i))],
        })];
        return Fall(new FallTable([.. rows.Select(i => fall.Depths[i])], columns), columns, sheet.Scenario.Spot.StrikeZone, "Sink counts", format);
    }

    /// <summary>Everything compared, the choice first: by the numbers of the tries; what was looked at once stands below and has no score.</summary>
    public static TableView Compared(Sheet sheet, UnitFormat format)
    {
        IReadOnlyList<TriedRig> all = sheet.Compared;
        bool grass = sheet.Scenario.Spot.GrassHeight > 0;
        bool bodies = all.Select(row => row.Rig.Body).Distinct().Count() > 1;
        bool across = all.Any(row => row.Numbers.DriftAcross.Median > 0.5);
        int tries = all.Count > 0 ? all[0].Numbers.Tries : 1;
        List<ColumnView> columns = [new("head", IsText: true)];
        if (bodies)
            columns.Add(new("lure", IsText: true));
        columns.AddRange([new("retrieve and what it does", IsText: true), new("in zone"), new("on bottom")]);
        if (grass)
            columns.Add(new("in grass"));
        columns.AddRange([new("to zone (s)"), new($"typical depth ({format.Length.Symbol})")]);
        if (across)
            columns.Add(new($"sideways ({format.Length.Symbol})"));
        columns.Add(new(tries > 1 ? "average score" : "score"));

        GroupView[] groups = [.. all.GroupBy(row => row.IsJudged).Select(group => new GroupView(group.Key ? "" : "Looked at once, in the conditions you gave", [.. group.Select(Row)]))];
        string ranges = tries > 1 ? $"Over {tries} what-if tries: typical, and 8 times in 10 between. " : "";
        return new TableView(
            "Everything compared",
            $"{ranges}Shares of the retrieve, from the first turn of the handle to the rod tip, each worked as suits it best. Score 0 to 100; the choice is starred.",
            columns,
            groups,
            "stick",
            Short: all.Count <= LongestUnbroken);

        RowView Row(TriedRig row)
        {
            TryNumbers v = row.Numbers;
            string verdict = row.Run is { } run ? TrackWords.Verdict(run) + (run.Track.Status == SimulationStatus.Completed ? "" : $" ({TrackWords.EndOrStatus(run.Track)})") : "";
            List<CellView> cells = [];
            if (bodies)
                cells.Add(new(format.LureText(row.Rig.Body), Class: "text"));
            cells.AddRange([new(row.Rig.Presentation.Name, row.IsJudged && tries > 1 ? "" : verdict, "words"), Cell(v.ZoneShare, UnitFormat.Share, true), Cell(v.BottomShare, UnitFormat.Share, true)]);
            if (grass)
                cells.Add(Cell(v.GrassShare, UnitFormat.Share, true));
            cells.AddRange([Cell(v.TimeToZone, UnitFormat.Seconds), Cell(v.MedianDepth, format.Length)]);
            if (across)
                cells.Add(Cell(v.DriftAcross, format.Length));
            cells.Add(new(row.IsJudged ? UnitFormat.Number(100 * v.Score.Mean, 0) : ""));
            return new RowView(format.HeadText(row.Rig.Head), cells, row.Rig == sheet.Choice.First.Rig ? "first" : "");
        }

        static CellView Cell(Interval figure, DisplayUnit unit, bool marked = false) => new(UncertaintyWords.Band(figure, unit, marked));
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
            groups.Add(new("", [.. box.Missing.Select(m => Of(m.Candidate, m == box.Gap ? "not in your box: worth adding" : "not in your box", ""))]));
        return new TableView(
            "Your box, ranked",
            "Each jig head at its best retrieve, best first; then common sizes you don't have, fished like the choice.",
            [new("head", IsText: true), new("retrieve", IsText: true), new("in zone"), new("to zone"), new("score")],
            groups,
            "stick",
            Short: box.Heads.Count + box.Missing.Count <= LongestUnbroken);
    }

    /// <summary>Where along the cast the choice spends its retrieve; null over an even bottom.</summary>
    public static TableView? Stretches(Sheet sheet, UnitFormat format)
    {
        IReadOnlyList<StretchCoverage> stretches = StretchCoverage.Of(sheet.Scenario.Spot, sheet.Choice.First);
        if (stretches.Count == 0)
            return null;
        bool grass = stretches.Any(stretch => stretch.Grass > 0);
        List<ColumnView> columns = [new("from the rod", IsText: true), new("depth and bottom", IsText: true), new("there"), new("in zone"), new("on bottom")];
        if (grass)
            columns.Add(new("in grass"));
        return new TableView(
            "Along the cast",
            "Shares of the whole retrieve of the choice, by stretch of the bottom, nearest first.",
            columns,
            [
                new GroupView("", [.. stretches.Select(stretch => new RowView(
                    double.IsInfinity(stretch.To) ? $"beyond {format.HandText(stretch.From)}" : format.HandBand(stretch.From, stretch.To),
                    [
                        new CellView(format.HandBand(Math.Min(stretch.NearDepth, stretch.FarDepth), Math.Max(stretch.NearDepth, stretch.FarDepth)), SpotWords.Bottom(stretch.Bottom) + (stretch.Grass > 0 ? $", grass {format.LengthText(stretch.Grass)}" : "") + (stretch.Name is { } name ? $", {name}" : ""), "words"),
                        new CellView(UnitFormat.PercentText(stretch.Share)),
                        new CellView(UnitFormat.PercentText(stretch.ZoneShare)),
                        new CellView(UnitFormat.PercentText(stretch.BottomShare)),
                        .. grass ? [new CellView(UnitFormat.PercentText(stretch.GrassShare))] : Array.Empty<CellView>(),
                    ]))]),
            ],
            "stick",
            Short: stretches.Count <= LongestUnbroken);
    }

    /// <summary>How the choice passes what stands beside the cast; null where there is nothing.</summary>
    public static TableView? Structures(Sheet sheet, UnitFormat format)
    {
        IReadOnlyList<StructurePass> passes = StructurePass.Of(sheet.Scenario.Spot, sheet.Choice.First.Rig, sheet.Choice.First.Track);
        return passes.Count == 0 ? null : new TableView(
            "What stands in the water",
            $"For the choice, over casts that land about {UnitFormat.Number(StructurePass.AimError * 180 / Math.PI, 0)}° to either side of where they are aimed.",
            [new("structure", IsText: true), new("from the rod", IsText: true), new("within reach"), new("nearest"), new("in its shade"), new("hangs up")],
            [
                new GroupView("", [.. passes.Select(pass => new RowView(
                    StructureWords.Name(pass.Structure),
                    [
                        new CellView(format.HandBand(pass.Structure.From, pass.Structure.To), StructureWords.Side(pass.Structure, format), "words"),
                        new CellView(UnitFormat.SecondsText(pass.ReachTime)),
                        new CellView(format.HandText(pass.Nearest)),
                        new CellView(UnitFormat.PercentText(pass.ShadeShare)),
                        new CellView(UnitFormat.PercentText(pass.SnagChance)),
                    ]))]),
            ],
            "stick",
            Short: true);
    }

    /// <summary>The words of the colour chart.</summary>
    public static TableView Colours(ColourPlate plate, UnitFormat format) => new(
        format.Say($"Colors in words"),
        format.Say($"How strong each color still is to a person's eye down there, with its lightness from 0 to 100."),
        [new ColumnView("depth", IsText: true), .. plate.Colours.Select(c => new ColumnView(c))],
        [new GroupView("", [.. plate.Depths.Select((d, i) => new RowView(d <= 0 ? "surface" : format.LengthText(d), [.. plate.Cells[i].Select(c => new CellView(c.Word, $"({UnitFormat.Number(c.Lightness, 0)})"))]))])],
        "stick",
        Summary: format.Say($"The colors as a table of words"));

    /// <summary>What went in.</summary>
    public static TableView Inputs(Scenario scenario, UnitFormat format)
    {
        Spot spot = scenario.Spot;
        TackleBox tackle = scenario.Tackle;
        List<RowView> water =
        [
            Row("depth", spot.Profile is { IsEven: false } profile ? string.Join(", ", profile.Points.Select(point => $"{format.LengthText(point.Depth)} at {format.LengthText(point.Distance)} out")) : format.LengthText(spot.Depth)),
            Row("bottom", SpotWords.Bottoms(spot)),
            Row("grass", SpotWords.GrassText(spot, format) is { Length: > 0 } grass ? grass["grass ".Length..] : "none"),
            Row("strike zone", SpotWords.Zone(spot, format) + (SpotWords.Zone(spot, format).EndsWith("bottom", StringComparison.Ordinal) ? "" : " deep")),
            .. spot.Structures.Count > 0 ? [Row("structure", StructureWords.All(spot, format))] : Array.Empty<RowView>(),
            Row("current at the surface", spot.CurrentSpeed > 0 ? $"{format.CurrentText(spot.CurrentSpeed)}, {SpotWords.Direction(spot.CurrentDirection, format.System)}, {ProfileName(spot.CurrentProfile, format.System)}" : "none"),
            Row("wind", spot.WindSpeed > 0 ? $"{format.WindText(spot.WindSpeed)}, blowing {SpotWords.Direction(spot.WindDirection, format.System)}" : "none"),
            Row("water", SpotWords.Water(spot.Clarity, format)),
            .. SpotWords.Clearness(spot, format).Select(found => Row(found.Label, found.Text)),
            Row("salinity", $"{UnitFormat.Number(spot.Salinity, 1)} ppt{(spot.Assumed.HasFlag(SpotAssumptions.Salinity) ? " (not given: usual inshore)" : "")}"),
            Row("temperature", $"{format.TemperatureText(spot.TemperatureCelsius)}{(spot.Assumed.HasFlag(SpotAssumptions.Temperature) ? " (not given: usual for the season)" : "")}"),
            Row("sky", $"{SpotWords.Sky(spot.Sky)}, {UnitFormat.PercentText(spot.CloudCover)} cloud"),
            .. SpotWords.Found(spot, format.System).Select(found => Row(found.Label, found.Text)),
            Row("fish", FishWords.Everyday(spot.TargetFish)),
        ];
        List<RowView> gear =
        [
            Row("rod tip above the water", format.LengthText(tackle.RodTipHeight)),
            Row("reel", $"{UnitFormat.Number(tackle.Reel.GearRatio, 2)} to 1, {format.SizeText(tackle.Reel.LinePerTurn)} per turn"),
            Row("line", $"{TackleWords.LineName(tackle.Line.Kind)}, {format.StrengthText(tackle.Line.Strength)}, {format.DiameterText(tackle.Line.Diameter)} thick"),
            Row("leader", tackle.Leader is { } l ? $"{TackleWords.LineName(l.Kind)}, {format.StrengthText(l.Strength)}, {format.DiameterText(l.Diameter)} thick, {format.SizeText(l.Length)} long" : "none"),
            Row("jig heads", tackle.JigHeads.Count == 0 ? "none" : string.Join(", ", tackle.JigHeads.Select(h => h.Mass > 0 ? $"{format.HeadText(h)} {h.Metal.ToString().ToLowerInvariant()}" : h.Label))),
            Row("lures", string.Join("; ", tackle.Bodies.Select(b => format.LureText(b) is var name && name == b.Label ? $"{name}, {format.SizeText(b.Length)} long" : name))),
            Row("rigging", RigWords.Of(tackle.Rigging, format)),
            Row(format.Say($"colors"), string.Join(", ", tackle.Colours)),
        ];
        List<RowView> retrieves = [.. scenario.Presentations.Select(p => Row(
            p.Name,
            $"{RetrieveWords.Cast(p, format)}. {Count(p)} {RetrieveWords.Retrieve(p, tackle.Reel, format)}"))];
        return new TableView("Your inputs", "As you gave them, with what follows from them.", [], [new GroupView("Spot", water), new GroupView("Tackle", gear), new GroupView("Retrieves", retrieves)], "wrap");
    }

    private static string Count(Presentation p)
    {
        string how = p.Fall == FallMode.TightLine ? "Bail closed" : "Bail open";
        return p.CountDown switch
        {
            null => $"{how}, let it sink to the bottom.",
            < 0.5 => "No count.",
            { } count => $"{how}, {RetrieveWords.Count(count)}.",
        };
    }

    private static RowView Row(string head, string text) => new(head, [new CellView(text)]);

    private static double? At(IReadOnlyList<double?> values, int index) => index < values.Count ? values[index] : null;

    private static string ProfileName(CurrentProfileKind kind, UnitSystem units) => kind switch
    {
        CurrentProfileKind.Uniform => "the same at every depth",
        CurrentProfileKind.Logarithmic => units.Spell("slows toward the bottom (log law)"),
        CurrentProfileKind.Power => units.Spell("slows toward the bottom"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a profile."),
    };
}
