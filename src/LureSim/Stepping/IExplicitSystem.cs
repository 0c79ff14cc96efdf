namespace LureSim.Stepping;

/// <summary>A system of first-order equations, as an explicit method sees it.</summary>
internal interface IExplicitSystem
{
    /// <summary>Number of unknowns.</summary>
    int Size { get; }

    /// <summary>Size of the unknowns below which the tolerance counts absolutely; infinity takes an unknown out of the step control.</summary>
    ReadOnlySpan<double> Scale { get; }

    /// <summary>Writes dy/dt.</summary>
    void Derivative(double time, ReadOnlySpan<double> state, Span<double> derivative);

    /// <summary>Puts invariants right after an accepted step (norm of the quaternion) and returns how far off they were; a correction within the tolerance leaves the derivative as it is.</summary>
    double Project(Span<double> state);

    /// <summary>The next time after <paramref name="time"/> at which the right-hand side has a corner (s).</summary>
    double NextBreak(double time);
}
