using LureSim.Lures;

namespace LureSim.Tackle;

/// <summary>A lure with all its drag multiplied by a factor: what its parts leave open.</summary>
public sealed class ScaledDragLure : LureProperties
{
    private readonly LureProperties lure;
    private readonly double factor;

    private ScaledDragLure(LureProperties lure, double factor)
    {
        this.lure = lure;
        this.factor = factor;
    }

    /// <summary>Wraps a lure; with a factor of 1 it is the lure itself.</summary>
    /// <param name="lure">The lure.</param>
    /// <param name="factor">Factor on its drag, 0.1 to 10.</param>
    /// <exception cref="ArgumentNullException"><paramref name="lure"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The factor is outside its range.</exception>
    public static LureProperties Of(LureProperties lure, double factor)
    {
        ArgumentNullException.ThrowIfNull(lure);
        Guard.InRange(factor, 0.1, 10);
        return factor == 1
            ? lure
            : new ScaledDragLure(lure, factor) { Mass = lure.Mass, Volume = lure.Volume, AddedMassCoefficient = lure.AddedMassCoefficient, ContactRadius = lure.ContactRadius };
    }

    /// <inheritdoc/>
    public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double value = lure.DragAreaTimesSpeed(speed, kinematicViscosity, out double own);
        slope = factor * own;
        return factor * value;
    }

    /// <inheritdoc/>
    public override bool FallsAcross => lure.FallsAcross;

    /// <inheritdoc/>
    public override double FallDragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        // The line carries a given share of the weight at a speed that goes as 1/sqrt(factor): what the fall adds to the drag nose first moves along.
        double root = Math.Sqrt(factor);
        double value = DragAreaTimesSpeed(speed, kinematicViscosity, out double own);
        double excess = lure.FallDragAreaTimesSpeed(root * speed, kinematicViscosity, out double fall) - lure.DragAreaTimesSpeed(root * speed, kinematicViscosity, out double towed);
        slope = own + (factor * (fall - towed));
        return value + (root * excess);
    }

    /// <inheritdoc/>
    public override double LiftAreaAt(double speed, out double slope) => lure.LiftAreaAt(speed, out slope);
}
