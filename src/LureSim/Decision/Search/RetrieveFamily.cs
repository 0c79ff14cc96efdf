using LureSim.Data;
using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>What a hand can vary in a retrieve.</summary>
public enum RetrieveParameterKind
{
    /// <summary>Line speed while the reel turns (m/s).</summary>
    ReelSpeed,

    /// <summary>Share of the fall to the bottom after which the retrieve begins.</summary>
    CountDownShare,

    /// <summary>Length of each stretch of reeling (s).</summary>
    ReelFor,

    /// <summary>Length of each rest (s).</summary>
    Pause,

    /// <summary>Travel of the rod tip in each twitch or lift (m).</summary>
    RodHeight,
}

/// <summary>A parameter of a family with its range.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Low">Least value (SI).</param>
/// <param name="High">Greatest value (SI).</param>
/// <param name="Step">What an answer is rounded to; 0 for no rounding here.</param>
public sealed record RetrieveParameter(RetrieveParameterKind Kind, double Low, double High, double Step)
{
    /// <summary>The value at a place in the range; speeds are spread by their logarithm.</summary>
    /// <param name="place">Place, 0 to 1.</param>
    public double At(double place)
    {
        double at = Math.Clamp(place, 0, 1);
        return Kind == RetrieveParameterKind.ReelSpeed ? Low * Math.Pow(High / Low, at) : Low + (at * (High - Low));
    }

    /// <summary>The nearest value that a hand can keep, inside the range.</summary>
    /// <param name="value">The value.</param>
    public double Rounded(double value) => Step > 0 ? Math.Clamp(Math.Round(value / Step) * Step, Low, High) : value;
}

/// <summary>A way to work a lure with what can be varied in it. Source: Data/tackle/retrieve_families.csv (common practice, ranges assumed).</summary>
/// <param name="Name">Name of the ready-made retrieve that its moves come from.</param>
/// <param name="Moves">The moves of that retrieve.</param>
/// <param name="Parameters">What is varied.</param>
public sealed record RetrieveFamily(string Name, IReadOnlyList<Move> Moves, IReadOnlyList<RetrieveParameter> Parameters)
{
    // Share of the fall from which on the lure is let down until it lies there.
    private const double ToBottom = 0.97;

    /// <summary>All families, in the order of the table.</summary>
    public static IReadOnlyList<RetrieveFamily> All { get; } = Read();

    /// <summary>The retrieve of a set of values.</summary>
    /// <param name="like">A presentation that cast, fall, aim, drift and end are taken from.</param>
    /// <param name="values">Values (SI), one a parameter.</param>
    /// <param name="fall">How long the lure may fall.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is not one value for each parameter.</exception>
    public Presentation Build(Presentation like, IReadOnlyList<double> values, FallTime fall)
    {
        ArgumentNullException.ThrowIfNull(like);
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(fall);
        if (values.Count != Parameters.Count)
            throw new ArgumentException("There must be a value for each parameter.", nameof(values));
        double speed = Value(RetrieveParameterKind.ReelSpeed) ?? like.RetrieveSpeed;
        double share = Value(RetrieveParameterKind.CountDownShare) ?? 1;
        double? reel = Value(RetrieveParameterKind.ReelFor), pause = Value(RetrieveParameterKind.Pause), height = Value(RetrieveParameterKind.RodHeight);
        return new Presentation
        {
            Name = Name,
            CastLength = like.CastLength,
            CastWith = like.CastWith,
            FullCast = like.FullCast,
            Fall = like.Fall,
            CountDown = share >= ToBottom && fall.ReachesBottom ? null : Math.Round(share * fall.Seconds),
            RetrieveSpeed = speed,
            LineLeftAtEnd = like.LineLeftAtEnd,
            Moves = [.. Moves.Select(Varied)],
            Style = Name,
            Aim = like.Aim,
            DriftSpeed = like.DriftSpeed,
            DriftDirection = like.DriftDirection,
        };

        double? Value(RetrieveParameterKind kind)
        {
            for (int i = 0; i < Parameters.Count; i++)
            {
                if (Parameters[i].Kind == kind) return values[i];
            }

            return null;
        }

        Move Varied(Move move) => move.Kind switch
        {
            MoveKind.Reel when reel is { } r && double.IsFinite(move.Duration) => move with { Duration = r },
            MoveKind.Pause when pause is { } p => move with { Duration = p },
            MoveKind.Twitch when height is { } h => move with { Up = h },
            MoveKind.Lift or MoveKind.Lower when height is { } h => move.Lifted(Math.Sign(move.Up) * h),
            _ => move,
        };
    }

    private static RetrieveFamily[] Read() =>
    [
        .. ReferenceTable.Tackle("retrieve_families").Rows.GroupBy(row => row.Text("family")).Select(group =>
        {
            // Names in the table stand without their commas.
            RetrieveStyle style = RetrieveStyle.All.First(s => s.Name.Replace(",", "", StringComparison.Ordinal) == group.Key);
            return new RetrieveFamily(
                style.Name,
                style.Moves,
                [.. group.Select(row => new RetrieveParameter(KindOf(row.Text("parameter")), row.Number("low"), row.Number("high"), row.Number("step")))]);
        }),
    ];

    private static RetrieveParameterKind KindOf(string name) => name switch
    {
        "reel_speed_m_s" => RetrieveParameterKind.ReelSpeed,
        "count_down_share" => RetrieveParameterKind.CountDownShare,
        "reel_for_s" => RetrieveParameterKind.ReelFor,
        "pause_s" => RetrieveParameterKind.Pause,
        "rod_height_m" => RetrieveParameterKind.RodHeight,
        _ => throw new InvalidOperationException($"The table of families names an unknown parameter, {name}."),
    };
}

/// <summary>How long a lure falls.</summary>
/// <param name="Seconds">Seconds to the bottom, or the longest that an angler waits.</param>
/// <param name="ReachesBottom">Whether it gets there.</param>
public sealed record FallTime(double Seconds, bool ReachesBottom);
