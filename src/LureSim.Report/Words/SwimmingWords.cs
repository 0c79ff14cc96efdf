using LureSim.Coupling;
using LureSim.Decision.RigChecks;
using LureSim.Report.Units;
using LureSim.Swimming;

namespace LureSim.Report.Words;

/// <summary>Puts the action of a lure into words.</summary>
public static class SwimmingWords
{
    // Way on which running off is told: a rod's reach from the boat (m), and in US units.
    private const double MetricWay = 3, UsWay = 10 * 0.3048;

    // Spin below which it is not worth saying (turns/s).
    private const double NoticeableSpin = 0.15;

    // Lean and slope of the course below which they are not worth saying (radians, m/m).
    private const double NoticeableLean = 8 * Math.PI / 180, NoticeableSlope = 0.05;

    /// <summary>A verdict in one or two words.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no verdict.</exception>
    public static string Word(ActionVerdict verdict) => verdict switch
    {
        ActionVerdict.Swims => "swims",
        ActionVerdict.Muted => "dead",
        ActionVerdict.Darts => "darts",
        ActionVerdict.Glides => "glides",
        ActionVerdict.Spins => "spins",
        ActionVerdict.Flutters => "flutters",
        ActionVerdict.Tumbles => "tumbles",
        ActionVerdict.Still => "tracks straight",
        ActionVerdict.Unknown => "not computed",
        ActionVerdict.Leans => "leans",
        ActionVerdict.RunsOff => "runs off",
        ActionVerdict.Rolls => "rolls",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
    };

    /// <summary>The verdict with its key figures, without a full stop.</summary>
    /// <param name="report">A report.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="report"/> is null.</exception>
    public static string Line(ActionReport report, UnitSystem units) => Line(report, units, true, true);

    private static string Line(ActionReport report, UnitSystem units, bool leansOneWay, bool runsOneWay)
    {
        ArgumentNullException.ThrowIfNull(report);
        var format = new UnitFormat(units);
        List<string> figures = [];
        bool spins = report.Verdict == ActionVerdict.Spins, astray = report.Verdict is ActionVerdict.Leans or ActionVerdict.RunsOff or ActionVerdict.Rolls;
        if (Math.Abs(report.SpinRate) > NoticeableSpin)
            figures.Add($"{UnitFormat.Number(Math.Abs(report.SpinRate), 1)} turns a second, {format.TwistText(Math.Abs(report.LineTwistsPerMetre))}");
        if (report.Verdict == ActionVerdict.Rolls)
            figures.Add($"{UnitFormat.DegreesText(report.RollAmplitude)} to each side");
        if (report.UpsideDown)
            figures.Add("upside down");
        else if (astray && Math.Abs(report.MeanRoll) > NoticeableLean)
            figures.Add($"{(report.Verdict == ActionVerdict.Leans ? "" : "leans ")}{Lean(report, leansOneWay)}");
        if (astray && Math.Abs(report.CourseSlope) > NoticeableSlope)
            figures.Add($"{(report.Verdict == ActionVerdict.RunsOff ? "" : "runs off ")}{Off(report, format, runsOneWay)}");
        if (report.Beats && report.Darts.Count == 0 && !spins && !astray)
            figures.Add($"{UnitFormat.Number(report.Frequency, 1)} beats a second");
        if (report.TailAmplitude > ActionReport.Noticeable)
            figures.Add($"tail {UnitFormat.DegreesText(report.TailAmplitude)} to each side");
        else if (report.YawAmplitude > ActionReport.Noticeable && report.Verdict is not ActionVerdict.Darts && !spins && !astray)
            figures.Add($"nose swings {UnitFormat.DegreesText(report.YawAmplitude)} to each side");
        if (report.RollAmplitude > 2 * ActionReport.Noticeable && report.Darts.Count == 0 && !spins && !astray)
            figures.Add($"rocks {UnitFormat.DegreesText(report.RollAmplitude)}");
        if (report.Darts.Count > 0)
            figures.Add($"{(report.Verdict == ActionVerdict.Darts ? "" : "darts ")}{UnitFormat.DegreesText(report.DartAngle)} off the line, {format.TravelText(report.DartTravel)} a twitch, glides {format.TravelText(report.Glide)}");
        return figures.Count == 0 ? Word(report.Verdict) : $"{Word(report.Verdict)}: {string.Join(", ", figures)}";
    }

