namespace LureSim.Motion.Line;

/// <summary>What happens at the rod end of the line, as functions of time.</summary>
internal interface ILineBoundary
{
    /// <summary>Rod tip position (m) and velocity (m/s).</summary>
    void Tip(double time, Span<double> position, Span<double> velocity);

    /// <summary>Unstretched line out (m), its rate (m/s, negative when reeling) and acceleration (m/s2); not called while the spool runs free.</summary>
    void Line(double time, out double length, out double rate, out double acceleration);
}
