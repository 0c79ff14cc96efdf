using System.Diagnostics;
using System.Globalization;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>Turns the keys of a presentation that say how line and rod tip move into moves, with the checks that belong to them.</summary>
internal sealed class ScheduleBuilder(ProblemList problems)
{
    // No wrist moves a rod tip faster (m/s).
    private const double FastestTip = 12.0;

    // Greatest speed of a quintic smoothstep over its mean.
    private const double SmoothPeak = 1.875;

    // An arm and a rod reach no farther from where they were (m), assumed.
    private const double Reach = 4.0;

    private const double DefaultTwitchPeriod = 0.5;

    // A move before line speeds and the way of the rod tip are known (SI; NaN for what is not given).
    private readonly record struct RawMove(MoveKind Kind, ReadValue At, double Duration, double Speed, double Travel, MoveDirection Direction, int Beats);

    /// <summary>Reports what is wrong with the moves of a presentation.</summary>
    public void Check(ReadValue item, ReadValue? tackle)
    {
        RetrieveStyle? style = StyleOf(item);
        ReadValue? given = item["moves"];
        if (style is not null && given is not null)
        {
            Add(given, "a style has its own moves", "style or moves", "remove one of the two");
            return;
        }

        if (given is not null)
        {
            foreach (string key in (string[])["pause", "twitch"])
            {
                if (item[key] is { } other)
                    Add(other, $"moves are given, and {key} is one of them", "moves alone", $"write it into moves as \"- {key}:\"");
            }
        }

        double perTurn = PerTurn(tackle);
        List<RawMove> raw = RawMoves(given, perTurn);
        bool swings = raw.Exists(move => move.Kind == MoveKind.Swing);
        if (item["retrieve"] is null && !problems.HasUnder(YamlTreeBuilder.Join(item.Path, "retrieve")) && !problems.HasUnder(YamlTreeBuilder.Join(item.Path, "moves")))
        {
            bool needed = raw.Count == 0 ? given is null && item["style"] is null && !problems.HasUnder(YamlTreeBuilder.Join(item.Path, "style"))
                : raw.Exists(move => move.Kind == MoveKind.Reel && double.IsNaN(move.Speed));
            if (needed)
                problems.Add(item.Line, item.Column, YamlTreeBuilder.Join(item.Path, "retrieve"), "", "the key is missing", GrammarReader.Allowed(MoveGrammar.Retrieve), "add \"retrieve:\" with its items on indented lines below");
        }

        if (item["count_down"] is null && style?.CountDown is null && !problems.HasUnder(YamlTreeBuilder.Join(item.Path, "count_down")))
            problems.Add(item.Line, item.Column, YamlTreeBuilder.Join(item.Path, "count_down"), "", "the key is missing", GrammarReader.Allowed(MoveGrammar.CountDown), $"add \"count_down: {GrammarReader.Example(MoveGrammar.CountDown)}\"");

        if (style is not null)
        {
            CheckOverride(item["pause"], style, MoveKind.Pause, "rests");
            CheckOverride(item["twitch"], style, MoveKind.Twitch, "twitches");
        }

        if (given is null)
            return;
        CheckMoves(raw, ScenarioBuilder.TipHeight(tackle), swings);
        bool comesIn = swings || raw.Exists(move => move.Kind == MoveKind.Reel || !double.IsNaN(move.Speed) && move.Kind != MoveKind.Feed);
        if (!comesIn && item["time_limit"] is null && raw.Count == given.Items.Count && !problems.HasUnder(given.Path))
            Add(given, "no move takes line in, so the retrieve has no end", "a reel, a swing, or time_limit beside moves", "add \"time_limit:\", or a move \"reel:\"");
    }

    /// <summary>Speed of the retrieve (m/s) and its moves. The presentation has passed the checks.</summary>
    public static (double Speed, IReadOnlyList<Move> Moves) Build(ReadValue item, ReadValue tackle)
    {
        RetrieveStyle? style = StyleOf(item);
        double perTurn = PerTurn(tackle);
        double own = SpeedOf(item["retrieve"], perTurn);

        // A style at another speed is that style made slower or faster throughout.
        if (style is not null)
            return (double.IsNaN(own) ? style.Speed ?? 0 : own, [.. style.Moves.Select(move => Override(move, item))]);
        if (item["moves"] is null)
            return (own, ByKeys(item["pause"], item["twitch"]));
        List<RawMove> raw = RawMoves(item["moves"], perTurn);

        // Where the retrieve has no speed of its own, the fastest move gives it. A swing reels only if it was asked to.
        bool swingReels = !double.IsNaN(own);
        double speed = swingReels
            ? own
            : raw.Where(move => move.Kind != MoveKind.Feed && !double.IsNaN(move.Speed)).Select(move => move.Speed).DefaultIfEmpty(0.0).Max();
        double up = 0, left = 0, outward = 0;
        var moves = new List<Move>();
        foreach (RawMove move in raw)
        {
            Move built = Resolve(move, speed, swingReels, up, left, outward);
            moves.Add(built);
            if (built.Beats > 0)
                continue;
            up += built.Up;
            left += built.Left;
            outward += built.Out;
        }

        return (speed, moves);
    }

