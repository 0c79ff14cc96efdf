using LureSim.Model;
using MathNet.Numerics.Interpolation;

namespace LureSim.Decision.Tide;

/// <summary>High or low water.</summary>
/// <param name="Hours">Time (h since midnight).</param>
/// <param name="DepthChange">Change of the depth then (m).</param>
/// <param name="High">True for high water.</param>
public sealed record TideTurn(double Hours, double DepthChange, bool High);

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

    /// <summary>When the current turns or stands still (h since midnight), in order of time; found on the curve itself.</summary>
    public IReadOnlyList<double> Slacks => Roots(Current);

    /// <summary>High and low water (h since midnight) with the change of the depth then (m), in order of time; none where the depth does not turn.</summary>
    public IReadOnlyList<TideTurn> Turns
    {
        get
        {
            List<TideTurn> found = [];
            foreach (double hours in Roots(depth.Differentiate))
            {
                double before = depth.Interpolate(Math.Max(Start, hours - Beside)), after = depth.Interpolate(Math.Min(End, hours + Beside)), here = depth.Interpolate(hours);
                if (here > before && here > after) found.Add(new(hours, here, true));
                else if (here < before && here < after) found.Add(new(hours, here, false));
            }

            return found;
        }
    }

    // Roots closer than a step of the search are one (h); a turn is looked at so far to either side (h).
    private const double Step = 0.05;
    private const double Beside = 0.15;

    private List<double> Roots(Func<double, double> value)
    {
        List<double> found = [];
        double before = value(Start), at = Start;
        for (int i = 1; at < End; i++)
        {
            double next = Math.Min(End, Start + (i * Step)), after = value(next);
            if (after == 0 && next < End)
            {
                // Still water for a while counts once, when it begins.
                if (before != 0) found.Add(next);
            }
            else if (before * after < 0)
            {
                double low = at, high = next;
                for (int turn = 0; turn < 50; turn++)
                {
                    double middle = (low + high) / 2;
                    if (value(low) * value(middle) <= 0) high = middle;
                    else low = middle;
                }

                found.Add((low + high) / 2);
            }

            (before, at) = (after, next);
        }

        return found;
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
