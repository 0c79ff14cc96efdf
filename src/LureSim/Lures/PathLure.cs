using LureSim.Hydrodynamics;

namespace LureSim.Lures;

/// <summary>A lure on its path: drawn along it trails nose first, sinking freely it falls in its own attitude.</summary>
public sealed class PathLure : LureProperties
{
    /// <summary>Drag nose first of body, hooks, tail and lip.</summary>
    public required IDragComponent Towed { get; init; }

    /// <summary>Its fall on a line; null where it falls nose first.</summary>
    public FallCurve? Fall { get; init; }

    /// <summary>Angle between the body's axis and the flow on a free fall (radians): 0 nose first, pi/2 broadside (<see cref="FreeGlide"/>).</summary>
    public double FallIncidence => Fall?.Free.Incidence ?? 0;

    /// <summary>Angle between the body's axis and the plumb line on a free fall (radians): 0 nose down, pi/2 level.</summary>
    public double FallFromPlumb => Fall?.Free.FromPlumb ?? 0;

    /// <inheritdoc/>
    public override bool FallsAcross => FallIncidence > 0;

    /// <inheritdoc/>
    public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope) => Towed.AreaTimesSpeed(speed, kinematicViscosity, out slope);

    /// <inheritdoc/>
    public override double FallDragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double value = Towed.AreaTimesSpeed(speed, kinematicViscosity, out double own);
        if (Fall is null)
        {
            slope = own;
            return value;
        }

        double factor = Fall.Factor(speed, out double rise);
        slope = (factor * own) + (rise * value);
        return factor * value;
    }
}
