namespace LureSim.Model;

/// <summary>
/// The bottom along a straight line from below the rod tip: depths at points, straight between them and even beyond the last ones, with corners rounded over 2 x <see cref="RoundedOver"/>.
/// Across that line the bottom is level. Kind of bottom and grass may change by stretch.
/// </summary>
/// <exception cref="ArgumentException">There is no point, points are out of order, or stretches are empty or overlap.</exception>
public sealed record BottomProfile
{
    /// <summary>
    /// Half of the length over which a corner is rounded (m): depths are means over twice this length. A sounding by hand is no better, and a corner without a radius would have no normal. Assumed.
    /// </summary>
    public const double RoundedOver = 0.15;

    private readonly ValueList<ProfilePoint> points = new([]);
    private readonly ValueList<BottomStretch> stretches = new([]);

    // Integral of the depth from the first point to each point (m2).
    private readonly double[] area = [];

    /// <summary>Points in order of distance, at least one.</summary>
    public required IReadOnlyList<ProfilePoint> Points
    {
        get => points;
        init
        {
            ProfilePoint[] given = [.. Guard.Items(value, 1)];
            area = new double[given.Length];
            for (int i = 1; i < given.Length; i++)
            {
                Guard.That(given[i].Distance > given[i - 1].Distance, "The points must lie one behind the other.", nameof(Points));
                area[i] = area[i - 1] + (0.5 * (given[i].Depth + given[i - 1].Depth) * (given[i].Distance - given[i - 1].Distance));
            }

            points = new ValueList<ProfilePoint>(given);
        }
    }

    /// <summary>Stretches of another kind, in order, none of them over another; empty where the bottom is the same all along.</summary>
    public IReadOnlyList<BottomStretch> Stretches
    {
        get => stretches;
        init
        {
            BottomStretch[] given = [.. Guard.Items(value, 0).OrderBy(stretch => stretch.From)];
            for (int i = 0; i < given.Length; i++)
            {
                Guard.That(given[i].To > given[i].From, "A stretch must end beyond its beginning.", nameof(Stretches));
                Guard.That(i == 0 || given[i].From >= given[i - 1].To, "Stretches must not overlap.", nameof(Stretches));
            }

            stretches = new ValueList<BottomStretch>(given);
        }
    }

    /// <summary>Greatest depth (m).</summary>
    public double Deepest => Points.Max(point => point.Depth);

    /// <summary>Least depth (m).</summary>
    public double Shallowest => Points.Min(point => point.Depth);

    /// <summary>True if the depth is the same all along and nothing changes by stretch.</summary>
    public bool IsEven => Deepest == Shallowest && Stretches.Count == 0;

    /// <summary>Depth at a distance from below the rod tip (m); even beyond the ends.</summary>
    /// <param name="distance">Distance along the profile (m); any finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not a number.</exception>
    public double DepthAt(double distance) => DepthAt(distance, out _);

    /// <summary>Depth (m) and its slope (m/m, positive where it gets deeper away from the rod) at a distance from below the rod tip.</summary>
    /// <param name="distance">Distance along the profile (m); any finite number.</param>
    /// <param name="slope">Slope of the depth.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not a number.</exception>
    public double DepthAt(double distance, out double slope)
    {
        Guard.Finite(distance);
        if (Deepest == Shallowest)
        {
            slope = 0;
            return Deepest;
        }

        (double areaFar, double far) = Raw(distance + RoundedOver);
        (double areaNear, double near) = Raw(distance - RoundedOver);
        slope = (far - near) / (2 * RoundedOver);
        return (areaFar - areaNear) / (2 * RoundedOver);
    }

    /// <summary>The stretch at a distance (m); null where the bottom is the spot's own.</summary>
    /// <param name="distance">Distance along the profile (m).</param>
    public BottomStretch? StretchAt(double distance)
    {
        foreach (BottomStretch stretch in Stretches)
        {
            if (distance >= stretch.From && distance < stretch.To) return stretch;
        }

        return null;
    }

    /// <summary>The same bottom with more or less water over it; nowhere less than the least depth of a spot, 0.2 m.</summary>
    /// <param name="change">Change of the depth (m).</param>
    public BottomProfile Deepened(double change) =>
        change == 0 ? this : this with { Points = [.. Points.Select(point => point with { Depth = Math.Clamp(point.Depth + change, Limits.Depth.Least, Limits.Depth.Most) })] };

    // Integral and value of the depth without rounding.
    private (double Area, double Depth) Raw(double distance)
    {
        int last = points.Count - 1;
        if (distance <= points[0].Distance) return (points[0].Depth * (distance - points[0].Distance), points[0].Depth);
        if (distance >= points[last].Distance) return (area[last] + (points[last].Depth * (distance - points[last].Distance)), points[last].Depth);
        int low = 0, high = last;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (points[middle].Distance <= distance) low = middle;
            else high = middle;
        }

        double run = points[high].Distance - points[low].Distance, along = distance - points[low].Distance;
        double depth = points[low].Depth + ((points[high].Depth - points[low].Depth) * along / run);
        return (area[low] + (0.5 * (points[low].Depth + depth) * along), depth);
    }
}
