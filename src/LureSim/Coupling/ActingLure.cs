using LureSim.Lures;
using MathNet.Numerics.Interpolation;

namespace LureSim.Coupling;

/// <summary>A lure whose drag is scaled, by its speed, with what its own action adds or takes away, and which lifts as its attitude on the line makes it.</summary>
public sealed class ActingLure : LureProperties
{
    private readonly LureProperties still;
    private readonly CubicSpline factor;
    private readonly double slowest;
    private readonly double fastest;

    private readonly CubicSpline lift;

    private ActingLure(LureProperties still, CubicSpline factor, CubicSpline lift, double slowest, double fastest)
    {
        this.still = still;
        this.factor = factor;
        this.lift = lift;
        this.slowest = slowest;
        this.fastest = fastest;
    }

    /// <summary>Wraps a lure.</summary>
    /// <param name="still">The lure without action.</param>
    /// <param name="speeds">Speeds (m/s), increasing, three or more; outside them the nearest factor holds.</param>
    /// <param name="factors">Drag with action over drag without, 0.2 to 20, one for each speed.</param>
    /// <param name="liftAreas">Lift areas (m2), upward positive, -0.05 to 0.05, one for each speed; null for no lift.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The lists do not fit.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A factor is out of range.</exception>
    public static ActingLure Of(LureProperties still, IReadOnlyList<double> speeds, IReadOnlyList<double> factors, IReadOnlyList<double>? liftAreas = null)
    {
        ArgumentNullException.ThrowIfNull(still);
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(factors);
        if (speeds.Count < 3 || speeds.Count != factors.Count)
            throw new ArgumentException("There must be three speeds or more, and as many factors.", nameof(speeds));
        foreach (double f in factors) Guard.InRange(f, 0.2, 20, nameof(factors));
        liftAreas ??= new double[speeds.Count];
        if (liftAreas.Count != speeds.Count)
            throw new ArgumentException("There must be as many lift areas as speeds.", nameof(liftAreas));
        foreach (double a in liftAreas) Guard.InRange(a, -0.05, 0.05, nameof(liftAreas));

        // Monotone between the points and smooth, so that the integrator meets no corner inside.
        return new ActingLure(still, CubicSpline.InterpolatePchipSorted([.. speeds], [.. factors]), CubicSpline.InterpolatePchipSorted([.. speeds], [.. liftAreas]), speeds[0], speeds[^1])
        {
            Mass = still.Mass,
            Volume = still.Volume,
            AddedMassCoefficient = still.AddedMassCoefficient,
            ContactRadius = still.ContactRadius,
        };
    }

    /// <summary>Drag with action over drag without at a speed.</summary>
    /// <param name="speed">Speed (m/s).</param>
    public double Factor(double speed) => factor.Interpolate(Math.Clamp(speed, slowest, fastest));

    /// <inheritdoc/>
    public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double value = still.DragAreaTimesSpeed(speed, kinematicViscosity, out double stillSlope);
        double f = Factor(speed);
        double change = speed > slowest && speed < fastest ? factor.Differentiate(speed) : 0;
        slope = (f * stillSlope) + (change * value);
        return f * value;
    }

    /// <inheritdoc/>
    public override bool FallsAcross => still.FallsAcross;

    /// <inheritdoc/>
    public override double FallDragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double fall = still.FallDragAreaTimesSpeed(speed, kinematicViscosity, out double fallSlope);
        if (FallsAcross)
        {
            slope = fallSlope;
            return fall;
        }

        // A tail that swings on the retrieve swings on the fall nose first too; what the line's pull adds by the attitude comes on top.
        double towed = still.DragAreaTimesSpeed(speed, kinematicViscosity, out double towedSlope);
        double acting = DragAreaTimesSpeed(speed, kinematicViscosity, out double actingSlope);
        slope = actingSlope + fallSlope - towedSlope;
        return acting + fall - towed;
    }

    /// <inheritdoc/>
    public override double LiftAreaAt(double speed, out double slope)
    {
        slope = speed > slowest && speed < fastest ? lift.Differentiate(speed) : 0;
        return lift.Interpolate(Math.Clamp(speed, slowest, fastest));
    }
}
