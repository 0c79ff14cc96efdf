using LureSim.Lures;
using LureSim.Model;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;
using LureSim.Tackle;

namespace LureSim.Coupling;

/// <summary>What swimming, and faults of the rigging, add to the drag and the lift of a lure on its path.</summary>
public static class SwimmingDrag
{
    // Seconds of towing behind one figure.
    private const double Window = 3;

    // Factors beyond these are no drag but a failure of the window.
    private const double LeastFactor = 0.5;
    private const double GreatestFactor = 10;

    // Lift coefficient of one on the area seen from above, pi times two semi-axes: no wing of this shape lifts more, so what is more comes of a window that is not steady.
    private const double GreatestLift = Math.PI;

    /// <summary>
    /// Drag of a lure as it is rigged over the drag of the same lure put on cleanly with its tail at rest, by speed: what action and faults add on the path.
    /// Both are towed at the same angle of the line, so that the attitude that the line gives does not count. 1 where it could not be computed.
    /// </summary>
    /// <param name="tackle">The tackle, for rigging and leader.</param>
    /// <param name="spot">The spot, for the density and the viscosity of its water.</param>
    /// <param name="head">Head.</param>
    /// <param name="body">Body.</param>
    /// <param name="speeds">Speeds (m/s).</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>Factors and lift areas (m2), one for each speed.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static (double[] Factors, double[] LiftAreas) Of(Outfit tackle, Spot spot, JigHead head, LureBody body, IReadOnlyList<double> speeds, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(speeds);
        Rigging clean = tackle.Rigging.Straightened();
        var rigged = new RigWindow(tackle, spot, head, body, cancellation);
        var still = new RigWindow(tackle with { Rigging = clean }, spot, head, body, cancellation);
        bool alike = clean == tackle.Rigging && !rigged.HasTail;
        LureProperties lure = TackleBuilder.Lure(head, body);
        double[] factors = new double[speeds.Count];
        double[] lifts = new double[speeds.Count];
        for (int i = 0; i < speeds.Count; i++)
        {
            double elevation = rigged.HeldElevation(lure, speeds[i]);
            ActionAssessment run = rigged.Steady(speeds[i], elevation, Window);
            ActionAssessment? rest = alike ? null : still.Steady(speeds[i], elevation, Window, ActionTerms.All & ~ActionTerms.Wake);
            factors[i] = rest is null ? 1 : Ratio(run, rest);
            if (run.Trace.Status != SimulationStatus.Completed || !double.IsFinite(run.Report.LiftCoefficient)) continue;
            Vector3d axes = run.Trace.Body.SemiAxes;
            double greatest = GreatestLift * axes.X * Math.Max(axes.Y, axes.Z);
            lifts[i] = Math.Clamp(run.Report.LiftCoefficient * Math.PI * axes.Y * axes.Z, -greatest, greatest);
        }

        return (factors, lifts);
    }

    /// <summary>Mean drag of a steady window over that of another: the mean pull of the line along the path is the mean drag. 1 where either failed.</summary>
    internal static double Ratio(ActionAssessment run, ActionAssessment rest)
    {
        double with = MeanPull(run.Trace), without = MeanPull(rest.Trace);
        return with > 0 && without > 0 ? Math.Clamp(with / without, LeastFactor, GreatestFactor) : 1;
    }

    private static double MeanPull(ActionTrace trace)
    {
        if (trace.Status != SimulationStatus.Completed) return double.NaN;
        double sum = 0;
        int count = 0;
        for (int i = 0; i < trace.Count; i++)
        {
            if (trace.Time[i] < trace.Options.SettlingTime) continue;
            sum += trace.LinePull[i].X;
            count++;
        }

        return count > 0 ? sum / count : double.NaN;
    }
}
