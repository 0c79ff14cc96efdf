using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Decision.Observations;

/// <summary>What an observer would have seen of a cast that is simulated.</summary>
internal static class ObservedRun
{
    // Longest fall that is watched, and the figure that stands for never (s).
    private const double LongestFall = 90;

    // A retrieve is followed this much longer than the turns that were counted, and a little more (s).
    private const double Further = 1.8;
    private const double Least = 8;

    /// <summary>True for what needs a cast to be simulated; the rest is closed form.</summary>
    public static bool NeedsCast(ObservationKind kind) => kind is
        ObservationKind.BottomTime or ObservationKind.FirstTick or ObservationKind.TurnsToTick or ObservationKind.TurnsToClear or
        ObservationKind.LineAngle or ObservationKind.ExitAngle or ObservationKind.LineOut;

    /// <summary>The figure that would be observed; infinite where it never happens.</summary>
    /// <param name="scenario">The scenario in the state that is tried.</param>
    /// <param name="observation">What was observed.</param>
    /// <param name="way">The cast with the length and the speed that are tried.</param>
    /// <param name="options">Settings with the drags that are tried.</param>
    /// <param name="cancellation">Honoured within the simulation.</param>
    public static double Predict(Scenario scenario, Observation observation, Presentation way, SimulationOptions options, CancellationToken cancellation)
    {
        double perTurn = scenario.Tackle.Reel.LinePerTurn;
        bool fall = observation.Kind is ObservationKind.BottomTime or ObservationKind.FirstTick or ObservationKind.LineAngle or ObservationKind.LineOut;
        if (fall) options = options with { FallOnly = true, FallLimit = LongestFall, SampleInterval = 0.1 };
        if (fall && observation.Kind != ObservationKind.LineAngle) way = way with { CountDown = null };
        if (observation.Kind is ObservationKind.TurnsToTick or ObservationKind.TurnsToClear && way.RetrieveSpeed > 0)
        {
            double seconds = (Further * observation.Value * perTurn / way.RetrieveSpeed) + Least;
            way = way with { TimeLimit = Math.Clamp(Math.Min(seconds, way.TimeLimit ?? double.PositiveInfinity), Limits.TimeLimit.Least, Limits.TimeLimit.Most) };
        }

        Track track = Trial.Simulate(scenario, new Rig(observation.Head!, observation.Body!, way), options, cancellation);
        double? landed = track.Events.FirstOrDefault(e => e.Kind == TrackEventKind.BottomContact)?.Time;
        return observation.Kind switch
        {
            ObservationKind.BottomTime or ObservationKind.FirstTick => landed ?? double.PositiveInfinity,
            ObservationKind.LineOut => landed is null ? double.PositiveInfinity : track.LineOut[^1],
            ObservationKind.LineAngle => Bearing(track.Shapes.Count > 0 ? track.Shapes[0] : null, way),
            ObservationKind.ExitAngle => Math.Atan2(track.Y[^1] - (way.DriftLeft * track.Time[^1]), track.X[^1] - (way.DriftAlong * track.Time[^1])),
            ObservationKind.TurnsToTick => Turns(track, perTurn, first: true),
            ObservationKind.TurnsToClear => Turns(track, perTurn, first: false),
            _ => throw new ArgumentOutOfRangeException(nameof(observation), observation.Kind, "Not seen on a cast."),
        };
    }

    // Where the line enters the water as seen from the rod tip; a line all in the air or in the water is looked at where it ends.
    private static double Bearing(LineShape? shape, Presentation way)
    {
        if (shape is null) return 0;
        double tipX = way.DriftAlong * shape.Time, tipY = way.DriftLeft * shape.Time;
        for (int i = shape.Z.Length - 2; i >= 0; i--)
        {
            if (shape.Z[i] > 0 && i > 0) continue;
            double above = shape.Z[i + 1], part = above > 0 && shape.Z[i] < 0 ? above / (above - shape.Z[i]) : 1;
            double x = shape.X[i + 1] + (part * (shape.X[i] - shape.X[i + 1])), y = shape.Y[i + 1] + (part * (shape.Y[i] - shape.Y[i + 1]));
            return Math.Atan2(y - tipY, x - tipX);
        }

        return 0;
    }

    // Turns from the start of the retrieve to the first or the last sample on the bottom.
    private static double Turns(Track track, double perTurn, bool first)
    {
        int start = 0;
        while (start < track.Count && (track.State[start] & TrackState.Falling) != 0) start++;
        if (start >= track.Count) return first ? double.PositiveInfinity : 0;
        double last = first ? double.PositiveInfinity : 0;
        bool off = !first;
        for (int i = start; i < track.Count; i++)
        {
            bool on = (track.State[i] & TrackState.OnBottom) != 0;
            double turns = Math.Max(0, track.LineOut[start] - track.LineOut[i]) / perTurn;

            // A lure that begins on the bottom ticks once it has been off it.
            if (first && on && off) return turns;
            if (!on) off = true;
            if (!first && on) last = turns;
        }

        return last;
    }
}
