using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using LureSim.Model;

namespace LureSim.Water;

/// <summary>
/// A bottom that is not the same all over, as the moving parts look it up: depth, slope, kind and grass on an even grid along the profile, and what its shape does to the current.
/// </summary>
/// <remarks>
/// Along the profile the flow keeps its discharge: u h is the same everywhere (continuity for a stream between vertical walls under a level surface), with the same profile over the relative height
/// z' = 1 + z/h; the stream lines follow the bottom, w = -u h'(1 - z'), so that the velocity has no divergence anywhere. No stream is faster than a wave on that depth, sqrt(g h) (critical flow).
/// Across the profile, along the contours, continuity asks for nothing and the current is that of the spot. Eddies behind steep edges are not modelled.
/// </remarks>
internal sealed class BottomRelief
{
    // Spacing of the grid (m).
    private const double Spacing = 0.05;

    // 2^52: adding it leaves the nearest whole number in the low bits.
    private const double Magic = 4503599627370496.0;

    private readonly double start;
    private readonly double last;
    private readonly double[] shape;
    private readonly double[] friction;
    private readonly double[] stiffness;
    private readonly double[] grass;
    private readonly double deepest;
    private readonly double axisX;
    private readonly double axisY;
    private readonly double along;
    private readonly double acrossX;
    private readonly double acrossY;
    private readonly double criticalRoot;

    /// <summary>Tabulates the profile of a spot.</summary>
    /// <param name="spot">A spot with a profile.</param>
    public BottomRelief(Spot spot)
    {
        BottomProfile profile = spot.Profile!;
        double first = Math.Min(profile.Points[0].Distance, profile.Stretches.Count > 0 ? profile.Stretches[0].From : double.PositiveInfinity);
        double end = Math.Max(profile.Points[^1].Distance, profile.Stretches.Count > 0 ? profile.Stretches[^1].To : 0);
        start = first - (2 * BottomProfile.RoundedOver);
        int cells = (int)Math.Ceiling((end + (2 * BottomProfile.RoundedOver) - start) / Spacing);
        last = cells;
        shape = new double[2 * (cells + 1)];
        (friction, stiffness, grass) = (new double[cells + 1], new double[cells + 1], new double[cells + 1]);
        for (int i = 0; i <= cells; i++)
        {
            double at = start + (i * Spacing);
            shape[2 * i] = profile.DepthAt(at, out double slope);
            shape[(2 * i) + 1] = slope * Spacing;
            var bottom = BottomProperties.Of(spot.BottomAt(at));
            friction[i] = bottom.Friction;
            stiffness[i] = bottom.Stiffness;
            grass[i] = Math.Min(spot.GrassAt(at), shape[2 * i]);
        }

        deepest = spot.Depth;
        Shallowest = profile.Shallowest;
        HasGrass = grass.Any(height => height > 0);
        (axisY, axisX) = Math.SinCos(spot.ProfileDirection);

        // The spot's direction of flow, along the profile and across it.
        (double flowY, double flowX) = Math.SinCos(spot.CurrentDirection);
        along = (flowX * axisX) + (flowY * axisY);
        acrossX = flowX - (along * axisX);
        acrossY = flowY - (along * axisY);
        double speed = Math.Abs(along) * spot.CurrentSpeed;
        criticalRoot = speed > 0 ? Math.Sqrt(PhysicalConstants.StandardGravity) / speed : double.PositiveInfinity;
    }

    /// <summary>Least depth (m).</summary>
    public double Shallowest { get; }

    /// <summary>Whether grass grows anywhere.</summary>
    public bool HasGrass { get; }

