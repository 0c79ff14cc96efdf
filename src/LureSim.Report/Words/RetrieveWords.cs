using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Presentations in plain words.</summary>
internal static class RetrieveWords
{
    /// <summary>What the hands do after the fall.</summary>
    public static string Retrieve(Presentation p, Reel reel, UnitFormat format)
    {
        string end = p.TimeLimit is { } limit ? $" Stop after {UnitFormat.SecondsText(limit)}." : "";
        string drift = p.DriftSpeed > 0 ? $" The rod drifts at {format.SpeedText(p.DriftSpeed)} meanwhile." : "";
        return (StopAndGo(p, reel, format) ?? Moves(p, reel, format)) + end + drift;
    }

    /// <summary>How far and where to cast, without a full stop.</summary>
    public static string Cast(Presentation p, UnitFormat format) => $"Cast {format.LengthText(p.CastLength)}{Aim(p.Aim)}";

    // Angles from the reference direction are given to the nearer side.
    private static string Aim(double aim)
    {
        double degrees = Math.Round(Math.IEEERemainder(aim, 2 * Math.PI) * 180 / Math.PI);
        return Math.Abs(degrees) switch
        {
            0 => "",
            180 => ", opposite to the reference direction",
            double off => $", {UnitFormat.Number(off, 0)}° to the {(degrees > 0 ? "left" : "right")} of the reference direction",
        };
    }

    private static string Moves(Presentation p, Reel reel, UnitFormat format)
    {
        double up = 0;
        bool paced = false;
        var steps = new List<string>();
        foreach (Move move in p.Moves)
        {
            string words = Step(move, p, reel, format, up, ref paced);
            steps.Add(steps.Count == 0 ? char.ToUpperInvariant(words[0]) + words[1..] : words);
            if (move.Beats == 0)
                up += move.Up;
        }

        bool once = !p.Repeats || double.IsPositiveInfinity(p.Moves[^1].Duration);
        return string.Join(", ", steps) + (once ? "." : ", and again.");
    }

    private static string Step(Move move, Presentation p, Reel reel, UnitFormat format, double up, ref bool paced)
    {
        double speed = move.ReelShare * p.RetrieveSpeed;
        string pace = speed > 0 ? $" at {format.SpeedText(speed)}{(paced ? "" : Turns(speed, reel))}" : "";
        paced |= speed > 0;

        // To the tenth: half a second is much in a lift or a drop.
        string time = $"{UnitFormat.Number(move.Duration, 1)}\u00a0s", way = format.LengthText(move.Travel);
        string meanwhile = speed > 0 ? $" while you reel{pace}" : "";
        return move.Kind switch
        {
            MoveKind.Reel when double.IsPositiveInfinity(move.Duration) => $"reel steadily{pace}",
            MoveKind.Reel => $"reel for {time}{pace}",
            MoveKind.Pause => $"wait {time}",
            MoveKind.Lift => $"lift the rod tip {way} in {time}{meanwhile}",
            MoveKind.Lower => Math.Abs(up + move.Up) < 1e-6 ? $"lower it again in {time}{meanwhile}" : $"lower the rod tip {way} in {time}{meanwhile}",
            MoveKind.Sweep => $"sweep the rod tip {way} {Side(move)} in {time}{meanwhile}",
            MoveKind.Return => $"bring the rod tip back in {time}{meanwhile}",
            MoveKind.Twitch => $"twitch the rod tip {(move.Beats == 1 ? "once" : move.Beats == 2 ? "twice" : $"{move.Beats} times")}{(move.Up > 0 ? "" : " " + Side(move))}, {way}{(move.Beats == 1 ? "" : " each")}{meanwhile}",
            MoveKind.Feed => $"let out line for {time} at {format.SpeedText(move.FeedSpeed)}",
            MoveKind.Swing => $"let the current sweep it round on a tight line until it hangs below the rod, {time} at the longest{(speed > 0 ? meanwhile : ", without reeling")}",
            _ => throw new ArgumentOutOfRangeException(nameof(move), move.Kind, "Not a move."),
        };
    }

    private static string Side(Move move) =>
        move.Left > 0 ? "to your left" : move.Left < 0 ? "to your right" : move.Out < 0 ? "back towards you" : "forward";

    // A stretch of reeling and a rest that may begin with lifts of the rod tip; null for any other retrieve, and for a ready-made one, whose moves are told one by one.
    private static string? StopAndGo(Presentation p, Reel reel, UnitFormat format)
    {
        IReadOnlyList<Move> moves = p.Moves;
        if (p.Style is not null || moves.Count is not (2 or 3) || moves[0] is not { Kind: MoveKind.Reel, ReelShare: 1 } stretch || moves[^1].Kind is not (MoveKind.Pause or MoveKind.Twitch))
            return null;
        Move? lifts = moves[1] is { Kind: MoveKind.Twitch, ReelShare: 0, Up: > 0, Left: 0, Out: 0 } twitch ? twitch : null;
        if (moves.Skip(lifts is null ? 1 : 2).Any(move => move.Kind != MoveKind.Pause) || (lifts is null && moves.Count > 2))
            return null;

        string rod = lifts switch
        {
            null => "",
            { Beats: 1 } => $" Start each stop with one lift of the rod tip, {format.LengthText(lifts.Up)}.",
            { Beats: 2 } => $" Start each stop with two lifts of the rod tip, {format.LengthText(lifts.Up)} each.",
            _ => $" Start each stop with {lifts.Beats} lifts of the rod tip, {format.LengthText(lifts.Up)} each.",
        };
        string pace = $"{format.SpeedText(p.RetrieveSpeed)}{Turns(p.RetrieveSpeed, reel)}";
        return $"Reel for {UnitFormat.SecondsText(stretch.Duration)} at {pace}, stop for {UnitFormat.SecondsText(moves.Skip(1).Sum(move => move.Duration))}, and again.{rod}";
    }

    /// <summary>What to do from the splash to the first turn of the handle.</summary>
    public static string CountDown(Presentation p, Coverage coverage)
    {
        string how = p.Fall == FallMode.SlackLine ? "on an open bail" : "on a tight line";
        return p.CountDown switch
        {
            null when coverage.TimeToBottom is { } seconds => $"Let it fall to the bottom {how}: count about {UnitFormat.SecondsNumber(seconds)}.",
            null => $"Let it fall {how} as far as it goes; in this water it does not reach the bottom.",
            <= 0 when p.Moves[0].Kind == MoveKind.Swing => "None: close the bail as it lands.",
            <= 0 => "None: start to reel as it lands.",
            { } count => $"Let it fall {how}: count {UnitFormat.SecondsNumber(count)}, then {(p.Moves[0].Kind == MoveKind.Reel ? "reel" : "begin")}.",
        };
    }

    private static string Turns(double speed, Reel reel)
    {
        double perTurn = reel.LinePerTurn;
        if (!(perTurn > 0) || !(speed > 0))
            return "";

        double turns = speed / perTurn;
        return turns >= 1
            ? $" (about {UnitFormat.Number(turns, 1)} turns of the handle a second)"
            : $" (about one turn of the handle every {UnitFormat.Number(1 / turns, 1)} s)";
    }
}
