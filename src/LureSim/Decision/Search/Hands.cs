using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>Where a lure is to be when its retrieve begins: a sink count follows it with depth, weight and current.</summary>
internal enum SinkTarget
{
    /// <summary>The scenario's own count.</summary>
    Own,

    /// <summary>The upper quarter of the strike zone.</summary>
    ZoneTop,

    /// <summary>The middle of the strike zone.</summary>
    ZoneMiddle,

    /// <summary>The bottom, however long it takes.</summary>
    Bottom,
}

/// <summary>Variations of a presentation that hands can do.</summary>
internal static class Hands
{
    // The zone's share from its upper edge at which a count aims.
    private const double Upper = 0.25;

    // Factors of the scenario's own figure: a look to either side, and back to it.
    private static readonly double[] Sides = [0.7, 1, 1.4];

    // Below this count a hand tells half seconds apart.
    private const double FineCount = 4;

    // Slower water than this makes no difference to where a cast goes (m/s).
    private const double LeastCurrent = 0.05;

    /// <summary>The depth that a target aims at (m); infinite for the bottom.</summary>
    public static double Depth(SinkTarget target, StrikeZone zone) => target switch
    {
        SinkTarget.ZoneTop => zone.Top + (Upper * (zone.Bottom - zone.Top)),
        SinkTarget.ZoneMiddle => 0.5 * (zone.Top + zone.Bottom),
        SinkTarget.Bottom => double.PositiveInfinity,
        _ => throw new ArgumentOutOfRangeException(nameof(target), target, "Has no depth."),
    };

    /// <summary>A count as a voice can keep it.</summary>
    public static double Rounded(double seconds)
    {
        double step = seconds < FineCount ? HandBounds.Of(Hand.SinkCount).Step : 1;
        return Math.Round(seconds / step) * step;
    }

    /// <summary>Variations of one hand about a presentation, given the scenario's own; the present one is not among them.</summary>
    public static IReadOnlyList<Presentation> Of(Hand hand, Presentation own, Presentation now, Spot spot, HandRanges ranges)
    {
        HandBounds bounds = HandBounds.Of(hand, ranges);
        IEnumerable<Presentation> varied = hand switch
        {
            Hand.ReelSpeed => own.RetrieveSpeed > 0 ? bounds.Tried(own.RetrieveSpeed, Sides).Select(speed => now with { RetrieveSpeed = Math.Min(own.FastestSpeed, speed) }) : [],
            Hand.Lift => Moved(move => Math.Abs(move.Up), Lifted),
            Hand.Rest => Moved(move => move.Kind == MoveKind.Pause && double.IsFinite(move.Duration) ? move.Duration : 0, Rested),
            Hand.CastAngle => spot.CurrentSpeed > LeastCurrent ? new[] { bounds.Least, 0, bounds.Most }.Select(turn => now with { Aim = own.Aim + turn }) : [],
            _ => throw new ArgumentOutOfRangeException(nameof(hand), hand, "Is not varied by moves."),
        };
        return [.. varied.Where(other => other != now).Distinct()];

        // The first move that the hand works leads; the others keep their proportion to it, within the bounds.
        IEnumerable<Presentation> Moved(Func<Move, double> figure, Func<Move, Move, double, Move> changed)
        {
            double lead = own.Moves.Select(figure).FirstOrDefault(value => value > 0);
            return lead > 0
                ? bounds.Tried(lead, Sides).Select(value => now with { Moves = [.. now.Moves.Zip(own.Moves, (m, o) => figure(o) > 0 ? changed(m, o, bounds.Scaled(figure(o), value / lead)) : m)] })
                : [];
        }
    }

    // Of a twitch the height alone is the lift's: its beat is another hand's.
    private static Move Lifted(Move now, Move own, double up) =>
        now with { Up = Math.Sign(own.Up) * up, Duration = own.Kind == MoveKind.Twitch ? now.Duration : own.Lifted(up).Duration };

    private static Move Rested(Move now, Move own, double rest) => now with { Duration = rest };
}
