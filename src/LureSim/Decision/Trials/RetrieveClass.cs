using LureSim.Data;
using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Decision.Trials;

/// <summary>The ways of working a lure that are told apart when a bait's looks are judged, simplest first.</summary>
public enum RetrieveClass
{
    /// <summary>The reel turns and nothing else.</summary>
    Steady,

    /// <summary>The current does the work.</summary>
    Swing,

    /// <summary>The reel turns and rests.</summary>
    StopAndGo,

    /// <summary>Short strokes of the rod.</summary>
    Twitch,

    /// <summary>Long strokes of the rod.</summary>
    LiftAndDrop,
}

/// <summary>How natural a bait looks by the way it is worked, from Data/rules/retrieve_naturalness.csv (common practice, figures assumed).</summary>
/// <param name="Profile">The bait.</param>
/// <param name="ByClass">Factor by class, 0 to 1.</param>
/// <param name="Idle">Worth of a moment in the zone with the action off, 0 to 1.</param>
/// <param name="Fastest">Reel speed above which the bait outruns what it imitates (m/s).</param>
public sealed record Naturalness(BodyProfile Profile, IReadOnlyList<double> ByClass, double Idle, double Fastest)
{
    // A single stroke of this length or more lifts a lure rather than twitching it (m).
    private const double LongStroke = 0.4;

    private static readonly Lazy<Dictionary<BodyProfile, Naturalness>> Table = new(() => ReferenceTable.Rules("retrieve_naturalness").Rows
        .Select(row => new Naturalness(
            LureKinds.Named(row.Text("profile")).Profile,
            [row.Number("steady"), row.Number("swing"), row.Number("stop_and_go"), row.Number("twitch"), row.Number("lift_and_drop")],
            row.Number("idle"),
            row.Number("fastest_m_s")))
        .ToDictionary(row => row.Profile));

    /// <summary>The row of a bait.</summary>
    /// <param name="profile">The bait.</param>
    /// <exception cref="InvalidOperationException">The table has no row for it.</exception>
    public static Naturalness Of(BodyProfile profile) => Table.Value.TryGetValue(profile, out Naturalness? row) ? row : throw new InvalidOperationException($"retrieve_naturalness.csv has no row for {profile}.");

    /// <summary>The class of a presentation, by its moves.</summary>
    /// <param name="presentation">The presentation.</param>
    /// <exception cref="ArgumentNullException"><paramref name="presentation"/> is null.</exception>
    public static RetrieveClass ClassOf(Presentation presentation)
    {
        ArgumentNullException.ThrowIfNull(presentation);
        RetrieveClass found = RetrieveClass.Steady;
        foreach (Move move in presentation.Moves)
        {
            RetrieveClass of = move.Kind switch
            {
                MoveKind.Swing => RetrieveClass.Swing,
                MoveKind.Lift or MoveKind.Lower or MoveKind.Sweep => RetrieveClass.LiftAndDrop,
                MoveKind.Twitch => move.Travel >= LongStroke && move.Beats == 1 ? RetrieveClass.LiftAndDrop : RetrieveClass.Twitch,
                MoveKind.Pause => RetrieveClass.StopAndGo,
                MoveKind.Reel or MoveKind.Return or MoveKind.Feed => RetrieveClass.Steady,
                _ => throw new ArgumentOutOfRangeException(nameof(presentation), move.Kind, "Not a move."),
            };
            if (of > found) found = of;
        }

        return found;
    }

    /// <summary>The factor for a presentation.</summary>
    /// <param name="presentation">The presentation.</param>
    public double Factor(Presentation presentation)
    {
        double speed = presentation.RetrieveSpeed;
        return ByClass[(int)ClassOf(presentation)] * (speed > Fastest ? Fastest / speed : 1);
    }
}
