using LureSim.Model;
using MathNet.Numerics;

namespace LureSim.Tides;

/// <summary>Depth and current of a day from a harmonic tide.</summary>
/// <param name="Level">Height of the mean level of the tide above the level to which the depth of the spot refers (m).</param>
/// <param name="StrongestCurrent">Current at the surface when the water of the day rises or falls fastest (m/s), 0 to 3.</param>
/// <param name="SlackAfter">How long after high and low water the current turns (h), 0 to 6. In a standing tide it turns with the height; in a river or behind an inlet later.</param>
/// <param name="Incoming">True if the spot's current is that of the incoming tide.</param>
public sealed record TidePrediction(double Level, double StrongestCurrent, double SlackAfter, bool Incoming)
{
    // A lunar day holds both tides (h).
    private const double LunarDay = 24.84;
    private const double Fine = 0.1;
    private const double Step = 0.25;

    /// <summary>The points of a stretch of time, for <see cref="Scenario.Tide"/>.</summary>
    /// <param name="tide">The tide.</param>
    /// <param name="midnight">Midnight by the local clock at the beginning of the day.</param>
    /// <param name="from">First point (h since midnight), 0 to 24.</param>
    /// <param name="to">Last point (h since midnight), more than the first, to 48.</param>
    /// <exception cref="ArgumentNullException"><paramref name="tide"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The times are out of order.</exception>
    /// <remarks>The current follows the rate at which the water rises or falls, as by continuity in a basin that fills through its mouth; scaled so that the fastest rate of the lunar day has the strongest current.</remarks>
    public IReadOnlyList<TidePoint> Points(HarmonicTide tide, DateTimeOffset midnight, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(tide);
        Guard.InRange(from, 0, 24);
        Guard.InRange(to, from + 0.5, 48);
        double fastest = 0;
        for (double hour = from - SlackAfter; hour <= from - SlackAfter + LunarDay; hour += Fine)
            fastest = Math.Max(fastest, Math.Abs(tide.Rate(midnight.AddHours(hour))));

        // Quarters of an hour, and high and low water themselves: a smooth curve through points turns at one of them.
        int steps = (int)Math.Ceiling((to - from) / Step);
        List<double> hours = [.. Enumerable.Range(0, steps + 1).Select(i => from + ((to - from) * i / steps))];
        double[] turns = [.. hours.Zip(hours.Skip(1)).Where(pair => Rate(pair.First) * Rate(pair.Second) < 0).Select(pair => FindRoots.OfFunction(Rate, pair.First, pair.Second, 1e-6))];
        foreach (double turn in turns)
        {
            hours.RemoveAll(hour => hour != from && hour != to && Math.Abs(hour - turn) < Step / 3);
            if (turn - from > Step / 3 && to - turn > Step / 3) hours.Add(turn);
        }

        hours.Sort();
        List<TidePoint> points = [];
        foreach (double hour in hours)
        {
            double rate = fastest > 0 ? tide.Rate(midnight.AddHours(hour - SlackAfter)) / fastest : 0;
            double current = Math.Clamp(rate, -1, 1) * StrongestCurrent * (Incoming ? 1 : -1);
            points.Add(new TidePoint(hour, current, Level + tide.Height(midnight.AddHours(hour))));
        }

        return points;

        double Rate(double hour) => tide.Rate(midnight.AddHours(hour));
    }
}
