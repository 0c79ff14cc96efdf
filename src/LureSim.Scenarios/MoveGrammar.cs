using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>The grammar of a retrieve: its speed and its moves.</summary>
internal static class MoveGrammar
{
    /// <summary>Most moves of one list.</summary>
    public const int MostMoves = 40;

    private static readonly QuantityValue LineSpeed = new(QuantityKind.Speed, Limits.LineSpeed);

    private static readonly QuantityValue Turns = new(QuantityKind.TurnRate, 0.01, 6.0);

    private static readonly QuantityValue MoveTime = new(QuantityKind.Duration, 0.1, 60.0);

    private static readonly QuantityValue Distance = new(QuantityKind.Length, 0.01, 2.5);

    private static readonly GrammarKey WhileReeling = new("reel", LineSpeed, "Speed of line coming in meanwhile.") { Default = "the reel rests" };

    /// <summary>The speed of the line.</summary>
    public static readonly MapValue Retrieve = new("retrieve", "How fast line is taken in while reeling, in one of two forms.",
    [
        new("speed", LineSpeed, "Speed of the line coming in.") { OneOf = "form" },
        new("handle_turns", Turns, "Turns of the reel handle in a time; the reel gives the speed, which must be 0.02 m/s to 3 m/s.") { OneOf = "form" },
    ]);

    private static readonly MapValue Reel = new("reel", "The reel turns.",
    [
        new("for", MoveTime, "How long.") { Default = "until the line is in; for the last move only" },
        new("speed", LineSpeed, "Speed of the line coming in.") { Default = "that of the retrieve" },
        new("handle_turns", Turns, "Turns of the handle in its place.") { Default = "the speed" },
    ]);

    private static readonly MapValue Lift = new("lift", "The rod tip goes up, smoothly, and stays up.",
    [
        new("height", Distance, "How far.") { Required = true },
        new("time", MoveTime, "How long it takes.") { Required = true },
        WhileReeling,
    ]);

    private static readonly MapValue Lower = new("lower", "The rod tip goes down, smoothly. Quickly lowered, the lure drops on a slack line; slowly, it is followed down on a tight one.",
    [
        new("height", Distance, "How far.") { Default = "to the height of the rod tip in `tackle`" },
        new("time", MoveTime, "How long it takes.") { Required = true },
        WhileReeling,
    ]);

    private static readonly MapValue Sweep = new("sweep", "The rod tip goes to the side, or to or from the angler, smoothly, and stays there.",
    [
        new("to", new WordValue(
        [
            new("left", MoveDirection.Left, "to the caster's left"),
            new("right", MoveDirection.Right, "to the caster's right"),
            new("towards", MoveDirection.Towards, "back to the angler, away from the lure"),
            new("away", MoveDirection.Away, "forward, along the cast"),
        ]) { Names = EverydayNames.Direction }, "Where to.") { Required = true },
        new("distance", Distance, "How far.") { Required = true },
        new("time", MoveTime, "How long it takes.") { Required = true },
        WhileReeling,
    ]);

    private static readonly MapValue Return = new("return", "The rod tip goes back to where it was at first, smoothly.",
    [
        new("time", MoveTime, "How long it takes.") { Required = true },
        WhileReeling,
    ]);

    private static readonly MapValue Twitches = new("twitch", "The rod tip goes out and back, once or several times.",
    [
        new("count", new IntegerValue(1, 6), "How many times.") { Default = "1" },
        new("height", Distance, "How far the rod tip goes.") { Required = true },
        new("period", new QuantityValue(QuantityKind.Duration, 0.1, 5.0), "Time for one twitch, out and back.") { Default = "0.5 s" },
        new("to", new WordValue(
        [
            new("up", MoveDirection.Up, "up"),
            new("left", MoveDirection.Left, "to the caster's left"),
            new("right", MoveDirection.Right, "to the caster's right"),
            new("towards", MoveDirection.Towards, "back to the angler"),
        ]) { Names = EverydayNames.Direction }, "Where to.") { Default = "up" },
        WhileReeling,
    ]);

    private static readonly MapValue Feed = new("feed", "Line is let out, until the spool is empty.",
    [
        new("speed", LineSpeed, "Speed of the line going out.") { Required = true },
        new("for", MoveTime, "How long.") { Required = true },
    ]);

    private static readonly MapValue Move = new("move", "A move. The reel takes a quarter of a second to get going, and as long again to stop before the next move.",
    [
        new("reel", Reel, "The reel turns.") { OneOf = "move" },
        new("pause", MoveTime, "Nothing is done for this time.") { OneOf = "move" },
        new("lift", Lift, "The rod tip goes up.") { OneOf = "move" },
        new("lower", Lower, "The rod tip goes down.") { OneOf = "move" },
        new("sweep", Sweep, "The rod tip goes to a side.") { OneOf = "move" },
        new("return", Return, "The rod tip goes back.") { OneOf = "move" },
        new("twitch", Twitches, "The rod tip goes out and back.") { OneOf = "move" },
        new("feed", Feed, "Line is let out.") { OneOf = "move" },
        new("swing", new QuantityValue(QuantityKind.Duration, 1.0, 600.0), "The current sweeps the lure round on a tight line until it hangs straight downcurrent, for this time at most; line comes in meanwhile only if `retrieve` is given.") { OneOf = "move" },
    ]);

    /// <summary>A list of moves.</summary>
    public static readonly ListValue Moves = new(Move, 1, MostMoves);

    /// <summary>How the lure falls.</summary>
    public static readonly WordValue Fall = new(
    [
        new("slack line", FallMode.SlackLine, "bail open: line runs out almost freely"),
        new("tight line", FallMode.TightLine, "closed bail: the lure swings in towards the rod tip"),
    ])
    { Names = EverydayNames.Fall };

    /// <summary>Time from splash-down to the retrieve.</summary>
    public static readonly QuantityValue CountDown = new(QuantityKind.Duration, Limits.CountDown) { Words = [new("to bottom", null, "wait until the lure lies on the bottom")], Names = EverydayNames.CountDown };
}

/// <summary>Where a rod tip goes.</summary>
internal enum MoveDirection
{
    /// <summary>Up.</summary>
    Up,

    /// <summary>To the caster's left.</summary>
    Left,

    /// <summary>To the caster's right.</summary>
    Right,

    /// <summary>Back to the angler.</summary>
    Towards,

    /// <summary>Along the cast.</summary>
    Away,
}
