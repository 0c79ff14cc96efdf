using LureSim.Model;

namespace LureSim.Decision.Observations;

/// <summary>How well a person sees, feels, counts and times: standard deviations of what is observed. All assumed but where a source is named.</summary>
public static class ObservationErrors
{
    /// <summary>Reaction to a stop that is seen or felt, less that at the start (s); assumed, as for closing the bail.</summary>
    public const double Reaction = 0.3;

    /// <summary>Pace of a count in the head, as a share of it; assumed.</summary>
    public const double Pace = 0.1;

    /// <summary>What rounding to whole counts leaves (counts): 1/sqrt(12).</summary>
    public const double WholeCount = 0.28867513459481287;

    /// <summary>When in a turn a tick is felt (turns), and what line stretch and a loose lay of line make of the turns (share); assumed.</summary>
    public const double Turn = 0.5;

    /// <summary>What stretch and the lay of the line make of a number of turns, as a share of it; assumed.</summary>
    public const double TurnShare = 0.05;

    /// <summary>An angle judged by eye (radians): 7 degrees, assumed.</summary>
    public const double Angle = 7 * Math.PI / 180;

    /// <summary>Depth at which a plate is lost from sight, between observers and glints, as a share; assumed.</summary>
    public const double Plate = 0.1;

    /// <summary>The same of a lure, which is smaller and no plain white, as a share; assumed.</summary>
    public const double Lure = 0.2;

    /// <summary>A bright lure goes out of sight at this share of a white disc's depth: it is small. Assumed.</summary>
    public const double LureOfPlate = 0.8;

    /// <summary>A distance paced or judged by boat lengths, as a share; assumed.</summary>
    public const double Marks = 0.1;

    /// <summary>A depth that was measured with a tape or a marked line, as a share; assumed.</summary>
    public const double Tape = 0.02;

    /// <summary>Length of line out by turns, colors or a counter, as a share, and its least (m); assumed.</summary>
    public const double Line = 0.05;

    /// <summary>Least error of a length of line out (m); assumed.</summary>
    public const double LineLeast = 0.3;

    /// <summary>The standard deviation of an observation in its own unit: the observer's own where it was stated, otherwise that of the kind.</summary>
    /// <param name="observation">The observation.</param>
    /// <exception cref="ArgumentNullException"><paramref name="observation"/> is null.</exception>
    public static double Of(Observation observation)
    {
        ArgumentNullException.ThrowIfNull(observation);
        if (observation.Error is { } stated) return stated;
        double value = Math.Abs(observation.Value);
        double pace = observation.Counted ? Pace * value : 0, whole = observation.Counted ? WholeCount : 0;
        return observation.Kind switch
        {
            ObservationKind.BottomTime => Sum(Reaction, pace, whole),
            ObservationKind.FirstTick => Sum(Reaction, Pace * value, WholeCount),
            ObservationKind.TurnsToTick or ObservationKind.TurnsToClear => Sum(Turn, TurnShare * value),
            ObservationKind.LineAngle or ObservationKind.ExitAngle => Angle,
            ObservationKind.WhiteVanishes => Math.Max(Plate * value, 1e-3),
            ObservationKind.LureVanishes => Math.Max(Lure * value, 1e-3),
            ObservationKind.FloatDrift => Sum(Reaction, Marks * value, pace, whole),
            ObservationKind.PoolFall => Sum(Reaction, Tape * value, pace, whole),
            ObservationKind.LineOut => Sum(LineLeast, Line * value),
            _ => throw new ArgumentOutOfRangeException(nameof(observation), observation.Kind, "Not a kind of observation."),
        };
    }

    private static double Sum(params ReadOnlySpan<double> parts)
    {
        double sum = 0;
        foreach (double part in parts) sum += part * part;
        return Math.Sqrt(sum);
    }
}
