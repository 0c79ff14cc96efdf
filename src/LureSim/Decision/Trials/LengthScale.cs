namespace LureSim.Decision.Trials;

/// <summary>Lengths that are round for a reader: the rows of tables and the steps of pictures keep to them.</summary>
/// <param name="Unit">The unit (m), above 0.</param>
/// <param name="FineStep">Step of short distances (units).</param>
/// <param name="Step">Step of longer distances (units).</param>
/// <param name="FineBelow">Distance below which steps are fine (units).</param>
/// <param name="LessonDepths">Depths of a lesson (units), increasing from 0.</param>
public sealed record LengthScale(double Unit, double FineStep, double Step, double FineBelow, IReadOnlyList<double> LessonDepths)
{
    // Rows of the count-down table and of the colour chart aimed at.
    private const int TargetRows = 9;

    private static readonly double[] DepthSteps = [0.1, 0.25, 0.5, 1, 2, 3, 5, 10, 20, 50];

    /// <summary>Round metres.</summary>
    public static LengthScale Metres { get; } = new(1, 0.05, 0.1, 0.8, [0, 1, 2, 3, 6, 9]);

    /// <summary>Round depths from the first step to the bottom (m), the bottom itself last.</summary>
    /// <param name="depth">Water depth (m), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth is not above 0.</exception>
    public IReadOnlyList<double> Depths(double depth)
    {
        Guard.Positive(depth);
        double ideal = depth / Unit / TargetRows;
        double step = DepthSteps.FirstOrDefault(s => s >= ideal * 0.75, DepthSteps[^1]) * Unit;
        var rows = new List<double>();
        for (int i = 1; i * step < depth - (0.3 * step); i++) rows.Add(i * step);
        rows.Add(depth);
        return rows;
    }
}
