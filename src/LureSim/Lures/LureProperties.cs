using LureSim.Hydrodynamics;

namespace LureSim.Lures;

/// <summary>A lure as a point body on its path.</summary>
/// <remarks>Implementations are immutable. The engine calls <see cref="DragAreaTimesSpeed"/> once an evaluation.</remarks>
public abstract class LureProperties
{
    /// <summary>Mass (kg).</summary>
    public required double Mass { get; init; }

    /// <summary>Displaced volume (m3).</summary>
    public required double Volume { get; init; }

    /// <summary>Added mass per displaced mass (dimensionless): 0.5 for a sphere.</summary>
    public required double AddedMassCoefficient { get; init; }

    /// <summary>Radius at which the lure rests on the bottom (m).</summary>
    public required double ContactRadius { get; init; }

    /// <summary>
    /// Drag area Cd A (m2) at a speed through the water, in force = 1/2 rho CdA U^2, multiplied by the speed (m3/s) so that Stokes drag stays regular at rest.
    /// </summary>
    /// <param name="speed">Speed through the water (m/s), 0 or more.</param>
    /// <param name="kinematicViscosity">nu (m2/s).</param>
    /// <param name="slope">Derivative of the returned value with respect to speed (m2).</param>
    public abstract double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope);

    /// <summary>
    /// The same for a lure that sinks freely, by its speed downward; what <see cref="DragAreaTimesSpeed"/> gives unless the lure falls in another attitude than that in
    /// which it is drawn along.
    /// </summary>
    /// <param name="speed">Speed through the water (m/s), 0 or more.</param>
    /// <param name="kinematicViscosity">nu (m2/s).</param>
    /// <param name="slope">Derivative of the returned value with respect to speed (m2).</param>
    public virtual double FallDragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope) => DragAreaTimesSpeed(speed, kinematicViscosity, out slope);

    /// <summary>True if it falls in another attitude than that in which it is drawn along, so that what its action does on the retrieve does not hold on the fall.</summary>
    public virtual bool FallsAcross => false;

    /// <summary>
    /// Lift area A_L (m2) at a speed through the water, in force = 1/2 rho A_L (|u|^2 z - u_z u) with u the flow past the lure and z upward: across the flow, in the
    /// vertical plane of it, 1/2 rho A_L U^2 where the flow is level and none in a vertical fall. Upward positive; 0 unless a lure says otherwise.
    /// </summary>
    /// <param name="speed">Speed through the water (m/s), 0 or more.</param>
    /// <param name="slope">Derivative of the returned value with respect to speed (m s), finite at rest.</param>
    public virtual double LiftAreaAt(double speed, out double slope)
    {
        slope = 0;
        return 0;
    }
}

/// <summary>A smooth sphere with the drag of Brown &amp; Lawler 2003.</summary>
public sealed class SphereLure : LureProperties
{
    /// <summary>Diameter (m).</summary>
    public required double Diameter { get; init; }

    /// <summary>Creates a sphere from its mass and density.</summary>
    /// <param name="mass">Mass (kg), above 0.</param>
    /// <param name="density">Density (kg/m3), above 0.</param>
    public static SphereLure Of(double mass, double density)
    {
        Guard.Positive(mass);
        Guard.Positive(density);
        double volume = mass / density;
        double diameter = Math.Cbrt(6 * volume / Math.PI);
        return new SphereLure { Mass = mass, Volume = volume, AddedMassCoefficient = 0.5, ContactRadius = diameter / 2, Diameter = diameter };
    }

    /// <inheritdoc/>
    public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double area = Math.PI * Diameter * Diameter / 4;
        double value = SphereDrag.CoefficientTimesSpeed(speed, Diameter, kinematicViscosity, out slope);
        slope *= area;
        return area * value;
    }
}

/// <summary>A body of constant drag area.</summary>
public sealed class ConstantDragLure : LureProperties
{
    /// <summary>Cd A (m2).</summary>
    public required double Area { get; init; }

    /// <inheritdoc/>
    public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        slope = Area;
        return Area * speed;
    }
}
