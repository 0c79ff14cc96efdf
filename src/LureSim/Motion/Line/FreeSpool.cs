namespace LureSim.Motion.Line;

/// <summary>An open bail: line leaves the spool against a small friction.</summary>
/// <param name="Friction">Tension below which no line leaves (N).</param>
/// <param name="Damping">Further tension for each m/s of line speed (N s/m).</param>
/// <param name="Inertia">Mass of the moving line between spool and tip (kg).</param>
/// <param name="LineMass">Mass of the line that leaves the spool (kg/m).</param>
internal readonly record struct FreeSpool(double Friction, double Damping, double Inertia, double LineMass)
{
    // Line speed at which friction has reached 70 % of its full value (m/s).
    private const double FrictionSpeed = 0.01;

    /// <summary>
    /// Resistance (N) at a line speed r (m/s) and its derivative: friction, damping, and the pull that brings line from rest to its speed, m r^2, as of a chain that is drawn off a heap
    /// (Cayley 1857). Without it a thick line that the wind takes draws itself off the spool ever faster.
    /// </summary>
    public double Resistance(double rate, out double slope)
    {
        double root = Math.Sqrt((rate * rate) + (FrictionSpeed * FrictionSpeed));
        slope = (Friction * FrictionSpeed * FrictionSpeed / (root * root * root)) + Damping + (2 * LineMass * Math.Abs(rate));
        return (Friction * rate / root) + (Damping * rate) + (LineMass * rate * Math.Abs(rate));
    }
}
