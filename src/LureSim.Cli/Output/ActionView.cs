using System.Text.Json.Serialization;
using LureSim.Cli.Hosting;
using LureSim.Coupling;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Swimming;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows how the rigs of a scenario swim.</summary>
internal static class ActionView
{
    /// <summary>Prints the table of all rigs, then the close look at one.</summary>
    public static void Write(IAnsiConsole console, RigSheet sheet, UnitFormat units)
    {
        console.MarkupLineInterpolated($"[bold]{sheet.Scenario.Title}[/]");
        ViewColumn Column(string heading, Func<RigAction, string> cell, bool right = true) => new(heading, [.. sheet.Rows.Select(row => Views.Escape(cell(row)))], right);
        Views.WriteColumns(
            console,
            "how each rig swims on its retrieve",
            Column("lure", row => Lure(row.Rig, units), false),
            [
                Column("retrieve", row => row.Rig.Presentation.Name, false),
                Column($"speed ({units.Speed.Symbol})", row => units.Speed.Number(row.Speed)),
                Column("verdict", row => SwimmingWords.Word(row.Retrieve.Report.Verdict), false),
                Column("tries", row => $"{row.Retrieve.Agreeing} of {row.Retrieve.Members.Count}"),
                Column("lean (deg)", row => Degrees(Math.Abs(row.Retrieve.Report.MeanRoll))),
                Column("off to a side (%)", row => Number(100 * Math.Abs(row.Retrieve.Report.CourseSlope), 0)),
                Column("beats/s", row => Number(row.Retrieve.Report.Frequency, 1)),
                Column("tail (+- deg)", row => Degrees(row.Retrieve.Report.TailAmplitude)),
                Column("nose (+- deg)", row => Degrees(row.Retrieve.Report.YawAmplitude)),
                Column("roll (+- deg)", row => Degrees(row.Retrieve.Report.RollAmplitude)),
                Column("spin (turns/s)", row => Number(row.Retrieve.Report.SpinRate, 2)),
                Column("twists/m", row => Number(Math.Abs(row.Retrieve.Report.LineTwistsPerMetre), 1)),
                Column("extra drag", row => $"x {Number(row.ExtraDrag, 2)}"),
                Column("on the twitch", row => row.Twitch is { } twitch ? $"{SwimmingWords.Word(twitch.Report.Verdict)}, {Degrees(twitch.Report.DartAngle)} deg" : "-", false),
            ]);
        RigFocus focus = sheet.Focus;
        console.MarkupLineInterpolated($"[bold]Rig check: {Lure(focus.Action.Rig, units)}, {focus.Action.Rig.Presentation.Name}[/]");
        Line(console, "on the retrieve", focus.Action.Retrieve, units);
        if (focus.Action.Twitch is { } own)
            Line(console, "on the twitch", own, units);
        Line(console, "on the fall", focus.Fall, units);
        Line(console, "twitched, loop knot", focus.LoopTwitch, units);
        Line(console, "twitched, snug knot", focus.SnugTwitch, units);
        foreach (string reason in SwimmingWords.Reasons(focus.Action.Retrieve.Report, units.System))
            console.MarkupLineInterpolated($"  {reason}");
        if (focus.Range is { } range)
            console.MarkupLineInterpolated($"  On a steady pull it {SwimmingWords.Range(range, units.System)}.");
        if (focus.Fixes.Count == 0)
            console.WriteLine(sheet.Scenario.Tackle.Rigging.IsClean ? "Nothing to fix." : "Fixing what is crooked would not change what it does at this speed.");
        foreach (RigFix fix in focus.Fixes)
            console.MarkupLineInterpolated($"[yellow]Fix:[/] {SwimmingWords.Fix(fix, units.System)}");
        if (focus.Knots.Count > 0)
        {
            ViewColumn Knot(string heading, Func<KnotRow, string> cell) => new(heading, [.. focus.Knots.Select(row => Views.Escape(cell(row)))], false);
            Views.WriteColumns(console, "how far it swings, rigged straight, by knot (eight tries in ten)", Knot("retrieve", row => SwimmingWords.Name(row.Retrieve)),
            [
                Knot("loop", row => SwimmingWords.Swing(row.Loop)),
                Knot("snug, light leader", row => SwimmingWords.Swing(row.SnugLight)),
                Knot("snug, heavy leader", row => SwimmingWords.Swing(row.SnugHeavy)),
                Knot("more on the loop in", row => $"{row.MoreOnLoop} of {ActionEnsemble.Tries} tries"),
            ]);
            console.MarkupLineInterpolated($"[yellow]Knot:[/] {SwimmingWords.Knots(focus.Knots)}");
        }

        foreach (FaultMap map in focus.Faults)
        {
            ViewColumn At(int speed) => new(units.SpeedText(map.Speeds[speed]), [.. Enumerable.Range(0, map.Amounts.Count).Select(a => Views.Escape(SwimmingWords.Cell(map.Cells[a, speed])))], false);
            Views.WriteColumns(console, $"what this lure does: {SwimmingWords.Name(map.Fault)}", new ViewColumn("by", [.. map.Amounts.Select(amount => Views.Escape(SwimmingWords.Amount(map.Fault, amount, units)))], false),
                [.. Enumerable.Range(0, map.Speeds.Count).Select(At)]);
        }
    }

