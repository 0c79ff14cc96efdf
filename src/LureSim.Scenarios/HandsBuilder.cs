using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>Checks and builds how far the angler will go with each hand and with the weight.</summary>
internal static class HandsBuilder
{
    private static readonly (string Key, Hand Hand, QuantityKind Kind, string What)[] Keys =
    [
        ("sink_count", Hand.SinkCount, QuantityKind.Duration, "count"),
        ("reel_speed", Hand.ReelSpeed, QuantityKind.Speed, "reel speed"),
        ("lift", Hand.Lift, QuantityKind.Length, "lift"),
        ("rest", Hand.Rest, QuantityKind.Duration, "rest"),
        ("cast_angle", Hand.CastAngle, QuantityKind.Angle, "cast"),
    ];

    // Two ways of writing the same figure may differ by the rounding of units.
    private const double Rounding = 1e-9;

    /// <summary>Checks that the ends are in order.</summary>
    public static void Check(ReadValue? hands, Action<ReadValue, string, string, string> add)
    {
        foreach (ReadValue list in Keys.Select(key => key.Key).Append("weight").Select(key => hands?[key]).OfType<ReadValue>().Where(list => list.Items.Count == 2))
        {
            if (list.Items[1].Number < list.Items[0].Number)
                add(list.Items[1], "the values are out of order", "the smaller number first", "give the values in order");
        }
    }

    /// <summary>Checks a scenario against its bounds: its own figures must lie inside, since the search begins there.</summary>
    public static void CheckFigures(ReadValue? hands, Scenario scenario, Action<ReadValue, string, string, string> add)
    {
        if (hands is null) return;
        foreach ((string key, Hand hand, QuantityKind kind, string what) in Keys)
        {
            if (hands[key] is not { } list || scenario.Hands.Of(hand) is not { } range) continue;
            foreach (Presentation way in scenario.Presentations)
            {
                double[] own = [.. OwnFigures(way, hand).Where(figure => figure < range.Least * (1 - Rounding) || figure > range.Most * (1 + Rounding))];
                if (own.Length == 0) continue;
                add(list, $"the {what} of \"{way.Name}\", {QuantityText.Both(kind, own[0])}, lies outside", $"a range around {QuantityText.Plain(kind, own[0])}", "widen the range or change the presentation");
                break;
            }
        }

        if (scenario.Hands.CastAngle is { } turn && !turn.Contains(0))
            add(hands.At("cast_angle"), "the presentation's own direction, 0 deg, lies outside", "a range around 0 deg", "change aim in the presentations instead");
        if (scenario.Tackle.JigHeads.Count > 0 && !scenario.Tackle.JigHeads.Any(scenario.Hands.Allows))
            add(hands.At("weight"), "no jig head in your box lies inside", string.Join(", ", scenario.Tackle.JigHeads.Select(head => head.Label)), "widen the range or add a head");
    }

    /// <summary>Builds.</summary>
    public static HandRanges Build(ReadValue? hands) => hands is null ? HandRanges.None : new HandRanges
    {
        Weight = Range(hands["weight"]),
        SinkCount = Range(hands["sink_count"]),
        ReelSpeed = Range(hands["reel_speed"]),
        Lift = Range(hands["lift"]),
        Rest = Range(hands["rest"]),
        CastAngle = Range(hands["cast_angle"]),
    };

    private static ValueRange? Range(ReadValue? list) => list is null ? null : new ValueRange(list.Items[0].Number, list.Items[1].Number);

    private static IEnumerable<double> OwnFigures(Presentation way, Hand hand) => hand switch
    {
        Hand.SinkCount => way.CountDown is { } count ? [count] : [],
        Hand.ReelSpeed => way.RetrieveSpeed > 0 ? [way.RetrieveSpeed] : [],
        Hand.Lift => way.Moves.Where(move => move.Up != 0).Select(move => Math.Abs(move.Up)),
        Hand.Rest => way.Moves.Where(move => move.Kind == MoveKind.Pause && double.IsFinite(move.Duration)).Select(move => move.Duration),
        Hand.CastAngle => [],
        _ => throw new ArgumentOutOfRangeException(nameof(hand), hand, "Not a hand."),
    };
}
