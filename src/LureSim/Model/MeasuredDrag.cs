namespace LureSim.Model;

/// <summary>A lure's own drag, from timings.</summary>
/// <param name="Factor">Its drag over the computed one, 0.1 to 10.</param>
/// <param name="Margin">Plus or minus as a share of it, within which nine in ten lie, 0 to 1.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record MeasuredDrag(double Factor, double Margin)
{
    /// <summary>Its drag over the computed one, 0.1 to 10.</summary>
    public double Factor { get; init => field = Limits.DragFactor.Check(value); } = Limits.DragFactor.Check(Factor);

    /// <summary>Plus or minus as a share of it, within which nine in ten lie, 0 to 1.</summary>
    public double Margin { get; init => field = Limits.Share.Check(value); } = Limits.Share.Check(Margin);

    /// <summary>Day of the measurement; null where it was not noted.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>How it was measured; may be empty.</summary>
    public string How { get; init => field = Guard.Given(value); } = "";
}
