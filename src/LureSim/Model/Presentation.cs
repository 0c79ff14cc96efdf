namespace LureSim.Model;

/// <summary>How the lure falls after splash-down.</summary>
public enum FallMode
{
    /// <summary>Open bail: line is paid out almost freely.</summary>
    SlackLine,

    /// <summary>Closed bail: no line is paid out, the lure swings in towards the rod tip.</summary>
    TightLine,
}

/// <summary>A way to fish the lure, as data: a cast, a fall and a list of moves that begin again until the line is in.</summary>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
/// <exception cref="ArgumentException">There is no move.</exception>
public sealed record Presentation
{
    // Wider than what a scenario may say: 0 where no move reels, and what the engine takes (m/s).
    private static readonly ValueRange ReelSpeed = new(0, 5);

    private static readonly ValueList<Move> Steady = new([Move.ReelIn]);

    // Compared by value: two presentations of the same moves are the same.
    private readonly ValueList<Move> moves = Steady;

    /// <summary>Name for people.</summary>
    public required string Name { get; init => field = Guard.Given(value); }

    /// <summary>Horizontal distance from rod tip to splash-down (m), 2 to 80.</summary>
    public required double CastLength { get; init => field = Limits.CastLength.Check(value); }

    /// <summary>
    /// The lure with which the cast is <see cref="CastLength"/> long; the own length of each other lure follows from it (<c>CastReach</c>). Null for a length that holds for every
    /// lure, as far as the rod throws it where there is a rod.
    /// </summary>
    public CastAnchor? CastWith { get; init; }

    /// <summary>True for a cast as far as the rod throws each lure; <see cref="CastLength"/> is then that of a lure in the middle of its rating.</summary>
    public bool FullCast { get; init; }

    /// <summary>How the lure falls.</summary>
    public FallMode Fall { get; init => field = Guard.Defined(value); } = FallMode.SlackLine;

    /// <summary>Seconds from splash-down until the reel turns, 0 to 120; the fall ends sooner if the lure reaches bottom. Null: let it fall to the bottom.</summary>
    public double? CountDown { get; init => field = Limits.CountDown.Check(value); }

    /// <summary>Speed of the line coming in that the shares of the <see cref="Moves"/> refer to (m/s), 0 to 5; a scenario reels at 0.02 to 3, and 0 where no move reels.</summary>
    public required double RetrieveSpeed { get; init => field = ReelSpeed.Check(value); }

    /// <summary>The retrieve ends when this much line is left out (m), 0.3 to 60.</summary>
    public double LineLeftAtEnd { get; init => field = Limits.LineLeft.Check(value); } = 3.0;

    /// <summary>The moves of the retrieve, at least one, repeated until the line is in; a list with a swing is not repeated. A steady retrieve where it is not given.</summary>
    public IReadOnlyList<Move> Moves
    {
        get => moves;
        init => moves = new ValueList<Move>([.. Guard.Items(value, 1)]);
    }

    /// <summary>Name of the ready-made retrieve that the moves come from; null for none.</summary>
    public string? Style { get; init; }

    /// <summary>The retrieve ends this long after it began (s), 5 to 1800, if it has not ended before; null for no such end.</summary>
    public double? TimeLimit { get; init => field = Limits.TimeLimit.Check(value); }

    /// <summary>Direction of the cast, radians to the left of the spot's reference direction; any finite angle.</summary>
    public double Aim { get; init => field = Guard.Finite(value); }

    /// <summary>Speed at which boat or angler carry the rod along (m/s), 0 to 3.</summary>
    public double DriftSpeed { get; init => field = Limits.DriftSpeed.Check(value); }

    /// <summary>Where they go, radians to the left of the spot's reference direction (not of the cast); any finite angle.</summary>
    public double DriftDirection { get; init => field = Guard.Finite(value); }

    /// <summary>Speed of the drift along the cast (m/s).</summary>
    public double DriftAlong => DriftSpeed * Math.Cos(DriftDirection - Aim);

    /// <summary>Speed of the drift to the left of the cast (m/s).</summary>
    public double DriftLeft => DriftSpeed * Math.Sin(DriftDirection - Aim);

    /// <summary>Greatest <see cref="RetrieveSpeed"/> (m/s) at which no move takes line in faster than 3 m/s.</summary>
    public double FastestSpeed => Limits.LineSpeed.Most / Math.Max(1, Moves.Max(move => move.ReelShare));

    /// <summary>Horizontal distance (m) from the rod tip, which may drift, to a point of a track.</summary>
    /// <param name="time">Time since splash-down (s).</param>
    /// <param name="x">Along the cast (m).</param>
    /// <param name="y">To the left (m).</param>
    public double DistanceFromRod(double time, double x, double y)
    {
        double along = x - (DriftAlong * time), left = y - (DriftLeft * time);
        return Math.Sqrt((along * along) + (left * left));
    }

    /// <summary>True if the moves begin again after the last; a swing happens once, and nothing follows reeling until the line is in.</summary>
    public bool Repeats
    {
        get
        {
            foreach (Move move in Moves)
            {
                if (move.Kind == MoveKind.Swing) return false;
            }

            return true;
        }
    }
}
