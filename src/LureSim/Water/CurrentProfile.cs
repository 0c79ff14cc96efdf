using System.Diagnostics;
using System.Runtime.Intrinsics;
using LureSim.Model;

namespace LureSim.Water;

/// <summary>Horizontal current as a function of height above the bottom.</summary>
public sealed class CurrentProfile
{
    // Lowest relative height at which the profile is evaluated; below it the speed falls linearly to zero at the bed.
    private const double FloorFraction = 0.005;

    // The curved laws are tabulated against the height, 32 intervals for each doubling of it, and interpolated by cubics of continuous slope: 1e-8 of the speed off,
    // at a tenth of the price of a power.
    private const int IntervalShift = 47;

    private readonly double floorHeight;
    private readonly double[] table = [];
    private readonly long firstInterval;
    private readonly double floorSpeed;

    /// <summary>Creates a profile.</summary>
    /// <param name="kind">Shape.</param>
    /// <param name="surfaceSpeed">Speed at the surface (m/s), 0 to 5.</param>
    /// <param name="direction">Where it flows to (radians from +x, anticlockwise seen from above).</param>
    /// <param name="depth">Water depth (m).</param>
    /// <param name="roughnessLength">Roughness length z0 of the bed (m), used by the logarithmic law; far below the depth.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not a number.</exception>
    public CurrentProfile(CurrentProfileKind kind, double surfaceSpeed, double direction, double depth, double roughnessLength)
    {
        Guard.InRange(surfaceSpeed, 0, 5);
        Guard.InRange(direction, -10, 10);
        Guard.Positive(depth);
        Guard.InRange(roughnessLength, 1e-7, depth / 20);
        Kind = kind;
        SurfaceSpeed = surfaceSpeed;
        DirectionX = Math.Cos(direction);
        DirectionY = Math.Sin(direction);
        Depth = depth;
        RoughnessLength = roughnessLength;
        floorHeight = kind == CurrentProfileKind.Logarithmic ? Math.Max(FloorFraction * depth, 2 * roughnessLength) : FloorFraction * depth;
        if (kind is CurrentProfileKind.Power or CurrentProfileKind.Logarithmic)
        {
            firstInterval = BitConverter.DoubleToInt64Bits(floorHeight) >> IntervalShift;
            long last = BitConverter.DoubleToInt64Bits(depth) >> IntervalShift;
            table = new double[2 * (last - firstInterval + 2)];
            for (long i = firstInterval; i <= last + 1; i++)
            {
                // Speed and gradient at the lower end of an interval.
                table[2 * (i - firstInterval)] = ByLaw(BitConverter.Int64BitsToDouble(i << IntervalShift), out double gradient);
                table[(2 * (i - firstInterval)) + 1] = gradient;
            }
        }

        floorSpeed = AboveFloor(floorHeight, out _);
    }

    /// <summary>Shape.</summary>
    public CurrentProfileKind Kind { get; }

    /// <summary>Speed at the surface (m/s).</summary>
    public double SurfaceSpeed { get; }

    /// <summary>Component of the flow direction along x (dimensionless).</summary>
    public double DirectionX { get; }

    /// <summary>Component of the flow direction along y (dimensionless).</summary>
    public double DirectionY { get; }

    /// <summary>Water depth (m).</summary>
    public double Depth { get; }

    /// <summary>Roughness length z0 (m).</summary>
    public double RoughnessLength { get; }

    /// <summary>Depth-averaged speed (m/s), analytic: 7/8 of the surface speed for the power law.</summary>
    public double MeanSpeed => Kind switch
    {
        CurrentProfileKind.Uniform => SurfaceSpeed,
        CurrentProfileKind.Power => SurfaceSpeed * 7.0 / 8.0,
        CurrentProfileKind.Logarithmic => SurfaceSpeed * (1 - 1 / Math.Log(Depth / RoughnessLength) + RoughnessLength / (Depth * Math.Log(Depth / RoughnessLength))),
        _ => throw new UnreachableException(),
    };

    /// <summary>Speed (m/s) and its vertical gradient (1/s) at a height above the bottom (m); heights outside 0 to depth are clamped.</summary>
    /// <remarks>
    /// Power law u = u_s (z/h)^(1/7); logarithmic law u = (u*/0.40) ln(z/z0) with u* set by the surface speed (Soulsby 1997).
    /// </remarks>
    public double Speed(double heightAboveBottom, out double gradient)
    {
        gradient = 0;
        if (SurfaceSpeed == 0) return 0;
        if (Kind == CurrentProfileKind.Uniform || heightAboveBottom >= Depth) return SurfaceSpeed;
        if (heightAboveBottom <= 0) return 0;
        if (heightAboveBottom < floorHeight)
        {
            gradient = floorSpeed / floorHeight;
            return gradient * heightAboveBottom;
        }

        return AboveFloor(heightAboveBottom, out gradient);
    }

