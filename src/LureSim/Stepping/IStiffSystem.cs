namespace LureSim.Stepping;

/// <summary>
/// A stiff system of second order, r' = w and M(r) w' = F(t, r, w), as an implicit method sees it. Some entries of r and w may be held to given functions of time. Secondary
/// unknowns that the system condenses out of its iteration (tensions, say) are its own business: it says whether they fit.
/// </summary>
internal interface IStiffSystem
{
    /// <summary>Entries of positions and of velocities, held ones included.</summary>
    int Size { get; }

    /// <summary>Whether the secondary unknowns fit the iterate of the last iteration.</summary>
    bool Fits { get; }

    /// <summary>A step begins.</summary>
    void BeginStep();

    /// <summary>A stage at a time (s) begins.</summary>
    void BeginStage(double time);

    /// <summary>Writes the held entries of the stage at hand.</summary>
    void Hold(Span<double> position, Span<double> velocity);

    /// <summary>
    /// One iteration of Newton's method for M (w - w0)/g = F(r, w), r = r0 + g w: writes the increment of w, zero where w is held. False where there is none.
    /// </summary>
    /// <param name="position">Iterate r.</param>
    /// <param name="velocity">Iterate w.</param>
    /// <param name="baseVelocity">w0.</param>
    /// <param name="g">Diagonal coefficient times step (s).</param>
    /// <param name="renew">Whether to evaluate and factor the matrix anew.</param>
    /// <param name="increment">Result.</param>
    bool Iterate(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity, ReadOnlySpan<double> baseVelocity, double g, bool renew, Span<double> increment);

    /// <summary>Moves the secondary unknowns along with an increment.</summary>
    void Follow(ReadOnlySpan<double> increment, double g, bool renewed);

    /// <summary>Whether the secondary unknowns fit positions near to those of the last iteration, one increment farther.</summary>
    bool FitsAt(ReadOnlySpan<double> position, ReadOnlySpan<double> increment, double g);

    /// <summary>Size of an increment in units of the tolerance, as velocities and as the displacements that they make.</summary>
    double IncrementSize(ReadOnlySpan<double> increment, double g);

    /// <summary>Error through the inverse of the last matrix, which takes out of it what is stiff.</summary>
    void Damp(Span<double> positionError, Span<double> velocityError, double g);

    /// <summary>Size of an error in units of the tolerance.</summary>
    double ErrorSize(ReadOnlySpan<double> positionError, ReadOnlySpan<double> velocityError);
}