    /// <summary>One row a rig.</summary>
    public static string ToCsv(RigSheet sheet)
    {
        var csv = new Csv("head", "body", "presentation", "speed_m_s", "line_elevation_rad", "verdict", "tries_agreeing", "tries", "mean_roll_rad", "course_slope", "frequency_hz", "tail_amplitude_rad", "yaw_amplitude_rad", "roll_amplitude_rad", "spin_turns_s", "line_twists_per_m", "extra_drag_factor", "dart_angle_rad", "dart_travel_m");
        foreach (RigAction row in sheet.Rows)
        {
            ActionReport r = row.Retrieve.Report;
            ActionReport? twitch = row.Twitch?.Report;
            csv.Row(row.Rig.Head.IsNone ? "none" : row.Rig.Head.Label, row.Rig.Body.Label, row.Rig.Presentation.Name, row.Speed, row.LineElevation, r.Verdict.ToString().ToLowerInvariant(), row.Retrieve.Agreeing, row.Retrieve.Members.Count, r.MeanRoll, r.CourseSlope, r.Frequency, r.TailAmplitude, r.YawAmplitude, r.RollAmplitude, r.SpinRate, r.LineTwistsPerMetre, row.ExtraDrag, twitch?.DartAngle ?? double.NaN, twitch?.DartTravel ?? double.NaN);
        }

        return csv.ToString();
    }

    /// <summary>A lure's name.</summary>
    internal static string Lure(Rig rig, UnitFormat units) => rig.Head.IsNone ? units.LureText(rig.Body) : $"{units.HeadText(rig.Head)}, {units.LureText(rig.Body)}";

    private static void Line(IAnsiConsole console, string when, EnsembleAssessment tries, UnitFormat units)
    {
        string text = SwimmingWords.Line(tries, units.System);
        string colour = tries.Report.IsFault ? "red" : "green";
        console.MarkupLine($"  {Views.Escape(when),-20} [{colour}]{Views.Escape(text)}[/]");
    }

    private static string Degrees(double radians) => Number(radians * 180 / Math.PI, 0);

    private static string Number(double value, int decimals) =>
        double.IsFinite(value) ? UnitFormat.Fixed(Math.Round(value, decimals) + 0.0, decimals) : DisplayUnit.None;
}

/// <summary>A check of rigs in JSON.</summary>
internal sealed record ActionJson(string Title, IReadOnlyList<ActionJson.Row> Rigs, ActionJson.Close RigCheck, IReadOnlyList<string> Files)
{
    public static ActionJson Of(ActionOutcome outcome, UnitSystem units) => new(
        outcome.Sheet.Scenario.Title,
        [.. outcome.Sheet.Rows.Select(Row.Of)],
        CloseOf(outcome.Sheet.Focus, units),
        [.. outcome.Figures.Select(file => file.Name)]);

    public static Close CloseOf(RigFocus focus, UnitSystem units) => new(
        Row.Of(focus.Action),
        SwimmingWords.Line(focus.Action.Retrieve.Report, units),
        SwimmingWords.Reasons(focus.Action.Retrieve.Report, units),
        Report.Of(focus.Fall),
        Report.Of(focus.LoopTwitch),
        Report.Of(focus.SnugTwitch),
        [.. focus.Fixes.Select(fix => new Fixed(fix.Fault, SwimmingWords.Fix(fix, units), Report.Of(fix.After)))],
        [.. focus.Knots.Select(KnotOf)],
        [.. focus.Faults.Select(FaultOf)],
        focus.Sweep is { } sweep ? new BySpeed(sweep.Speeds, [.. sweep.AsRigged.Select(r => Report.Of(r))], sweep.Clean?.Select(r => Report.Of(r)).ToArray()) : null,
        focus.Spin is { } spin ? new SpinByBend(spin.Bends, spin.Speeds, Rows(spin.SpinRate), spin.OwnBend, spin.OwnSpeed) : null);

    private static Knot KnotOf(KnotRow row) => new(row.Retrieve, Swing.Of(row.Loop), Swing.Of(row.SnugLight), Swing.Of(row.SnugHeavy), row.MoreOnLoop, row.Advice);

    private static Fault FaultOf(FaultMap map) => new(
        map.Fault, map.Amounts, map.Speeds, [.. Enumerable.Range(0, map.Amounts.Count).Select(a => Enumerable.Range(0, map.Speeds.Count).Select(s => FaultCell.Of(map.Cells[a, s])).ToArray())]);

    private static double[][] Rows(double[,] values) =>
        [.. Enumerable.Range(0, values.GetLength(0)).Select(row => Enumerable.Range(0, values.GetLength(1)).Select(column => values[row, column]).ToArray())];

