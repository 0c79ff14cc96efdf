namespace LureSim.Workbench.Pictures;

/// <summary>Leaves out points of a path that nobody sees (Ramer 1972; Douglas and Peucker 1973).</summary>
internal static class PathThinner
{
    /// <summary>The places of the points that stay, in order; first and last always do.</summary>
    /// <param name="x">Across (any unit).</param>
    /// <param name="y">Down (the same unit as drawn).</param>
    /// <param name="from">First place.</param>
    /// <param name="to">Last place.</param>
    /// <param name="error">How far a point that is left out may lie from the path that is drawn.</param>
    public static List<int> Keep(IReadOnlyList<double> x, IReadOnlyList<double> y, int from, int to, double error)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        var stays = new SortedSet<int> { from, to };
        var open = new Stack<(int From, int To)>();
        open.Push((from, to));
        while (open.TryPop(out (int From, int To) part))
        {
            int farthest = -1;
            double most = error;
            for (int i = part.From + 1; i < part.To; i++)
            {
                double off = Off(x[i], y[i], x[part.From], y[part.From], x[part.To], y[part.To]);
                if (off <= most) continue;
                most = off;
                farthest = i;
            }

            if (farthest < 0) continue;
            stays.Add(farthest);
            open.Push((part.From, farthest));
            open.Push((farthest, part.To));
        }

        return [.. stays];
    }

    // Distance from a point to a stretch of line.
    private static double Off(double px, double py, double ax, double ay, double bx, double by)
    {
        double dx = bx - ax, dy = by - ay, length = (dx * dx) + (dy * dy);
        double t = length > 0 ? Math.Clamp((((px - ax) * dx) + ((py - ay) * dy)) / length, 0, 1) : 0;
        double ox = px - ax - (t * dx), oy = py - ay - (t * dy);
        return Math.Sqrt((ox * ox) + (oy * oy));
    }
}
