using LureSim.Model;
using YamlDotNet.RepresentationModel;

namespace LureSim.Workbench.Bench;

/// <summary>The rod's and the hand's part of a presentation: how far it lifts, how long it rests, and its moves as a scenario writes them.</summary>
internal static class MovesText
{
    /// <summary>How far the rod tip goes up in its first lift or twitch (m); null where it never does.</summary>
    /// <param name="way">The presentation.</param>
    public static double? LiftOf(Presentation way) => way.Moves.FirstOrDefault(move => move.Up > 0)?.Up;

    /// <summary>How long the first rest lasts (s); null where there is none.</summary>
    /// <param name="way">The presentation.</param>
    public static double? RestOf(Presentation way) => way.Moves.FirstOrDefault(IsRest)?.Duration;

    /// <summary>The moves with the first lift so high and the others in proportion, each at its speed.</summary>
    /// <param name="way">The presentation.</param>
    /// <param name="up">Height of the first lift (m).</param>
    public static Presentation Lifted(Presentation way, double up)
    {
        if (LiftOf(way) is not { } own) return way;
        double factor = up / own;
        return way with { Moves = [.. way.Moves.Select(move => move.Lifted(move.Up * factor))] };
    }

    /// <summary>The moves with the first rest so long and the others in proportion.</summary>
    /// <param name="way">The presentation.</param>
    /// <param name="seconds">Length of the first rest (s).</param>
    public static Presentation Rested(Presentation way, double seconds)
    {
        if (RestOf(way) is not { } own) return way;
        double factor = seconds / own;
        return way with { Moves = [.. way.Moves.Select(move => IsRest(move) ? move.Lasting(move.Duration * factor) : move)] };
    }

    /// <summary>True if a scenario may say every move: each within the reach of hand and rod that the grammar has.</summary>
    /// <param name="way">The presentation.</param>
    public static bool CanBeSaid(Presentation way)
    {
        const double LeastTime = 0.1, MostTime = 60, LeastTravel = 0.01, MostTravel = 2.5, FastestTip = 12;
        return way.Moves.All(move => (double.IsInfinity(move.Duration) || move.Kind == MoveKind.Swing || (move.Duration >= LeastTime && move.Duration <= MostTime))
            && (!move.MovesTip || (move.Travel >= LeastTravel && move.Travel <= MostTravel && 2 * move.Travel * Math.Max(1, move.Beats) / move.Duration <= FastestTip)));
    }

    /// <summary>Writes the moves of a presentation into its part of a file, in place of a style or of pauses and twitches.</summary>
    /// <param name="into">The presentation in the file.</param>
    /// <param name="way">The presentation.</param>
    public static void Write(YamlMappingNode into, Presentation way)
    {
        foreach (string key in (string[])["style", "pause", "twitch", "retrieve"]) ScenarioText.Remove(into, key);
        if (ScenarioText.Get(into, "fall") is null) ScenarioText.Set(into, "fall", way.Fall == FallMode.TightLine ? "tight line" : "slack line");
        if (ScenarioText.Get(into, "count_down") is null) ScenarioText.Set(into, "count_down", way.CountDown is { } count ? Written(count, "s") : KnobIds.ToBottom);
        if (way.RetrieveSpeed > 0 && way.Moves.Any(move => move.ReelShare > 0)) ScenarioText.Set(ScenarioText.Map(into, "retrieve"), "speed", Written(way.RetrieveSpeed, "m/s"));
        into.Children["moves"] = new YamlSequenceNode(way.Moves.Select(move => (YamlNode)NodeOf(move, way.RetrieveSpeed)));
    }

    private static bool IsRest(Move move) => move.Kind == MoveKind.Pause && double.IsFinite(move.Duration);

    private static YamlMappingNode NodeOf(Move move, double speed)
    {
        string time = Written(move.Duration, "s");
        (string, string)? reel = move.ReelShare > 0 ? ("reel", Written(move.ReelShare * speed, "m/s")) : null;
        return move.Kind switch
        {
            MoveKind.Reel => Item("reel", double.IsInfinity(move.Duration) ? null : ("for", time), move.ReelShare == 1 ? null : ("speed", Written(move.ReelShare * speed, "m/s"))),
            MoveKind.Pause => new YamlMappingNode(new YamlScalarNode("pause"), new YamlScalarNode(time)),
            MoveKind.Lift => Item("lift", ("height", Written(move.Up, "m")), ("time", time), reel),
            MoveKind.Lower => Item("lower", ("height", Written(-move.Up, "m")), ("time", time), reel),
            MoveKind.Sweep => Item("sweep", ("to", Side(move)), ("distance", Written(move.Travel, "m")), ("time", time), reel),
            MoveKind.Return => Item("return", ("time", time), reel),
            MoveKind.Twitch => Item("twitch", ("count", move.Beats.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("height", Written(move.Travel, "m")), ("period", Written(move.Duration / move.Beats, "s")), ("to", Side(move)), reel),
            MoveKind.Feed => Item("feed", ("speed", Written(move.FeedSpeed, "m/s")), ("for", time)),
            MoveKind.Swing => new YamlMappingNode(new YamlScalarNode("swing"), new YamlScalarNode(time)),
            _ => throw new ArgumentOutOfRangeException(nameof(move), move.Kind, "Not a move."),
        };
    }

    private static string Side(Move move) => move.Up > 0 ? "up" : move.Left > 0 ? "left" : move.Left < 0 ? "right" : move.Out < 0 ? "towards" : "away";

    private static YamlMappingNode Item(string name, params (string Key, string Value)?[] values)
    {
        var inner = new YamlMappingNode { Style = YamlDotNet.Core.Events.MappingStyle.Flow };
        foreach ((string key, string value) in values.OfType<(string, string)>()) ScenarioText.Set(inner, key, value);
        return new YamlMappingNode(new YamlScalarNode(name), inner);
    }

    private static string Written(double value, string symbol) => KnobCatalogue.Written(value, symbol);
}
