using LureSim.Data;
using LureSim.Hydrodynamics;
using MathNet.Numerics.Interpolation;

namespace LureSim.Lures;

/// <summary>Hooks: common mass for a body, thickness of the wire, drag.</summary>
public static class HookWire
{
    // Wire in the flow as multiples of its diameter: bend and point of a single hook; three shanks' worth of a treble, free of each other's lee; the line eye (assumed).
    private const double SingleLengths = 18;
    private const double TrebleLengths = 30;
    private const double EyeLengths = 4;

    // A hook of 0.6 g is bent of wire of 1.1 mm (invented); thickness goes with the cube root of the mass.
    private const double KnownMass = 0.6e-3;
    private const double KnownDiameter = 1.1e-3;

    private static readonly Lazy<(LinearSpline Masses, double Shortest, double Longest)> Table = new(Read);

    /// <summary>Default mass (kg) of the single hook for a body. Source: Data/tackle/hook_masses.csv (invented).</summary>
    /// <param name="bodyLength">Length of the body (m), finite; outside the table, 0.025 to 0.3 m, the nearest row holds.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is not more than 0 and finite.</exception>
    public static double CommonMass(double bodyLength)
    {
        Guard.Positive(bodyLength);
        (LinearSpline masses, double shortest, double longest) = Table.Value;
        return masses.Interpolate(Math.Clamp(bodyLength, shortest, longest));
    }

    /// <summary>Diameter of the wire of a hook (m).</summary>
    /// <param name="mass">Mass of the hook (kg), 0 or more.</param>
    public static double Diameter(double mass) => KnownDiameter * Math.Cbrt(mass / KnownMass);

    /// <summary>Drag area of bend and point of a single hook (m2).</summary>
    /// <param name="mass">Mass of the hook (kg), 0 or more.</param>
    /// <param name="more">Length of wire in the flow beyond that of a hook that fits its body (m), 0 or more.</param>
    public static double SingleDragArea(double mass, double more = 0) => Diameter(mass) is > 0 and var thick ? WireDrag.Area(thick, SingleLengths + (more / thick)) : 0;

    /// <summary>Drag area of a treble hook (m2).</summary>
    /// <param name="mass">Mass of the hook (kg), 0 or more.</param>
    public static double TrebleDragArea(double mass) => WireDrag.Area(Diameter(mass), TrebleLengths);

    /// <summary>Drag area of the line eye of a hook (m2).</summary>
    /// <param name="mass">Mass of the hook (kg), 0 or more.</param>
    public static double EyeDragArea(double mass) => WireDrag.Area(Diameter(mass), EyeLengths);

    private static (LinearSpline, double, double) Read()
    {
        var table = ReferenceTable.Tackle("hook_masses");
        double[] lengths = [.. table.Numbers("body_length_mm").Select(length => length / 1000.0)];
        return (LinearSpline.InterpolateSorted(lengths, [.. table.Numbers("hook_mass_g").Select(mass => mass / 1000.0)]), lengths[0], lengths[^1]);
    }
}
