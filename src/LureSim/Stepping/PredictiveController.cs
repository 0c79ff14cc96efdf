namespace LureSim.Stepping;

/// <summary>
/// Step control that looks at the trend of the error: where it has grown from one accepted step to the next, the step grows less than <see cref="ElementaryController"/> would have it, which
/// saves the step that would be repeated (Gustafsson 1994, ACM Trans. Math. Softw. 20:496, in the plain form of Hairer &amp; Wanner 1996, IV.8).
/// </summary>
internal struct PredictiveController
{
    // Exponent of the ratio of two errors. With 0.2 fewer steps are repeated still, but more are made.
    private const double Trend = 0.1;
    private const double LeastError = 1e-9;

    // Error of the accepted step before; 0 where none says anything about the next.
    private double before;

    /// <summary>Factor on the step after an accepted one.</summary>
    /// <param name="error">Its error in units of the tolerance.</param>
    /// <param name="repeated">Whether it had to be repeated: then there is no growth, and no trend either.</param>
    public double Accepted(double error, bool repeated)
    {
        double factor = ElementaryController.Factor(error);
        if (repeated) factor = Math.Min(factor, 1);
        else if (before > 0 && error > before) factor = Math.Max(ElementaryController.LeastFactor, factor * Math.Pow(before / error, Trend));
        before = Math.Max(error, LeastError);
        return factor;
    }

    /// <summary>Forgets the step before: the next is another kind of step.</summary>
    public void Forget() => before = 0;
}
