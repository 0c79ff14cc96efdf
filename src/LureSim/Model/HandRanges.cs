namespace LureSim.Model;

/// <summary>How far the angler will go with each hand and with the weight; null where only the common bounds hold.</summary>
/// <exception cref="ArgumentOutOfRangeException">An end is outside its range, or the least is more than the most.</exception>
public sealed record HandRanges
{
    private static readonly ValueRange Weights = new(0, Limits.HeadMass.Most);

    /// <summary>Nothing is bounded.</summary>
    public static HandRanges None { get; } = new();

    /// <summary>Sink count (s), 0 to 120; with it nothing is let fall to the bottom that the scenario counts down.</summary>
    public ValueRange? SinkCount { get; init => field = Within(value, Limits.CountDown, nameof(SinkCount)); }

    /// <summary>Line speed while the reel turns (m/s), 0.02 to 3.</summary>
    public ValueRange? ReelSpeed { get; init => field = Within(value, Limits.LineSpeed, nameof(ReelSpeed)); }

    /// <summary>Travel of the rod tip in a twitch or a lift (m), 0.01 to 2.5.</summary>
    public ValueRange? Lift { get; init => field = Within(value, Limits.Lift, nameof(Lift)); }

    /// <summary>Length of a rest (s), 0.1 to 60.</summary>
    public ValueRange? Rest { get; init => field = Within(value, Limits.Rest, nameof(Rest)); }

    /// <summary>Angle of the cast from the presentation's own direction (radians), -pi/2 to pi/2, to the left positive.</summary>
    public ValueRange? CastAngle { get; init => field = Within(value, Limits.CastTurn, nameof(CastAngle)); }

    /// <summary>Weight of the jig head (kg), 0 to 0.2.</summary>
    public ValueRange? Weight { get; init => field = Within(value, Weights, nameof(Weight)); }

    /// <summary>The range of a hand; null where it was not stated.</summary>
    /// <param name="hand">The hand.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is not a hand.</exception>
    public ValueRange? Of(Hand hand) => hand switch
    {
        Hand.SinkCount => SinkCount,
        Hand.ReelSpeed => ReelSpeed,
        Hand.Lift => Lift,
        Hand.Rest => Rest,
        Hand.CastAngle => CastAngle,
        _ => throw new ArgumentOutOfRangeException(nameof(hand), hand, "Not a hand."),
    };

    /// <summary>Whether a head may be tied on.</summary>
    /// <param name="head">The head.</param>
    /// <exception cref="ArgumentNullException"><paramref name="head"/> is null.</exception>
    public bool Allows(JigHead head)
    {
        ArgumentNullException.ThrowIfNull(head);
        const double rounding = 1e-9;
        return Weight is not { } range || (head.Mass >= range.Least - rounding && head.Mass <= range.Most + rounding);
    }

    private static ValueRange? Within(ValueRange? range, ValueRange limits, string name)
    {
        if (range is not { } given) return null;
        limits.Check(given.Least, name);
        limits.Check(given.Most, name);
        return given.Least <= given.Most ? given : throw new ArgumentOutOfRangeException(name, range, "The least is more than the most.");
    }
}
