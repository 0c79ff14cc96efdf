namespace LureSim.Model;

/// <summary>What the angler owns: one rod, reel and line, and a box to choose from.</summary>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
/// <exception cref="ArgumentException">There is no body, or no colour.</exception>
public sealed record TackleBox : Outfit
{
    /// <summary>Jig heads to choose from; a head of mass 0 is an unweighted hook rig. Empty only if there is no soft body.</summary>
    public required IReadOnlyList<JigHead> JigHeads { get; init => field = Guard.Items(value, 0); }

    /// <summary>Bodies to choose from; at least one. The rules of <c>BodyChoice</c> choose the soft one that goes on the heads; where none speaks the first is taken. Others need no head and are fished as they are.</summary>
    public required IReadOnlyList<LureBody> Bodies { get; init => field = Guard.Items(value, 1); }

    /// <summary>Colours to choose from: preset names or hex colours, at least one.</summary>
    public required IReadOnlyList<string> Colours { get; init => field = Guard.Items(value, 1); }

    /// <summary>Colours whose reflectance was measured; they stand after <see cref="Colours"/> wherever a colour is chosen.</summary>
    public IReadOnlyList<MeasuredColour> MeasuredColours { get; init => field = Guard.Items(value, 0); } = [];

    /// <summary>Lures of several colours.</summary>
    public IReadOnlyList<PatternSpecification> Patterns { get; init => field = Guard.Items(value, 0); } = [];
}
