using LureSim.Decision.RigChecks;
using LureSim.Report.Units;
using LureSim.Swimming;

namespace LureSim.Report.Words;

/// <summary>Puts the action of a lure into words.</summary>
public static class SwimmingWords
{
    // Spin below which it is not worth saying (turns/s).
    private const double NoticeableSpin = 0.15;

    /// <summary>A verdict in one or two words.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no verdict.</exception>
    public static string Word(ActionVerdict verdict) => verdict switch
    {
        ActionVerdict.Swims => "swims",
        ActionVerdict.Muted => "hardly swims",
        ActionVerdict.Darts => "darts",
        ActionVerdict.Glides => "glides",
        ActionVerdict.Spins => "spins",
        ActionVerdict.Flutters => "flutters",
        ActionVerdict.Tumbles => "tumbles",
        ActionVerdict.Still => "runs straight",
        ActionVerdict.Unknown => "not computed",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
    };

    /// <summary>The verdict with its key figures, without a full stop.</summary>
    /// <param name="report">A report.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="report"/> is null.</exception>
    public static string Line(ActionReport report, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(report);
        var format = new UnitFormat(units);
        List<string> figures = [];
        if (Math.Abs(report.SpinRate) > NoticeableSpin)
            figures.Add($"{UnitFormat.Number(Math.Abs(report.SpinRate), 1)} turns a second, {format.TwistText(Math.Abs(report.LineTwistsPerMetre))}");
        if (report.Beats && report.Darts.Count == 0 && report.Verdict is not ActionVerdict.Spins)
            figures.Add($"{UnitFormat.Number(report.Frequency, 1)} beats a second");
        if (report.TailAmplitude > ActionReport.Noticeable)
            figures.Add($"tail {UnitFormat.DegreesText(report.TailAmplitude)} to each side");
        else if (report.YawAmplitude > ActionReport.Noticeable && report.Verdict is not (ActionVerdict.Spins or ActionVerdict.Darts))
            figures.Add($"nose {UnitFormat.DegreesText(report.YawAmplitude)} to each side");
        if (report.RollAmplitude > 2 * ActionReport.Noticeable && report.Darts.Count == 0 && report.Verdict is not ActionVerdict.Spins)
            figures.Add($"rolls {UnitFormat.DegreesText(report.RollAmplitude)}");
        if (report.Darts.Count > 0)
            figures.Add($"{(report.Verdict == ActionVerdict.Darts ? "" : "darts ")}{UnitFormat.DegreesText(report.DartAngle)} off the line, {format.TravelText(report.DartTravel)} a twitch, glides {format.TravelText(report.Glide)}");
        return figures.Count == 0 ? Word(report.Verdict) : $"{Word(report.Verdict)}: {string.Join(", ", figures)}";
    }

    /// <summary>What the verdict rests on, a sentence each.</summary>
    /// <param name="report">A report.</param>
    /// <exception cref="ArgumentNullException"><paramref name="report"/> is null.</exception>
    public static IReadOnlyList<string> Reasons(ActionReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return [.. report.Findings.Select(finding => Reason(report, finding))];
    }

    /// <summary>Why a window could not be computed, as one sentence.</summary>
    /// <param name="trace">A trace that did not complete.</param>
    /// <exception cref="ArgumentNullException"><paramref name="trace"/> is null.</exception>
    public static string Failure(ActionTrace trace) => Reasons(ActionAnalysis.Of(trace))[0];

    /// <summary>What to do about a fault, and what it changes.</summary>
    /// <param name="mend">The fault.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="mend"/> is null.</exception>
    public static string Mend(Mending mend, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(mend);
        double by = mend.Amount;
        string side = Grammar.Side(by);
        string what = mend.Fault switch
        {
            RigFault.ExitSideways => $"Bring the hook out on the centre line: it is {UnitFormat.MillimetresText(by)} {side} of it",
            RigFault.ExitAbove => $"Bring the hook out {UnitFormat.MillimetresText(by)} {(by > 0 ? "lower" : "higher")}, so that the body lies straight",
            RigFault.Bend => $"Straighten the body: it is bent {UnitFormat.DegreesText(Math.Abs(by))} to the {side}",
            RigFault.PointLean => $"Turn the hook so that its point stands straight up: it leans {UnitFormat.DegreesText(Math.Abs(by))} to the {side}",
            RigFault.HeadTurn => $"Set the head in line with the body: it is turned {UnitFormat.DegreesText(Math.Abs(by))} to the {side}",
            RigFault.PulledUp => $"Pull the bait back by {UnitFormat.MillimetresText(by)}, so that it lies without a bunch",
            RigFault.Shank => $"Take a shorter hook: its shank is {UnitFormat.Number(100 * by, 0)} % of the body, {UnitFormat.Number(100 * mend.Common, 0)} % leaves the tail free",
            RigFault.Knot => "Tie a loop knot in place of the snug one",
            _ => throw new ArgumentOutOfRangeException(nameof(mend), mend.Fault, "Not a fault."),
        };
        string now = Line(mend.Before, units), then = Line(mend.After, units);
        return now == then ? $"{what}." : $"{what}. Then it {then}; now it {now}.";
    }

