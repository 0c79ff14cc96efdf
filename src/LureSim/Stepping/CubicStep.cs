using MathNet.Numerics.RootFinding;

namespace LureSim.Stepping;

/// <summary>A coordinate inside a step of a system of second order: the cubic (Hermite) polynomial through position and velocity at both ends.</summary>
/// <param name="Start">Start of the step (s).</param>
/// <param name="Length">The step (s), above 0.</param>
/// <param name="From">Value at its start.</param>
/// <param name="FromRate">Rate at its start (1/s).</param>
/// <param name="To">Value at its end.</param>
/// <param name="ToRate">Rate at its end (1/s).</param>
internal readonly record struct CubicStep(double Start, double Length, double From, double FromRate, double To, double ToRate)
{
    // Accuracy of a crossing in the value, and most iterations.
    private const double Accuracy = 1e-7;
    private const int MostIterations = 60;

    /// <summary>Value at a time (s) of the step.</summary>
    public double At(double time) => At(time, out _);

    /// <summary>Value and rate at a time (s) of the step.</summary>
    public double At(double time, out double rate)
    {
        double x = (time - Start) / Length;
        double m0 = FromRate * Length, m1 = ToRate * Length;
        double x2 = x * x;
        rate = ((6 * (x2 - x) * (From - To)) + (((3 * x2) - (4 * x) + 1) * m0) + (((3 * x2) - (2 * x)) * m1)) / Length;
        return ((1 + (2 * x)) * (1 - x) * (1 - x) * From) + (x * (1 - x) * (1 - x) * m0) + (x2 * (3 - (2 * x)) * To) + (x2 * (x - 1) * m1);
    }

    /// <summary>Time (s) at which the value passes a level between two times of the step on either side of it; the later of them where it does not.</summary>
    public double Crossing(double level, double from, double to)
    {
        CubicStep path = this;
        return Brent.TryFindRoot(t => path.At(t) - level, from, to, Accuracy, MostIterations, out double root) ? root : to;
    }
}
