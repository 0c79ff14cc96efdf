namespace LureSim.Model;

/// <summary>A rod as it is sold: its length and the lures that it is rated for.</summary>
/// <param name="Length">Length (m), 1 to 5.</param>
/// <param name="LightestLure">Lightest rated lure (kg), 0.0003 to 0.3; of a jig the head counts (common practice).</param>
/// <param name="HeaviestLure">Heaviest rated lure (kg), 0.0003 to 0.3; an outfit takes none that is lighter than the lightest.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record Rod(double Length, double LightestLure, double HeaviestLure)
{
    /// <summary>Length (m), 1 to 5.</summary>
    public double Length { get; init => field = Limits.RodLength.Check(value); } = Limits.RodLength.Check(Length);

    /// <summary>Lightest rated lure (kg), 0.0003 to 0.3.</summary>
    public double LightestLure { get; init => field = Limits.RatedLure.Check(value); } = Limits.RatedLure.Check(LightestLure);

    /// <summary>Heaviest rated lure (kg), 0.0003 to 0.3.</summary>
    public double HeaviestLure { get; init => field = Limits.RatedLure.Check(value); } = Limits.RatedLure.Check(HeaviestLure);
}
