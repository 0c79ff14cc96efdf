using LureSim.Model;
using MathNet.Numerics.Interpolation;

namespace LureSim.Decision.Tide;

/// <summary>Current and depth change over the hours: monotone cubic pieces (Fritsch and Carlson 1980, fritsch1980monotone), which do not overshoot the points.</summary>
public sealed class TideCurve
{
    private readonly CubicSpline current;
    private readonly CubicSpline depth;

    /// <summary>Creates a curve.</summary>
    /// <param name="points">Points in order of time, at least 3.</param>
    /// <exception cref="ArgumentNullException"><paramref name="points"/> is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than 3 points, or they are out of order.</exception>
    public TideCurve(IReadOnlyList<TidePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        double[] hours = [.. points.Select(p => p.Hours)];
        if (hours.Length < 3 || hours.Zip(hours.Skip(1)).Any(pair => !(pair.Second > pair.First)))
            throw new ArgumentException("At least three points, in order of time.", nameof(points));
        Start = hours[0];
        End = hours[^1];
        current = CubicSpline.InterpolatePchipSorted(hours, [.. points.Select(p => p.Current)]);
        depth = CubicSpline.InterpolatePchipSorted(hours, [.. points.Select(p => p.DepthChange)]);
    }

    /// <summary>Time of the first point (h since midnight).</summary>
    public double Start { get; }

    /// <summary>Time of the last point (h since midnight).</summary>
    public double End { get; }

    /// <summary>Current at the surface (m/s); before the first and after the last point that of the point.</summary>
    /// <param name="hours">Time (h since midnight).</param>
    public double Current(double hours) => current.Interpolate(Math.Clamp(hours, Start, End));

    /// <summary>Change of depth (m); before the first and after the last point that of the point.</summary>
    /// <param name="hours">Time (h since midnight).</param>
    public double DepthChange(double hours) => depth.Interpolate(Math.Clamp(hours, Start, End));
}
