namespace LureSim.Motion;

/// <summary>Watches a lure that is left to the current: the swing is over when it has hung below the rod, at rest, for a while.</summary>
/// <remarks>
/// Over is when the lure is down the current from the rod tip within 30 degrees, turns about it no faster than half a degree a second and comes no nearer than at 0.1 m/s, for 2 s.
/// Assumed: what is left would take minutes. Without the angle, a lure that a lump of bottom holds for a moment would end it.
/// </remarks>
/// <param name="start">The swing begins (s).</param>
/// <param name="end">It ends at the latest (s).</param>
/// <param name="streamX">Current as the rod meets it, along the cast (m/s).</param>
/// <param name="streamY">Current to the left (m/s).</param>
internal sealed class SwingWatch(double start, double end, double streamX, double streamY)
{
    // Cosine of 30 degrees.
    private const double DownCurrent = 0.866;

    // Half a degree a second (rad/s).
    private const double TurnRate = 0.0087;

    // Towards the rod (m/s).
    private const double Approach = 0.1;

    // For so long (s).
    private const double Patience = 2;

    // Slower currents (m/s) give no direction to hang in.
    private const double SlowestCurrent = 0.02;

    // A swing needs a moment to get going (s).
    private const double GettingGoing = 4;

    // Since when the lure has hardly moved (s).
    private double quietSince = double.PositiveInfinity;

    /// <summary>Takes note of the lure at the end of a step, seen from the rod tip; true when the swing is over.</summary>
    /// <param name="now">Time (s).</param>
    /// <param name="x">Along the cast (m).</param>
    /// <param name="y">To the left (m).</param>
    /// <param name="vx">Its rate (m/s).</param>
    /// <param name="vy">Its rate (m/s).</param>
    public bool IsOver(double now, double x, double y, double vx, double vy)
    {
        if (now < start + GettingGoing || now >= end - 1e-9) return false;
        double square = Math.Max((x * x) + (y * y), 0.01);
        bool turning = Math.Abs((x * vy) - (y * vx)) > TurnRate * square;
        bool moving = Math.Abs((x * vx) + (y * vy)) > Approach * Math.Sqrt(square);
        double stream = Math.Sqrt((streamX * streamX) + (streamY * streamY));
        bool hangs = stream < SlowestCurrent || (x * streamX) + (y * streamY) > DownCurrent * stream * Math.Sqrt((x * x) + (y * y));
        if (turning || moving || !hangs)
        {
            quietSince = double.PositiveInfinity;
            return false;
        }

        if (double.IsPositiveInfinity(quietSince)) quietSince = now;
        return now - quietSince >= Patience;
    }
}
