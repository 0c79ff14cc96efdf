using LureSim.Hydrodynamics;

namespace LureSim.Lures;

/// <summary>A lure on its path: drawn along it trails nose first, sinking freely it falls in its own attitude.</summary>
public sealed class PathLure : LureProperties
{
    /// <summary>Drag nose first of body, hooks, tail and lip.</summary>
    public required IDragComponent Towed { get; init; }

    /// <summary>Drag of the free fall, by its speed downward, over that nose first.</summary>
    public double FallFactor { get; init; } = 1;

    /// <summary>Angle between the body's axis and the flow on a free fall (radians): 0 nose first, pi/2 broadside (<see cref="FreeGlide"/>).</summary>
    public double FallIncidence { get; init; }

    /// <summary>Angle between the body's axis and the plumb line on a free fall (radians): 0 nose down, pi/2 level.</summary>
    public double FallFromPlumb { get; init; }

    /// <inheritdoc/>
    public override bool FallsAcross => FallIncidence > 0;

    /// <inheritdoc/>
    public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope) => Towed.AreaTimesSpeed(speed, kinematicViscosity, out slope);

    /// <inheritdoc/>
    public override double FallDragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double value = Towed.AreaTimesSpeed(speed, kinematicViscosity, out double own);
        slope = FallFactor * own;
        return FallFactor * value;
    }
}
