using LureSim.Swimming.Bodies;

namespace LureSim.Swimming;

/// <summary>A trace and what it comes to.</summary>
/// <param name="Trace">Motion.</param>
/// <param name="Report">Figures and verdict.</param>
public sealed record ActionAssessment(ActionTrace Trace, ActionReport Report);

/// <summary>Simulates and judges in one go.</summary>
public static class LureActionModel
{
    /// <summary>Simulates a window and judges it.</summary>
    /// <param name="body">The lure.</param>
    /// <param name="knot">Its knot.</param>
    /// <param name="tow">What the line does.</param>
    /// <param name="options">Settings, or null: five seconds for a steady retrieve or a fall, and for twitches until two seconds after the last.</param>
    /// <param name="cancellation">Ends the run early.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A member of the input is out of its range.</exception>
    public static ActionAssessment Assess(ActionBody body, Knot knot, TowInput tow, ActionOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(tow);
        ArgumentNullException.ThrowIfNull(tow.Strokes);
        options ??= tow.Mode == TowMode.Pulled && tow.Strokes.Count > 0
            ? new ActionOptions { Duration = Math.Clamp(tow.Strokes.Max(s => s.End) + 2, 0.5, 60) }
            : new ActionOptions();
        ActionTrace trace = Towing.Simulate(body, knot, tow, options, cancellation);
        return new(trace, ActionAnalysis.Of(trace));
    }
}
