namespace LureSim.Validation.Reference;

/// <summary>
/// What the independent code tends to when its segments get smaller, by Richardson's extrapolation of the second order from two runs, the finer with twice the segments. They are
/// doubled until the finer run is within <see cref="DepthStep"/> and <see cref="TensionStep"/> of the limit, or there are enough.
/// </summary>
internal sealed class ReferenceLimit
{
    /// <summary>Distance from the finer run to the limit that ends the doubling: depth (m).</summary>
    public const double DepthStep = 0.002;

    /// <summary>Distance from the finer run to the limit that ends the doubling: tension, relative.</summary>
    public const double TensionStep = 0.003;

    private ReferenceLimit(double[] depth, double[] tension, double depthStep, double tensionStep, int segments)
    {
        Depth = depth;
        Tension = tension;
        LargestDepthStep = depthStep;
        LargestTensionStep = tensionStep;
        Segments = segments;
    }

    /// <summary>Limits of the depths (m).</summary>
    public double[] Depth { get; }

    /// <summary>Limits of the tensions (N).</summary>
    public double[] Tension { get; }

    /// <summary>Largest distance of a depth of the finer run from its limit (m): a third of what the last doubling changed.</summary>
    public double LargestDepthStep { get; }

    /// <summary>Largest distance of a tension of the finer run from its limit, relative to it.</summary>
    public double LargestTensionStep { get; }

    /// <summary>Segments of the finer run.</summary>
    public int Segments { get; }

    /// <summary>Runs the code with so many segments, twice as many and so on.</summary>
    /// <param name="coarse">The run with the least number of segments.</param>
    /// <param name="segments">That number.</param>
    /// <param name="most">Largest number of segments.</param>
    /// <param name="run">Depths and tensions with a number of segments.</param>
    public static ReferenceLimit Of((double[] Depth, double[] Tension) coarse, int segments, int most, Func<int, (double[] Depth, double[] Tension)> run)
    {
        while (true)
        {
            segments *= 2;
            (double[] Depth, double[] Tension) fine = run(segments);
            double[] depth = Extrapolated(coarse.Depth, fine.Depth), tension = Extrapolated(coarse.Tension, fine.Tension);
            double depthStep = LargestDifference(fine.Depth, depth), tensionStep = LargestRelative(fine.Tension, tension);
            if ((depthStep <= DepthStep && tensionStep <= TensionStep) || 2 * segments > most) return new ReferenceLimit(depth, tension, depthStep, tensionStep, segments);
            coarse = fine;
        }
    }

    /// <summary>Largest distance of given depths from the limits (m).</summary>
    public double DepthError(double[] depth) => LargestDifference(depth, Depth);

    /// <summary>Largest distance of given tensions from the limits, relative to these.</summary>
    public double TensionError(double[] tension) => LargestRelative(tension, Tension);

    private static double[] Extrapolated(double[] coarse, double[] fine) => [.. fine.Zip(coarse, (f, c) => f + ((f - c) / 3))];

    private static double LargestDifference(double[] values, double[] limits) => values.Zip(limits, (v, l) => Finite(Math.Abs(v - l))).Max();

    private static double LargestRelative(double[] values, double[] limits) => values.Zip(limits, (v, l) => Finite(Math.Abs(v - l) / Math.Abs(l))).Max();

    private static double Finite(double x) => double.IsNaN(x) ? double.PositiveInfinity : x;
}
