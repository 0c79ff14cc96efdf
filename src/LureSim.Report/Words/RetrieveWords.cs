using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Presentations in plain words: what the hands do.</summary>
internal static class RetrieveWords
{
    // A lift or drop that takes longer is told with its time (s); a quicker drop is one on slack line.
    private const double Quick = 1.25;

    // Reeling of up to so many turns after the rod has worked takes up slack.
    private const double SlackTurns = 2.5;

    // A lead up the current shorter than this is not worth aiming for (m).
    private const double Lead = 0.9;

    // Sines of the angle between cast and current: nobody tells ten degrees from straight across, and who is told to turn by twenty is not told that he throws straight across.
    private const double StraightAcross = 0.98;
    private const double NearlyAcross = 0.9;
    private const double NearlyAlong = 0.4;

    /// <summary>What the hands do once the lure is down.</summary>
    public static string Retrieve(Presentation p, Reel reel, UnitFormat format)
    {
        string end = p.TimeLimit is { } limit ? $" Stop after {UnitFormat.HoldText(limit)}." : "";
        string drift = p.DriftSpeed > 0 ? $" Meanwhile the rod drifts at {format.SpeedText(p.DriftSpeed)}." : "";
        return (StopAndGo(p, reel, format) ?? Moves(p, reel, format)) + end + drift;
    }

    /// <summary>How far and where to cast, without a full stop.</summary>
    public static string Cast(Presentation p, UnitFormat format) => p switch
    {
        { FullCast: true } => $"A full cast{Aim(p.Aim)}",
        { CastWith: { } known } => $"Cast {format.HandText(p.CastLength)} with {(known.Mass is { } mass ? format.Weight(mass) : format.HeadText(known.Head))}, others as far as they then fly{Aim(p.Aim)}",
        _ => $"Cast {format.HandText(p.CastLength)}{Aim(p.Aim)}",
    };

    /// <summary>How far and where to cast, seen from the current, and how far above the fish, without a full stop.</summary>
    /// <param name="candidate">The rig with its run.</param>
    /// <param name="spot">The spot.</param>
    /// <param name="format">Units.</param>
    public static string Throw(Candidate candidate, Spot spot, UnitFormat format)
    {
        Presentation p = candidate.Rig.Presentation;
        string far = $"{format.HandText(candidate.CastLength)}{Aim(p.Aim)}";
        if (!(spot.CurrentSpeed > 0))
            return far;
        double angle = spot.CurrentDirection - p.Aim;
        return $"{far}, {AcrossOrAlong(angle)}{(LeadOf(candidate, angle) is { } lead && lead >= Lead ? $", {format.HandText(lead)} upcurrent of the fish" : "")}";
    }

    /// <summary>Where a cast goes as the current sees it: "straight across the current", "across, a little downcurrent", "downcurrent".</summary>
    /// <param name="angle">Where the water goes, from the cast to the left (radians).</param>
    internal static string AcrossOrAlong(double angle)
    {
        double across = Math.Abs(Math.Sin(angle));
        string along = Math.Cos(angle) > 0 ? "downcurrent" : "upcurrent";
        return across > StraightAcross ? "straight across the current"
            : across > NearlyAcross ? $"across, a little {along}"
            : across < NearlyAlong ? along
            : $"across and {along}";
    }

    /// <summary>What to do from the splash to the first turn of the handle, a sentence.</summary>
    public static string CountDown(Presentation p, Coverage coverage)
    {
        string how = p.Fall == FallMode.SlackLine ? "Bail open" : "Bail closed, line tight";
        return p.CountDown switch
        {
            null when coverage.TimeToBottom is { } seconds => $"{how}, let it sink to the bottom: about {Count(seconds)}.",
            null => $"{how}, let it sink; here it never reaches the bottom.",
            { } count when Math.Round(count, MidpointRounding.AwayFromZero) < 1 => "No count: start as it hits the water.",
            { } count => $"{how}, sink it on {Count(count)}, then {(p.Moves[0].Kind == MoveKind.Reel ? "reel" : "begin")}.",
        };
    }