    /// <summary>What a beginner is to see, in one short line: the verdict with its one figure, without a full stop.</summary>
    /// <param name="tries">The tries.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="tries"/> is null.</exception>
    public static string Brief(EnsembleAssessment tries, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(tries);
        ActionReport report = tries.Report;
        bool leansOneWay = tries.HasSide(r => r.MeanRoll), runsOneWay = tries.HasSide(r => r.CourseSlope);
        var format = new UnitFormat(units);
        string off = Math.Abs(report.CourseSlope) > NoticeableSlope ? $", runs off {Off(report, format, runsOneWay)}" : "";
        return report.Verdict switch
        {
            ActionVerdict.Swims when report.TailSwims => $"swims: tail {UnitFormat.DegreesText(report.TailAmplitude)} to each side",
            ActionVerdict.Swims => $"swims: nose swings {UnitFormat.DegreesText(report.YawAmplitude)}, rocks {UnitFormat.DegreesText(report.RollAmplitude)}",
            ActionVerdict.Muted => "dead: almost no action",
            ActionVerdict.Darts => $"darts {UnitFormat.DegreesText(report.DartAngle)} off the line, {UnitFormat.PercentText(report.Alternation)} of the time to the other side",
            ActionVerdict.Spins => $"spins: {format.TwistText(report.LineTwistsPerMetre)}",
            ActionVerdict.Still => "tracks straight, no action of its own",
            ActionVerdict.Leans => $"{(report.UpsideDown ? "runs upside down" : $"leans {Lean(report, leansOneWay)}")}{off}",
            ActionVerdict.RunsOff => $"runs off {Off(report, format, runsOneWay)}",
            ActionVerdict.Rolls => $"rolls: {UnitFormat.DegreesText(report.RollAmplitude)} to each side{off}",
            ActionVerdict.Glides => "glides without a dart",
            _ => Word(report.Verdict),
        };
    }

    /// <summary>The same in a clause: "it swims: ...".</summary>
    internal static string It(EnsembleAssessment tries, UnitSystem units) => $"it {(tries.Verdict == ActionVerdict.Muted ? "is " : "")}{Brief(tries, units)}";

    /// <summary>The way on which running off is told (m): 10 ft or 3 m.</summary>
    internal static double Way(UnitFormat format) => format.System == UnitSystem.Us ? UsWay : MetricWay;

    /// <summary>The same in words.</summary>
    internal static string WayText(UnitFormat format) => format.System == UnitSystem.Us ? "10 ft" : "3 m";

    /// <summary>The same for a dozen tries, with how many of them agree.</summary>
    /// <param name="tries">The tries.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="tries"/> is null.</exception>
    public static string Line(EnsembleAssessment tries, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(tries);
        return $"{Line(tries.Report, units, tries.HasSide(r => r.MeanRoll), tries.HasSide(r => r.CourseSlope))} ({Share(tries)})";
    }

    /// <summary>How many of the tries have the verdict, and what the others do.</summary>
    /// <param name="tries">The tries.</param>
    /// <exception cref="ArgumentNullException"><paramref name="tries"/> is null.</exception>
    public static string Share(EnsembleAssessment tries)
    {
        ArgumentNullException.ThrowIfNull(tries);
        int all = tries.Members.Count;
        if (tries.Agreeing == all) return $"in all {all} tries";
        IEnumerable<string> others = tries.Members.GroupBy(m => m.Verdict).Where(g => g.Key != tries.Verdict).OrderByDescending(g => g.Count()).Select(g => $"in {g.Count()} it {(g.Key == ActionVerdict.Muted ? "is " : "")}{Word(g.Key)}");
        return $"in {tries.Agreeing} of {all} tries; {string.Join(", ", others)}";
    }

    /// <summary>The speeds at which a lure swims, without a full stop.</summary>
    /// <param name="range">The speeds.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="range"/> is null.</exception>
    public static string Range(SwimRange range, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(range);
        var format = new UnitFormat(units);
        if (range.To == 0) return $"does not swim from {format.SpeedText(range.Speeds[0])} to {format.SpeedText(range.Speeds[^1])}";
        string up = $"swims from {format.SpeedText(range.From)} ";
        return range.Above switch
        {
            null => $"{up}up to {format.SpeedText(range.To)} and more",
            ActionVerdict.Spins => $"{up}to {format.SpeedText(range.To)}; above that it rolls over",
            ActionVerdict.Rolls => $"{up}to {format.SpeedText(range.To)}; above that it rolls far to both sides",
            ActionVerdict.Muted => $"{up}to {format.SpeedText(range.To)}; above that it hardly moves",
            { } above => $"{up}to {format.SpeedText(range.To)}; above that it {Word(above)}",
        };
    }

