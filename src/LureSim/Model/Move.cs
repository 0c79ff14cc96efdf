namespace LureSim.Model;

/// <summary>
/// One move of a retrieve: for how long, at what line speed, and where the rod tip goes meanwhile. A retrieve is a list of them; the reel and the rod tip take
/// any figures, so that a new retrieve is new data.
/// </summary>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record Move
{
    // Wider than what a scenario may say: the engine takes these.
    private static readonly ValueRange Time = new(0, 3600);
    private static readonly ValueRange Share = new(0, 1000);
    private static readonly ValueRange Feed = new(0, 5);
    private static readonly ValueRange Reach = new(-5, 5);
    private const int MostBeats = 20;

    /// <summary>Shortest time in which the rod tip travels (s): what is shorter is a knock at the rod.</summary>
    internal const double LeastTipTime = 0.02;

    /// <summary>Its name in the trade, for words and for what ends it.</summary>
    public required MoveKind Kind { get; init => field = Guard.Defined(value); }

    /// <summary>Duration (s), 0 to 3600; infinite for reeling until the line is in. A swing ends by itself, at the latest after this time.</summary>
    public required double Duration { get; init => field = double.IsPositiveInfinity(value) ? value : Time.Check(value); }

    /// <summary>Speed of the line coming in, as a multiple of <see cref="Presentation.RetrieveSpeed"/>, 0 to 1000: the whole retrieve is made faster or slower by that one figure.</summary>
    public double ReelShare { get; init => field = Share.Check(value); }

    /// <summary>Speed at which line is let out (m/s), 0 to 5.</summary>
    public double FeedSpeed { get; init => field = Feed.Check(value); }

    /// <summary>Travel of the rod tip up (m), -5 to 5.</summary>
    public double Up { get; init => field = Reach.Check(value); }

    /// <summary>Travel of the rod tip to the caster's left (m), -5 to 5.</summary>
    public double Left { get; init => field = Reach.Check(value); }

    /// <summary>Travel of the rod tip away from the angler along the cast (m), -5 to 5.</summary>
    public double Out { get; init => field = Reach.Check(value); }

    /// <summary>0 for a travel that lasts; otherwise the tip goes out and back so many times, evenly over the duration; 0 to 20.</summary>
    public int Beats { get; init => field = (int)new ValueRange(0, MostBeats).Check(value); }

    /// <summary>True if the rod tip moves.</summary>
    public bool MovesTip => Up != 0 || Left != 0 || Out != 0;

    /// <summary>How far the rod tip goes (m).</summary>
    public double Travel => Math.Sqrt((Up * Up) + (Left * Left) + (Out * Out));

    /// <summary>The move with another travel up, as far as a tip can go. The tip keeps its speed, so that a higher lift takes longer; a twitch keeps its beat.</summary>
    /// <param name="up">Travel up (m).</param>
    internal Move Lifted(double up)
    {
        up = Math.Clamp(up, Reach.Least, Reach.Most);
        return this with { Up = up, Duration = Kind == MoveKind.Twitch || Up == 0 ? Duration : Math.Clamp(Duration * Math.Abs(up) / Math.Abs(Up), LeastTipTime, Time.Most) };
    }

    /// <summary>The move over another time, as far as a move may last.</summary>
    /// <param name="seconds">Time (s), 0 or more.</param>
    internal Move Lasting(double seconds) => this with { Duration = Math.Min(seconds, Time.Most) };

    /// <summary>Reeling until the line is in.</summary>
    public static Move ReelIn { get; } = new() { Kind = MoveKind.Reel, Duration = double.PositiveInfinity, ReelShare = 1 };

    /// <summary>A stretch of reeling and a rest, with twitches of the rod tip at the start of the rest.</summary>
    /// <param name="reelFor">How long the reel turns (s).</param>
    /// <param name="pauseFor">How long the rest lasts, its twitches included (s); 0 for a steady retrieve.</param>
    /// <param name="twitches">Number of twitches, 0 to 20.</param>
    /// <param name="twitchHeight">Travel of the rod tip up in each (m), up to 5.</param>
    /// <param name="twitchPeriod">Time for one, up and down (s).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static IReadOnlyList<Move> StopAndGo(double reelFor, double pauseFor, int twitches = 0, double twitchHeight = 0, double twitchPeriod = 0.5)
    {
        Time.Check(pauseFor, nameof(pauseFor));
        if (pauseFor == 0) return [ReelIn];
        double twitching = twitches * twitchPeriod;
        var moves = new List<Move> { new() { Kind = MoveKind.Reel, Duration = reelFor, ReelShare = 1 } };
        if (twitches > 0) moves.Add(new Move { Kind = MoveKind.Twitch, Duration = twitching, Beats = twitches, Up = twitchHeight });
        // A rest that is only a rounding error is none.
        if (pauseFor - twitching > 1e-9) moves.Add(new Move { Kind = MoveKind.Pause, Duration = pauseFor - twitching });
        return moves;
    }
}