    /// <summary>A count as people say it: "an 8-count".</summary>
    /// <param name="seconds">Time (s).</param>
    public static string Count(double seconds) => Grammar.Article(UnitFormat.Number(seconds, 0) + "-count");

    /// <summary>A reel speed for the hands: "one turn of the handle every 2 seconds (1.5 ft/s)".</summary>
    /// <param name="speed">Speed of the line coming in (m/s).</param>
    /// <param name="reel">The reel.</param>
    /// <param name="format">Units.</param>
    public static string Pace(double speed, Reel reel, UnitFormat format) =>
        reel.LinePerTurn > 0 && speed > 0 ? $"{Turns(speed / reel.LinePerTurn)} ({format.SpeedText(speed)})" : format.SpeedText(speed);

    // How far up the current of the fish the lure must land (m): what the current carries it while it sinks to the zone.
    private static double? LeadOf(Candidate candidate, double angle)
    {
        if (candidate.Coverage.TimeToZone is not { } time)
            return null;
        Track track = candidate.Track;
        int at = 0;
        while (at < track.Count - 1 && track.Time[at] < time)
            at++;
        return track.Count == 0 ? null : ((track.X[at] - track.X[0]) * Math.Cos(angle)) + ((track.Y[at] - track.Y[0]) * Math.Sin(angle));
    }

    // Angles from the reference direction are given to the nearer side.
    private static string Aim(double aim)
    {
        double degrees = Math.Round(Math.IEEERemainder(aim, 2 * Math.PI) * 180 / Math.PI);
        return Math.Abs(degrees) switch
        {
            0 => "",
            180 => ", straight back",
            double off => $", {UnitFormat.Number(off, 0)}° {(degrees > 0 ? "left" : "right")} of straight out",
        };
    }

    private static string Moves(Presentation p, Reel reel, UnitFormat format)
    {
        double up = 0;
        bool paced = false, worked = false;
        var steps = new List<string>();
        foreach (Move move in p.Moves)
        {
            steps.Add(Step(move, p, reel, format, up, worked, ref paced));
            worked |= move.MovesTip;
            if (move.Beats == 0)
                up += move.Up;
        }

        bool once = !p.Repeats || double.IsPositiveInfinity(p.Moves[^1].Duration);
        return Grammar.Capital(string.Join(", ", steps)) + (once ? "." : ", repeat.");
    }

    private static string Step(Move move, Presentation p, Reel reel, UnitFormat format, double up, bool worked, ref bool paced)
    {
        double speed = move.ReelShare * p.RetrieveSpeed;
        double turns = reel.LinePerTurn > 0 && double.IsFinite(move.Duration) ? speed * move.Duration / reel.LinePerTurn : double.PositiveInfinity;
        bool first = speed > 0 && !paced;
        paced |= speed > 0 && move.Kind == MoveKind.Reel;
        string way = format.TravelText(move.Travel);
        string over = move.Duration > Quick ? $" over {UnitFormat.HoldText(move.Duration)}" : "";
        string meanwhile = speed > 0 ? $" while you reel ({Quarters(turns)})" : "";
        return move.Kind switch
        {
            MoveKind.Reel when double.IsPositiveInfinity(move.Duration) => $"reel steadily: {Pace(speed, reel, format)}",
            MoveKind.Reel when worked && turns <= SlackTurns => $"take up slack (about {Quarters(turns)})",
            MoveKind.Reel => $"reel for {UnitFormat.HoldText(move.Duration)}{(first ? $" at {Pace(speed, reel, format)}" : "")}",
            MoveKind.Pause => $"rest {UnitFormat.HoldText(move.Duration)}",
            MoveKind.Lift => $"lift the rod tip {way}{over}{meanwhile}",
            MoveKind.Lower when move.Duration <= Quick && !(speed > 0) => "drop it on slack line",
            MoveKind.Lower => $"{(Math.Abs(up + move.Up) < 1e-6 ? "lower it" : $"lower the rod tip {way}")}{over}{(speed > 0 ? meanwhile : ", following the lure down")}",
            MoveKind.Sweep => $"sweep the rod tip {way} {Side(move)}{over}{meanwhile}",
            MoveKind.Return => $"bring the rod tip back{over}{meanwhile}",
            MoveKind.Twitch => Twitches(move, way) + meanwhile,
            MoveKind.Feed => $"let out line for {UnitFormat.HoldText(move.Duration)}",
            MoveKind.Swing => $"let the current swing it around on a tight line until it hangs straight downcurrent{(speed > 0 ? meanwhile : ", no reeling")}",
            _ => throw new ArgumentOutOfRangeException(nameof(move), move.Kind, "Not a move."),
        };
    }