    private static IReadOnlyList<Move> ByKeys(ReadValue? pause, ReadValue? twitch) => Number(pause?["every"]) is not { } every
        ? [Move.ReelIn]
        : Move.StopAndGo(every, Number(pause?["for"]) ?? 0.0, (int)(Number(twitch?["count"]) ?? 0.0), Number(twitch?["height"]) ?? 0.0, Number(twitch?["period"]) ?? DefaultTwitchPeriod);

    /// <summary>The style that a presentation names; null for none.</summary>
    public static RetrieveStyle? StyleOf(ReadValue item) => item["style"]?.Word?.Meaning is string name ? RetrieveStyle.Find(name) : null;

    private static Move Resolve(RawMove raw, double speed, bool swingReels, double up, double left, double outward)
    {
        double share = raw.Kind switch
        {
            MoveKind.Feed => 0,
            MoveKind.Reel when double.IsNaN(raw.Speed) => 1,
            MoveKind.Swing => swingReels || speed == 0 ? 1 : 0,
            _ when double.IsNaN(raw.Speed) => 0,
            _ => raw.Speed / speed,
        };
        var move = new Move
        {
            Kind = raw.Kind,
            Duration = double.IsNaN(raw.Duration) ? double.PositiveInfinity : raw.Duration,
            ReelShare = share,
            FeedSpeed = raw.Kind == MoveKind.Feed ? raw.Speed : 0,
            Beats = raw.Beats,
        };
        return raw.Kind switch
        {
            MoveKind.Lift => move with { Up = raw.Travel },
            MoveKind.Lower => move with { Up = double.IsNaN(raw.Travel) ? -up : -raw.Travel },
            MoveKind.Return => move with { Up = -up, Left = -left, Out = -outward },
            MoveKind.Sweep or MoveKind.Twitch => raw.Direction switch
            {
                MoveDirection.Up => move with { Up = raw.Travel },
                MoveDirection.Left => move with { Left = raw.Travel },
                MoveDirection.Right => move with { Left = -raw.Travel },
                MoveDirection.Towards => move with { Out = -raw.Travel },
                MoveDirection.Away => move with { Out = raw.Travel },
                _ => throw new UnreachableException(),
            },
            _ => move,
        };
    }

    private static List<RawMove> RawMoves(ReadValue? list, double perTurn)
    {
        if (list is null)
            return [];
        var moves = new List<RawMove>();
        foreach (ReadValue entry in list.Items)
        {
            if (entry.Entries.Count != 1)
                continue;
            (string key, ReadValue value) = entry.Entries.First();
            double speed = Number(value["reel"]) ?? double.NaN;
            RawMove? move = key switch
            {
                "reel" => new(MoveKind.Reel, value, Number(value["for"]) ?? double.NaN, SpeedOf(value, perTurn), double.NaN, default, 0),
                "pause" => new(MoveKind.Pause, value, value.Number, double.NaN, double.NaN, default, 0),
                "lift" => new(MoveKind.Lift, value, Number(value["time"]) ?? 1.0, speed, Number(value["height"]) ?? 0.0, MoveDirection.Up, 0),
                "lower" => new(MoveKind.Lower, value, Number(value["time"]) ?? 1.0, speed, Number(value["height"]) ?? double.NaN, MoveDirection.Up, 0),
                "sweep" => new(MoveKind.Sweep, value, Number(value["time"]) ?? 1.0, speed, Number(value["distance"]) ?? 0.0, Direction(value), 0),
                "return" => new(MoveKind.Return, value, Number(value["time"]) ?? 1.0, speed, double.NaN, default, 0),
                "twitch" => Twitch(value, value["count"], speed),
                "feed" => new(MoveKind.Feed, value, Number(value["for"]) ?? 1.0, Number(value["speed"]) ?? 0.0, double.NaN, default, 0),
                "swing" => new(MoveKind.Swing, value, value.Number, double.NaN, double.NaN, default, 0),
                _ => null,
            };
            if (move is { } known)
                moves.Add(known);
        }

        return moves;
    }

    // A scenario's own figures in place of the style's.
    private static Move Override(Move move, ReadValue item) => move.Kind switch
    {
        MoveKind.Reel when Number(item["pause"]?["every"]) is { } every && double.IsFinite(move.Duration) => move with { Duration = every },
        MoveKind.Pause when Number(item["pause"]?["for"]) is { } rest => move with { Duration = rest },
        MoveKind.Twitch when item["twitch"] is { } twitch && twitch["count"] is { } count => Twitched(move, Twitch(twitch, count, double.NaN)),
        _ => move,
    };

