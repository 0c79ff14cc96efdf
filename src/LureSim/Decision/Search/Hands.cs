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

    // Factors of a look to either side.
    private static readonly double[] Sides = [0.7, 1.4];

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
    public static IReadOnlyList<Presentation> Of(Hand hand, Presentation own, Presentation now, Spot spot)
    {
        IEnumerable<Presentation> varied = hand switch
        {
            Hand.ReelSpeed => own.RetrieveSpeed > 0 ? Sides.Select(factor => now with { RetrieveSpeed = Math.Min(own.FastestSpeed, HandBounds.Of(hand).Scaled(own.RetrieveSpeed, factor)) }) : [],
            Hand.Lift => own.Moves.Any(move => move.Up != 0) ? Sides.Select(factor => now with { Moves = [.. now.Moves.Zip(own.Moves, (m, o) => Lifted(m, o, factor))] }) : [],
            Hand.Rest => own.Moves.Any(move => move.Kind == MoveKind.Pause) ? Sides.Select(factor => now with { Moves = [.. now.Moves.Zip(own.Moves, (m, o) => Rested(m, o, factor))] }) : [],
            Hand.CastAngle => spot.CurrentSpeed > LeastCurrent ? Angles(own, now) : [],
            _ => throw new ArgumentOutOfRangeException(nameof(hand), hand, "Is not varied by moves."),
        };
        return [.. varied.Where(other => other != now).Distinct()];
    }

    // The tip of a lift keeps its speed: a higher lift takes longer.
    private static Move Lifted(Move now, Move own, double factor)
    {
        if (own.Up == 0) return now;
        double up = HandBounds.Of(Hand.Lift).Scaled(Math.Abs(own.Up), factor);
        return now with { Up = Math.Sign(own.Up) * up, Duration = own.Kind == MoveKind.Twitch ? now.Duration : own.Duration * up / Math.Abs(own.Up) };
    }

    private static Move Rested(Move now, Move own, double factor) =>
        own.Kind == MoveKind.Pause && double.IsFinite(own.Duration) ? now with { Duration = HandBounds.Of(Hand.Rest).Scaled(own.Duration, factor) } : now;

    private static IEnumerable<Presentation> Angles(Presentation own, Presentation now)
    {
        HandBounds bounds = HandBounds.Of(Hand.CastAngle);
        foreach (double turn in (double[])[bounds.Least, bounds.Most])
            yield return now with { Aim = own.Aim + turn };
    }
}