    // What a guide can change when the motion itself cannot be computed.
    private const string CheckTheLure = "Reel slower or twitch more gently, and check the lure's size, weight, lip and rigging in the scenario for a slip.";

    // Lengths in cm and m in either system: these sentences are for the bench.
    private static string Reason(ActionReport r, ActionFinding finding) => finding.Kind switch
    {
        ActionFindingKind.Cancelled => "Stopped before it could be judged.",
        ActionFindingKind.OutOfSteps => $"It moves too wildly to be followed: given up after {F(finding.Value, 1)} of {F(finding.Other, 1)} s of swimming. {CheckTheLure}",
        ActionFindingKind.Lost => $"It could not be followed past the first {F(finding.Value, 1)} s of swimming: it is thrown about harder than the model can follow. {CheckTheLure}",
        ActionFindingKind.WindowTooShort => "It was watched for too short a time to be judged; let the move or the retrieve last longer.",
        ActionFindingKind.TurnsOver => $"It turns over {F(Math.Abs(r.SpinRate), 1)} times a second to the {(r.SpinRate > 0 ? "right" : "left")} and puts {F(r.LineTwistsPerMetre, 1)} twists into each metre of line.",
        ActionFindingKind.BodyBent => $"The body is bent by {Degrees(finding.Value)} degrees on the hook; weight below buoyancy cannot hold it upright at this speed.",
        ActionFindingKind.HeadTurned => $"The head points {Degrees(finding.Value)} degrees to the side.",
        ActionFindingKind.Twitched => $"Each twitch moves it {Centimetres(r.DartTravel)} cm, turns the nose {Degrees(finding.Value)} degrees off the pull and leads {Degrees(r.DartAngle)} degrees aside; it glides {Centimetres(r.Glide)} cm on slack line.",
        ActionFindingKind.ChangesSides => $"{F(100 * r.Alternation, 0)} % of the darts go to the other side than the one before.",
        ActionFindingKind.TooLittleForDart => $"A dart would turn the nose by {Degrees(finding.Value)} degrees or more.",
        ActionFindingKind.TailBeats => $"The tail beats {F(r.Frequency, 1)} times a second, {Degrees(r.TailAmplitude)} degrees to each side; the body yaws {Degrees(r.YawAmplitude)} and rolls {Degrees(r.RollAmplitude)} degrees.",
        ActionFindingKind.TailHardlyMoves => $"The tail moves only {Degrees(r.TailAmplitude, 1)} degrees to each side; from {Degrees(finding.Value)} degrees on it is called swimming.",
        ActionFindingKind.LittleIsFree => $"Only {F(100 * finding.Value, 0)} % of the length is free to bend behind the hook.",
        ActionFindingKind.Wobbles => $"It wobbles {F(r.Frequency, 1)} times a second, {Degrees(r.YawAmplitude)} degrees in heading and {Degrees(r.RollAmplitude)} degrees in roll.",
        ActionFindingKind.RunsAside => $"It runs {Centimetres(Math.Abs(r.SideOffset))} cm to the {Grammar.Side(r.SideOffset)} of the line on {F(finding.Value, 1)} m, nose {Degrees(Math.Abs(r.MeanYaw))} degrees aside, without a beat.",
        ActionFindingKind.RunsStraight => $"It follows the line straight: heading within {Degrees(r.YawAmplitude, 1)}, roll within {Degrees(r.RollAmplitude, 1)} degrees.",
        ActionFindingKind.EndOverEnd => $"It turns end over end, {F(finding.Value, 1)} times a second, and sinks {F(r.SinkRate, 2)} m/s.",
        ActionFindingKind.Rocks => $"It rocks {F(r.Frequency, 1)} times a second as it sinks {F(r.SinkRate, 2)} m/s: {Degrees(r.PitchAmplitude)} degrees in pitch, {Degrees(r.RollAmplitude)} in roll, {Degrees(r.YawAmplitude)} in heading.",
        ActionFindingKind.SlidesAway => $"It slides away as it sinks {F(r.SinkRate, 2)} m/s, nose {Degrees(Math.Abs(r.MeanPitch))} degrees {Nose(r)}{(r.SpiralRadius > 0 ? $" on a spiral of {Centimetres(r.SpiralRadius)} cm radius" : "")}.",
        ActionFindingKind.SinksStraight => $"It sinks straight at {F(r.SinkRate, 2)} m/s, nose {Degrees(Math.Abs(r.MeanPitch))} degrees {Nose(r)}.",
        _ => throw new ArgumentOutOfRangeException(nameof(finding), finding.Kind, "Not a finding."),
    };

    private static string Nose(ActionReport report) => report.MeanPitch < 0 ? "down" : "up";

    private static string F(double value, int decimals) => UnitFormat.Fixed(value, decimals);

    private static string Degrees(double radians, int decimals = 0) => F(radians * 180 / Math.PI, decimals);

    private static string Centimetres(double metres) => F(100 * metres, 0);
}