    /// <summary>What the verdict rests on, a sentence each.</summary>
    /// <param name="report">A report.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="report"/> is null.</exception>
    public static IReadOnlyList<string> Reasons(ActionReport report, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(report);
        var format = new UnitFormat(units);
        return [.. report.Findings.Select(finding => Reason(report, finding, format))];
    }

    /// <summary>Why a window could not be computed, as one sentence.</summary>
    /// <param name="trace">A trace that did not complete.</param>
    /// <exception cref="ArgumentNullException"><paramref name="trace"/> is null.</exception>
    public static string Failure(ActionTrace trace) => Reasons(ActionAnalysis.Of(trace), UnitSystem.Metric)[0];

    /// <summary>What to do about a fault, for hands, and what it changes.</summary>
    /// <param name="fix">The fix.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="fix"/> is null.</exception>
    public static string Fix(RigFix fix, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(fix);
        double by = fix.Amount;
        string side = Grammar.Side(by), other = Grammar.Side(-by), length = new UnitFormat(units).RulerText(by), angle = UnitFormat.AngleText(by);
        string what = fix.Fault switch
        {
            RigFault.ExitSideways => $"pull the bait off and rig it again with the hook {length} farther to the {other}: it must leave on the seam",
            RigFault.ExitAbove => $"pull the bait off and rig it again with the hook out {length} {(by > 0 ? "lower" : "higher")}, where the bait lies straight",
            RigFault.Bend => $"straighten the bait: it is bent {angle} to the {side}; a minute in hot water, then flat until it is cold, or take a straight one",
            RigFault.PointLean => $"turn the hook in the bait until its point stands straight up on the seam: it leans {angle} to the {side}",
            RigFault.HeadTurn => $"turn the head until it sits in line with the bait: it points {angle} to the {side}",
            RigFault.PulledUp => $"slide the bait {length} back toward the bend of the hook, until it lies flat without a bunch",
            RigFault.Shank => $"take a hook with a shorter shank: it holds {UnitFormat.PercentText(by)} of the bait, {UnitFormat.PercentText(fix.Common)} leaves the rear free",
            RigFault.HookGape => $"take a smaller hook: its gap of {length} stands too far off this bait, {new UnitFormat(units).RulerText(fix.Common)} fits",
            RigFault.WeightStation => $"take a hook with its weight {(by > fix.Common ? "farther forward" : "farther back")}: it sits {UnitFormat.PercentText(by)} of the way down the shank, {UnitFormat.PercentText(fix.Common)} is usual",
            RigFault.TailLost => $"put on a bait with a whole tail: {UnitFormat.PercentText(by)} of this one is missing",
            RigFault.Several => "rig it again from the start, with a straight bait: hook out on the seam, head in line, no bunch; one of the faults alone would not do",
            _ => throw new ArgumentOutOfRangeException(nameof(fix), fix.Fault, "Not a fault."),
        };
        return $"{what}. Fixed, it {Line(fix.After, units)}; as rigged, it {Line(fix.Before.Report, units)}.";
    }

    /// <summary>The name of a fault.</summary>
    /// <param name="fault">The fault.</param>
    public static string Name(RigFault fault) => fault switch
    {
        RigFault.ExitSideways => "hook out to the left",
        RigFault.ExitAbove => "hook out too high",
        RigFault.Bend => "bait bent to the left",
        RigFault.PointLean => "hook point leaning",
        RigFault.HeadTurn => "head turned to the left",
        RigFault.PulledUp => "pulled up too far",
        RigFault.Shank => "share of the bait on the shank",
        RigFault.Several => "several faults",
        RigFault.HookGape => "hook gap",
        RigFault.WeightStation => "weight on the shank, from the eye",
        RigFault.TailLost => "share of the tail that is missing",
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault."),
    };

