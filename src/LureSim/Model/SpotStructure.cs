namespace LureSim.Model;

/// <summary>A structure beside or across the cast: a rectangle seen from above, its sides along the bottom profile (along the cast without one) and across it.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="From">Where it begins, from below the rod tip along the profile (m), 0 to 120.</param>
/// <param name="To">Where it ends (m), 0 to 120; a spot asks that it is no nearer than <paramref name="From"/>.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record SpotStructure(StructureKind Kind, double From, double To)
{
    /// <summary>What it is.</summary>
    public StructureKind Kind { get; init => field = Guard.Defined(value); } = Guard.Defined(Kind);

    /// <summary>Where it begins (m), 0 to 120.</summary>
    public double From { get; init => field = Limits.ProfileDistance.Check(value); } = Limits.ProfileDistance.Check(From);

    /// <summary>Where it ends (m), 0 to 120.</summary>
    public double To { get; init => field = Limits.ProfileDistance.Check(value); } = Limits.ProfileDistance.Check(To);

    /// <summary>Its middle to the left of the line straight out (m), -60 to 60; negative to the right.</summary>
    public double Left { get; init => field = Limits.Aside.Check(value); }

    /// <summary>Width across that line (m), 0.02 to 60.</summary>
    public double Width { get; init => field = Limits.StructureWidth.Check(value); } = 0.3;

    /// <summary>Height (m), 0 to 60: of a clump above the bottom, of the underside of an overhang above the water; nothing for posts.</summary>
    public double Height { get; init => field = Limits.WithinWater.Check(value); } = 0.3;

    /// <summary>What is wanted of it.</summary>
    public StructureRole Role { get; init => field = Guard.Defined(value); }

    /// <summary>How near counts as within reach of the fish that hold there (m), 0.05 to 10. Assumed where it is not given: 0.9.</summary>
    public double Reach { get; init => field = Limits.StructureReach.Check(value); } = 0.9;

    /// <summary>Where its shade begins along the profile (m), 0 to 120; null for none.</summary>
    public double? ShadeFrom { get; init => field = Limits.ProfileDistance.Check(value); }

    /// <summary>Where its shade ends (m), 0 to 120; null for none.</summary>
    public double? ShadeTo { get; init => field = Limits.ProfileDistance.Check(value); }

    /// <summary>Share of the light of an even sky that reaches the water below the middle of it, 0 to 1: all of it but for an overhang.</summary>
    /// <remarks>
    /// An overhang takes away its configuration factor from an element of the surface: four times that of a rectangle with a corner above the element,
    /// F = 1/(2 pi) [X/sqrt(1+X^2) atan(Y/sqrt(1+X^2)) + Y/sqrt(1+Y^2) atan(X/sqrt(1+Y^2))], X and Y its half sides over its height (Howell 1982, from memory).
    /// </remarks>
    public double SkyShare
    {
        get
        {
            if (Kind != StructureKind.Overhang) return 1;
            double height = Math.Max(Height, 0.01), x = 0.5 * (To - From) / height, y = 0.5 * Width / height;
            double rootX = Math.Sqrt(1 + (x * x)), rootY = Math.Sqrt(1 + (y * y));
            return Math.Clamp(1 - (2 / Math.PI * ((x / rootX * Math.Atan(y / rootX)) + (y / rootY * Math.Atan(x / rootY)))), 0, 1);
        }
    }

    /// <summary>Whether a place lies in its shade.</summary>
    /// <param name="along">Distance along the profile (m).</param>
    /// <param name="left">Distance to the left of it (m).</param>
    public bool Shades(double along, double left) =>
        ShadeFrom is { } from && ShadeTo is { } to && along >= from && along <= to && Math.Abs(left - Left) <= 0.5 * Width;

    /// <summary>Horizontal distance of a place from it (m); 0 inside.</summary>
    /// <param name="along">Distance along the profile (m).</param>
    /// <param name="left">Distance to the left of it (m).</param>
    public double DistanceTo(double along, double left)
    {
        double dx = Math.Max(0, Math.Max(From - along, along - To)), dy = Math.Max(0, Math.Abs(left - Left) - (0.5 * Width));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}
