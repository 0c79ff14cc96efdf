using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;
using LureSim.Swimming;

namespace LureSim.Decision;

/// <summary>Puts the action of a rig into plain words.</summary>
public static class ActionWords
{
    // Below these an amplitude or a spin is not worth saying.
    private const double NoticeableAngle = 1.5 * Math.PI / 180;
    private const double NoticeableSpin = 0.15;

    /// <summary>A verdict in one or two words.</summary>
    /// <param name="verdict">The verdict.</param>
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
        _ => "not computed",
    };

    /// <summary>True for what nobody wants.</summary>
    /// <param name="verdict">The verdict.</param>
    public static bool IsFault(ActionVerdict verdict) => verdict is ActionVerdict.Spins or ActionVerdict.Muted or ActionVerdict.Tumbles;

    /// <summary>True if it beats visibly: tail, nose or roll by more than a degree or two to each side.</summary>
    /// <param name="report">A report.</param>
    /// <exception cref="ArgumentNullException"><paramref name="report"/> is null.</exception>
    public static bool Beats(ActionReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Frequency > 0 && Math.Max(report.TailAmplitude, Math.Max(report.YawAmplitude, report.RollAmplitude)) > NoticeableAngle;
    }

    /// <summary>The verdict with its key figures, without a full stop.</summary>
    /// <param name="report">A report.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="report"/> is null.</exception>
    public static string Line(ActionReport report, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(report);
        List<string> figures = [];
        if (Math.Abs(report.SpinRate) > NoticeableSpin)
            figures.Add($"{Number(Math.Abs(report.SpinRate), 1)} turns a second, {Twists(report, units)}");
        if (Beats(report) && report.Darts.Count == 0 && report.Verdict is not ActionVerdict.Spins)
            figures.Add($"{Number(report.Frequency, 1)} beats a second");
        if (report.TailAmplitude > NoticeableAngle)
            figures.Add($"tail {Degrees(report.TailAmplitude)} to each side");
        else if (report.YawAmplitude > NoticeableAngle && report.Verdict is not (ActionVerdict.Spins or ActionVerdict.Darts))
            figures.Add($"nose {Degrees(report.YawAmplitude)} to each side");
        if (report.RollAmplitude > 2 * NoticeableAngle && report.Darts.Count == 0 && report.Verdict is not ActionVerdict.Spins)
            figures.Add($"rolls {Degrees(report.RollAmplitude)}");
        if (report.Darts.Count > 0)
            figures.Add($"{(report.Verdict == ActionVerdict.Darts ? "" : "darts ")}{Degrees(report.DartAngle)} off the line, {Small(report.DartTravel, units)} a twitch, glides {Small(report.Glide, units)}");
        return figures.Count == 0 ? Word(report.Verdict) : $"{Word(report.Verdict)}: {string.Join(", ", figures)}";
    }

    /// <summary>Twists of the line over a length that an angler can picture.</summary>
    /// <param name="report">A report.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="report"/> is null.</exception>
    public static string Twists(ActionReport report, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(report);
        double perMetre = Math.Abs(report.LineTwistsPerMetre);
        return units == UnitSystem.Us
            ? $"{Number(perMetre * UnitsNet.Length.FromFeet(10).Meters, 0)} twists of line in 10 ft"
            : $"{Number(perMetre, 1)} twists of line a metre";
    }

    /// <summary>What to do about a fault, and what it changes.</summary>
    internal static string Mend(string fault, Rigging own, Rig rig, ActionReport before, ActionReport after, UnitSystem units)
    {
        string what = fault switch
        {
            nameof(Rigging.ExitSideways) => $"Bring the hook out on the centre line: it is {Millimetres(own.ExitSideways)} {Side(own.ExitSideways)} of it",
            nameof(Rigging.ExitAbove) => $"Bring the hook out {Millimetres(own.ExitAbove)} {(own.ExitAbove > 0 ? "lower" : "higher")}, so that the body lies straight",
            nameof(Rigging.Bend) => $"Straighten the body: it is bent {Degrees(Math.Abs(own.Bend))} to the {Side(own.Bend)}",
            nameof(Rigging.PointLean) => $"Turn the hook so that its point stands straight up: it leans {Degrees(Math.Abs(own.PointLean))} to the {Side(own.PointLean)}",
            nameof(Rigging.HeadTurn) => $"Set the head in line with the body: it is turned {Degrees(Math.Abs(own.HeadTurn))} to the {Side(own.HeadTurn)}",
            nameof(Rigging.PulledUp) => $"Pull the bait back by {Millimetres(own.PulledUp)}, so that it lies without a bunch",
            "Shank" => $"Take a shorter hook: its shank is {Number(100 * own.ShankShare!.Value, 0)} % of the body, {Number(100 * rig.Body.Kind.Proportions.ShankShare, 0)} % leaves the tail free",
            _ => "Tie a loop knot in place of the snug one",
        };
        string now = Line(before, units), then = Line(after, units);
        return now == then ? $"{what}." : $"{what}. Then it {then}; now it {now}.";
    }

    private static string Small(double metres, UnitSystem units) => units == UnitSystem.Us
        ? $"{Number(UnitsNet.Length.FromMeters(metres).Inches, 0)} in"
        : $"{Number(metres * 100, 0)} cm";

    private static string Millimetres(double metres) => $"{Number(Math.Abs(metres) * 1000, 1)} mm";

    private static string Degrees(double radians) => $"{Number(radians * 180 / Math.PI, 0)} deg";

    private static string Side(double value) => value > 0 ? "left" : "right";

    private static string Number(double value, int decimals) =>
        double.IsFinite(value) ? Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString("0." + new string('#', decimals), System.Globalization.CultureInfo.InvariantCulture) : "-";
}