    /// <summary>An amount of a fault.</summary>
    /// <param name="fault">The fault.</param>
    /// <param name="amount">How much: metres, radians or a share.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="format"/> is null.</exception>
    public static string Amount(RigFault fault, double amount, UnitFormat format) => fault switch
    {
        RigFault.ExitSideways or RigFault.ExitAbove or RigFault.PulledUp or RigFault.HookGape => (format ?? throw new ArgumentNullException(nameof(format))).RulerText(amount),
        RigFault.Bend or RigFault.PointLean or RigFault.HeadTurn => UnitFormat.AngleText(amount),
        RigFault.Shank or RigFault.WeightStation or RigFault.TailLost => UnitFormat.PercentText(amount),
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "It has no amount."),
    };

    /// <summary>What a lure does in a cell of a map of faults, in a few letters: the verdict with its size, and how many tries agree where not all do.</summary>
    /// <param name="cell">The tries.</param>
    /// <exception cref="ArgumentNullException"><paramref name="cell"/> is null.</exception>
    public static string Cell(EnsembleAssessment cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        ActionReport r = cell.Report;
        string size = cell.Verdict switch
        {
            ActionVerdict.Leans => $" {Degrees(Math.Abs(r.MeanRoll))}°",
            ActionVerdict.RunsOff => $" {UnitFormat.PercentText(Math.Abs(r.CourseSlope))}",
            ActionVerdict.Spins => $" {F(Math.Abs(r.SpinRate), 1)}/s",
            _ => "",
        };
        return $"{Word(cell.Verdict)}{size}{(cell.Agreeing < cell.Members.Count ? $" ({cell.Agreeing} of {cell.Members.Count})" : "")}";
    }

    /// <summary>The name of a retrieve on which knots are compared.</summary>
    /// <param name="retrieve">The retrieve.</param>
    public static string Name(TriedRetrieve retrieve) => retrieve switch
    {
        TriedRetrieve.Steady => "steady",
        TriedRetrieve.StopAndGo => "stop and go",
        TriedRetrieve.TwitchTwitchPause => "twitch-twitch-pause",
        TriedRetrieve.Fall => "fall",
        _ => throw new ArgumentOutOfRangeException(nameof(retrieve), retrieve, "Not a retrieve."),
    };

    /// <summary>A swing over the tries.</summary>
    /// <param name="swing">The swing (radians).</param>
    public static string Swing(TrySpread swing) => $"{Degrees(swing.Median)}° ({Degrees(swing.Low)} to {Degrees(swing.High)})";

    /// <summary>What the comparison of knots advises, with a sentence where practice says otherwise.</summary>
    /// <param name="rows">The comparison.</param>
    /// <exception cref="ArgumentNullException"><paramref name="rows"/> is null.</exception>
    public static string Knots(IReadOnlyList<KnotRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        string Of(KnotAdvice advice) => Grammar.Join(rows.Where(row => row.Advice == advice).Select(row => Place(row.Retrieve)));
        List<string> parts = [];
        if (Of(KnotAdvice.Loop) is { Length: > 0 } loop) parts.Add($"tie a loop {loop}");
        if (Of(KnotAdvice.Snug) is { Length: > 0 } snug) parts.Add($"a snug knot gives it more action {snug}");
        if (Of(KnotAdvice.Either) is { Length: > 0 } either) parts.Add($"{either} it hardly matters");
        string[] parting = [.. rows.Where(row => row.Retrieve is TriedRetrieve.TwitchTwitchPause or TriedRetrieve.Fall && row.Advice != KnotAdvice.Loop).Select(row => Place(row.Retrieve))];
        string text = Grammar.Sentence(string.Join("; ", parts));
        return parting.Length == 0 ? text : $"{text} Practice ties a loop {Grammar.Join(parting)} all the same; for this bait the model does not see why.";
    }

    private static string Place(TriedRetrieve retrieve) => retrieve switch
    {
        TriedRetrieve.Steady => "on a steady retrieve",
        TriedRetrieve.StopAndGo => "on stop and go",
        TriedRetrieve.TwitchTwitchPause => "for twitch-twitch-pause",
        TriedRetrieve.Fall => "for the fall",
        _ => throw new ArgumentOutOfRangeException(nameof(retrieve), retrieve, "Not a retrieve."),
    };

    // What a guide can change when the motion itself cannot be computed.
    private const string CheckTheLure = "Reel slower or twitch more gently, and check the lure's size, weight, lip and rigging in the scenario for a slip.";

    private static string Reason(ActionReport r, ActionFinding finding, UnitFormat format) => finding.Kind switch
    {
        ActionFindingKind.Cancelled => "Stopped before it could be judged.",
        ActionFindingKind.OutOfSteps => $"It moves too wildly to be followed: given up after {F(finding.Value, 1)} of {F(finding.Other, 1)} s of swimming. {CheckTheLure}",
        ActionFindingKind.Lost => $"It could not be followed past the first {F(finding.Value, 1)} s of swimming: it is thrown about harder than the model can follow. {CheckTheLure}",
        ActionFindingKind.WindowTooShort => "It was watched for too short a time to be judged; let the move or the retrieve last longer.",
        ActionFindingKind.TurnsOver => $"It turns over {F(Math.Abs(r.SpinRate), 1)} times a second to the {(r.SpinRate > 0 ? "right" : "left")}: {format.TwistText(r.LineTwistsPerMetre)}.",
        ActionFindingKind.BodyBent => $"The bait is bent {Degrees(finding.Value)}° on the hook; the weight below it cannot hold it upright at this speed.",
        ActionFindingKind.HeadTurned => $"The head points {Degrees(finding.Value)}° to the side.",
        ActionFindingKind.Twitched => $"Each twitch moves it {format.TravelText(r.DartTravel)}, turns the nose {Degrees(finding.Value)}° off the pull and leads {Degrees(r.DartAngle)}° to the side; it glides {format.TravelText(r.Glide)} on slack line.",
        ActionFindingKind.ChangesSides => $"{UnitFormat.PercentText(r.Alternation)} of the darts go to the other side than the one before.",
        ActionFindingKind.TooLittleForDart => $"A dart would turn the nose {Degrees(finding.Value)}° or more.",
        ActionFindingKind.TailBeats => $"The tail beats {F(r.Frequency, 1)} times a second, {Degrees(r.TailAmplitude)}° to each side; the bait wags {Degrees(r.YawAmplitude)}° and rocks {Degrees(r.RollAmplitude)}°.",
        ActionFindingKind.TailHardlyMoves => $"The tail moves only {Degrees(r.TailAmplitude, 1)}° to each side; from {Degrees(finding.Value)}° on it is called swimming.",
        ActionFindingKind.LittleIsFree => $"Only {UnitFormat.PercentText(finding.Value)} of the length is free to bend behind the hook.",
        ActionFindingKind.Wobbles => $"It wobbles {F(r.Frequency, 1)} times a second, {Degrees(r.YawAmplitude)}° in heading and {Degrees(r.RollAmplitude)}° in roll.",
        ActionFindingKind.UpsideDown => "It runs on its back.",
        ActionFindingKind.LiesOver => $"It leans {Lean(r)} all the while.",
        ActionFindingKind.RollsFar => $"It rocks {Degrees(r.RollAmplitude)}° to each side without going over.",
        ActionFindingKind.RunsAside => $"It runs off {Off(r, format)}.",
        ActionFindingKind.RunsStraight => $"It tracks straight: nose within {Degrees(r.YawAmplitude, 1)}°, roll within {Degrees(r.RollAmplitude, 1)}°.",
        ActionFindingKind.EndOverEnd => $"It turns end over end, {F(finding.Value, 1)} times a second, and sinks {format.SpeedText(r.SinkRate)}.",
        ActionFindingKind.Rocks => $"It rocks {F(r.Frequency, 1)} times a second as it sinks {format.SpeedText(r.SinkRate)}: {Degrees(r.PitchAmplitude)}° in pitch, {Degrees(r.RollAmplitude)}° in roll, {Degrees(r.YawAmplitude)}° in heading.",
        ActionFindingKind.SlidesAway => $"It slides away as it sinks {format.SpeedText(r.SinkRate)}, nose {Degrees(Math.Abs(r.MeanPitch))}° {Nose(r)}{(r.SpiralRadius > 0 ? $" on a spiral of {format.TravelText(r.SpiralRadius)} radius" : "")}.",
        ActionFindingKind.SinksStraight => $"It sinks straight at {format.SpeedText(r.SinkRate)}, nose {Degrees(Math.Abs(r.MeanPitch))}° {Nose(r)}.",
        _ => throw new ArgumentOutOfRangeException(nameof(finding), finding.Kind, "Not a finding."),
    };

    // The left side up is a lean to the right.
    private static string Lean(ActionReport report, bool sided = true) => $"{Degrees(Math.Abs(report.MeanRoll))}° to {Side(-report.MeanRoll, sided)}";

    private static string Side(double value, bool sided) => sided ? $"the {Grammar.Side(value)}" : "one side or the other";

    private static string Off(ActionReport report, UnitFormat format, bool sided = true)
    {
        return $"{format.TravelText(Math.Abs(report.CourseSlope) * Way(format))} to {Side(report.CourseSlope, sided)} in {WayText(format)}";
    }

    private static string Nose(ActionReport report) => report.MeanPitch < 0 ? "down" : "up";

    private static string F(double value, int decimals) => UnitFormat.Fixed(value, decimals);

    private static string Degrees(double radians, int decimals = 0) => UnitFormat.Number(radians * 180 / Math.PI, decimals);
}
