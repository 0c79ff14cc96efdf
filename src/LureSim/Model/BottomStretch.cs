namespace LureSim.Model;

/// <summary>A stretch along the bottom profile that is made of something else, or grown with something else, than the rest of the spot.</summary>
/// <param name="From">Where it begins, horizontal distance from below the rod tip (m), 0 to 120.</param>
/// <param name="To">Where it ends (m), 0 to 120; a profile asks that it is beyond <paramref name="From"/>.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record BottomStretch(double From, double To)
{
    /// <summary>Where it begins, horizontal distance from below the rod tip (m), 0 to 120.</summary>
    public double From { get; init => field = Limits.ProfileDistance.Check(value); } = Limits.ProfileDistance.Check(From);

    /// <summary>Where it ends (m), 0 to 120.</summary>
    public double To { get; init => field = Limits.ProfileDistance.Check(value); } = Limits.ProfileDistance.Check(To);

    /// <summary>What the bottom is made of there; null for the spot's own.</summary>
    public BottomKind? Bottom { get; init => field = value is { } kind ? Guard.Defined(kind) : null; }

    /// <summary>Height of the grass there (m), 0 to 60, 0 for none; null for the spot's own.</summary>
    public double? GrassHeight { get; init => field = Limits.WithinWater.Check(value); }

    /// <summary>Name for people; null for none.</summary>
    public string? Name { get; init; }
}