    /// <summary>The bottom below a place.</summary>
    /// <param name="x">Along the cast (m).</param>
    /// <param name="y">To the left (m).</param>
    public BottomPlace At(double x, double y)
    {
        // An iteration that runs away may ask for no number at all.
        double t = ((x * axisX) + (y * axisY) - start) / Spacing;
        t = t > 0 ? Math.Min(t, last) : 0;
        int i = (int)Math.Min(t, last - 1);
        double u = t - i;
        ReadOnlySpan<double> row = shape.AsSpan(2 * i, 4);
        double x2 = u * u, rise = row[2] - row[0];
        double depth = row[0] + ((3 - u - u) * x2 * rise) + ((((u - 2) * u) + 1) * u * row[1]) + ((u - 1) * x2 * row[3]);
        double slope = ((6 * (u - x2) * rise) + (((((3 * u) - 4) * u) + 1) * row[1]) + (((3 * u) - 2) * u * row[3])) / Spacing;
        double grassHeight = grass[i] + (u * (grass[i + 1] - grass[i]));
        return new BottomPlace(depth, slope, axisX, axisY, friction[i] + (u * (friction[i + 1] - friction[i])), stiffness[i] + (u * (stiffness[i + 1] - stiffness[i])), grassHeight, (grass[i + 1] - grass[i]) / Spacing);
    }

    /// <summary>What the shape makes of the current at a height (m): where to look in the profile of the deepest place, and the flow as multiples of the speed found there.</summary>
    public ReliefFlow FlowAt(in BottomPlace place, double z)
    {
        double ratio = deepest / place.Depth, share = along * Math.Min(ratio, Math.Max(1, criticalRoot * Math.Sqrt(place.Depth)));
        return new ReliefFlow(deepest + (z * ratio), ratio, acrossX + (share * axisX), acrossY + (share * axisY), share * place.Slope * Math.Clamp(z / place.Depth, -1, 0));
    }

    /// <summary>The same for four places at a time.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void FlowAt(Vector256<double> x, Vector256<double> y, Vector256<double> z, out Vector256<double> height, out Vector256<double> ratio, out Vector256<double> flowX, out Vector256<double> flowY, out Vector256<double> climb)
    {
        Vector256<double> one = Vector256<double>.One, zero = Vector256<double>.Zero;
        Vector256<double> t = ((x * axisX) + (y * axisY) - Vector256.Create(start)) * (1 / Spacing);
        t = Vector256.Min(Vector256.ConditionalSelect(Vector256.GreaterThan(t, zero), t, zero), Vector256.Create(last));
        Vector256<double> shifted = Vector256.Min(Vector256.Max(t - Vector256.Create(0.5), zero), Vector256.Create(last - 1)) + Vector256.Create(Magic), whole = shifted - Vector256.Create(Magic), u = t - whole;
        Vector256<long> index = shifted.AsInt64() - Vector256.Create(Magic).AsInt64();
        ReadOnlySpan<double> row0 = shape.AsSpan(2 * (int)index[0], 4), row1 = shape.AsSpan(2 * (int)index[1], 4), row2 = shape.AsSpan(2 * (int)index[2], 4), row3 = shape.AsSpan(2 * (int)index[3], 4);
        Vector256<double> first = Vector256.Create(row0[0], row1[0], row2[0], row3[0]), rise = Vector256.Create(row0[2], row1[2], row2[2], row3[2]) - first;
        Vector256<double> m0 = Vector256.Create(row0[1], row1[1], row2[1], row3[1]), m1 = Vector256.Create(row0[3], row1[3], row2[3], row3[3]);
        Vector256<double> u2 = u * u, three = Vector256.Create(3.0);
        Vector256<double> depth = first + ((three - u - u) * u2 * rise) + ((((u - one - one) * u) + one) * u * m0) + ((u - one) * u2 * m1);
        Vector256<double> slope = (((u - u2) * 6 * rise) + (((((three * u) - Vector256.Create(4.0)) * u) + one) * m0) + (((three * u) - one - one) * u * m1)) * (1 / Spacing);
        Vector256<double> inverse = one / depth;
        ratio = inverse * deepest;
        height = (z * ratio) + Vector256.Create(deepest);
        Vector256<double> share = Vector256.Min(ratio, Vector256.Max(one, Vector256.Sqrt(depth) * Vector256.Create(criticalRoot))) * along;
        flowX = (share * axisX) + Vector256.Create(acrossX);
        flowY = (share * axisY) + Vector256.Create(acrossY);
        climb = share * slope * Vector256.Min(Vector256.Max(z * inverse, -one), zero);
    }
}