    internal sealed record Row(
        HeadJson? Head,
        string Body,
        string Presentation,
        [property: JsonPropertyName("speed_m_s")] double Speed,
        [property: JsonPropertyName("line_elevation_rad")] double LineElevation,
        double ExtraDragFactor,
        Report Retrieve,
        Report? Twitch)
    {
        public static Row Of(RigAction action) => new(
            action.Rig.Head.IsNone ? null : HeadJson.Of(action.Rig.Head),
            action.Rig.Body.Label,
            action.Rig.Presentation.Name,
            action.Speed,
            action.LineElevation,
            action.ExtraDrag,
            Report.Of(action.Retrieve),
            action.Twitch is { } twitch ? Report.Of(twitch) : null);
    }

    internal sealed record Report(
        ActionVerdict Verdict,
        [property: JsonPropertyName("frequency_hz")] double Frequency,
        [property: JsonPropertyName("tail_amplitude_rad")] double TailAmplitude,
        [property: JsonPropertyName("yaw_amplitude_rad")] double YawAmplitude,
        [property: JsonPropertyName("roll_amplitude_rad")] double RollAmplitude,
        [property: JsonPropertyName("spin_turns_s")] double SpinRate,
        [property: JsonPropertyName("line_twists_per_m")] double LineTwistsPerMetre,
        [property: JsonPropertyName("mean_pitch_rad")] double MeanPitch,
        [property: JsonPropertyName("sink_rate_m_s")] double SinkRate,
        double DragFactor,
        double LiftCoefficient,
        [property: JsonPropertyName("dart_angle_rad")] double DartAngle,
        [property: JsonPropertyName("dart_travel_m")] double DartTravel,
        [property: JsonPropertyName("glide_m")] double Glide,
        [property: JsonPropertyName("mean_roll_rad")] double MeanRoll,
        double CourseSlope,
        int TriesAgreeing,
        int Tries,
        IReadOnlyList<string> Reasons)
    {
        public static Report Of(EnsembleAssessment tries) => Of(tries.Report, tries.Agreeing, tries.Members.Count);

        public static Report Of(ActionReport r, int agreeing = 1, int tries = 1) => new(
            r.Verdict, r.Frequency, r.TailAmplitude, r.YawAmplitude, r.RollAmplitude, r.SpinRate, r.LineTwistsPerMetre, r.MeanPitch, r.SinkRate, r.DragFactor, r.LiftCoefficient,
            r.DartAngle, r.DartTravel, r.Glide, r.MeanRoll, r.CourseSlope, agreeing, tries, SwimmingWords.Reasons(r, UnitSystem.Metric));
    }

    internal sealed record Fixed(RigFault Fault, string What, Report Then);

    internal sealed record Swing([property: JsonPropertyName("low_rad")] double Low, [property: JsonPropertyName("median_rad")] double Median, [property: JsonPropertyName("high_rad")] double High)
    {
        public static Swing Of(TrySpread spread) => new(spread.Low, spread.Median, spread.High);
    }

    internal sealed record Knot(TriedRetrieve Retrieve, Swing Loop, Swing SnugLightLeader, Swing SnugHeavyLeader, int MoreOnLoop, KnotAdvice Advice);

    internal sealed record FaultCell(ActionVerdict Verdict, int TriesAgreeing, int Tries, [property: JsonPropertyName("mean_roll_rad")] double MeanRoll, double CourseSlope, [property: JsonPropertyName("spin_turns_s")] double SpinRate)
    {
        public static FaultCell Of(EnsembleAssessment cell) => new(cell.Verdict, cell.Agreeing, cell.Members.Count, cell.Report.MeanRoll, cell.Report.CourseSlope, cell.Report.SpinRate);
    }

    internal sealed record Fault([property: JsonPropertyName("fault")] RigFault Kind, IReadOnlyList<double> Amounts, [property: JsonPropertyName("speeds_m_s")] IReadOnlyList<double> Speeds, IReadOnlyList<IReadOnlyList<FaultCell>> Cells);

    internal sealed record BySpeed([property: JsonPropertyName("speeds_m_s")] IReadOnlyList<double> Speeds, IReadOnlyList<Report> AsRigged, IReadOnlyList<Report>? Clean);

    internal sealed record SpinByBend(
        [property: JsonPropertyName("bends_rad")] IReadOnlyList<double> Bends,
        [property: JsonPropertyName("speeds_m_s")] IReadOnlyList<double> Speeds,
        [property: JsonPropertyName("spin_turns_s")] double[][] SpinRate,
        [property: JsonPropertyName("own_bend_rad")] double OwnBend,
        [property: JsonPropertyName("own_speed_m_s")] double OwnSpeed);

    internal sealed record Close(
        Row Rig,
        string Verdict,
        IReadOnlyList<string> Reasons,
        Report Fall,
        Report LoopKnot,
        Report SnugKnot,
        IReadOnlyList<Fixed> Fixes,
        IReadOnlyList<Knot> Knots,
        IReadOnlyList<Fault> Faults,
        BySpeed? BySpeed,
        SpinByBend? Spin);
}
