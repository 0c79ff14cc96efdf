using LureSim.Decision.Trials;

namespace LureSim.Decision.Search;

/// <summary>A condition at which another head, or another color, is the choice; the bait and the way of working it being the same.</summary>
/// <param name="Condition">What changes.</param>
/// <param name="Over">True where it flips above the value, false below it.</param>
/// <param name="Value">The value (SI).</param>
/// <param name="Rig">The rig from there on.</param>
public sealed record ChoiceFlip(FlipCondition Condition, bool Over, double Value, Rig Rig)
{
    /// <summary>Name of the color from there on; null where the head flips.</summary>
    public string? Colour { get; init; }
}
