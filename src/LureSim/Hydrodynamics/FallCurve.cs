using MathNet.Numerics.Interpolation;

namespace LureSim.Hydrodynamics;

/// <summary>
/// Drag of a slender body that sinks on a line, by its speed downward. On a steady fall the line carries what the drag does not: at each speed below that of the free fall the line's pull,
/// and with it the attitude (<see cref="FreeGlide"/>), is settled. A lure that is held back hangs flatter in the water and drags more than by the square of its speed.
/// </summary>
/// <remarks>
/// The line is taken to pull straight up, as it does under an open bail where the lure has sunk a few times its length; the tension itself is the engine's. Between the points the factor on the drag nose
/// first is monotone and smooth (Fritsch and Carlson 1980); from the free fall on, and below the slowest point, it is constant. Before the line has straightened the body turns as fast as its speed
/// changes here: what it takes to turn is left out.
/// </remarks>
public sealed class FallCurve
{
    // Shares of the wet weight that the line carries.
    private static readonly double[] Shares = [0, 0.04, 0.08, 0.14, 0.2, 0.27, 0.34, 0.42, 0.5, 0.58, 0.66, 0.74, 0.82, 0.9, 0.96, 0.99];

    // Points nearer together than this share of the speed are one.
    private const double Apart = 0.01;

    // Faster than the free fall nothing changes: points that end the curve level.
    private const double Beyond = 2, FarBeyond = 4;

    private readonly CubicSpline factor;
    private readonly double slowest;
    private readonly double fastest;

    private FallCurve(FreeGlide free, IReadOnlyList<(double Pull, FreeGlide Fall)> held, double[] speeds, double[] factors)
    {
        Free = free;
        Held = held;
        factor = CubicSpline.InterpolatePchipSorted(speeds, factors);
        (slowest, fastest) = (speeds[0], speeds[^1]);
    }

    /// <summary>The fall free of the line.</summary>
    public FreeGlide Free { get; }

    /// <summary>Falls by the line's pull (N), from none to nearly all of the wet weight.</summary>
    public IReadOnlyList<(double Pull, FreeGlide Fall)> Held { get; }

    /// <summary>Works the curve out.</summary>
    /// <param name="body">The body.</param>
    /// <param name="density">Density of the water (kg/m3), above 0.</param>
    /// <param name="kinematicViscosity">nu (m2/s), above 0.</param>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A weight or a property of the water is not positive.</exception>
    public static FallCurve Of(GlideBalance body, double density, double kinematicViscosity)
    {
        ArgumentNullException.ThrowIfNull(body);
        FreeGlide free = FreeGlide.Of(body, density, kinematicViscosity);
        List<(double Pull, FreeGlide Fall)> held = [(0, free)];
        List<double> speeds = [free.SinkRate], factors = [FactorOf(0, free)];
        foreach (double share in Shares.Skip(1))
        {
            double pull = share * body.WetWeight;
            FreeGlide fall = FreeGlide.Of(body, density, kinematicViscosity, pull);
            if (fall.SinkRate > (1 - Apart) * speeds[^1]) continue;
            held.Add((pull, fall));
            speeds.Add(fall.SinkRate);
            factors.Add(FactorOf(pull, fall));
        }

        speeds.Reverse();
        factors.Reverse();
        speeds.AddRange([Beyond * free.SinkRate, FarBeyond * free.SinkRate]);
        factors.AddRange([factors[^1], factors[^1]]);
        return new FallCurve(free, held, [.. speeds], [.. factors]);

        double FactorOf(double pull, FreeGlide fall) =>
            2 * (body.WetWeight - pull) / (density * fall.SinkRate) / body.Along.AreaTimesSpeed(fall.SinkRate, kinematicViscosity, out _);
    }

    /// <summary>Factor on the drag nose first at a speed downward, and its slope (s/m).</summary>
    /// <param name="speed">Speed (m/s), 0 or more.</param>
    /// <param name="slope">Derivative with respect to the speed.</param>
    public double Factor(double speed, out double slope)
    {
        slope = speed > slowest && speed < fastest ? factor.Differentiate(speed) : 0;
        return factor.Interpolate(Math.Clamp(speed, slowest, fastest));
    }
}
