using LureSim.Hydrodynamics;

namespace LureSim.Lures;

/// <summary>A lure on its path: the drag of its body in three terms, and that of a ball head as far as the body does not shelter in its lee.</summary>
public sealed class PathLure : LureProperties
{
    /// <summary>Drag of body, hooks, tail and lip.</summary>
    public required ElongatedBodyDrag Body { get; init; }

    /// <summary>Diameter of the ball head (m), 0 for none.</summary>
    public double HeadDiameter { get; init; }

    /// <summary>Area of the head that stands out beyond the body (m2).</summary>
    public double ExposedHeadArea { get; init; }

    /// <summary>Angle between the body's axis and the flow on a free fall (radians): 0 nose first, pi/2 broadside.</summary>
    public double FallIncidence { get; init; }

    /// <inheritdoc/>
    public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double value = Body.DragAreaTimesSpeed(speed, kinematicViscosity, out slope);
        if (ExposedHeadArea > 0)
        {
            value += ExposedHeadArea * SphereDrag.CoefficientTimesSpeed(speed, HeadDiameter, kinematicViscosity, out double headSlope);
            slope += ExposedHeadArea * headSlope;
        }

        return value;
    }
}
