namespace LureSim.Model;

/// <summary>One of the equally likely states of water and tackle that observations leave.</summary>
/// <param name="Current">Current at the surface (m/s), 0 to 3.</param>
/// <param name="Depth">Depth of the water (m), 0.2 to 60.</param>
/// <param name="LineDrag">Factor on the drag of the line, 0.1 to 10.</param>
/// <param name="LineLaw">Quantile by which one of two laws of the line's drag is taken, 0 to 1.</param>
/// <param name="LureDrags">Factor on the drag of each bait that was observed, by its label.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
/// <exception cref="ArgumentNullException">A part is missing.</exception>
public sealed record LearnedTry(double Current, double Depth, double LineDrag, double LineLaw, IReadOnlyDictionary<string, double> LureDrags)
{
    /// <summary>Current at the surface (m/s), 0 to 3.</summary>
    public double Current { get; init => field = Limits.CurrentSpeed.Check(value); } = Limits.CurrentSpeed.Check(Current);

    /// <summary>Depth of the water (m), 0.2 to 60.</summary>
    public double Depth { get; init => field = Limits.Depth.Check(value); } = Limits.Depth.Check(Depth);

    /// <summary>Factor on the drag of the line, 0.1 to 10.</summary>
    public double LineDrag { get; init => field = Limits.DragFactor.Check(value); } = Limits.DragFactor.Check(LineDrag);

    /// <summary>Quantile by which one of two laws of the line's drag is taken, 0 to 1.</summary>
    public double LineLaw { get; init => field = Limits.Share.Check(value); } = Limits.Share.Check(LineLaw);

    /// <summary>Factor on the drag of each bait that was observed, by its label.</summary>
    public IReadOnlyDictionary<string, double> LureDrags { get; init => field = Guard.Given(value); } = Guard.Given(LureDrags);
}