    /// <summary>The same for four heights at a time.</summary>
    internal Vector256<double> Speed(Vector256<double> heightAboveBottom, out Vector256<double> gradient)
    {
        Vector256<double> zero = Vector256<double>.Zero, surface = Vector256.Create(SurfaceSpeed);
        gradient = zero;
        if (table.Length == 0) return surface;
        Vector256<double> floor = Vector256.Create(floorHeight), height = Vector256.Min(Vector256.ConditionalSelect(Vector256.GreaterThan(heightAboveBottom, floor), heightAboveBottom, floor), Vector256.Create(Depth));
        Vector256<long> interval = Vector256.ShiftRightLogical(height.AsInt64(), IntervalShift);
        Vector256<double> low = Vector256.ShiftLeft(interval, IntervalShift).AsDouble(), width = Vector256.ShiftLeft(interval + Vector256<long>.One, IntervalShift).AsDouble() - low;
        int i0 = (int)(interval[0] - firstInterval) * 2, i1 = (int)(interval[1] - firstInterval) * 2, i2 = (int)(interval[2] - firstInterval) * 2, i3 = (int)(interval[3] - firstInterval) * 2;
        ReadOnlySpan<double> row0 = table.AsSpan(i0, 4), row1 = table.AsSpan(i1, 4), row2 = table.AsSpan(i2, 4), row3 = table.AsSpan(i3, 4);
        Vector256<double> first = Vector256.Create(row0[0], row1[0], row2[0], row3[0]), rise = Vector256.Create(row0[2], row1[2], row2[2], row3[2]) - first;
        Vector256<double> m0 = Vector256.Create(row0[1], row1[1], row2[1], row3[1]) * width, m1 = Vector256.Create(row0[3], row1[3], row2[3], row3[3]) * width;
        Vector256<double> inverse = Vector256<double>.One / width, x = (height - low) * inverse, x2 = x * x, three = Vector256.Create(3.0), one = Vector256<double>.One;
        Vector256<double> speed = first + ((three - x - x) * x2 * rise) + ((((x - one - one) * x) + one) * x * m0) + ((x - one) * x2 * m1);
        Vector256<double> slope = (((x - x2) * 6 * rise) + (((((three * x) - Vector256.Create(4.0)) * x) + one) * m0) + (((three * x) - one - one) * x * m1)) * inverse;

        // Above the surface the speed of the surface, below the lowest height of the law a straight line to the bed.
        Vector256<double> above = Vector256.GreaterThanOrEqual(heightAboveBottom, Vector256.Create(Depth)), under = Vector256.LessThan(heightAboveBottom, floor);
        Vector256<double> bed = Vector256.Create(floorSpeed / floorHeight), sunk = Vector256.LessThanOrEqual(heightAboveBottom, zero);
        gradient = Vector256.ConditionalSelect(above | sunk, zero, Vector256.ConditionalSelect(under, bed, slope));
        return Vector256.ConditionalSelect(above, surface, Vector256.ConditionalSelect(under, Vector256.Max(heightAboveBottom, zero) * bed, speed));
    }

    private double AboveFloor(double height, out double gradient)
    {
        gradient = 0;
        if (table.Length == 0) return SurfaceSpeed;
        long interval = BitConverter.DoubleToInt64Bits(height) >> IntervalShift;
        double low = BitConverter.Int64BitsToDouble(interval << IntervalShift), width = BitConverter.Int64BitsToDouble((interval + 1) << IntervalShift) - low;
        ReadOnlySpan<double> row = table.AsSpan((int)(2 * (interval - firstInterval)), 4);
        double inverse = 1 / width, x = (height - low) * inverse, x2 = x * x;
        double rise = row[2] - row[0], m0 = row[1] * width, m1 = row[3] * width;
        gradient = ((6 * (x - x2) * rise) + (((((3 * x) - 4) * x) + 1) * m0) + ((((3 * x) - 2) * x) * m1)) * inverse;
        return row[0] + ((3 - (2 * x)) * x2 * rise) + ((((x - 2) * x) + 1) * x * m0) + ((x - 1) * x2 * m1);
    }

    private double ByLaw(double height, out double gradient)
    {
        switch (Kind)
        {
            case CurrentProfileKind.Power:
                {
                    double speed = SurfaceSpeed * Math.Exp(Math.Log(height / Depth) / 7.0);
                    gradient = speed / (7.0 * height);
                    return speed;
                }

            case CurrentProfileKind.Logarithmic:
                {
                    double slope = SurfaceSpeed / Math.Log(Depth / RoughnessLength);
                    gradient = slope / height;
                    return slope * Math.Log(height / RoughnessLength);
                }

            default:
                gradient = 0;
                return SurfaceSpeed;
        }
    }
}