    // The style's direction, the scenario's figures.
    private static Move Twitched(Move move, RawMove given) => move with
    {
        Duration = given.Duration,
        Beats = given.Beats,
        Up = move.Up / move.Travel * given.Travel,
        Left = move.Left / move.Travel * given.Travel,
        Out = move.Out / move.Travel * given.Travel,
    };

    private static RawMove Twitch(ReadValue value, ReadValue? count, double speed)
    {
        int beats = (int)(Number(count) ?? 1.0);
        return new(MoveKind.Twitch, value, beats * (Number(value["period"]) ?? DefaultTwitchPeriod), speed, Number(value["height"]) ?? 0.0, Direction(value), beats);
    }

    private static MoveDirection Direction(ReadValue value) => value["to"]?.Word?.Meaning is MoveDirection direction ? direction : MoveDirection.Up;

    private void CheckOverride(ReadValue? key, RetrieveStyle style, MoveKind kind, string what)
    {
        if (key is not null && !style.Moves.Any(move => move.Kind == kind))
            Add(key, $"this style has no {what}", "figures that the style has", "remove the key, choose another style or write moves");
    }

    private void CheckMoves(List<RawMove> raw, double? tipHeight, bool swings)
    {
        double up = 0, left = 0, outward = 0;
        bool endless = false;
        for (int i = 0; i < raw.Count; i++)
        {
            RawMove move = raw[i];
            if (move.At["speed"] is not null && move.At["handle_turns"] is { } turns)
                Add(turns, "speed is given as well", "exactly one of speed, handle_turns", "remove one of the two");
            if (move.Kind == MoveKind.Reel && !double.IsNaN(move.Speed) && !Limits.LineSpeed.Contains(move.Speed) && move.At["handle_turns"] is { } fast)
                Add(fast, $"with this reel that is {QuantityText.Both(QuantityKind.Speed, move.Speed)} of line", QuantityText.Range(QuantityKind.Speed, Limits.LineSpeed.Least, Limits.LineSpeed.Most), "turn the handle at another rate");
            if (double.IsNaN(move.Duration) && !problems.HasUnder(YamlTreeBuilder.Join(move.At.Path, "for")))
            {
                endless = true;
                if (i < raw.Count - 1)
                    Add(move.At, "nothing can follow reeling until the line is in", "a reel without \"for\" as the last move", "add \"for:\"");
            }

            Move built = Resolve(move, 1, false, up, left, outward);
            double peak = built.Beats > 0 ? 2.0 * built.Travel * built.Beats / built.Duration : SmoothPeak * built.Travel / built.Duration;
            if (peak > FastestTip)
                Add(move.At, $"the rod tip would move at {QuantityText.Both(QuantityKind.Speed, peak)}", $"up to {QuantityText.Both(QuantityKind.Speed, FastestTip)}", "move it less far or more slowly");
            double far = Math.Sqrt(Square(up + built.Up) + Square(left + built.Left) + Square(outward + built.Out));
            if (far > Reach)
            {
                // All that follows starts from there.
                Add(move.At, $"the rod tip would be {Length(far)} from where it was", $"up to {Length(Reach)}", "move it less far, or bring it back before");
                return;
            }

            if (tipHeight is { } height && height + up + built.Up < 0)
                Add(move.At, "the rod tip would dip into the water", $"down to the water, {Length(height + up)} lower", "lower it less, or lift it before");
            if (built.Beats > 0)
                continue;
            up += built.Up;
            left += built.Left;
            outward += built.Out;
        }

        double off = Math.Sqrt((up * up) + (left * left) + (outward * outward));
        if (off > 1e-9 && !endless && !swings && raw.Count > 0)
            Add(raw[^1].At, string.Create(CultureInfo.InvariantCulture, $"the moves repeat, but end with the rod tip {Length(off)} from where it began"), "moves that bring the rod tip back", "add \"- return: {time: 1 s}\" at the end");
    }

    private static double PerTurn(ReadValue? tackle) =>
        ScenarioBuilder.ReelOf(tackle?["reel"]) is { } reel ? reel.LinePerTurn : double.NaN;

    private static double SpeedOf(ReadValue? value, double perTurn) =>
        Number(value?["speed"]) ?? (Number(value?["handle_turns"]) * perTurn) ?? double.NaN;

    private static double? Number(ReadValue? value) => value is null || double.IsNaN(value.Number) ? null : value.Number;

    private static double Square(double value) => value * value;

    private static string Length(double value) => QuantityText.Both(QuantityKind.Length, value);

    private void Add(ReadValue at, string message, string allowed, string fix) =>
        problems.Add(at.Line, at.Column, at.Path, at.Text, message, allowed, fix);
}
