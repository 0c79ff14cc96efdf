using LureSim.Decision;
using LureSim.Scenarios;

namespace LureSim.Report.Sheets;

/// <summary>Presentations in plain words.</summary>
internal static class RetrieveWords
{
    /// <summary>What the hands do after the fall.</summary>
    public static string Retrieve(Presentation p, Reel reel, UnitFormat format)
    {
        string pace = $"{format.SpeedText(p.RetrieveSpeed)}{Turns(p.RetrieveSpeed, reel)}";
        if (p.ReelFor is not { } stretch)
            return $"Reel steadily at {pace}.";

        string rod = (p.Twitches, p.TwitchHeight > 0) switch
        {
            (0, _) or (_, false) => "",
            (1, _) => $" Start each stop with one lift of the rod tip, {format.LengthText(p.TwitchHeight)}.",
            (2, _) => $" Start each stop with two lifts of the rod tip, {format.LengthText(p.TwitchHeight)} each.",
            _ => $" Start each stop with {p.Twitches} lifts of the rod tip, {format.LengthText(p.TwitchHeight)} each.",
        };
        string stop = p.PauseFor > 0 ? $", stop for {UnitFormat.SecondsText(p.PauseFor)}, and again" : ", and again";
        return $"Reel for {UnitFormat.SecondsText(stretch)} at {pace}{stop}.{rod}";
    }

    /// <summary>What to do from the splash to the first turn of the handle.</summary>
    public static string CountDown(Presentation p, Coverage coverage)
    {
        string how = p.Fall == FallMode.SlackLine ? "on an open bail" : "on a tight line";
        return p.CountDown switch
        {
            null when coverage.TimeToBottom is { } seconds => $"Let it fall to the bottom {how}: count about {UnitFormat.SecondsNumber(seconds)}.",
            null => $"Let it fall {how} as far as it goes; in this water it does not reach the bottom.",
            <= 0 => "None: start to reel as it lands.",
            { } count => $"Let it fall {how}: count {UnitFormat.SecondsNumber(count)}, then reel.",
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