    private static string Twitches(Move move, string way) =>
        $"{Number(move.Beats)} {way} twitch{(move.Beats == 1 ? "" : "es")}{(move.Up > 0 ? "" : " " + Side(move))}";

    private static string Number(int count) => count switch
    {
        1 => "one",
        2 => "two",
        3 => "three",
        4 => "four",
        5 => "five",
        6 => "six",
        _ => UnitFormat.Number(count, 0),
    };

    private static string Side(Move move) =>
        move.Left > 0 ? "to your left" : move.Left < 0 ? "to your right" : move.Out < 0 ? "back at you" : "forward";

    // A stretch of reeling and a rest that may begin with lifts of the rod tip; null for any other retrieve, and for a ready-made one, whose moves are told one by one.
    private static string? StopAndGo(Presentation p, Reel reel, UnitFormat format)
    {
        IReadOnlyList<Move> moves = p.Moves;
        if (p.Style is not null || moves.Count is not (2 or 3) || moves[0] is not { Kind: MoveKind.Reel, ReelShare: 1 } stretch || moves[^1].Kind is not (MoveKind.Pause or MoveKind.Twitch))
            return null;
        Move? lifts = moves[1] is { Kind: MoveKind.Twitch, ReelShare: 0, Up: > 0, Left: 0, Out: 0 } twitch ? twitch : null;
        if (moves.Skip(lifts is null ? 1 : 2).Any(move => move.Kind != MoveKind.Pause) || (lifts is null && moves.Count > 2))
            return null;

        string rod = lifts is null ? "" : $" Start each stop with {Twitches(lifts, format.TravelText(lifts.Up))}.";
        return $"Reel for {UnitFormat.HoldText(stretch.Duration)} at {Pace(p.RetrieveSpeed, reel, format)}, stop for {UnitFormat.HoldText(moves.Skip(1).Sum(move => move.Duration))}, repeat.{rod}";
    }

    // Turns of the handle, in words that a hand can keep.
    private static string Turns(double aSecond) => aSecond switch
    {
        > 0.9 and < 1.15 => "one turn of the handle a second",
        >= 1.15 => $"{UnitFormat.Counted(aSecond, "turn")} of the handle a second",
        _ => UnitFormat.Counted(1 / aSecond, "second") is "1 second" ? "one turn of the handle a second" : $"one turn of the handle every {UnitFormat.Counted(1 / aSecond, "second")}",
    };

    // A few turns to the quarter.
    private static string Quarters(double turns)
    {
        double quarters = Math.Max(1, Math.Round(turns * 4));
        (int whole, int rest) = ((int)quarters / 4, (int)quarters % 4);
        string part = rest switch { 0 => "", 1 => "¼", 2 => "½", _ => "¾" };
        return $"{(whole == 0 ? "" : UnitFormat.Number(whole, 0))}{part} turn{(quarters <= 4 ? "" : "s")}";
    }
}
