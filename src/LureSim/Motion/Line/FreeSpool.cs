namespace LureSim.Motion.Line;

/// <summary>An open bail: line leaves the spool against a small friction.</summary>
/// <param name="Friction">Tension below which no line leaves (N).</param>
/// <param name="Damping">Further tension for each m/s of line speed (N s/m).</param>
/// <param name="Inertia">Mass of the moving line between spool and tip (kg).</param>
internal readonly record struct FreeSpool(double Friction, double Damping, double Inertia)
{
    // Line speed at which friction has reached 70 % of its full value (m/s).
    private const double FrictionSpeed = 0.01;

    /// <summary>Resistance (N) at a line speed (m/s) and its derivative.</summary>
    public double Resistance(double rate, out double slope)
    {
        double root = Math.Sqrt((rate * rate) + (FrictionSpeed * FrictionSpeed));
        slope = (Friction * FrictionSpeed * FrictionSpeed / (root * root * root)) + Damping;
        return (Friction * rate / root) + (Damping * rate);
    }
}
