namespace LureSim.Light;

/// <summary>First zero of a function on an interval by scan and bisection; tolerant of functions that are not monotone.</summary>
internal static class Crossing
{
    /// <summary>The first place where the function falls from positive to zero or below; the start when it begins there; null when it never does.</summary>
    public static double? First(Func<double, double> function, double from, double to, int steps)
    {
        double previous = from;
        double value = function(from);
        if (value <= 0.0)
            return from;
        for (int i = 1; i <= steps; i++)
        {
            // Quadratic spacing: short steps where light changes fast, near the start.
            double share = (double)i / steps;
            double next = from + ((to - from) * share * share);
            value = function(next);
            if (value <= 0.0 || double.IsNaN(value))
                return Bisect(function, previous, next);
            previous = next;
        }

        return null;
    }

    private static double Bisect(Func<double, double> function, double above, double below)
    {
        for (int i = 0; i < 60 && below - above > 1e-9 * Math.Max(1.0, below); i++)
        {
            double middle = 0.5 * (above + below);
            if (function(middle) > 0.0)
                above = middle;
            else
                below = middle;
        }

        return 0.5 * (above + below);
    }
}
